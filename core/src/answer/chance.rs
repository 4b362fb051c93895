//! The chance that the true figure lies on the asked side of a limit.
//!
//! "Stretch at least p", "growth at least g" and "recovery at least r" are all linear in the lengths, so each is
//! put as a margin of lengths and not as a quotient: exact where the margin is zero, and free of the skew of a
//! quotient of small differences. The idea of the conformance probability is that of JCGM 106:2012 § 7.

use crate::answer::figures::{Readings, RestReadings};
use crate::number::num;
use crate::number::ratio::Ratio;
use crate::statistics::rectangular;
use crate::statistics::scatter::ASSUMED_DOF;
use crate::statistics::student;
use crate::statistics::uncertainty::{self, Variance};

/// "Is this figure at least that limit?", put to the readings: a margin in steps, positive for yes, and its errors.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Question {
    margin: f32,
    /// Sensitivities of the margin to the gauge length and, for recovery, to the extended length.
    by_gauge: f32,
    by_extended: f32,
    /// Variance of one reading from the scale alone.
    reading: f32,
    /// Variance of one reading of the length that was repeated, its scatter included; sensitivity ± 1.
    repeated: Variance,
    count: i64,
    one_end: bool,
    scatter_counts: bool,
}

impl Question {
    /// Mean extended length against (1 + limit) gauge lengths.
    pub fn stretch_at_least(readings: &Readings, limit: Ratio) -> Self {
        let (p, whole) = (limit.numerator(), limit.denominator());
        let exact = whole * readings.extended_sum - readings.pulls * (whole + p) * readings.gauge;
        Self {
            by_gauge: 1.0 + part(p, whole),
            repeated: readings.pull_variance,
            count: readings.pulls,
            ..Self::new(readings, exact, whole * readings.pulls)
        }
    }

    /// Mean recovered length against (1 + limit) gauge lengths.
    pub fn growth_at_least(readings: &Readings, rest: &RestReadings, limit: Ratio) -> Self {
        let (g, whole) = (limit.numerator(), limit.denominator());
        let exact = whole * rest.recovered_sum - rest.readings * (whole + g) * readings.gauge;
        Self {
            by_gauge: 1.0 + part(g, whole),
            repeated: rest.variance,
            count: rest.readings,
            ..Self::new(readings, exact, whole * rest.readings)
        }
    }

    /// (1 − limit) extended + limit gauge against the recovered length.
    pub fn recovery_at_least(readings: &Readings, rest: &RestReadings, limit: Ratio) -> Self {
        let (r, whole) = (limit.numerator(), limit.denominator());
        let exact = (whole - r) * rest.extended_sum - whole * rest.recovered_sum + r * rest.readings * readings.gauge;
        Self {
            by_gauge: part(r, whole),
            by_extended: part(whole - r, whole),
            repeated: rest.variance,
            count: rest.readings,
            ..Self::new(readings, exact, whole * rest.readings)
        }
    }

    fn new(readings: &Readings, exact: i64, scale: i64) -> Self {
        Self {
            margin: part(exact, scale),
            by_gauge: 0.0,
            by_extended: 0.0,
            reading: readings.gauge_variance.value,
            repeated: readings.gauge_variance,
            count: 1,
            one_end: readings.one_end,
            scatter_counts: readings.scatter_counts,
        }
    }

    /// The chance of yes, from these readings.
    pub fn chance(&self) -> f32 {
        self.chance_of(self.margin, self.repeated, self.count)
    }

    /// The chance of yes that a test would give, if it saw the same figures on a gauge length `longer` times this
    /// one, read `more` times more often.
    pub fn chance_if(&self, longer: f32, more: i64) -> f32 {
        let between_pulls = (self.repeated.value - self.reading).max(0.0);
        let count = self.count + more;
        let dof = if self.repeated.dof.is_finite() {
            self.repeated.dof + num::float(more)
        } else if self.scatter_counts && count > 1 {
            ASSUMED_DOF + num::float(more)
        } else {
            f32::INFINITY
        };
        let repeated = Variance { value: self.reading + between_pulls * longer * longer, dof };
        self.chance_of(self.margin * longer, repeated, count)
    }

    fn chance_of(&self, margin: f32, repeated: Variance, count: i64) -> f32 {
        if count == 1 && self.one_end && repeated.dof.is_infinite() {
            let half_width = num::sqrt(3.0 * self.reading);
            let widths = [half_width, half_width * self.by_gauge, half_width * self.by_extended];
            if let Some(chance) = rectangular::chance_not_negative(margin, &widths) {
                return chance;
            }
        }
        let reading = Variance::certain(self.reading);
        let total = uncertainty::sum(&[
            reading.times(self.by_gauge),
            reading.times(self.by_extended).over(count),
            repeated.over(count),
        ]);
        student::upper_tail(-margin / total.u(), total.dof)
    }

    /// Whether the figure lies exactly on the limit, where no further reading of the same could tell.
    pub fn is_on_limit(&self) -> bool {
        self.margin == 0.0
    }
}

fn part(part: i64, whole: i64) -> f32 {
    num::float(part) / num::float(whole)
}
