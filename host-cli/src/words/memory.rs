//! What is remembered with a cloth, in words.

use tenter_core::Unit;
use tenter_core::making::source::Source;

use crate::finding::memory::{LastTime, Seen};
use crate::log::{Garment, Here, Learned, Lesson, Tag};
use crate::plain::isolated;
use crate::words::advice::Spoken;
use crate::words::pair::named;
use crate::words::quantity;

/// How it was sewn, how it wore, and the note.
#[must_use]
pub fn learned(learned: &Learned) -> String {
    let sewn = learned.sewn().into_iter().map(|(label, words)| format!("{label} {}", isolated(words)));
    let mut parts = vec![sewn.collect::<Vec<_>>().join(", ")];
    parts.extend((!learned.wore.is_empty()).then(|| format!("worn: {}", isolated(&learned.wore))));
    parts.extend((!learned.note.is_empty()).then(|| isolated(&learned.note)));
    parts.retain(|part| !part.is_empty());
    parts.join("; ")
}

/// What was learned, with its day, its number and the garment that taught it.
#[must_use]
pub fn lesson(number: usize, lesson: &Lesson, garments: &[Garment], here: Here) -> String {
    let day = quantity::day(lesson.id.at(), here);
    let garment = garments.iter().find(|garment| Some(garment.id) == lesson.learned.garment);
    let of = garment.map(|garment| format!(" ({})", called(garment))).unwrap_or_default();
    let retired = if lesson.dropped { "; retired" } else { "" };
    format!("{number}: {day} {}{of}{retired}", learned(&lesson.learned))
}

/// `garment 3, Play coat`.
#[must_use]
pub fn called(garment: &Garment) -> String {
    format!("garment {}, {}", garment.number, isolated(&garment.name))
}

/// A photograph with its number, size, colour and note.
#[must_use]
pub fn photo(seen: &Seen, here: Here) -> String {
    let said = &seen.photo.said;
    let (day, size) = (quantity::day(seen.photo.id.at(), here), format!("{} × {}", said.width_px, said.height_px));
    let note = if said.note.is_empty() { String::new() } else { format!(", {}", isolated(&said.note)) };
    let state = match (&seen.thumbnail, seen.photo.dropped) {
        (_, true) => "; retired",
        (None, false) => "; not in this log yet",
        (Some(_), false) => "",
    };
    format!("{}: {day}, {size}, colour {}{note}{state}", seen.number, said.colour)
}

/// How it was done the last time.
#[must_use]
pub fn last_time(told: &LastTime) -> Spoken {
    let of = told.like.as_ref().map(|cloth| format!(" with {}, a cloth like it", named(cloth))).unwrap_or_default();
    let text = format!("the last time{of}: {}", learned(&told.learned));
    Spoken::note("memory", text, format!("you said so on {}", told.day), Source::Own)
}

/// A length that open garments keep, and which.
#[must_use]
pub fn kept(length: tenter_core::Length, garment: &Garment, unit: Unit) -> String {
    format!("{} is kept for {}", quantity::cloth_needed(length, unit), called(garment))
}

/// The same among several cloths, by the tag of the cloth.
#[must_use]
pub fn kept_of(tag: Tag, length: tenter_core::Length, garment: &Garment, unit: Unit) -> String {
    format!("{} of {tag} is kept for {}", quantity::cloth_needed(length, unit), called(garment))
}

/// How to add the first photograph.
#[must_use]
pub fn no_photo(fabric: &crate::log::Fabric) -> String {
    format!("no photograph yet; add one with tenter cloth picture {} FILE", fabric.tag)
}
