//! `fit` as text: for each role the fabrics that meet it, and what to do about the others.

use anstyle::{AnsiColor, Style};
use tenter_core::{Answer, Ask, Confidence, Figure, Grain, Part, Unit};

use crate::finding::fit;
use crate::finding::fit::Candidate;
use crate::finding::fit::Reason;
use crate::finding::fit::RoleFit;
use crate::finding::fit::Stock;
use crate::finding::fit::cloth::ClothAnswer;
use crate::log::{Fabric, Pattern, Role};
use crate::text::lines::Lines;
use crate::text::pattern::asks;
use crate::text::pattern::demand;
use crate::words::bidi::isolated;
use crate::words::quantity;
use crate::words::terms as words;

/// How many fabrics of one answer are listed unless all are asked for.
const LISTED: usize = 5;
/// Columns of a candidate's answer and tag; what is said of it stands to the right of them.
const UNDER: usize = 18;

/// A view with the fabrics for each of its roles.
#[derive(Debug)]
pub struct Fitted<'a> {
    /// The pattern.
    pub pattern: &'a Pattern,
    /// The view.
    pub view: &'a str,
    /// Its roles.
    pub roles: &'a [RoleFit<'a>],
    /// The stash.
    pub stock: &'a Stock,
    /// How sure an answer is.
    pub confidence: Confidence,
    /// The unit of the text.
    pub unit: Unit,
    /// List every fabric.
    pub all: bool,
}

/// The text, with colours that a pipe or `NO_COLOR` takes away again.
#[must_use]
pub fn render(fitted: &Fitted<'_>, width: usize) -> String {
    let mut text = Lines::new(width);
    text.words(&format!("{}, view {}", isolated(&fitted.pattern.name), isolated(fitted.view)));
    if fitted.stock.fabrics.is_empty() {
        text.words("the stash is empty; begin with tenter cloth add NAME");
    }
    for role in fitted.roles {
        text.blank();
        one_role(&mut text, role, fitted);
    }
    text.finish()
}

