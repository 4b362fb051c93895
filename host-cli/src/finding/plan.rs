//! The plan sheet: one page from cutting to finishing for a view in chosen fabrics.

use serde::Serialize;
use tenter_core::making::caution::{CORDS, Caution, Job, cautions};
use tenter_core::making::handling::{Layer, Layered};
use tenter_core::making::pairing::{Match, Pair, Which};
use tenter_core::making::source::Source;
use tenter_core::making::washing::{PREWASHES, Prewash};
use tenter_core::{Confidence, Grain, Length, Limit, Unit};

use crate::finding::fit::Candidate;
use crate::finding::fit::Stock;
use crate::finding::fit::known::cloth;
use crate::finding::fit::known::edge;
use crate::finding::fit::known::stretch;
use crate::log::{Construction, Fabric, Pattern, Role};
use crate::text::handle::Handled;
use crate::text::handle::layered;
use crate::text::handle::spoken as handled;
use crate::text::lines::Lines;
use crate::text::pair::Paired;
use crate::text::pair::spoken as paired;
use crate::text::pattern::asks;
use crate::words::advice;
use crate::words::advice::Spoken;
use crate::words::bidi::isolated;
use crate::words::quantity;
use crate::words::terms as words;

/// A role with the fabric chosen for it.
#[derive(Debug)]
pub struct Chosen<'a> {
    /// The role.
    pub role: &'a Role,
    /// The fabric with its answer; none where nothing is there for it.
    pub candidate: Option<Candidate<'a>>,
}

/// A seam between two roles.
#[derive(Debug)]
pub struct Seam<'a> {
    /// The roles, by their place in the list.
    pub roles: [usize; 2],
    /// Its length.
    pub length: Length,
    /// The names, for a line about it.
    pub names: [&'a str; 2],
}

/// Everything that the sheet is made of.
#[derive(Debug)]
pub struct Sheet<'a> {
    /// The pattern.
    pub pattern: &'a Pattern,
    /// The view.
    pub view: &'a str,
    /// Roles and their fabrics.
    pub chosen: Vec<Chosen<'a>>,
    /// Seams between them.
    pub seams: Vec<Seam<'a>>,
    /// Zips and elastic, worked out already.
    pub notions: Vec<Spoken>,
    /// What kind of garment it is.
    pub job: Job,
    /// The stash.
    pub stock: &'a Stock,
    /// How sure an answer is.
    pub confidence: Confidence,
    /// The unit of the text.
    pub unit: Unit,
}

/// A part of the sheet under its head.
#[derive(Debug, Serialize)]
pub struct Section {
    /// Its head.
    pub head: String,
    /// Its lines.
    pub lines: Vec<Spoken>,
}

/// The head of the part that says which cloth is for which role.
pub const CLOTHS: &str = "cloths";

/// The sheet, part by part; parts without lines are left out.
#[must_use]
pub fn sections(sheet: &Sheet<'_>) -> Vec<Section> {
    let mut sections = vec![
        Section { head: CLOTHS.to_owned(), lines: cloths(sheet) },
        Section { head: "before cutting".to_owned(), lines: before(sheet) },
        Section { head: "cutting".to_owned(), lines: cutting(sheet) },
    ];
    for seam in &sheet.seams {
        let head = format!(
            "seam {} + {}, {}",
            isolated(seam.names[0]),
            isolated(seam.names[1]),
            quantity::width(seam.length, sheet.unit)
        );
        sections.push(Section { head, lines: joined(sheet, seam) });
    }
    let (own, shared) = sewing(sheet);
    sections.extend(own);
    sections.push(Section { head: "stabilise and finish, where the garment has it".to_owned(), lines: shared });
    sections.push(Section { head: "zips and elastic".to_owned(), lines: sheet.notions.clone() });
    sections.push(Section { head: "to buy".to_owned(), lines: to_buy(sheet) });
    sections.push(Section { head: "take care".to_owned(), lines: care(sheet.job) });
    sections.retain(|section| !section.lines.is_empty());
    sections
}

