//! The people who pull, as text.

use crate::finding::people::Puller;
use crate::text::lines::Lines;
use crate::text::table::{self, Column};
use crate::words::people as words;

/// Everybody, one a row.
#[must_use]
pub fn list(all: &[Puller], columns: usize) -> String {
    let mut text = Lines::new(columns);
    if all.is_empty() {
        text.words("nobody has pulled yet; name somebody with tenter pull TAG --by NAME");
        return text.finish();
    }
    let heads = [("who", Column::Word), ("tests", Column::Number), ("repeats", Column::Text), ("", Column::Text)];
    let rows = all.iter().map(|one| {
        let here = if one.here { "pulls here" } else { "" };
        vec![words::called(one), one.tests.to_string(), words::repeats(one.repeatability), here.to_owned()]
    });
    text.block(&table::render(&heads, rows, columns));
    text.finish()
}
