//! The contract of the store, which every engine keeps: a file of SQLite, a server of PostgreSQL, and memory. The same laws
//! run against all of them, with random logs, kills, and many who write at once; then what only a server has.

mod desk;
mod engine;
mod killed;
mod laws;
mod load;
mod moving;
mod properties;
mod server;
mod together;
