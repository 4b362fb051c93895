//! Tops and dresses.

use super::{Kind, kind};
use crate::making::garment::Detail::{
    Buttons, Child, ClosedZip, Collar, Cord, Cuffs, Darts, ElasticCuffs, Hood, Lining, Panels, PatchPockets, Raglan,
    RibBands, Sleeves, WaistSeam, Yoke,
};
use crate::making::garment::SeamKind;
use crate::making::garment::place::{Hem, Manner, Notion, PieceMark, Zone};
use crate::making::garment::row::{WorkRow, row, seam, sewn};
use crate::making::garment::shared::{
    BUTTONHOLES, CUT, DARTS, FRONT_ZONES, HOOD, LININGS, MARKS, NOTIONS, OUTER_CORD, OUTER_EYELETS, POCKETS, PRESS,
    PRESS_SEAMS, SAMPLE, SLITS, SMALL_PARTS, STAY_NECK, TRIM, VENT, VENT_ZONE, WASH, WRISTS, ZIP_STRIP,
};
use crate::making::garment::work::{Stage, Work};

const BALDT: &str = "L. Baldt, Clothing for Women: the order of a shirt sleeve";
const EASE: &str =
    "B. Kalka, Virginia Extension 346-122, 1985: 25 mm of ease in knit and firm woven, more in supple cloth";

/// Bands of knit are matched in quarters.
const KNIT_MARKS: &[WorkRow] = &[
    row(Stage::Mark, Work::Mark(PieceMark::Notches)),
    row(Stage::Mark, Work::Mark(PieceMark::Centres)),
    row(Stage::Mark, Work::Mark(PieceMark::Quarters)),
    row(Stage::Mark, Work::Mark(PieceMark::Pockets)).with(&[PatchPockets]),
    row(Stage::Mark, Work::Mark(PieceMark::Eyelets)).with(&[Cord, Hood]).without(&[Child]),
];

const EYELETS: &[WorkRow] = &[row(Stage::Fuse, Work::Interface(Zone::Eyelets)).with(&[Cord, Hood]).without(&[Child])];

const FRONT_POCKET: &[WorkRow] = &[
    row(Stage::Pockets, Work::HemFrontPocket).with(&[PatchPockets]),
    row(Stage::Pockets, Work::SewFrontPocket).with(&[PatchPockets]),
];

const PULLOVER_SEAMS: &[WorkRow] = &[
    seam(SeamKind::Shoulder).without(&[Raglan]),
    sewn(SeamKind::Armhole, Manner::Flat).with(&[Sleeves]).without(&[Raglan]),
    seam(SeamKind::Raglan).with(&[Sleeves, Raglan]),
    seam(SeamKind::HoodToNeck).with(&[Hood]),
    seam(SeamKind::CollarToNeck).with(&[Collar]),
    row(Stage::Seams, Work::TryNeckband).without(&[Hood, Collar]),
    sewn(SeamKind::Neckband, Manner::Pulled).without(&[Hood, Collar]),
    sewn(SeamKind::SleeveAndSide, Manner::InOne).with(&[Sleeves]),
    seam(SeamKind::Side).without(&[Sleeves]),
    sewn(SeamKind::Cuff, Manner::Pulled).with(&[RibBands]),
    sewn(SeamKind::HemBand, Manner::Pulled).with(&[RibBands]),
];

const KNIT_HEMS: &[WorkRow] = &[
    row(Stage::Hems, Work::Hem(Hem::Sleeves)).with(&[Sleeves]).without(&[RibBands, Cuffs, ElasticCuffs]),
    row(Stage::Hems, Work::Hem(Hem::LowerEdge)).without(&[RibBands]),
];

pub(super) const HOODED_PULLOVER: Kind = kind(
    &[Hood, Sleeves, RibBands, PatchPockets, Cord],
    &[
        NOTIONS,
        WASH,
        CUT,
        EYELETS,
        KNIT_MARKS,
        SMALL_PARTS,
        FRONT_POCKET,
        OUTER_EYELETS,
        HOOD,
        PULLOVER_SEAMS,
        OUTER_CORD,
        KNIT_HEMS,
        PRESS,
    ],
);

const T_SHIRT_SEAMS: &[WorkRow] = &[
    seam(SeamKind::Shoulder).without(&[Raglan]),
    seam(SeamKind::Raglan).with(&[Sleeves, Raglan]),
    row(Stage::Seams, Work::TryNeckband),
    sewn(SeamKind::Neckband, Manner::Pulled),
    sewn(SeamKind::Armhole, Manner::Flat).with(&[Sleeves]).without(&[Raglan]),
    sewn(SeamKind::SleeveAndSide, Manner::InOne).with(&[Sleeves]),
    seam(SeamKind::Side).without(&[Sleeves]),
    sewn(SeamKind::Cuff, Manner::Pulled).with(&[RibBands]),
    sewn(SeamKind::HemBand, Manner::Pulled).with(&[RibBands]),
];

pub(super) const T_SHIRT: Kind =
    kind(&[Sleeves], &[NOTIONS, WASH, CUT, KNIT_MARKS, POCKETS, T_SHIRT_SEAMS, SLITS, KNIT_HEMS, PRESS]);

