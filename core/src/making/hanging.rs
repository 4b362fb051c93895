//! Which mass to hang on a strip or a loop for a wanted tension, and back. A home test is not the standard's: see
//! [`Caution::NotTheStandard`](super::caution::Caution::NotTheStandard).

use super::caution::MOST_GRAMS;
use super::error::{MakingError, positive};
use crate::answer::source::Source;
use crate::number::words;
use crate::reading::length::Length;

/// Standard gravity, 9.806 65 m/s² exactly (3rd CGPM, 1901), in hundred-thousandths of it: 980 665.
pub const STANDARD_GRAVITY: i32 = 980_665;

const GRAVITY: i64 = STANDARD_GRAVITY as i64;

/// The most force taken, in millinewtons: 10 kN.
const MOST_MILLINEWTONS: u32 = 10_000_000;

/// Steps of a length in a centimetre.
const CENTIMETRE: i64 = Length::from_mm(10).steps() as i64;

/// A force spread over a width of cloth: a force in millinewtons on so many steps, kept as the pair.
///
/// ```
/// use tenter_core::{Length, making::hanging::Tension};
///
/// // 15 N on 50 mm is 3 N/cm.
/// let strip = Tension::new(15_000, Length::from_mm(50)).unwrap();
/// assert_eq!(strip.millinewtons_per_cm(), 3_000);
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct Tension {
    millinewtons: u32,
    width: Length,
}

impl Tension {
    /// A force on a width of cloth, all layers counted. None unless the force is above zero and at most 10 kN and the
    /// width above zero.
    ///
    /// ```
    /// use tenter_core::{Length, making::hanging::Tension};
    ///
    /// assert!(Tension::new(0, Length::from_mm(50)).is_none());
    /// ```
    #[must_use]
    pub fn new(millinewtons: u32, width: Length) -> Option<Self> {
        let fits = (1..=MOST_MILLINEWTONS).contains(&millinewtons) && width > Length::ZERO;
        fits.then_some(Self { millinewtons, width })
    }

    /// Millinewtons for each centimetre of width, to the nearest.
    ///
    /// ```
    /// use tenter_core::{Length, making::hanging::Tension};
    ///
    /// let loose = Tension::new(22_241, Length::from_mm(254)).unwrap();
    /// assert_eq!(loose.millinewtons_per_cm(), 876);
    /// ```
    #[must_use]
    pub fn millinewtons_per_cm(self) -> u32 {
        let width = i64::from(self.width.steps());
        nearest(i64::from(self.millinewtons) * CENTIMETRE, width)
    }
}

/// `num` / `den` to the nearest whole number, for numbers that are not negative.
fn nearest(num: i64, den: i64) -> u32 {
    let whole = num.saturating_add(den / 2).checked_div(den).unwrap_or(0);
    u32::try_from(whole).unwrap_or(u32::MAX)
}

/// What hangs: how many layers share the load.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum Specimen {
    /// A strip in one layer.
    Strip,
    /// A sewn loop, of which both legs share the load.
    Loop,
}

words!(Specimen { Strip => "strip", Loop => "loop" });

impl Specimen {
    /// How many layers share the load.
    #[must_use]
    pub const fn layers(self) -> u8 {
        match self {
            Self::Strip => 1,
            Self::Loop => 2,
        }
    }
}

/// A mass to hang.
///
/// ```
/// use tenter_core::{Length, making::hanging::{Mass, Specimen, Tension, mass}};
///
/// let wanted = Tension::new(15_000, Length::from_mm(50)).unwrap();
/// assert_eq!(mass(wanted, Length::from_mm(50), Specimen::Strip), Ok(Mass { grams: 1_530, too_heavy: false }));
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct Mass {
    /// In grams, to the nearest.
    pub grams: u32,
    /// Whether that is more than [`MOST_GRAMS`]: cut a narrower piece.
    pub too_heavy: bool,
}

/// The mass to hang on a piece of this width for a tension: m = T · width · layers / g.
///
/// # Errors
///
/// [`MakingError::Width`] unless the width is above zero, [`MakingError::TooLarge`] beyond 1000 t.
///
/// ```
/// use tenter_core::{Length, making::hanging::{Specimen, Tension, mass}};
///
/// // A loop of 5 in, as for 5 lbf on a loose-fitting knit: 2.27 kg, too heavy for home; half as wide will do.
/// let wanted = Tension::new(22_241, Length::from_mm(254)).unwrap();
/// let whole = mass(wanted, Length::from_mm(127), Specimen::Loop).unwrap();
/// assert_eq!((whole.grams, whole.too_heavy), (2_268, true));
/// ```
pub fn mass(tension: Tension, width: Length, piece: Specimen) -> Result<Mass, MakingError> {
    let width = positive(width, MakingError::Width)? * i64::from(piece.layers());
    // At most 10⁷ mN by 2³² steps.
    let spread = i64::from(tension.millinewtons) * width;
    let force = spread.checked_mul(1000).and_then(|f| f.checked_div(tension.width.steps().into()));
    // Force is now in micronewtons; one gram weighs 9806.65 of them.
    let grams = force.and_then(|f| f.checked_mul(100)).map(|f| nearest(f, GRAVITY)).ok_or(MakingError::TooLarge)?;
    if grams > 1_000_000_000 {
        return Err(MakingError::TooLarge);
    }
    Ok(Mass { grams, too_heavy: grams > MOST_GRAMS })
}

