//! The same garment from cloth of another width.

use super::error::{MakingError, positive};
use super::scaled::{Round, scaled};
use crate::answer::source::Source;
use crate::reading::length::Length;

/// An eighth of a yard.
const EIGHTH_YARD: i32 = Length::YARD.steps() / 8;

/// The length of another width with the same area: an estimate that knows nothing of how pieces lie.
///
/// # Errors
///
/// [`MakingError::Cloth`] or [`MakingError::Width`] unless length and widths are above zero, [`MakingError::TooLarge`].
///
/// ```
/// use tenter_core::{Length, making::yardage::by_area};
///
/// // 1 3/4 yd at 36 in is 1.05 yd at 60.
/// let inches = |count: i16| Length::from_inch_64ths(64 * count);
/// let other = by_area(inches(63), inches(36), inches(60)).unwrap();
/// assert_eq!(other.show(tenter_core::Unit::Inch).to_string(), "37.8 in");
/// ```
pub fn by_area(length: Length, width: Length, other: Length) -> Result<Length, MakingError> {
    area(length, width, other, Round::Up)
}

/// The same, down to the last whole step: what a length counts as at another width.
pub(crate) fn same_area(length: Length, width: Length, other: Length) -> Result<Length, MakingError> {
    if length == Length::ZERO { Ok(length) } else { area(length, width, other, Round::Down) }
}

fn area(length: Length, width: Length, other: Length, round: Round) -> Result<Length, MakingError> {
    positive(length, MakingError::Cloth)?;
    let (width, other) = (positive(width, MakingError::Width)?, positive(other, MakingError::Width)?);
    scaled(length, width, other, round).ok_or(MakingError::TooLarge)
}

/// A class of cloth widths as the chart has them.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum Width {
    /// 35 to 36 in.
    In35,
    /// 44 to 45 in.
    In44,
    /// 52 to 54 in.
    In52,
    /// 58 to 60 in.
    In58,
}

impl Width {
    /// Every class, the narrowest first.
    pub const ALL: [Self; 4] = [Self::In35, Self::In44, Self::In52, Self::In58];

    /// The narrowest cloth of the class.
    #[must_use]
    pub const fn narrowest(self) -> Length {
        Length::from_inch_64ths(match self {
            Self::In35 => 35 * 64,
            Self::In44 => 44 * 64,
            Self::In52 => 52 * 64,
            Self::In58 => 58 * 64,
        })
    }

    /// The widest class that the cloth is wide enough for; none under 35 in. Cloth that lost width in washing so falls to
    /// the narrower column.
    ///
    /// ```
    /// use tenter_core::{Length, making::yardage::Width};
    ///
    /// assert_eq!(Width::of(Length::from_inch_64ths(50 * 64)), Some(Width::In44));
    /// assert_eq!(Width::of(Length::from_mm(300)), None);
    /// ```
    #[must_use]
    pub fn of(usable: Length) -> Option<Self> {
        Self::ALL.into_iter().rev().find(|class| usable >= class.narrowest())
    }

    /// The column of this class, in eighths of a yard.
    const fn column(self, row: &[u8; 4]) -> u8 {
        let [a, b, c, d] = *row;
        match self {
            Self::In35 => a,
            Self::In44 => b,
            Self::In52 => c,
            Self::In58 => d,
        }
    }
}

/// Where the chart comes from. Copies of it circulate with misprints.
pub const SOURCE: Source = Source::CommonPractice;

/// The chart, in eighths of a yard: 35–36, 44–45, 52–54 and 58–60 in.
pub const CHART: [[u8; 4]; 12] = [
    [14, 11, 9, 8],
    [16, 13, 11, 10],
    [18, 14, 12, 11],
    [20, 17, 14, 13],
    [23, 18, 15, 14],
    [25, 20, 16, 15],
    [27, 22, 18, 16],
    [30, 23, 19, 18],
    [34, 25, 21, 19],
    [36, 27, 22, 21],
    [38, 29, 23, 22],
    [40, 31, 25, 23],
];

/// The length of another width by the chart, from the first row that is long enough. None beyond the chart.
///
/// ```
/// use tenter_core::{Length, Unit, making::yardage::{Width, by_chart}};
///
/// let two_yards = Length::parse("2yd", Unit::Mm).unwrap();
/// let wide = by_chart(two_yards, Width::In35, Width::In58).unwrap();
/// assert_eq!(wide, Length::parse("1 1/4 yd", Unit::Mm).unwrap());
/// ```
#[must_use]
pub fn by_chart(length: Length, width: Width, other: Width) -> Option<Length> {
    let eighths = |row: &[u8; 4], class: Width| i32::from(class.column(row)) * EIGHTH_YARD;
    let row = CHART.iter().find(|row| eighths(row, width) >= length.steps())?;
    (length > Length::ZERO).then(|| Length::from_steps(eighths(row, other)))
}

/// Why to add to a figure of the chart.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum Extra {
    /// A large change of width, cloth with one way, sleeves cut in one: a quarter of a yard. Every knit has one way.
    OneWay,
    /// In doubt: half a yard.
    InDoubt,
}

impl Extra {
    /// How much.
    #[must_use]
    pub const fn length(self) -> Length {
        Length::from_steps(match self {
            Self::OneWay => 2 * EIGHTH_YARD,
            Self::InDoubt => 4 * EIGHTH_YARD,
        })
    }

    /// Where it comes from.
    #[must_use]
    pub const fn source(self) -> Source {
        match self {
            Self::OneWay => Source::CommonPractice,
            Self::InDoubt => Source::CommonPractice,
        }
    }
}
