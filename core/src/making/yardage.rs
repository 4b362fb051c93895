//! How long a cloth must be: of another width, laid one way, and as shops cut it.

use super::care::{Described, Finish};
use super::error::{MakingError, positive};
use super::garment::GarmentKind;
use super::scaled::{Round, scaled};
use crate::answer::source::Source;
use crate::reading::construction::Construction;
use crate::reading::length::{Length, Unit};

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
    /// Cloth with one way, or sleeves cut in one: a quarter of a yard. Every knit has one way.
    OneWay,
    /// A large change of width: a quarter of a yard.
    Narrower,
    /// In doubt: half a yard.
    InDoubt,
}

impl Extra {
    /// How much.
    #[must_use]
    pub const fn length(self) -> Length {
        Length::from_steps(match self {
            Self::OneWay | Self::Narrower => 2 * EIGHTH_YARD,
            Self::InDoubt => 4 * EIGHTH_YARD,
        })
    }

    /// Where it comes from.
    #[must_use]
    pub const fn source(self) -> Source {
        Source::CommonPractice
    }
}

/// What makes all pieces lie one way up.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum OneWay {
    /// A nap, a short pile, or a print with an up and a down.
    Nap,
    /// A deep pile, such as fur fabric: up to three quarters of a yard.
    DeepPile,
}

/// What a one-way layout takes besides the length that the pattern states for a layout either way.
///
/// ```
/// use tenter_core::Length;
/// use tenter_core::making::{garment::GarmentKind, yardage::OneWay};
///
/// let extra = OneWay::Nap.extra(Length::from_mm(4000), Some(GarmentKind::LinedCoat));
/// assert_eq!((extra.length, extra.percent), (Length::from_mm(1000), Some(25)));
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct OneWayExtra {
    /// How much.
    pub length: Length,
    /// The share of the need in percent where that is what counts; none for a fixed length.
    pub percent: Option<u8>,
    /// Where it comes from.
    pub source: Source,
}

impl OneWay {
    /// Whether a cloth that was cut for a layout either way must lie one way, by what is said of it: its finish, and
    /// whether its owner says so. A knit always lies one way, and the pattern's length for a knit has that in it.
    ///
    /// ```
    /// use tenter_core::Construction;
    /// use tenter_core::making::{care::{Described, Finish}, yardage::OneWay};
    ///
    /// let plain = Described { construction: Construction::Woven, finish: Some(Finish::Plain), ..Described::default() };
    /// let corduroy = Described { finish: Some(Finish::Pile), ..plain };
    /// assert_eq!([plain, corduroy].map(|cloth| OneWay::of(&cloth, false)), [None, Some(OneWay::Nap)]);
    /// assert_eq!(OneWay::of(&plain, true), Some(OneWay::Nap));
    /// ```
    #[must_use]
    pub fn of(cloth: &Described<'_>, said: bool) -> Option<Self> {
        if cloth.construction == Construction::Knit {
            return None;
        }
        let deep = ["fur", "plush", "sherpa", "shearling"].iter().any(|word| cloth.says(word));
        match cloth.finish() {
            Finish::Pile if deep => Some(Self::DeepPile),
            Finish::Pile | Finish::Brushed => Some(Self::Nap),
            _ => said.then_some(Self::Nap),
        }
    }

