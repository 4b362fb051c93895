//! What a pattern asks: limits, ranges and the demand of one role.

use core::fmt;

use crate::number::decimal::{self, Decimal, DecimalError};
use crate::number::ratio::Ratio;
use crate::reading::length::{Length, LengthError, Unit};
use crate::reading::pull_test::{Grain, MAX_LENGTH};

/// A figure that a pattern prints: a percentage to 0.001 %, or a printed gauge (`4in to 5 3/8in`) kept as its pair
/// of lengths, so that a swatch that matches the printed marks exactly also meets the limit exactly.
///
/// ```
/// use tenter_core::{Limit, Unit};
///
/// let printed = Limit::parse("4in to 5 3/8in", Unit::Mm)?;
/// assert_eq!(printed.ratio().percent(3).to_string(), "34.375");
/// # Ok::<(), tenter_core::LimitError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct Limit(Kind);

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
enum Kind {
    /// Thousandths of a percent.
    Percent(u32),
    Marks {
        gauge: Length,
        extended: Length,
    },
}

impl Limit {
    /// The largest percentage taken: 1000 %.
    pub const MAX_MILLI_PERCENT: u32 = 1_000_000;

    /// A percentage, in thousandths of a percent.
    ///
    /// # Errors
    ///
    /// [`LimitError::TooLarge`] above 1000 %.
    ///
    /// ```
    /// let five = tenter_core::Limit::milli_percent(5_000)?;
    /// assert_eq!(five.ratio().percent(0).to_string(), "5");
    /// # Ok::<(), tenter_core::LimitError>(())
    /// ```
    pub const fn milli_percent(thousandths: u32) -> Result<Self, LimitError> {
        if thousandths > Self::MAX_MILLI_PERCENT {
            return Err(LimitError::TooLarge);
        }
        Ok(Self(Kind::Percent(thousandths)))
    }

    /// A printed gauge: cloth of `gauge` must reach `extended`.
    ///
    /// # Errors
    ///
    /// [`LimitError::BadMarks`] unless 0 < gauge ≤ extended ≤ [`MAX_LENGTH`], [`LimitError::TooLarge`] above 1000 %.
    ///
    /// ```
    /// use tenter_core::{Length, Limit};
    ///
    /// assert!(Limit::marks(Length::from_mm(100), Length::from_mm(90)).is_err());
    /// ```
    pub fn marks(gauge: Length, extended: Length) -> Result<Self, LimitError> {
        if gauge <= Length::ZERO || extended < gauge || extended > MAX_LENGTH {
            return Err(LimitError::BadMarks);
        }
        let limit = Self(Kind::Marks { gauge, extended });
        let most = Self(Kind::Percent(Self::MAX_MILLI_PERCENT));
        if limit.ratio() > most.ratio() { Err(LimitError::TooLarge) } else { Ok(limit) }
    }

    /// Reads `5%`, `5`, `34,5 %`, `5 percent`, `about 5%` or `4in to 5 3/8in`; bare lengths are taken in `default`.
    ///
    /// # Errors
    ///
    /// A text that is neither, with the reason.
    ///
    /// ```
    /// use tenter_core::{Limit, Unit};
    ///
    /// assert_eq!(Limit::parse("5 %", Unit::Mm), Limit::milli_percent(5_000));
    /// ```
    pub fn parse(text: &str, default: Unit) -> Result<Self, LimitError> {
        let text = without_about(text.trim());
        if text.is_empty() {
            return Err(LimitError::Empty);
        }
        let Some((gauge, extended)) = split_at(text, " to ") else {
            return Self::parse_percent(text);
        };
        if text.contains('%') {
            return Err(LimitError::PercentInMarks);
        }
        Self::marks(Length::parse(gauge, default)?, Length::parse(extended, default)?)
    }

    fn parse_percent(text: &str) -> Result<Self, LimitError> {
        let (number, signed) = without_sign(text);
        let value = match decimal::parse(number) {
            Ok(value) => value,
            Err(DecimalError::TooLarge) => return Err(LimitError::TooLarge),
            Err(DecimalError::TooFine) => return Err(LimitError::TooFine),
            Err(DecimalError::AmbiguousComma) => return Err(LimitError::AmbiguousComma),
            Err(DecimalError::NotANumber) => return Err(LimitError::NotALimit),
        };
        let thousandths = i128::from(value.num) * 1000;
        match (thousandths.checked_rem(value.den.into()), thousandths.checked_div(value.den.into())) {
            (Some(0), Some(whole)) => {
                let milli = u32::try_from(whole).map_err(|_| LimitError::TooLarge)?;
                // 0.05 is 5 % to a calculator; with a sign it is what it says.
                if !signed && (1..1000).contains(&milli) {
                    return Err(LimitError::Share { milli });
                }
                Self::milli_percent(milli)
            }
            _ => Err(LimitError::TooFine),
        }
    }

