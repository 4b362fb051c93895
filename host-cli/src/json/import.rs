//! What an import did, as JSON.

use serde_json::json;

use crate::finding::tag::SharedTag;
use crate::store::Merged;

/// One object, on one line.
#[must_use]
pub fn merged(merged: Merged, shared: &[SharedTag]) -> String {
    let Merged { new, known, differ, photos } = merged;
    let tag = |one: &SharedTag| json!({ "tag": one.tag, "names": one.names, "second": one.second, "free": one.free });
    let shared: Vec<_> = shared.iter().map(tag).collect();
    json!({ "new": new, "known": known, "differ": differ, "photos": photos, "shared_tags": shared }).to_string()
}
