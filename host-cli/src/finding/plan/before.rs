//! What comes before the sewing: what to settle, the wash, the sample, laying out.

use tenter_core::making::care::{Care, Dots, Finish};
use tenter_core::making::garment::{Detail, GarmentKind, GarmentPart, Stage, Work};
use tenter_core::making::handling::{self, Practice, RIGID_UNDER_PERCENT};
use tenter_core::making::sizing::{Stretch, mass_stretched, wearable};
use tenter_core::making::source::Source;
use tenter_core::{Confidence, Grain, Ratio};

use super::garment::SewnCloth;
use super::waist::WaistEdge;
use super::{Parts, PlanTopic, PlannedGarment, RoleChoice, Step, fabrics};
use crate::finding::check::figure;
use crate::finding::fit::{Reason, known};
use crate::finding::handle::Handle;
use crate::log::{Construction, Fabric, Tag};

/// What must be measured or said first.
pub(super) fn check(made: &PlannedGarment<'_>, parts: &mut Parts) {
    let wanted = made.wanted;
    if wanted.kind.is_none() {
        parts.add(PlanTopic::Check, [Step::General]);
    }
    if does_not_open(made) {
        parts.add(PlanTopic::Check, made.kind().map(Step::SayHowOpened));
    }
    for chosen in &wanted.chosen {
        let Some(fabric) = chosen.fabric() else { continue };
        let open = chosen.role.grains().filter(|grain| wanted.stock.measured(fabric, *grain).is_none());
        let pull = |grain| Step::Pull { cloth: fabric.into(), grain, role: chosen.role.name.clone() };
        parts.add(PlanTopic::Check, open.map(pull));
    }
    parts.add(PlanTopic::Check, wanted.chosen.iter().filter_map(|chosen| settle(chosen, wanted.confidence)));
    parts
        .add(PlanTopic::Check, made.lining_gives().map(|handle| Step::Handle { handle, most: None, tags: Vec::new() }));
    if let (Some(body), Some(layer)) = (made.body(), made.of_part(GarmentPart::Interfacing))
        && layer.cloth.finish == Finish::Fusible
        && !body.cloth.finish.takes_fusible()
    {
        let step = Step::FusibleOnNoHeat { interfacing: layer.fabric.into(), cloth: body.fabric.into() };
        parts.add(PlanTopic::Check, [step]);
    }
    parts.add(PlanTopic::Check, fuse_cool(made));
}

/// That a fusible must melt at little heat.
fn fuse_cool(made: &PlannedGarment<'_>) -> Option<Step> {
    let body = made.body().filter(|one| one.cloth.finish.takes_fusible())?;
    let cool = Care::of(&body.fabric.described()).iron.rule >= Dots::One;
    let mut fused = false;
    made.garment()?.each(|task| fused |= task.work == Work::TrimFusible);
    let sewn = made.of_part(GarmentPart::Interfacing).is_some_and(|one| one.cloth.finish != Finish::Fusible);
    (cool && fused && !sewn).then(|| Step::FuseCool(body.fabric.into()))
}

/// What would settle a role that is in doubt; a grain that was not pulled is told by itself.
fn settle(chosen: &RoleChoice<'_>, confidence: Confidence) -> Option<Step> {
    let candidate = chosen.candidate.as_ref()?;
    let grain = match candidate.reason {
        _ if !candidate.verdict().is_open() => return None,
        Reason::NotPulled(_) => return None,
        Reason::Disagree(grain) | Reason::Doubted(grain) | Reason::NotRead(grain, _) | Reason::Part(grain, _) => {
            Some(grain)
        }
        _ => None,
    };
    let evaluation = grain.and_then(|grain| candidate.along(grain)?.in_full(confidence));
    let figure = match candidate.reason {
        Reason::Part(_, part) => evaluation.as_ref().and_then(|evaluation| figure(&evaluation.figures, part.ask)),
        _ => None,
    };
    Some(Step::Settle {
        cloth: candidate.fabric.into(),
        role: chosen.role.name.clone(),
        reason: candidate.reason,
        figure,
        settle: evaluation.and_then(|evaluation| evaluation.settle),
        rest_seconds: candidate.rest_seconds,
    })
}

/// Whether nothing lets the hips of a wearer into a woven waist, or the shoulders into a woven dress.
fn does_not_open(made: &PlannedGarment<'_>) -> bool {
    let must_open = matches!(
        made.kind(),
        Some(GarmentKind::Skirt | GarmentKind::Trousers | GarmentKind::Jeans | GarmentKind::Dress | GarmentKind::Shirt)
    );
    let opens = [Detail::Fly, Detail::ClosedZip, Detail::SeparatingZip, Detail::Buttons, Detail::ElasticWaist];
    let is_woven = made.body().is_some_and(|one| one.cloth.construction == Construction::Woven);
    must_open && is_woven && !opens.into_iter().any(|one| made.details().has(one))
}

