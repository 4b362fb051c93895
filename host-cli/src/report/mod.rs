//! Results as bytes: pure functions, no decisions.

pub mod check_json;
pub mod check_text;
pub mod words;

use tenter_core::{Evaluation, Suit};

use crate::input::CheckInput;

/// Everything that `check` found.
#[derive(Debug)]
pub struct Checked<'a> {
    /// The readings, the demand and the rules.
    pub input: &'a CheckInput,
    /// The figures and answers.
    pub evaluation: &'a Evaluation,
    /// The kinds of garment that ask for as much.
    pub suits: Vec<&'static Suit>,
}
