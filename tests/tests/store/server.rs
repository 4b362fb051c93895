//! What only a server has.
