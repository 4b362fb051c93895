//! Which mass to hang, as JSON.

use crate::finding::hang::Hang;
use crate::words::hang as words;

/// The JSON text, on one line.
#[must_use]
pub fn render(hang: &Hang) -> String {
    let lines = [words::cautions(hang), words::found(hang)].concat();
    serde_json::json!({ "grams": hang.grams(), "lines": lines }).to_string()
}
