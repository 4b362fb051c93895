//! The plan of a view, in words.

use serde::Serialize;
use tenter_core::Unit;
use tenter_core::making::source::Source;

use crate::finding::plan::{PlanPart, PlanTopic, Planned, Step, ViewPlan};
use crate::plain::isolated;
use crate::words::advice::Spoken;
use crate::words::counts::DISAGREE;
use crate::words::pair::{self, named};
use crate::words::pattern::asks;
use crate::words::{amounts, answer, care as words_of_care, handle, quantity, size, terms};

/// A part of the plan under its head.
#[derive(Debug, Serialize)]
pub struct Section {
    /// Its head.
    pub head: String,
    /// Its lines.
    pub lines: Vec<Spoken>,
}

/// The plan, part by part, the cloths first.
#[must_use]
pub fn sections(plan: &ViewPlan, unit: Unit) -> Vec<Section> {
    let cloths =
        Section { head: "cloths".to_owned(), lines: plan.roles.iter().map(|role| cloth(role, unit)).collect() };
    let parts = plan.parts.iter().map(|part| section(plan, part, unit));
    core::iter::once(cloths).filter(|cloths| !cloths.lines.is_empty()).chain(parts).collect()
}

/// One part.
#[must_use]
pub fn section(plan: &ViewPlan, part: &PlanPart, unit: Unit) -> Section {
    let mut lines: Vec<Spoken> = part.steps.iter().flat_map(|step| speak(plan, step, unit)).collect();
    if part.topic == PlanTopic::Cutting {
        lines.dedup_by(|one, other| one.text == other.text);
    }
    Section { head: head(&part.topic, unit), lines }
}

fn head(topic: &PlanTopic, unit: Unit) -> String {
    match topic {
        PlanTopic::Before => "before cutting".to_owned(),
        PlanTopic::Cutting => "cutting".to_owned(),
        PlanTopic::Seam { roles: [one, other], length } => {
            format!("seam {} + {}, {}", isolated(one), isolated(other), quantity::width(*length, unit))
        }
        PlanTopic::Sewing(cloth) => format!("sewing {}", named(cloth)),
        PlanTopic::Finishing => "stabilise and finish, where the garment has it".to_owned(),
        PlanTopic::Notions => "zips and elastic".to_owned(),
        PlanTopic::Buying => "to buy".to_owned(),
        PlanTopic::Care => "take care".to_owned(),
    }
}

/// A role with its cloth.
fn cloth(planned: &Planned, unit: Unit) -> Spoken {
    let role = isolated(&planned.role.name);
    let text = match &planned.cloth {
        None => format!("{role}: nothing in the stash; see below"),
        Some(taken) => {
            let chance = if taken.disagrees { Some(DISAGREE.to_owned()) } else { taken.chance.map(terms::percent) };
            let chance = chance.map(|chance| format!(" ({chance})")).unwrap_or_default();
            let mut text = format!("{role}: {}, {}{chance}", named(&taken.cloth), answer::word(taken.verdict));
            for more in [takes(planned, unit), missing(planned, unit)].into_iter().flatten() {
                text.push_str(", ");
                text.push_str(&more);
            }
            text
        }
    };
    Spoken::new("role", text, asks(&planned.role, unit), Source::Own)
}

/// What a role takes of its cloth.
#[must_use]
pub fn takes(planned: &Planned, unit: Unit) -> Option<String> {
    let needed = planned.cloth.as_ref()?.needed?;
    let by_area = if needed.by_area { format!(", {}", terms::BY_AREA) } else { String::new() };
    Some(format!("takes {}{by_area}", quantity::cloth_needed(needed.length, unit)))
}

/// What is missing of the cloth of a role.
#[must_use]
pub fn missing(planned: &Planned, unit: Unit) -> Option<String> {
    let missing = planned.cloth.as_ref()?.missing?;
    Some(format!("{} missing", quantity::cloth_needed(missing, unit)))
}

fn speak(plan: &ViewPlan, step: &Step, unit: Unit) -> Vec<Spoken> {
    let own = |about, text: String, why: String| Spoken::new(about, text, why, Source::Own);
    let line = match step {
        Step::Wash { cloth, fibre, care } => {
            let fibre = if fibre.is_empty() { String::new() } else { format!("; fibre: {}", isolated(fibre)) };
            let about = |line: Spoken| Spoken {
                text: format!("{}: {}", named(cloth), line.text),
                why: format!("{}{fibre}", line.why),
                ..line
            };
            return words_of_care::spoken(care).into_iter().map(about).collect();
        }
        Step::MarkBeforeWash(cloth) => {
            let text =
                format!("{}: mark 50 cm both ways before the wash, and measure the marks after it", named(cloth));
            own("wash", text, format!("its washing change is not known; store it with tenter wash {}", cloth.tag))
        }
        Step::Pull { cloth, grain, role } => {
            let why = format!("{} asks it; tenter pull {} --grain {}", isolated(role), cloth.tag, grain.word());
            own("pull", format!("{}: pull it {}", named(cloth), grain.word()), why)
        }
        Step::Grain { role, round, stretch: [across, along] } => {
            let why = format!("{} % across, {} % along", across.percent(1), along.percent(1));
            let text = format!("{}: its greater stretch, {}, goes round the body", isolated(role), round.word());
            let source = Source::Published("Sewing Swimsuits and Leotards, book extract, undated");
            Spoken::new("grain", text, why, source)
        }
        Step::OneWay(role) => {
            let source = Source::Published("general fabric information, undated");
            Spoken::new("layout", format!("{}: all pieces one way up", isolated(role)), "it is a knit", source)
        }
        Step::SameCloth => {
            own("sew", "the same cloth on both sides: nothing special".to_owned(), "one fabric".to_owned())
        }
        Step::PullForSeam([one, other]) => {
            let text = format!("pull {} and {} crosswise first, then plan this seam", named(one), named(other));
            own("measure", text, "a grain was not pulled".to_owned())
        }
        Step::Pair(pairing) => return pair::spoken(pairing),
        Step::Handle { handle, most, tags } => {
            let line = handle::speak(handle, *most, plan.confidence);
            let tags: Vec<String> = tags.iter().map(ToString::to_string).collect();
            let whose = if tags.is_empty() { String::new() } else { format!(" ({})", tags.join(", ")) };
            Spoken { text: format!("{}{whose}", line.text), ..line }
        }
        Step::Size(line) => size::speak(line),
        Step::Seek(role) => {
            let text = format!("for {}: {}", isolated(&role.name), asks(role, unit));
            own("cloth", text, "nothing in the stash meets it".to_owned())
        }
        Step::Buy(amount) => return amounts::to_buy(amount, unit).into_iter().collect(),
        Step::Caution(caution) => return terms::cautions(&[*caution]),
        Step::Cord(cord) => terms::cord(cord),
    };
    vec![line]
}
