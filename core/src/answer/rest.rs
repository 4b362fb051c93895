//! Which readings after release are judged, and when they were made.

use heapless::Vec;

use crate::reading::limit::Demand;
use crate::reading::pull_test::{MAX_RESTS, PullTest, Rest};
use crate::statistics::kept::Kept;
use crate::statistics::stats::Series;

/// Which readings after release count.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Pick {
    /// Those at the longest rest.
    Longest,
    /// Those at the time that is asked; else the last before it; else the first after it.
    At(u32),
}

impl Pick {
    /// Those that a demand is about.
    pub fn of(demand: &Demand) -> Self {
        let asks_rest = demand.growth_at_most.is_some() || demand.recovery_at_least.is_some();
        if asks_rest { Self::At(demand.rest_seconds) } else { Self::Longest }
    }
}

/// When readings were made, beside the time that is asked.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum Timing {
    /// From four fifths of the time to five quarters.
    At,
    /// Growth may still fall: a pass is one, an excess is not.
    Early,
    /// Growth has fallen on: an excess is one, a pass is not.
    Late,
}

impl Timing {
    fn of(seconds: u32, asked: u32) -> Self {
        let (seconds, asked) = (u64::from(seconds), u64::from(asked));
        if seconds * 5 < asked * 4 {
            Self::Early
        } else if seconds * 4 > asked * 5 {
            Self::Late
        } else {
            Self::At
        }
    }
}

/// The readings after release that count.
#[derive(Clone, Debug)]
pub(crate) struct RestReadings {
    pub seconds: u32,
    pub timing: Timing,
    /// Recovered lengths, in steps.
    pub recovered: Series,
    /// The same one by one.
    pub lengths: Vec<i32, MAX_RESTS>,
    /// Sum of the extended lengths of the pulls they follow.
    pub extended_sum: i64,
}

impl RestReadings {
    pub fn of(test: &PullTest, kept: &Kept, pick: Pick) -> Option<Self> {
        // Readings after a pull that was left out count only where there are no others.
        let all_left_out = test.rests().iter().all(|rest| kept.leaves_out(rest.after_pull));
        let believed = |rest: &&Rest| all_left_out || !kept.leaves_out(rest.after_pull);
        let seconds = || test.rests().iter().filter(believed).map(|rest| rest.seconds);
        let longest = seconds().max()?;
        let (timing, wanted) = match pick {
            Pick::Longest => (Timing::At, longest),
            Pick::At(asked) => {
                let timed = |timing| seconds().filter(move |seconds| Timing::of(*seconds, asked) == timing);
                let at = timed(Timing::At).max().map(|seconds| (Timing::At, seconds));
                let early = || timed(Timing::Early).max().map(|seconds| (Timing::Early, seconds));
                let late = || timed(Timing::Late).min().map(|seconds| (Timing::Late, seconds));
                at.or_else(early).or_else(late)?
            }
        };
        let counts = |rest: &&Rest| match (pick, timing) {
            (Pick::At(asked), Timing::At) => Timing::of(rest.seconds, asked) == Timing::At,
            _ => rest.seconds == wanted,
        };
        let mut readings =
            Self { seconds: wanted, timing, recovered: Series::default(), lengths: Vec::new(), extended_sum: 0 };
        for rest in test.rests().iter().filter(believed).filter(counts) {
            readings.recovered.push(rest.recovered.steps().into());
            let _ = readings.lengths.push(rest.recovered.steps()); // Room for all.
            readings.extended_sum += i64::from(test.pulls().get(usize::from(rest.after_pull))?.steps());
        }
        Some(readings)
    }

    pub fn count(&self) -> i64 {
        self.recovered.count().into()
    }

    /// Mean stretch of the pulls they follow, in points.
    pub fn stretch(&self, kept: &Kept) -> f32 {
        kept.points(self.extended_sum, self.count())
    }
}
