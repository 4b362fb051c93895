//! Decimal texts: reading them as exact fractions, and writing numbers without float formatting, so that the
//! handheld and the terminal show the same digits.

use core::fmt;
use heapless::String;

use crate::number::num;

/// The text of a number. As long as a line of the handheld: code for another length would be compiled anew.
///
/// ```
/// assert_eq!(tenter_core::Text::new().capacity(), 42);
/// ```
pub type Text = String<42>;

/// An exact fraction read from a text; `den` is positive.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Fraction {
    pub num: i64,
    pub den: i64,
}

/// Why a text is no decimal number.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum DecimalError {
    NotANumber,
    /// `1,250`: three digits after a comma may be a decimal comma or a thousands separator.
    AmbiguousComma,
    /// Above 10¹⁷ units of its last decimal.
    TooLarge,
    /// Finer than 10⁻⁹.
    TooFine,
}

/// Decimals that are read; further zeros are passed over.
const MOST_DECIMALS: u8 = 9;
/// The largest number of units of its last decimal that is read.
const MOST: i64 = 100_000_000_000_000_000;

/// Reads `12`, `10.5` or `10,5`.
pub(crate) fn parse(text: &str) -> Result<Fraction, DecimalError> {
    let (mut num, mut den) = (0i64, 1i64);
    let (mut digits, mut separator) = (0u8, None);
    let mut after = 0u8;
    for c in text.bytes() {
        match c {
            b'0'..=b'9' => {
                digits = digits.saturating_add(1);
                after = after.saturating_add(separator.is_some().into());
                if after > MOST_DECIMALS && c != b'0' {
                    return Err(DecimalError::TooFine);
                }
                if after <= MOST_DECIMALS {
                    num = num.saturating_mul(10).saturating_add(i64::from(c - b'0'));
                    den = if separator.is_some() { den.saturating_mul(10) } else { den };
                }
                if num > MOST {
                    return Err(DecimalError::TooLarge);
                }
            }
            b'.' | b',' if separator.is_none() => separator = Some(c),
            _ => return Err(DecimalError::NotANumber),
        }
    }
    match (digits, separator, after) {
        (0, _, _) => Err(DecimalError::NotANumber),
        (_, Some(b','), 3) => Err(DecimalError::AmbiguousComma),
        _ => Ok(Fraction { num, den }),
    }
}

/// A number of tenths, hundredths or thousandths, shown with exactly that many decimals.
///
/// ```
/// use tenter_core::Decimal;
///
/// assert_eq!(Decimal::new(50, 1).to_string(), "5.0");
/// assert_eq!(Decimal::new(-4, 2).to_string(), "-0.04");
/// assert_eq!(Decimal::round(10.583, 1).to_string(), "10.6");
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Decimal {
    scaled: i64,
    decimals: u8,
}

impl Decimal {
    /// `scaled` counts units of 10⁻ᵈ, with `d` = `decimals` from 0 to 6 (more is taken as 6).
    ///
    /// ```
    /// assert_eq!(tenter_core::Decimal::new(34_375, 3).to_string(), "34.375");
    /// ```
    #[must_use]
    pub const fn new(scaled: i64, decimals: u8) -> Self {
        Self { scaled, decimals: if decimals > 6 { 6 } else { decimals } }
    }

    /// Rounds `value` to `decimals` places, ties away from zero. Not a number becomes 0.
    ///
    /// ```
    /// assert_eq!(tenter_core::Decimal::round(0.8687, 2).to_string(), "0.87");
    /// ```
    #[must_use]
    pub fn round(value: f32, decimals: u8) -> Self {
        let places = Self::new(0, decimals);
        Self { scaled: num::round(value * num::float(places.unit())), ..places }
    }

    /// Rounds `value` down to `decimals` places, so that a promise of "at least" is never rounded up.
    ///
    /// ```
    /// assert_eq!(tenter_core::Decimal::floor(3.68, 1).to_string(), "3.6");
    /// assert_eq!(tenter_core::Decimal::floor(-0.01, 1).to_string(), "-0.1");
    /// ```
    #[must_use]
    pub fn floor(value: f32, decimals: u8) -> Self {
        let nearest = Self::round(value, decimals);
        let too_high = num::float(nearest.scaled) > value * num::float(nearest.unit());
        Self { scaled: nearest.scaled.saturating_sub(too_high.into()), ..nearest }
    }

