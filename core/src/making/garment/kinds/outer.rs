//! Jackets and coats.

use super::{Kind, kind};
use crate::making::garment::Detail::{
    Buttons, Child, Collar, Cord, Cuffs, ElasticCuffs, Hood, Lining, Panels, PatchPockets, Raglan, RibBands,
    SeparatingZip, SleeveHeads, Sleeves, WeltPockets, Yoke,
};
use crate::making::garment::SeamKind;
use crate::making::garment::place::{Hem, Manner, Zone};
use crate::making::garment::row::{WorkRow, row, seam, sewn};
use crate::making::garment::shared::{
    BUTTON_FRONT, BUTTONHOLES, CUT, DARTS, FRONT_ZONES, HOOD, LININGS, MARKS, NOTIONS, OUTER_CORD, OUTER_EYELETS,
    POCKETS, PRESS, PRESS_SEAMS, SAMPLE, SMALL_PARTS, STAY_NECK, STAY_RAGLAN, TRIM, VENT, VENT_ZONE, WASH, WRISTS,
    ZIP_FRONT,
};
use crate::making::garment::work::{Stage, Work};

const NEBRASKA: &str = "R. Tondl, Nebraska Extension G93-1125, unlined jackets";
const TAILORING: &str = "M. Smith, USDA Farmers' Bulletin 1894, Coats, 1956";
const CUTTERS: &str = "Cutters' Practical Guide, Ladies' Garments: hoods";
const EASE: &str =
    "B. Kalka, Virginia Extension 346-122, 1985: 25 mm of ease in knit and firm woven, more in supple cloth";

/// An unlined facing is seen.
const FACINGS: &[WorkRow] = &[row(Stage::Fuse, Work::FinishFacings).without(&[Lining]).after(NEBRASKA)];

const HEM_ZONE: &[WorkRow] = &[row(Stage::Fuse, Work::Interface(Zone::Hem))
    .without(&[Cord, RibBands])
    .after("L. Gotwals, Purdue Extension HE 223, interfacing")];

const PANELS_TO_SHOULDERS: &[WorkRow] = &[
    seam(SeamKind::Panel).with(&[Panels]),
    seam(SeamKind::Yoke).with(&[Yoke]),
    seam(SeamKind::Shoulder).without(&[Raglan]),
];

/// A raglan reaches the neck, so it comes before what is sewn to that.
const RAGLAN: &[WorkRow] = &[seam(SeamKind::Raglan).with(&[Sleeves, Raglan])];

const NECK: &[WorkRow] =
    &[seam(SeamKind::HoodToNeck).with(&[Hood]).after(CUTTERS), seam(SeamKind::CollarToNeck).with(&[Collar])];

/// Sleeves sewn in flat, the side closed with them, cuffs and band last.
const FLAT_SLEEVES: &[WorkRow] = &[
    sewn(SeamKind::Armhole, Manner::Flat).with(&[Sleeves]).without(&[Raglan]),
    sewn(SeamKind::SleeveAndSide, Manner::InOne).with(&[Sleeves]),
    seam(SeamKind::Side).without(&[Sleeves]),
    sewn(SeamKind::Cuff, Manner::Enclosed).with(&[Cuffs]),
    sewn(SeamKind::Cuff, Manner::Pulled).with(&[RibBands]),
    sewn(SeamKind::HemBand, Manner::Pulled).with(&[RibBands]),
];

/// What no casing, cuff or band finishes.
const UNLINED_HEMS: &[WorkRow] = &[
    row(Stage::Hems, Work::Hem(Hem::Sleeves)).with(&[Sleeves]).without(&[Cuffs, ElasticCuffs, RibBands, Lining]),
    row(Stage::Hems, Work::Hem(Hem::LowerEdge)).without(&[Cord, RibBands, Lining]),
    row(Stage::Hems, Work::Hem(Hem::LowerEdge)).with(&[Cord, Hood]).without(&[Child, RibBands, Lining]),
    row(Stage::Hems, Work::HemLined).with(&[Lining]).without(&[Cord]),
    row(Stage::Hems, Work::HemLined).with(&[Lining, Cord, Hood]).without(&[Child]),
    row(Stage::Hems, Work::HemLining).with(&[Lining, Cord]).without(&[Hood]),
    row(Stage::Hems, Work::HemLining).with(&[Lining, Cord, Hood, Child]),
];

