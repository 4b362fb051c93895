//! What two logs took from each other, as JSON.

use serde_json::{Value, json};

use super::import::shared_tags;
use crate::deed::sync::{ChangedApart, Passed, SyncedLogs};
use crate::finding::tag::SharedTag;
use crate::log::Entry;

/// One object, on one line.
#[must_use]
pub fn synced(synced: &SyncedLogs, shared: &[SharedTag]) -> String {
    let SyncedLogs { taken, given, differ, .. } = synced;
    let passed = |passed: &Passed| -> Value { json!({ "new": passed.entries, "photos": passed.photos }) };
    let apart = |one: &ChangedApart| {
        let said = |entry: &Entry| json!({ "entry": entry.id, "at": entry.at, "who": entry.who, "fact": entry.fact });
        let counts = if one.counts().id == one.mine.id { "here" } else { "there" };
        json!({ "subject": one.subject.id(), "field": one.field, "here": said(&one.mine), "there": said(&one.theirs), "counts": counts })
    };
    let apart: Value = synced.apart.iter().map(apart).collect();
    json!({
        "taken": passed(taken),
        "given": passed(given),
        "differ": differ,
        "changed_in_both": apart,
        "shared_tags": shared_tags(shared),
    })
    .to_string()
}
