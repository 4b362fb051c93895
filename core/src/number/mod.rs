//! Exact and floating numbers: bounded lists, decimal texts, exact ratios, the few float functions.

pub(crate) mod decimal;
pub(crate) mod list;
pub(crate) mod num;
pub(crate) mod ratio;
mod words;

pub use decimal::{Decimal, Text};
pub use ratio::Ratio;
pub(crate) use words::words;
