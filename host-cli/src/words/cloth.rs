//! A cloth in words.

use tenter_core::{Grain, Length, Unit};

use crate::finding::cloth::{Shown, Status};
use crate::log::{Entry, Fabric, FabricChange, Fact, Garment, Id, StoredTest};
use crate::plain::isolated;
use crate::words::memory;
use crate::words::quantity::{self, cloth};

/// Where there is no cloth yet.
pub const NONE: &str =
    "the stash is empty; begin with tenter cloth add NAME, or type tenter demo for a file of samples to look round in";
/// Where nothing is retired.
pub const NONE_RETIRED: &str = "nothing is retired";

/// How many cloths of all are listed.
#[must_use]
pub fn count(listed: usize, all: usize, retired: bool) -> String {
    format!("{listed} of {all} {}", if retired { "retired" } else { "in the stash" })
}

/// A cloth and what is on hand, in one line.
#[must_use]
pub fn line_about(fabric: &Fabric, unit: Unit) -> String {
    let parts = [title(fabric), on_hand(fabric, unit), fabric.construction.word().to_owned()];
    parts.into_iter().filter(|part| !part.is_empty()).collect::<Vec<_>>().join(", ")
}

/// A cloth's tag and name.
#[must_use]
pub fn title(fabric: &Fabric) -> String {
    format!("{}  {}", fabric.tag, isolated(&fabric.name))
}

/// `1.20 m of 150 cm`, as far as it is known.
#[must_use]
pub fn on_hand(fabric: &Fabric, unit: Unit) -> String {
    match (fabric.length, fabric.width) {
        (Some(length), Some(width)) => format!("{} of {}", cloth(length, unit), quantity::width(width, unit)),
        (Some(length), None) => cloth(length, unit),
        (None, Some(width)) => format!("{} wide", quantity::width(width, unit)),
        (None, None) => String::new(),
    }
}

/// What is on hand, how it is made, of what, how heavy, and whether it was washed.
#[must_use]
pub fn facts(fabric: &Fabric, unit: Unit) -> Vec<String> {
    let mut parts = vec![
        on_hand(fabric, unit),
        fabric.construction.word().to_owned(),
        isolated(&fabric.fibre),
        fabric.mass.map(|mass| mass.to_string()).unwrap_or_default(),
        if fabric.washed { "washed" } else { "not washed" }.to_owned(),
    ];
    parts.retain(|part| !part.is_empty());
    parts
}

/// Where a cloth lies, or was seen and for how much, as a list says it.
#[must_use]
pub fn place(fabric: &Fabric) -> String {
    match &fabric.shop {
        Some(shop) => match &shop.price {
            Some(price) => format!("seen: {}, {price}", shop.place),
            None => format!("seen: {}", shop.place),
        },
        None => fabric.place.clone(),
    }
}

/// How to bring a retired cloth back.
#[must_use]
pub fn retired(fabric: &Fabric) -> String {
    format!("bring it back with tenter cloth return {}", fabric.tag)
}

/// How to measure a grain that was not measured.
#[must_use]
pub fn not_measured(fabric: &Fabric, grain: Grain) -> String {
    format!("not measured yet: tenter pull {} --grain {}", fabric.tag, grain.word())
}

/// Whether a test counts, where it comes from and what was said with it.
#[must_use]
pub fn status(shown: &Shown<'_>, stored: &StoredTest) -> String {
    let status = match shown.status(stored) {
        Status::Retired => "retired",
        Status::Counts => "counts",
        Status::BeforeWash => "counts for less: before a wash",
        Status::Doubted => "doubted, left out",
        Status::Older => "older",
    };
    let handheld = if stored.said.device.is_some() { "handheld" } else { "" };
    let parts = [status, handheld, &isolated(&stored.said.note)];
    parts.into_iter().filter(|part| !part.is_empty()).collect::<Vec<_>>().join(", ")
}

