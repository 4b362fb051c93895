//! Pictures of what was found.

use tenter_core::{Answer, Confidence, Grain};

use crate::finding::cloth::Shown;
use crate::finding::drawn::{CardFacts, Course, rows};
use crate::finding::fit::{Reason, RoleFit, Stock, known};
use crate::log::{Fabric, Photo, Role};
use crate::picture::Picture;
use crate::picture::card::{self, Card};
use crate::picture::gauge::{self, Gauge};
use crate::picture::growth::{self, Growth};
use crate::picture::stash_map::{self, Spot, StashMap, ViewAsks};
use crate::words::card as words;
use crate::words::quantity;

/// The stretch of a cloth beside what a role asks.
#[must_use]
pub fn stretch(shown: &Shown<'_>, beside: Option<&Role>, key: bool) -> Picture {
    let (title, rows) = (&shown.fabric.name, rows(shown, beside));
    gauge::draw(&Gauge { title, rows: &rows, confidence: shown.confidence, table: shown.table, key })
}

/// The growth of a cloth along a grain, beside what a role allows.
#[must_use]
pub fn growth(shown: &Shown<'_>, course: &Course) -> Picture {
    let title = format!("{}, {}", shown.fabric.name, course.grain.word());
    growth::draw(&Growth {
        title: &title,
        readings: &course.readings,
        to_come: &course.to_come,
        at_most: course.at_most,
        confidence: shown.confidence,
    })
}

/// The stash as a map: all of it, or beside what a role of a view asks those that are made as it wants.
#[must_use]
pub fn map(stock: &Stock, role: Option<&RoleFit<'_>>, confidence: Confidence) -> Picture {
    let stretch = |fabric: &Fabric, grain| known::stretch(fabric, grain, stock).ok();
    let candidates = role.map(|fit| {
        let considered = fit.candidates.iter().filter(|one| !matches!(one.reason, Reason::OtherKind(_)));
        considered.map(|one| (one.fabric, Some(one.answer))).collect()
    });
    let mut shown: Vec<(&Fabric, Option<Answer>)> =
        candidates.unwrap_or_else(|| stock.fabrics.iter().map(|fabric| (fabric, None)).collect());
    shown.sort_by_key(|(fabric, _)| fabric.tag);
    let tags: Vec<String> = shown.iter().map(|(fabric, _)| fabric.tag.to_string()).collect();
    let spots = shown.iter().zip(&tags).map(|((fabric, answer), tag)| Spot {
        tag,
        crosswise: stretch(fabric, Grain::Crosswise),
        lengthwise: stretch(fabric, Grain::Lengthwise),
        answer: *answer,
    });
    let spots: Vec<Spot<'_>> = spots.collect();
    let asked = role.map(|fit| {
        let stretch = |grain| fit.role.demand.stretch(grain);
        ViewAsks { name: &fit.role.name, crosswise: stretch(Grain::Crosswise), lengthwise: stretch(Grain::Lengthwise) }
    });
    stash_map::draw(&StashMap { title: "the stash", spots: &spots, asked, confidence })
}

/// The card of a cloth.
#[must_use]
pub fn card(shown: &Shown<'_>, facts: &CardFacts) -> Picture {
    with_card(shown, facts, card::draw)
}

/// A sheet of the cards of at most four cloths.
#[must_use]
pub fn sheet<'c>(cards: impl Iterator<Item = (&'c Shown<'c>, &'c CardFacts)>) -> Picture {
    card::sheet(cards.map(|(shown, facts)| with_card(shown, facts, card::laid)).collect())
}

/// Puts the words on a card and draws it.
fn with_card<T>(shown: &Shown<'_>, facts: &CardFacts, draw: impl FnOnce(&Card<'_>) -> T) -> T {
    let fabric = shown.fabric;
    let notes = words::notes(fabric, facts, shown.unit);
    let notes: Vec<&str> = notes.iter().map(String::as_str).collect();
    let photo = shown.photos.iter().find_map(|seen| seen.thumbnail.as_ref()).map(Photo::address);
    draw(&Card {
        photo: photo.as_deref(),
        tag: &fabric.tag.to_string(),
        name: &fabric.name,
        fibre: &words::made_of(fabric),
        width: fabric.width,
        length: fabric.length,
        mass: &fabric.mass.map(|mass| mass.to_string()).unwrap_or_default(),
        stretch: &facts.stretch,
        growth: facts.growth,
        confidence: shown.confidence,
        date: &facts.tests.last().map(|test| quantity::pulled(&test.said, shown.here)).unwrap_or_default(),
        notes: &notes,
        unit: shown.unit,
    })
}
