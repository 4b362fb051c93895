//! What two logs took from each other, as JSON.

use serde_json::{Value, json};

use super::import::shared_tags;
use crate::deed::sync::{Passed, SyncedLogs};
use crate::finding::tag::SharedTag;

/// One object, on one line.
#[must_use]
pub fn synced(synced: &SyncedLogs, shared: &[SharedTag]) -> String {
    let SyncedLogs { taken, given, differ } = synced;
    let passed = |passed: &Passed| -> Value { json!({ "new": passed.entries, "photos": passed.photos }) };
    json!({ "taken": passed(taken), "given": passed(given), "differ": differ, "shared_tags": shared_tags(shared) })
        .to_string()
}
