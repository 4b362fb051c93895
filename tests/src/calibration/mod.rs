//! Seeded simulation of swatches whose true figures are known: how often tenter's answer is wrong among the answers it
//! gives, how often it is *close*, and how often its interval holds the truth, beside three rules that see the same
//! readings.
//!
//! The worlds are of two kinds. In those drawn from the prior each cloth, hand and day has variances drawn from the
//! distributions that the core assumes. The others break that: heavier tails, drifting pulls, slips, forces that differ by
//! day more than assumed, readings to 5 mm.

pub mod growth;
pub mod plans;
pub mod repeated;
pub mod rows;
pub mod rules;
pub mod time;
pub mod world;

pub use rules::{Answers, Tally};
pub use world::{Noise, Truth, World};

/// The confidence of all rules: the default of [`tenter_core::Rules`].
pub const CONFIDENCE: f64 = 0.95;
