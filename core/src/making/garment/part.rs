//! The parts of a garment.

use crate::number::words;

/// A part of a garment that may have a cloth of its own.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum GarmentPart {
    /// The body: fronts and backs, legs; the bodice of a dress that is seamed at the waist, else bodice and skirt in one.
    Main,
    /// The skirt of a dress that is seamed at the waist.
    Skirt,
    /// The sleeves.
    Sleeve,
    /// A yoke.
    Yoke,
    /// A panel let into the body.
    Panel,
    /// A hood.
    Hood,
    /// A collar.
    Collar,
    /// Facings.
    Facing,
    /// A waistband.
    Waistband,
    /// Cuffs.
    Cuff,
    /// A band at the neck of a knit.
    Neckband,
    /// A band at the lower edge.
    HemBand,
    /// All bands of a knit: neck, cuffs and lower edge.
    Rib,
    /// Pockets that are seen.
    Pocket,
    /// Pocket bags.
    PocketBag,
    /// A lining.
    Lining,
    /// Interfacing.
    Interfacing,
    /// Elastic.
    Elastic,
}

words!(GarmentPart {
    Main => "main",
    Skirt => "skirt",
    Sleeve => "sleeve",
    Yoke => "yoke",
    Panel => "panel",
    Hood => "hood",
    Collar => "collar",
    Facing => "facing",
    Waistband => "waistband",
    Cuff => "cuff",
    Neckband => "neckband",
    HemBand => "hem-band",
    Rib => "rib",
    Pocket => "pocket",
    PocketBag => "pocket-bag",
    Lining => "lining",
    Interfacing => "interfacing",
    Elastic => "elastic",
});

impl GarmentPart {
    /// Whether a cloth for this part is the cloth of another: a rib is that of every band.
    ///
    /// ```
    /// use tenter_core::making::garment::GarmentPart;
    ///
    /// assert!(GarmentPart::Rib.serves(GarmentPart::Cuff) && !GarmentPart::Cuff.serves(GarmentPart::Neckband));
    /// ```
    #[must_use]
    pub fn serves(self, other: Self) -> bool {
        self == other || self == Self::Rib && matches!(other, Self::Cuff | Self::Neckband | Self::HemBand)
    }

    /// Whether it is sewn with the seams of the outside, and is no layer behind it, nothing inside it.
    #[must_use]
    pub const fn is_outside(self) -> bool {
        !matches!(self, Self::Lining | Self::Interfacing | Self::PocketBag | Self::Elastic)
    }
}
