//! What is found: owned data with reasons.

pub mod check;
pub mod cloth;
pub mod drawn;
pub mod fit;
pub mod pattern;
pub mod plan;
pub mod pull;
pub mod verdict;
