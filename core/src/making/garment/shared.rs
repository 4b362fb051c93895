//! Rows that several kinds share.

use super::Detail::{
    Buttons, Child, ClosedZip, Collar, Cord, Cuffs, Darts, ElasticCuffs, ElasticWaist, Fly, HipPockets, Hood, Lining,
    PatchPockets, Raglan, SeparatingZip, SidePockets, SleeveHeads, Sleeves, Slits, Vent, Waistband, WeltPockets,
};
use super::SeamKind;
use super::place::{CordAt, Hem, Notion, PieceMark, StayedEdge, Zone};
use super::row::{ClothCondition, WorkRow, row, seam};
use super::work::{Stage, Work};

const OREGON: &str = "Oregon Extension EC 940, zips";
const LESSON: &str = "ICAR e-course, Clothing Construction, lesson on stay-stitching";
const PURDUE: &str = "L. Gotwals, Purdue Extension HE 223, interfacing";
const TEXAS: &str = "Texas Extension E-404, interfacing";
const NEW_MEXICO: &str = "S. Wright, New Mexico Extension C-225, patch pockets";
const STANDARDS: &str = "Association of Sewing and Design Professionals, Standards, pp. 13-23";
const ARMY: &str = "US Army TM 10-8400-203-23, cords and eyelets";
const GUIDELINE: &str = "Sewing guideline 11.125, Fold-Down Casings";
const UNITS: &str = "Dodson and Quinn, California Manual 11: each part is finished before it is joined";

const CODES: &str = "BS 3084:2006, zips of children's clothes, after a laboratory's bulletin";

const fn get(notion: Notion) -> WorkRow {
    row(Stage::Buy, Work::Get(notion))
}

/// What it needs beside its cloths.
pub(super) const NOTIONS: &[WorkRow] = &[
    get(Notion::Zip).any(&[SeparatingZip, ClosedZip, Fly]),
    row(Stage::Buy, Work::ChildSlider).with(&[Child]).any(&[SeparatingZip, ClosedZip, Fly]).after(CODES),
    get(Notion::BandClosing).with(&[Waistband]).any(&[Fly, ClosedZip]).without(&[ElasticWaist]),
    get(Notion::Buttons).with(&[Buttons]),
    get(Notion::Elastic).any(&[ElasticWaist, ElasticCuffs]),
    get(Notion::Cord).with(&[Cord]),
    get(Notion::Eyelets).with(&[Cord]),
    get(Notion::CordStops).with(&[Cord]).without(&[Child]),
    get(Notion::Fusible).asks(ClothCondition::Fusible).after(TEXAS),
    get(Notion::SewInInterfacing).asks(ClothCondition::NoFusible).own("a finish that takes no heat takes no fusible"),
    get(Notion::PocketBags).any(&[WeltPockets, SidePockets, HipPockets]),
    get(Notion::SleeveHeads).with(&[Sleeves, SleeveHeads]).without(&[Raglan]),
];

/// What is washed with the cloth.
pub(super) const WASH: &[WorkRow] = &[
    row(Stage::Prewash, Work::WashNotion(Notion::Zip)).any(&[SeparatingZip, ClosedZip, Fly]).after(OREGON),
    row(Stage::Prewash, Work::WashNotion(Notion::Elastic)).any(&[ElasticWaist, ElasticCuffs]),
    row(Stage::Prewash, Work::WashNotion(Notion::Cord)).with(&[Cord]),
];

/// How the cloth is laid; these rows are asked of each cloth by itself.
pub(super) const CUT: &[WorkRow] = &[
    row(Stage::Cut, Work::LayOneWay).asks(ClothCondition::OneWay),
    row(Stage::Cut, Work::LayFlat).asks(ClothCondition::Stretches),
    row(Stage::Cut, Work::Clip).asks(ClothCondition::HolesStay),
];

/// Interfacing is tried on a sample first.
pub(super) const SAMPLE: &[WorkRow] =
    &[row(Stage::Sample, Work::FuseSample).asks(ClothCondition::Fusible).after(TEXAS)];

