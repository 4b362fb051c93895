//! The statistics that the answers rest on.

pub mod components;
pub mod discordant;
pub(crate) mod kept;
pub mod line;
pub mod mixture;
pub mod persons;
pub mod rectangular;
pub mod repeatability;
pub mod rounded;
pub mod scatter;
pub mod stats;
pub mod student;
pub mod uncertainty;

pub use repeatability::Repeatability;
pub use scatter::Scatter;
