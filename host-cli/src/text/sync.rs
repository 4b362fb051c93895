//! What two logs took from each other.

use tenter_core::Unit;

use crate::deed::sync::{SyncedLogs, called};
use crate::finding::tag::SharedTag;
use crate::store::{Read, StoreError};
use crate::text::import::shared_tags;
use crate::text::lines::Lines;
use crate::words::sync as words;

/// What was changed in both logs is told one by one; the rest as a number.
const SHOWN: usize = 10;

/// What was changed in both logs, some lines each, with the names that things have now.
///
/// # Errors
///
/// A log that cannot be read.
pub fn apart(read: &dyn Read, synced: &SyncedLogs, other: &str) -> Result<Vec<Vec<String>>, StoreError> {
    let (people, unit) = (read.people()?, read.units()?.unwrap_or(Unit::Cm));
    let told = synced.apart.iter().map(|one| {
        let name = called(read, one.subject)?;
        Ok(words::apart(one, name.as_deref(), other, (&people, unit, read.here())))
    });
    told.collect()
}

/// As text.
#[must_use]
pub fn text(synced: &SyncedLogs, other: &str, apart: &[Vec<String>], shared: &[SharedTag], columns: usize) -> String {
    let mut text = Lines::new(columns);
    for line in words::both_ways(synced, other) {
        text.words(&line);
    }
    if let Some(differ) = words::differ(synced, other) {
        text.row("note", &differ);
    }
    for lines in apart.iter().take(SHOWN) {
        for (line, label) in lines.iter().zip(core::iter::once("note").chain(core::iter::repeat(""))) {
            text.row(label, line);
        }
    }
    if let Some(more) = apart.len().checked_sub(SHOWN).filter(|more| *more > 0) {
        text.row("note", &words::more_apart(more));
    }
    shared_tags(&mut text, shared);
    text.finish()
}
