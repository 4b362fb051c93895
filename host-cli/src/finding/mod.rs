//! What is found: owned data with reasons.

pub mod amounts;
pub mod axis;
pub mod check;
pub mod class;
pub mod cloth;
pub mod drawn;
pub mod fit;
pub mod handheld;
pub mod handle;
pub mod hang;
pub mod kept;
pub mod make;
pub mod measured;
pub mod memory;
pub mod pair;
pub mod pattern;
pub mod people;
pub mod plan;
pub mod pull;
pub mod shown;
pub mod size;
pub mod tag;
pub mod verdict;
pub mod wash;
