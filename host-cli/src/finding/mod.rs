//! What is found: owned data with reasons.

pub mod drawn;
pub mod fit;
pub mod handle;
pub mod hang;
pub mod pair;
pub mod plan;
pub mod size;
pub mod verdict;
pub mod wash;