pub(super) const UNLINED_JACKET: Kind = kind(
    &[Collar, Sleeves, SeparatingZip, PatchPockets],
    &[
        NOTIONS,
        WASH,
        SAMPLE,
        CUT,
        FRONT_ZONES,
        HEM_ZONE,
        VENT_ZONE,
        TRIM,
        FACINGS,
        MARKS,
        STAY_NECK,
        STAY_RAGLAN,
        DARTS,
        SMALL_PARTS,
        POCKETS,
        OUTER_EYELETS,
        PRESS_SEAMS,
        VENT,
        PANELS_TO_SHOULDERS,
        RAGLAN,
        HOOD,
        NECK,
        FLAT_SLEEVES,
        ZIP_FRONT,
        BUTTON_FRONT,
        BUTTONHOLES,
        LININGS,
        WRISTS,
        OUTER_CORD,
        UNLINED_HEMS,
        PRESS,
    ],
);

/// As a jacket; the hood has no cord.
pub(super) const CHILDS_OUTERWEAR: Kind =
    kind(&[Child, Hood, Sleeves, SeparatingZip, PatchPockets, ElasticCuffs], UNLINED_JACKET.groups);

/// Sides first, then the sleeves set into the closed armhole; a raglan is sewn in flat.
const SHOULDERS_SIDES: &[WorkRow] = &[
    seam(SeamKind::Shoulder).without(&[Raglan]).after(TAILORING),
    seam(SeamKind::Raglan).with(&[Sleeves, Raglan]),
    sewn(SeamKind::SleeveAndSide, Manner::InOne).with(&[Sleeves, Raglan]),
    seam(SeamKind::Side).without(&[Raglan]),
];

const SLEEVES_IN: &[WorkRow] = &[
    seam(SeamKind::Sleeve).with(&[Sleeves]).without(&[Raglan]),
    sewn(SeamKind::Armhole, Manner::Eased).with(&[Sleeves]).without(&[Raglan]).after(EASE),
    row(Stage::Seams, Work::SewSleeveHeads).with(&[Sleeves, SleeveHeads]).without(&[Raglan]),
];

const PANELS: &[WorkRow] = &[seam(SeamKind::Panel).with(&[Panels]), seam(SeamKind::Yoke).with(&[Yoke])];

const COAT_HEMS: &[WorkRow] = &[
    row(Stage::Hems, Work::TryOn),
    row(Stage::Hems, Work::HemLined).with(&[Lining]).without(&[Cord]).after(TAILORING),
    row(Stage::Hems, Work::HemLined).with(&[Lining, Cord, Hood]).without(&[Child]).after(TAILORING),
    row(Stage::Hems, Work::HemLining).with(&[Lining, Cord]).without(&[Hood]),
    row(Stage::Hems, Work::HemLining).with(&[Lining, Cord, Hood, Child]),
    row(Stage::Hems, Work::Hem(Hem::Sleeves)).with(&[Sleeves]).without(&[Lining, Cuffs, ElasticCuffs]),
    row(Stage::Hems, Work::Hem(Hem::LowerEdge)).without(&[Lining]),
];

pub(super) const LINED_COAT: Kind = kind(
    &[Lining, Collar, Sleeves, SleeveHeads, Buttons, WeltPockets],
    &[
        NOTIONS,
        WASH,
        SAMPLE,
        CUT,
        FRONT_ZONES,
        HEM_ZONE,
        VENT_ZONE,
        TRIM,
        MARKS,
        STAY_NECK,
        STAY_RAGLAN,
        DARTS,
        SMALL_PARTS,
        POCKETS,
        OUTER_EYELETS,
        PRESS_SEAMS,
        VENT,
        PANELS,
        SHOULDERS_SIDES,
        HOOD,
        NECK,
        ZIP_FRONT,
        BUTTON_FRONT,
        SLEEVES_IN,
        LININGS,
        WRISTS,
        OUTER_CORD,
        COAT_HEMS,
        BUTTONHOLES,
        PRESS,
    ],
);
