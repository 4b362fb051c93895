//! Which tags are whose, in words.

use crate::log::{HeldTags, TagHolder};
use crate::plain::isolated;

/// Who holds tags: the phone of Anna, another desk, handheld 7.
#[must_use]
pub fn holder(held: &HeldTags, who: Option<&str>) -> String {
    let of = |thing: &str, other: &str| match who {
        Some(name) => format!("the {thing} of {}", isolated(name)),
        None => format!("{other} {thing}"),
    };
    match held.kind {
        TagHolder::Desk => of("desk", "another"),
        TagHolder::Phone => of("phone", "a"),
        TagHolder::Handheld => format!("handheld {}", held.handheld().unwrap_or_default()),
    }
}

/// Which tags this desk gives; none where it gives all. The next of them, where there is one.
#[must_use]
pub fn here(range: Option<&str>, next: Option<&str>) -> String {
    let given = match range {
        Some(range) => format!("the tags {range}"),
        None => "all tags that nobody else holds".to_owned(),
    };
    let next = next.map_or_else(|| "all of them are in use".to_owned(), |next| format!("the next is {next}"));
    format!("this desk gives {given}; {next}")
}

/// What somebody else holds.
#[must_use]
pub fn held(held: &HeldTags, who: Option<&str>) -> String {
    format!("{} gives the tags {}", holder(held, who), held.tags)
}

/// Somebody who is gone holds them no longer.
#[must_use]
pub fn given_back(before: &HeldTags) -> String {
    format!("nobody holds the tags {} any more", before.tags)
}