/// How the interfacing is put on, after the zones: a fusible is smaller than its piece; what takes no heat takes none.
pub(super) const TRIM: &[WorkRow] = &[
    row(Stage::Fuse, Work::TrimFusible).asks(ClothCondition::Fusible),
    row(Stage::Fuse, Work::SewInInterfacing)
        .asks(ClothCondition::NoFusible)
        .own("a finish that takes no heat takes no fusible"),
];

/// The front edges and the collar of what opens in front.
pub(super) const FRONT_ZONES: &[WorkRow] = &[
    row(Stage::Fuse, Work::Interface(Zone::FrontEdge)).any(&[SeparatingZip, Buttons]).after(PURDUE),
    row(Stage::Fuse, Work::Interface(Zone::Collar)).with(&[Collar]).after(PURDUE),
    row(Stage::Fuse, Work::Interface(Zone::Neck)).without(&[Collar, Hood]).after(PURDUE),
    row(Stage::Fuse, Work::Interface(Zone::Cuff)).with(&[Cuffs]).after(PURDUE),
    row(Stage::Fuse, Work::Interface(Zone::PocketOpening)).with(&[WeltPockets]).after(PURDUE),
    row(Stage::Fuse, Work::Interface(Zone::Eyelets)).with(&[Cord]),
];

/// Waistband and fly.
pub(super) const WAIST_ZONES: &[WorkRow] = &[
    row(Stage::Fuse, Work::Interface(Zone::Waistband)).with(&[Waistband]).without(&[ElasticWaist]).after(PURDUE),
    row(Stage::Fuse, Work::Interface(Zone::Fly)).with(&[Fly]).after(PURDUE),
    row(Stage::Fuse, Work::Interface(Zone::PocketOpening)).with(&[WeltPockets]).after(PURDUE),
    row(Stage::Fuse, Work::Interface(Zone::Eyelets)).with(&[Cord]),
];

/// What is marked, as far as the garment has it.
pub(super) const MARKS: &[WorkRow] = &[
    row(Stage::Mark, Work::Mark(PieceMark::Notches)),
    row(Stage::Mark, Work::Mark(PieceMark::Centres)),
    row(Stage::Mark, Work::Mark(PieceMark::Darts)).with(&[Darts]),
    row(Stage::Mark, Work::Mark(PieceMark::Pockets)).any(&[WeltPockets, PatchPockets, SidePockets]),
    row(Stage::Mark, Work::Mark(PieceMark::Eyelets)).with(&[Cord]),
    row(Stage::Mark, Work::Mark(PieceMark::ZipFoot)).any(&[ClosedZip, Fly]),
    row(Stage::Mark, Work::Mark(PieceMark::Buttonholes)).with(&[Buttons]),
    row(Stage::Mark, Work::Mark(PieceMark::Quarters)).with(&[Waistband, ElasticWaist]),
    row(Stage::Mark, Work::Mark(PieceMark::Vents)).any(&[Vent, Slits]),
];

/// A curved neck of woven; one of knit must pass the head and is not stay-stitched.
pub(super) const STAY_NECK: &[WorkRow] =
    &[row(Stage::Mark, Work::StayStitch(StayedEdge::Neck)).asks(ClothCondition::Woven).after(LESSON)];

/// A curved waist of woven that is not drawn in.
pub(super) const STAY_WAIST: &[WorkRow] = &[row(Stage::Mark, Work::StayStitch(StayedEdge::Waist))
    .without(&[ElasticWaist])
    .asks(ClothCondition::Woven)
    .after(LESSON)];

/// The slanting edges of a raglan of woven.
pub(super) const STAY_RAGLAN: &[WorkRow] = &[row(Stage::Mark, Work::StayStitch(StayedEdge::Raglan))
    .with(&[Sleeves, Raglan])
    .asks(ClothCondition::Woven)
    .after(LESSON)];

/// Darts.
pub(super) const DARTS: &[WorkRow] = &[
    row(Stage::Flat, Work::SewDarts).with(&[Darts]),
    row(Stage::Flat, Work::PressDarts).with(&[Darts]).asks(ClothCondition::Iron),
];

/// Collar and cuffs are sewn before they are set on: each part is finished before it is joined.
pub(super) const SMALL_PARTS: &[WorkRow] = &[
    row(Stage::Flat, Work::MakeCollar).with(&[Collar]).after(UNITS),
    row(Stage::Flat, Work::MakeCuffs).with(&[Cuffs, Sleeves]).after(UNITS),
];

