//! The people who pull, in words.

use tenter_core::Decimal;
use tenter_core::repeatability::Repeatability;

use crate::finding::people::Puller;
use crate::log::{Person, Tag};
use crate::plain::isolated;

/// How somebody without a name is called.
pub const NAMELESS: &str = "(no name)";
/// How those are called who pulled and whom nobody named.
pub const NOT_SAID: &str = "(not named)";

/// A person's name.
#[must_use]
pub fn name(person: &Person) -> String {
    if person.name.is_empty() { NAMELESS.to_owned() } else { isolated(&person.name) }
}

/// What somebody is called.
#[must_use]
pub fn called(puller: &Puller) -> String {
    puller.person.as_ref().map_or_else(|| NOT_SAID.to_owned(), name)
}

/// Somebody has another name.
#[must_use]
pub fn renamed(before: &Person, now: &str) -> String {
    format!("{} is now called {}", name(before), isolated(now))
}

/// Two names are one person's.
#[must_use]
pub fn merged(gone: &str, into: &Person) -> String {
    if gone == into.name {
        return format!("those called {} are one person from now on", isolated(gone));
    }
    format!("the tests of {} are those of {} from now on", isolated(gone), name(into))
}

/// A name is out of the log.
#[must_use]
pub fn forgotten(person: &Person) -> String {
    format!(
        "the log no longer holds the name; the tests stay. Copies and exported files still hold it: forget {} there too",
        name(person)
    )
}

/// Nobody is taken to pull at this desk.
pub const NOBODY_HERE: &str = "tenter no longer assumes who pulls here; pass --by NAME with each test";

/// Somebody is taken to pull at this desk.
#[must_use]
pub fn here(name: &str) -> String {
    format!("tenter now assumes that {} pulls here; pass --by for somebody else", isolated(name))
}

/// A test has another person, as its line tells it.
#[must_use]
pub fn given(person: &str, about: &str, tag: Tag) -> String {
    format!("pulled by {person}  {about}; see tenter cloth show {tag}")
}

/// How well somebody repeats.
#[must_use]
pub fn repeats(own: Option<Repeatability>) -> String {
    let Some(own) = own else { return "too few pulls to tell".to_owned() };
    let (ratio, repeats) = (own.ratio(), Decimal::round(own.dof(), 0));
    let apart = |difference: f32| Decimal::round(100.0 * difference, 0);
    let how = match ratio {
        ..0.8 => format!("pulls differ {} % less than assumed", apart(1.0 - ratio)),
        1.25.. => format!("pulls differ {} % more than assumed", apart(ratio - 1.0)),
        _ => "pulls differ about as assumed".to_owned(),
    };
    format!("{how}, from {repeats} repeats")
}
