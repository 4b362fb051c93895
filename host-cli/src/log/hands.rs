//! What the tests of a log say of everybody's repeatability, each person apart.

use std::collections::BTreeMap;

use tenter_core::repeatability::{ByConstruction, Pooled};
use tenter_core::{Construction, PullTest, Scatter};

use super::id::Id;

/// The repeatability of everybody who pulled; tests of which nobody said who pulled are those of one person.
///
/// How a person of few pulls leans on the others, and those on what is assumed, is
/// [`ByConstruction::scatter_among`] of the core.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Hands {
    everyone: ByConstruction,
    each: BTreeMap<Option<Id>, ByConstruction>,
}

impl Hands {
    /// Adds what tests of a person on a construction say.
    pub fn add(&mut self, person: Option<Id>, construction: Construction, more: Pooled) {
        self.everyone.add(construction, more);
        self.each.entry(person).or_default().add(construction, more);
    }

    /// What a person's own tests say.
    #[must_use]
    pub fn of(&self, person: Option<Id>) -> ByConstruction {
        self.each.get(&person).copied().unwrap_or_default()
    }

    /// What everybody's tests say.
    #[must_use]
    pub const fn everyone(&self) -> &ByConstruction {
        &self.everyone
    }

    /// What everybody's tests say, over all constructions.
    #[must_use]
    pub fn all(&self) -> Pooled {
        self.everyone.all()
    }

    /// The same without what the tests of a person on a construction said, which were part of it.
    #[must_use]
    pub fn without(mut self, person: Option<Id>, construction: Construction, less: Pooled) -> Self {
        self.everyone = self.everyone.without(construction, less);
        if let Some(own) = self.each.get_mut(&person) {
            *own = own.without(construction, less);
        }
        self
    }

    /// How much of what a person's test is judged by rests on the tests of others, 0 to 1.
    #[must_use]
    pub fn share_of_others(&self, person: Option<Id>, construction: Construction, test: &PullTest) -> f32 {
        self.of(person).share_of_others(&self.everyone, construction, test)
    }

    /// The scatter to judge a person's test by on cloth of a construction.
    #[must_use]
    pub fn scatter_for(&self, person: Option<Id>, construction: Construction, test: &PullTest) -> Scatter {
        self.of(person).scatter_among(&self.everyone, construction, test)
    }
}
