//! The stages of the work, and what is done in them.

use super::SeamKind;
use super::place::{CordAt, Hem, Manner, Notion, PieceMark, StayedEdge, Zone};
use crate::number::words;

/// A stage of the work. A garment may come back to one: the back pockets of jeans are sewn before the back seat, the front
/// pockets after it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum Stage {
    /// What is bought or looked out beside the cloths.
    Buy,
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
    /// Facings, linings, buttonholes and the fastening of a waistband.
    Facing,
    /// Casings, elastic and the cord in them.
    Casings,
    /// Hems.
    Hems,
    /// The last press.
    Press,
}

words!(Stage {
    Buy => "buy",
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
    /// Get a notion.
    Get(Notion),
    /// Take a zip for a child whose slider cannot pass its top stop.
    ChildSlider,
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
    /// See whether it shows through at its full reach.
    TryOpacity,
    /// The same, dry and wet.
    TryOpacityWet,
    /// Fuse a sample first.
    FuseSample,
    /// Cut the fusible smaller than its piece.
    TrimFusible,
    /// Sew the interfacing in: the cloth takes no heat.
    SewInInterfacing,

    /// Hold the seam of a closed zip with a strip that does not stretch.
    ZipStrip,

    /// Mark points.
    Mark(PieceMark),
    /// Stay-stitch an edge.
    StayStitch(StayedEdge),

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
    /// Press the darts.
    PressDarts,
    /// Sew the collar, before it is set on.
    MakeCollar,
    /// Sew the ends of the cuffs, before they are set on.
    MakeCuffs,
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
    /// The same by steam from behind: it has a pile.
    SteamSeams,
    /// The same by hand: the iron harms the finish.
    FlattenSeams,
    /// Try a neckband over the head before it is sewn on.
    TryNeckband,
    /// Sew the centre back down to its vent, and the vent.
    SewVent,
    /// Sew a seam.
    Seam(SeamKind, Manner),
    /// Sew the sleeve heads into the caps.
    SewSleeveHeads,
    /// Sew the belt loops on.
    SewLoops,
    /// Baste the separating zip, levels matched.
    BasteZip,
    /// Lay the facing over the zip, sew and trim.
    FaceZip,
    /// Topstitch beside the zip.
    TopstitchZip,
    /// Sew a guard behind the top of a child's zip.
    GuardZip,

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
    /// Sew the lining of a skirt or trousers together and baste it to the waist.
    HangLining,
    /// Sew such a lining to the tape of the zip.
    LiningToZip,
    /// Buttonholes and buttons.
    Buttonholes,
    /// Fasten a waistband over its zip.
    FastenBand,
    /// Sew a hook and eye above a zip.
    HookAndEye,

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
    /// The hem of a lining where the outside ends in a casing.
    HemLining,
    /// The hem of a skirt or trousers and that of its lining, which hangs free.
    HemFree,
    /// Finish the edges of the slits.
    SewSlits,

    /// Press it a last time.
    LastPress,
    /// Press a pile from the wrong side on a towel.
    PressPile,
    /// Use no iron: it harms the finish.
    NoIron,
}