    /// The limit as an exact ratio.
    #[must_use]
    pub fn ratio(self) -> Ratio {
        let ratio = match self.0 {
            Kind::Percent(milli) => Ratio::new(milli.into(), 100_000),
            Kind::Marks { gauge, extended } => {
                let (gauge, extended) = (i64::from(gauge.steps()), i64::from(extended.steps()));
                Ratio::new(extended - gauge, gauge)
            }
        };
        // Both denominators are positive by construction.
        ratio.unwrap_or(Ratio::ZERO)
    }

    /// The pair of lengths, when the limit is a printed gauge.
    ///
    /// ```
    /// use tenter_core::{Length, Limit};
    ///
    /// let (four, five) = (Length::from_inch_64ths(256), Length::from_inch_64ths(320));
    /// assert_eq!(Limit::marks(four, five).unwrap().printed_marks(), Some((four, five)));
    /// ```
    #[must_use]
    pub const fn printed_marks(self) -> Option<(Length, Length)> {
        match self.0 {
            Kind::Percent(_) => None,
            Kind::Marks { gauge, extended } => Some((gauge, extended)),
        }
    }
}

impl fmt::Display for Limit {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} %", short(self.ratio().percent(3)))
    }
}

/// A number without the zeros at its end.
fn short(number: Decimal) -> Decimal {
    let (mut scaled, mut decimals) = (number.scaled(), number.decimals());
    while decimals > 0 && scaled % 10 == 0 {
        scaled /= 10;
        decimals -= 1;
    }
    Decimal::new(scaled, decimals)
}

/// Thousandths as a number without the zeros at its end.
fn shown(milli: u32) -> Decimal {
    short(Decimal::new(milli.into(), 3))
}

/// A text without the word that says it is rough.
fn without_about(text: &str) -> &str {
    const ABOUT: [&str; 7] = ["about", "approximately", "approx.", "approx", "around", "roughly", "circa"];
    let rest = ABOUT.into_iter().find_map(|word| {
        let (head, rest) = text.split_at_checked(word.len())?;
        head.eq_ignore_ascii_case(word).then_some(rest)
    });
    rest.unwrap_or(text).trim_start()
}

/// The number of a percentage, and whether it had its sign or the word for it.
fn without_sign(text: &str) -> (&str, bool) {
    const SIGNS: [&str; 3] = ["%", "percent", "per cent"];
    let number = SIGNS.into_iter().find_map(|sign| {
        let (number, tail) = text.split_at_checked(text.len().checked_sub(sign.len())?)?;
        tail.eq_ignore_ascii_case(sign).then_some(number)
    });
    (number.unwrap_or(text).trim(), number.is_some())
}

/// The two ends of `20-30%`, of which each begins with a digit: `-5%` has one.
fn split_dash(text: &str) -> Option<(&str, &str)> {
    let (low, high) = text.split_once(['-', '\u{2013}'])?;
    let digit = |text: &str| text.trim().bytes().next().is_some_and(|c| c.is_ascii_digit());
    (digit(low) && digit(high)).then(|| (low.trim(), high.trim()))
}

/// What stands before and after the first `mark`. `str::split_once` does the same, but its search for a text, unlike
/// that for a character, holds index checks that stay in the program.
fn split_at<'t>(text: &'t str, mark: &str) -> Option<(&'t str, &'t str)> {
    text.char_indices().find_map(|(at, _)| {
        let (head, tail) = text.split_at_checked(at)?;
        Some((head, tail.strip_prefix(mark)?))
    })
}

/// An error from reading a [`Limit`].
///
/// ```
/// use tenter_core::{Limit, LimitError, Unit};
///
/// assert_eq!(Limit::parse("5 mm", Unit::Mm), Err(LimitError::NotALimit));
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum LimitError {
    /// There is no text.
    Empty,
    /// Neither a percentage nor a pair of lengths.
    NotALimit,
    /// A comma with three digits after it can be read two ways.
    AmbiguousComma,
    /// Finer than 0.001 %.
    TooFine,
    /// A bare number between 0 and 1: a share of one, or a percentage that is less than can be read.
    Share {
        /// The number in thousandths.
        milli: u32,
    },
    /// Above 1000 %.
    TooLarge,
    /// `20% to 30%`: percentages where lengths belong.
    PercentInMarks,
    /// The printed gauge is not two lengths, the first above zero and the second no shorter.
    BadMarks,
    /// A range whose lower end lies above its upper end.
    UpsideDown,
    /// One of the two lengths cannot be read.
    Length(LengthError),
}

impl From<LengthError> for LimitError {
    fn from(error: LengthError) -> Self {
        Self::Length(error)
    }
}

