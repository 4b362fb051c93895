//! Which tags are given where: ranges that desks and phones take, and blocks that are lent to handhelds.

use std::collections::HashSet;

use super::{Done, Refused};
use crate::input::{Field, Why, Wrong};
use crate::log::{Desk, Fact, FreeTags, HeldTags, Id, Ids, TagHolder, TagRange, held};
use crate::store::{Change as _, LogWithDrafts, Read, WhichTests};

/// How many tags are lent to a handheld at a time.
const LENT: u16 = 20;
/// A handheld that has fewer left gets another block.
const FEW: u16 = 5;

/// Reads the tags that are given at a desk: a range, or `all`.
///
/// # Errors
///
/// A text that is neither.
pub fn parse(text: &str) -> Result<Option<TagRange>, Wrong> {
    if text.trim().eq_ignore_ascii_case("all") {
        return Ok(None);
    }
    TagRange::parse(text).map(Some).ok_or_else(|| Wrong::new(Field::Tags, text, Why::NotTags))
}

/// Gives tags of this range alone here from now on, or all that nobody else holds, and lets every copy of the log know.
///
/// # Errors
///
/// A range that meets one that another desk or phone holds, or a log that cannot be written.
pub fn give(log: &mut dyn LogWithDrafts, kind: TagHolder, range: Option<TagRange>) -> Result<(), Refused> {
    let desk = log.desk()?;
    let copy = desk.copy.unwrap_or_else(|| Ids::after(log.here(), None).next());
    // Kept first: what is cut off after it is done again under the same name.
    if desk.copy.is_none() && range.is_some() {
        log.set_desk(&Desk { copy: Some(copy), ..desk.clone() })?;
    }
    log.change(|read| Ok::<_, Refused>((taken(read, kind, copy, range)?, ())))?;
    let copy = desk.copy.or_else(|| range.map(|_| copy));
    Ok(log.set_desk(&Desk { copy, tags: range, ..desk })?)
}

/// What takes a range, unless it is held already.
fn taken(read: &dyn Read, by: TagHolder, holder: Id, tags: Option<TagRange>) -> Result<Vec<Fact>, Refused> {
    let held = read.held_tags()?;
    let mine = held.iter().find(|held| held.holder == holder).map(|held| held.tags);
    if mine == tags {
        return Ok(Vec::new());
    }
    if let Some(range) = tags {
        // What is lent to a handheld may lie within: it keeps that, and it is not given here.
        let meets =
            |other: &&HeldTags| other.holder != holder && other.kind != TagHolder::Handheld && other.tags.meets(range);
        if let Some(other) = held.iter().find(meets) {
            let who = read.people()?.name(other.who).map(str::to_owned);
            return Err(Refused::TagsHeld { range, held: Box::new(*other), who, free: beyond(range, &held) });
        }
    }
    Ok(vec![Fact::TagsTaken { holder, by, tags }])
}

/// The first range as long as this one, behind it, that nobody holds.
fn beyond(range: TagRange, held: &[HeldTags]) -> Option<TagRange> {
    let length = range.most - range.least;
    let behind = |range: &TagRange| {
        let least = range.most.checked_add(1)?;
        Some(TagRange { least, most: least.checked_add(length)? })
    };
    core::iter::successors(Some(range), behind).find(|range| !held.iter().any(|held| held.tags.meets(*range)))
}

/// Gives tags back that somebody holds who is gone; hands back who held them.
///
/// # Errors
///
/// A text that is no range, or a range that nobody holds.
pub fn give_back(read: &dyn Read, text: &str) -> Done<HeldTags> {
    let range = TagRange::parse(text).ok_or_else(|| Wrong::new(Field::Tags, text, Why::NotTags))?;
    let found = read.held_tags()?.into_iter().find(|held| held.tags == range);
    let found = found.ok_or(Refused::TagsNotHeld(range))?;
    Ok((vec![Fact::TagsTaken { holder: found.holder, by: found.kind, tags: None }], found))
}