/// A vent, and the interfacing in it.
pub(super) const VENT_ZONE: &[WorkRow] = &[row(Stage::Fuse, Work::Interface(Zone::Vent)).with(&[Vent])];

/// A vent, sewn with the centre back.
pub(super) const VENT: &[WorkRow] = &[row(Stage::Seams, Work::SewVent).with(&[Vent])];

/// Slits, finished with the hem.
pub(super) const SLITS: &[WorkRow] = &[row(Stage::Hems, Work::SewSlits).with(&[Slits])];

/// Pockets of every make.
pub(super) const POCKETS: &[WorkRow] = &[
    row(Stage::Pockets, Work::SewWelts).with(&[WeltPockets]),
    row(Stage::Pockets, Work::CutWelts).with(&[WeltPockets]),
    row(Stage::Pockets, Work::FastenWelts).with(&[WeltPockets]),
    row(Stage::Pockets, Work::FoldPatches).with(&[PatchPockets]).after(NEW_MEXICO),
    row(Stage::Pockets, Work::SewPatches).with(&[PatchPockets]).after(NEW_MEXICO),
    row(Stage::Pockets, Work::TapePocketMouths).with(&[SidePockets]).after(STANDARDS),
    row(Stage::Pockets, Work::SewSideBags).with(&[SidePockets]).after(STANDARDS),
];

/// What gives is held beside a closed zip before its seam is sewn.
pub(super) const ZIP_STRIP: &[WorkRow] =
    &[row(Stage::Fuse, Work::ZipStrip).with(&[ClosedZip]).asks(ClothCondition::Gives)];

/// A closed zip in a seam.
pub(super) const CLOSED_ZIP: &[WorkRow] =
    &[row(Stage::Flat, Work::SewZipSeam).with(&[ClosedZip]), row(Stage::Flat, Work::SetClosedZip).with(&[ClosedZip])];

/// Eyelets and cord of a hood or a lower edge. A child's hood has none.
pub(super) const OUTER_EYELETS: &[WorkRow] = &[
    row(Stage::Eyelets, Work::NoHoodCord).with(&[Child, Hood]).after("16 CFR 1120 with ASTM F1816; EN 14682"),
    row(Stage::Eyelets, Work::SetEyelets(CordAt::Hood)).with(&[Cord, Hood]).without(&[Child]).after(ARMY),
    row(Stage::Eyelets, Work::CutCord(CordAt::Hood)).with(&[Cord, Hood]).without(&[Child]),
    row(Stage::Eyelets, Work::SetEyelets(CordAt::LowerEdge)).with(&[Cord]).without(&[Hood]).after(ARMY),
    row(Stage::Eyelets, Work::CutCord(CordAt::LowerEdge)).with(&[Cord]).without(&[Hood, Child]),
    row(Stage::Eyelets, Work::SetEyelets(CordAt::LowerEdge)).with(&[Cord, Hood, Child]).after(ARMY),
    row(Stage::Eyelets, Work::CutChildCord).with(&[Cord, Child]).after("16 CFR 1120 with ASTM F1816; EN 14682"),
];

/// Eyelets and cord of a waist.
pub(super) const WAIST_EYELETS: &[WorkRow] = &[
    row(Stage::Eyelets, Work::SetEyelets(CordAt::Waist)).with(&[Cord]).after(ARMY),
    row(Stage::Eyelets, Work::CutCord(CordAt::Waist)).with(&[Cord]).without(&[Child]),
    row(Stage::Eyelets, Work::CutChildCord).with(&[Cord, Child]).after("16 CFR 1120 with ASTM F1816; EN 14682"),
];

/// A separating zip with its facing.
pub(super) const ZIP_FRONT: &[WorkRow] = &[
    row(Stage::Zip, Work::BasteZip).with(&[SeparatingZip]),
    row(Stage::Zip, Work::FaceZip).with(&[SeparatingZip]),
    row(Stage::Zip, Work::TopstitchZip).with(&[SeparatingZip]),
    row(Stage::Zip, Work::GuardZip).with(&[SeparatingZip, Child]),
];

