//! How sure an answer must be when somebody may look again: pulling until it answers must not make wrong answers likely.

use crate::answer::Ask;

/// What was planned before the first pull. Without a word from anybody: three pulls, one reading after release, one test, one day.
///
/// The shares of the risk are the tool's own. They were chosen so that the share of wrong answers at the limit stays below
/// 6 % for a person who pulls again, reads again or comes back another day until there is an answer; at 95 % at every
/// look it would be 9 to 18 %. `tenter-tests` simulates both.
///
/// ```
/// use tenter_core::Looks;
///
/// assert_eq!(Looks::default().pulls, 3);
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct Looks {
    /// Pulls of one test; a test that says [its own number](crate::PullTest::planned_pulls) goes by that.
    pub pulls: u8,
    /// Readings after release of one test.
    pub rests: u8,
    /// Tests of one day.
    pub tests: u8,
    /// Days.
    pub days: u8,
    /// Whether an answer was looked for before, and this is what was then proposed to settle it.
    pub looked_before: bool,
}

impl Default for Looks {
    fn default() -> Self {
        Self { pulls: 3, rests: 1, tests: 1, days: 1, looked_before: false }
    }
}

/// Shares of the risk of a wrong answer.
pub(crate) const AS_PLANNED: f32 = 1.0;
pub(crate) const TAKEN_UP: f32 = 0.5;
const MORE_THAN_PLANNED: f32 = 0.3;
/// Growth and recovery read again: readings of one day share its gauge length and its pull, so each tells less that is new.
const MORE_READINGS: f32 = 0.15;
const FEWER_THAN_PLANNED: f32 = 0.2;
const SECOND_DAY: f32 = 0.1;
const LATER_DAY: f32 = 0.02;

/// Growth from fewer looks at the unloaded cloth than this is fewer than planned.
const LEAST_UNLOADED: u32 = 3;

/// How often what an answer rests on was read.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) struct Made {
    /// Days.
    pub days: u8,
    /// Pulls that were made on the day with the fewest, with how many were planned then.
    pub pulls: (u32, u32),
    /// Looks at the gauge length that count, over all days.
    pub looks: u32,
    /// Readings after release that count, over all days.
    pub rests: u32,
}

impl Looks {
    /// The share of the risk that an answer may take.
    pub(crate) fn share(&self, ask: Ask, made: Made) -> f32 {
        let as_planned = if self.looked_before { TAKEN_UP } else { AS_PLANNED };
        let planned_days = self.days.max(1);
        if made.days > planned_days {
            return if made.days == 2 { SECOND_DAY } else { LATER_DAY };
        }
        let (fewer, more) = match ask {
            Ask::Stretch => (made.pulls.0 < made.pulls.1, made.pulls.0 > made.pulls.1),
            Ask::Growth | Ask::Recovery => {
                let rests = u32::from(self.rests) * u32::from(self.tests.max(1)) * u32::from(planned_days);
                (made.looks + made.rests < LEAST_UNLOADED, made.rests > rests)
            }
        };
        if fewer || made.days < planned_days {
            FEWER_THAN_PLANNED
        } else if more {
            if ask == Ask::Stretch { MORE_THAN_PLANNED } else { MORE_READINGS }
        } else {
            as_planned
        }
    }
}
