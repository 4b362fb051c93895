//! Sizes, openings, elastic and zips, as JSON.

use tenter_core::Answer;

use crate::finding::size::Sized;
use crate::words::size as words;

/// The JSON text, on one line.
#[must_use]
pub fn render(sized: &Sized) -> String {
    serde_json::json!({ "answer": sized.answer.map(Answer::word), "bags": sized.bags, "lines": words::spoken(sized, true) }).to_string()
}
