//! The work of a kind of garment, in its order, with what the cloths ask of each seam.

use tenter_core::making::garment::{
    Detail, Details, Garment, GarmentKind, Hem, Holds, Manner, Notion, Part, PartCloth, Seam, SeamRow, Stage, Task,
    Work, Zone,
};
use tenter_core::making::handling::{self, Cloth, Layer, Runs, SeamUse, Sewing, Stay};
use tenter_core::{Grain, Limit, Ratio};

use super::part::part;
use super::seams::{self, Joined};
use super::{Chosen, Parts, PlanTopic, PlanWanted, SeamStep, Step};
use crate::finding::fit::known;
use crate::finding::handle::{Handle, layered};
use crate::log::{Construction, Fabric, Finish, Role};

/// A cloth that is sewn, with the first role that it was chosen for.
#[derive(Debug, Clone, Copy)]
pub(super) struct SewnCloth<'a> {
    pub fabric: &'a Fabric,
    pub cloth: Cloth,
    pub role: &'a Role,
    pub part: Option<Part>,
}

impl SewnCloth<'_> {
    /// Bags and interfacing are sewn with what they lie behind.
    const fn is_sewn(&self) -> bool {
        !matches!(self.part, Some(Part::PocketBag | Part::Interfacing | Part::Elastic))
    }

    /// Whether it is a band, set on an edge.
    pub(super) const fn is_band(&self) -> bool {
        matches!(self.part, Some(Part::Waistband | Part::Cuff | Part::Neckband | Part::HemBand | Part::Rib))
    }

    /// The grain along which the view asks its role to give most, if it asks for any.
    pub(super) fn asked_most(&self) -> Option<Grain> {
        let least = |grain: &Grain| self.role.demand.stretch(*grain).at_least.map_or(Ratio::ZERO, Limit::ratio);
        self.role.grains().filter(|grain| least(grain) > Ratio::ZERO).max_by_key(least)
    }

    /// How far the view asks the role to give along a grain. Where it asks along another grain only, it asks
    /// nothing here, nor of a woven where it asks for nothing at all.
    fn asked(&self, grain: Grain) -> Option<Ratio> {
        let asked = self.role.demand.stretch(grain).at_least.map(Limit::ratio);
        let elsewhere = self.role.grains().next().is_some() || self.cloth.construction != Construction::Knit;
        asked.or(elsewhere.then_some(Ratio::ZERO))
    }
}

/// The garment that is planned.
#[derive(Debug)]
pub struct Made<'a> {
    pub(super) wanted: &'a PlanWanted<'a>,
    pub(super) joined: Vec<Joined>,
    cloths: Vec<SewnCloth<'a>>,
    parts: Vec<PartCloth>,
}

