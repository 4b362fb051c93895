//! The plan of a view as a page: from cutting to finishing.

use askama::Template;
use tenter_core::{Confidence, Unit};

use super::{rendered, together};
use crate::finding::plan::{PlanPart, PlanTopic, PlannedRole, ViewPlan};
use crate::log::Tag;
use crate::words::fit::chance;
use crate::words::page::told;
use crate::words::pattern::{asks, has_views, titled};
use crate::words::plan::{garment, missing, overall, poorly, section, takes};
use crate::words::{answer, terms};

/// A role with what was chosen for it.
#[derive(Debug)]
struct Role {
    name: String,
    asks: String,
    chosen: Option<Chosen>,
}

/// A cloth that was chosen.
#[derive(Debug)]
struct Chosen {
    tag: Tag,
    name: String,
    sign: &'static str,
    word: &'static str,
    class: &'static str,
    why: String,
    gauge: String,
    photo: String,
}

/// What is drawn of the cloth of a role; empty where none was chosen.
#[derive(Debug, Clone, Default)]
pub struct RolePictures {
    /// Its stretch beside what is asked, as SVG.
    pub gauge: String,
    /// Its first photograph, as an address that holds it; empty where it has none.
    pub photo: String,
}

/// A part of the sheet.
#[derive(Debug)]
struct Printed {
    head: String,
    /// Cautions are heeded, not ticked off.
    care: bool,
    /// It is ticked off.
    done: bool,
    lines: Vec<Line>,
}

/// A line to tick off, or a note.
#[derive(Debug)]
struct Line {
    about: &'static str,
    text: String,
    why: String,
    is_note: bool,
}

#[derive(Template)]
#[template(path = "sheet.html", blocks = ["body"])]
struct Page<'a> {
    title: String,
    pattern: &'a str,
    view: &'a str,
    whose: &'a str,
    made: String,
    garment: String,
    sign: &'static str,
    head: &'static str,
    means: String,
    class: &'static str,
    roles: Vec<Role>,
    sections: Vec<Printed>,
    trust: String,
}

/// The page; `drawn` shows the chosen cloths, one a role; `whose` says for which garment and person it is, `made` on which
/// day; `with_why` puts the numbers, the rule and its source under each line.
#[must_use]
pub fn page(plan: &ViewPlan, drawn: &[RolePictures], whose: (&str, &str), with_why: bool, unit: Unit) -> String {
    rendered(&filled(plan, drawn, whose, with_why, unit))
}

/// What stands on the page, to be put into another: `part` keeps its anchors apart from those of others.
#[must_use]
pub fn body(plan: &ViewPlan, drawn: &[RolePictures], whose: (&str, &str), unit: Unit, part: usize) -> String {
    let body = filled(plan, drawn, whose, false, unit).as_body().render().unwrap_or_default();
    let apart = |name: &str| (format!("{name}=\""), format!("{name}=\"g{part}-"));
    let [id, labelled] = [apart(" id"), apart(" aria-labelledby")];
    let body = body.replace(&id.0, &id.1).replace(&labelled.0, &labelled.1);
    // One page has one main part.
    body.replace("<main>", "<div class=\"main\">").replace("</main>", "</div>")
}

fn filled<'p>(
    plan: &'p ViewPlan,
    drawn: &[RolePictures],
    (whose, made): (&'p str, &str),
    with_why: bool,
    unit: Unit,
) -> Page<'p> {
    let role = |(place, planned): (usize, &PlannedRole)| Role {
        name: planned.role.name.clone(),
        asks: together(&asks(&planned.role, unit)),
        chosen: chosen(planned, drawn.get(place).cloned().unwrap_or_default(), plan.confidence, unit),
    };
    let (head, means) = overall(plan);
    Page {
        sign: answer::sign(plan.overall.verdict),
        head,
        means: together(&means),
        class: super::class(plan.overall.verdict),
        title: format!("{}: plan", titled(&plan.pattern, &plan.view)),
        pattern: &plan.pattern,
        view: if has_views(&plan.view) { &plan.view } else { "" },
        whose,
        made: format!("Plan from the wash to the last press, made {made}."),
        garment: garment(plan).map(|text| format!("It is {}.", together(&text))).unwrap_or_default(),
        roles: plan.roles.iter().enumerate().map(role).collect(),
        sections: plan.parts.iter().map(|part| printed(plan, part, with_why, unit)).collect(),
        trust: format!("Answers are {}\u{a0}% sure.", terms::whole(plan.confidence.percent())),
    }
}

fn chosen(planned: &PlannedRole, drawn: RolePictures, confidence: Confidence, unit: Unit) -> Option<Chosen> {
    let taken = planned.cloth.as_ref()?;
    let chance = chance(taken.answer, taken.chance, taken.disagrees);
    let why = [chance, poorly(planned, confidence), takes(planned, unit), missing(planned, unit)];
    Some(Chosen {
        tag: taken.cloth.tag,
        name: taken.cloth.name.clone(),
        sign: answer::sign(taken.verdict),
        word: answer::word(taken.verdict),
        class: super::class(taken.verdict),
        why: together(&why.into_iter().flatten().collect::<Vec<_>>().join("; ")),
        gauge: drawn.gauge,
        photo: drawn.photo,
    })
}

fn printed(plan: &ViewPlan, part: &PlanPart, why: bool, unit: Unit) -> Printed {
    let care = part.topic == PlanTopic::Care;
    let section = section(plan, part, unit);
    let lines = section.lines.into_iter().map(|spoken| {
        let about = if care { "" } else { spoken.about };
        let why = if why {
            format!("{} [{}]", told(&spoken.why), together(&spoken.source.to_string()))
        } else {
            String::new()
        };
        Line { about, text: told(&spoken.text), why, is_note: spoken.is_note }
    });
    Printed {
        care,
        done: section.done,
        lines: lines.filter(|line| !line.text.is_empty()).collect(),
        head: together(&section.head),
    }
}
