//! One cloth with everything that is known of it.

use askama::Template;
use tenter_core::Confidence;

use super::super::part::{AnswerTag, Cell, Link, PagePart, Row};
use super::super::shell::{Place, Shell};
use super::super::visit::{Answered, Visit, cloth};
use crate::finding::fit::{Candidate, Fitted, Reason, Stock};
use crate::finding::memory::Seen;
use crate::finding::shown::KnownCloth;
use crate::log::{Fabric, Id};
use crate::page::cloth::ClothArticle;
use crate::words::fit::{because, not_asked};
use crate::words::page::told;
use crate::words::quantity;

#[derive(Template)]
#[template(path = "web/photos.html")]
struct Photos<'p> {
    name: &'p str,
    photos: Vec<(String, String, String)>,
}

/// The photographs of a cloth that are here and were not retired.
pub fn photographs(fabric: &Fabric, photos: &[Seen]) -> String {
    let there = photos.iter().filter(|seen| seen.thumbnail.is_some()).map(|seen| {
        let said = &seen.photo.said;
        (format!("/photos/{}", said.photo), format!("/photos/{}", said.thumbnail), said.note.clone())
    });
    let photos: Vec<_> = there.collect();
    if photos.is_empty() { String::new() } else { Photos { name: &fabric.name, photos }.render().unwrap_or_default() }
}

/// Why a cloth got its answer for a role.
pub fn why(candidate: &Candidate<'_>, fitted: &Fitted<'_>, role: &crate::log::Role) -> String {
    match candidate.reason {
        Reason::OtherKind(feature) => told(&format!("it is {}", not_asked(feature, role))),
        _ => told(&because(candidate, fitted)),
    }
}

/// The page of a cloth.
pub fn show(visit: &mut Visit<'_>, id: &str) -> Answered {
    let fabric = visit.fabric(id)?;
    let address = cloth(fabric.id);
    let (rules, here) = (visit.rules(), visit.here);
    let known = KnownCloth::of(&*visit.log, fabric)?;
    let hands = visit.log.repeatability()?;
    let shown = known.shown(&hands, rules, here);
    let fabric = shown.fabric;
    let mut page = Shell::new(Place::Cloths, &fabric.name);
    page.tag(fabric.tag);
    let article = ClothArticle::of(&shown, None);
    page.push(PagePart::Words(article.facts.clone()));
    let place = format!("{}{}", article.place, article.price);
    if !place.is_empty() {
        page.push(PagePart::Soft(told(&format!("{}: {place}", article.place_label))));
    }
    if !fabric.note.is_empty() {
        page.push(PagePart::Words(fabric.note.clone()));
    }
    if fabric.dropped {
        page.push(PagePart::Notice(
            "This cloth is retired.".to_owned(),
            vec!["Its tests and its history stay.".to_owned()],
        ));
        page.push(PagePart::Links(vec![Link::new(format!("{address}/return"), "Bring it back").first()]));
    }
    let role = super::chosen(&*visit.log, visit.query.get("for"))?;
    if let Some((pattern, role)) = &role {
        let stock = Stock::of(&*visit.log, |one| one.id == fabric.id)?;
        let candidate = crate::finding::fit::role(role, &stock, Confidence::default());
        if let Some(one) = candidate.candidates.first() {
            let confidence = Confidence::default();
            let (view, unit) = (role.view.as_str(), visit.unit);
            let fitted = Fitted { pattern, view, roles: &[], stock: &stock, confidence, unit, here, all: true };
            page.push(PagePart::Answer(AnswerTag::headline(one.verdict(), &format!("for {}", role.name))));
            page.push(PagePart::Words(why(one, &fitted, role)));
        }
    }
    page.push(PagePart::Html(photographs(fabric, shown.photos)));
    let pictures: Vec<PagePart> = pictures(&shown, &role, &article);
    if pictures.is_empty() {
        page.words("Nothing was measured yet.");
    } else {
        page.push(PagePart::Patch(String::new(), pictures));
    }
    if !fabric.dropped {
        page.push(PagePart::Links(links(fabric, &address)));
    }
    let mut label = "";
    let rows = article.rows.iter().filter_map(|row| {
        let again = row.label == label;
        label = row.label;
        let words = told(&row.words);
        let small = if row.source.is_empty() { String::new() } else { format!("[{}]", row.source) };
        let label = if again { String::new() } else { row.label.to_owned() };
        (!words.is_empty()).then_some(Row { label, words, small })
    });
    let rows: Vec<Row> = rows.filter(|row| !(row.label == "stretch" && row.words == "not measured yet")).collect();
    if !rows.is_empty() {
        page.push(PagePart::Rows(rows));
    }
    if !shown.tests.is_empty() {
        let head = quantity::counted(shown.tests.len(), "pull test");
        page.push(PagePart::Fold(head, false, vec![tests(&article, &shown, &address)]));
    }
    let steps = article.history.iter().map(|(day, step)| Row::new(day, step)).collect();
    page.push(PagePart::Fold("History".to_owned(), false, vec![PagePart::Rows(steps)]));
    if !fabric.dropped {
        page.push(PagePart::Links(vec![
            Link::new(format!("{address}/retire"), "Retire it").about("It is gone; its history stays"),
            Link::new("/cloths", "All cloths"),
        ]));
    }
    Ok(page.page())
}

