//! The tests of a cloth as the core judges them: on which day each was pulled, and in which state of the cloth.

use tenter_core::repeatability::Pooled;
use tenter_core::{Scatter, Sitting};

use super::fabric::Fabric;
use super::here::Here;
use super::tested::StoredTest;

/// A test of a cloth with its day, by the wall clock of the place where the program runs. The log is one person's: tests
/// of one day are one session of one hand. A test from a handheld whose clock was not set counts to the day on which it
/// was fetched.
#[must_use]
pub fn sitting<'t>(fabric: &Fabric, stored: &'t StoredTest, scatter: Scatter, here: Here) -> Sitting<'t> {
    let before_wash = fabric.last_washed.is_some_and(|washed| stored.said.pulled < washed);
    Sitting { scatter, before_wash, day: Some(here.day(stored.said.pulled)), ..Sitting::new(&stored.said.test) }
}

/// What the retests of a cloth on several days say of how much this person's days differ; retired tests say nothing.
#[must_use]
pub fn retests<'t>(fabric: &Fabric, tests: impl IntoIterator<Item = &'t StoredTest>, here: Here) -> Pooled {
    let live = tests.into_iter().filter(|stored| !stored.dropped);
    let sittings: Vec<Sitting<'_>> = live.map(|stored| sitting(fabric, stored, Scatter::ASSUMED, here)).collect();
    tenter_core::retests(&sittings, fabric.construction)
}
