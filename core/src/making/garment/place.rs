//! Where work is done on a garment, and in what manner.

use crate::number::words;

/// A zone that is interfaced.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum Zone {
    /// The front edges and their facings.
    FrontEdge,
    /// A neck that is faced and has no collar.
    Neck,
    /// A collar.
    Collar,
    /// A fly.
    Fly,
    /// Cuffs.
    Cuff,
    /// A waistband.
    Waistband,
    /// The openings of welt pockets.
    PocketOpening,
    /// The hem of a coat.
    Hem,
    /// Where eyelets are set.
    Eyelets,
    /// A vent.
    Vent,
}

words!(Zone {
    FrontEdge => "front-edge",
    Neck => "neck",
    Collar => "collar",
    Fly => "fly",
    Cuff => "cuff",
    Waistband => "waistband",
    PocketOpening => "pocket-opening",
    Hem => "hem",
    Eyelets => "eyelets",
    Vent => "vent",
});

impl Zone {
    /// What its interfacing does where the cloth must give: a closing and a pocket are held firm, a facing and a hem give
    /// with the cloth; at the others it is a matter of taste.
    #[must_use]
    pub const fn holds(self) -> Option<Holds> {
        match self {
            Self::FrontEdge | Self::Fly | Self::PocketOpening | Self::Eyelets | Self::Waistband => Some(Holds::Firm),
            Self::Neck | Self::Hem => Some(Holds::Gives),
            Self::Collar | Self::Cuff | Self::Vent => None,
        }
    }
}

/// What an interfacing does to the give of a cloth.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum Holds {
    /// It takes it away.
    Firm,
    /// It gives as the cloth does.
    Gives,
}

/// An edge that is stay-stitched.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum StayedEdge {
    /// The neck, in two halves from the shoulder to the centre.
    Neck,
    /// The waist of a skirt or trousers.
    Waist,
    /// A pocket mouth that slants.
    PocketMouth,
    /// The slanting edges of a raglan sleeve and of what it is sewn to.
    Raglan,
}

words!(StayedEdge { Neck => "neck", Waist => "waist", PocketMouth => "pocket-mouth", Raglan => "raglan" });

/// What is marked on the pieces.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum PieceMark {
    /// Notches.
    Notches,
    /// The centre front and the centre back.
    Centres,
    /// Darts.
    Darts,
    /// Where pockets lie.
    Pockets,
    /// Where eyelets are set.
    Eyelets,
    /// The foot of a zip or a fly.
    ZipFoot,
    /// Buttonholes.
    Buttonholes,
    /// The quarters of bands and elastic and of the edges that they are sewn to.
    Quarters,
    /// Where a vent or slits end.
    Vents,
}

words!(PieceMark {
    Notches => "notches",
    Centres => "centres",
    Darts => "darts",
    Pockets => "pockets",
    Eyelets => "eyelets",
    ZipFoot => "zip-foot",
    Buttonholes => "buttonholes",
    Quarters => "quarters",
    Vents => "vents",
});

/// How a seam of a kind is sewn beyond its stitch and its finish.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum Manner {
    /// As every seam.
    Plain,
    /// While sleeve and body still lie flat.
    Flat,
    /// The fuller side is eased in.
    Eased,
    /// One leg inside the other.
    LegInLeg,
    /// The band is pulled to match the longer edge.
    Pulled,
    /// In one go from the lower edge up, through the armhole.
    InOne,
    /// Felled.
    Felled,
    /// The inner edge is turned under and closes the seam.
    Enclosed,
}

words!(Manner {
    Plain => "plain",
    Flat => "flat",
    Eased => "eased",
    LegInLeg => "leg-in-leg",
    Pulled => "pulled",
    InOne => "in-one",
    Felled => "felled",
    Enclosed => "enclosed",
});

/// What a garment needs beside its cloths. A wash may shorten a zip, elastic and a cord.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum Notion {
    /// A zip.
    Zip,
    /// Elastic.
    Elastic,
    /// A cord.
    Cord,
    /// Eyelets.
    Eyelets,
    /// Stops for the ends of a cord.
    CordStops,
    /// Buttons.
    Buttons,
    /// What closes a waistband over its zip: a button, or a hook and bar.
    BandClosing,
    /// A hook and eye above a zip.
    HookAndEye,
    /// Fusible interfacing.
    Fusible,
    /// Interfacing that is sewn in.
    SewInInterfacing,
    /// Cloth for pocket bags.
    PocketBags,
    /// Sleeve heads.
    SleeveHeads,
    /// Clear elastic, sewn into seams that are held and come back.
    ClearElastic,
    /// Tape that binds raw edges.
    BindingTape,
}

words!(Notion {
    Zip => "zip",
    Elastic => "elastic",
    Cord => "cord",
    Eyelets => "eyelets",
    CordStops => "cord-stops",
    Buttons => "buttons",
    BandClosing => "band-closing",
    HookAndEye => "hook-and-eye",
    Fusible => "fusible",
    SewInInterfacing => "sew-in-interfacing",
    PocketBags => "pocket-bags",
    SleeveHeads => "sleeve-heads",
    ClearElastic => "clear-elastic",
    BindingTape => "binding-tape",
});

/// Where a cord runs.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum CordAt {
    /// Round the face of a hood.
    Hood,
    /// In the lower edge.
    LowerEdge,
    /// At the waist.
    Waist,
}

words!(CordAt { Hood => "hood", LowerEdge => "lower-edge", Waist => "waist" });

/// An edge that is hemmed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum Hem {
    /// The face of a hood.
    HoodFace,
    /// The sleeves.
    Sleeves,
    /// The legs.
    Legs,
    /// The lower edge.
    LowerEdge,
}

words!(Hem { HoodFace => "hood-face", Sleeves => "sleeves", Legs => "legs", LowerEdge => "lower-edge" });
