//! The people who pull, in words.

use tenter_core::Decimal;
use tenter_core::repeatability::Repeatability;

use crate::finding::people::Puller;
use crate::log::{Person, Tag};
use crate::plain::isolated;

/// How somebody without a name is called.
pub const NAMELESS: &str = "(no name)";
/// How those are called of whom nobody said who pulled.
pub const NOT_SAID: &str = "(not said)";

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
    format!("{} is {}: their tests are those of one person", isolated(gone), name(into))
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
pub const NOBODY_HERE: &str = "nobody is taken to pull here now; pass --by NAME with each test";

/// Somebody is taken to pull at this desk.
#[must_use]
pub fn here(name: &str) -> String {
    format!("{} pulls here where you do not pass --by", isolated(name))
}

/// Somebody who was named is taken to pull at this desk from now on.
#[must_use]
pub fn remembered(name: &str) -> String {
    format!("tenter takes {} to pull here from now on; pass --by for somebody else", isolated(name))
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
    let (ratio, repeats) = (Decimal::round(own.ratio(), 2), Decimal::round(own.dof(), 0));
    let how = match own.ratio() {
        ..0.8 => "steadier than assumed",
        1.25.. => "less steady than assumed",
        _ => "as assumed",
    };
    format!("{how}: {ratio} times the scatter, from {repeats} repeats")
}
