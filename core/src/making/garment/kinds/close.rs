//! What fits close: leggings and swimwear.

use super::{Kind, kind};
use crate::making::garment::Detail::{ElasticWaist, Lining};
use crate::making::garment::SeamKind;
use crate::making::garment::place::{Hem, Manner, Notion, PieceMark};
use crate::making::garment::row::{WorkRow, row, seam, sewn};
use crate::making::garment::shared::{CUT, DRAWN_WAIST, NOTIONS, WASH};
use crate::making::garment::work::{Stage, Work};
use crate::making::sizing::HOME_TEST;

/// Close cloth is seen through first.
const OPACITY: &[WorkRow] = &[WorkRow { source: HOME_TEST, ..row(Stage::Sample, Work::TryOpacity) }];

/// Swimwear is seen wet as well.
const OPACITY_WET: &[WorkRow] = &[WorkRow { source: HOME_TEST, ..row(Stage::Sample, Work::TryOpacityWet) }];

const MARK: &[WorkRow] =
    &[row(Stage::Mark, Work::Mark(PieceMark::Notches)), row(Stage::Mark, Work::Mark(PieceMark::Quarters))];

const LEGGING_SEAMS: &[WorkRow] = &[seam(SeamKind::InsideLeg), sewn(SeamKind::Crotch, Manner::LegInLeg)];

const LEG_HEMS: &[WorkRow] = &[row(Stage::Hems, Work::Hem(Hem::Legs))];

pub(super) const LEGGINGS: Kind =
    kind(&[ElasticWaist], &[NOTIONS, WASH, OPACITY, CUT, MARK, LEGGING_SEAMS, DRAWN_WAIST, LEG_HEMS]);

const SWIM: &[WorkRow] =
    &[row(Stage::Buy, Work::Get(Notion::Elastic)), row(Stage::Prewash, Work::WashNotion(Notion::Elastic))];

const SWIM_SEAMS: &[WorkRow] = &[
    row(Stage::Seams, Work::BasteLining).with(&[Lining]),
    seam(SeamKind::Side),
    seam(SeamKind::Crotch),
    seam(SeamKind::Strap),
    row(Stage::Casings, Work::EdgeElastic),
];

pub(super) const SWIMWEAR: Kind = kind(&[Lining], &[SWIM, WASH, OPACITY_WET, CUT, MARK, SWIM_SEAMS]);
