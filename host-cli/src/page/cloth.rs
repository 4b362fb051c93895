//! One cloth as the swatch book shows it.

use tenter_core::{Ask, Confidence, Figure, Figures, Grain, Length, Ratio, Rebound};

use super::{class, together};
use crate::finding::cloth::Shown;
use crate::finding::cloth::Standing;
use crate::finding::drawn::Course;
use crate::finding::fit::Candidate;
use crate::finding::fit::Fitted;
use crate::finding::fit::Reason;
use crate::finding::memory::{colour, made_of};
use crate::finding::verdict::Verdict;
use crate::log::{Fabric, Role, StoredTest, Tag};
use crate::picture::drawn;
use crate::words::answer;
use crate::words::cloth as about;
use crate::words::figures::{grade, recovery_grade, ruled_out};
use crate::words::fit::{because, not_asked};
use crate::words::page::told;
use crate::words::terms as words;
use crate::words::terms::duration;
use crate::words::{check, counts, memory, quantity, washing};

/// A cloth, ready for the template.
#[derive(Debug)]
pub struct ClothArticle {
    pub id: String,
    pub tag: Tag,
    pub name: String,
    pub facts: String,
    pub on_hand: String,
    /// Its colour as a style sheet takes it; empty where it has no photograph.
    pub chip: String,
    pub photos: Vec<Photograph>,
    pub place_label: &'static str,
    pub place: String,
    pub price: String,
    pub note: String,
    pub made: &'static str,
    pub lies: &'static str,
    /// Percent, as a script reads it; empty where it was not measured.
    pub across: String,
    pub along: String,
    /// Percent, as a person reads it.
    pub across_words: String,
    pub along_words: String,
    pub answers: Vec<Judged>,
    pub asked_by: String,
    pub gauge: String,
    pub growths: Vec<Grown>,
    pub rows: Vec<SourcedLine>,
    pub tests: Vec<Test>,
    pub history: Vec<(String, String)>,
}

/// A photograph that is shown.
#[derive(Debug)]
pub struct Photograph {
    /// The picture itself.
    pub address: String,
    /// What it shows.
    pub note: String,
}

/// The answer for a role.
#[derive(Debug)]
pub struct Judged {
    pub role: String,
    pub sign: &'static str,
    pub word: &'static str,
    pub class: &'static str,
    pub why: String,
}

/// Growth along a grain.
#[derive(Debug)]
pub struct Grown {
    pub picture: String,
    pub words: String,
}

/// A label, what is said, and where it comes from.
#[derive(Debug)]
pub struct SourcedLine {
    pub label: &'static str,
    pub words: String,
    pub source: String,
}

/// A pull test.
#[derive(Debug)]
pub struct Test {
    pub pulled: String,
    pub grain: &'static str,
    pub marks: String,
    pub to: String,
    pub stretch: String,
    pub growth: String,
    pub standing: String,
}

