//! What two logs took from each other, in sentences.

use tenter_core::Unit;

use super::cloth::changes;
use super::quantity;
use crate::deed::sync::{ChangedApart, Passed, SyncedLogs};
use crate::log::{Entry, Fact, Here, People, Subject};
use crate::plain::isolated;

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

/// What was changed in both logs: first what it is, then what each said, then where both are found.
#[must_use]
pub fn apart(
    one: &ChangedApart,
    called: Option<&str>,
    other: &str,
    (people, unit, here): (&People, Unit, Here),
) -> Vec<String> {
    let thing = match one.subject {
        Subject::Fabric(_) => "cloth",
        Subject::Test(_) => "a test",
        Subject::Pattern(_) => "pattern",
        Subject::Role(_) => "role",
        Subject::Garment(_) => "garment",
        Subject::Person(_) => "person",
        Subject::Log(_) | Subject::Tags => "the log",
    };
    let called = called.map(|called| format!(" {}", isolated(called))).unwrap_or_default();
    let said = |entry: &Entry, place: &str| {
        let who = people.name(entry.who).map(|name| format!(", {}", isolated(name))).unwrap_or_default();
        let counts = if entry.id == one.counts().id { "; this is later and counts" } else { "" };
        format!("{place}, {}{who}: {}{counts}", quantity::minute(entry.at, here), said_of(&entry.fact, unit))
    };
    let mut lines = vec![
        format!("both logs changed {thing}{called}: its {}", one.field.replace('_', " ")),
        said(&one.mine, "in your log"),
        said(&one.theirs, &format!("in {other}")),
    ];
    if let (Subject::Fabric(_), Some((tag, _))) = (one.subject, called.trim().split_once(' ')) {
        lines.push(format!(
            "tenter cloth show {tag} shows both in its history; tenter cloth edit {tag} puts right what is wrong"
        ));
    }
    lines
}

/// What an entry said.
fn said_of(fact: &Fact, unit: Unit) -> String {
    match fact {
        Fact::FabricChanged { change, .. } => changes(change, unit),
        Fact::PersonNamed { name, .. } => format!("name '{}'", isolated(name)),
        Fact::FabricDropped { .. }
        | Fact::TestDropped { .. }
        | Fact::PatternDropped { .. }
        | Fact::RoleDropped { .. }
        | Fact::GarmentDropped { .. } => "retired".to_owned(),
        Fact::FabricRestored { .. }
        | Fact::TestRestored { .. }
        | Fact::PatternRestored { .. }
        | Fact::RoleRestored { .. }
        | Fact::GarmentRestored { .. } => "returned".to_owned(),
        _ => "changed".to_owned(),
    }
}

/// More was changed in both logs than is told one by one.
#[must_use]
pub fn more_apart(more: usize) -> String {
    format!("{more} more were changed in both logs; tenter sync --json lists all, and each history shows both")
}