    /// What it takes besides `need`, for a garment of few pieces such as a skirt, of many such as a coat, or of unknown
    /// kind. Skirts and trousers take 15 % more and garments of many pieces 25 %, a quarter of a yard at least; of less than
    /// a yard, such as a waistband, the share alone (the tool's own).
    ///
    /// ```
    /// use tenter_core::Length;
    /// use tenter_core::making::{garment::GarmentKind, yardage::OneWay};
    ///
    /// let of = |kind| OneWay::Nap.extra(Length::from_mm(2000), kind).length;
    /// assert_eq!(of(Some(GarmentKind::Trousers)), Length::from_mm(300));
    /// assert_eq!(of(Some(GarmentKind::LinedCoat)), Length::from_mm(500));
    /// assert_eq!(OneWay::Nap.extra(Length::YARD, None).length.steps(), Length::YARD.steps() / 4);
    /// let waistband = OneWay::Nap.extra(Length::from_mm(200), None);
    /// assert_eq!(waistband.length, Length::from_mm(30));
    /// ```
    #[must_use]
    pub fn extra(self, need: Length, kind: Option<GarmentKind>) -> OneWayExtra {
        use GarmentKind::{ChildsOuterwear, Dress, HoodedPullover, LinedCoat, Shirt, UnlinedJacket};
        let many = matches!(kind, Some(UnlinedJacket | LinedCoat | HoodedPullover | Shirt | Dress | ChildsOuterwear));
        let percent = if many { 25 } else { 15 };
        let share = scaled(need, percent.into(), 100, Round::Up).unwrap_or(Length::ZERO).max(Length::ZERO);
        let least = match self {
            _ if need < Length::YARD => Length::ZERO,
            Self::Nap => Extra::OneWay.length(),
            Self::DeepPile => Length::from_steps(6 * EIGHTH_YARD),
        };
        let percent = (share > least).then_some(percent);
        OneWayExtra { length: share.max(least), percent, source: Source::CommonPractice }
    }
}

/// The lengths that shops cut: a length is rounded up to them once, after everything was added.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum ShopCut {
    /// Ten centimetres.
    TenCentimetres,
    /// Five centimetres.
    FiveCentimetres,
    /// An eighth of a yard, 4 1/2 in.
    EighthYard,
}

impl ShopCut {
    /// Every one.
    pub const ALL: [Self; 3] = [Self::TenCentimetres, Self::FiveCentimetres, Self::EighthYard];
    /// Where they come from.
    pub const SOURCE: Source = Source::CommonPractice;

    /// Where lengths are told in a unit: an eighth of a yard for inches, else ten centimetres.
    ///
    /// ```
    /// use tenter_core::{Unit, making::yardage::ShopCut};
    ///
    /// assert_eq!([Unit::Inch, Unit::Cm].map(ShopCut::in_unit), [ShopCut::EighthYard, ShopCut::TenCentimetres]);
    /// ```
    #[must_use]
    pub const fn in_unit(unit: Unit) -> Self {
        match unit {
            Unit::Inch => Self::EighthYard,
            Unit::Mm | Unit::Cm => Self::TenCentimetres,
        }
    }

    /// From one length to the next.
    #[must_use]
    pub const fn step(self) -> Length {
        match self {
            Self::TenCentimetres => Length::from_mm(100),
            Self::FiveCentimetres => Length::from_mm(50),
            Self::EighthYard => Length::from_steps(EIGHTH_YARD),
        }
    }

    /// The next length that is cut, the same where it is one.
    ///
    /// # Errors
    ///
    /// [`MakingError::Cloth`] for a length below zero, [`MakingError::TooLarge`].
    ///
    /// ```
    /// use tenter_core::{Length, Unit, making::yardage::ShopCut};
    ///
    /// let need = Length::parse("75in", Unit::Mm).unwrap();
    /// assert_eq!(ShopCut::EighthYard.up(need), Ok(Length::parse("2 1/8 yd", Unit::Mm).unwrap()));
    /// assert_eq!(ShopCut::TenCentimetres.up(Length::from_mm(1731)), Ok(Length::from_mm(1800)));
    /// ```
    pub fn up(self, length: Length) -> Result<Length, MakingError> {
        let (steps, step) = (length.steps(), self.step().steps());
        if steps < 0 {
            return Err(MakingError::Cloth);
        }
        let over = steps % step;
        let more = if over == 0 { 0 } else { step - over };
        steps.checked_add(more).map(Length::from_steps).ok_or(MakingError::TooLarge)
    }
}
