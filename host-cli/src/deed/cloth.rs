//! Adding, changing, cutting, retiring and returning a cloth.

use tenter_core::Length;

use super::{Done, Refused, Thing, find};
use crate::finding::tag;
use crate::input::amount::{cloth, unit_of};
use crate::input::cloth::{TypedCloth, added, edited, short};
use crate::input::{Field, Why, Wrong};
use crate::log::{Fabric, FabricChange, Fact, Id};
use crate::store::Read;

/// Adds a cloth, under the next free tag where none was typed.
///
/// # Errors
///
/// A field that cannot be read, or a tag that is taken.
pub fn add(read: &dyn Read, typed: &TypedCloth) -> Done<()> {
    let mut change = added(typed)?;
    match change.tag {
        Some(tag) => free(read, tag, None)?,
        None => change.tag = Some(next_tag(read)?),
    }
    Ok((vec![Fact::FabricAdded(change)], ()))
}

/// Changes what is said about a cloth.
///
/// # Errors
///
/// No such cloth, a field that cannot be read, a tag that is taken, or nothing that changes.
pub fn edit(read: &dyn Read, which: &str, typed: &TypedCloth) -> Done<()> {
    let fabric = find::live_fabric(read, which)?;
    let change = edited(typed, &fabric)?;
    if change == FabricChange::default() {
        return Err(Refused::NothingChanged(Thing::Cloth));
    }
    if let Some(tag) = change.tag {
        free(read, tag, Some(fabric.id))?;
    }
    Ok((vec![Fact::FabricChanged { fabric: fabric.id, change }], ()))
}

/// Cuts a length off a cloth.
///
/// # Errors
///
/// No such cloth, one in a shop or of an unknown length, or more than there is.
pub fn cut(read: &dyn Read, which: &str, length: &str, note: &str) -> Done<()> {
    let cut = cloth(Field::Cut, length)?;
    if cut == Length::ZERO {
        return Err(Wrong::new(Field::Cut, length, Why::Zero).into());
    }
    let note = short(Field::Note, note)?;
    let fabric = find::live_fabric(read, which)?;
    let tag = fabric.tag;
    let had = fabric.length.ok_or(Refused::LengthNotKnown(tag))?;
    if fabric.is_seen() {
        return Err(Refused::InShop(tag));
    }
    if cut > had {
        let unit = unit_of(length).unwrap_or_default();
        return Err(Refused::NotSoMuch { tag, text: length.to_owned(), had, unit });
    }
    Ok((vec![Fact::FabricCut { fabric: fabric.id, length: cut, note }], ()))
}

/// Retires a cloth; hands it back.
///
/// # Errors
///
/// No such cloth, or a note that cannot be read.
pub fn retire(read: &dyn Read, which: &str, note: &str) -> Done<Fabric> {
    let note = short(Field::Note, note)?;
    let fabric = find::live_fabric(read, which)?;
    Ok((vec![Fact::FabricDropped { fabric: fabric.id, note }], fabric))
}

/// Returns a retired cloth; hands it back.
///
/// # Errors
///
/// No such cloth, one that is not retired, or one whose tag is taken by now.
pub fn restore(read: &dyn Read, which: &str) -> Done<Fabric> {
    let fabric = find::fabric(read, which)?;
    if !fabric.dropped {
        return Err(Refused::NotRetired(fabric.tag));
    }
    free(read, fabric.tag, Some(fabric.id))?;
    Ok((vec![Fact::FabricRestored { fabric: fabric.id }], fabric))
}

/// The lowest number above all tags so far; where those have run out, the lowest that is free.
fn next_tag(read: &dyn Read) -> Result<u16, Refused> {
    let tags: Vec<u16> = read.fabrics()?.iter().map(|fabric| fabric.tag).collect();
    let highest = tags.iter().copied().max().unwrap_or(0);
    let next = highest.checked_add(1).or_else(|| (1..u16::MAX).find(|tag| !tags.contains(tag)));
    next.ok_or(Refused::NoTagLeft)
}

/// Refuses a tag that another live cloth has.
fn free(read: &dyn Read, number: u16, but: Option<Id>) -> Result<(), Refused> {
    match tag::live(read, number)?.into_iter().find(|fabric| Some(fabric.id) != but) {
        Some(Fabric { name: by, .. }) => Err(Refused::TagTaken { tag: number, by, free: next_tag(read)? }),
        None => Ok(()),
    }
}
