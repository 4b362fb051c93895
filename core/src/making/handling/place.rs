//! The places of a garment that want a hand before or beside the seam.

use super::Stitch;
use super::cloth::Cloth;
use crate::answer::source::Source;
use crate::number::words;
use crate::reading::construction::Construction;
use crate::reading::length::Length;

/// A place of a garment.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum Place {
    /// A shoulder seam.
    Shoulder,
    /// A neck edge, or another curved edge that is not sewn at once.
    NeckEdge,
    /// A pocket.
    Pocket,
    /// Gathers.
    Gathers,
    /// A buttonhole.
    Buttonhole,
    /// An eyelet, as for a drawcord.
    Eyelet,
    /// An edge with a zip.
    Zip,
    /// A facing.
    Facing,
    /// A hem.
    Hem,
    /// A hem on the bias.
    BiasHem,
    /// The raw seams of a garment without lining.
    RawSeams,
}

words!(Place {
    Shoulder => "shoulder",
    NeckEdge => "neck-edge",
    Pocket => "pocket",
    Gathers => "gathers",
    Buttonhole => "buttonhole",
    Eyelet => "eyelet",
    Zip => "zip",
    Facing => "facing",
    Hem => "hem",
    BiasHem => "bias-hem",
    RawSeams => "raw-seams",
});

/// What to do there.
///
/// ```
/// use tenter_core::making::handling::Do;
///
/// assert_ne!(Do::Tape, Do::Stabilise);
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum Do {
    /// Sew a tape into the seam that does not stretch.
    Tape,
    /// Stay-stitch it as soon as it is cut.
    StayStitch,
    /// Put a firm piece behind it.
    Stabilise,
    /// Put a strip of interfacing for knits behind it, so wide, under a seam allowance so wide.
    StabiliseStrip {
        /// The width of the strip.
        width: Length,
        /// The width of the seam allowance over it.
        allowance: Length,
    },
    /// Interface it; with one that gives as the cloth gives, fused cool, where the cloth gives.
    Interface {
        /// Whether the interfacing must give.
        that_gives: bool,
    },
    /// Hem it with a stitch that gives: zigzag 3.5 mm wide and 1.4 mm long, unstretched, or two rows of straight stitch, 10
    /// to 12 an inch, stretched slightly.
    HemThatGives,
    /// Hang it a day before levelling.
    HangADay,
    /// Bind the raw edges with tape.
    BindWithTape,
}

/// One line for a place.
///
/// ```
/// use tenter_core::Construction;
/// use tenter_core::making::handling::{Cloth, Do, Place, at};
///
/// let line = at(&Cloth::new(Construction::Woven), Place::Eyelet).unwrap();
/// assert_eq!((line.place, line.what), (Place::Eyelet, Do::Stabilise));
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct PlaceLine {
    /// The place.
    pub place: Place,
    /// What to do.
    pub what: Do,
    /// Where it comes from.
    pub source: Source,
}

/// What a cloth calls for at a place; none where it calls for nothing.
///
/// ```
/// use tenter_core::Construction;
/// use tenter_core::making::handling::{Cloth, Place, at};
///
/// let rigid = Cloth::new(Construction::Woven);
/// assert_eq!(at(&rigid, Place::Shoulder), None);
/// assert!(at(&Cloth::new(Construction::Knit), Place::Shoulder).is_some());
/// ```
#[must_use]
pub fn at(cloth: &Cloth, place: Place) -> Option<PlaceLine> {
    const STRETCH_SEAMS: Source = Source::CommonPractice;
    const KNITS: Source = Source::CommonPractice;
    let gives = cloth.gives();
    let (what, source) = match place {
        Place::Eyelet => (Do::Stabilise, Source::CommonPractice),
        Place::Facing if gives => (Do::Interface { that_gives: true }, KNITS),
        Place::Facing => (Do::Interface { that_gives: false }, Source::CommonPractice),
        Place::RawSeams => (Do::BindWithTape, Source::CommonPractice),
        Place::BiasHem => (Do::HangADay, Source::CommonPractice),
        _ if !gives && !cloth.grows() => return None,
        Place::Shoulder => (Do::Tape, STRETCH_SEAMS),
        Place::NeckEdge => (Do::StayStitch, Source::CommonPractice),
        Place::Pocket | Place::Gathers | Place::Buttonhole => (Do::Stabilise, KNITS),
        Place::Zip => {
            let (width, allowance) = (Length::from_inch_64ths(64), Length::from_inch_64ths(40));
            (Do::StabiliseStrip { width, allowance }, Source::CommonPractice)
        }
        Place::Hem if cloth.construction == Construction::Woven && needs_no_give(cloth) => return None,
        Place::Hem => (Do::HemThatGives, Source::CommonPractice),
    };
    Some(PlaceLine { place, what, source })
}

/// A straight hem gives enough.
fn needs_no_give(cloth: &Cloth) -> bool {
    cloth.most_stretch().is_none_or(|figure| Stitch::Straight.allows(figure.ratio))
}

/// What to leave beside a seam, and to what it is trimmed.
///
/// ```
/// use tenter_core::making::{handling::seam_allowance, source::Source};
///
/// assert_eq!(seam_allowance().source, Source::CommonPractice);
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct SeamAllowance {
    /// What is cut.
    pub cut: Length,
    /// What is left after trimming, where the seam is not pressed open.
    pub trimmed: Length,
    /// Where it comes from.
    pub source: Source,
}

/// The usual seam allowance of printed patterns: 5/8 in, trimmed to 1/4 in.
///
/// ```
/// use tenter_core::{Length, making::handling::seam_allowance};
///
/// assert_eq!(seam_allowance().cut, Length::from_inch_64ths(40));
/// ```
#[must_use]
pub const fn seam_allowance() -> SeamAllowance {
    SeamAllowance {
        cut: Length::from_inch_64ths(40),
        trimmed: Length::from_inch_64ths(16),
        source: Source::CommonPractice,
    }
}
