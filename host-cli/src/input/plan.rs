//! What a plan sheet is made for, as typed.

use crate::log::Choices;

/// What a plan sheet is made for, as typed.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct TypedPlan {
    /// The cloths for roles: `main=1`.
    pub uses: Vec<String>,
    /// What the garment is and has.
    pub choices: Choices,
}
