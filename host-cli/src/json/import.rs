//! What an import did, as JSON.

use serde_json::{Value, json};

use crate::exchange::table::read::NewNames;
use crate::finding::tag::SharedTag;
use crate::store::Merged;

/// One object, on one line.
#[must_use]
pub fn merged(merged: Merged, shared: &[SharedTag], named: &NewNames) -> String {
    let Merged { new, known, differ, photos } = merged;
    let shared = shared_tags(shared);
    json!({ "new": new, "known": known, "differ": differ, "photos": photos, "shared_tags": shared, "people": named.people }).to_string()
}

/// The tags that are on several cloths.
pub(super) fn shared_tags(shared: &[SharedTag]) -> Value {
    let tag = |one: &SharedTag| {
        let names: Vec<&str> = one.cloths.iter().map(|cloth| cloth.name.as_str()).collect();
        let tags: Vec<String> = one.cloths.iter().map(|cloth| cloth.tag.to_string()).collect();
        let number = one.cloths.first().map(|cloth| cloth.tag.number());
        let second = one.cloths.get(1).map(|cloth| cloth.id);
        json!({ "tag": number, "names": names, "second": second, "free": one.free, "tags": tags })
    };
    shared.iter().map(tag).collect()
}