/// A front that buttons.
pub(super) const BUTTON_FRONT: &[WorkRow] = &[
    row(Stage::Facing, Work::SewFacing).with(&[Buttons]),
    row(Stage::Facing, Work::GradeFacing).with(&[Buttons]),
    // The edge of a coat is pressed over its lining and topstitched or left.
    row(Stage::Facing, Work::Understitch).with(&[Buttons]).without(&[Lining]),
];

/// Buttonholes come after what they go through.
pub(super) const BUTTONHOLES: &[WorkRow] = &[row(Stage::Facing, Work::Buttonholes).with(&[Buttons])];

/// A lining, after all stitching of the outside.
pub(super) const LININGS: &[WorkRow] =
    &[row(Stage::Facing, Work::SewLining).with(&[Lining]), row(Stage::Facing, Work::SetLining).with(&[Lining])];

/// The wrists.
pub(super) const WRISTS: &[WorkRow] = &[row(Stage::Casings, Work::WristCasing).with(&[ElasticCuffs])];

/// A hood, finished at its face before it is set on.
pub(super) const HOOD: &[WorkRow] = &[
    seam(SeamKind::HoodCentre).with(&[Hood]),
    row(Stage::Seams, Work::LineHood).with(&[Hood, Lining]),
    row(Stage::Seams, Work::CordCasing(CordAt::Hood)).with(&[Cord, Hood]).without(&[Child]).after(GUIDELINE),
    row(Stage::Seams, Work::Hem(Hem::HoodFace)).with(&[Hood]).without(&[Cord, Lining]),
    row(Stage::Seams, Work::Hem(Hem::HoodFace)).with(&[Hood, Cord, Child]).without(&[Lining]),
];

/// The cord of a hood or a lower edge.
pub(super) const OUTER_CORD: &[WorkRow] = &[
    row(Stage::Casings, Work::CordCasing(CordAt::LowerEdge)).with(&[Cord]).without(&[Hood]).after(GUIDELINE),
    row(Stage::Casings, Work::CordCasing(CordAt::LowerEdge)).with(&[Cord, Hood, Child]).after(GUIDELINE),
    row(Stage::Casings, Work::DrawCord).with(&[Cord]).after(ARMY),
    row(Stage::Casings, Work::StopCord).with(&[Cord]).without(&[Child]).after(ARMY),
    row(Stage::Casings, Work::ChildCord).with(&[Cord, Child]).after("16 CFR 1120 with ASTM F1816"),
];

/// The waist of what is drawn on, with its cord.
pub(super) const DRAWN_WAIST: &[WorkRow] = &[
    row(Stage::Casings, Work::ElasticInBand).with(&[ElasticWaist, Waistband]),
    row(Stage::Casings, Work::WaistCasing)
        .with(&[ElasticWaist])
        .without(&[Waistband])
        .asks(ClothCondition::Woven)
        .after(GUIDELINE),
    row(Stage::Casings, Work::WaistElasticKnit).with(&[ElasticWaist]).without(&[Waistband]).asks(ClothCondition::Knit),
    row(Stage::Casings, Work::DrawCord).with(&[Cord]).after(ARMY),
    row(Stage::Casings, Work::StopCord).with(&[Cord]).without(&[Child]).after(ARMY),
    row(Stage::Casings, Work::ChildCord).with(&[Cord, Child]).after("16 CFR 1120 with ASTM F1816"),
];

/// Each seam is pressed before another crosses it.
pub(super) const PRESS_SEAMS: &[WorkRow] = &[
    row(Stage::Seams, Work::PressSeams).asks(ClothCondition::Iron),
    row(Stage::Seams, Work::SteamSeams).asks(ClothCondition::Pile),
    row(Stage::Seams, Work::FlattenSeams).asks(ClothCondition::NoIron),
];

/// The last press.
pub(super) const PRESS: &[WorkRow] = &[
    row(Stage::Press, Work::LastPress).asks(ClothCondition::Iron),
    row(Stage::Press, Work::PressPile).asks(ClothCondition::Pile),
    row(Stage::Press, Work::NoIron).asks(ClothCondition::NoIron),
];
