//! Which cloths have a tag.

use crate::log::{Fabric, Id};
use crate::store::{Read, StoreError};

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

/// A tag that more than one live cloth has, as may happen when two logs come together.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SharedTag {
    /// The tag.
    pub tag: u16,
    /// The names of those that have it.
    pub names: Vec<String>,
    /// The second of them.
    pub second: Id,
    /// A tag that no cloth has.
    pub free: u16,
}

/// The tags that more than one live cloth has.
///
/// # Errors
///
/// A log that cannot be read.
pub fn shared(read: &dyn Read) -> Result<Vec<SharedTag>, StoreError> {
    let mut fabrics = read.fabrics()?;
    fabrics.retain(|fabric| !fabric.dropped);
    let mut free = fabrics.iter().map(|fabric| fabric.tag).max().unwrap_or(0);
    let mut all = Vec::new();
    for tagged in fabrics.chunk_by(|one, other| one.tag == other.tag) {
        let [first, second, ..] = tagged else { continue };
        free = free.saturating_add(1);
        let names = tagged.iter().map(|fabric| fabric.name.clone()).collect();
        all.push(SharedTag { tag: first.tag, names, second: second.id, free });
    }
    Ok(all)
}
