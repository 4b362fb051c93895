//! How strong a zip is.

use crate::answer::source::Source;
use crate::making::garment::GarmentKind;
use crate::reading::length::Length;

/// The chain of a zip: the numbers by which shops sell it, from the lightest to the heaviest.
///
/// ```
/// use tenter_core::making::{garment::GarmentKind, zip::chain};
///
/// assert_eq!((chain(GarmentKind::Skirt).lightest, chain(GarmentKind::Skirt).heaviest), (3, 3));
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct Chain {
    /// The lightest that will do.
    pub lightest: u8,
    /// The heaviest that will do.
    pub heaviest: u8,
    /// The class of use that the garment belongs to.
    pub code: UseCode,
    /// Where the numbers come from.
    pub source: Source,
}

/// The classes of use of BS 3084:2006, after a laboratory's bulletin.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum UseCode {
    /// Dresses and knitwear.
    A,
    /// Skirts and trousers.
    B,
    /// Jackets.
    C,
    /// Coats, ski wear, leather.
    D,
}

impl UseCode {
    /// Where the classes come from.
    pub const SOURCE: Source = Source::Published("BS 3084:2006, codes of use, after a laboratory's bulletin");
}

/// The chain that a garment usually has.
///
/// ```
/// use tenter_core::making::{garment::GarmentKind, zip::{UseCode, chain}};
///
/// assert_eq!(chain(GarmentKind::LinedCoat).code, UseCode::D);
/// ```
#[must_use]
pub const fn chain(garment: GarmentKind) -> Chain {
    use GarmentKind as Kind;
    let (lightest, heaviest, code) = match garment {
        Kind::Dress | Kind::TShirt | Kind::Shirt | Kind::Swimwear => (3, 3, UseCode::A),
        Kind::Skirt | Kind::Leggings => (3, 3, UseCode::B),
        Kind::Trousers | Kind::Jeans => (4, 5, UseCode::B),
        Kind::HoodedPullover => (5, 5, UseCode::A),
        Kind::UnlinedJacket | Kind::ChildsOuterwear => (5, 5, UseCode::C),
        Kind::LinedCoat => (8, 10, UseCode::D),
    };
    Chain { lightest, heaviest, code, source: Source::CommonPractice }
}

impl Chain {
    /// Where the mouths of sliders come from. It also says that no zip can be made to an exact length, since it has whole
    /// teeth, and that the minus tolerance grows with the length (5.3).
    pub const MOUTHS: Source = Source::Published("ASTM D3657-03, Table 1: sizes of zippers by the mouth of the slider");

    /// The widest mouth that the slider of a chain of this number has, where the closed chain lies in it; none above, or for
    /// a number that is not sold.
    ///
    /// ```
    /// use tenter_core::{Length, making::zip::Chain};
    ///
    /// assert_eq!(Chain::mouth(3), Some(Length::from_steps(57 * 160))); // 5.7 mm.
    /// ```
    #[must_use]
    pub const fn mouth(number: u8) -> Option<Length> {
        let tenths = match number {
            1 | 2 => 38,
            3 | 4 => 57,
            5 | 6 => 70,
            _ => return None,
        };
        Some(Length::from_steps(tenths * (Length::STEPS_PER_MM / 10)))
    }
}
