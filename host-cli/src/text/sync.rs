//! What two logs took from each other.

use crate::deed::sync::SyncedLogs;
use crate::finding::tag::SharedTag;
use crate::text::import::shared_tags;
use crate::text::lines::Lines;
use crate::words::sync as words;

/// As text.
#[must_use]
pub fn text(synced: &SyncedLogs, other: &str, shared: &[SharedTag], columns: usize) -> String {
    let mut text = Lines::new(columns);
    for line in words::both_ways(synced, other) {
        text.words(&line);
    }
    if let Some(differ) = words::differ(synced, other) {
        text.row("note", &differ);
    }
    shared_tags(&mut text, shared);
    text.finish()
}
