//! What an import did.

use serde::Serialize;

use crate::log::Id;
use crate::store::Merged;
use crate::text::lines::Lines;
use crate::words::bidi::isolated;

/// A tag that more than one live fabric wears.
#[derive(Debug, Serialize)]
pub struct SharedTag {
    /// The tag.
    pub tag: u16,
    /// The names of those that wear it.
    pub names: Vec<String>,
    /// The second of them.
    pub second: Id,
    /// A tag that nobody wears.
    pub free: u16,
}

/// Tags shown one by one; the rest as a number.
const SHOWN: usize = 10;

/// As text.
#[must_use]
pub fn text(merged: Merged, shared: &[SharedTag], columns: usize) -> String {
    let mut text = Lines::new(columns);
    text.words(&format!("{} new, {} known", merged.new, merged.known));
    if merged.differ > 0 {
        let words = format!("{} of the known say something else in this log, which was left as it is", merged.differ);
        text.row("note", &words);
    }
    for one in shared.iter().take(SHOWN) {
        let names: Vec<_> = one.names.iter().map(|name| format!("'{}'", isolated(name))).collect();
        let (tag, second, free) = (one.tag, one.second, one.free);
        text.row("note", &format!("tag {tag} is on {}; give one a new tag:", names.join(" and ")));
        text.row("", &format!("tenter cloth edit {second} --tag {free}"));
    }
    if let Some(more) = shared.len().checked_sub(SHOWN).filter(|more| *more > 0) {
        text.row("note", &format!("{more} more tags are on two fabrics; import again to see them"));
    }
    text.finish()
}

/// As one JSON object.
#[must_use]
pub fn json(merged: Merged, shared: &[SharedTag]) -> String {
    let Merged { new, known, differ } = merged;
    serde_json::json!({ "new": new, "known": known, "differ": differ, "shared_tags": shared }).to_string()
}
