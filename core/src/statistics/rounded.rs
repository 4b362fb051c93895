//! Readings that are rounded to a scale, whose rounding they may have in common.

use crate::number::num;
use crate::statistics::mixture::Degrees;

/// The squared scale of one rounded reading with its degrees of freedom, and how much of it all readings have in common.
///
/// ```
/// use tenter_core::rounded::Rounded;
///
/// // On divisions of 1, rounding alone: however often it is read, it stays.
/// let still = Rounded::new(1.0 / 12.0, f32::INFINITY, 1.0 / 12.0, 0.0);
/// assert_eq!(still.of_mean(1.0), still.of_mean(10.0));
/// // Beside a scatter of half a division nearly all of it averages out.
/// let moving = Rounded::new(0.25 + 1.0 / 12.0, f32::INFINITY, 1.0 / 12.0, 0.0);
/// assert!(moving.of_mean(10.0) < 1.1 * moving.of_mean(1.0) / 10.0);
/// ```
#[derive(Clone, Copy, Debug)]
pub struct Rounded {
    /// In the square of the readings' unit, the rounding included.
    pub scale: f32,
    /// Its degrees of freedom, above 2.
    pub dof: f32,
    degrees: Degrees,
    common: f32,
}

impl Rounded {
    /// From the squared scale of one reading, the rounding d²/12 included, and what scatters besides; above 0 each but the
    /// last.
    ///
    /// No reading is better than its scale; and where the scatter is small beside a division, rounding is common to all
    /// readings and does not average out: the error of a mean of rounded readings is Σ exp(−4π²k²σ²/d²) d²/(2π²k²) (B.
    /// Widrow, I. Kollár, *Quantization Noise*, 2008, from memory), here its first term at the upper bound d²/12.
    #[must_use]
    pub fn new(scale: f32, dof: f32, rounding: f32, besides: f32) -> Self {
        /// 4π²/12.
        const FALL: f32 = 3.289_868;
        let scale = scale.max(rounding);
        let exponent = FALL * (scale + besides - rounding).max(0.0) / rounding;
        let common = if exponent > 15.0 { 0.0 } else { rounding * num::exp_falling(-exponent) };
        Self { scale, dof, degrees: Degrees::new(dof), common }
    }

    /// The variance of the mean of `count` readings: what they have in common does not average out.
    #[must_use]
    pub fn of_mean(self, count: f32) -> f32 {
        self.degrees.up * (self.scale - self.common) / count + self.common
    }

    /// The same with so many degrees of freedom more.
    pub(crate) fn with_more(self, dof: f32) -> Self {
        if dof == 0.0 {
            return self;
        }
        let dof = self.dof + dof;
        Self { dof, degrees: Degrees::new(dof), ..self }
    }

    pub(crate) const fn degrees(&self) -> &Degrees {
        &self.degrees
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The standard deviation of the true value, flat beforehand, after n readings to the division 1 of a length that scatters by
    /// a known share of it: SciPy 1.17 from the likelihood Π [Φ((k+½−μ)/σ) − Φ((k−½−μ)/σ)], confirmed by mpmath. Columns: σ,
    /// how many equal readings, and that deviation.
    const EQUAL: [(f32, f32, f32); 9] = [
        (2.0, 1.0, 2.020_726),
        (2.0, 5.0, 0.903_789),
        (1.0, 1.0, 1.040_833),
        (1.0, 5.0, 0.466_198),
        (0.5, 1.0, 0.577_350),
        (0.5, 3.0, 0.338_701),
        (0.5, 5.0, 0.263_502),
        (0.25, 1.0, 0.381_881),
        (0.25, 5.0, 0.200_521),
    ];

    /// One reading is exact. Of several equal ones the table's lie wider by at most 2 % from half a division of scatter on;
    /// at a quarter by 8 %, and readings that differ (0 0 0 0 1: 0.160335) narrower: the rule stands for both. With hardly any
    /// scatter nothing averages out: 0.288675 for any number of readings.
    #[test]
    fn rounded_readings_against_their_likelihood() {
        let u = |sigma: f32, count: f32| {
            let rounding = 1.0 / 12.0;
            num::sqrt(Rounded::new(sigma * sigma + rounding, f32::INFINITY, rounding, 0.0).of_mean(count))
        };
        for (sigma, count, expected) in EQUAL {
            let most = if count == 1.0 {
                1e-5
            } else if sigma < 0.5 {
                0.08
            } else {
                0.021
            };
            let got = u(sigma, count);
            assert!(
                (got / expected - 1.0).abs() < most && got < 1.000_1 * expected,
                "{sigma} {count}: {got} {expected}"
            );
        }
        assert!(u(0.25, 5.0) > 0.160_335, "{}", u(0.25, 5.0));
        for count in [1.0, 3.0, 10.0] {
            assert!((u(0.0, count) - 0.288_675).abs() < 1e-5);
        }
    }
}
