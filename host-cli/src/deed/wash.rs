//! Storing marks before and after a wash.

use tenter_core::making::washing;
use tenter_core::{Grain, Length, Unit};

use super::{Done, Refused, find};
use crate::finding::wash::WashChange;
use crate::input::amount::cloth;
use crate::input::cloth::short;
use crate::input::{BARE, Field, Why, Wrong, making};
use crate::log::{Entry, Fabric, Fact, Id, Subject, WashMarks, fold};
use crate::store::Read;

/// The marks along one grain.
pub type GrainMarks = (Grain, WashMarks);

/// Marks before and after a wash, as typed.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct TypedWash {
    /// Along the length: `50cm to 48.5cm`.
    pub lengthwise: Option<String>,
    /// Across the width.
    pub crosswise: Option<String>,
    /// Between two lines of the scale.
    pub division: Option<String>,
    /// The length needed after the wash.
    pub need: Option<String>,
    /// The unit of bare numbers; none for centimetres.
    pub unit: Option<Unit>,
}

/// The marks of each grain that was typed, and the length needed.
///
/// # Errors
///
/// A field that cannot be read, or no marks at all.
pub fn marks(typed: &TypedWash) -> Result<(Vec<GrainMarks>, Option<Length>), Refused> {
    let mut washed = Vec::new();
    for (grain, field, text) in [
        (Grain::Lengthwise, Field::WashedLengthwise, &typed.lengthwise),
        (Grain::Crosswise, Field::WashedCrosswise, &typed.crosswise),
    ] {
        if let Some(text) = text {
            washed.push((grain, making::marks(field, text, typed.division.as_deref(), typed.unit.unwrap_or(BARE))?));
        }
    }
    if washed.is_empty() && typed.need.is_none() {
        return Err(Refused::NoWashMarks);
    }
    Ok((washed, typed.need.as_deref().map(|text| cloth(Field::Need, text)).transpose()?))
}

/// What a wash did along each grain that was measured.
///
/// # Errors
///
/// Marks that no change can be made of.
pub fn changes(typed: &TypedWash, washed: &[GrainMarks]) -> Result<Vec<WashChange>, Wrong> {
    let change = |(grain, marks): &GrainMarks| {
        let (field, text) = match grain {
            Grain::Lengthwise => (Field::WashedLengthwise, &typed.lengthwise),
            _ => (Field::WashedCrosswise, &typed.crosswise),
        };
        let wrong = |error| Wrong::new(field, text.as_deref().unwrap_or_default(), Why::Making(error));
        let change = washing::change(marks.before, marks.after, making::scale(marks)?).map_err(wrong)?;
        Ok(WashChange::of(*grain, change))
    };
    washed.iter().map(change).collect()
}

/// Stores the marks with a cloth; hands it back.
///
/// # Errors
///
/// No such cloth, or a note that cannot be read.
pub fn store(read: &dyn Read, which: &str, washed: &[GrainMarks], note: &str) -> Done<Fabric> {
    let note = short(Field::Note, note)?;
    let fabric = find::live_fabric(read, which)?;
    let fact = |(grain, marks): &GrainMarks| Fact::FabricWashed {
        fabric: fabric.id,
        grain: *grain,
        marks: *marks,
        note: note.clone(),
    };
    Ok((washed.iter().map(fact).collect(), fabric))
}

/// Whether the length and width of a cloth are still those that a wash left by its marks, as far as its entries tell.
#[must_use]
pub fn is_as_washed(history: &[Entry]) -> bool {
    let measured = history.iter().rev().find_map(|entry| match &entry.fact {
        Fact::FabricChanged { change, .. } if change.length.is_some() || change.width.is_some() => {
            Some(change.after_wash)
        }
        _ => None,
    });
    measured.unwrap_or(false)
}

/// Takes back the newest marks of a cloth, along one grain or of the newest wash; hands it back with what was taken back.
///
/// # Errors
///
/// No such cloth, or no marks to take back.
pub fn undo(read: &dyn Read, which: &str, grain: Option<Grain>) -> Done<(Fabric, Vec<GrainMarks>)> {
    let fabric = find::live_fabric(read, which)?;
    let history = read.history(Subject::Fabric(fabric.id))?;
    let marks = |entry: &Entry| match entry.fact {
        Fact::FabricWashed { grain: along, marks, .. } => Some((entry.id, along, marks)),
        _ => None,
    };
    let standing: Vec<_> = fold::standing(&history).filter_map(marks).collect();
    let wanted = |along: Grain| grain.is_none_or(|grain| grain == along);
    let newest = standing.iter().rev().find(|(_, along, _)| wanted(*along));
    let (newest, first, _) = *newest.ok_or(Refused::NothingWashed(fabric.tag))?;
    // Both grains of one wash are stored at once, in identifiers that follow each other.
    let at_once = |id: Id| newest.at().as_millisecond().abs_diff(id.at().as_millisecond()) <= 1;
    let back = standing
        .into_iter()
        .filter(|(id, along, _)| *id == newest || (grain.is_none() && *along != first && at_once(*id)));
    let back: Vec<_> = back.collect();
    let facts = back.iter().map(|(entry, ..)| Fact::FabricRetracted { fabric: fabric.id, entry: *entry });
    let facts = facts.collect();
    Ok((facts, (fabric, back.into_iter().map(|(_, grain, marks)| (grain, marks)).collect())))
}
