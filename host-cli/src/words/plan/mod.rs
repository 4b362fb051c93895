//! The plan of a view, in words.

mod cloth;
mod overall;
mod seam;
pub mod work;

pub use overall::overall;

use serde::Serialize;
use tenter_core::making::care::{Dots, Pins};
use tenter_core::making::garment::{Detail, GarmentKind, Holds, Stage, Work};
use tenter_core::making::handling::Basis;
use tenter_core::making::source::Source;
use tenter_core::{Confidence, Ratio, Unit};

use self::work::{list, measured};
use crate::finding::handle::Handle;
use crate::finding::plan::{PlanPart, PlanTopic, PlannedRole, Step, ViewPlan, part_of};
use crate::finding::size::{Size, SizeLine};
use crate::log::Tag;
use crate::plain::isolated;
use crate::words::advice::Spoken;
use crate::words::counts::DISAGREE;
use crate::words::pair::{self, named};
use crate::words::pattern::asks;
use crate::words::{amounts, answer, care, figures, handle, quantity, size, terms};

/// A part of the plan under its head.
#[derive(Debug, Serialize)]
pub struct Section {
    /// Its head.
    pub head: String,
    /// Whether it is done.
    pub done: bool,
    /// Its lines.
    pub lines: Vec<Spoken>,
}

/// The plan, part by part, the cloths first.
#[must_use]
pub fn sections(plan: &ViewPlan, unit: Unit) -> Vec<Section> {
    let cloths = Section {
        head: "cloths".to_owned(),
        done: false,
        lines: plan.roles.iter().map(|role| cloth(role, plan.confidence, unit)).collect(),
    };
    let parts = plan.parts.iter().map(|part| section(plan, part, unit));
    core::iter::once(cloths).filter(|cloths| !cloths.lines.is_empty()).chain(parts).collect()
}

/// One part.
#[must_use]
pub fn section(plan: &ViewPlan, part: &PlanPart, unit: Unit) -> Section {
    let mut lines: Vec<Spoken> = part.steps.iter().flat_map(|step| speak(plan, step, unit)).collect();
    let mut said: Vec<String> = Vec::new();
    lines.retain(|line| {
        let text = format!("{} {}", line.about, line.text);
        let is_new = !said.contains(&text);
        said.push(text);
        is_new
    });
    let done = part.topic.stage().is_some_and(|stage| plan.done.contains(&stage));
    Section { head: head(part), done, lines }
}

/// What is planned; none for a general plan.
#[must_use]
pub fn garment(plan: &ViewPlan) -> Option<String> {
    let (kind, details) = plan.garment?;
    let name = match (kind, details.has(Detail::Child)) {
        (GarmentKind::ChildsOuterwear, _) | (_, false) => work::kind(kind).to_owned(),
        (_, true) => format!("{} for a child", work::kind(kind)),
    };
    // A name that says it already needs no word more.
    let told = |detail: &Detail| match detail {
        Detail::Child => true,
        Detail::Lining => matches!(kind, GarmentKind::LinedCoat),
        Detail::Hood => matches!(kind, GarmentKind::HoodedPullover),
        _ => false,
    };
    let has: Vec<&str> = details.iter().filter(|detail| !told(detail)).map(|one| work::detail(kind, one)).collect();
    let with = if has.is_empty() { String::new() } else { format!(" with {}", list(&has)) };
    Some(format!("planned as {name}{with}"))
}

fn head(part: &PlanPart) -> String {
    let does = |wanted: &[Work]| {
        part.steps.iter().any(|step| matches!(step, Step::Work { work, .. } if wanted.contains(work)))
    };
    match part.topic {
        PlanTopic::Buying => work::stage(Stage::Buy).to_owned(),
        PlanTopic::Check => "before you begin".to_owned(),
        PlanTopic::Stage(Stage::Facing) => {
            let hook = does(&[Work::HookAndEye]).then_some("hook and eye");
            let facing = does(&[Work::SewFacing]).then_some("facing");
            let lining = does(&[Work::SewLining, Work::HangLining]).then_some("lining");
            let buttons = does(&[Work::Buttonholes]).then_some("buttonholes");
            let fastening = does(&[Work::FastenBand]).then_some("fastening");
            list(&[facing, lining, buttons, fastening, hook].into_iter().flatten().collect::<Vec<_>>())
        }
        PlanTopic::Stage(Stage::Mark)
            if !part.steps.iter().any(|step| matches!(step, Step::StayStitch(..) | Step::StaySeams(..))) =>
        {
            "mark".to_owned()
        }
        PlanTopic::Stage(stage) => work::stage(stage).to_owned(),
        PlanTopic::Care => "take care".to_owned(),
    }
}

