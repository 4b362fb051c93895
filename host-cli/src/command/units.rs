//! The unit that a log remembers: the first that was said where something was stored.

use std::ffi::OsString;

use tenter_core::Unit;

use super::open_if_there;
use crate::cli::cloth::ClothVerb;
use crate::cli::pattern::PatternVerb;
use crate::cli::{self, CommandLine, Parsed, Units, Verb};
use crate::error::Error;
use crate::log::{Fact, Here};
use crate::store::{Change as _, StoreError};

/// Reads the words of a command line; where they say nothing of units, what its log remembers holds.
///
/// # Errors
///
/// As [`cli::parse`].
pub fn parse(words: &[OsString], here: Here) -> Result<Parsed, Error> {
    let parsed = cli::parse(words)?;
    let remembered = match &parsed {
        Parsed::Run(line) if line.units == Units::NotSaid => remembered(line, here),
        _ => None,
    };
    if remembered.is_some() { cli::parse_with(words, remembered) } else { Ok(parsed) }
}

/// What the log remembers. One that cannot be read is for the verb itself to complain of: some need no log.
fn remembered(line: &CommandLine, here: Here) -> Option<Unit> {
    open_if_there(line.db.as_deref(), here).ok().flatten()?.units().ok().flatten()
}

/// Whether a verb stores what was measured. Whoever only looks at something in inches has not chosen them.
const fn stores(verb: &Verb) -> bool {
    match verb {
        Verb::Pull(_) | Verb::Wash(_) | Verb::Import(_) => true,
        Verb::Cloth(verb) => !matches!(**verb, ClothVerb::List(_) | ClothVerb::Show(_)),
        Verb::Pattern(verb) => !matches!(**verb, PatternVerb::List(_) | PatternVerb::Show(_)),
        _ => false,
    }
}

/// Remembers a unit that was said, where there is a log that remembers none.
///
/// # Errors
///
/// A log that cannot be read or written.
pub fn remember(line: &CommandLine, here: Here) -> Result<(), Error> {
    let Units::Said(units) = line.units else { return Ok(()) };
    if !stores(&line.verb) {
        return Ok(());
    }
    let Some(mut log) = open_if_there(line.db.as_deref(), here)? else { return Ok(()) };
    if log.units()?.is_some() {
        return Ok(());
    }
    match log.add(&[Fact::UnitsSet { units }]) {
        // Whoever may only read has been answered in the unit they named.
        Ok(_) | Err(StoreError::NoRight { .. }) => Ok(()),
        Err(error) => Err(error.into()),
    }
}