/// The text.
#[must_use]
pub fn text(sheet: &Sheet<'_>, why: bool, columns: usize) -> String {
    let mut text = Lines::new(columns);
    text.words(&format!("{}, view {}: plan", isolated(&sheet.pattern.name), isolated(sheet.view)));
    for section in sections(sheet) {
        text.blank();
        text.words(&section.head);
        advice::write(&mut text, &section.lines, why);
    }
    text.finish()
}

fn name(fabric: &Fabric) -> String {
    format!("{} {}", fabric.tag, isolated(&fabric.name))
}

/// The fabrics, each once.
fn fabrics<'s>(sheet: &'s Sheet<'_>) -> Vec<&'s Fabric> {
    let mut fabrics: Vec<&Fabric> = Vec::new();
    for chosen in &sheet.chosen {
        if let Some(candidate) = &chosen.candidate
            && !fabrics.iter().any(|known| known.id == candidate.fabric.id)
        {
            fabrics.push(candidate.fabric);
        }
    }
    fabrics
}

fn cloths(sheet: &Sheet<'_>) -> Vec<Spoken> {
    let said = |chosen: &Chosen<'_>| {
        let asked = asks(chosen.role, sheet.unit);
        let text = match &chosen.candidate {
            None => format!("{}: nothing in the stash; see below", isolated(&chosen.role.name)),
            Some(candidate) => {
                let chance = candidate.chance.map(|chance| format!(" ({})", words::percent(chance)));
                let takes = candidate.cloth.needed().map(|needed| {
                    let by_area = if needed.by_area { format!(", {}", words::BY_AREA) } else { String::new() };
                    format!(", takes {}{by_area}", quantity::cloth_to_buy(needed.length, sheet.unit))
                });
                let (role, fabric) = (isolated(&chosen.role.name), name(candidate.fabric));
                let answer = candidate.answer.word();
                format!("{role}: {fabric}, {answer}{}{}", chance.unwrap_or_default(), takes.unwrap_or_default())
            }
        };
        Spoken::new("role", text, asked, Source::Own)
    };
    sheet.chosen.iter().map(said).collect()
}

fn before(sheet: &Sheet<'_>) -> Vec<Spoken> {
    let mut lines = Vec::new();
    for fabric in fabrics(sheet).into_iter().filter(|fabric| !fabric.washed) {
        let Prewash { washes, source, .. } = prewash(fabric);
        let times = if washes == 1 { "once".to_owned() } else { format!("{washes} times") };
        let text = format!("{}: wash it {times} as the garment will be, dry, press", name(fabric));
        lines.push(Spoken::new("wash", text, format!("fibre: {}", isolated(&fabric.fibre)), source));
        if fabric.washed_lengthwise.is_none() {
            let text = format!(
                "{}: mark 50 cm both ways before, and say what became of it: tenter wash {}",
                name(fabric),
                fabric.tag
            );
            lines.push(Spoken::new("wash", text, "its washing change is not known", Source::Own));
        }
    }
    for chosen in &sheet.chosen {
        let Some(candidate) = &chosen.candidate else { continue };
        for grain in chosen.role.grains().filter(|grain| sheet.stock.measured(candidate.fabric, *grain).is_none()) {
            let (tag, grain) = (candidate.fabric.tag, grain.word());
            let text = format!("{}: tenter pull {tag} --grain {grain}", name(candidate.fabric));
            lines.push(Spoken::new("pull", text, format!("{} asks it", isolated(&chosen.role.name)), Source::Own));
        }
    }
    lines
}

/// How often a cloth is washed before it is cut, by the words of its fibre.
fn prewash(fabric: &Fabric) -> Prewash {
    let text = format!("{} {}", fabric.fibre, fabric.name).to_lowercase();
    let knit = fabric.construction == Construction::Knit;
    let wanted = if text.contains("denim") {
        "denim"
    } else if knit && (text.contains("cotton") || text.contains("viscose") || text.contains("rayon")) {
        "cotton and viscose knits"
    } else if text.contains("cotton") {
        "cotton"
    } else {
        "any cloth"
    };
    let found = PREWASHES.iter().find(|row| row.cloth == wanted).copied();
    found.unwrap_or(Prewash { cloth: "any cloth", washes: 1, source: Source::CommonPractice })
}