/// Whether a cloth is washed or soaked before it is cut.
pub(super) fn is_wetted(fabric: &Fabric) -> bool {
    Care::of(&fabric.described()).before.rule.wets()
}

/// The wash.
pub(super) fn wash(made: &PlannedGarment<'_>, parts: &mut Parts) {
    let unwashed = fabrics(&made.wanted.chosen).into_iter().filter(|fabric| !fabric.washed);
    // What is sewn to a cloth that is never washed will not be either; steam still shrinks what is fused.
    let body = made.body().filter(|one| !is_wetted(one.fabric));
    let is_left = |fabric: &&Fabric| {
        let fused = body.is_some_and(|body| body.cloth.finish.takes_fusible())
            && made.of_part(GarmentPart::Interfacing).is_some_and(|one| one.fabric.id == fabric.id);
        body.is_some_and(|body| body.fabric.id != fabric.id) && is_wetted(fabric) && !fused
    };
    let (left, unwashed): (Vec<_>, Vec<_>) = unwashed.partition(is_left);
    let care = |fabric: &Fabric| Care::of(&fabric.described());
    // What lies behind another cloth takes on its changes.
    let is_behind = |fabric: &Fabric| {
        let mut roles = made.places().filter(|(_, one)| one.fabric.id == fabric.id);
        roles.all(|(_, one)| {
            matches!(one.part, Some(GarmentPart::Interfacing | GarmentPart::PocketBag | GarmentPart::Elastic))
        })
    };
    let unknown =
        unwashed.iter().filter(|fabric| is_wetted(fabric) && fabric.washed_lengthwise.is_none() && !is_behind(fabric));
    let marked: Vec<_> = unknown.map(|fabric| (*fabric).into()).collect();
    let mark = (!marked.is_empty()).then_some(Step::MarkBeforeWash(marked));
    let wash =
        |fabric: &&Fabric| Step::Wash { cloth: (*fabric).into(), fibre: fabric.fibre.clone(), care: care(fabric) };
    let left = (!left.is_empty()).then(|| Step::LeaveUnwashed(left.into_iter().map(Into::into).collect()));
    parts.add(PlanTopic::Stage(Stage::Prewash), mark.into_iter().chain(unwashed.iter().map(wash)).chain(left));
}

/// What each cloth that is sewn asks for, the same once with the tags.
pub(super) fn each(made: &PlannedGarment<'_>, of: &dyn Fn(&SewnCloth<'_>) -> Vec<Handle>) -> Vec<Step> {
    let mut shared: Vec<(Handle, Option<Ratio>, Vec<Tag>)> = Vec::new();
    for one in made.sewn() {
        for handle in of(one) {
            match shared.iter_mut().find(|(known, ..)| *known == handle) {
                Some((.., tags)) => tags.push(one.fabric.tag),
                None => {
                    shared.push((handle, one.cloth.most_stretch().map(|figure| figure.ratio), vec![one.fabric.tag]))
                }
            }
        }
    }
    let all = made.sewn().count();
    let step = |(handle, most, tags): (Handle, Option<Ratio>, Vec<Tag>)| {
        let tags = if tags.len() == all { Vec::new() } else { tags };
        Step::Handle { handle, most, tags }
    };
    shared.into_iter().map(step).collect()
}

/// Needle, stitch and machine of each cloth that is sewn.
pub(super) fn sample(made: &PlannedGarment<'_>, parts: &mut Parts) {
    let topic = PlanTopic::Stage(Stage::Sample);
    let stock = made.wanted.stock;
    let last_time = |one: &SewnCloth<'_>| {
        stock.last_time(one.fabric).map(|told| Handle::LastTime(Box::new(told.clone()))).into_iter().collect()
    };
    parts.add(topic, each(made, &last_time));
    parts.add(topic, each(made, &|one| vec![Handle::Needle(handling::needle(&one.cloth))]));
    parts.add(topic, made.stitches());
    let machine = |one: &SewnCloth<'_>| {
        let lines = handling::practices(&one.cloth, made.kind()).into_iter();
        lines.filter(|line| line.practice != Practice::LieFlat).map(Handle::Machine).collect()
    };
    parts.add(topic, each(made, &machine));
    let pressed = |fabric: &Fabric| Step::Press { cloth: fabric.into(), care: Care::of(&fabric.described()) };
    // Elastic is not pressed, nor a fusible that cannot be fused.
    let no_heat = made.body().is_some_and(|body| !body.cloth.finish.takes_fusible());
    let is_pressed = |fabric: &Fabric| {
        let part = made.places().find(|(_, one)| one.fabric.id == fabric.id).and_then(|(_, one)| one.part);
        part != Some(GarmentPart::Elastic) && !(no_heat && part == Some(GarmentPart::Interfacing))
    };
    parts.add(topic, fabrics(&made.wanted.chosen).into_iter().filter(|fabric| is_pressed(fabric)).map(pressed));
}

