//! Skirts, trousers and jeans.

use super::{Kind, kind};
use crate::making::garment::Detail::{
    ClosedZip, Darts, ElasticWaist, Fly, HipPockets, Lining, Panels, PatchPockets, SidePockets, Waistband, Yoke,
};
use crate::making::garment::SeamKind;
use crate::making::garment::place::{Hem, Manner};
use crate::making::garment::row::{WorkRow, row, seam, sewn};
use crate::making::garment::shared::{
    CLOSED_ZIP, CUT, DARTS, DRAWN_WAIST, MARKS, NOTIONS, POCKETS, PRESS, PRESS_SEAMS, SAMPLE, SLITS, STAY_WAIST, TRIM,
    VENT, VENT_ZONE, WAIST_EYELETS, WAIST_ZONES, WASH, ZIP_STRIP,
};
use crate::making::garment::work::{Stage, Work};

const WAISTBAND: &[WorkRow] = &[
    sewn(SeamKind::Waistband, Manner::Enclosed).with(&[Waistband]).without(&[ElasticWaist]),
    sewn(SeamKind::Waistband, Manner::Pulled).with(&[Waistband, ElasticWaist]),
];

/// What closes the band over a fly or a zip.
const FASTENING: &[WorkRow] =
    &[row(Stage::Facing, Work::FastenBand).with(&[Waistband]).any(&[Fly, ClosedZip]).without(&[ElasticWaist])];

/// Over the fly of jeans.
const FLY_FASTENING: &[WorkRow] =
    &[row(Stage::Facing, Work::FastenBand).with(&[Waistband, Fly]).without(&[ElasticWaist])];

/// A lining that hangs from the waist, before the waist is finished.
const HUNG_LINING: &[WorkRow] = &[
    row(Stage::Facing, Work::HangLining).with(&[Lining]),
    row(Stage::Facing, Work::LiningToZip).with(&[Lining]).any(&[ClosedZip, Fly]),
];

const SKIRT_SEAMS: &[WorkRow] =
    &[seam(SeamKind::Panel).with(&[Panels]), seam(SeamKind::Yoke).with(&[Yoke]), seam(SeamKind::Side)];

const SKIRT_HEMS: &[WorkRow] = &[
    row(Stage::Hems, Work::HangHem),
    row(Stage::Hems, Work::TryOn),
    row(Stage::Hems, Work::HemFree).with(&[Lining]),
    row(Stage::Hems, Work::Hem(Hem::LowerEdge)).without(&[Lining]),
];

pub(super) const SKIRT: Kind = kind(
    &[Darts, ClosedZip, Waistband],
    &[
        NOTIONS,
        WASH,
        SAMPLE,
        CUT,
        WAIST_ZONES,
        VENT_ZONE,
        ZIP_STRIP,
        TRIM,
        MARKS,
        STAY_WAIST,
        DARTS,
        CLOSED_ZIP,
        POCKETS,
        WAIST_EYELETS,
        PRESS_SEAMS,
        VENT,
        SKIRT_SEAMS,
        HUNG_LINING,
        WAISTBAND,
        FASTENING,
        DRAWN_WAIST,
        SLITS,
        SKIRT_HEMS,
        PRESS,
    ],
);

const FLY: &[WorkRow] = &[
    row(Stage::Flat, Work::SewFlyCrotch).with(&[Fly]),
    row(Stage::Flat, Work::SetFlyZip).with(&[Fly]),
    row(Stage::Flat, Work::TopstitchFly).with(&[Fly]),
];

const TROUSER_SEAMS: &[WorkRow] =
    &[seam(SeamKind::OutsideLeg), seam(SeamKind::InsideLeg), sewn(SeamKind::Crotch, Manner::LegInLeg)];

const LEG_HEMS: &[WorkRow] = &[
    row(Stage::Hems, Work::TryOn),
    row(Stage::Hems, Work::HemFree).with(&[Lining]),
    row(Stage::Hems, Work::Hem(Hem::Legs)).without(&[Lining]),
];

/// Jeans have no lining.
const JEANS_HEMS: &[WorkRow] = &[row(Stage::Hems, Work::TryOn), row(Stage::Hems, Work::Hem(Hem::Legs))];

pub(super) const TROUSERS: Kind = kind(
    &[Darts, Fly, SidePockets, Waistband],
    &[
        NOTIONS,
        WASH,
        SAMPLE,
        CUT,
        WAIST_ZONES,
        ZIP_STRIP,
        TRIM,
        MARKS,
        STAY_WAIST,
        DARTS,
        CLOSED_ZIP,
        FLY,
        POCKETS,
        WAIST_EYELETS,
        PRESS_SEAMS,
        TROUSER_SEAMS,
        HUNG_LINING,
        WAISTBAND,
        FASTENING,
        DRAWN_WAIST,
        LEG_HEMS,
        PRESS,
    ],
);

const BACK_POCKETS: &[WorkRow] = &[
    row(Stage::Pockets, Work::FoldPatches).with(&[PatchPockets]),
    row(Stage::Pockets, Work::SewPatches).with(&[PatchPockets]),
];

const BACK_SEAMS: &[WorkRow] = &[seam(SeamKind::Yoke).with(&[Yoke]), sewn(SeamKind::BackSeat, Manner::Felled)];

const HIP_POCKETS: &[WorkRow] = &[
    row(Stage::Pockets, Work::FaceHipMouths).with(&[HipPockets]),
    row(Stage::Pockets, Work::CloseHipBags).with(&[HipPockets]),
];

const JEANS_SEAMS: &[WorkRow] = &[
    sewn(SeamKind::InsideLeg, Manner::Felled),
    seam(SeamKind::OutsideLeg),
    row(Stage::Seams, Work::SewLoops).with(&[Waistband]),
];

pub(super) const JEANS: Kind = kind(
    &[Yoke, Fly, PatchPockets, HipPockets, Waistband],
    &[
        NOTIONS,
        WASH,
        SAMPLE,
        CUT,
        WAIST_ZONES,
        TRIM,
        MARKS,
        STAY_WAIST,
        BACK_POCKETS,
        PRESS_SEAMS,
        BACK_SEAMS,
        FLY,
        HIP_POCKETS,
        WAIST_EYELETS,
        JEANS_SEAMS,
        WAISTBAND,
        FLY_FASTENING,
        DRAWN_WAIST,
        JEANS_HEMS,
        PRESS,
    ],
);