/// The history, each step with its day.
#[must_use]
pub fn steps(shown: &Shown<'_>) -> Vec<(String, String)> {
    let said =
        |(entry, left): (&Entry, Option<Length>)| (quantity::day(entry.at, shown.here), step(entry, left, shown));
    shown.steps().into_iter().map(said).filter(|(_, words)| !words.is_empty()).collect()
}

/// One step of a cloth's history.
fn step(entry: &Entry, left: Option<Length>, shown: &Shown<'_>) -> String {
    let unit = shown.unit;
    let left = left.map(|length| format!("; {} on hand", cloth(length, unit))).unwrap_or_default();
    let noted = |text: &str| if text.is_empty() { String::new() } else { format!(": {}", isolated(text)) };
    match &entry.fact {
        Fact::FabricAdded(_) => format!("added{left}"),
        Fact::FabricChanged { change, .. } => {
            let what = changed(change);
            format!("changed{}{left}", if what.is_empty() { String::new() } else { format!(": {what}") })
        }
        Fact::FabricCut { length, note, .. } => format!("cut {}{}{left}", cloth(*length, unit), noted(note)),
        Fact::FabricWashed { grain, marks, note, .. } => format!(
            "washed, {}: {} to {}{}",
            grain.word(),
            marks.before.show(unit),
            marks.after.show(unit),
            noted(note)
        ),
        Fact::FabricCutFor { length, garment, .. } => {
            let what = garment_of(shown.garments, *garment);
            format!("cut {} for {what}{left}", cloth(*length, unit))
        }
        Fact::FabricUncut { .. } => format!("a cut was taken back{left}"),
        Fact::FabricLearned { learned, .. } => format!("learned: {}", memory::learned(learned)),
        Fact::LessonDropped { .. } => "what was learned: retired".to_owned(),
        Fact::LessonRestored { .. } => "what was learned: returned".to_owned(),
        Fact::PhotoAdded { said, .. } => format!("photograph added{}", noted(&said.note)),
        Fact::PhotoFirst { .. } => "another photograph put first".to_owned(),
        Fact::PhotoDropped { .. } => "photograph retired".to_owned(),
        Fact::PhotoRestored { .. } => "photograph returned".to_owned(),
        Fact::FabricDropped { note, .. } => format!("retired{}", noted(note)),
        Fact::FabricRestored { .. } => "returned".to_owned(),
        _ => String::new(),
    }
}

fn garment_of(garments: &[Garment], id: Id) -> String {
    let garment = garments.iter().find(|garment| garment.id == id);
    garment.map_or_else(|| "a garment that is not in this log yet".to_owned(), memory::called)
}

/// What a change names.
fn changed(change: &FabricChange) -> String {
    let mut parts: Vec<String> = Vec::new();
    let mut text = |label: &str, value: &Option<String>| {
        parts.extend(value.as_ref().map(|value| format!("{label} '{}'", isolated(value))));
    };
    text("name", &change.name);
    text("fibre", &change.fibre);
    text("place", &change.place);
    text("note", &change.note);
    parts.extend(change.tag.map(|tag| format!("tag {tag}")));
    parts.extend(change.construction.map(|construction| construction.word().to_owned()));
    parts.extend(change.mass.map(|mass| mass.map_or("mass unknown".to_owned(), |mass| format!("mass {mass}"))));
    parts.extend(change.width.map(|width| match width {
        Some(width) => format!("width {}", quantity::width(width.0, Unit::Cm)),
        None => "width unknown".to_owned(),
    }));
    parts.extend(change.washed.map(|washed| if washed { "washed" } else { "not washed" }.to_owned()));
    match &change.shop {
        Some(Some(shop)) => parts.push(format!("seen at '{}'", isolated(&shop.place))),
        Some(None) => parts.push("bought".to_owned()),
        None => {}
    }
    if change.length.is_some() && change.shop != Some(None) {
        parts.push("length measured".to_owned());
    }
    parts.join(", ")
}