/// A role with its cloth.
fn cloth(planned: &PlannedRole, confidence: Confidence, unit: Unit) -> Spoken {
    let role = isolated(&planned.role.name);
    let text = match &planned.cloth {
        None => format!("{role}: nothing in the stash; see \"to buy\""),
        Some(taken) => {
            let chance = if taken.disagrees { Some(DISAGREE.to_owned()) } else { taken.chance.map(terms::percent) };
            let chance = chance.map(|chance| format!(" ({chance})")).unwrap_or_default();
            let mut text = format!("{role}: {}, {}{chance}", named(&taken.cloth), answer::word(taken.verdict));
            let poorly = poorly(planned, confidence);
            for more in [poorly, takes(planned, unit), missing(planned, unit)].into_iter().flatten() {
                text.push_str(", ");
                text.push_str(&more);
            }
            text
        }
    };
    Spoken::new("role", text, asks(&planned.role, unit), Source::Own)
}

/// That the cloth of a role comes back poorly.
#[must_use]
pub fn poorly(planned: &PlannedRole, confidence: Confidence) -> Option<String> {
    figures::poorly(planned.cloth.as_ref()?.poorly.as_ref()?, confidence)
}

/// What a role takes of its cloth.
#[must_use]
pub fn takes(planned: &PlannedRole, unit: Unit) -> Option<String> {
    let needed = planned.cloth.as_ref()?.needed?;
    let by_area = if needed.by_area { format!(", {}", terms::BY_AREA) } else { String::new() };
    Some(format!("takes {}{by_area}", quantity::cloth_needed(needed.length, unit)))
}

/// What is missing of the cloth of a role.
#[must_use]
pub fn missing(planned: &PlannedRole, unit: Unit) -> Option<String> {
    let missing = planned.cloth.as_ref()?.missing?;
    Some(format!("{} missing", quantity::cloth_needed(missing, unit)))
}

