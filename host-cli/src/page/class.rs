//! What a class learns from its own scatter, as a page: one picture, one sentence, and the figures.

use askama::Template;

use super::{rendered, together};
use crate::finding::class::{ClassPulls, Hand};
use crate::picture::class as picture;
use crate::words::class as words;

struct Row {
    name: String,
    pulls: String,
    mean: String,
}

#[derive(Template)]
#[template(path = "class.html")]
struct Page<'a> {
    title: String,
    tag: String,
    name: &'a str,
    lead: String,
    spread: String,
    trust: &'a str,
    source: &'a str,
    drawn: String,
    rows: Vec<Row>,
    made: &'a str,
}

/// The page, made on a day.
#[must_use]
pub fn page(class: &ClassPulls, made: &str) -> String {
    let row = |hand: &Hand| Row {
        name: words::called(hand),
        pulls: hand
            .pulls
            .iter()
            .map(|pull| tenter_core::Decimal::round(*pull, 1).to_string())
            .collect::<Vec<_>>()
            .join(", "),
        mean: together(&words::mean(hand.mean, hand.half)),
    };
    rendered(&Page {
        title: format!("{} people on one cloth", class.compared.persons),
        tag: class.fabric.tag.to_string(),
        name: &class.fabric.name,
        lead: together(&words::lead(class)),
        spread: together(&words::spread(class)),
        trust: words::TRUST,
        source: words::SOURCE,
        drawn: picture::draw(class).inline(),
        rows: class.hands.iter().map(row).collect(),
        made,
    })
}
