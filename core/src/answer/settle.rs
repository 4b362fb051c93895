//! What would settle a test that is too close to call.

use crate::answer::chance::Question;
use crate::answer::confidence::Confidence;
use crate::number::num;
use crate::reading::length::Length;
use crate::reading::pull_test::{MAX_PULLS, PullTest};

/// Longer gauges worth proposing, in millimetres: to what two hands can hold and read.
const LONGER_MM: [i16; 7] = [100, 150, 200, 250, 300, 400, 500];
/// The same on an inch scale, in 64ths of an inch: 4 to 20 in.
const LONGER_INCH: [i16; 8] = [256, 320, 384, 512, 640, 768, 1024, 1280];

/// A test that would give an answer, if it saw the same figures again.
///
/// ```
/// use tenter_core::{Length, Plan};
///
/// let plan = Plan { gauge: Length::from_mm(250), pulls: 3 };
/// assert_eq!(plan.pulls, 3);
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct Plan {
    /// The gauge length to mark.
    pub gauge: Length,
    /// The number of pulls to make.
    pub pulls: u8,
}

/// What would turn *close* into an answer if the true figures are the ones seen.
///
/// ```
/// use tenter_core::{Demand, Evaluation, Grain, Length, PullTest, Range, Rules, Unit};
///
/// let mut test = PullTest::new(Length::from_mm(100), Grain::Crosswise).unwrap();
/// test.add_pull(Length::from_mm(106)).unwrap();
/// let demand = Demand::for_grain(Grain::Crosswise, Range::parse("5%", Unit::Mm).unwrap());
/// let settle = Evaluation::of(&test, &demand, &Rules::default()).unwrap().settle.unwrap();
/// assert!(settle.pulls.is_some());
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct Settle {
    /// So many pulls on the same marks would do.
    pub pulls: Option<u8>,
    /// Marks so far apart would do, with as many pulls as now.
    pub gauge: Option<Length>,
    /// The least work of all: more pulls if they do, else longer marks, else both.
    pub plan: Plan,
}

/// Searches gauge lengths and numbers of pulls for tests that would answer every open question.
pub(crate) fn settle(test: &PullTest, open: &[Question], confidence: Confidence) -> Option<Settle> {
    if open.is_empty() || open.iter().any(Question::is_on_limit) {
        return None;
    }
    let now = test.pulls().len();
    let gauge = test.gauge();
    let settles = |gauge: Length, pulls: usize| {
        let longer = gauge.mm() / test.gauge().mm();
        // Growth and recovery may have been read after fewer pulls than were made: each then gets as many more.
        open.iter().all(|question| {
            let chance = question.chance_if(longer, num::count(pulls.saturating_sub(now)));
            confidence.is_sure(chance) || confidence.is_sure(1.0 - chance)
        })
    };
    let more_pulls = |gauge: Length, from: usize| (from..=MAX_PULLS).find(|pulls| settles(gauge, *pulls));
    let steps: fn(i16) -> Length = if test.scale().is_inch() { Length::from_inch_64ths } else { Length::from_mm };
    let ladder: &[i16] = if test.scale().is_inch() { &LONGER_INCH } else { &LONGER_MM };
    let mut longer = ladder.iter().map(|size| steps(*size)).filter(|size| *size > gauge);

    let pulls = more_pulls(gauge, now + 1);
    let gauge_alone = longer.clone().find(|longer| settles(*longer, now));
    let plan = match (pulls, gauge_alone) {
        (Some(pulls), _) => Some((gauge, pulls)),
        (None, Some(longer)) => Some((longer, now)),
        (None, None) => longer.find_map(|longer| more_pulls(longer, now + 1).map(|pulls| (longer, pulls))),
    };
    let small = |count: usize| u8::try_from(count).unwrap_or(u8::MAX);
    plan.map(|(plan_gauge, plan_pulls)| Settle {
        pulls: pulls.map(small),
        gauge: gauge_alone,
        plan: Plan { gauge: plan_gauge, pulls: small(plan_pulls) },
    })
}
