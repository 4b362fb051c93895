//! What is cut from each cloth in all: the lengths of every role and view that takes of it, added up.

use tenter_core::making::amount::{missing, total};
use tenter_core::making::yardage::ShopCut;
use tenter_core::{Length, Unit};

use crate::finding::fit::Candidate;
use crate::finding::kept::free;
use crate::finding::pair::NamedCloth;
use crate::log::{Fabric, Id, Price, Role, Shop};

/// What one role takes of a cloth.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct AmountTaken {
    /// The role.
    pub role: String,
    /// The view it belongs to.
    pub view: String,
    /// The length, exact, with all additions.
    pub length: Length,
}

/// What is cut from one cloth in all.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ClothAmount {
    fabric: Id,
    /// The cloth.
    pub cloth: NamedCloth,
    /// Who takes how much of it, in the order they were added.
    pub taken: Vec<AmountTaken>,
    /// The sum of it, exact.
    pub needed: Length,
    /// What is at home of it beside what open garments keep, where that is known; none of a cloth in a shop.
    pub on_hand: Option<Length>,
    /// Where it lies, if it is to be bought.
    pub shop: Option<Shop>,
    /// Whether a length in it is an estimate: worked out by area, or with an allowance for a wash that nobody measured.
    pub is_estimate: bool,
    /// To what the shop cuts, where that was said.
    pub shop_cut: Option<ShopCut>,
}

impl ClothAmount {
    /// What is missing of it at home; zero where there is enough, where its length is not known, and of a cloth in a shop.
    #[must_use]
    pub fn missing(&self) -> Length {
        self.on_hand.map_or(Length::ZERO, |had| missing(had, [self.needed]))
    }

    /// Whether something of it is to be bought.
    #[must_use]
    pub fn is_bought(&self) -> bool {
        self.shop.is_some() || self.missing() > Length::ZERO
    }

    /// What to buy of it, as shops cut it where the reader shops: all of a cloth in a shop, what is missing of one at
    /// home. `None` where nothing is to be bought.
    #[must_use]
    pub fn to_buy(&self, unit: Unit) -> Option<Length> {
        let buy = if self.shop.is_some() { self.needed } else { self.missing() };
        (buy > Length::ZERO).then(|| as_cut(buy, unit, self.shop_cut))
    }

    /// What that costs, where the price is known.
    #[must_use]
    pub fn cost(&self, unit: Unit) -> Option<String> {
        let price: &Price = self.shop.as_ref()?.price.as_ref()?;
        self.to_buy(unit).map(|length| price.of(length))
    }

    /// What is at home and not taken, where that is known.
    #[must_use]
    pub fn left(&self) -> Option<Length> {
        self.on_hand.map(|had| Length::from_steps(had.steps().saturating_sub(self.needed.steps()).max(0)))
    }
}

/// A length as shops cut it where the reader shops, rounded up once; one that is beyond all lengths as it is.
#[must_use]
pub fn as_cut(length: Length, unit: Unit, cut: Option<ShopCut>) -> Length {
    cut.unwrap_or_else(|| ShopCut::in_unit(unit)).up(length).unwrap_or(length)
}

/// What is cut from each cloth.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Amounts {
    /// The cloths of which something is taken, in the order in which they were first.
    pub cloths: Vec<ClothAmount>,
}

impl Amounts {
    /// Of roles with the cloths that were chosen for them; roles that do not say how much they take are left out.
    #[must_use]
    pub fn of<'a>(chosen: impl IntoIterator<Item = (&'a Role, &'a Candidate<'a>)>) -> Self {
        let mut amounts = Self::default();
        chosen.into_iter().for_each(|(role, candidate)| amounts.take(role, candidate));
        amounts
    }

    /// The same from a shop that cuts so.
    #[must_use]
    pub fn cut_as(mut self, cut: Option<ShopCut>) -> Self {
        self.cloths.iter_mut().for_each(|cloth| cloth.shop_cut = cut);
        self
    }

    /// Adds what a role takes of a cloth.
    pub fn take(&mut self, role: &Role, candidate: &Candidate<'_>) {
        let Some(needed) = candidate.cloth.needed() else { return };
        let fabric = candidate.fabric;
        let taken = AmountTaken { role: role.name.clone(), view: role.view.clone(), length: needed.length };
        let is_estimate = needed.by_area || !needed.washing.is_known();
        if let Some(cloth) = self.cloths.iter_mut().find(|cloth| cloth.fabric == fabric.id) {
            cloth.taken.push(taken);
            cloth.needed = total(cloth.taken.iter().map(|taken| taken.length));
            cloth.is_estimate |= is_estimate;
        } else {
            self.cloths.push(ClothAmount {
                fabric: fabric.id,
                cloth: fabric.into(),
                taken: vec![taken],
                needed: needed.length,
                on_hand: free(fabric, &candidate.kept).length.filter(|_| !fabric.is_seen()),
                shop: fabric.shop.clone(),
                is_estimate,
                shop_cut: None,
            });
        }
    }

    /// What is taken of a cloth so far.
    #[must_use]
    pub fn taken_of(&self, fabric: &Fabric) -> Option<&ClothAmount> {
        self.cloths.iter().find(|cloth| cloth.fabric == fabric.id)
    }

    /// The length that is taken of a cloth so far.
    #[must_use]
    pub fn length_of(&self, fabric: &Fabric) -> Length {
        self.taken_of(fabric).map_or(Length::ZERO, |cloth| cloth.needed)
    }

    /// The cloths of which more than one role takes.
    pub fn shared(&self) -> impl Iterator<Item = &ClothAmount> {
        self.cloths.iter().filter(|cloth| cloth.taken.len() > 1)
    }

    /// The cloths of which too little is at home.
    pub fn short(&self) -> impl Iterator<Item = &ClothAmount> {
        self.cloths.iter().filter(|cloth| cloth.missing() > Length::ZERO)
    }
}