impl ClothArticle {
    /// A cloth with everything that is known of it, beside what a view asks.
    pub fn of(shown: &Shown<'_>, view: Option<&Fitted<'_>>) -> Self {
        let fabric = shown.fabric;
        let judged: Vec<(&Role, &Candidate<'_>)> = view.map(|view| judged(fabric, view)).unwrap_or_default();
        // Beside the demand of the role that it suits best; of several the first.
        let beside = judged.iter().filter(|(_, one)| !matches!(one.reason, Reason::OtherKind(_)));
        let beside = beside
            .min_by_key(|(_, one)| Verdict::ALL.iter().position(|known| *known == one.verdict()))
            .map(|(role, _)| *role);
        let stretch = |grain| {
            let standing = shown.standing.iter().find(|standing| standing.grain == grain)?;
            Some(standing.figures.stretch.ratio)
        };
        let (across, along) = (stretch(Grain::Crosswise), stretch(Grain::Lengthwise));
        let for_script = |ratio: Option<Ratio>| ratio.map(|ratio| ratio.percent(2).to_string()).unwrap_or_default();
        let for_people = |ratio: Option<Ratio>| ratio.map_or_else(|| "–".to_owned(), quantity::percent);
        let (place_label, place, price) = place(fabric);
        Self {
            id: fabric.id.to_string().to_lowercase(),
            tag: fabric.tag,
            name: fabric.name.clone(),
            facts: facts(shown),
            on_hand: fabric.length.map(|length| quantity::cloth(length, shown.unit)).unwrap_or_default(),
            chip: colour(fabric).map(|colour| colour.to_string()).unwrap_or_default(),
            photos: photographs(shown),
            place_label,
            place,
            price,
            note: fabric.note.clone(),
            made: fabric.construction.word(),
            lies: if fabric.is_seen() { "in a shop" } else { "at home" },
            across: for_script(across),
            along: for_script(along),
            across_words: for_people(across),
            along_words: for_people(along),
            answers: view
                .map(|view| judged.iter().map(|(role, one)| judgement(role, one, view)).collect())
                .unwrap_or_default(),
            asked_by: beside.map(|role| role.name.clone()).unwrap_or_default(),
            gauge: if shown.standing.is_empty() {
                String::new()
            } else {
                drawn::stretch(shown, beside, false).inline()
            },
            growths: shown.standing.iter().filter_map(|standing| grown(shown, standing, beside)).collect(),
            rows: rows(shown),
            tests: shown.tests.iter().rev().map(|test| tested(shown, test)).collect(),
            history: about::steps(shown),
        }
    }
}

/// The small pictures of the photographs that are here and were not retired.
fn photographs(shown: &Shown<'_>) -> Vec<Photograph> {
    let there = shown.photos.iter().filter_map(|seen| Some((seen.thumbnail.as_ref()?, &seen.photo.said)));
    there.map(|(thumbnail, said)| Photograph { address: thumbnail.address(), note: said.note.clone() }).collect()
}

/// The cloth in every role of the view.
fn judged<'v>(fabric: &Fabric, view: &'v Fitted<'_>) -> Vec<(&'v Role, &'v Candidate<'v>)> {
    let in_role = |role: &'v crate::finding::fit::RoleFit<'_>| {
        let found = role.candidates.iter().find(|candidate| candidate.fabric.id == fabric.id)?;
        Some((role.role, found))
    };
    view.roles.iter().filter_map(in_role).collect()
}

fn judgement(role: &Role, candidate: &Candidate<'_>, view: &Fitted<'_>) -> Judged {
    let verdict = candidate.verdict();
    let why = if let Reason::OtherKind(feature) = candidate.reason {
        format!("it is {}", not_asked(feature, role))
    } else {
        because(candidate, view)
    };
    Judged {
        role: role.name.clone(),
        sign: answer::sign(verdict),
        word: answer::word(verdict),
        class: class(verdict),
        why: told(&why),
    }
}

fn facts(shown: &Shown<'_>) -> String {
    about::facts(shown.fabric, shown.unit).join(" · ")
}

fn place(fabric: &Fabric) -> (&'static str, String, String) {
    match &fabric.shop {
        Some(shop) => {
            let price = shop.price.as_ref().map(|price| format!(", {price}")).unwrap_or_default();
            ("Seen at", shop.place.clone(), price)
        }
        None => ("Where", fabric.place.clone(), String::new()),
    }
}

/// A picture where there is a course to see.
fn grown(shown: &Shown<'_>, standing: &Standing, beside: Option<&Role>) -> Option<Grown> {
    let course = Course::of(shown, standing, beside);
    let words = format!("growth, {}", course.grain.word());
    course.is_worth_drawing().then(|| Grown { picture: drawn::growth(shown, &course).inline(), words })
}

