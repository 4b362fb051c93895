//! The plan sheet of a view as a page: from cutting to finishing.

use askama::Template;

use super::{rendered, together};
use crate::finding::fit::Candidate;
use crate::finding::plan::CLOTHS;
use crate::finding::plan::Section;
use crate::finding::plan::Sheet;
use crate::finding::plan::sections;
use crate::words::answer;
use crate::words::fit::{chance, missing};
use crate::words::pattern::asks;
use crate::words::quantity;
use crate::words::terms as words;

/// A role with what was chosen for it.
#[derive(Debug)]
struct Role {
    name: String,
    asks: String,
    chosen: Option<Chosen>,
}

/// A fabric that was chosen.
#[derive(Debug)]
struct Chosen {
    tag: u16,
    name: String,
    sign: &'static str,
    word: &'static str,
    why: String,
    gauge: String,
}

/// A part of the sheet.
#[derive(Debug)]
struct Part {
    head: String,
    /// Cautions are heeded, not ticked off.
    care: bool,
    lines: Vec<Line>,
}

/// A line to tick off.
#[derive(Debug)]
struct Line {
    about: &'static str,
    text: String,
    why: String,
}

#[derive(Template)]
#[template(path = "sheet.html")]
struct Page<'a> {
    title: String,
    pattern: &'a str,
    view: &'a str,
    made: String,
    roles: Vec<Role>,
    sections: Vec<Part>,
    trust: String,
}

/// The page; `gauges` are the pictures of the chosen fabrics beside what is asked, one a role, empty where none was
/// chosen; `with_why` puts the numbers, the rule and its source under each line.
#[must_use]
pub fn page(sheet: &Sheet<'_>, gauges: &[String], made: &str, with_why: bool) -> String {
    let role = |(place, chosen): (usize, &crate::finding::plan::Chosen<'_>)| Role {
        name: chosen.role.name.clone(),
        asks: together(&asks(chosen.role, sheet.unit)),
        chosen: chosen.candidate.as_ref().map(|candidate| Chosen {
            tag: candidate.fabric.tag,
            name: candidate.fabric.name.clone(),
            sign: answer::sign(candidate.verdict()),
            word: answer::word(candidate.verdict()),
            why: why(candidate, sheet),
            gauge: gauges.get(place).cloned().unwrap_or_default(),
        }),
    };
    rendered(&Page {
        title: format!("{}, view {}: plan", sheet.pattern.name, sheet.view),
        pattern: &sheet.pattern.name,
        view: sheet.view,
        made: format!("Plan from cutting to finishing, made {made}."),
        roles: sheet.chosen.iter().enumerate().map(role).collect(),
        // The first says in words what the pictures show.
        sections: sections(sheet).into_iter().filter(|one| one.head != CLOTHS).map(|one| part(one, with_why)).collect(),
        trust: format!("Answers are {} % sure.", words::whole(sheet.confidence.percent())),
    })
}

/// How likely it will do, what it takes and what is missing of it.
fn why(candidate: &Candidate<'_>, sheet: &Sheet<'_>) -> String {
    let takes = candidate.cloth.needed().map(|needed| {
        let by_area = if needed.by_area { format!(", {}", words::BY_AREA) } else { String::new() };
        format!("takes {}{by_area}", quantity::cloth_to_buy(needed.length, sheet.unit))
    });
    together(
        &[chance(candidate), takes, missing(candidate, sheet.unit)]
            .into_iter()
            .flatten()
            .collect::<Vec<_>>()
            .join("; "),
    )
}

fn part(section: Section, why: bool) -> Part {
    let mut last = "";
    let care = section.head == "take care";
    let lines = section.lines.into_iter().map(|spoken| {
        let about = if spoken.about == last { "" } else { spoken.about };
        last = spoken.about;
        let why = if why { together(&format!("{} [{}]", spoken.why, spoken.source)) } else { String::new() };
        Line { about: if care { "" } else { about }, text: together(&spoken.text), why }
    });
    Part { care, lines: lines.collect(), head: section.head }
}