/// What a close garment asks of its cloth where it is stretched as far as the view asks.
pub(super) fn reach(made: &PlannedGarment<'_>) -> Vec<Step> {
    let Some(one) = made.body() else { return Vec::new() };
    let of = |grain| {
        let by = one.asked(grain).filter(|by| *by > Ratio::ZERO)?;
        let left = Stretch::new(one.cloth.along(grain)?.ratio)?.left_after(Stretch::new(by)?)?;
        Some(Step::Reach { grain, by, left })
    };
    [Grain::Crosswise, Grain::Lengthwise].into_iter().filter_map(of).collect()
}

/// How it is seen whether it shows through there; none where the view does not say how far.
pub(super) fn opacity(made: &PlannedGarment<'_>, wet: bool, source: Source) -> Option<Step> {
    let one = made.body()?;
    let by = [Grain::Crosswise, Grain::Lengthwise].map(|grain| one.asked(grain).unwrap_or(Ratio::ZERO));
    let [across, along] = by;
    let mass = one.cloth.mass.and_then(|mass| Some((mass, mass_stretched(mass, across, along)?)));
    by.into_iter().any(|by| by > Ratio::ZERO).then_some(Step::Opacity { by, mass, wet, source })
}

/// How much smaller than the body a close garment is usually cut.
fn ease(made: &PlannedGarment<'_>) -> Option<Step> {
    let (kind, one) = (made.kind()?, made.body()?);
    let is_close = matches!(kind, GarmentKind::Leggings | GarmentKind::Swimwear);
    let cloth = &one.cloth;
    let stretch = cloth.crosswise.filter(|_| is_close)?.ratio;
    let worn = wearable(cloth.construction, cloth.elastane, Some(kind), stretch)?;
    let along = cloth.lengthwise.map(|figure| figure.ratio);
    Some(Step::Ease(worn.with_lengths(Some(kind), along)))
}

/// How the pieces lie and how wide they are cut.
pub(super) fn cut(made: &PlannedGarment<'_>, parts: &mut Parts) {
    let mut steps: Vec<Step> = Vec::new();
    for (role, round, stretch) in made.wanted.chosen.iter().filter_map(|chosen| grain(made, chosen)) {
        let alike = steps.iter_mut().find_map(|step| match step {
            Step::Grain { roles, round: known } if *known == round => Some(roles),
            _ => None,
        });
        match alike {
            Some(roles) => roles.push((role, stretch)),
            None => steps.push(Step::Grain { roles: vec![(role, stretch)], round }),
        }
    }
    parts.add(PlanTopic::Stage(Stage::Cut), ease(made));
    parts.add(PlanTopic::Stage(Stage::Cut), WaistEdge::of(made).map(Step::WaistEdge));
    parts.add(PlanTopic::Stage(Stage::Cut), steps);
    parts.add(PlanTopic::Stage(Stage::Cut), made.allowances());
}

/// The greater stretch goes round the body, where there is any and the view asks for some, or where it runs along the
/// cloth.
fn grain(made: &PlannedGarment<'_>, chosen: &RoleChoice<'_>) -> Option<(String, Grain, [Ratio; 2])> {
    let fabric = chosen.fabric()?;
    if super::part::part(chosen.role).is_some_and(|part| !part.is_outside() && part != GarmentPart::Lining) {
        return None;
    }
    let stretch = |grain| known::stretch(fabric, grain, made.wanted.stock).ok().map(|figure| figure.ratio);
    let (across, along) = (stretch(Grain::Crosswise)?, stretch(Grain::Lengthwise)?);
    let gives = Ratio::new(RIGID_UNDER_PERCENT, 100).is_some_and(|edge| across.max(along) >= edge);
    let asked = chosen.role.grains().next().is_some();
    let round = if along > across { Grain::Lengthwise } else { Grain::Crosswise };
    (gives && asked).then(|| (chosen.role.name.clone(), round, [across, along]))
}