fn one_role(text: &mut Lines, fit: &RoleFit<'_>, fitted: &Fitted<'_>) {
    let role = fit.role;
    text.words(&format!("{}: {}", isolated(&role.name), asks(role, fitted.unit)));
    let mut rest = fit.candidates.iter().peekable();
    let (mut shown, mut hidden, mut last): (usize, Vec<&Candidate<'_>>, Option<&str>) = (0, Vec::new(), None);
    while let Some(candidate) = rest.next() {
        if candidate.reason == Reason::Construction {
            hidden.push(candidate);
            continue;
        }
        let group = group(candidate);
        if last != Some(group) {
            shown = 0;
            last = Some(group);
        }
        shown += 1;
        if shown <= LISTED || fitted.all {
            one_candidate(text, candidate, role, fitted);
        } else if rest.peek().is_none_or(|next| self::group(next) != group || next.reason == Reason::Construction) {
            let more = shown - LISTED;
            text.row(group, &format!("and {more} more; --all lists them"));
        }
    }
    not_considered(text, &hidden, role, fitted);
    if !fit.candidates.iter().any(Candidate::will_do) {
        text.hanging("  look for  ", 12, &shopping(role, fit, fitted.unit));
    }
}

/// Under which word a candidate is listed.
const fn kind(candidate: &Candidate<'_>) -> &'static str {
    match candidate.answer {
        Answer::Meets if candidate.missing().is_some() => "TOO LITTLE",
        Answer::Meets => "MEETS",
        Answer::Close => "CLOSE",
        Answer::Unknown => "UNKNOWN",
        Answer::Short => "SHORT",
        Answer::Over => "OVER",
    }
}

/// With which others a candidate is counted.
const fn group(candidate: &Candidate<'_>) -> &'static str {
    match candidate.answer {
        Answer::Meets if candidate.missing().is_some() => "too little",
        Answer::Meets => "meets",
        Answer::Close => "close",
        Answer::Unknown => "unknown",
        Answer::Short | Answer::Over => "short",
    }
}

const fn style(answer: Answer) -> Style {
    let colour = match answer {
        Answer::Meets => AnsiColor::Green,
        Answer::Short | Answer::Over => AnsiColor::Red,
        Answer::Close | Answer::Unknown => AnsiColor::Yellow,
    };
    colour.on_default().bold()
}

fn one_candidate(text: &mut Lines, candidate: &Candidate<'_>, role: &Role, fitted: &Fitted<'_>) {
    let fabric = candidate.fabric;
    let style = style(candidate.answer);
    let chance = match (candidate.answer, candidate.chance) {
        (Answer::Meets | Answer::Close, Some(chance)) => format!("{} sure", words::percent(chance)),
        _ => String::new(),
    };
    let kind = kind(candidate);
    let name = isolated(&fabric.name);
    let label = format!("  {style}{kind:<10}{style:#}{:>4}  ", fabric.tag);
    text.hanging(&label, UNDER, &format!("{name}{}", after(&chance)));
    text.hanging(&" ".repeat(UNDER), UNDER, &because(candidate, role, fitted));
}

/// Why a fabric got its answer, and whether there is enough of it.
#[must_use]
pub fn because(candidate: &Candidate<'_>, role: &Role, fitted: &Fitted<'_>) -> String {
    let mut parts = vec![reason(candidate, role, fitted)];
    // How much there is of a cloth that will not do is of no use.
    if !matches!(candidate.answer, Answer::Short | Answer::Over) {
        parts.extend(cloth(candidate, fitted.unit));
    }
    parts.join("; ")
}

fn after(chance: &str) -> String {
    if chance.is_empty() { String::new() } else { format!(", {chance}") }
}

/// The reason in one line.
fn reason(candidate: &Candidate<'_>, role: &Role, fitted: &Fitted<'_>) -> String {
    let tag = candidate.fabric.tag;
    match candidate.reason {
        Reason::Construction => String::new(),
        Reason::NothingAsked => "nothing is asked of its stretch".to_owned(),
        Reason::NotPulled(grain) => {
            format!("{} not pulled: tenter pull {tag} --grain {}", grain.word(), grain.word())
        }
        Reason::NotRead(grain, ask) => {
            format!("{} along the {} grain not read: pull again and add --back LENGTH@60s", ask.word(), grain.word())
        }
        Reason::Part(grain, part) if candidate.answer == Answer::Meets => {
            meets(candidate.fabric, role, fitted).unwrap_or_else(|| format!("{} {}", part.ask.word(), grain.word()))
        }
        Reason::Part(grain, part) => {
            let seen = figure(candidate.fabric, role, fitted, grain, part.ask);
            let seen = seen.map(|figure| words::figure(&figure, fitted.confidence)).unwrap_or_default();
            let asked = format!("{} {} {}", words::side(part.side), part.limit, wanted(&part));
            let mut text = format!("{} {} {seen}, asked is {}", grain.word(), part.ask.word(), asked.trim_end());
            if candidate.answer == Answer::Close {
                text.push_str(&format!("; {}", settle(candidate.fabric, role, fitted, grain)));
            }
            text
        }
    }
}

/// A printed gauge as it stands on the envelope, beside its percentage.
fn wanted(part: &Part) -> String {
    part.limit.printed_marks().map_or_else(String::new, |(gauge, extended)| {
        format!("({} to {})", gauge.show(Unit::Inch), extended.show(Unit::Inch))
    })
}

/// All that is asked, as it was read.
fn meets(fabric: &Fabric, role: &Role, fitted: &Fitted<'_>) -> Option<String> {
    let mut parts: Vec<String> = Vec::new();
    for grain in [Grain::Crosswise, Grain::Lengthwise, Grain::Bias] {
        let asked = role.grains().next().is_none() || !role.demand.stretch(grain).is_empty();
        let Some(measured) = fitted.stock.measured(fabric, grain).filter(|_| asked) else { continue };
        let evaluation = fit::evaluation(role, measured, fitted.confidence)?;
        let mut asked: Vec<Ask> = evaluation.parts.iter().map(|part| part.ask).collect();
        asked.dedup();
        for ask in asked {
            let figure = figure(fabric, role, fitted, grain, ask)?;
            let what = if ask == Ask::Stretch { grain.word() } else { ask.word() };
            parts.push(format!("{what} {}", words::figure(&figure, fitted.confidence)));
        }
    }
    Some(parts.join(", ")).filter(|text| !text.is_empty())
}

fn figure(fabric: &Fabric, role: &Role, fitted: &Fitted<'_>, grain: Grain, ask: Ask) -> Option<Figure> {
    let evaluation = fit::evaluation(role, fitted.stock.measured(fabric, grain)?, fitted.confidence)?;
    match ask {
        Ask::Stretch => Some(evaluation.figures.stretch),
        Ask::Growth => Some(evaluation.figures.rest?.growth),
        Ask::Recovery => evaluation.figures.rest?.recovery,
    }
}

fn settle(fabric: &Fabric, role: &Role, fitted: &Fitted<'_>, grain: Grain) -> String {
    let measured = fitted.stock.measured(fabric, grain);
    let evaluation = measured.and_then(|measured| fit::evaluation(role, measured, fitted.confidence));
    match evaluation.and_then(|evaluation| evaluation.settle) {
        Some(settle) => words::settle(&settle, quantity::marks_unit(fitted.unit)),
        None => "it lies on the limit; settle it and pull three times".to_owned(),
    }
}

/// What there is to say about the length.
fn cloth(candidate: &Candidate<'_>, unit: Unit) -> Vec<String> {
    let fabric = candidate.fabric;
    let Some(needed) = candidate.cloth.needed() else { return Vec::new() };
    let length = quantity::cloth_to_buy(needed.length, unit);
    let mut parts = Vec::new();
    match (&fabric.shop, candidate.cloth) {
        (Some(shop), _) => {
            let price = shop.price.as_ref().map(|price| format!(" for {}", price.of(needed.length)));
            parts.push(format!("seen at {}: buy {length}{}", isolated(&shop.place), price.unwrap_or_default()));
        }
        (None, ClothAnswer::Enough { .. }) => {
            let had = fabric.length.map(|had| quantity::cloth(had, unit)).unwrap_or_default();
            parts.push(format!("{had} on hand, takes {length}"));
        }
        (None, ClothAnswer::Short { missing, .. }) => {
            let had = fabric.length.map(|had| quantity::cloth(had, unit)).unwrap_or_default();
            let missing = quantity::cloth_to_buy(missing, unit);
            parts.push(format!("only {had} on hand, takes {length}: {missing} missing"));
        }
        (None, _) => parts.push(format!("takes {length}; how long and wide it is is not known")),
    }
    if needed.by_area {
        parts.push(format!("narrower than the pattern says, so that is {}", words::BY_AREA));
    }
    if !needed.washing_known && matches!(candidate.answer, Answer::Meets | Answer::Close) {
        parts.push("not washed, and its washing change is not known".to_owned());
    }
    parts
}

fn not_considered(text: &mut Lines, hidden: &[&Candidate<'_>], role: &Role, fitted: &Fitted<'_>) {
    if hidden.is_empty() {
        return;
    }
    let made = role.made();
    let listed = if fitted.all { hidden.len() } else { LISTED };
    let mut names: Vec<String> = hidden
        .iter()
        .take(listed)
        .map(|candidate| format!("{} {}", candidate.fabric.tag, isolated(&candidate.fabric.name)))
        .collect();
    if let Some(more @ 1..) = hidden.len().checked_sub(listed) {
        names.push(format!("and {more} more"));
    }
    text.hanging("  not made so  ", 15, &format!("{} (asks {made})", names.join(", ")));
}

/// What to look for where nothing fits.
fn shopping(role: &Role, fit: &RoleFit<'_>, unit: Unit) -> String {
    let mut parts = Vec::new();
    let made = role.made();
    parts.push(if made.is_empty() { "cloth".to_owned() } else { format!("{made} cloth") });
    let stretch = demand(&role.demand);
    if !stretch.is_empty() {
        parts.push(format!("with {stretch}"));
    }
    if let Some(cloth) = role.cloth {
        let (length, width) = (quantity::cloth_to_buy(cloth.length, unit), quantity::width(cloth.width, unit));
        parts.push(format!("{length} of {width}, and more for what washing takes"));
    }
    let open = fit.candidates.iter().filter(|one| matches!(one.answer, Answer::Close | Answer::Unknown)).count();
    let settle = match open {
        0 => String::new(),
        1 => " – or settle the one above".to_owned(),
        several => format!(" – or settle one of the {several} above"),
    };
    format!("{}{settle}", parts.join(", "))
}