/// What was read after release, in words.
fn rested(standing: &Standing, confidence: Confidence) -> Option<String> {
    let rest = standing.figures.rest?;
    let rebound = Rebound::of(&standing.figures, confidence);
    let mut words = vec![line_of("growth", &rest.growth, grade(rebound, Ask::Growth), confidence)];
    if let Some(recovery) = rest.recovery {
        words.push(line_of("recovery", &recovery, recovery_grade(rebound, &standing.notes), confidence));
    }
    Some(format!("{}, {} after release", words.join("; "), duration(rest.seconds)))
}

fn line_of(what: &str, figure: &Figure, grade: Option<&str>, confidence: Confidence) -> String {
    let line = format!("{what} {}", words::figure(figure, confidence));
    grade.map_or(line.clone(), |grade| format!("{line}, {grade}"))
}

fn rows(shown: &Shown<'_>) -> Vec<SourcedLine> {
    let mut rows = Vec::new();
    // What a person wrote stands as it is; of our words those that name a command are left out.
    let mut add = |label, words: String, source| {
        let words = if matches!(label, "learned" | "made" | "kept") { together(&words) } else { told(&words) };
        if !words.is_empty() {
            rows.push(SourcedLine { label, words, source });
        }
    };
    if shown.standing.is_empty() {
        add("stretch", "not measured yet".to_owned(), String::new());
    }
    for standing in &shown.standing {
        if let Some(words) = rested(standing, shown.confidence) {
            add(standing.grain.word(), words, String::new());
        }
        if let Some(disagreement) = &standing.disagrees {
            let words = counts::disagreement(disagreement, shown.confidence, shown.here);
            add(counts::DISAGREE, format!("{}: {words}", standing.grain.word()), String::new());
        }
        if let Some(words) = counts::from(standing, shown.unit) {
            add("from", format!("{}: {words}", standing.grain.word()), String::new());
        }
    }
    for (grain, stands, marks) in shown.washing() {
        if let Some(line) = washing::line(grain, &stands, marks, (shown.confidence, shown.unit)) {
            add("washing", format!("{} {}", line.about, line.text), line.source);
        }
    }
    for line in about::care(shown.fabric) {
        add(line.about, line.text, line.source);
    }
    for kept in shown.kept {
        add("kept", memory::kept(kept.length, &kept.garment, shown.unit), String::new());
    }
    for (number, lesson) in (1..).zip(&shown.fabric.lessons).filter(|(_, lesson)| !lesson.dropped) {
        add("learned", memory::lesson(number, lesson, shown.garments, shown.here), String::new());
    }
    for garment in made_of(shown.fabric, shown.garments) {
        add("made", memory::called(garment), String::new());
    }
    if let Some(ruled_out) = shown.comes_back_worst().and_then(|worst| ruled_out(worst, shown.confidence)) {
        add("suits", ruled_out, String::new());
    }
    for suit in shown.suits() {
        add("suits", words::garment(suit), suit.source.to_string());
    }
    if let Some(repeatability) = shown.repeatability() {
        add("trust", check::repeatability(&repeatability), String::new());
    }
    rows
}

fn tested(shown: &Shown<'_>, stored: &StoredTest) -> Test {
    let (said, test) = (&stored.said, &stored.said.test);
    let scatter = shown.pooled.scatter_for(stored.said.pulled_by, shown.fabric.construction, test);
    let figures = Figures::of(test, scatter).ok();
    let rest = figures.and_then(|figures| figures.rest);
    let mm = |length: &Length| quantity::reading(*length, shown.unit);
    Test {
        pulled: quantity::pulled(said, shown.here),
        grain: test.grain().word(),
        marks: mm(&test.gauge()),
        to: test.pulls().iter().map(mm).collect::<Vec<_>>().join(", "),
        stretch: figures.map(|figures| quantity::percent(figures.stretch.ratio)).unwrap_or_default(),
        growth: rest.map(|rest| quantity::percent(rest.growth.ratio)).unwrap_or_default(),
        standing: about::status(shown, stored),
    }
}
