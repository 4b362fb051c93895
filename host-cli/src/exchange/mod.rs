//! Each file format both ways.

pub mod exported;
pub mod table;
pub mod typed;
