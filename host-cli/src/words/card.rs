//! What a card says of a cloth, in words.

use tenter_core::Unit;

use crate::finding::drawn::CardFacts;
use crate::log::{Fabric, StoredTest};
use crate::words::cloth as about;
use crate::words::handle;
use crate::words::quantity;

/// Where it lies, how it was measured and how to sew it, each a line.
#[must_use]
pub fn notes(fabric: &Fabric, facts: &CardFacts, unit: Unit) -> Vec<String> {
    let mut notes = Vec::new();
    notes.extend((!fabric.place.is_empty()).then(|| format!("where: {}", fabric.place)));
    notes.extend(how(&facts.tests, unit));
    let care = about::care(fabric).into_iter();
    notes.extend(care.map(|line| format!("{}: {}", line.about, line.text)));
    notes.extend(facts.needle.as_ref().map(|needle| format!("needle: {}", handle::needle(needle))));
    notes.extend(facts.stitch.as_ref().map(|seam| format!("stitch: {}", handle::row(&seam.first))));
    notes
}

/// What it is made of, its colour, and what is said of its finish and drape.
#[must_use]
pub fn made_of(fabric: &Fabric) -> String {
    let parts = [fabric.fibre.as_str(), &fabric.colour, &about::said(fabric)];
    parts.into_iter().filter(|part| !part.is_empty()).collect::<Vec<_>>().join(", ")
}

/// How the tests were made that the first figure of the card comes from, on a line.
fn how(tests: &[StoredTest], unit: Unit) -> Option<String> {
    let newest = &tests.last()?.said.test;
    let count: usize = tests.iter().map(|stored| stored.said.test.pulls().len()).sum();
    let grain = newest.grain().word();
    let pulls = if count == 1 { "1 pull".to_owned() } else { format!("{count} pulls") };
    let of = if tests.len() > 1 { format!(" in {} tests", tests.len()) } else { String::new() };
    let by = if newest.load().is_known() { "with a known load" } else { "by hand" };
    let marks = newest.gauge().show(quantity::marks_unit(unit));
    let settled = if newest.settled() { ", settled" } else { "" };
    Some(format!("{grain}: {pulls}{of} {by}, {}, marks {marks}{settled}", newest.held().word()))
}
