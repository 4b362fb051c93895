//! What a wash takes from a cloth, and how much to buy for it.

use tenter_core::making::amount::Amount;
use tenter_core::making::error::MakingError;
use tenter_core::making::washing::{Remedy, Washing, is_doubtful};
use tenter_core::making::yardage::ShopCut;
use tenter_core::{Confidence, Figure, Grain, Length, Ratio};

/// The change along a grain.
#[derive(Debug, Clone, Copy)]
pub struct WashChange {
    /// The grain.
    pub grain: Grain,
    /// How much longer it is after the wash: shrinkage is negative.
    pub change: Figure,
    /// What to do about it.
    pub remedy: Remedy,
}

impl WashChange {
    /// The change along a grain, with what to do about it.
    #[must_use]
    pub fn of(grain: Grain, change: Figure) -> Self {
        Self { grain, change, remedy: Remedy::of(change.ratio) }
    }
}

/// A length to buy for one that is needed after the wash.
#[derive(Debug, Clone, Copy)]
pub struct Bought {
    /// What is needed after the wash.
    pub need: Length,
    /// What it takes before the wash, exact.
    pub length: Length,
    /// The change that this counts on: the worst that the readings allow, or what is usual.
    pub counted: Ratio,
    /// How the cloth stands to the wash.
    pub washing: Washing,
    /// To what the shop cuts, where that was said.
    pub shop_cut: Option<ShopCut>,
}

/// What was found.
#[derive(Debug, Clone)]
pub struct Washed {
    /// The change along each grain that was measured.
    pub changes: Vec<WashChange>,
    /// What to buy, where that was asked.
    pub bought: Option<Bought>,
    /// How sure the figures are.
    pub confidence: Confidence,
    /// Whether the person stands by the readings.
    pub as_read: bool,
}

impl Washed {
    /// The first change that is larger than a wash usually makes, unless the person stands by the readings.
    #[must_use]
    pub fn doubted(&self) -> Option<WashChange> {
        self.changes.iter().find(|one| !self.as_read && is_doubtful(one.change)).copied()
    }

    /// What to buy for `need` of a cloth that stands so to the wash, from a shop that cuts so.
    ///
    /// # Errors
    ///
    /// A need that is not longer than zero, or nothing left after the wash.
    pub fn buy(&mut self, need: Length, washing: Washing, shop_cut: Option<ShopCut>) -> Result<(), MakingError> {
        let amount = Amount::new(&washing, self.confidence)?;
        self.bought = Some(Bought { need, length: amount.to_buy(need)?, counted: amount.change(), washing, shop_cut });
        Ok(())
    }

    /// The change along a grain.
    #[must_use]
    pub fn along(&self, grain: Grain) -> Option<WashChange> {
        self.changes.iter().find(|one| one.grain == grain).copied()
    }
}
