//! The garment that is planned: its cloths, and what each of its seams is asked.

use tenter_core::making::garment::{
    Detail, Details, GarmentKind, GarmentPart, GarmentPlan, Manner, PartCloth, SeamKind, SeamRow, Work,
};
use tenter_core::making::handling::{self, Cloth, Layer, Runs, SeamUse, Sewing};
use tenter_core::{Grain, Limit, Ratio};

use super::part::part;
use super::seams::{self, Joined};
use super::{PlanWanted, RoleChoice, Step};
use crate::finding::fit::known;
use crate::finding::handle::{Handle, layered};
use crate::log::{Construction, Fabric, Role, Tag};

/// A cloth that is sewn, with the first role that it was chosen for.
#[derive(Debug, Clone, Copy)]
pub(super) struct SewnCloth<'a> {
    pub fabric: &'a Fabric,
    pub cloth: Cloth,
    pub role: &'a Role,
    pub part: Option<GarmentPart>,
}

impl SewnCloth<'_> {
    /// Bags and interfacing are sewn with what they lie behind.
    const fn is_sewn(&self) -> bool {
        !matches!(self.part, Some(GarmentPart::PocketBag | GarmentPart::Interfacing | GarmentPart::Elastic))
    }

    /// Whether it is a band, set on an edge.
    pub(super) const fn is_band(&self) -> bool {
        matches!(
            self.part,
            Some(
                GarmentPart::Waistband
                    | GarmentPart::Cuff
                    | GarmentPart::Neckband
                    | GarmentPart::HemBand
                    | GarmentPart::Rib
            )
        )
    }

    /// The grain along which the view asks its role to give most, if it asks for any.
    pub(super) fn asked_most(&self) -> Option<Grain> {
        let least = |grain: &Grain| self.role.demand.stretch(*grain).at_least.map_or(Ratio::ZERO, Limit::ratio);
        self.role.grains().filter(|grain| least(grain) > Ratio::ZERO).max_by_key(least)
    }

    /// How far the view asks the role to give along a grain. Where it asks along another grain only, it asks
    /// nothing here, nor of a woven where it asks for nothing at all.
    pub(super) fn asked(&self, grain: Grain) -> Option<Ratio> {
        let asked = self.role.demand.stretch(grain).at_least.map(Limit::ratio);
        let elsewhere = self.role.grains().next().is_some() || self.cloth.construction != Construction::Knit;
        asked.or(elsewhere.then_some(Ratio::ZERO))
    }
}

/// Seams by the width of their allowances.
type Widths = Vec<(Vec<SeamKind>, handling::SeamAllowance)>;

/// The garment that is planned.
#[derive(Debug)]
pub struct PlannedGarment<'a> {
    pub(super) wanted: &'a PlanWanted<'a>,
    pub(super) joined: Vec<Joined>,
    cloths: Vec<SewnCloth<'a>>,
    parts: Vec<PartCloth>,
}