    /// Rounds `value` up to `decimals` places, so that a promise of "at most" is never rounded down.
    ///
    /// ```
    /// assert_eq!(tenter_core::Decimal::ceil(3.61, 1).to_string(), "3.7");
    /// ```
    #[must_use]
    pub fn ceil(value: f32, decimals: u8) -> Self {
        let floor = Self::floor(-value, decimals);
        Self { scaled: floor.scaled.saturating_neg(), ..floor }
    }

    /// The count of units of 10⁻ᵈ.
    #[must_use]
    pub const fn scaled(self) -> i64 {
        self.scaled
    }

    /// How many decimals are shown.
    #[must_use]
    pub const fn decimals(self) -> u8 {
        self.decimals
    }

    /// Its text without the machinery of `core::fmt`, for a small processor; the same as `to_string` gives.
    #[must_use]
    pub fn text(self) -> Text {
        let mut text = Text::new();
        if self.scaled < 0 {
            push(&mut text, "-");
        }
        write(&mut text, self.scaled.unsigned_abs(), self.unit().unsigned_abs(), false);
        text
    }

    pub(crate) const fn unit(self) -> i64 {
        let mut unit = 1;
        let mut left = self.decimals;
        while left > 0 {
            unit *= 10;
            left -= 1;
        }
        unit
    }
}

impl fmt::Display for Decimal {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(&self.text())
    }
}

/// Writes the digits of `scaled` with a point behind those of `unit`, a power of ten; trimmed, without zeros behind it.
/// Each digit is counted down: no division.
pub(crate) fn write(text: &mut Text, scaled: u64, unit: u64, trimmed: bool) {
    let mut place = 1;
    while let Some(larger) = u64::checked_mul(place, 10).filter(|larger| *larger <= scaled.max(unit)) {
        place = larger;
    }
    let mut rest = scaled;
    loop {
        let (digit, after) = num::divide(rest, place);
        rest = after;
        push(text, usize::try_from(digit).ok().and_then(|digit| DIGITS.get(digit)).unwrap_or(&"?"));
        if place == 1 || trimmed && place <= unit && rest == 0 {
            break;
        }
        if place == unit {
            push(text, ".");
        }
        (place, _) = num::divide(place, 10);
    }
}

const DIGITS: [&str; 10] = ["0", "1", "2", "3", "4", "5", "6", "7", "8", "9"];

/// Writes on; the longest number takes half the room.
pub(crate) fn push(text: &mut Text, more: &str) {
    let _ = text.push_str(more);
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::string::ToString;

    #[test]
    fn reads_points_and_commas_exactly() {
        assert_eq!(parse("104.5"), Ok(Fraction { num: 1045, den: 10 }));
        assert_eq!(parse("10,5"), Ok(Fraction { num: 105, den: 10 }));
        assert_eq!(parse("1.000"), Ok(Fraction { num: 1000, den: 1000 }));
        assert_eq!(parse("5."), Ok(Fraction { num: 5, den: 1 }));
        assert_eq!(parse("0.5000000000000"), Ok(Fraction { num: 500_000_000, den: 1_000_000_000 }));
    }

    #[test]
    fn refuses_what_could_mean_two_things() {
        assert_eq!(parse("1,000"), Err(DecimalError::AmbiguousComma));
        assert_eq!(parse("1.2.3"), Err(DecimalError::NotANumber));
        assert_eq!(parse("."), Err(DecimalError::NotANumber));
        assert_eq!(parse("inf"), Err(DecimalError::NotANumber));
        assert_eq!(parse("99999999999999999999"), Err(DecimalError::TooLarge));
        assert_eq!(parse("0.0000000001"), Err(DecimalError::TooFine));
    }

    #[test]
    fn pads_and_signs() {
        assert_eq!(std::format!("{:>7}", Decimal::new(-35, 2)), "  -0.35");
        assert_eq!(Decimal::round(f32::NAN, 1).to_string(), "0.0");
        assert_eq!(Decimal::new(7, 0).to_string(), "7");
        assert_eq!(Decimal::new(i64::MIN, 3).to_string(), "-9223372036854775.808");
    }
}