/// Stretch beside what the role asks, and growth.
fn pictures(
    shown: &crate::finding::cloth::Shown<'_>,
    role: &Option<(crate::log::Pattern, crate::log::Role)>,
    article: &ClothArticle,
) -> Vec<PagePart> {
    if shown.standing.is_empty() {
        return Vec::new();
    }
    let role = role.as_ref().map(|(_, role)| role);
    let beside = role.map(|role| format!("beside what {} asks", role.name)).unwrap_or_default();
    let stretch = crate::picture::drawn::stretch(shown, role, false).inline();
    let growth = article.growths.iter().map(|grown| PagePart::Wide(grown.words.clone(), grown.picture.clone()));
    core::iter::once(PagePart::Picture(stretch, beside)).chain(growth).collect()
}

fn links(fabric: &Fabric, address: &str) -> Vec<Link> {
    let mut links = vec![Link::new(format!("/measure?cloth={}", fabric.id), "Measure it").first()];
    if fabric.is_seen() {
        links.push(Link::new(format!("{address}/buy"), "I bought it"));
    } else {
        links.push(Link::new(format!("{address}/cut"), "Cut from it"));
    }
    links.extend([
        Link::new(format!("{address}/wash"), "Measure a wash"),
        Link::new(format!("{address}/photos"), "Photographs"),
        Link::new(format!("/handle?cloth={}", fabric.id), "How to sew it"),
        Link::new(format!("{address}/learned"), "Remember what worked"),
        Link::new(format!("/print/cards?cloth={}", fabric.id), "A card to pin on"),
        Link::new(format!("{address}/edit"), "Change the details"),
    ]);
    links
}

fn tests(article: &ClothArticle, shown: &crate::finding::cloth::Shown<'_>, address: &str) -> PagePart {
    let id = |place: usize| shown.tests.iter().rev().nth(place).map(|test| test.id);
    let href =
        |id: Option<Id>| id.map(|id| format!("{address}/tests/{}", id.to_string().to_lowercase())).unwrap_or_default();
    let rows = article.tests.iter().enumerate().map(|(place, test)| {
        vec![
            Cell::link(href(id(place)), &test.pulled),
            Cell::new(test.grain),
            Cell::figure(&test.marks),
            Cell::figure(&test.to),
            Cell::figure(&test.stretch),
            Cell::figure(&test.growth),
            Cell::new(&test.standing),
        ]
    });
    let heads = vec!["pulled", "grain", "marks", "pulled to", "stretch", "growth", "status"];
    PagePart::Table("Pull tests".to_owned(), heads, rows.collect())
}
