//! What is found: owned data with reasons.

pub mod drawn;
pub mod fit;
pub mod plan;
pub mod verdict;
