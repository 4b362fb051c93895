//! What an import did.

use crate::exchange::table::read::NewNames;
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
pub fn text(merged: Merged, shared: &[SharedTag], named: &NewNames, columns: usize) -> String {
    let mut text = Lines::new(columns);
    text.words(&format!("{} new, {} known", merged.new, merged.known));
    if !named.cloths.is_empty() {
        let cloths = named.cloths.iter().map(|(tag, name)| format!("{tag} {}", isolated(name)));
        text.row("cloths", &cloths.collect::<Vec<_>>().join(", "));
    }
    if !named.people.is_empty() {
        text.row("people", &named.people.iter().map(|name| isolated(name)).collect::<Vec<_>>().join(", "));
    }
    if merged.photos > 0 {
        text.words(&counted_new(merged.photos));
    }
    if merged.differ > 0 {
        let words = format!("{} of the known differ from those in this log, which stays as it was", merged.differ);
        text.row("note", &words);
    }
    shared_tags(&mut text, shared);
    text.finish()
}

/// The tags that are on several cloths, and what to do.
pub(super) fn shared_tags(text: &mut Lines, shared: &[SharedTag]) {
    for one in shared.iter().take(SHOWN) {
        let number = one.cloths.first().map_or(0, |first| first.tag.number());
        let cloths: Vec<_> = one.cloths.iter().map(|one| format!("{} {}", one.tag, isolated(&one.name))).collect();
        text.row("note", &format!("several cloths have tag {number}: {}", cloths.join(", ")));
    }
    if !shared.is_empty() {
        text.row("", "call them by their letters; give them tags of their own with tenter cloth renumber");
    }
    if let Some(more) = shared.len().checked_sub(SHOWN).filter(|more| *more > 0) {
        text.row("note", &format!("{more} more tags are on several cloths"));
    }
}
