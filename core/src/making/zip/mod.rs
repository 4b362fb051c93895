//! Zips: which ready-made length fits an opening, how it is shortened, and how strong its chain is.
//!
//! The ready lengths and how a zip is shortened are common practice; nothing in print was found.

mod chain;

pub use chain::{Chain, UseCode, chain};

use super::error::{MakingError, positive};
use super::garment::{Detail, Details};
use super::printed::Printed;
use super::scaled::{Round, scaled};
use crate::answer::source::Source;
use crate::number::ratio::Ratio;
use crate::number::words;
use crate::reading::length::Length;

/// In which lengths zips are sold.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum ZipSeries {
    /// In inches.
    Inch,
    /// In centimetres.
    Metric,
}

impl ZipSeries {
    /// Where the lengths come from.
    pub const SOURCE: Source = Source::CommonPractice;

    /// The ready lengths in rising order, in inches or centimetres.
    const fn sold(self, ends: ZipEnds) -> &'static [i16] {
        match (self, ends) {
            (Self::Inch, ZipEnds::Closed) => &[4, 7, 9, 12, 14, 16, 18, 20, 22, 24],
            (Self::Inch, ZipEnds::Open) => &[10, 12, 14, 16, 18, 20, 22, 24, 26, 28, 30, 32, 34, 36, 40, 44, 48],
            (Self::Metric, ZipEnds::Closed) => &[10, 12, 15, 18, 20, 22, 25, 30, 35, 40, 45, 50, 55, 56, 60],
            (Self::Metric, ZipEnds::Open) => &[30, 35, 40, 45, 50, 55, 60, 65, 70, 75, 80, 85, 90, 95, 100, 110, 120],
        }
    }

    /// The ready lengths in rising order: closed ones of 4 to 24 in or 10 to 60 cm, separating ones of 10 to 48 in or 30 to
    /// 120 cm.
    ///
    /// ```
    /// use tenter_core::{Length, making::zip::{ZipEnds, ZipSeries}};
    ///
    /// assert!(ZipSeries::Metric.lengths(ZipEnds::Closed).any(|length| length == Length::from_mm(180)));
    /// ```
    pub fn lengths(self, ends: ZipEnds) -> impl Iterator<Item = Length> {
        self.sold(ends).iter().map(move |count| match self {
            Self::Inch => Length::from_inch_64ths(64 * count),
            Self::Metric => Length::from_mm(10 * count),
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
    /// As a garment of these details has it: separating, or closed as a fly is. Where they are not known, and where they
    /// name no zip, separating for an edge that is longer than any closed zip, closed for a shorter one. Common practice, no
    /// source.
    ///
    /// ```
    /// use tenter_core::{Length, making::{garment::{Detail, Details}, zip::ZipEnds}};
    ///
    /// let edge = Length::from_mm(500);
    /// let jacket = Details::of(&[Detail::Collar, Detail::SeparatingZip]);
    /// assert_eq!(ZipEnds::usual(Some(jacket), edge), ZipEnds::Open);
    /// assert_eq!(ZipEnds::usual(None, edge), ZipEnds::Closed);
    /// ```
    #[must_use]
    pub fn usual(details: Option<Details>, edge: Length) -> Self {
        const LONGEST_CLOSED: Length = Length::from_inch_64ths(24 * 64);
        let details = details.unwrap_or_default();
        if details.has(Detail::SeparatingZip) {
            Self::Open
        } else if details.has(Detail::Fly) || details.has(Detail::ClosedZip) || edge <= LONGEST_CLOSED {
            Self::Closed
        } else {
            Self::Open
        }
    }

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

/// The edge that a zip goes into.
///
/// ```
/// use tenter_core::{Length, making::zip::ZipEdge};
///
/// let [cut, hem, neck] = [780, 40, 15].map(Length::from_mm);
/// assert_eq!(ZipEdge { cut, hem, neck }.finished(), Ok(Length::from_mm(725)));
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct ZipEdge {
    /// As it is cut, or finished where nothing is to be taken off.
    pub cut: Length,
    /// What the hem takes of it, zero or more.
    pub hem: Length,
    /// What the neck or the waist seam takes of it, zero or more.
    pub neck: Length,
}

impl ZipEdge {
    /// An edge that is measured finished.
    ///
    /// ```
    /// use tenter_core::{Length, making::zip::ZipEdge};
    ///
    /// assert_eq!(ZipEdge::measured(Length::METRE).finished(), Ok(Length::METRE));
    /// ```
    #[must_use]
    pub const fn measured(finished: Length) -> Self {
        Self { cut: finished, hem: Length::ZERO, neck: Length::ZERO }
    }

    /// What is left for the zip: hem and neck taken off.
    ///
    /// # Errors
    ///
    /// [`MakingError::Seam`] unless something is left, or where an allowance is below zero.
    ///
    /// ```
    /// use tenter_core::{Length, making::{error::MakingError, zip::ZipEdge}};
    ///
    /// let [cut, hem, neck] = [50, 40, 15].map(Length::from_mm);
    /// assert_eq!(ZipEdge { cut, hem, neck }.finished(), Err(MakingError::Seam));
    /// ```
    pub fn finished(self) -> Result<Length, MakingError> {
        let [cut, hem, neck] = [self.cut, self.hem, self.neck].map(|length| i64::from(length.steps()));
        let left = i32::try_from(cut - hem - neck).map(Length::from_steps).map_err(|_| MakingError::Seam)?;
        positive(left, MakingError::Seam)?;
        if hem < 0 || neck < 0 { Err(MakingError::Seam) } else { Ok(left) }
    }
}

/// How much longer an edge becomes that grows by a share of itself; none where that does not fit. An edge that grows beside its
/// zip waves.
///
/// ```
/// use tenter_core::{Length, Ratio, making::zip::grows_by};
///
/// // 60 cm that grow by 1 %: 6 mm of wave.
/// assert_eq!(grows_by(Length::from_mm(600), Ratio::new(1, 100).unwrap()), Some(Length::from_mm(6)));
/// ```
#[must_use]
pub fn grows_by(edge: Length, growth: Ratio) -> Option<Length> {
    scaled(edge, growth.numerator(), growth.denominator(), Round::Nearest)
}

/// What becomes of a zip of a length in an edge of another.
///
/// ```
/// use tenter_core::making::zip::Fit;
///
/// assert_ne!(Fit::Exact, Fit::Ease);
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum Fit {
    /// As long as the edge.
    Exact,
    /// A little shorter or longer: the edge is eased to the tape, since the difference does not show.
    Ease,
    /// Separating, and so much shorter: it ends above the fold of the hem.
    AboveHem(Length),
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

/// Up to this difference the edge is eased to the tape, or up to 0.5 % over 60 cm (the tool's own).
pub const EASED_TO: Length = Length::from_mm(3);
const EASED_ONE_IN: i64 = 200;
/// A separating zip ends up to so much above the fold of the hem (common practice, no source).
pub const ABOVE_HEM: Length = Length::from_mm(6);
/// How far below the seam a closed zip begins: 3 mm (1/8 in), and twice that under a hook and eye (common practice).
pub const BELOW_SEAM: Printed = Printed::new(3, 1);
/// What is left of the tape below the new stop of a shortened zip (common practice, no source).
pub const BELOW_STOP: Printed = Printed::new(20, 6);

impl Fit {
    /// Puts a zip into a finished edge.
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
    pub fn of(edge: Length, zip: Length, ends: ZipEnds) -> Result<Self, MakingError> {
        let (edge, tape) = (positive(edge, MakingError::Seam)?, positive(zip, MakingError::Seam)?);
        let apart = edge.abs_diff(tape);
        let by = i32::try_from(apart).map(Length::from_steps).map_err(|_| MakingError::TooLarge)?;
        let eased = i64::from(EASED_TO.steps()).max(edge / EASED_ONE_IN);
        Ok(if apart == 0 {
            Self::Exact
        } else if i64::from(by.steps()) <= eased {
            Self::Ease
        } else if tape > edge {
            Self::Shorten { by, at: ends.shortened_at() }
        } else if ends == ZipEnds::Open && by <= ABOVE_HEM {
            Self::AboveHem(by)
        } else {
            Self::Short(by)
        })
    }

    /// Whether it goes in as it is.
    #[must_use]
    pub const fn is_as_it_is(self) -> bool {
        matches!(self, Self::Exact | Self::Ease | Self::AboveHem(_))
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

/// The two ready-made zips that come into question for an edge.
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
    /// The longest that is no longer than the edge; none below the shortest that is sold.
    pub no_longer: Option<Ready>,
    /// The next longer one; none above the longest that is sold.
    pub longer: Option<Ready>,
}

impl Choice {
    /// Looks up the ready lengths about a finished edge.
    ///
    /// # Errors
    ///
    /// [`MakingError::Seam`] unless the edge is longer than zero.
    ///
    /// ```
    /// use tenter_core::{Length, making::{error::MakingError, zip::{Choice, ZipEnds, ZipSeries}}};
    ///
    /// assert_eq!(Choice::of(Length::ZERO, ZipSeries::Metric, ZipEnds::Closed), Err(MakingError::Seam));
    /// ```
    pub fn of(edge: Length, series: ZipSeries, ends: ZipEnds) -> Result<Self, MakingError> {
        positive(edge, MakingError::Seam)?;
        let ready = |length: Length| Fit::of(edge, length, ends).map(|fit| Ready { length, fit });
        let mut choice = Self { no_longer: None, longer: None };
        for length in series.lengths(ends) {
            if length <= edge {
                choice.no_longer = Some(ready(length)?);
            } else if choice.longer.is_none() {
                choice.longer = Some(ready(length)?);
            }
        }
        Ok(choice)
    }

    /// The one to buy: one that goes in as it is, else the next longer to be shortened, and the shorter where nothing
    /// longer is sold.
    ///
    /// ```
    /// use tenter_core::{Length, making::zip::{Choice, ZipEnds, Fit, ZipSeries}};
    ///
    /// let choice = Choice::of(Length::from_mm(503), ZipSeries::Metric, ZipEnds::Closed).unwrap();
    /// assert_eq!(choice.best().unwrap().fit, Fit::Ease);
    /// ```
    #[must_use]
    pub fn best(&self) -> Option<Ready> {
        let fits = [self.no_longer, self.longer].into_iter().flatten().find(|ready| ready.fit.is_as_it_is());
        fits.or(self.longer).or(self.no_longer)
    }
}
