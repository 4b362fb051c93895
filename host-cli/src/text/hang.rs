//! Which mass to hang, as text.

use crate::finding::hang::Hang;
use crate::text::advice;
use crate::text::lines::{HEADING, Lines};
use crate::words::hang as words;

/// The text.
#[must_use]
pub fn render(hang: &Hang, why: bool, columns: usize) -> String {
    let mut text = Lines::new(columns);
    advice::write(&mut text, &words::cautions(hang), why);
    text.blank();
    if let Some(head) = words::headline(hang) {
        advice::head(&mut text, HEADING, &head, "");
    }
    advice::write(&mut text, &words::found(hang), why);
    text.finish()
}