impl fmt::Display for LimitError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Empty => "nothing given; type a percentage such as 5% or a printed gauge such as 4in to 5 3/8in",
            Self::NotALimit => "not a limit; type a percentage such as 5%, a range such as 20%..30%, or 4in to 5 3/8in",
            Self::AmbiguousComma => "a comma with three digits can be read two ways; type 34.375% with a point",
            Self::TooFine => "finer than 0.001 %; type at most three decimals",
            Self::TooLarge => "above 1000 %; type the gain, so that 10 cm to 15 cm is 50%",
            Self::PercentInMarks => "for a range of percentages type two dots, such as 20%..30%",
            Self::BadMarks => "a printed gauge goes from a length to a longer one, such as 4in to 5 3/8in",
            Self::UpsideDown => "the range is upside down; type the smaller figure first, such as 20%..30%",
            Self::Length(error) => return error.fmt(f),
            Self::Share { milli } => {
                let (number, percent) = (shown(*milli), shown(milli.saturating_mul(100)));
                // Under a tenth of a percent no reading tells one from the other.
                return match milli {
                    ..100 => write!(f, "{number} % is less than can be read; type {percent}%"),
                    _ => write!(f, "can be read two ways; type {percent}% or {number}%"),
                };
            }
        })
    }
}

impl core::error::Error for LimitError {}

/// Least and most, either of which may be absent.
///
/// ```
/// use tenter_core::{Range, Unit};
///
/// let range = Range::parse("20%..30%", Unit::Mm)?;
/// assert!(range.at_least.is_some() && range.at_most.is_some());
/// # Ok::<(), tenter_core::LimitError>(())
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct Range {
    /// The least that will do.
    pub at_least: Option<Limit>,
    /// The most that will do.
    pub at_most: Option<Limit>,
}

impl Range {
    /// Reads `5%` (at least), `20%..30%`, `20-30%`, `..30%` (at most), `20%..`; each end as [`Limit::parse`] reads it.
    ///
    /// # Errors
    ///
    /// What [`Limit::parse`] says of an end, or [`LimitError::UpsideDown`].
    ///
    /// ```
    /// use tenter_core::{Limit, Range, Unit};
    ///
    /// let most = Range { at_least: None, at_most: Limit::milli_percent(30_000).ok() };
    /// assert_eq!(Range::parse("..30%", Unit::Mm), Ok(most));
    /// ```
    pub fn parse(text: &str, default: Unit) -> Result<Self, LimitError> {
        let text = without_about(text.trim());
        let dashed = || if split_at(text, " to ").is_some() { None } else { split_dash(text) };
        let Some((low, high)) = split_at(text, "..").or_else(dashed) else {
            return Limit::parse(text, default).map(|limit| Self { at_least: Some(limit), at_most: None });
        };
        let end = |text: &str| match text.trim() {
            "" => Ok(None),
            // `0...5%` may have lost a dot or gained one.
            text if text.starts_with('.') => Err(LimitError::NotALimit),
            text => Limit::parse(text, default).map(Some),
        };
        let range = Self { at_least: end(low)?, at_most: end(high)? };
        match (range.at_least, range.at_most) {
            (None, None) => Err(LimitError::Empty),
            (Some(low), Some(high)) if low.ratio() > high.ratio() => Err(LimitError::UpsideDown),
            _ => Ok(range),
        }
    }

    /// Whether nothing is asked.
    #[must_use]
    pub const fn is_empty(&self) -> bool {
        self.at_least.is_none() && self.at_most.is_none()
    }
}

/// The time after release at which growth and recovery are asked, in seconds, unless a demand says otherwise: 30 min, the
/// later of the two rests of EN 14704-1:2005, which ISO 20932-1 follows.
pub const DEFAULT_REST_SECONDS: u32 = 1800;

/// What one role of a pattern view asks of a cloth: stretch per grain, most growth, least recovery.
///
/// ```
/// use tenter_core::{Demand, Grain, Range, Unit};
///
/// let demand = Demand::for_grain(Grain::Crosswise, Range::parse("5%", Unit::Mm)?);
/// assert!(demand.stretch(Grain::Lengthwise).is_empty());
/// # Ok::<(), tenter_core::LimitError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct Demand {
    /// Stretch along the warp or the wales.
    pub lengthwise: Range,
    /// Stretch along the weft or the courses.
    pub crosswise: Range,
    /// Stretch at 45° to both.
    pub bias: Range,
    /// The most growth that will do.
    pub growth_at_most: Option<Limit>,
    /// The least recovery that will do: the share of the extension given back.
    pub recovery_at_least: Option<Limit>,
    /// The time after release at which growth and recovery are asked, in seconds.
    pub rest_seconds: u32,
}

