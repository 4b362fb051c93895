//! Whether an entry from elsewhere is one that this program writes: so long as that holds, nothing that comes in can do what
//! nothing that is typed can.

use jiff::Timestamp;
use serde_json::Value;
use tenter_core::{Length, Limit, Load};

use super::{Fault, Many, Unsound};
use crate::input::amount::MAX_MILLINEWTONS;
use crate::input::cloth::MAX_TEXT;
use crate::log::json::Mm;
use crate::log::pattern::DemandField;
use crate::log::{Entry, FabricChange, Fact, GarmentChange, Id, RoleChange, Tested};

/// The longest list in an entry.
pub const MAX_LIST: usize = 256;

/// Refuses an entry that no verb of this program would have written until `latest`.
///
/// # Errors
///
/// The first [`Fault`] found.
pub fn check(entry: &Entry, value: &Value, latest: Timestamp) -> Result<(), Fault> {
    texts(value)?;
    match unsound(entry, value, latest) {
        Some(what) => Err(Fault::Unsound(what)),
        None => Ok(()),
    }
}

/// No text that can be typed holds a control character or is longer than one line takes, and no list goes on and on.
fn texts(value: &Value) -> Result<(), Fault> {
    match value {
        Value::String(text) if text.chars().any(char::is_control) => Err(Fault::Unprintable),
        Value::String(text) if text.chars().nth(MAX_TEXT).is_some() => Err(Fault::LongText { most: MAX_TEXT }),
        Value::Array(list) if list.len() > MAX_LIST => {
            Err(Fault::TooMany { most: MAX_LIST as u64, what: Many::InAList })
        }
        Value::Array(list) => list.iter().try_for_each(texts),
        Value::Object(fields) => fields.values().try_for_each(texts),
        Value::String(_) | Value::Null | Value::Bool(_) | Value::Number(_) => Ok(()),
    }
}

/// A handheld's clock may run far ahead, up to what its seconds can hold; what it saved bears that time for ever.
fn latest_for(fact: &Fact, latest: Timestamp) -> Timestamp {
    match fact {
        Fact::TestStored(Tested { device: Some(_), .. }) => {
            latest.max(Timestamp::from_second(u32::MAX.into()).unwrap_or(latest))
        }
        _ => latest,
    }
}

fn unsound(entry: &Entry, value: &Value, latest: Timestamp) -> Option<Unsound> {
    let latest = latest_for(&entry.fact, latest);
    let id = value.get("id").and_then(Value::as_str).unwrap_or_default();
    if Id::from_elsewhere(id, latest) != Some(entry.id) {
        let is_ahead = entry.id.at() > latest && entry.id.to_string() == id;
        return Some(if is_ahead { Unsound::Ahead } else { Unsound::Id });
    }
    if entry.at != entry.id.at() && entry.at != Timestamp::default() {
        return Some(Unsound::Time);
    }
    let negative = |length: Length| length < Length::ZERO;
    match &entry.fact {
        Fact::FabricAdded(change) if change.tag.is_none() || change.name.is_none() => Some(Unsound::Unnamed),
        Fact::FabricAdded(change) | Fact::FabricChanged { change, .. } => of_cloth(change),
        Fact::TagsTaken { tags: Some(tags), .. } if tags.least == 0 || tags.least > tags.most => Some(Unsound::TagZero),
        Fact::FabricCut { length, .. } | Fact::FabricCutFor { length, .. } if negative(*length) => {
            Some(Unsound::Negative)
        }
        Fact::GarmentBegun(change) if change.number.is_none() || change.name.is_none() => Some(Unsound::Unnumbered),
        Fact::GarmentBegun(change) | Fact::GarmentChanged { change, .. } => of_garment(change),
        Fact::FabricWashed { marks, .. } if marks.before <= Length::ZERO || negative(marks.after) => {
            Some(Unsound::Marks)
        }
        Fact::FabricWashed { marks, .. } if marks.division <= Length::ZERO => Some(Unsound::Division),
        Fact::TestStored(said) => of_test(said, latest),
        Fact::PatternAdded(change) if change.name.is_none() => Some(Unsound::EmptyName),
        Fact::PatternAdded(change) | Fact::PatternChanged { change, .. } => is_blank(change.name.as_ref()),
        Fact::RoleAdded { change, .. } if change.name.is_none() => Some(Unsound::EmptyName),
        Fact::RoleAdded { change, .. } | Fact::RoleChanged { change, .. } => of_role(change),
        // One whose name was taken out has none at all.
        Fact::PersonNamed { name, .. } if !name.is_empty() => is_blank(Some(name)),
        _ => None,
    }
}

fn is_blank(name: Option<&String>) -> Option<Unsound> {
    name.is_some_and(|name| name.trim().is_empty()).then_some(Unsound::EmptyName)
}

fn of_test(said: &Tested, latest: Timestamp) -> Option<Unsound> {
    if said.pulled > latest {
        return Some(Unsound::Ahead);
    }
    if matches!(said.test.load(), Load::Force { millinewtons } if !(1..=MAX_MILLINEWTONS).contains(&millinewtons)) {
        return Some(Unsound::Load);
    }
    None
}

fn of_role(change: &RoleChange) -> Option<Unsound> {
    if let Some(blank) = is_blank(change.name.as_ref()).or_else(|| is_blank(change.view.as_ref())) {
        return Some(blank);
    }
    let recovery = change.demand.and_then(|DemandField(demand)| demand.recovery_at_least);
    if recovery.zip(Limit::milli_percent(100_000).ok()).is_some_and(|(least, whole)| least.ratio() > whole.ratio()) {
        return Some(Unsound::Recovery);
    }
    let cloth = change.cloth.flatten()?;
    (cloth.length < Length::ZERO || cloth.width <= Length::ZERO).then_some(Unsound::Cloth)
}

fn of_garment(change: &GarmentChange) -> Option<Unsound> {
    if change.number == Some(0) {
        return Some(Unsound::NumberZero);
    }
    is_blank(change.name.as_ref()).map(|_| Unsound::NoGarmentName)
}

fn of_cloth(change: &FabricChange) -> Option<Unsound> {
    let negative = |length: Option<Option<Mm>>| length.flatten().is_some_and(|Mm(length)| length < Length::ZERO);
    if change.tag == Some(0) {
        return Some(Unsound::TagZero);
    }
    is_blank(change.name.as_ref())
        .or_else(|| (negative(change.width) || negative(change.length)).then_some(Unsound::Negative))
}
