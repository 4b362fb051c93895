//! What a card says of a cloth, in words.

use tenter_core::Unit;

use crate::finding::drawn::CardFacts;
use crate::log::{Fabric, StoredTest};
use crate::words::handle;
use crate::words::quantity;

/// Where it lies, how it was measured and how to sew it, each a line.
#[must_use]
pub fn notes(fabric: &Fabric, facts: &CardFacts, unit: Unit) -> Vec<String> {
    let mut notes = Vec::new();
    notes.extend((!fabric.place.is_empty()).then(|| format!("where: {}", fabric.place)));
    notes.extend(how(&facts.tests, unit));
    notes.extend(facts.needle.as_ref().map(|needle| format!("needle: {}", handle::needle(needle))));
    notes.extend(facts.stitch.as_ref().map(|seam| format!("stitch: {}", handle::row(&seam.first))));
    notes
}

/// How the tests were made, on a line.
fn how(tests: &[StoredTest], unit: Unit) -> Option<String> {
    let newest = &tests.last()?.said.test;
    let count: usize = tests.iter().map(|stored| stored.said.test.pulls().len()).sum();
    let pulls = if count == 1 { "1 pull".to_owned() } else { format!("{count} pulls") };
    let of = if tests.len() > 1 { format!(" in {} tests", tests.len()) } else { String::new() };
    let by = if newest.load().is_known() { "with a known load" } else { "by hand" };
    let marks = newest.gauge().show(quantity::marks_unit(unit));
    let settled = if newest.settled() { ", settled" } else { "" };
    Some(format!("{pulls}{of} {by}, {}, marks {marks}{settled}", newest.held().word()))
}