/// Nothing, at [`DEFAULT_REST_SECONDS`].
impl Default for Demand {
    fn default() -> Self {
        Self {
            lengthwise: Range::default(),
            crosswise: Range::default(),
            bias: Range::default(),
            growth_at_most: None,
            recovery_at_least: None,
            rest_seconds: DEFAULT_REST_SECONDS,
        }
    }
}

impl Demand {
    /// A demand that asks for stretch along one grain only.
    ///
    /// ```
    /// use tenter_core::{Demand, Grain, Range};
    ///
    /// assert_eq!(Demand::for_grain(Grain::Bias, Range::default()), Demand::default());
    /// ```
    #[must_use]
    pub fn for_grain(grain: Grain, stretch: Range) -> Self {
        let mut demand = Self::default();
        match grain {
            Grain::Lengthwise => demand.lengthwise = stretch,
            Grain::Crosswise => demand.crosswise = stretch,
            Grain::Bias => demand.bias = stretch,
        }
        demand
    }

    /// What is asked along one grain.
    ///
    /// ```
    /// use tenter_core::{Demand, Grain};
    ///
    /// assert!(Demand::default().stretch(Grain::Crosswise).is_empty());
    /// ```
    #[must_use]
    pub const fn stretch(&self, grain: Grain) -> Range {
        match grain {
            Grain::Lengthwise => self.lengthwise,
            Grain::Crosswise => self.crosswise,
            Grain::Bias => self.bias,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::string::ToString;

    #[test]
    fn reads_limits() {
        let milli = |text| Limit::parse(text, Unit::Mm).map(|limit| limit.ratio().percent(3).scaled());
        assert_eq!(milli("5%"), Ok(5_000));
        assert_eq!(milli("5"), Ok(5_000));
        assert_eq!(milli("0,5 %"), Ok(500));
        assert_eq!(milli("34.375%"), Ok(34_375));
        assert_eq!(milli("4in to 5in"), Ok(25_000));
        assert_eq!(milli("10cm to 105 mm"), Ok(5_000));
        assert_eq!(milli("4 to 5 3/8"), Ok(34_375));
        for text in ["5 percent", "5 Per Cent", "about 5%", "About 5 percent", "approx. 5 %"] {
            assert_eq!(milli(text), Ok(5_000), "{text}");
        }
        assert_eq!(milli("0.05%"), Ok(50));
        assert_eq!(milli("0"), Ok(0));
    }

    #[test]
    fn refuses_limits() {
        let error = |text| Limit::parse(text, Unit::Mm).unwrap_err();
        assert_eq!(error(""), LimitError::Empty);
        assert_eq!(error("five"), LimitError::NotALimit);
        assert_eq!(error("5.0001%"), LimitError::TooFine);
        assert_eq!(error("1001%"), LimitError::TooLarge);
        assert_eq!(error("0.05"), LimitError::Share { milli: 50 });
        assert_eq!(error("0.05").to_string(), "0.05 % is less than can be read; type 5%");
        assert_eq!(error("0.5").to_string(), "can be read two ways; type 50% or 0.5%");
        assert_eq!(error("about"), LimitError::Empty);
        assert_eq!(error("-5%"), LimitError::NotALimit);
        assert_eq!(error("20% to 30%"), LimitError::PercentInMarks);
        assert_eq!(error("5in to 4in"), LimitError::BadMarks);
        assert_eq!(error("1mm to 12mm"), LimitError::TooLarge);
        assert_eq!(error("0 to 4"), LimitError::BadMarks);
        assert_eq!(error("4in to 5 ells"), LimitError::Length(LengthError::UnknownUnit));
        assert_eq!(Range::parse("30%..20%", Unit::Mm), Err(LimitError::UpsideDown));
        assert_eq!(Range::parse("..", Unit::Mm), Err(LimitError::Empty));
    }

    #[test]
    fn a_range_as_people_write_it() {
        let range = Range::parse("20%..30%", Unit::Mm);
        for text in ["20-30%", "20% - 30%", "20 – 30 percent", "20%-30%", "about 20-30%"] {
            assert_eq!(Range::parse(text, Unit::Mm), range, "{text}");
        }
        assert!(Range::parse("4-1/8in to 5in", Unit::Mm).unwrap().at_most.is_none());
        assert_eq!(Range::parse("-5%", Unit::Mm), Err(LimitError::NotALimit));
        assert_eq!(Range::parse("30-20%", Unit::Mm), Err(LimitError::UpsideDown));
    }

    #[test]
    fn a_range_of_printed_gauges() {
        let range = Range::parse("4in to 5in..4in to 6in", Unit::Mm).unwrap();
        assert_eq!(range.at_most.unwrap().to_string(), "50 %");
        assert_eq!(Limit::milli_percent(34_375).unwrap().to_string(), "34.375 %");
        assert_eq!(Limit::milli_percent(0).unwrap().to_string(), "0 %");
    }
}