impl<'a> Made<'a> {
    pub(super) fn of(wanted: &'a PlanWanted<'a>) -> Self {
        let cloth = |chosen: &Chosen<'a>| {
            let fabric = chosen.fabric()?;
            let cloth = known::cloth(fabric, wanted.stock);
            Some(SewnCloth { fabric, cloth, role: chosen.role, part: part(chosen.role) })
        };
        let cloths: Vec<SewnCloth<'a>> = wanted.chosen.iter().filter_map(cloth).collect();
        // A garment of one cloth is that cloth, whatever its role is called.
        let first = cloths.iter().any(|one| one.part == Some(Part::Main));
        let parts = cloths.iter().enumerate().map(|(place, one)| PartCloth {
            part: one.part.unwrap_or(if first || place > 0 { Part::Panel } else { Part::Main }),
            cloth: one.cloth,
            finish: one.fabric.finish.unwrap_or(Finish::Plain),
            one_way: one.fabric.one_way,
        });
        let mut made = Self { wanted, joined: Vec::new(), parts: parts.collect(), cloths };
        made.joined = seams::joined(&made);
        made
    }

    pub(super) fn garment(&self) -> Option<Garment<'_>> {
        self.wanted.kind.map(|kind| Garment { kind: kind.kind, details: kind.details, cloths: &self.parts })
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

    /// The cloths that have seams of their own, each once.
    pub(super) fn sewn(&self) -> impl Iterator<Item = &SewnCloth<'a>> {
        let new = |place: usize, one: &SewnCloth<'_>| {
            !self.cloths.iter().take(place).any(|other| other.is_sewn() && other.fabric.id == one.fabric.id)
        };
        self.places().filter(move |(place, one)| one.is_sewn() && new(*place, one)).map(|(_, one)| one)
    }

    /// A straight seam of a cloth, as most of its seams are.
    fn straight(&self, one: &SewnCloth<'_>, grain: Grain) -> SeamUse {
        let covered = one.part == Some(Part::Lining) || self.details().has(Detail::Lining);
        SeamUse {
            asked: one.asked(grain),
            runs: Runs::along(grain),
            lined: covered,
            garment: self.kind(),
            ..SeamUse::default()
        }
    }

    /// The stitch of most seams of a cloth. Where the garment is not known it is only told if both grains want the same.
    fn usual_stitch(&self, one: &SewnCloth<'_>) -> Option<Sewing> {
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
        let mut shared: Vec<(Sewing, Vec<u16>)> = Vec::new();
        for one in self.sewn() {
            let Some(sewing) = self.usual_stitch(one) else { continue };
            match shared.iter_mut().find(|(known, _)| is_same(known, &sewing)) {
                Some((_, tags)) => tags.push(one.fabric.tag),
                None => shared.push((sewing, vec![one.fabric.tag])),
            }
        }
        let all = self.sewn().count();
        let tags = |tags: Vec<u16>| if tags.len() == all { Vec::new() } else { tags };
        shared.into_iter().map(|(sewing, one)| Step::Stitch { sewing, tags: tags(one) }).collect()
    }

    /// The seams that are sewn, in their order.
    pub(super) fn seams(&self) -> Vec<(Seam, Manner)> {
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
    fn treated(&self, seam: Seam) -> Option<(&SewnCloth<'a>, SeamUse, handling::Seam)> {
        let garment = self.garment()?;
        let row = garment.seam(seam);
        let [body, _] = row.parts;
        let one = self.cloth(garment.place(body)?)?;
        let [runs, _] = row.runs;
        let has_pocket = garment.details.has(Detail::SidePockets) || garment.details.has(Detail::HipPockets);
        let opens = match seam {
            // A knit has room for a pocket in the allowance that it has.
            Seam::Side | Seam::OutsideLeg => has_pocket && one.cloth.construction != Construction::Knit,
            Seam::CentreBack => garment.details.has(Detail::ClosedZip),
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
    pub(super) fn band_gives(&self, garment: &Garment<'_>, seam: Seam) -> Option<Grain> {
        let [_, band] = garment.seam(seam).parts;
        let one = self.cloth(garment.place(band)?)?;
        let is_own = one.is_band() && one.part.is_some_and(|own| own.serves(band));
        is_own.then(|| one.asked_most()).flatten()
    }

    /// The finish of most seams that are plainly sewn.
    fn usual_finish(&self) -> Option<handling::FinishLine> {
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
        let mut by_cloth: Vec<(u16, Vec<(Vec<Seam>, handling::SeamAllowance)>)> = Vec::new();
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
        let step = |(tag, mut groups): (u16, Vec<(Vec<Seam>, handling::SeamAllowance)>)| {
            let straight = self.sewn().find(|one| one.fabric.tag == tag)?;
            let most = handling::allowance(&straight.cloth, &self.straight(straight, Grain::Lengthwise));
            groups.retain(|(_, other)| other.width != most.width);
            Some(Step::Allowance { most, others: groups, tags: if several { vec![tag] } else { Vec::new() } })
        };
        by_cloth.into_iter().filter_map(step).collect()
    }

    /// What the lining leaves of the give of the cloth that it is sewn to.
    pub(super) fn lining_gives(&self) -> Option<Handle> {
        let of = |wanted: Part| self.cloths.iter().find(|one| one.part == Some(wanted));
        let lining = of(Part::Lining)?;
        let outer = of(Part::Main).or_else(|| self.cloths.iter().find(|one| one.part != Some(Part::Lining)))?;
        if outer.fabric.id == lining.fabric.id {
            return None;
        }
        let gives = |one: &SewnCloth<'_>| known::stretch(one.fabric, Grain::Crosswise, self.wanted.stock).ok();
        let wants = outer.role.demand.crosswise.at_least.map(Limit::ratio);
        let (layer, layered) = layered(gives(outer)?, Layer::Lining, gives(lining)?, wants, self.wanted.confidence);
        Some(Handle::Layer(layer, layered))
    }
}

/// Whether two stitches are set alike, whatever the reasons.
fn is_same(one: &Sewing, other: &Sewing) -> bool {
    (one.first, one.instead, one.second, one.topstitch) == (other.first, other.instead, other.second, other.topstitch)
}

/// Whether the manner itself says what becomes of the raw edges.
const fn is_closed(manner: Manner) -> bool {
    matches!(manner, Manner::Felled | Manner::Enclosed)
}

/// Puts the work of the kind on the plan.
pub(super) fn work(made: &Made<'_>, parts: &mut Parts) {
    let Some(garment) = made.garment() else { return };
    let mut tasks = Vec::new();
    garment.each(|task| tasks.push(task));
    // Elastic that lies in the stash is washed by itself.
    let has_elastic = made.places().any(|(_, one)| one.part == Some(Part::Elastic));
    tasks.retain(|task| !(has_elastic && task.work == Work::WashNotion(Notion::Elastic)));
    let mut finish = made.usual_finish().filter(|line| {
        line.finish != handling::SeamFinish::ByTheStitch && line.reason != handling::FinishReason::Covered
    });
    for task in tasks {
        let topic = PlanTopic::Stage(task.stage);
        if matches!(task.work, Work::Seam(..))
            && let Some(line) = finish.take()
        {
            parts.follow(topic, Step::Finish { line, tags: Vec::new() });
        }
        let step = step(made, &task);
        // What is sewn flat comes back to its stage in the kind's own order; all that is before has one place.
        let before = task.stage < Stage::Fuse;
        let last = match before {
            true => parts.0.iter_mut().rfind(|part| part.topic == topic),
            false => parts.0.last_mut().filter(|part| part.topic == topic),
        };
        let last = last.map(|part| part.steps.as_mut_slice()).unwrap_or_default();
        // What is interfaced in one way is told in one line, wherever it stood.
        let merged = match step {
            Step::Interface { .. } => last.iter_mut().any(|known| merge(known, &step)),
            _ => last.last_mut().is_some_and(|known| merge(known, &step)),
        };
        if merged {
            continue;
        }
        if before {
            parts.add(topic, [step])
        } else {
            parts.follow(topic, step)
        }
        if let Work::Seam(seam, manner) = task.work
            && manner != Manner::Pulled
        {
            made.joined.iter().filter(|joined| joined.seams.first() == Some(&seam)).for_each(|joined| {
                joined.steps(topic).into_iter().for_each(|step| parts.follow(topic, step));
            });
        }
    }
    let all = made.sewn().count();
    for step in parts.0.iter_mut().flat_map(|part| &mut part.steps) {
        if let Step::Work { tags, .. } = step
            && tags.len() == all
        {
            tags.clear();
        }
    }
}

fn step(made: &Made<'_>, task: &Task) -> Step {
    let Task { work, source, why, .. } = *task;
    match work {
        Work::WashNotion(notion) => Step::WashNotions(vec![notion], source),
        Work::Interface(zone) => {
            let body = made.garment().and_then(|garment| made.cloth(garment.place(Part::Main)?));
            let gives =
                body.is_some_and(|one| one.asked_most().is_some() || one.cloth.construction == Construction::Knit);
            let band = made.garment().and_then(|garment| made.band_gives(&garment, Seam::Waistband));
            let holds = match zone {
                Zone::Waistband if band.is_some() => Some(Holds::Gives),
                _ => zone.holds().filter(|_| gives),
            };
            Step::Interface { zones: vec![zone], holds, source }
        }
        Work::Mark(point) => Step::Mark(vec![point], source),
        Work::StayStitch(edge) => Step::StayStitch(vec![edge], source),
        Work::Hem(hem) => Step::Hem { hems: vec![hem], sewing: hem_stitch(made, hem), why, source },
        Work::Seam(seam, manner) => Step::Sew(Box::new(sewn(made, task, seam, manner))),
        _ => {
            let tags = task.cloth.and_then(|place| made.cloth(place)).map(|one| one.fabric.tag);
            Step::Work { work, tags: tags.into_iter().collect(), why, source }
        }
    }
}

/// The stitch of a hem that must give.
fn hem_stitch(made: &Made<'_>, hem: Hem) -> Option<Sewing> {
    let part = match hem {
        Hem::HoodFace => Part::Hood,
        Hem::Sleeves => Part::Sleeve,
        Hem::Legs | Hem::LowerEdge => Part::Main,
    };
    let one = made.cloth(made.garment()?.place(part)?)?;
    let knit = one.cloth.construction == Construction::Knit;
    knit.then(|| handling::hem(&one.cloth, &made.straight(one, Grain::Crosswise)))
}

fn sewn(made: &Made<'_>, task: &Task, seam: Seam, manner: Manner) -> SeamStep {
    let bare = SeamStep {
        seams: vec![seam],
        manner,
        sewing: None,
        finish: None,
        trimming: None,
        stay: None,
        why: task.why,
        source: task.source,
    };
    let Some((one, asked, treated)) = made.treated(seam) else { return bare };
    let other = |sewing: &Sewing| made.usual_stitch(one).is_none_or(|usual| !is_same(&usual, sewing));
    let usual = made.usual_finish().map(|line| line.finish);
    // What lies between two layers needs no word about its edges.
    let tells = !is_closed(manner) && !asked.enclosed && Some(treated.finish.finish) != usual;
    let stay = treated.stay.filter(|line| match line.stay {
        Stay::Tape | Stay::ClearElastic => seam == Seam::Shoulder,
        Stay::StayStitch => asked.runs == Runs::Crosswise && !asked.enclosed,
        Stay::Hung | Stay::LeftFree => false,
    });
    SeamStep {
        sewing: Some(treated.sewing).filter(other),
        finish: Some(treated.finish).filter(|_| tells),
        trimming: treated.trimming.filter(|_| !matches!(manner, Manner::Felled | Manner::Eased)),
        stay,
        ..bare
    }
}

/// Takes a step into the one before it, where both are one line: the same verb with another object.
fn merge(known: &mut Step, step: &Step) -> bool {
    match (known, step) {
        (Step::WashNotions(notions, _), Step::WashNotions(more, _)) => join(notions, more),
        (Step::Interface { zones, holds, .. }, Step::Interface { zones: more, holds: too, .. }) if holds == too => {
            join(zones, more)
        }
        (Step::Mark(points, _), Step::Mark(more, _)) => join(points, more),
        (Step::StayStitch(edges, _), Step::StayStitch(more, _)) => join(edges, more),
        (Step::Hem { hems, sewing, .. }, Step::Hem { hems: more, sewing: other, .. }) if sewing == other => {
            join(hems, more)
        }
        (Step::Work { work, tags, .. }, Step::Work { work: other, tags: more, .. })
            if work == other && !tags.is_empty() && !more.is_empty() =>
        {
            join(tags, more)
        }
        (Step::Sew(known), Step::Sew(step)) => {
            let plain = known.manner == Manner::Plain && step.manner == Manner::Plain;
            let alike =
                SeamStep { seams: known.seams.clone(), why: known.why, source: known.source, ..(**step).clone() };
            plain && **known == alike && join(&mut known.seams, &step.seams)
        }
        _ => false,
    }
}

fn join<T: Copy + PartialEq>(known: &mut Vec<T>, more: &[T]) -> bool {
    let new: Vec<T> = more.iter().filter(|one| !known.contains(one)).copied().collect();
    known.extend(new);
    true
}
