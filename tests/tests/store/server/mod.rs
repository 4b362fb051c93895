//! What only a server has: rights, passwords, encryption, a schema that is newer, and a connection that is lost.

mod cut;
mod rights;
mod schema;
mod way;
