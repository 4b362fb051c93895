//! What fits close: leggings and swimwear.

use super::{Kind, kind};
use crate::making::garment::Detail::{ElasticWaist, Lining};
use crate::making::garment::Seam;
use crate::making::garment::place::{Hem, Manner, Notion, Point};
use crate::making::garment::row::{Row, row, seam, sewn};
use crate::making::garment::shared::{CUT, DRAWN_WAIST, NOTIONS, WASH};
use crate::making::garment::work::{Stage, Work};
use crate::making::sizing::HOME_TEST;

/// Close cloth is seen through first.
const OPACITY: &[Row] = &[Row { source: HOME_TEST, ..row(Stage::Sample, Work::TryOpacity) }];

/// Swimwear is seen wet as well.
const OPACITY_WET: &[Row] = &[Row { source: HOME_TEST, ..row(Stage::Sample, Work::TryOpacityWet) }];

const MARK: &[Row] = &[row(Stage::Mark, Work::Mark(Point::Notches)), row(Stage::Mark, Work::Mark(Point::Quarters))];

const LEGGING_SEAMS: &[Row] = &[seam(Seam::InsideLeg), sewn(Seam::Crotch, Manner::LegInLeg)];

const LEG_HEMS: &[Row] = &[row(Stage::Hems, Work::Hem(Hem::Legs))];

pub(super) const LEGGINGS: Kind =
    kind(&[ElasticWaist], &[NOTIONS, WASH, OPACITY, CUT, MARK, LEGGING_SEAMS, DRAWN_WAIST, LEG_HEMS]);

const SWIM: &[Row] =
    &[row(Stage::Buy, Work::Get(Notion::Elastic)), row(Stage::Prewash, Work::WashNotion(Notion::Elastic))];

const SWIM_SEAMS: &[Row] = &[
    row(Stage::Seams, Work::BasteLining).with(&[Lining]),
    seam(Seam::Side),
    seam(Seam::Crotch),
    seam(Seam::Strap),
    row(Stage::Casings, Work::EdgeElastic),
];

pub(super) const SWIMWEAR: Kind = kind(&[Lining], &[SWIM, WASH, OPACITY_WET, CUT, MARK, SWIM_SEAMS]);
