//! Why a text is no limit.

use core::fmt;

use super::short;
use crate::number::decimal::Decimal;
use crate::reading::length::LengthError;

/// An error from reading a [`Limit`](super::Limit).
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
    /// Two bare numbers with `to` between: a range of percentages, or a printed gauge.
    RangeOrMarks,
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
            Self::PercentInMarks => "one figure is wanted here; type a percentage such as 5%, or 4in to 5 3/8in",
            Self::RangeOrMarks => {
                "can be read two ways; type percentages such as 20%..30%, or lengths such as 10cm to 12cm"
            }
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

/// Thousandths as a number without the zeros at its end.
fn shown(milli: u32) -> Decimal {
    short(Decimal::new(milli.into(), 3))
}
