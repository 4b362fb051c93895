//! What an import did.

use crate::finding::tag::SharedTag;
use crate::plain::isolated;
use crate::store::Merged;
use crate::text::lines::Lines;

/// Tags shown one by one; the rest as a number.
const SHOWN: usize = 10;

fn counted_new(photos: u64) -> String {
    if photos == 1 { "1 new photograph".to_owned() } else { format!("{photos} new photographs") }
}

/// As text.
#[must_use]
pub fn text(merged: Merged, shared: &[SharedTag], columns: usize) -> String {
    let mut text = Lines::new(columns);
    text.words(&format!("{} new, {} known", merged.new, merged.known));
    if merged.photos > 0 {
        text.words(&counted_new(merged.photos));
    }
    if merged.differ > 0 {
        let words = format!("{} of the known differ from those in this log, which stays as it was", merged.differ);
        text.row("note", &words);
    }
    for one in shared.iter().take(SHOWN) {
        let names: Vec<_> = one.names.iter().map(|name| format!("'{}'", isolated(name))).collect();
        let (tag, second, free) = (one.tag, one.second, one.free);
        text.row("note", &format!("tag {tag} is on {}; give one a new tag:", names.join(" and ")));
        text.row("", &format!("tenter cloth edit {second} --tag {free}"));
    }
    if let Some(more) = shared.len().checked_sub(SHOWN).filter(|more| *more > 0) {
        text.row("note", &format!("{more} more tags are on two cloths; import again to see them"));
    }
    text.finish()
}
