//! `fit` as text: for each role the cloths that meet it, and what to do about the others.

use crate::finding::fit::asked::other_kinds;
use crate::finding::fit::{Candidate, Fitted, RoleFit, amounts};
use crate::finding::verdict::Verdict;
use crate::plain::isolated;
use crate::text::lines::{Lines, padded, style};
use crate::words::amounts::in_all;
use crate::words::answer;
use crate::words::fit as words;
use crate::words::pattern::{asks, title};

/// How many cloths of one answer are listed unless all are asked for.
const LISTED: usize = 5;
/// Columns of a candidate's answer and tag; what is said of it stands to the right of them.
const UNDER: usize = 18;
/// Columns of the label of what is said of several cloths together.
const ASIDE: usize = 14;
/// What leads from a cloth to the footnote.
const MARK: &str = "*";

/// The text, with colours that a pipe or `NO_COLOR` takes away again.
#[must_use]
pub fn render(fitted: &Fitted<'_>, width: usize) -> String {
    let mut text = Lines::new(width);
    text.heading(&title(fitted.pattern, fitted.view));
    if fitted.stock.fabrics.is_empty() {
        text.words(words::EMPTY);
    }
    let mut marked = false;
    for role in fitted.roles {
        text.blank();
        marked |= one_role(&mut text, role, fitted);
    }
    let amounts = amounts(fitted.roles);
    for cloth in amounts.shared() {
        text.blank();
        let line = in_all(cloth, fitted.unit);
        aside(&mut text, line.about, &line.text);
    }
    if marked {
        text.blank();
        text.hanging(&format!("  {MARK} "), 4, words::ALLOWANCE_NOTE);
    }
    text.finish()
}

/// Writes a role; whether a cloth of it leads to the footnote.
fn one_role(text: &mut Lines, fit: &RoleFit<'_>, fitted: &Fitted<'_>) -> bool {
    text.words(&format!("{}: {}", isolated(&fit.role.name), asks(fit.role, fitted.unit)));
    let mut marked = false;
    for group in fit.candidates.chunk_by(|one, next| one.verdict() == next.verdict()) {
        let Some(verdict) = group.first().map(Candidate::verdict) else { continue };
        let listed = if fitted.all { group.len() } else { LISTED };
        if verdict == Verdict::OtherKind {
            for (feature, others) in other_kinds(fit) {
                let listed = if fitted.all { others.len() } else { LISTED };
                aside(text, answer::word(verdict), &words::other_kind(feature, &others, fit.role, listed));
            }
            continue;
        }
        for candidate in group.iter().take(listed) {
            one_candidate(text, candidate, fitted);
            marked |= candidate.may_shrink();
        }
        if let Some(more @ 1..) = group.len().checked_sub(listed) {
            aside(text, answer::word(verdict), &words::more(more));
        }
    }
    if fit.is_free() {
        aside(text, "choose", words::CHOOSE);
    } else if !fit.candidates.iter().any(Candidate::will_do) {
        aside(text, "look for", &words::shopping(fit, fitted.unit));
    }
    marked
}

/// What is said of several cloths together.
fn aside(text: &mut Lines, label: &str, words: &str) {
    text.hanging(&padded(&format!("  {label}"), ASIDE), ASIDE, words);
}

fn one_candidate(text: &mut Lines, candidate: &Candidate<'_>, fitted: &Fitted<'_>) {
    let (fabric, verdict) = (candidate.fabric, candidate.verdict());
    let (style, kind) = (style(answer::tone(verdict)), answer::label(verdict));
    let chance = words::chance(candidate.answer, candidate.chance, candidate.disagrees())
        .map(|chance| format!(", {chance}"))
        .unwrap_or_default();
    let label = format!("  {style}{kind:<10}{style:#}{:>4}  ", fabric.tag);
    text.hanging(&label, UNDER, &format!("{}{chance}", isolated(&fabric.name)));
    let mark = if candidate.may_shrink() { format!("\u{a0}{MARK}") } else { String::new() };
    text.hanging(&" ".repeat(UNDER), UNDER, &format!("{}{mark}", words::because(candidate, fitted)));
}
