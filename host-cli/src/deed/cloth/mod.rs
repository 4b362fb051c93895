//! Adding, changing, cutting, retiring and returning a cloth.

mod history;

use tenter_core::Length;

use super::{Done, Refused, Thing, find};
use crate::finding::tag;
use crate::input::amount::{cloth, unit_of};
use crate::input::cloth::{TypedCloth, added, edited, is_no, short};
use crate::input::{Field, Why, Wrong};
use crate::log::json::Mm;
use crate::log::{Fabric, FabricChange, Fact, Id, Subject};
use crate::store::{Read, WhichTests};

/// Adds a cloth, under the next free tag where none was typed.
///
/// # Errors
///
/// A field that cannot be read, or a tag that is taken.
pub fn add(read: &dyn Read, typed: &TypedCloth) -> Done<()> {
    let mut change = added(typed)?;
    match change.tag {
        Some(tag) => {
            free(read, tag, None)?;
            not_lent(read, tag)?;
        }
        None => change.tag = Some(next_tag(read)?),
    }
    Ok((vec![Fact::FabricAdded(change)], ()))
}

/// Changes what is said about a cloth. One that is now said to be washed is as long and wide as its marks say the wash
/// left it, unless its length is typed too; taking that back gives it its length again.
///
/// # Errors
///
/// No such cloth, a field that cannot be read, a tag that is taken, or nothing that changes.
pub fn edit(read: &dyn Read, which: &str, typed: &TypedCloth) -> Done<()> {
    let fabric = find::live_fabric(read, which)?;
    let unbuys = typed.bought.as_deref().is_some_and(is_no);
    let said = TypedCloth { bought: typed.bought.clone().filter(|_| !unbuys), ..typed.clone() };
    let mut change = edited(&said, &fabric)?;
    // A page sends the number that it showed.
    change.tag = change.tag.filter(|tag| *tag != fabric.tag.number());
    if unbuys {
        let before = history::before_it_was_bought(read, &fabric)?;
        change.shop = Some(before.shop);
        change.length = Some(before.length.map(Mm));
        change.washed = (fabric.washed != before.washed).then_some(before.washed);
    } else if let Some(washed) = change.washed.filter(|washed| *washed != fabric.washed) {
        let [length, width] = if washed {
            history::after_wash(&fabric)
        } else {
            history::before_wash(&read.history(Subject::Fabric(fabric.id))?, &fabric)
        };
        let (length, width) = (length.filter(|_| change.length.is_none()), width.filter(|_| change.width.is_none()));
        change.after_wash = length.is_some() || width.is_some();
        change.length = length.map(|length| Some(Mm(length))).or(change.length);
        change.width = width.map(|width| Some(Mm(width))).or(change.width);
    }
    if change == FabricChange::default() {
        return Err(Refused::NothingChanged(Thing::Cloth));
    }
    if let Some(tag) = change.tag {
        free(read, tag, Some(fabric.id))?;
        not_lent(read, tag)?;
    }
    Ok((vec![Fact::FabricChanged { fabric: fabric.id, change }], ()))
}

/// Cuts a length off a cloth; `instead` of the newest cut, which was a mistake.
///
/// # Errors
///
/// No such cloth, one in a shop or of an unknown length, more than there is, or no cut to put right.
pub fn cut(read: &dyn Read, which: &str, length: &str, note: &str, instead: bool) -> Done<()> {
    let cut = cloth(Field::Cut, length)?;
    if cut == Length::ZERO {
        return Err(Wrong::new(Field::Cut, length, Why::Zero).into());
    }
    let note = short(Field::Note, note)?;
    let fabric = find::live_fabric(read, which)?;
    let tag = fabric.tag;
    let (mut facts, mut had) = (Vec::new(), fabric.length);
    if had.is_some() && fabric.is_seen() {
        return Err(Refused::InShop(tag));
    }
    if instead {
        let (entry, length) = history::newest_cut(read, &fabric)?;
        facts.push(Fact::FabricRetracted { fabric: fabric.id, entry });
        had = length;
    }
    let had = had.ok_or(Refused::LengthNotKnown(tag))?;
    if cut > had {
        let unit = unit_of(length).unwrap_or_default();
        return Err(Refused::NotSoMuch { tag, text: length.to_owned(), had, unit });
    }
    facts.push(Fact::FabricCut { fabric: fabric.id, length: cut, note });
    Ok((facts, ()))
}

/// Takes the newest cut back; hands back the length that was on hand.
///
/// # Errors
///
/// No such cloth, or no cut to take back.
pub fn uncut(read: &dyn Read, which: &str) -> Done<Option<Length>> {
    let fabric = find::live_fabric(read, which)?;
    let (entry, _) = history::newest_cut(read, &fabric)?;
    Ok((vec![Fact::FabricRetracted { fabric: fabric.id, entry }], fabric.length))
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
    free(read, fabric.tag.number(), Some(fabric.id))?;
    Ok((vec![Fact::FabricRestored { fabric: fabric.id }], fabric))
}

/// The next tag of those that are given at this desk.
pub(super) fn next_tag(read: &dyn Read) -> Result<u16, Refused> {
    let given: Vec<u16> = read.fabrics()?.iter().map(|fabric| fabric.tag.number()).collect();
    tag::next(read, &given)?.ok_or(Refused::NoTagLeft(read.desk()?.tags))
}

/// Refuses a tag that another live cloth has.
fn free(read: &dyn Read, number: u16, but: Option<Id>) -> Result<(), Refused> {
    match tag::live(read, number)?.into_iter().find(|fabric| Some(fabric.id) != but) {
        Some(Fabric { name: by, .. }) => Err(Refused::TagTaken { tag: number, by, free: next_tag(read)? }),
        None => Ok(()),
    }
}

/// Refuses a tag that a handheld may give to a cloth, unless a test with it waits in the inbox: that is the cloth.
fn not_lent(read: &dyn Read, number: u16) -> Result<(), Refused> {
    let Some(device) = read.desk()?.borrower(number) else { return Ok(()) };
    let waits = read.tests(WhichTests::Inbox)?.iter().any(|test| test.said.tag == Some(number));
    if waits { Ok(()) } else { Err(Refused::TagLent { tag: number, device, free: next_tag(read)? }) }
}
