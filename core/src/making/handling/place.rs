//! The places of a garment that want a hand before or beside the seam.

use super::cloth::Cloth;
use crate::answer::source::Source;
use crate::making::printed::Printed;
use crate::number::words;

/// A place of a garment.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum GarmentPlace {
    /// A pocket.
    Pocket,
    /// Gathers.
    Gathers,
    /// A buttonhole.
    Buttonhole,
    /// An eyelet, as for a drawcord.
    Eyelet,
    /// An edge with a zip that stays joined at its foot.
    Zip,
    /// The fronts and their facing along a separating zip or a row of buttons.
    FrontFacing,
    /// Any other facing: back neck, hem, armhole.
    Facing,
    /// A hem on the bias.
    BiasHem,
}

words!(GarmentPlace {
    Pocket => "pocket",
    Gathers => "gathers",
    Buttonhole => "buttonhole",
    Eyelet => "eyelet",
    Zip => "zip",
    FrontFacing => "front-facing",
    Facing => "facing",
    BiasHem => "bias-hem",
});

/// What to do there.
///
/// ```
/// use tenter_core::making::handling::Do;
///
/// assert_ne!(Do::HangADay, Do::Stabilise);
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum Do {
    /// Put a firm piece behind it.
    Stabilise,
    /// Put a strip of interfacing for knits behind it, so wide, under a seam allowance so wide.
    StabiliseStrip {
        /// The width of the strip.
        width: Printed,
        /// The width of the seam allowance over it.
        allowance: Printed,
    },
    /// Interface it; with one that gives as the cloth gives, fused cool, where the cloth gives.
    Interface {
        /// Whether the interfacing must give.
        that_gives: bool,
    },
    /// Hang it a day before levelling.
    HangADay,
}

/// One line for a place.
///
/// ```
/// use tenter_core::Construction;
/// use tenter_core::making::handling::{Cloth, Do, GarmentPlace, at};
///
/// let line = at(&Cloth::new(Construction::Woven), GarmentPlace::Eyelet).unwrap();
/// assert_eq!((line.place, line.what), (GarmentPlace::Eyelet, Do::Stabilise));
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct PlaceLine {
    /// The place.
    pub place: GarmentPlace,
    /// What to do.
    pub what: Do,
    /// Where it comes from.
    pub source: Source,
}

/// What a cloth calls for at a place; none where it calls for nothing.
///
/// ```
/// use tenter_core::Construction;
/// use tenter_core::making::handling::{Cloth, GarmentPlace, at};
///
/// let rigid = Cloth::new(Construction::Woven);
/// assert_eq!(at(&rigid, GarmentPlace::Pocket), None);
/// assert!(at(&Cloth::new(Construction::Knit), GarmentPlace::Pocket).is_some());
/// ```
#[must_use]
pub fn at(cloth: &Cloth, place: GarmentPlace) -> Option<PlaceLine> {
    const KNITS: Source = Source::CommonPractice;
    const HELD: Source = Source::Published(
        "Gotwals, Purdue HE 223: interfacing for front opening, collarless neck, collar, lapel, fly, cuff, waistband, \
         pocket, flap, fasteners, jacket hem",
    );
    let gives = cloth.gives();
    let (what, source) = match place {
        GarmentPlace::Eyelet => (Do::Stabilise, Source::CommonPractice),
        // A front that gives waves along its zip: it is held firm whatever the cloth does.
        GarmentPlace::FrontFacing => (Do::Interface { that_gives: false }, HELD),
        GarmentPlace::Facing => (Do::Interface { that_gives: gives }, if gives { KNITS } else { HELD }),
        GarmentPlace::BiasHem => (Do::HangADay, Source::CommonPractice),
        _ if !gives && !cloth.grows() => return None,
        GarmentPlace::Pocket | GarmentPlace::Gathers | GarmentPlace::Buttonhole => (Do::Stabilise, KNITS),
        GarmentPlace::Zip => {
            let (width, allowance) = (Printed::new(25, 8), Printed::new(15, 5));
            (Do::StabiliseStrip { width, allowance }, Source::CommonPractice)
        }
    };
    Some(PlaceLine { place, what, source })
}
