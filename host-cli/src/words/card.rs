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
    notes.extend(facts.newest.iter().map(|test| how(test, unit)));
    notes.extend(facts.needle.as_ref().map(|needle| format!("needle: {}", handle::needle(needle))));
    notes.extend(facts.stitch.as_ref().map(|seam| format!("stitch: {}", handle::sewn(seam))));
    notes
}

/// How a test was made, on a line.
fn how(stored: &StoredTest, unit: Unit) -> String {
    let test = &stored.said.test;
    let pulls = if test.pulls().len() == 1 { "1 pull".to_owned() } else { format!("{} pulls", test.pulls().len()) };
    let marks = test.gauge().show(quantity::marks_unit(unit));
    let settled = if test.settled() { ", settled" } else { "" };
    format!("{pulls} by hand, {}, marks {marks}{settled}", test.held().word())
}
