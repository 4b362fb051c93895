//! The maker's other decisions, from measured stretch and a tape: two cloths in one seam, how to handle a cloth, sizes
//! and openings, elastic, zips, washing, hanging masses, what a body asks, cautions and yardage.
//!
//! Everything here is data with its reason and its [`Source`](crate::Source); the words are the front ends'. Each
//! function takes plain values and stands alone, so that a program carries only what it calls.

pub mod amount;
pub mod body;
pub mod care;
pub mod caution;
pub mod elastic;
pub mod error;
pub mod garment;
pub mod handling;
pub mod hanging;
pub mod pairing;
pub mod printed;
mod scaled;
pub mod sizing;
pub mod stitch;
pub mod washing;
pub mod yardage;
pub mod zip;

pub use crate::answer::source;