/// The tags lent to a handheld: from the lowest that no cloth and no test has to the last, with what is to be stored before
/// they are sent. It keeps its block until few of it are left; none where this desk has none to lend.
///
/// # Errors
///
/// A log that cannot be read.
pub fn lend(read: &dyn Read, device: u32) -> Done<Option<TagRange>> {
    let (held, holder) = (read.held_tags()?, held::of_handheld(device));
    let mut given: HashSet<u16> = read.fabrics()?.iter().map(|fabric| fabric.tag.number()).collect();
    given.extend(read.tests(WhichTests::Inbox)?.iter().filter_map(|test| test.said.tag));
    if let Some(own) = held.iter().find(|held| held.holder == holder) {
        let highest = given.iter().copied().filter(|tag| own.tags.holds(*tag)).max();
        let least = highest.map_or(own.tags.least, |highest| highest.saturating_add(1));
        if own.tags.most.saturating_sub(least) >= FEW - 1 {
            return Ok((Vec::new(), Some(TagRange { least, most: own.tags.most })));
        }
    }
    let desk = read.desk()?;
    let free = FreeTags::of(&held, desk.copy, desk.tags);
    let may_lend = |block: &TagRange| (block.least..=block.most).all(|tag| free.holds(tag) && !given.contains(&tag));
    // At the end of a hundred a block is out of the way of the next tags of a desk for longest.
    let from = |least: u16| least.checked_add(LENT - 1).map(|most| TagRange { least, most });
    let ends = (0..=u16::MAX / 100).filter_map(|hundred| from(hundred.checked_mul(100)?.checked_add(100 - LENT)?));
    let others = (free.range.least..=free.range.most).step_by(LENT.into()).filter_map(from);
    let Some(block) = ends.chain(others).find(may_lend) else { return Ok((Vec::new(), None)) };
    Ok((vec![Fact::TagsTaken { holder, by: TagHolder::Handheld, tags: Some(block) }], Some(block)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::log::{FabricChange, Here};
    use crate::store::memory::Memory;

    fn range(least: u16, most: u16) -> TagRange {
        TagRange { least, most }
    }

    fn cloth(tag: u16) -> Fact {
        Fact::FabricAdded(FabricChange { tag: Some(tag), name: Some("twill".into()), ..FabricChange::default() })
    }

    fn lent(log: &mut Memory, device: u32) -> Option<TagRange> {
        log.change(|read| lend(read, device)).unwrap().1
    }

    fn next(log: &Memory) -> Option<u16> {
        let given: Vec<u16> = log.fabrics().unwrap().iter().map(|fabric| fabric.tag.number()).collect();
        log.free_tags().unwrap().next(&given)
    }

    #[test]
    fn two_copies_agree_on_their_tags() {
        let (mut desk, mut laptop) = (Memory::new(Here::desk()), Memory::new(Here::desk()));
        give(&mut desk, TagHolder::Desk, Some(range(100, 199))).unwrap();
        give(&mut desk, TagHolder::Desk, Some(range(100, 199))).unwrap();
        assert_eq!((desk.count().unwrap(), next(&desk)), (1, Some(100)), "said once");
        let entries = desk.history(crate::log::Subject::Tags).unwrap();
        laptop.merge_all::<_, crate::store::StoreError>(entries.into_iter().map(Ok)).unwrap();
        assert_eq!(next(&laptop), Some(1));
        laptop.add(&[cloth(99)]).unwrap();
        assert_eq!(next(&laptop), Some(200), "it steps over those of the desk");
        let refused = give(&mut laptop, TagHolder::Desk, Some(range(150, 249)));
        let Err(Refused::TagsHeld { held, free, .. }) = refused else { panic!("{refused:?}") };
        assert_eq!((held.tags, free), (range(100, 199), Some(range(250, 349))));
        give(&mut laptop, TagHolder::Desk, Some(range(200, 299))).unwrap();
        give(&mut laptop, TagHolder::Desk, Some(range(300, 399))).unwrap();
        assert_eq!(laptop.held_tags().unwrap().len(), 2, "it gave the others back");
        give(&mut laptop, TagHolder::Desk, None).unwrap();
        assert_eq!((laptop.held_tags().unwrap().len(), next(&laptop)), (1, Some(200)));
        let (_, gone) = laptop.change(|read| give_back(read, "100-199")).unwrap();
        assert_eq!((gone.tags, next(&laptop)), (range(100, 199), Some(100)));
        let twice = laptop.change(|read| give_back(read, "100-199"));
        assert_eq!(twice.unwrap_err(), Refused::TagsNotHeld(range(100, 199)));
    }

    #[test]
    fn a_handheld_keeps_its_block_until_few_are_left() {
        let mut log = Memory::new(Here::desk());
        log.add(&[cloth(1), cloth(2)]).unwrap();
        assert_eq!(lent(&mut log, 7), Some(range(80, 99)));
        assert_eq!((lent(&mut log, 7), log.count().unwrap()), (Some(range(80, 99)), 3));
        assert_eq!(lent(&mut log, 8), Some(range(180, 199)), "another's is its own");
        assert_eq!(next(&log), Some(3));
        log.add(&[cloth(94)]).unwrap();
        assert_eq!(lent(&mut log, 7), Some(range(95, 99)));
        log.add(&[cloth(95)]).unwrap();
        assert_eq!(lent(&mut log, 7), Some(range(280, 299)));
        assert_eq!(next(&log), Some(96), "what it had is the desk's again");
    }

    #[test]
    fn a_desk_lends_of_its_own_tags_alone() {
        let mut log = Memory::new(Here::desk());
        give(&mut log, TagHolder::Desk, Some(range(300, 339))).unwrap();
        assert_eq!(lent(&mut log, 7), Some(range(300, 319)));
        assert_eq!(next(&log), Some(320));
        assert_eq!(lent(&mut log, 8), Some(range(320, 339)));
        assert_eq!((next(&log), lent(&mut log, 9)), (None, None));
    }
}
