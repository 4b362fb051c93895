//! The work of a kind on the plan, in its order; what is done in one way is told in one line.

use tenter_core::Grain;
use tenter_core::making::care::Finish;
use tenter_core::making::elastic::Edging;
use tenter_core::making::garment::{GarmentPart, Hem, Holds, Manner, Notion, SeamKind, Stage, Task, Work, Zone};
use tenter_core::making::handling::{self, Runs, Sewing, Stay};
use tenter_core::making::source::Source;

use super::before::{is_wetted, opacity, reach};
use super::garment::{PlannedGarment, is_closed, is_same};
use super::{Parts, PlanTopic, PlannedCord, SeamStep, Step, USUAL_CORD, buying};
use crate::finding::size::{Size, SizeLine};
use crate::log::Construction;

/// Puts the work of the kind on the plan.
pub(super) fn add(made: &PlannedGarment<'_>, parts: &mut Parts) {
    let Some(garment) = made.garment() else { return };
    let mut tasks = Vec::new();
    garment.each(|task| tasks.push(task));
    // Elastic that lies in the stash is washed by itself, and what is never washed needs no notion that was.
    let has_elastic = made.of_part(GarmentPart::Elastic).is_some();
    let is_washed = made.body().is_none_or(|one| is_wetted(one.fabric));
    let sews_in = made.of_part(GarmentPart::Interfacing).is_some_and(|one| one.cloth.finish != Finish::Fusible);
    tasks.retain(|task| match task.work {
        Work::WashNotion(Notion::Elastic) if has_elastic => false,
        Work::WashNotion(_) => is_washed,
        Work::Get(notion) => buying::is_needed(made, notion),
        // An interfacing without glue was chosen.
        Work::FuseSample => !sews_in,
        _ => true,
    });
    for task in tasks.iter_mut().filter(|task| sews_in && task.work == Work::TrimFusible) {
        *task = Task { work: Work::SewInInterfacing, source: Source::CommonPractice, ..*task };
    }
    let mut finish = made.usual_finish().filter(|line| {
        line.finish != handling::SeamFinish::ByTheStitch && line.reason != handling::FinishReason::Covered
    });
    for task in tasks {
        let topic = PlanTopic::from(task.stage);
        if matches!(task.work, Work::Seam(..) | Work::SewVent)
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
        let beside = beside(made, task.work);
        if before {
            parts.add(topic, core::iter::once(step).chain(beside))
        } else {
            core::iter::once(step).chain(beside).for_each(|step| parts.follow(topic, step));
        }
        if let Work::Seam(seam, manner) = task.work
            && manner != Manner::Pulled
        {
            made.joined.iter().filter(|joined| joined.seams.first() == Some(&seam)).for_each(|joined| {
                joined.steps(topic).into_iter().for_each(|step| parts.follow(topic, step));
            });
        }
    }
    parts.add(PlanTopic::Stage(Stage::Mark), stayed(made));
    let all = made.sewn().count();
    for step in parts.0.iter_mut().flat_map(|part| &mut part.steps) {
        if let Step::Work { tags, .. } = step
            && tags.len() == all
        {
            tags.clear();
        }
    }
}

/// What stands beside a task: what the cloth gives beyond the stretch of wear.
fn beside(made: &PlannedGarment<'_>, work: Work) -> Vec<Step> {
    match work {
        Work::TryOpacity | Work::TryOpacityWet => reach(made),
        _ => Vec::new(),
    }
}

/// The casing of elastic or cord of which the width was said.
fn casing(made: &PlannedGarment<'_>, work: Work) -> Option<Step> {
    let at = |wrist: bool| {
        // The lines of one elastic follow each other.
        let lines = &made.wanted.notions.lines;
        let starts = |line: &SizeLine| matches!(&line.size, Size::Elastic { recommended, .. } if (recommended.place == Edging::Wrist) == wrist);
        let start = lines.iter().position(starts)?;
        let mut own = lines.iter().skip(start + 1).take_while(|line| !matches!(line.size, Size::Elastic { .. }));
        own.find_map(|line| match line.size {
            Size::Casing { tunnel, width } => Some(Step::Casing { work, tunnel, width, unit: line.unit }),
            _ => None,
        })
    };
    match work {
        Work::WaistCasing => at(false),
        Work::WristCasing => at(true),
        Work::CordCasing(_) => {
            let PlannedCord { cord, width, unit, .. } = made.wanted.cord?;
            Some(Step::Casing { work, tunnel: cord.tunnel, width: width.unwrap_or(USUAL_CORD), unit })
        }
        _ => None,
    }
}

/// The straight edges that are stay-stitched for what they stretch: they are told where the pieces are marked.
fn stayed(made: &PlannedGarment<'_>) -> Option<Step> {
    let stays = |(seam, manner): (SeamKind, Manner)| {
        let (_, asked, treated) = made.treated(seam)?;
        let line = treated.stay.filter(|line| line.stay == Stay::StayStitch)?;
        let told = asked.runs == Runs::Crosswise && !asked.enclosed && manner != Manner::Pulled;
        told.then_some((seam, line.source))
    };
    let stayed: Vec<(SeamKind, Source)> = made.seams().into_iter().filter_map(stays).collect();
    let (_, source) = *stayed.first()?;
    Some(Step::StaySeams(stayed.into_iter().map(|(seam, _)| seam).collect(), source))
}

fn step(made: &PlannedGarment<'_>, task: &Task) -> Step {
    let Task { work, source, why, .. } = *task;
    match work {
        Work::WaistCasing | Work::WristCasing | Work::CordCasing(_) => {
            casing(made, work).unwrap_or(Step::Work { work, tags: Vec::new(), why, source })
        }
        Work::Get(notion) => Step::Notion { notion, lengths: buying::lengths(made, notion), why, source },
        Work::TryOpacity | Work::TryOpacityWet => {
            let told = opacity(made, work == Work::TryOpacityWet, source);
            told.unwrap_or(Step::Work { work, tags: Vec::new(), why, source })
        }
        Work::CutCord(_) if made.wanted.cord.is_some() => match made.wanted.cord {
            Some(PlannedCord { cord, edge, unit, .. }) => {
                Step::Size(SizeLine { size: Size::Cord { cord, edge }, unit })
            }
            None => Step::Work { work, tags: Vec::new(), why, source },
        },
        Work::WashNotion(notion) => Step::WashNotions(vec![notion], source),
        Work::Interface(zone) => {
            let gives = made
                .body()
                .is_some_and(|one| one.asked_most().is_some() || one.cloth.construction == Construction::Knit);
            let band = made.garment().and_then(|garment| made.band_gives(&garment, SeamKind::Waistband));
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
fn hem_stitch(made: &PlannedGarment<'_>, hem: Hem) -> Option<Sewing> {
    let part = match hem {
        Hem::HoodFace => GarmentPart::Hood,
        Hem::Sleeves => GarmentPart::Sleeve,
        Hem::Legs | Hem::LowerEdge => GarmentPart::Main,
    };
    let one = made.cloth(made.garment()?.place(part)?)?;
    let knit = one.cloth.construction == Construction::Knit;
    knit.then(|| handling::hem(&one.cloth, &made.straight(one, Grain::Crosswise)))
}

fn sewn(made: &PlannedGarment<'_>, task: &Task, seam: SeamKind, manner: Manner) -> SeamStep {
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
        Stay::Tape | Stay::ClearElastic => matches!(seam, SeamKind::Shoulder | SeamKind::Waist),
        Stay::StayStitch | Stay::Hung | Stay::LeftFree => false,
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
