//! The statistics that the answers rest on.

mod assumed;
pub mod line;
pub mod rectangular;
pub mod repeatability;
pub mod scatter;
pub mod stats;
pub mod student;
pub mod uncertainty;

pub use repeatability::Repeatability;
pub use scatter::Scatter;
