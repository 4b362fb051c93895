//! What can be done, with its rules: facts from what was typed and what the log says, or [`Refused`].
//!
//! Pure functions over [`Read`](crate::store::Read). A front end reads its options, calls a deed within
//! [`Change::change`](crate::store::Change::change), and shows what came of it.

pub mod cloth;
pub mod find;
pub mod handheld;
pub mod make;
pub mod pattern;
pub mod people;
pub mod plan;
pub mod pull;
mod refused;
pub mod remember;
pub mod size;
pub mod sync;
pub mod tags;
pub mod wash;

pub use refused::{Refused, Thing};

/// Facts to be stored, with what they are about.
pub type Done<T> = Result<(Vec<crate::log::Fact>, T), Refused>;
