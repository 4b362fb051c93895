//! The stages of the work, and what is done in them.

use super::Seam;
use crate::number::words;

/// A stage of the work. A garment may come back to one: the back pockets of jeans are sewn before the back seat, the front
/// pockets after it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum Stage {
    /// Cloth, interfacing and notions are washed as the garment will be.
    Prewash,
    /// A sample seam in the cloths that meet in it.
    Sample,
    /// Laying out and cutting.
    Cut,
    /// Interfacing.
    Fuse,
    /// Marking and stay-stitching.
    Mark,
    /// Darts, a fly, a closed zip or a button band, while the pieces lie flat.
    Flat,
    /// Pockets, while the pieces lie flat.
    Pockets,
    /// Eyelets and cords, while the pieces lie flat.
    Eyelets,
    /// The seams.
    Seams,
    /// A separating zip.
    Zip,
    /// Facings, linings and buttonholes.
    Facing,
    /// Casings, elastic and the cord in them.
    Casings,
    /// Hems.
    Hems,
    /// The last press.
    Press,
}

words!(Stage {
    Prewash => "prewash",
    Sample => "sample",
    Cut => "cut",
    Fuse => "fuse",
    Mark => "mark",
    Flat => "flat",
    Pockets => "pockets",
    Eyelets => "eyelets",
    Seams => "seams",
    Zip => "zip",
    Facing => "facing",
    Casings => "casings",
    Hems => "hems",
    Press => "press",
});

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
});

impl Zone {
    /// What its interfacing does where the cloth must give: a closing and a pocket are held firm, a facing and a hem give
    /// with the cloth; at the others it is a matter of taste.
    #[must_use]
    pub const fn holds(self) -> Option<Holds> {
        match self {
            Self::FrontEdge | Self::Fly | Self::PocketOpening | Self::Eyelets | Self::Waistband => Some(Holds::Firm),
            Self::Neck | Self::Hem => Some(Holds::Gives),
            Self::Collar | Self::Cuff => None,
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
pub enum Edge {
    /// The neck, in two halves from the shoulder to the centre.
    Neck,
    /// The waist of a skirt or trousers.
    Waist,
    /// A pocket mouth that slants.
    PocketMouth,
}

words!(Edge { Neck => "neck", Waist => "waist", PocketMouth => "pocket-mouth" });

/// What is marked on the pieces.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum Point {
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
    /// The quarters of bands and of the edges that they are sewn to.
    Quarters,
}

words!(Point {
    Notches => "notches",
    Centres => "centres",
    Darts => "darts",
    Pockets => "pockets",
    Eyelets => "eyelets",
    ZipFoot => "zip-foot",
    Buttonholes => "buttonholes",
    Quarters => "quarters",
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

/// A notion that a wash may shorten.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum Notion {
    /// A zip.
    Zip,
    /// Elastic.
    Elastic,
    /// A cord.
    Cord,
}

words!(Notion { Zip => "zip", Elastic => "elastic", Cord => "cord" });

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

/// One piece of work.
///
/// ```
/// use tenter_core::making::garment::{Work, Zone};
///
/// assert_ne!(Work::Interface(Zone::Collar), Work::Interface(Zone::Cuff));
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum Work {
    /// Wash a notion with the cloth.
    WashNotion(Notion),

    /// Cut all pieces one way up.
    LayOneWay,
    /// Keep the cloth from hanging off the table.
    LayFlat,
    /// Hold the layers with clips: pin holes stay.
    Clip,

    /// Interface a zone.
    Interface(Zone),
    /// Fuse a sample first.
    FuseSample,
    /// Cut the fusible smaller than its piece.
    TrimFusible,
    /// Sew the interfacing in: the cloth takes no heat.
    SewInInterfacing,

    /// Hold the seam of a closed zip with a strip that does not stretch.
    ZipStrip,

    /// Mark points.
    Mark(Point),
    /// Stay-stitch an edge.
    StayStitch(Edge),

    /// Sew the welts and the bags on.
    SewWelts,
    /// Cut the openings and turn the bags.
    CutWelts,
    /// Fasten the ends of the welts.
    FastenWelts,
    /// Hem, fold and mitre the pockets.
    FoldPatches,
    /// Sew the pockets on.
    SewPatches,
    /// Hold the mouths of side pockets with tape.
    TapePocketMouths,
    /// Sew the bags of side pockets to front and back.
    SewSideBags,
    /// Tape, face and topstitch the cut-out mouths.
    FaceHipMouths,
    /// Sew the bags and baste them to waist and side.
    CloseHipBags,
    /// Hem the slanting openings of the front pocket.
    HemFrontPocket,
    /// Sew the front pocket on.
    SewFrontPocket,

    /// Set eyelets in one backed layer.
    SetEyelets(CordAt),
    /// Cut the cord and seal its ends.
    CutCord(CordAt),
    /// Cut a child's cord, whose ends are short, and seal it.
    CutChildCord,
    /// Leave the cord out of a child's hood.
    NoHoodCord,

    /// Sew the crotch up to the mark of the fly.
    SewFlyCrotch,
    /// Face the fly and set its zip.
    SetFlyZip,
    /// Topstitch the fly and bar-tack its foot.
    TopstitchFly,
    /// Sew the seam below the zip and baste the rest.
    SewZipSeam,
    /// Set the closed zip.
    SetClosedZip,

    /// Sew the darts.
    SewDarts,
    /// Fold and sew the front bands of a shirt.
    FoldFronts,
    /// Baste the lining to the front pieces.
    BasteLining,
    /// Line a hood: face and lining in one.
    LineHood,
    /// Sew the slit of a sleeve.
    SewPlackets,
    /// Press each seam before another crosses it.
    PressSeams,
    /// Sew a seam.
    Seam(Seam, Manner),
    /// Sew the belt loops on.
    SewLoops,
    /// Baste the separating zip, levels matched.
    BasteZip,
    /// Lay the facing over the zip, sew and trim.
    FaceZip,
    /// Topstitch beside the zip.
    TopstitchZip,

    /// Finish the free edges of facings to be seen.
    FinishFacings,
    /// Sew the facing on.
    SewFacing,
    /// Grade, clip and turn.
    GradeFacing,
    /// Understitch.
    Understitch,
    /// Sew the lining together, with a pleat.
    SewLining,
    /// Set the lining in.
    SetLining,
    /// Sew the lining of a skirt together and baste it to the waist.
    HangLining,
    /// Buttonholes and buttons.
    Buttonholes,

    /// Turn, stitch and fill the casings of the wrists.
    WristCasing,
    /// Turn and stitch the casing at the waist.
    WaistCasing,
    /// Sew elastic to a waist of knit.
    WaistElasticKnit,
    /// Draw elastic into a waistband.
    ElasticInBand,
    /// Quarter elastic to the edges of swimwear.
    EdgeElastic,
    /// Turn the edge to a casing for a cord.
    CordCasing(CordAt),
    /// Draw the cord in and fasten it at the middle.
    DrawCord,
    /// Put stops and knots on the ends.
    StopCord,
    /// A child's cord: in one piece, fastened, no knot or stop on its ends.
    ChildCord,

    /// Hang it before levelling.
    HangHem,
    /// Try it on and mark the hem.
    TryOn,
    /// Hem an edge.
    Hem(Hem),
    /// Hem the sleeves before they are set in.
    HemSleevesFirst,
    /// The hem of a lined coat and that of its lining.
    HemLined,

    /// Press it a last time.
    LastPress,
    /// Press a pile from the wrong side on a towel.
    PressPile,
    /// Use no iron: it harms the finish.
    NoIron,
}