/// The tension that a mass puts on a piece of this width.
///
/// # Errors
///
/// [`MakingError::Width`] unless the width is above zero, [`MakingError::TooLarge`] for a mass of nothing or above 1 t.
///
/// ```
/// use tenter_core::{Length, making::hanging::{Specimen, tension}};
///
/// let half_litre = tension(500, Length::from_mm(50), Specimen::Strip).unwrap();
/// assert_eq!(half_litre.millinewtons_per_cm(), 981);
/// ```
pub fn tension(grams: u32, width: Length, piece: Specimen) -> Result<Tension, MakingError> {
    positive(width, MakingError::Width)?;
    let force = nearest(i64::from(grams) * GRAVITY, 100_000);
    let layers = i32::from(piece.layers());
    let width = width.steps().checked_mul(layers).map(Length::from_steps).ok_or(MakingError::TooLarge)?;
    Tension::new(force, width).ok_or(MakingError::TooLarge)
}

/// The widest piece on which a tension needs no more than [`MOST_GRAMS`], down to the last whole millimetre.
///
/// ```
/// use tenter_core::{Length, making::hanging::{Specimen, Tension, widest}};
///
/// let woven = Tension::new(30_000, Length::from_mm(50)).unwrap();
/// assert_eq!(widest(woven, Specimen::Strip), Length::from_mm(32));
/// ```
#[must_use]
pub fn widest(tension: Tension, piece: Specimen) -> Length {
    // Grams · g in micronewtons, without the halves that rounding would add.
    let most = i64::from(MOST_GRAMS) * GRAVITY / 100;
    let per_step = i64::from(tension.millinewtons) * 1000 * i64::from(piece.layers());
    let steps = most.checked_mul(tension.width.steps().into()).and_then(|s| s.checked_div(per_step)).unwrap_or(0);
    let whole = steps - steps % 1600;
    Length::from_steps(i32::try_from(whole).unwrap_or(i32::MAX))
}

/// A published tension.
///
/// ```
/// use tenter_core::making::hanging::METHODS;
///
/// let woven = METHODS.iter().find(|method| method.standard == "EN 14704-1" && method.cloth == "woven").unwrap();
/// assert_eq!((woven.year, woven.tension().millinewtons_per_cm()), (Some(2005), 6_000));
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct TensionMethod {
    /// The standard's number.
    pub standard: &'static str,
    /// The year of the edition, where it is known.
    pub year: Option<u16>,
    /// For which cloth.
    pub cloth: &'static str,
    /// The force, in millinewtons.
    pub millinewtons: u32,
    /// The width of the piece in one layer.
    pub width: Length,
    /// What hangs.
    pub piece: Specimen,
    /// Where it was read.
    pub source: Source,
}

impl TensionMethod {
    /// The force over all layers of the piece.
    #[must_use]
    pub const fn tension(&self) -> Tension {
        let layers = self.piece.layers() as i32;
        Tension {
            millinewtons: self.millinewtons,
            width: Length::from_steps(self.width.steps().saturating_mul(layers)),
        }
    }
}

const fn method(
    standard: &'static str,
    year: Option<u16>,
    cloth: &'static str,
    millinewtons: u32,
    source: Source,
) -> TensionMethod {
    TensionMethod { standard, year, cloth, millinewtons, width: Length::from_mm(50), piece: Specimen::Strip, source }
}

const D2594: Source = Source::Published("ASTM D2594, after a working summary of the method, 2012; edition not named");
const D3107: Source = Source::Published("ASTM D3107-07, scope: on 2 in, up to 360 g/cm, stretch wovens above 12 %");
const EN_14704: Source = Source::Published("BS EN 14704-1:2005, withdrawn 2020, after a laboratory bulletin, 2009");
const JIS: Source = Source::Published("JIS L 1096, stretch, method B, after test institutes' pages; edition not named");

const fn d2594(cloth: &'static str, millinewtons: u32) -> TensionMethod {
    TensionMethod {
        width: Length::from_mm(127),
        piece: Specimen::Loop,
        ..method("ASTM D2594", None, cloth, millinewtons, D2594)
    }
}

const fn d3107(cloth: &'static str, millinewtons: u32) -> TensionMethod {
    let width = Length::from_inch_64ths(128);
    TensionMethod { width, ..method("ASTM D3107", Some(2007), cloth, millinewtons, D3107) }
}

const fn en(cloth: &'static str, millinewtons: u32) -> TensionMethod {
    method("EN 14704-1", Some(2005), cloth, millinewtons, EN_14704)
}

/// The tensions of published methods, from the least. They differ by seven times, and so does what one cloth reads.
pub const METHODS: &[TensionMethod] = &[
    d2594("knit, loose-fitting", 22_241),
    d2594("knit, form-fitting", 44_482),
    d3107("stretch woven, 3 lb", 13_345),
    method("JIS L 1096", None, "any, method B", 14_700, JIS),
    en("weft knit, under 5 % elastane", 15_000),
    d3107("stretch woven, 4 lb", 17_793),
    en("weft knit, 5 to 12 % elastane", 20_000),
    en("weft knit, 12 to 20 % elastane", 25_000),
    en("woven", 30_000),
    en("weft knit, over 20 % elastane", 35_000),
];
