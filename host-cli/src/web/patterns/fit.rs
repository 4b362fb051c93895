//! Which cloths suit the roles of a view, and what is printed of it.

use tenter_core::Confidence;

use super::{address, of_view, pattern, title};
use crate::deed::{Refused, find};
use crate::finding::fit::{self, Candidate, Fitted, Reason, RoleFit, Stock, asked::other_kinds};
use crate::log::Pattern;
use crate::page::together;
use crate::page::{book, made, print};
use crate::picture::drawn;
use crate::web::cloths::one::why;
use crate::web::part::{AnswerLine, AnswerTag, Link, PagePart};
use crate::web::shell::{Place, Shell};
use crate::web::visit::{Answered, Visit, cloth};
use crate::web::{Response, printed};
use crate::words::fit::{CHOOSE, chance, not_asked, shopping};
use crate::words::page::told;
use crate::words::pattern::asks;

/// How many cloths of a role are listed at first.
const LISTED: usize = 8;

/// The pattern and its view that an address names.
pub fn view_of(visit: &Visit<'_>, id: &str) -> Result<(Pattern, String), Refused> {
    let pattern = pattern(visit, id)?;
    let typed = visit.query.typed("view");
    let exact =
        typed.as_deref().and_then(|typed| pattern.views().into_iter().find(|view| *view == typed).map(str::to_owned));
    let view = match exact {
        Some(view) => view,
        None => find::view_or_only(&pattern, typed.as_deref())?.to_owned(),
    };
    Ok((pattern, view))
}

/// Which cloths suit each role.
pub fn show(visit: &mut Visit<'_>, id: &str) -> Answered {
    let (pattern, view) = view_of(visit, id)?;
    let (stock, confidence) = (Stock::read(&*visit.log)?, Confidence::default());
    let roles: Vec<RoleFit<'_>> = fit::roles(pattern.view(&view), &stock, confidence);
    let (unit, here) = (visit.unit, visit.here);
    let fitted =
        Fitted { pattern: &pattern, view: &view, roles: &roles, stock: &stock, confidence, unit, here, all: true };
    let mut page = Shell::new(Place::Patterns, &title(&pattern, &view));
    for role in &roles {
        let mut parts = vec![PagePart::Soft(together(&asks(role.role, unit)))];
        let best = role.outcome();
        if role.is_free() {
            parts.push(PagePart::told(CHOOSE));
        } else {
            parts.push(PagePart::Answer(AnswerTag::of(best, &outcome(role))));
        }
        let considered = || role.candidates.iter().filter(|one| !matches!(one.reason, Reason::OtherKind(_)));
        let rows: Vec<AnswerLine> = considered().take(LISTED).map(|one| row(one, role, &fitted)).collect();
        if rows.is_empty() {
            parts.push(PagePart::Words("No cloth of yours is the kind that it asks for.".to_owned()));
        } else {
            parts.push(PagePart::Answers(rows));
        }
        if !role.candidates.iter().any(Candidate::will_do) && !role.is_free() {
            parts.push(PagePart::told(&format!("Look for {}.", shopping(role, unit))));
        }
        let kinds: Vec<String> = other_kinds(role)
            .into_iter()
            .map(|(feature, others)| format!("{} {}", others.len(), not_asked(feature, role.role)))
            .collect();
        if !kinds.is_empty() {
            parts.push(PagePart::Soft(told(&format!("Left out: {}.", kinds.join("; ")))));
        }
        let map = format!("{}&role={}", of_view(pattern.id, "map", &view), role.role.id.to_string().to_lowercase());
        parts.push(PagePart::Links(vec![
            Link::new(map, "On the map").about("Across and along"),
            Link::new(format!("/cloths?for={}", role.role.id), "All cloths on one scale"),
            Link::new(format!("/measure?for={}", role.role.id), "Measure a swatch for it"),
        ]));
        page.push(PagePart::Patch(role.role.name.clone(), parts));
    }
    page.push(PagePart::Links(vec![
        Link::new(of_view(pattern.id, "begin", &view), "Begin a garment").about("With the cloths you choose").first(),
        Link::new(of_view(pattern.id, "plan", &view), "The plan, to print").about("With the best cloth for each role"),
        Link::new(of_view(pattern.id, "plan/choices", &view), "The plan with your choices")
            .about("Cloths, zip, elastic, cord, seams"),
        Link::new(address(pattern.id), "What the pattern asks"),
    ]));
    Ok(page.page())
}

