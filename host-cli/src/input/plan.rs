//! What a plan sheet is made for, as typed.

use tenter_core::making::yardage::ShopCut;

use crate::log::Choices;

/// What a plan sheet is made for, as typed.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct TypedPlan {
    /// The cloths for roles: `main=1`.
    pub uses: Vec<String>,
    /// What the garment is and has.
    pub choices: Choices,
    /// To what the reader's shop cuts cloth; none for as shops do where lengths are told in the reader's unit.
    pub shop_cut: Option<ShopCut>,
}
