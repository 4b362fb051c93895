//! What is on a handheld, and what came from it.

use tenter_core::record::RecordError;
use tenter_core::wire::{Identity, Listing};
use tenter_core::{Figure, Figures};

use super::tag;
use crate::log::handheld::FromHandheld;
use crate::log::{Construction, Fabric, Hands, StoredTest, Tested};
use crate::store::{Read, StoreError, WhichTests};

/// Who is there and what waits.
#[derive(Debug)]
pub struct There {
    /// Who.
    pub identity: Identity,
    /// By how many seconds its clock is ahead, where it is set.
    pub ahead: Option<i64>,
    /// What it says it holds.
    pub listing: Listing,
    /// The tests not yet fetched.
    pub waiting: Vec<Waiting>,
}

impl There {
    /// How far its clock is off.
    #[must_use]
    pub const fn clock(&self) -> ClockState {
        ClockState::of(self.ahead)
    }
}

/// A test on the handheld.
#[derive(Debug)]
pub struct Waiting {
    /// Its number there.
    pub number: u32,
    /// The test, where it can be read.
    pub test: Result<FromHandheld, RecordError>,
    /// The one cloth with its tag.
    pub fabric: Option<Fabric>,
    /// Whether it is in the log already.
    pub in_log: bool,
}

/// A test that has just been stored, or was before.
#[derive(Debug)]
pub struct Arrived<'a> {
    /// The test.
    pub test: &'a StoredTest,
    /// Its number on the handheld.
    pub number: u32,
    /// The cloth it went to.
    pub fabric: Option<&'a Fabric>,
    /// Its stretch.
    pub stretch: Option<Figure>,
    /// Whether it was in the log before.
    pub was_known: bool,
}

/// What a synchronisation did.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Counts {
    /// Tests that came over the line.
    pub fetched: u64,
    /// Of these, new in the log.
    pub stored: u64,
    /// Of these, without a cloth.
    pub in_inbox: u64,
    /// In the log before.
    pub known: u64,
    /// Under a number that another test had before.
    pub number_reused: u64,
}

/// A test without a cloth.
#[derive(Debug)]
pub struct Unclaimed {
    /// The test.
    pub test: StoredTest,
    /// The live cloths with its tag: none, or several.
    pub worn: Vec<Fabric>,
    /// Its stretch.
    pub stretch: Option<Figure>,
}

/// The tests without a cloth.
///
/// # Errors
///
/// A log that cannot be read.
pub fn inbox(read: &dyn Read) -> Result<Vec<Unclaimed>, StoreError> {
    let pooled = read.repeatability()?;
    let unclaimed = |test: StoredTest| {
        let worn = test.said.tag.map(|number| tag::live(read, number)).transpose()?.unwrap_or_default();
        let stretch = stretch(&test.said, &pooled, Construction::default());
        Ok(Unclaimed { test, worn, stretch })
    };
    read.tests(WhichTests::Inbox)?.into_iter().map(unclaimed).collect()
}

/// The stretch with what it is worth.
#[must_use]
pub fn stretch(said: &Tested, hands: &Hands, construction: Construction) -> Option<Figure> {
    let scatter = hands.scatter_for(said.pulled_by, construction, &said.test);
    Figures::of(&said.test, scatter).ok().map(|figures| figures.stretch)
}

/// How far a handheld's clock is off: not set, right, or by so many seconds ahead.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ClockState {
    /// It was never set.
    NotSet,
    /// As right as can be told: both clocks tell whole seconds.
    Right,
    /// It is off by so many seconds, ahead where they are above zero.
    Off(i64),
}

impl ClockState {
    /// From the seconds by which it is ahead, where it is set.
    #[must_use]
    pub const fn of(ahead: Option<i64>) -> Self {
        match ahead {
            None => Self::NotSet,
            Some(-1..=1) => Self::Right,
            Some(seconds) => Self::Off(seconds),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_clock_within_its_second_is_right() {
        let of = |ahead: &[i64]| ahead.iter().map(|ahead| ClockState::of(Some(*ahead))).collect::<Vec<_>>();
        assert_eq!(of(&[-1, 0, 1]), [ClockState::Right; 3]);
        assert_eq!(of(&[-2, 2, i64::MIN]), [-2, 2, i64::MIN].map(ClockState::Off));
        assert_eq!(ClockState::of(None), ClockState::NotSet);
    }
}
