//! What is remembered with a cloth, as text.

use crate::finding::memory::Seen;
use crate::log::{Fabric, Garment, Here};
use crate::text::lines::Lines;
use crate::words::cloth::title;
use crate::words::memory;

/// The photographs of a cloth.
#[must_use]
pub fn photos(fabric: &Fabric, seen: &[Seen], here: Here, columns: usize) -> String {
    let mut text = Lines::new(columns);
    text.heading(&title(fabric));
    if seen.is_empty() {
        text.words(&memory::no_photo(fabric));
    }
    for seen in seen {
        text.row("photo", &memory::photo(seen, here));
    }
    text.finish()
}

/// What was learned of a cloth.
#[must_use]
pub fn lessons(fabric: &Fabric, garments: &[Garment], here: Here, columns: usize) -> String {
    let mut text = Lines::new(columns);
    text.heading(&title(fabric));
    for (number, lesson) in (1..).zip(&fabric.lessons) {
        text.row("learned", &memory::lesson(number, lesson, garments, here));
    }
    text.finish()
}