fn speak(plan: &ViewPlan, step: &Step, unit: Unit) -> Vec<Spoken> {
    let own = |about, text: String, why: String| Spoken::new(about, text, why, Source::Own);
    let line = match step {
        Step::Wash { cloth, fibre, care } => {
            let line = care::made_ready(care);
            let fibre = if fibre.is_empty() { String::new() } else { format!("; fibre: {}", isolated(fibre)) };
            Spoken { text: format!("{}: {}", named(cloth), line.text), why: format!("{}{fibre}", line.why), ..line }
        }
        Step::Press { cloth, care } => {
            let about = |line: Spoken| Spoken { text: format!("{}: {}", named(cloth), line.text), ..line };
            // Clips in the place of pins are told where the cloth is laid.
            let pinned = care::pinned(care).filter(|_| plan.garment.is_none() || care.pins.rule != Pins::Never);
            return core::iter::once(care::ironed(care)).chain(pinned).map(about).collect();
        }
        Step::MarkBeforeWash(cloths) => {
            let names: Vec<String> = cloths.iter().map(named).collect();
            let names = list(&names.iter().map(String::as_str).collect::<Vec<_>>());
            let length = if unit == Unit::Inch { "20 in" } else { "50 cm" };
            let text = format!("{length} both ways on {names} before the wash, and measure the marks after it");
            let tags: Vec<String> = cloths.iter().map(|cloth| format!("tenter wash {}", cloth.tag)).collect();
            own("mark", text, format!("the washing change is not known; store it with {}", tags.join(", ")))
        }
        Step::Pull { cloth, grain, role } => {
            let why = format!("{} asks it; tenter pull {} --grain {}", isolated(role), cloth.tag, grain.word());
            own("pull", format!("{} {}", named(cloth), grain.word()), why)
        }
        Step::Grain { roles, round } => {
            let why = |(role, [across, along]): &(String, [Ratio; 2])| {
                format!("{}: {} % across, {} % along", isolated(role), across.percent(1), along.percent(1))
            };
            let names: Vec<String> = roles.iter().map(|(role, _)| isolated(role)).collect();
            let their = if names.len() == 1 { "its" } else { "their" };
            let names = list(&names.iter().map(String::as_str).collect::<Vec<_>>());
            let text = format!("{names} with {their} greater stretch, {}, round the body", round.word());
            let why = roles.iter().map(why).collect::<Vec<_>>().join("; ");
            Spoken::new("lay", text, why, Source::CommonPractice)
        }
        Step::General => {
            let text = "which kind of garment it is: without that this plan lists only what holds for any garment; pass --kind \
                        trousers or another";
            own("say", text.to_owned(), "the view has no garment kind".to_owned())
        }
        Step::SayHowOpened(kind) => cloth::how_opened(*kind),
        Step::Settle { cloth, role, reason, figure, settle, rest_seconds } => cloth::settle(
            (cloth, role),
            *reason,
            figure.as_ref(),
            settle.as_ref(),
            (*rest_seconds, plan.confidence, unit),
        ),
        Step::LeaveUnwashed(cloths) => {
            let names: Vec<String> = cloths.iter().map(named).collect();
            let names = list(&names.iter().map(String::as_str).collect::<Vec<_>>());
            let why = "what is never washed shrinks nothing that is sewn to it".to_owned();
            own("leave", format!("{names} unwashed: the garment will not be washed"), why)
        }
        Step::FusibleOnNoHeat { interfacing, cloth } => {
            let text =
                format!("an interfacing to sew in, instead of {}: {} takes no heat", named(interfacing), named(cloth));
            own("take", text, "a fusible melts at a heat that harms the finish".to_owned())
        }
        Step::Notion { notion, lengths, why, source } => cloth::notion(plan, *notion, lengths, (*why, *source), unit),
        Step::Tape { seams, mouths, source } => {
            let seams = seams.iter().map(|seam| seam::taped(*seam));
            let at: Vec<&str> = seams.chain(mouths.then_some("the pocket mouths")).collect();
            let text = format!("narrow tape that does not stretch, for {}", list(&at));
            Spoken::new("buy", text, "they must keep their length", *source)
        }
        Step::WaistEdge(edge) => cloth::waist_edge(edge, plan.confidence),
        Step::Casing { work, tunnel, width, unit } => cloth::casing(*work, tunnel, *width, *unit),
        Step::FuseCool(cloth) => {
            let text =
                format!("an interfacing that fuses at 110 °C, or one to sew in: {} takes no more heat", named(cloth));
            Spoken::new("take", text, "one dot on its label, or its fibre is not known", Dots::SOURCE)
        }
        Step::SeekPart(part) => {
            let text = format!("for the {}; the view has no role for it", cloth::part(*part));
            own("cloth", text, "add one with tenter pattern add, and its length is added up".to_owned())
        }
        Step::Opacity { by, mass, wet, source } => cloth::opacity(*by, *mass, *wet, *source),
        Step::Reach { grain, by, left } => cloth::reach(*grain, *by, *left),
        Step::Ease(worn) => cloth::ease(worn),
        Step::StaySeams(seams, source) => {
            let within = measured("within {3 mm|1/8 in} of the seam line, from wide to narrow", unit);
            let text = format!("the {} edges, {within}", seam::places(seams));
            Spoken::new("stay-stitch", text, "it stretches that way while it is handled", *source)
        }
        Step::SayHowJoined { role, to } => {
            let (role, to) = (isolated(role), isolated(to));
            let text = format!("how {role} is joined to {to}; pass --seam '{to}+{role}=60cm lengthwise'");
            own("say", text, "its name does not say where it is sewn on".to_owned())
        }
        Step::PullForSeam { cloth, grain } => {
            let why = format!("two cloths meet in a seam; tenter pull {} --grain {}", cloth.tag, grain.word());
            own("pull", format!("{} {}, the way its seam runs", named(cloth), grain.word()), why)
        }
        Step::WashNotions(notions, source) => {
            let names: Vec<&str> = notions.iter().map(|one| work::notion(*one)).collect();
            let text = format!("{} too, unless all polyester", list(&names));
            Spoken::new("wash", text, "what shrinks later puckers its seam", *source)
        }
        Step::Allowance { most, others, tags } => {
            let mut text = format!("{} at the seams", handle::allowance(*most, unit));
            for (seams, other) in others {
                text.push_str(&format!(", {} at {}", handle::allowance(*other, unit), seam::places(seams)));
            }
            let why = "what stitch and finish of the seam need".to_owned();
            Spoken::new("allow", format!("{text}{}", whose(tags)), why, most.source)
        }
        Step::Stitch { sewing, tags } => {
            let line = handle::speak(&Handle::Stitch(Vec::new(), *sewing), None, plan.confidence, unit);
            let asks_none = sewing.basis == Basis::Asked && sewing.wanted <= Ratio::ZERO;
            let why = if asks_none { "the view asks no give along them".to_owned() } else { line.why };
            Spoken { text: format!("{}{}", handle::sewn(sewing), whose(tags)), why, ..line }
        }
        Step::Finish { line, tags } => {
            let spoken = handle::speak(&Handle::Finish(Vec::new(), *line), None, plan.confidence, unit);
            Spoken { text: format!("{}{}", handle::finish(line, unit), whose(tags)), ..spoken }
        }
        Step::Interface { zones, holds, source } => {
            let names: Vec<&str> =
                zones.iter().map(|one| work::zone(*one, plan.garment.map(|(kind, _)| kind))).collect();
            let (how, why) = match holds {
                Some(Holds::Firm) => (", held firm", "a closing and a pocket must not grow"),
                Some(Holds::Gives) => (", with one that gives as the cloth does", "it moves with the body"),
                None => ("", "it is handled or holds a fastening"),
            };
            Spoken::new("interface", format!("{}{how}", measured(&list(&names), unit)), why, *source)
        }
        Step::Mark(points, source) => {
            let names: Vec<&str> = points.iter().map(|one| work::point(*one)).collect();
            Spoken::new("mark", list(&names), "while the pattern still lies on the cloth", *source)
        }
        Step::StayStitch(edges, source) => {
            let names: Vec<&str> = edges.iter().map(|one| work::edge(*one)).collect();
            let text = measured(&format!("{}, within {{3 mm|1/8 in}} of the seam line", list(&names)), unit);
            Spoken::new("stay-stitch", text, "a curved edge stretches while it is handled", *source)
        }
        Step::Hem { hems, sewing, why, source } => {
            let names: Vec<&str> = hems.iter().map(|one| work::hem(*one)).collect();
            let stitch = sewing.as_ref().map(|sewing| format!(": {}", handle::sewn(sewing))).unwrap_or_default();
            let why = work::why(*why, plan.garment.map(|(kind, _)| kind));
            Spoken::new("hem", format!("{}{stitch}", list(&names)), why, *source)
        }
        Step::Work { work, tags, why, source } => {
            let (verb, object) = work::told(*work);
            let why = work::why(*why, plan.garment.map(|(kind, _)| kind));
            Spoken::new(verb, format!("{}{}", measured(object, unit), whose(tags)), why, *source)
        }
        Step::Sew(step) => {
            let why = work::why(step.why, plan.garment.map(|(kind, _)| kind));
            Spoken::new("sew", seam::sewn(step, unit), why, step.source)
        }
        Step::Pair { seams, pairing, topic } => {
            let advice = pairing.pair.advice();
            let lines = advice.iter().zip(pair::spoken(pairing));
            let here = lines.filter(|(line, _)| part_of(line.advice) == Some(*topic)).map(|(_, spoken)| spoken);
            let at = match (topic, seams.as_slice()) {
                (PlanTopic::Stage(Stage::Seams), _) | (_, []) => String::new(),
                (_, seams) => format!("{}: ", seam::places(seams)),
            };
            return here.map(|spoken| Spoken { text: format!("{at}{}", spoken.text), ..spoken }).collect();
        }
        Step::Handle { handle, most, tags } => {
            let line = handle::speak(handle, *most, plan.confidence, unit);
            Spoken { text: format!("{}{}", line.text, whose(tags)), ..line }
        }
        Step::Size(SizeLine { size: Size::Cord { cord, .. }, unit }) => {
            let line = size::speak(&SizeLine { size: Size::Cord { cord: *cord, edge: cord.cut }, unit: *unit });
            let [cut, end] = [cord.cut, cord.end].map(|length| quantity::to_sew(length, *unit));
            let text = format!("the cord {cut} long, {end} of it for each end, and seal the ends");
            Spoken { about: "cut", text, why: "the edge laid open, and both ends".to_owned(), ..line }
        }
        Step::Size(line) => size::speak(line),
        Step::Seek(role) => {
            let text = format!("for {}: {}", isolated(&role.name), asks(role, unit));
            own("cloth", text, "nothing in the stash meets it".to_owned())
        }
        Step::Buy(amount) => return amounts::to_buy(amount, unit).into_iter().collect(),
        Step::Caution(caution) => return terms::cautions(&[*caution]),
        Step::Cord(cord) => terms::cord(cord, unit),
    };
    vec![line]
}

/// The cloths that a line is for, by tag; nothing where it is for all.
fn whose(tags: &[Tag]) -> String {
    let tags: Vec<String> = tags.iter().map(ToString::to_string).collect();
    if tags.is_empty() { String::new() } else { format!(" ({})", tags.join(", ")) }
}