fn cutting(sheet: &Sheet<'_>) -> Vec<Spoken> {
    let mut lines = Vec::new();
    for chosen in &sheet.chosen {
        let Some(fabric) = chosen.candidate.as_ref().map(|candidate| candidate.fabric) else { continue };
        let stretch = |grain| stretch(fabric, grain, sheet.stock).ok().map(|figure| figure.ratio);
        let role = isolated(&chosen.role.name);
        if let (Some(across), Some(along)) = (stretch(Grain::Crosswise), stretch(Grain::Lengthwise)) {
            let grain = if along > across { "lengthwise" } else { "crosswise" };
            let why = format!("{} % across, {} % along", across.percent(1), along.percent(1));
            let text = format!("{role}: its greater stretch, {grain}, goes round the body");
            lines.push(Spoken::new("grain", text, why, Source::CommonPractice));
        }
        if fabric.construction == Construction::Knit {
            let text = format!("{role}: all pieces one way up");
            lines.push(Spoken::new("layout", text, "it is a knit", Source::CommonPractice));
        }
    }
    lines.dedup_by(|one, other| one.text == other.text);
    lines
}

fn joined(sheet: &Sheet<'_>, seam: &Seam<'_>) -> Vec<Spoken> {
    let fabric = |role: usize| sheet.chosen.get(role)?.candidate.as_ref().map(|candidate| candidate.fabric);
    let (Some(first), Some(second)) = (fabric(seam.roles[0]), fabric(seam.roles[1])) else { return Vec::new() };
    if first.id == second.id {
        let text = "the same cloth on both sides: nothing special";
        return vec![Spoken::new("sew", text, "one fabric", Source::Own)];
    }
    let grain = Grain::Crosswise;
    let (one, other) = (edge(first, grain, sheet.stock), edge(second, grain, sheet.stock));
    let (Ok(one), Ok(other)) = (one, other) else {
        let text = format!("pull {} and {} crosswise first; then it can be said", name(first), name(second));
        return vec![Spoken::new("measure", text, "a grain was not pulled", Source::Own)];
    };
    let Ok(mut pair) = Pair::of(&one, &other, seam.length, None, sheet.confidence) else { return Vec::new() };
    let stretchier = pair.stretchier.map(|which| match (which, seam.names) {
        (Which::First, [name, _]) | (Which::Second, [_, name]) => name,
    });
    if stretchier.is_some_and(is_band) {
        pair.answer = Match::BandToBody;
    }
    let paired = Paired {
        fabrics: [first, second],
        grains: [grain; 2],
        edges: [one, other],
        seam: seam.length,
        stitch: None,
        pair: &pair,
        confidence: sheet.confidence,
        unit: sheet.unit,
    };
    self::paired(&paired)
}

/// Whether a role is a band: cut shorter and pulled to match, whatever the gap in stretch. Stay-stitched it would not
/// pass head or hand. Common practice, no source.
fn is_band(role: &str) -> bool {
    let role = role.to_lowercase();
    ["band", "cuff", "ribbing"].iter().any(|word| role.contains(word))
}