const SHIRT_FRONTS: &[WorkRow] = &[row(Stage::Flat, Work::FoldFronts).with(&[Buttons])];

const SHIRT_SEAMS: &[WorkRow] = &[
    seam(SeamKind::Yoke).with(&[Yoke]),
    seam(SeamKind::Shoulder),
    sewn(SeamKind::Armhole, Manner::Flat).with(&[Sleeves]).after(BALDT),
    row(Stage::Seams, Work::SewPlackets).with(&[Sleeves, Cuffs]).after(BALDT),
    sewn(SeamKind::SleeveAndSide, Manner::Felled).with(&[Sleeves]).after(BALDT),
    seam(SeamKind::Side).without(&[Sleeves]),
    sewn(SeamKind::Cuff, Manner::Enclosed).with(&[Cuffs]).after(BALDT),
    sewn(SeamKind::CollarToNeck, Manner::Enclosed).with(&[Collar]).after(BALDT),
];

const SHIRT_HEMS: &[WorkRow] = &[
    row(Stage::Hems, Work::Hem(Hem::Sleeves)).with(&[Sleeves]).without(&[Cuffs, ElasticCuffs]),
    row(Stage::Hems, Work::Hem(Hem::LowerEdge)),
];

pub(super) const SHIRT: Kind = kind(
    &[Collar, Sleeves, Cuffs, Yoke, Buttons, PatchPockets],
    &[
        NOTIONS,
        WASH,
        SAMPLE,
        CUT,
        FRONT_ZONES,
        TRIM,
        MARKS,
        STAY_NECK,
        DARTS,
        SMALL_PARTS,
        POCKETS,
        SHIRT_FRONTS,
        PRESS_SEAMS,
        SHIRT_SEAMS,
        WRISTS,
        SLITS,
        SHIRT_HEMS,
        BUTTONHOLES,
        PRESS,
    ],
);

/// Without a seam at the waist the zip is set while the pieces lie flat.
const DRESS_ZIP: &[WorkRow] = &[
    row(Stage::Flat, Work::SewZipSeam).with(&[ClosedZip]).without(&[WaistSeam]),
    row(Stage::Flat, Work::SetClosedZip).with(&[ClosedZip]).without(&[WaistSeam]),
];

/// Bodice and skirt are each closed at the sides before they are joined; a zip crosses that seam, so it comes after.
const WAIST: &[WorkRow] = &[
    seam(SeamKind::Side).with(&[WaistSeam]),
    seam(SeamKind::Waist).with(&[WaistSeam]),
    row(Stage::Zip, Work::SewZipSeam).with(&[ClosedZip, WaistSeam]),
    row(Stage::Zip, Work::SetClosedZip).with(&[ClosedZip, WaistSeam]),
];

const DRESS_SEAMS: &[WorkRow] = &[seam(SeamKind::Panel).with(&[Panels]), seam(SeamKind::Shoulder)];

/// A dress closes above its zip.
const HOOK: &[WorkRow] = &[row(Stage::Buy, Work::Get(Notion::HookAndEye)).with(&[ClosedZip])];

const NECK_FACING: &[WorkRow] = &[
    row(Stage::Facing, Work::SewFacing).without(&[Collar]),
    row(Stage::Facing, Work::GradeFacing).without(&[Collar]),
    row(Stage::Facing, Work::Understitch).without(&[Collar]),
    row(Stage::Facing, Work::HookAndEye).with(&[ClosedZip]).without(&[Collar]),
];

const DRESS_SIDES: &[WorkRow] = &[
    seam(SeamKind::CollarToNeck).with(&[Collar]),
    row(Stage::Seams, Work::HookAndEye).with(&[ClosedZip, Collar]),
    seam(SeamKind::Side).without(&[WaistSeam]),
    seam(SeamKind::Sleeve).with(&[Sleeves]),
    row(Stage::Seams, Work::HemSleevesFirst).with(&[Sleeves]).without(&[Cuffs, ElasticCuffs]),
    sewn(SeamKind::Cuff, Manner::Enclosed).with(&[Cuffs, Sleeves]),
    sewn(SeamKind::Armhole, Manner::Eased).with(&[Sleeves]).after(EASE),
];

const DRESS_HEMS: &[WorkRow] = &[
    row(Stage::Hems, Work::HangHem),
    row(Stage::Hems, Work::HemFree).with(&[Lining]),
    row(Stage::Hems, Work::Hem(Hem::LowerEdge)).without(&[Lining]),
];

pub(super) const DRESS: Kind = kind(
    &[Darts, Sleeves, ClosedZip],
    &[
        NOTIONS,
        HOOK,
        WASH,
        SAMPLE,
        CUT,
        FRONT_ZONES,
        VENT_ZONE,
        ZIP_STRIP,
        TRIM,
        MARKS,
        STAY_NECK,
        DARTS,
        SMALL_PARTS,
        DRESS_ZIP,
        POCKETS,
        PRESS_SEAMS,
        VENT,
        DRESS_SEAMS,
        WAIST,
        NECK_FACING,
        DRESS_SIDES,
        LININGS,
        BUTTONHOLES,
        WRISTS,
        SLITS,
        DRESS_HEMS,
        PRESS,
    ],
);
