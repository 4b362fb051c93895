//! What a garment has: closings, pockets, a hood, a cord, casings.

use crate::number::words;

/// Something that a garment of a kind may have.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
#[repr(u8)]
pub enum Detail {
    /// It is for a child.
    Child,
    /// A lining.
    Lining,
    /// A hood.
    Hood,
    /// A collar.
    Collar,
    /// Sleeves.
    Sleeves,
    /// Darts.
    Darts,
    /// Panel or princess seams.
    Panels,
    /// A yoke.
    Yoke,
    /// A zip that parts at its foot.
    SeparatingZip,
    /// A zip that stays closed at its foot.
    ClosedZip,
    /// A fly with a zip.
    Fly,
    /// Buttons.
    Buttons,
    /// Welt pockets.
    WeltPockets,
    /// Patch pockets.
    PatchPockets,
    /// Pockets in the side seams.
    SidePockets,
    /// Front pockets with a cut-out mouth, as on jeans.
    HipPockets,
    /// A waistband.
    Waistband,
    /// Elastic at the waist.
    ElasticWaist,
    /// Cuffs of the sleeves' own cloth or another woven.
    Cuffs,
    /// Elastic at the wrists.
    ElasticCuffs,
    /// Cuffs and lower band of rib.
    RibBands,
    /// A cord: in the hood where there is one, else in the lower edge or the waist.
    Cord,
    /// Raglan sleeves.
    Raglan,
    /// Sleeve heads, which hold the cap of a set-in sleeve.
    SleeveHeads,
    /// A vent in the centre back.
    Vent,
    /// Slits in the side seams.
    Slits,
    /// A seam at the waist that joins a bodice to a skirt.
    WaistSeam,
}

words!(Detail {
    Child => "child",
    Lining => "lining",
    Hood => "hood",
    Collar => "collar",
    Sleeves => "sleeves",
    Darts => "darts",
    Panels => "panels",
    Yoke => "yoke",
    SeparatingZip => "separating-zip",
    ClosedZip => "closed-zip",
    Fly => "fly",
    Buttons => "buttons",
    WeltPockets => "welt-pockets",
    PatchPockets => "patch-pockets",
    SidePockets => "side-pockets",
    HipPockets => "hip-pockets",
    Waistband => "waistband",
    ElasticWaist => "elastic-waist",
    Cuffs => "cuffs",
    ElasticCuffs => "elastic-cuffs",
    RibBands => "rib-bands",
    Cord => "cord",
    Raglan => "raglan",
    SleeveHeads => "sleeve-heads",
    Vent => "vent",
    Slits => "slits",
    WaistSeam => "waist-seam",
});

impl Detail {
    /// What it takes the place of: a garment closes in one way, and one thing finishes an edge.
    const fn instead_of(self) -> Details {
        match self {
            Self::SeparatingZip | Self::ClosedZip | Self::Fly | Self::Buttons => Details::CLOSINGS.less(self),
            Self::Hood => Details::of(&[Self::Collar]),
            Self::Collar => Details::of(&[Self::Hood]),
            // What is drawn on needs no other opening, and the cloth itself may be its casing.
            Self::ElasticWaist => Details::of(&[Self::Waistband, Self::Fly, Self::ClosedZip, Self::Darts]),
            Self::Cuffs | Self::ElasticCuffs | Self::RibBands => Details::CUFFS.less(self),
            // A raglan sleeve has no cap.
            Self::Raglan => Details::of(&[Self::SleeveHeads]),
            Self::SleeveHeads => Details::of(&[Self::Raglan]),
            _ => Details::NONE,
        }
    }
}

/// A set of details.
///
/// ```
/// use tenter_core::making::garment::{Detail, Details};
///
/// let jacket = Details::of(&[Detail::Collar, Detail::SeparatingZip]);
/// // A hood takes the collar's place.
/// let hooded = jacket.with(Detail::Hood);
/// assert!(hooded.has(Detail::Hood) && hooded.has(Detail::SeparatingZip) && !hooded.has(Detail::Collar));
/// assert_eq!(hooded.less(Detail::Hood), Details::of(&[Detail::SeparatingZip]));
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct Details(u32);

impl Details {
    /// No detail.
    pub const NONE: Self = Self(0);

    const CLOSINGS: Self = Self::of(&[Detail::SeparatingZip, Detail::ClosedZip, Detail::Fly, Detail::Buttons]);
    const CUFFS: Self = Self::of(&[Detail::Cuffs, Detail::ElasticCuffs, Detail::RibBands]);

    /// These details.
    ///
    /// ```
    /// use tenter_core::making::garment::{Detail, Details};
    ///
    /// assert_eq!(Details::of(&[Detail::Hood, Detail::Cord]).iter().count(), 2);
    /// ```
    #[must_use]
    pub const fn of(details: &[Detail]) -> Self {
        let (mut set, mut rest) = (0, details);
        while let [detail, others @ ..] = rest {
            set |= 1 << *detail as u8;
            rest = others;
        }
        Self(set)
    }

    /// Whether this detail is among them.
    #[must_use]
    pub const fn has(self, detail: Detail) -> bool {
        self.0 & 1 << detail as u8 != 0
    }

    /// Whether all of `others` are among them.
    ///
    /// ```
    /// use tenter_core::making::garment::{Detail, Details};
    ///
    /// assert!(Details::of(&[Detail::Hood, Detail::Cord]).has_all(Details::of(&[Detail::Cord])));
    /// ```
    #[must_use]
    pub const fn has_all(self, others: Self) -> bool {
        self.0 & others.0 == others.0
    }

    /// Whether any of `others` is among them.
    ///
    /// ```
    /// use tenter_core::making::garment::{Detail, Details};
    ///
    /// assert!(!Details::NONE.has_any(Details::of(&[Detail::Cord])));
    /// ```
    #[must_use]
    pub const fn has_any(self, others: Self) -> bool {
        self.0 & others.0 != 0
    }

    /// With one more, and without what it takes the place of.
    #[must_use]
    pub const fn with(self, detail: Detail) -> Self {
        Self(self.0 & !detail.instead_of().0 | 1 << detail as u8)
    }

    /// Without one.
    #[must_use]
    pub const fn less(self, detail: Detail) -> Self {
        Self(self.0 & !(1 << detail as u8))
    }

    /// The details, in their own order.
    pub fn iter(self) -> impl Iterator<Item = Detail> {
        Detail::ALL.into_iter().filter(move |detail| self.has(*detail))
    }
}
