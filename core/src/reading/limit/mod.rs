//! What a pattern asks: limits, ranges and the demand of one role.

mod error;
mod typed;

use core::fmt;

use crate::number::decimal::Decimal;
use crate::number::ratio::Ratio;
use crate::reading::length::{Length, Unit};
use crate::reading::pull_test::{Grain, MAX_LENGTH};

pub use error::LimitError;

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
        typed::limit(text, default)
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
    /// Reads `5%`, `about 5%`, `at least 5%`, `5% or more` (all of them at least), `up to 30%`, `..30%` (at most),
    /// `20%..30%`, `20-30%`, `20 to 30 %`, `between 20% and 30%`; each end as [`Limit::parse`] reads it.
    ///
    /// # Errors
    ///
    /// What [`Limit::parse`] says of an end, [`LimitError::UpsideDown`], or [`LimitError::RangeOrMarks`] for `20 to 30`.
    ///
    /// ```
    /// use tenter_core::{Limit, Range, Unit};
    ///
    /// let most = Range { at_least: None, at_most: Limit::milli_percent(30_000).ok() };
    /// assert_eq!(Range::parse("..30%", Unit::Mm), Ok(most));
    /// assert_eq!(Range::parse("Up to 30 per cent", Unit::Mm), Ok(most));
    /// ```
    pub fn parse(text: &str, default: Unit) -> Result<Self, LimitError> {
        typed::range(text, default)
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
