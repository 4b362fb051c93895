//! Zips: which ready-made length fits an opening.
//!
//! The ready lengths and how a zip is shortened are common practice; nothing in print was found.

use super::error::{MakingError, positive};
use super::pairing::{MISMATCH_FROM, MISMATCH_FROM_PERCENT};
use crate::answer::source::Source;
use crate::number::ratio::Ratio;
use crate::number::words;
use crate::reading::length::Length;

/// In which lengths zips are sold.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum ZipSeries {
    /// From 4 to 36 in by 2 in.
    Inch,
    /// From 10 to 90 cm by 5 cm.
    Metric,
}

impl ZipSeries {
    /// Where the lengths come from.
    pub const SOURCE: Source = Source::CommonPractice;

    /// The ready lengths in rising order.
    pub fn lengths(self) -> impl Iterator<Item = Length> {
        let (first, step): (i16, i16) = match self {
            Self::Inch => (4, 2),
            Self::Metric => (10, 5),
        };
        (0..17).map(move |count: i16| match self {
            Self::Inch => Length::from_inch_64ths(64 * (first + step * count)),
            Self::Metric => Length::from_mm(10 * (first + step * count)),
        })
    }
}

/// How a zip ends.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum ZipEnds {
    /// It stays joined at the bottom.
    Closed,
    /// It parts at the bottom, as in the front of a jacket.
    Open,
}

words!(ZipEnds { Closed => "closed", Open => "open" });

/// An end of a zip.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum End {
    /// Where the slider stands when closed.
    Top,
    /// Where the slider stands when open.
    Bottom,
}

impl ZipEnds {
    /// Where it is shortened: a closed one at the bottom, with a new stop sewn over the teeth, an open one at the top,
    /// since its bottom holds the pin and box. Common practice, no source.
    #[must_use]
    pub const fn shortened_at(self) -> End {
        match self {
            Self::Closed => End::Bottom,
            Self::Open => End::Top,
        }
    }
}

/// What becomes of a zip of a length in an opening of another.
///
/// ```
/// use tenter_core::making::zip::Fit;
///
/// assert_ne!(Fit::Exact, Fit::Ease);
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum Fit {
    /// As long as the opening.
    Exact,
    /// A little shorter: the edge is eased to the tape, since the difference does not show (the tool's own limits, those of
    /// [two cloths in a seam](super::pairing::MISMATCH_FROM)).
    Ease,
    /// Shorter: it leaves so much of the edge without zip.
    Short(Length),
    /// Longer: shorten it by so much.
    Shorten {
        /// By how much.
        by: Length,
        /// Where.
        at: End,
    },
}

impl Fit {
    /// Puts a zip into an opening.
    ///
    /// # Errors
    ///
    /// [`MakingError::Seam`] unless both are longer than zero.
    ///
    /// ```
    /// use tenter_core::{Length, making::zip::{ZipEnds, Fit}};
    ///
    /// let inches = |count: i16| Length::from_inch_64ths(64 * count);
    /// assert_eq!(Fit::of(inches(30), inches(30), ZipEnds::Open), Ok(Fit::Exact));
    /// assert_eq!(Fit::of(inches(31), inches(30), ZipEnds::Open), Ok(Fit::Short(inches(1))));
    /// ```
    pub fn of(opening: Length, zip: Length, ends: ZipEnds) -> Result<Self, MakingError> {
        let (edge, tape) = (positive(opening, MakingError::Seam)?, positive(zip, MakingError::Seam)?);
        let by = |more: i64| i32::try_from(more).map(Length::from_steps).map_err(|_| MakingError::TooLarge);
        if tape > edge {
            return Ok(Self::Shorten { by: by(tape - edge)?, at: ends.shortened_at() });
        }
        if tape == edge {
            return Ok(Self::Exact);
        }
        let more = by(edge - tape)?;
        let share = Ratio::new(edge - tape, tape).ok_or(MakingError::Seam)?;
        let small = Ratio::new(MISMATCH_FROM_PERCENT, 100).is_some_and(|limit| share < limit) && more < MISMATCH_FROM;
        Ok(if small { Self::Ease } else { Self::Short(more) })
    }
}

/// A ready-made zip and what becomes of it.
///
/// ```
/// use tenter_core::{Length, making::zip::{Fit, Ready}};
///
/// let ready = Ready { length: Length::from_mm(500), fit: Fit::Exact };
/// assert_eq!(ready.fit, Fit::Exact);
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct Ready {
    /// Its length.
    pub length: Length,
    /// What becomes of it.
    pub fit: Fit,
}

/// The two ready-made zips that come into question for an opening.
///
/// ```
/// use tenter_core::{Length, making::zip::{Choice, End, ZipEnds, Fit, ZipSeries}};
///
/// // A front edge of 31 in: 30 in leaves an inch without zip, 32 in is shortened by an inch at the top.
/// let inches = |count: i16| Length::from_inch_64ths(64 * count);
/// let choice = Choice::of(inches(31), ZipSeries::Inch, ZipEnds::Open).unwrap();
/// assert_eq!(choice.no_longer.unwrap().length, inches(30));
/// assert_eq!(choice.longer.unwrap().fit, Fit::Shorten { by: inches(1), at: End::Top });
/// assert_eq!(choice.best(), choice.longer);
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct Choice {
    /// The longest that is no longer than the opening; none below the shortest that is sold.
    pub no_longer: Option<Ready>,
    /// The next longer one; none above the longest that is sold.
    pub longer: Option<Ready>,
}

impl Choice {
    /// Looks up the ready lengths about an opening.
    ///
    /// # Errors
    ///
    /// [`MakingError::Seam`] unless the opening is longer than zero.
    ///
    /// ```
    /// use tenter_core::{Length, making::{error::MakingError, zip::{Choice, ZipEnds, ZipSeries}}};
    ///
    /// assert_eq!(Choice::of(Length::ZERO, ZipSeries::Metric, ZipEnds::Closed), Err(MakingError::Seam));
    /// ```
    pub fn of(opening: Length, series: ZipSeries, ends: ZipEnds) -> Result<Self, MakingError> {
        let ready = |length: Length| Fit::of(opening, length, ends).map(|fit| Ready { length, fit });
        let mut choice = Self { no_longer: None, longer: None };
        for length in series.lengths() {
            if length <= opening {
                choice.no_longer = Some(ready(length)?);
            } else if choice.longer.is_none() {
                choice.longer = Some(ready(length)?);
            }
        }
        positive(opening, MakingError::Seam)?;
        Ok(choice)
    }

    /// The one to buy: the shorter where it fits or the edge is eased to it, else the longer to be shortened, and the
    /// shorter where nothing longer is sold.
    ///
    /// ```
    /// use tenter_core::{Length, making::zip::{Choice, ZipEnds, Fit, ZipSeries}};
    ///
    /// let choice = Choice::of(Length::from_mm(503), ZipSeries::Metric, ZipEnds::Closed).unwrap();
    /// assert_eq!(choice.best().unwrap().fit, Fit::Ease);
    /// ```
    #[must_use]
    pub fn best(&self) -> Option<Ready> {
        let fits = self.no_longer.filter(|ready| matches!(ready.fit, Fit::Exact | Fit::Ease));
        fits.or(self.longer).or(self.no_longer)
    }
}
