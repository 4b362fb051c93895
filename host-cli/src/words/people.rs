//! The people who pull, in words.

use tenter_core::Decimal;
use tenter_core::repeatability::Repeatability;

use crate::finding::people::Puller;
use crate::log::Person;
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
