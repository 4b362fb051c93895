//! A cloth in words.

use tenter_core::making::care::Care;
use tenter_core::{Grain, Length, Unit};

use crate::finding::cloth::{Shown, Status};
use crate::log::{Drape, Entry, Fabric, FabricChange, Fact, Finish, Garment, Id, Purpose, StoredTest};
use crate::plain::isolated;
use crate::words::advice::Spoken;
use crate::words::care as words_of_care;
use crate::words::doubt;
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
        isolated(&fabric.colour),
        said(fabric),
        if fabric.washed { "washed" } else { "not washed" }.to_owned(),
    ];
    parts.retain(|part| !part.is_empty());
    parts
}

/// Finish, drape, purpose and whether it lies one way, as far as that was said: `waxed, stiff, one way`.
#[must_use]
pub fn said(fabric: &Fabric) -> String {
    let parts = [
        fabric.finish.filter(|finish| *finish != Finish::Plain).map(|finish| finish.word().to_owned()),
        fabric.drape.map(|drape| drape.word().to_owned()),
        fabric.purpose.filter(|purpose| *purpose != Purpose::Outer).map(|purpose| format!("for {}", purpose.word())),
        fabric.one_way.then(|| "one way".to_owned()),
    ];
    parts.into_iter().flatten().collect::<Vec<_>>().join(", ")
}

/// How a cloth is made ready, unless it was washed, and how it is pressed and pinned.
#[must_use]
pub fn care(fabric: &Fabric) -> Vec<Spoken> {
    let care = Care::of(&fabric.described());
    let lines = words_of_care::spoken(&care).into_iter();
    lines.filter(|line| !(fabric.washed && line.about == "wash")).collect()
}

/// A cut was taken back, and the length stays: it was recorded after that cut.
pub const LENGTH_STAYS: &str =
    "the length on hand stays, because you recorded it after that cut; correct it with tenter cloth edit TAG --length";

/// What to do about the length of a cloth that was just said to be washed, where no marks tell what the wash took.
#[must_use]
pub fn after_edit(fabric: &Fabric, change: &FabricChange) -> Option<String> {
    let silent = change.washed != Some(true) || change.after_wash || change.length.is_some();
    if silent || fabric.length.is_none() {
        return None;
    }
    let tag = fabric.tag;
    Some(format!(
        "no marks tell what the wash took, so the length on hand stays; measure it: tenter cloth edit {tag} --length 2m"
    ))
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
    let as_read = doubt::stood_by(&stored.said.as_read);
    let parts = [status, handheld, &as_read, &isolated(&stored.said.note)];
    parts.into_iter().filter(|part| !part.is_empty()).collect::<Vec<_>>().join(", ")
}

/// The history, each step with its day.
#[must_use]
pub fn steps(shown: &Shown<'_>) -> Vec<(String, String)> {
    let said = |(entry, left): (&Entry, Option<Length>)| {
        (quantity::day(entry.at, shown.here), step(entry, left, shown), entry.who)
    };
    let told = shown.steps().into_iter().map(said).filter(|(_, words, _)| !words.is_empty());
    let by = |who| shown.people.name(who).map(|name| format!(" ({})", isolated(name))).unwrap_or_default();
    told.map(|(day, words, who)| (day, format!("{words}{}", by(who)))).collect()
}

/// One step of a cloth's history.
fn step(entry: &Entry, left: Option<Length>, shown: &Shown<'_>) -> String {
    let unit = shown.unit;
    let left = left.map(|length| format!("; {} on hand", cloth(length, unit))).unwrap_or_default();
    let noted = |text: &str| if text.is_empty() { String::new() } else { format!(": {}", isolated(text)) };
    match &entry.fact {
        Fact::FabricAdded(_) => format!("added{left}"),
        Fact::FabricChanged { change, .. } => {
            let what = changes(change, unit);
            format!("changed{}{left}", if what.is_empty() { String::new() } else { format!(": {what}") })
        }
        Fact::FabricCut { length, note, .. } => format!("cut {}{}{left}", cloth(*length, unit), noted(note)),
        Fact::FabricWashed { grain, marks, note, .. } => format!(
            "washed, {}: {} to {}{}",
            grain.word(),
            quantity::reading(marks.before, quantity::marks_unit(unit)),
            quantity::reading(marks.after, quantity::marks_unit(unit)),
            noted(note)
        ),
        Fact::FabricCutFor { length, garment, .. } => {
            let what = garment_of(shown.garments, *garment);
            format!("cut {} for {what}{left}", cloth(*length, unit))
        }
        Fact::FabricLearned { learned, .. } => format!("remembered: {}", memory::learned(learned)),
        Fact::LessonDropped { .. } => "what was remembered: retired".to_owned(),
        Fact::LessonRestored { .. } => "what was remembered: returned".to_owned(),
        Fact::PhotoAdded { said, .. } => format!("photograph added{}", noted(&said.note)),
        Fact::PhotoFirst { .. } => "another photograph put first".to_owned(),
        Fact::PhotoDropped { .. } => "photograph retired".to_owned(),
        Fact::PhotoRestored { .. } => "photograph returned".to_owned(),
        Fact::FabricRetracted { .. } => format!("taken back{left}"),
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
#[must_use]
pub fn changes(change: &FabricChange, unit: Unit) -> String {
    let mut parts: Vec<String> = Vec::new();
    let mut text = |label: &str, value: &Option<String>| {
        parts.extend(value.as_ref().map(|value| format!("{label} '{}'", isolated(value))));
    };
    text("name", &change.name);
    text("fibre", &change.fibre);
    text("colour", &change.colour);
    text("place", &change.place);
    text("note", &change.note);
    parts.extend(change.tag.map(|tag| format!("tag {tag}")));
    parts.extend(change.construction.map(|construction| construction.word().to_owned()));
    parts.extend(change.mass.map(|mass| mass.map_or("mass unknown".to_owned(), |mass| format!("mass {mass}"))));
    parts.extend(change.width.map(|width| match width {
        Some(width) => format!("width {}", quantity::width(width.0, unit)),
        None => "width unknown".to_owned(),
    }));
    let mut word = |label: &str, said: Option<Option<&'static str>>| {
        parts.extend(said.map(|word| format!("{label} {}", word.unwrap_or("unknown"))));
    };
    word("finish", change.finish.map(|one| one.map(Finish::word)));
    word("drape", change.drape.map(|one| one.map(Drape::word)));
    word("purpose", change.purpose.map(|one| one.map(Purpose::word)));
    parts.extend(change.one_way.map(|one_way| if one_way { "one way" } else { "either way" }.to_owned()));
    parts.extend(change.washed.map(|washed| match (washed, change.after_wash) {
        (true, true) => "washed, and the length is what the wash left".to_owned(),
        (true, false) => "washed".to_owned(),
        (false, true) => "not washed, and the length is that from before the wash".to_owned(),
        (false, false) => "not washed".to_owned(),
    }));
    match &change.shop {
        Some(Some(shop)) => parts.push(format!("seen at '{}'", isolated(&shop.place))),
        Some(None) => parts.push("bought".to_owned()),
        None => {}
    }
    if change.length.is_some() && !change.after_wash && change.shop.is_none() {
        parts.push("length measured".to_owned());
    }
    parts.join(", ")
}
