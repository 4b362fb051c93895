//! What comes before the sewing: what to settle, the wash, the sample, laying out.

use tenter_core::Grain;
use tenter_core::Ratio;
use tenter_core::making::care::Care;
use tenter_core::making::garment::{Detail, GarmentKind, GarmentPart, Stage};
use tenter_core::making::handling::{self, Practice, RIGID_UNDER_PERCENT};

use super::{Parts, PlanTopic, PlannedGarment, RoleChoice, Step, fabrics};
use crate::finding::fit::known;
use crate::finding::handle::Handle;
use crate::log::{Construction, Fabric, Tag};

/// What must be measured or said first.
pub(super) fn check(made: &PlannedGarment<'_>, parts: &mut Parts) {
    let wanted = made.wanted;
    if wanted.kind.is_none() {
        parts.add(PlanTopic::Check, [Step::General]);
    }
    if does_not_open(made) {
        parts.add(PlanTopic::Check, [Step::SayHowOpened]);
    }
    for chosen in &wanted.chosen {
        let Some(fabric) = chosen.fabric() else { continue };
        let open = chosen.role.grains().filter(|grain| wanted.stock.measured(fabric, *grain).is_none());
        let pull = |grain| Step::Pull { cloth: fabric.into(), grain, role: chosen.role.name.clone() };
        parts.add(PlanTopic::Check, open.map(pull));
    }
    parts
        .add(PlanTopic::Check, made.lining_gives().map(|handle| Step::Handle { handle, most: None, tags: Vec::new() }));
}

/// Whether nothing lets the hips of a wearer into a woven waist.
fn does_not_open(made: &PlannedGarment<'_>) -> bool {
    let hangs_from_waist = matches!(made.kind(), Some(GarmentKind::Skirt | GarmentKind::Trousers | GarmentKind::Jeans));
    let opens = [Detail::Fly, Detail::ClosedZip, Detail::Buttons, Detail::ElasticWaist];
    let main = made.garment().and_then(|garment| made.cloth(garment.place(GarmentPart::Main)?));
    let is_woven = main.is_some_and(|one| one.cloth.construction == Construction::Woven);
    hangs_from_waist && is_woven && !opens.into_iter().any(|one| made.details().has(one))
}

/// Whether a cloth is washed or soaked before it is cut.
pub(super) fn is_wetted(fabric: &Fabric) -> bool {
    Care::of(&fabric.described()).before.rule.wets()
}

/// The wash.
pub(super) fn wash(made: &PlannedGarment<'_>, parts: &mut Parts) {
    let unwashed: Vec<_> = fabrics(&made.wanted.chosen).into_iter().filter(|fabric| !fabric.washed).collect();
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
    parts.add(PlanTopic::Stage(Stage::Prewash), mark.into_iter().chain(unwashed.iter().map(wash)));
}

/// Needle, thread, stitch and machine of each cloth that is sewn, the same once with the tags.
pub(super) fn sample(made: &PlannedGarment<'_>, parts: &mut Parts) {
    let sewn: Vec<_> = made.sewn().collect();
    let each = |of: &dyn Fn(&super::garment::SewnCloth<'_>) -> Vec<Handle>| {
        let mut shared: Vec<(Handle, Option<Ratio>, Vec<Tag>)> = Vec::new();
        for one in &sewn {
            for handle in of(one) {
                match shared.iter_mut().find(|(known, ..)| *known == handle) {
                    Some((.., tags)) => tags.push(one.fabric.tag),
                    None => {
                        shared.push((handle, one.cloth.most_stretch().map(|figure| figure.ratio), vec![one.fabric.tag]))
                    }
                }
            }
        }
        let all = sewn.len();
        shared.into_iter().map(move |(handle, most, tags)| {
            let tags = if tags.len() == all { Vec::new() } else { tags };
            Step::Handle { handle, most, tags }
        })
    };
    let topic = PlanTopic::Stage(Stage::Sample);
    let stock = made.wanted.stock;
    let last_time = |one: &super::garment::SewnCloth<'_>| {
        stock.last_time(one.fabric).map(|told| Handle::LastTime(Box::new(told.clone()))).into_iter().collect()
    };
    parts.add(topic, each(&last_time));
    parts.add(topic, each(&|one| vec![Handle::Needle(handling::needle(&one.cloth))]));
    parts.add(topic, each(&|one| vec![Handle::Thread(handling::thread(&one.cloth))]));
    parts.add(topic, made.stitches());
    let machine = |one: &super::garment::SewnCloth<'_>| {
        let lines = handling::practices(&one.cloth, made.kind()).into_iter();
        lines.filter(|line| line.practice != Practice::LieFlat).map(Handle::Machine).collect()
    };
    parts.add(topic, each(&machine));
    let pressed = |fabric: &Fabric| Step::Press { cloth: fabric.into(), care: Care::of(&fabric.described()) };
    let is_elastic = |fabric: &Fabric| {
        made.places().any(|(_, one)| one.fabric.id == fabric.id && one.part == Some(GarmentPart::Elastic))
    };
    parts.add(topic, fabrics(&made.wanted.chosen).into_iter().filter(|fabric| !is_elastic(fabric)).map(pressed));
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