/// What each fabric wants for itself, and what several want alike, each line once with the tags it is for.
fn sewing(sheet: &Sheet<'_>) -> (Vec<Section>, Vec<Spoken>) {
    let (mut own, mut shared): (Vec<Section>, Vec<(Spoken, Vec<String>)>) = (Vec::new(), Vec::new());
    for fabric in fabrics(sheet) {
        let handled = Handled {
            cloth: cloth(fabric, sheet.stock),
            wants: None,
            layers: lining(sheet, fabric),
            confidence: sheet.confidence,
        };
        let mut lines = Vec::new();
        for line in self::handled(&handled) {
            if !matches!(line.about, "place" | "machine" | "allowance") {
                lines.push(line);
            } else if let Some((_, tags)) = shared.iter_mut().find(|(known, _)| known.text == line.text) {
                tags.push(fabric.tag.to_string());
            } else {
                shared.push((line, vec![fabric.tag.to_string()]));
            }
        }
        own.push(Section { head: format!("sewing {}", name(fabric)), lines });
    }
    let all = own.len();
    shared.sort_by_key(|(line, _)| ["place", "machine", "allowance"].iter().position(|about| *about == line.about));
    let joined = shared.into_iter().map(|(line, tags)| {
        let whose = if tags.len() == all { String::new() } else { format!(" ({})", tags.join(", ")) };
        Spoken { text: format!("{}{whose}", line.text), ..line }
    });
    (own, joined.collect())
}

/// What the view's lining does to the cloths that it is sewn to.
fn lining(sheet: &Sheet<'_>, fabric: &Fabric) -> Vec<(Layer, Layered)> {
    let is_lining =
        |role: usize| sheet.chosen.get(role).is_some_and(|chosen| chosen.role.name.to_lowercase().contains("lining"));
    let chosen = |role: usize| sheet.chosen.get(role).filter(|chosen| chosen.candidate.is_some());
    let gives = |fabric| stretch(fabric, Grain::Crosswise, sheet.stock).ok();
    let joined = sheet.seams.iter().find_map(|seam| {
        let [one, other] = seam.roles;
        let (outer, lining) = if is_lining(other) { (one, other) } else { (other, one) };
        let (outer, lining) = (chosen(outer)?, chosen(lining)?);
        let under = lining.candidate.as_ref()?.fabric;
        let is_lined = is_lining(seam.roles[0]) != is_lining(seam.roles[1]);
        (is_lined && outer.candidate.as_ref()?.fabric.id == fabric.id && under.id != fabric.id)
            .then_some((outer, under))
    });
    let layer = joined.and_then(|(outer, under)| {
        let wants = outer.role.demand.crosswise.at_least.map(Limit::ratio);
        Some(layered(gives(fabric)?, Layer::Lining, gives(under)?, wants, sheet.confidence))
    });
    layer.into_iter().collect()
}

fn to_buy(sheet: &Sheet<'_>) -> Vec<Spoken> {
    let mut lines = Vec::new();
    for chosen in &sheet.chosen {
        let role = isolated(&chosen.role.name);
        let Some(candidate) = &chosen.candidate else {
            let text = format!("for {role}: {}", asks(chosen.role, sheet.unit));
            lines.push(Spoken::new("cloth", text, "nothing in the stash meets it", Source::Own));
            continue;
        };
        let needed = candidate.cloth.needed().map(|needed| needed.length);
        let fabric = candidate.fabric;
        if let (Some(shop), Some(length)) = (&fabric.shop, needed) {
            let price = shop.price.as_ref().map(|price| format!(" for {}", price.of(length))).unwrap_or_default();
            let length = quantity::cloth_to_buy(length, sheet.unit);
            let text = format!("{length} of {} at {}{price}", name(fabric), isolated(&shop.place));
            lines.push(Spoken::new(
                "cloth",
                text,
                format!("for {role}, washing change included as far as known"),
                Source::Own,
            ));
        } else if let crate::finding::fit::cloth::ClothAnswer::Short { missing, .. } = candidate.cloth {
            let text = format!("{} more of {}", quantity::cloth_to_buy(missing, sheet.unit), name(fabric));
            lines.push(Spoken::new("cloth", text, format!("for {role}, what is on hand does not do"), Source::Own));
        }
    }
    lines
}

fn care(job: Job) -> Vec<Spoken> {
    let mut lines = words::cautions(&cautions(job));
    if job.for_child && job.has_cord {
        lines.extend(CORDS.iter().map(words::cord));
    }
    lines.extend(words::cautions(&[Caution::PinsBladesIrons]));
    lines
}
