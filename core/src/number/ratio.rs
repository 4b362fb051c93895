//! Exact ratios of lengths: what every comparison with a limit is made of.

use core::cmp::Ordering;

use crate::number::decimal::Decimal;
use crate::number::num;

/// An exact ratio of two whole numbers, such as an extension over a gauge length. 4 in → 5 in *is* 25 % here.
///
/// Comparison is exact: two ratios are equal when they have the same value, whatever their terms.
///
/// ```
/// use tenter_core::Ratio;
///
/// let five = Ratio::new(105 - 100, 100).unwrap();
/// assert_eq!(five, Ratio::new(5_000, 100_000).unwrap());
/// assert_eq!(five.percent(3).to_string(), "5.000");
/// ```
#[derive(Clone, Copy, Debug)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct Ratio {
    num: i64,
    den: i64,
}

impl Ratio {
    /// Nothing.
    pub const ZERO: Self = Self { num: 0, den: 1 };

    /// `num` / `den`; returns `None` unless `den` > 0.
    ///
    /// ```
    /// assert!(tenter_core::Ratio::new(1, 0).is_none());
    /// ```
    #[must_use]
    pub const fn new(num: i64, den: i64) -> Option<Self> {
        if den > 0 { Some(Self { num, den }) } else { None }
    }

    /// The number above the line.
    #[must_use]
    pub const fn numerator(self) -> i64 {
        self.num
    }

    /// The number below the line, always positive.
    #[must_use]
    pub const fn denominator(self) -> i64 {
        self.den
    }

    /// The ratio in percent, rounded to `decimals` places (at most 6), ties away from zero. What does not fit is shown
    /// as the largest number of that sign.
    ///
    /// ```
    /// assert_eq!(tenter_core::Ratio::new(11, 32).unwrap().percent(3).to_string(), "34.375");
    /// ```
    #[must_use]
    pub fn percent(self, decimals: u8) -> Decimal {
        let decimals = Decimal::new(0, decimals).decimals();
        let den = self.den.unsigned_abs();
        let magnitude = self.num.unsigned_abs();
        let (mut whole, mut rest) = num::divide(magnitude, den);
        // Long division, digit by digit, ten times the rest by adding it up: no more than 64 bits, where a wide division
        // costs a small processor more room than this loop.
        for _ in 0..decimals.saturating_add(2) {
            let (mut tenfold, mut digit) = (0u64, 0);
            for _ in 0..10 {
                tenfold += rest;
                if tenfold >= den {
                    tenfold -= den;
                    digit += 1;
                }
            }
            rest = tenfold;
            whole = whole.saturating_mul(10).saturating_add(digit);
        }
        let scaled = i64::try_from(whole.saturating_add((2 * rest >= den).into())).unwrap_or(i64::MAX);
        match (self.num < 0, scaled) {
            (false, scaled) => Decimal::new(scaled, decimals),
            (true, i64::MAX) => Decimal::new(i64::MIN, decimals),
            (true, scaled) => Decimal::new(-scaled, decimals),
        }
    }

    /// The ratio in percent as the nearest `f32`: for uncertainties and drawings, never for a comparison.
    #[must_use]
    pub fn percent_f32(self) -> f32 {
        100.0 * num::float(self.num) / num::float(self.den)
    }

    /// How many points (1 point = 1 %) this lies above `other`, exactly 0 for equal ratios: for uncertainties only.
    pub(crate) fn points_above(self, other: Self) -> f32 {
        let above = product(self.num, other.den) - product(other.num, self.den);
        let size = 100.0 * num::float_wide(above.unsigned_abs()) / (num::float(self.den) * num::float(other.den));
        if above < 0 { -size } else { size }
    }

    /// The exact difference; none where its terms do not fit.
    pub(crate) fn minus(self, other: Self) -> Option<Self> {
        if self.den == other.den {
            return Some(Self { num: self.num.checked_sub(other.num)?, ..self });
        }
        let num = product(self.num, other.den) - product(other.num, self.den);
        Some(Self { num: i64::try_from(num).ok()?, den: i64::try_from(product(self.den, other.den)).ok()? })
    }

    /// The same without its sign.
    pub(crate) const fn abs(self) -> Self {
        Self { num: self.num.saturating_abs(), ..self }
    }
}

impl PartialEq for Ratio {
    fn eq(&self, other: &Self) -> bool {
        self.cmp(other) == Ordering::Equal
    }
}

impl Eq for Ratio {}

impl PartialOrd for Ratio {
    fn partial_cmp(&self, other: &Self) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}

impl Ord for Ratio {
    fn cmp(&self, other: &Self) -> Ordering {
        product(self.num, other.den).cmp(&product(other.num, self.den))
    }
}

#[inline(never)] // Long on a small processor; once is enough.
fn product(a: i64, b: i64) -> i128 {
    i128::from(a) * i128::from(b)
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::string::ToString;

    #[test]
    fn five_percent_is_five_percent() {
        let five = Ratio::new(5_000, 100_000).unwrap();
        for gauge in 1..=2000 {
            // Gauge 20·g, extended 21·g: a naive f32 quotient gives 4.99999… for many of these.
            assert_eq!(Ratio::new(gauge, 20 * gauge).unwrap(), five);
            assert!(Ratio::new(gauge * 1000 - 1, 20_000 * gauge).unwrap() < five);
        }
    }

    #[test]
    fn rounds_half_away_from_zero() {
        let percent = |num, den, decimals| Ratio::new(num, den).unwrap().percent(decimals).to_string();
        assert_eq!(percent(1, 2000, 1), "0.1");
        assert_eq!(percent(-1, 2000, 1), "-0.1");
        assert_eq!(percent(5, 9, 2), "55.56");
        assert_eq!(percent(i64::MIN, 1, 6), Decimal::new(i64::MIN, 6).to_string());
        assert_eq!(percent(i64::MAX, 1, 6), Decimal::new(i64::MAX, 6).to_string());
    }
}
