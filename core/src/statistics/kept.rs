//! The pulls that count, and what they say by themselves.

use heapless::Vec;

use crate::number::list::list;
use crate::number::num;
use crate::reading::pull_test::{MAX_PULLS, PullTest};
use crate::statistics::discordant::{self, PriorVariance, Suspect};
use crate::statistics::scatter::Scatter;
use crate::statistics::stats::Series;

/// The pulls of a test without the one that settled the cloth and without one far from its fellows.
#[derive(Clone, Debug)]
pub(crate) struct Kept {
    /// Sum and number of the looks that count, in steps.
    pub looks: Series,
    /// Extended lengths, in steps.
    pub pulls: Series,
    /// Points in one step.
    per_step: f32,
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
        let per_step = 100.0 / gauge;
        let rounding = test.scale().variance() * per_step * per_step;
        let first = test.settling_pull().map_or(0, |settling| settling + 1);
        let each: Vec<i32, MAX_PULLS> = list(test.pulls().iter().skip(first).map(|pull| pull.steps()));
        let mut pulls = series(&each);
        let (mut odd, mut left_out, mut slope) = (None, false, None);
        let prior = scatter.prior(test.load()).filter(|_| pulls.count() > 1);
        if let Some(prior) = prior {
            let stretch = (per_step * (median(&each) - gauge)).max(0.0);
            let variance = prior.pull + prior.pull_per_point * stretch * stretch + rounding;
            let known = PriorVariance { variance, dof: prior.pull_dof };
            let squares = per_step * per_step * pulls.squares();
            let even = discordant::are_even(num::float(pulls.count().into()), squares, known);
            let far = if even { None } else { farthest(&each, &pulls, (per_step, squares), known) };
            slope = if even { None } else { trend(&each, &pulls, (per_step, squares), known) };
            if let Some(far) = far {
                odd = u8::try_from(first + far).ok();
                left_out = pulls.count() > 2;
                if left_out {
                    let others = each.iter().enumerate().filter(|(index, _)| *index != far);
                    pulls = others.map(|(_, pull)| i64::from(*pull)).collect();
                }
            }
        }
        let stretch = per_step * (mean(&pulls) - gauge);
        let squares = per_step * per_step * pulls.squares();
        Self { looks, pulls, per_step, rounding, stretch, squares, odd, left_out, trend: slope }
    }

    /// How many pulls count.
    pub const fn count(&self) -> u32 {
        self.pulls.count()
    }

    /// How far the mean of some lengths lies above the mean gauge length, in points.
    pub fn points(&self, sum: i64, count: i64) -> f32 {
        self.per_step * (num::float(sum) / num::float(count) - mean(&self.looks))
    }

    /// Σ (reading − mean)² of lengths in steps, in points².
    pub fn squares_of(&self, lengths: &Series) -> f32 {
        self.per_step * self.per_step * lengths.squares()
    }

    /// Whether one of some lengths, in steps, lies far from the others.
    pub fn has_odd(&self, lengths: &[i32], known: PriorVariance) -> bool {
        let all = series(lengths);
        let (n, squares) = (num::float(all.count().into()), self.squares_of(&all));
        !discordant::are_even(n, squares, known) && farthest(lengths, &all, (self.per_step, squares), known).is_some()
    }

    /// Whether a pull of the test, counted from 0, was left out as odd.
    pub fn leaves_out(&self, pull: u8) -> bool {
        self.left_out && self.odd == Some(pull)
    }
}

/// The place of a length far from the others, in steps; `all` are the same. In whole numbers up to the last: a reading costs a
/// small processor next to nothing so.
fn farthest(lengths: &[i32], all: &Series, (per_step, squares): (f32, f32), known: PriorVariance) -> Option<usize> {
    let count = i64::from(all.count());
    let n = num::float(count);
    if count < 2 {
        return None;
    }
    let mut worst = (0, 0i64);
    for (index, length) in lengths.iter().enumerate() {
        // So many times as far from the mean as there are lengths.
        let off = count * i64::from(*length) - all.sum();
        if off.abs() > worst.1.abs() {
            worst = (index, off);
        }
    }
    let from_mean = per_step * num::float(worst.1) / n;
    Suspect::reading(n, (worst.0, from_mean), squares, known).odd().map(|far| far.index)
}

/// By how many points lengths rise or fall from one to the next, where they do.
fn trend(lengths: &[i32], all: &Series, (per_step, squares): (f32, f32), known: PriorVariance) -> Option<f32> {
    let count = i64::from(all.count());
    if count < 3 {
        return None;
    }
    // Twice the place less the middle one; its sum is 0, so that no mean is taken off.
    let twice: i64 = (1 - count..count).step_by(2).zip(lengths).map(|(place, length)| place * i64::from(*length)).sum();
    let product = 0.5 * per_step * num::float(twice);
    let trend = Suspect::trend(num::float(count), product, squares, known);
    trend.odd().map(|trend| trend.off)
}

fn series(lengths: &[i32]) -> Series {
    lengths.iter().map(|length| i64::from(*length)).collect()
}

/// The mean; 0 of nothing.
fn mean(series: &Series) -> f32 {
    num::float(series.sum()) / num::float(i64::from(series.count()).max(1))
}

/// The middle reading, or the mean of the two in the middle.
fn median(readings: &[i32]) -> f32 {
    let mut sorted: Vec<i32, MAX_PULLS> = list(readings.iter().copied());
    sorted.sort_unstable();
    let at = |index: usize| sorted.get(index).map_or(0, |length| i64::from(*length));
    let half = sorted.len() / 2;
    let below = if sorted.len().is_multiple_of(2) { half.saturating_sub(1) } else { half };
    0.5 * num::float(at(below) + at(half))
}
