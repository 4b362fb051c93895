//! Why measures cannot be worked with, and what to give instead.

use core::fmt;

use crate::reading::length::Length;

/// Why measures cannot be worked with.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum MakingError {
    /// A body measure that is not above zero.
    Body,
    /// A finished garment measure that is not above zero.
    Garment,
    /// A seam or an edge that is not above zero.
    Seam,
    /// The marks before washing are not apart.
    BeforeWashing,
    /// The marks after washing are less than half as far apart as before, or more than one and a half times.
    AfterWashing,
    /// A length of cloth or of elastic that is not above zero.
    Cloth,
    /// A width that is not above zero.
    Width,
    /// A rule that takes off as much as there is.
    RuleTakesAll,
    /// A result beyond 1.3 km, or ratios whose product does not fit.
    TooLarge,
}

impl fmt::Display for MakingError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Body => "a body measure is above zero; type one such as 96cm",
            Self::Garment => "a finished measure is above zero; type one such as 101cm",
            Self::Seam => "a seam is longer than zero; type its length, such as 60cm",
            Self::BeforeWashing => "the marks before washing are apart; type their distance, such as 50cm",
            Self::AfterWashing => {
                "the marks after washing differ by more than half from those before; check the unit, such as 48cm"
            }
            Self::Cloth => "a length is above zero; type one such as 2m or 2yd",
            Self::Width => "a width is above zero; type one such as 5cm or 2in",
            Self::RuleTakesAll => "the rule takes off all there is; check the measure and its unit",
            Self::TooLarge => "that is too large to work out; check the numbers and their units",
        })
    }
}

impl core::error::Error for MakingError {}

/// The steps of a length that must be above zero.
pub(crate) fn positive(length: Length, otherwise: MakingError) -> Result<i64, MakingError> {
    if length > Length::ZERO { Ok(length.steps().into()) } else { Err(otherwise) }
}
