//! The pulls that count, and what they say by themselves.

use heapless::Vec;

use crate::number::list::list;
use crate::number::num;
use crate::reading::length::Length;
use crate::reading::pull_test::{MAX_PULLS, PullTest};
use crate::reading::scale::Scale;
use crate::statistics::discordant::{self, Discordant, PriorVariance};
use crate::statistics::scatter::Scatter;
use crate::statistics::stats::Series;

/// The pulls of a test without the one that settled the cloth and without one far from its fellows.
#[derive(Clone, Debug)]
pub(crate) struct Kept {
    /// Sum and number of the looks that count, in steps.
    pub looks: Series,
    /// Extended lengths, in steps.
    pub pulls: Series,
    /// The variance of one reading from rounding alone, in points².
    pub rounding: f32,
    /// Mean stretch, in points.
    pub stretch: f32,
    /// Σ (pull − mean)², in points².
    pub squares: f32,
    /// The pull that lies far from the others, counted from 0 over all pulls of the test.
    pub odd: Option<u8>,
    /// Whether it is left out; of two, nobody can say which is the odd one.
    pub left_out: bool,
    /// The slope from pull to pull where they rise or fall, in points.
    pub trend: Option<f32>,
}

impl Kept {
    pub fn of(test: &PullTest, scatter: Scatter) -> Self {
        let looks: Series = test.counted_looks().map(|look| i64::from(look.length.steps())).collect();
        let gauge = mean(&looks);
        let points = |steps: f32| 100.0 * steps / gauge;
        let rounding = rounding(test.scale(), gauge);
        let first = test.settling_pull().map_or(0, |settling| settling + 1);
        let steps = || test.pulls().iter().skip(first).map(|pull| i64::from(pull.steps()));
        let mut pulls: Series = steps().collect();
        let (mut odd, mut left_out, mut slope) = (None, false, None);
        let prior = scatter.prior(test.load()).filter(|_| pulls.count() > 1);
        if let Some(prior) = prior {
            let each: Vec<f32, MAX_PULLS> = list(steps().map(|pull| points(num::float(pull) - gauge)));
            let stretch = median(&each).max(0.0);
            let variance = prior.pull + prior.pull_per_point * stretch * stretch + rounding;
            let known = PriorVariance { variance, dof: prior.pull_dof };
            let far = discordant::farthest(&each, known).filter(Discordant::is_odd);
            slope = discordant::trend(&each, known).filter(Discordant::is_odd).map(|trend| trend.off);
            if let Some(far) = far {
                odd = u8::try_from(first + far.index).ok();
                left_out = pulls.count() > 2;
                if left_out {
                    pulls =
                        steps().enumerate().filter(|(index, _)| *index != far.index).map(|(_, pull)| pull).collect();
                }
            }
        }
        let stretch = points(mean(&pulls) - gauge);
        let squares = squares(&pulls, gauge);
        Self { looks, pulls, rounding, stretch, squares, odd, left_out, trend: slope }
    }

    /// How many pulls count.
    pub const fn count(&self) -> u32 {
        self.pulls.count()
    }

    /// The mean gauge length, in steps.
    pub fn gauge(&self) -> f32 {
        mean(&self.looks)
    }

    /// A length in points above the mean gauge length.
    pub fn points(&self, length: Length) -> f32 {
        100.0 * (num::float(length.steps().into()) - self.gauge()) / self.gauge()
    }

    /// Σ (look − mean)², in points².
    pub fn look_squares(&self) -> f32 {
        squares(&self.looks, self.gauge())
    }

    /// Σ (reading − mean)² of lengths in steps, in points².
    pub fn squares_of(&self, lengths: &Series) -> f32 {
        squares(lengths, self.gauge())
    }

    /// Whether a pull of the test, counted from 0, was left out as odd.
    pub fn leaves_out(&self, pull: u8) -> bool {
        self.left_out && self.odd == Some(pull)
    }
}

/// The variance of one length from rounding alone, in points² of a gauge length in steps.
fn rounding(scale: Scale, gauge: f32) -> f32 {
    let one_point = gauge / 100.0;
    scale.variance() / (one_point * one_point)
}

/// Σ (x − mean)² of lengths in steps, in points² of a gauge length.
fn squares(lengths: &Series, gauge: f32) -> f32 {
    let degrees = num::float(i64::from(lengths.count()) - 1);
    lengths.variance().map_or(0.0, |variance| degrees * variance * (100.0 / gauge) * (100.0 / gauge))
}

/// The mean; 0 of nothing.
fn mean(series: &Series) -> f32 {
    num::float(series.sum()) / num::float(i64::from(series.count()).max(1))
}

/// The middle reading, or the mean of the two in the middle.
fn median(readings: &[f32]) -> f32 {
    let mut sorted: Vec<f32, MAX_PULLS> = list(readings.iter().copied());
    sorted.sort_unstable_by(f32::total_cmp);
    let at = |index: usize| sorted.get(index).copied().unwrap_or(0.0);
    let half = sorted.len() / 2;
    if sorted.len().is_multiple_of(2) { 0.5 * (at(half.saturating_sub(1)) + at(half)) } else { at(half) }
}
