//! What two logs took from each other, in sentences.

use crate::deed::sync::{Passed, SyncedLogs};

/// Neither had anything that the other lacked.
pub const NOTHING_NEW: &str = "nothing was new in either log";

fn counted(count: u64, one: &str, more: &str) -> Option<String> {
    match count {
        0 => None,
        1 => Some(format!("1 {one}")),
        count => Some(format!("{count} {more}")),
    }
}

/// 3 entries and 1 photograph; nothing where nothing passed.
fn passed(passed: Passed) -> Option<String> {
    let parts = [counted(passed.entries, "entry", "entries"), counted(passed.photos, "photograph", "photographs")];
    let parts: Vec<String> = parts.into_iter().flatten().collect();
    (!parts.is_empty()).then(|| parts.join(" and "))
}

/// What went each way between your log and the other.
#[must_use]
pub fn both_ways(synced: &SyncedLogs, other: &str) -> Vec<String> {
    let taken = passed(synced.taken).map(|what| format!("your log took {what} from {other}"));
    let given = passed(synced.given).map(|what| format!("{other} took {what} from your log"));
    let lines: Vec<String> = taken.into_iter().chain(given).collect();
    if lines.is_empty() { vec![NOTHING_NEW.to_owned()] } else { lines }
}

/// Entries that say something else in the other log; none where all agree.
#[must_use]
pub fn differ(synced: &SyncedLogs, other: &str) -> Option<String> {
    let first = synced.differ.first()?;
    let (what, which) = match synced.differ.len() {
        1 => ("1 entry says".to_owned(), "it is"),
        count => (format!("{count} entries say"), "the first is"),
    };
    Some(format!("{what} something else in {other}, and each log keeps its own; {which} {first}"))
}