impl<'a> PlannedGarment<'a> {
    pub(super) fn of(wanted: &'a PlanWanted<'a>) -> Self {
        let cloth = |chosen: &RoleChoice<'a>| {
            let fabric = chosen.fabric()?;
            let cloth = known::cloth(fabric, wanted.stock);
            Some(SewnCloth { fabric, cloth, role: chosen.role, part: part(chosen.role) })
        };
        let cloths: Vec<SewnCloth<'a>> = wanted.chosen.iter().filter_map(cloth).collect();
        // A garment of one cloth is that cloth, whatever its role is called.
        let first = cloths.iter().any(|one| one.part == Some(GarmentPart::Main));
        let parts = cloths.iter().enumerate().map(|(place, one)| PartCloth {
            part: match one.part {
                // A skirt by itself is the body.
                Some(GarmentPart::Skirt) if !first => GarmentPart::Main,
                Some(part) => part,
                None if first || place > 0 => GarmentPart::Panel,
                None => GarmentPart::Main,
            },
            cloth: one.cloth,
            one_way: one.fabric.one_way,
        });
        let mut made = Self { wanted, joined: Vec::new(), parts: parts.collect(), cloths };
        made.joined = seams::joined(&made);
        made
    }

    pub(super) fn garment(&self) -> Option<GarmentPlan<'_>> {
        self.wanted.kind.map(|kind| GarmentPlan { kind: kind.kind, details: kind.details, cloths: &self.parts })
    }

    pub(super) fn details(&self) -> Details {
        self.wanted.kind.map(|kind| kind.details).unwrap_or_default()
    }

    pub(super) fn kind(&self) -> Option<GarmentKind> {
        self.wanted.kind.map(|kind| kind.kind)
    }

    /// The cloths with their places.
    pub(super) fn places(&self) -> impl Iterator<Item = (usize, &SewnCloth<'a>)> {
        self.cloths.iter().enumerate()
    }

    /// The place in the list of roles of the cloth at a place.
    pub(super) fn role_of(&self, place: usize) -> usize {
        let role = self.cloth(place).map(|one| one.role.id);
        self.wanted.chosen.iter().position(|chosen| Some(chosen.role.id) == role).unwrap_or(usize::MAX)
    }

    /// The place of the cloth of a role.
    pub(super) fn place_of(&self, role: usize) -> Option<usize> {
        let id = self.wanted.chosen.get(role)?.role.id;
        self.cloths.iter().position(|one| one.role.id == id)
    }

    pub(super) fn cloth(&self, place: usize) -> Option<&SewnCloth<'a>> {
        self.cloths.get(place)
    }

    /// The cloth of a part of which one was chosen.
    pub(super) fn of_part(&self, part: GarmentPart) -> Option<&SewnCloth<'a>> {
        self.cloths.iter().find(|one| one.part == Some(part))
    }

    /// The cloth of the body.
    pub(super) fn body(&self) -> Option<&SewnCloth<'a>> {
        let place = self.parts.iter().position(|one| one.part == GarmentPart::Main)?;
        self.cloth(place)
    }

    /// The cloths that have seams of their own, each once.
    pub(super) fn sewn(&self) -> impl Iterator<Item = &SewnCloth<'a>> {
        let new = |place: usize, one: &SewnCloth<'_>| {
            !self.cloths.iter().take(place).any(|other| other.is_sewn() && other.fabric.id == one.fabric.id)
        };
        self.places().filter(move |(place, one)| one.is_sewn() && new(*place, one)).map(|(_, one)| one)
    }

    /// A straight seam of a cloth, as most of its seams are.
    pub(super) fn straight(&self, one: &SewnCloth<'_>, grain: Grain) -> SeamUse {
        let covered = one.part == Some(GarmentPart::Lining) || self.details().has(Detail::Lining);
        SeamUse {
            asked: one.asked(grain),
            runs: Runs::along(grain),
            lined: covered,
            garment: self.kind(),
            ..SeamUse::default()
        }
    }

    /// The stitch of most seams of a cloth. Where the garment is not known it is only told if both grains want the same.
    pub(super) fn usual_stitch(&self, one: &SewnCloth<'_>) -> Option<Sewing> {
        let along = |grain| handling::sewing(&one.cloth, &self.straight(one, grain));
        let (lengthwise, crosswise) = (along(Grain::Lengthwise), along(Grain::Crosswise));
        let pulled = one.is_band() && one.cloth.construction == Construction::Knit;
        match self.kind() {
            Some(_) if pulled => Some(crosswise),
            Some(_) => Some(lengthwise),
            None => is_same(&lengthwise, &crosswise).then_some(lengthwise),
        }
    }

    /// The stitch of each cloth, the same once.
    pub(super) fn stitches(&self) -> Vec<Step> {
        let mut shared: Vec<(Sewing, Vec<Tag>)> = Vec::new();
        for one in self.sewn() {
            let Some(sewing) = self.usual_stitch(one) else { continue };
            match shared.iter_mut().find(|(known, _)| is_same(known, &sewing)) {
                Some((_, tags)) => tags.push(one.fabric.tag),
                None => shared.push((sewing, vec![one.fabric.tag])),
            }
        }
        let all = self.sewn().count();
        let tags = |tags: Vec<Tag>| if tags.len() == all { Vec::new() } else { tags };
        shared.into_iter().map(|(sewing, one)| Step::Stitch { sewing, tags: tags(one) }).collect()
    }

    /// The seams that are sewn, in their order.
    pub(super) fn seams(&self) -> Vec<(SeamKind, Manner)> {
        let mut seams = Vec::new();
        if let Some(garment) = self.garment() {
            garment.each(|task| {
                if let Work::Seam(seam, manner) = task.work {
                    seams.push((seam, manner));
                }
            });
        }
        seams
    }

    /// What a seam is asked, and the cloth that decides: that of its first part.
    pub(super) fn treated(&self, seam: SeamKind) -> Option<(&SewnCloth<'a>, SeamUse, handling::Seam)> {
        let garment = self.garment()?;
        let row = garment.seam(seam);
        let [body, _] = row.parts;
        let one = self.cloth(garment.place(body)?)?;
        let [runs, _] = row.runs;
        let has_pocket = garment.details.has(Detail::SidePockets) || garment.details.has(Detail::HipPockets);
        let opens = match seam {
            // A knit has room for a pocket in the allowance that it has.
            SeamKind::Side | SeamKind::OutsideLeg => has_pocket && one.cloth.construction != Construction::Knit,
            SeamKind::CentreBack => garment.details.has(Detail::ClosedZip),
            _ => false,
        };
        let lined = garment.details.has(Detail::Lining);
        // A band that is asked to give holds nothing.
        let held = row.held && self.band_gives(&garment, seam).is_none();
        let row = SeamRow { held, ..row };
        let asked = SeamUse { opens, ..row.asked(garment.kind, one.asked(runs.grain()), lined) };
        Some((one, asked, handling::Seam::of(&one.cloth, &asked)))
    }

    /// The grain along which the view asks the band of a seam to give, if it has a cloth of its own.
    pub(super) fn band_gives(&self, garment: &GarmentPlan<'_>, seam: SeamKind) -> Option<Grain> {
        let [_, band] = garment.seam(seam).parts;
        let one = self.cloth(garment.place(band)?)?;
        let is_own = one.is_band() && one.part.is_some_and(|own| own.serves(band));
        is_own.then(|| one.asked_most()).flatten()
    }

    /// The finish of most seams that are plainly sewn.
    pub(super) fn usual_finish(&self) -> Option<handling::FinishLine> {
        let plain = self.seams().into_iter().filter(|(_, manner)| !is_closed(*manner));
        let treated: Vec<_> = plain.filter_map(|(seam, _)| self.treated(seam)).collect();
        let lines: Vec<_> =
            treated.into_iter().filter(|(_, asked, _)| !asked.enclosed).map(|(.., seam)| seam.finish).collect();
        let count = |line: &handling::FinishLine| lines.iter().filter(|other| other.finish == line.finish).count();
        // Of those that are equally many the first.
        lines.iter().rev().max_by_key(|line| count(line)).copied()
    }

    /// How wide the allowances are, by the cloth that decides.
    pub(super) fn allowances(&self) -> Vec<Step> {
        let mut by_cloth: Vec<(Tag, Widths)> = Vec::new();
        for (seam, _) in self.seams() {
            let Some((one, _, treated)) = self.treated(seam) else { continue };
            let tag = one.fabric.tag;
            if !by_cloth.iter().any(|(known, _)| *known == tag) {
                by_cloth.push((tag, Vec::new()));
            }
            let Some((_, groups)) = by_cloth.iter_mut().find(|(known, _)| *known == tag) else { continue };
            match groups.iter_mut().find(|(_, known)| known.width == treated.allowance.width) {
                Some((seams, _)) => seams.push(seam),
                None => groups.push((vec![seam], treated.allowance)),
            }
        }
        let several = by_cloth.len() > 1;
        let step = |(tag, mut groups): (Tag, Widths)| {
            let straight = self.sewn().find(|one| one.fabric.tag == tag)?;
            let most = handling::allowance(&straight.cloth, &self.straight(straight, Grain::Lengthwise));
            groups.retain(|(_, other)| other.width != most.width);
            Some(Step::Allowance { most, others: groups, tags: if several { vec![tag] } else { Vec::new() } })
        };
        by_cloth.into_iter().filter_map(step).collect()
    }

    /// What the lining leaves of the give of the cloth that it is sewn to.
    pub(super) fn lining_gives(&self) -> Option<Handle> {
        let lining = self.of_part(GarmentPart::Lining)?;
        let outer = self.body().or_else(|| self.cloths.iter().find(|one| one.part != Some(GarmentPart::Lining)))?;
        if outer.fabric.id == lining.fabric.id {
            return None;
        }
        let gives = |one: &SewnCloth<'_>| known::stretch(one.fabric, Grain::Crosswise, self.wanted.stock).ok();
        // A lining holds back nothing where the view asks for no give, and a woven that asks nothing at all wants none.
        let is_free = outer.role.grains().next().is_some() || outer.cloth.construction == Construction::Woven;
        if outer.asked_most().is_none() && is_free {
            return None;
        }
        let wants = outer.role.demand.crosswise.at_least.map(Limit::ratio);
        let (layer, layered) = layered(gives(outer)?, Layer::Lining, gives(lining)?, wants, self.wanted.confidence);
        Some(Handle::Layer(layer, layered))
    }
}

/// Whether two stitches are set alike, whatever the reasons.
pub(super) fn is_same(one: &Sewing, other: &Sewing) -> bool {
    (one.first, one.instead, one.second, one.topstitch) == (other.first, other.instead, other.second, other.topstitch)
}

/// Whether the manner itself says what becomes of the raw edges.
pub(super) const fn is_closed(manner: Manner) -> bool {
    matches!(manner, Manner::Felled | Manner::Enclosed)
}
