//! The tests of a cloth as the core judges them: on which day each was pulled, and in which state of the cloth.

use std::collections::BTreeMap;

use tenter_core::repeatability::Pooled;
use tenter_core::{Scatter, Sitting};

use super::fabric::Fabric;
use super::here::Here;
use super::id::Id;
use super::tested::StoredTest;

/// A test of a cloth with its day, by the wall clock of the place where the program runs, and with who pulled it: tests
/// of one person on one day are one session. A test from a handheld whose clock was not set counts to the day on which it
/// was fetched.
#[must_use]
pub fn sitting<'t>(fabric: &Fabric, stored: &'t StoredTest, scatter: Scatter, here: Here) -> Sitting<'t> {
    let before_wash = fabric.last_washed.is_some_and(|washed| stored.said.pulled < washed);
    let (day, person) = (Some(here.day(stored.said.pulled)), stored.said.pulled_by.map_or(0, number));
    Sitting { scatter, before_wash, day, person, ..Sitting::new(&stored.said.test) }
}

/// A person as the core counts them.
fn number(person: Id) -> u64 {
    // The lower 64 of 80 random bits.
    u64::try_from(person.drawn() & u128::from(u64::MAX)).unwrap_or_default()
}

/// What the retests of a cloth on several days say of how much each person's days differ; retired tests say nothing.
#[must_use]
pub fn retests<'t>(
    fabric: &Fabric,
    tests: impl IntoIterator<Item = &'t StoredTest>,
    here: Here,
) -> BTreeMap<Option<Id>, Pooled> {
    let mut by_person: BTreeMap<Option<Id>, Vec<Sitting<'_>>> = BTreeMap::new();
    for stored in tests.into_iter().filter(|stored| !stored.dropped) {
        by_person.entry(stored.said.pulled_by).or_default().push(sitting(fabric, stored, Scatter::ASSUMED, here));
    }
    by_person.retain(|_, sittings| sittings.len() > 1);
    let said = |sittings: &Vec<Sitting<'_>>| tenter_core::retests(sittings, fabric.construction);
    by_person.iter().map(|(person, sittings)| (*person, said(sittings))).collect()
}

/// What the tests of a cloth say of everybody who pulled it: of the scatter from pull to pull, and of the days.
#[must_use]
pub fn hands(fabric: &Fabric, tests: &[StoredTest], here: Here) -> BTreeMap<Option<Id>, Pooled> {
    let mut all: BTreeMap<Option<Id>, Pooled> = BTreeMap::new();
    for stored in tests.iter().filter(|stored| !stored.dropped) {
        let sum = all.entry(stored.said.pulled_by).or_default();
        *sum = sum.and(Pooled::of(&stored.said.test));
    }
    for (person, days) in retests(fabric, tests, here) {
        let sum = all.entry(person).or_default();
        *sum = sum.and(days);
    }
    all
}