/// The map of all cloths beside what a role asks; a picture of thousands of cloths has a page of its own.
pub fn map(visit: &mut Visit<'_>, id: &str) -> Answered {
    let (pattern, view) = view_of(visit, id)?;
    let (stock, confidence) = (Stock::read(&*visit.log)?, Confidence::default());
    let wanted = visit.query.get("role").to_uppercase();
    let back = of_view(pattern.id, "fit", &view);
    let Some(role) = pattern.view(&view).find(|role| role.id.to_string() == wanted) else {
        return Ok(Response::see(&back));
    };
    let fit = fit::role(role, &stock, confidence);
    let mut page = Shell::new(Place::Patterns, &format!("{}: {}", title(&pattern, &view), role.name));
    page.push(PagePart::Soft(together(&asks(role, visit.unit))));
    page.push(PagePart::Wide(format!("Map for {}", role.name), drawn::map(&stock, Some(&fit), confidence).inline()));
    page.push(PagePart::Links(vec![Link::new(back, "Which cloths suit it")]));
    Ok(page.page())
}

fn outcome(role: &RoleFit<'_>) -> String {
    let count = |will: bool| {
        role.candidates.iter().filter(|one| if will { one.will_do() } else { one.verdict().is_open() }).count()
    };
    let cloths = |count: usize| crate::words::quantity::counted(count, "cloth");
    match (count(true), count(false)) {
        (0, 0) => "no cloth of yours will do".to_owned(),
        (0, open) => format!("none for sure, {} may still do", cloths(open)),
        (some, 0) => format!("{} will do", cloths(some)),
        (some, open) => format!("{} will do, {} may", cloths(some), cloths(open)),
    }
}

fn row(one: &Candidate<'_>, role: &RoleFit<'_>, fitted: &Fitted<'_>) -> AnswerLine {
    let fabric = one.fabric;
    let name = format!("{} {}", fabric.tag, crate::plain::isolated(&fabric.name));
    let chance = chance(one.answer, one.chance, one.disagrees()).unwrap_or_default();
    let href = format!("{}?for={}", cloth(fabric.id), role.role.id);
    AnswerLine { href, words: name, told: AnswerTag::of(one.verdict(), &chance), why: why(one, fitted, role.role) }
}

/// The gauges of a view, as a page to print.
pub fn gauges(visit: &mut Visit<'_>, id: &str) -> Answered {
    let (pattern, view) = view_of(visit, id)?;
    let gauges = made::gauges((&pattern, &view))?;
    Ok(printed::response(print::page("Pull gauge", &gauges)))
}

/// The swatch book beside what a view asks.
pub fn book_of(visit: &mut Visit<'_>, id: &str) -> Answered {
    let (pattern, view) = view_of(visit, id)?;
    let (stock, rules) = (Stock::read(&*visit.log)?, visit.rules());
    let page = made::book(&*visit.log, &stock, Some((&pattern, &view)), rules, &mut || {})?;
    Ok(book_page(visit, page))
}

/// The book to look at, or to keep as a file and hand on.
pub fn book_page(visit: &Visit<'_>, page: String) -> Response {
    if visit.query.get("keep") == "yes" {
        return Response::kept("text/html; charset=utf-8", "swatch-book.html", page);
    }
    printed::with_scripts(page, &book::SCRIPTS)
}
