//! How to sew one cloth, as JSON.

use tenter_core::{Answer, Unit};

use crate::finding::handle::Handled;
use crate::log::Tag;
use crate::words::handle as words;

/// The JSON text, on one line.
#[must_use]
pub fn render(tag: Tag, handled: &Handled, unit: Unit) -> String {
    let (answer, lines) = (handled.answer.map(Answer::word), words::spoken(handled, unit));
    serde_json::json!({ "tag": tag.number(), "answer": answer, "lines": lines }).to_string()
}
