//! The statistics that the answers rest on.

pub mod line;
pub mod rectangular;
pub mod scatter;
pub mod stats;
pub mod student;
pub mod uncertainty;

pub use scatter::Scatter;
