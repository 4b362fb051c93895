//! Which cloths have a tag.

use crate::log::Fabric;
use crate::store::{Read, StoreError, WhichTests};

/// The cloths that have a tag, retired ones left out: usually one, more after two logs were merged.
///
/// # Errors
///
/// A log that cannot be read.
pub fn live(read: &dyn Read, tag: u16) -> Result<Vec<Fabric>, StoreError> {
    let mut tagged = read.fabrics_tagged(tag)?;
    tagged.retain(|fabric| !fabric.dropped);
    Ok(tagged)
}

/// The one cloth that has a tag, retired ones left out.
///
/// # Errors
///
/// A log that cannot be read.
pub fn only(read: &dyn Read, tag: u16) -> Result<Option<Fabric>, StoreError> {
    let mut tagged = live(read, tag)?;
    Ok(if tagged.len() == 1 { tagged.pop() } else { None })
}

/// The next tag of those that are given at this desk, beside those that are `given` already; none where they have run out.
///
/// # Errors
///
/// A log that cannot be read.
pub fn next(read: &dyn Read, given: &[u16]) -> Result<Option<u16>, StoreError> {
    // A tag that waits in the inbox is pinned to a cloth.
    let mut given = given.to_vec();
    given.extend(read.tests(WhichTests::Inbox)?.iter().filter_map(|test| test.said.tag));
    Ok(read.free_tags()?.next(&given))
}

/// A number that more than one live cloth has, as may happen when two logs come together.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SharedTag {
    /// Those that have it, by their letters.
    pub cloths: Vec<Fabric>,
    /// A tag of this desk that no cloth has, for the second of them; none where they have run out.
    pub free: Option<u16>,
}

/// The numbers that more than one live cloth has.
///
/// # Errors
///
/// A log that cannot be read.
pub fn shared(read: &dyn Read) -> Result<Vec<SharedTag>, StoreError> {
    let mut fabrics = read.fabrics()?;
    let mut given: Vec<u16> = fabrics.iter().map(|fabric| fabric.tag.number()).collect();
    fabrics.retain(|fabric| !fabric.dropped);
    let mut all = Vec::new();
    for alike in fabrics.chunk_by(|one, other| one.tag.number() == other.tag.number()) {
        if alike.len() > 1 {
            let free = next(read, &given)?;
            given.extend(free);
            all.push(SharedTag { cloths: alike.to_vec(), free });
        }
    }
    Ok(all)
}

/// A cloth with a tag of its own from now on.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Renumbered {
    /// The cloth, with the tag that it shared.
    pub fabric: Fabric,
    /// Its tag now.
    pub tag: u16,
}
