//! The unit that a log remembers: the first that was said where something was stored.

use std::ffi::OsString;

use tenter_core::Unit;

use super::open_if_there;
use crate::cli::cloth::ClothVerb;
use crate::cli::pattern::PatternVerb;
use crate::cli::report::ReportVerb;
use crate::cli::{self, CommandLine, Parsed, Units, Verb};
use crate::error::Error;
use crate::log::{Fact, Here};
use crate::store::Change as _;

/// Reads the words of a command line; where they say nothing of units, what its log remembers holds.
///
/// # Errors
///
/// As [`cli::parse`].
pub fn parse(words: &[OsString], here: Here) -> Result<Parsed, Error> {
    let parsed = cli::parse(words)?;
    let remembered = match &parsed {
        Parsed::Run(line) if line.units == Units::NotSaid => match remembered(line, here) {
            // Who cannot be answered without the log is told at once, and not after a second try to open it.
            Err(error) if !is_answered_without(&line.verb) => return Err(error),
            remembered => remembered.ok().flatten(),
        },
        _ => None,
    };
    if remembered.is_some() { cli::parse_with(words, remembered) } else { Ok(parsed) }
}

/// What the log remembers.
fn remembered(line: &CommandLine, here: Here) -> Result<Option<Unit>, Error> {
    let Some(log) = open_if_there(line.db.as_deref(), here)? else { return Ok(None) };
    Ok(log.units()?)
}

/// Whether a verb has an answer without a log, at least for some of what can be typed: it complains of the log itself.
const fn is_answered_without(verb: &Verb) -> bool {
    match verb {
        Verb::Check(_) | Verb::Hang(_) | Verb::Size(_) | Verb::Wash(_) => true,
        Verb::Report(verb) => matches!(**verb, ReportVerb::Gauge(_)),
        _ => false,
    }
}

/// Whether a verb stores what was measured. Whoever only looks at something in inches has not chosen them.
const fn stores(verb: &Verb) -> bool {
    match verb {
        Verb::Pull(_) | Verb::Import(_) => true,
        Verb::Wash(args) => args.fabric.is_some(),
        Verb::Cloth(verb) => !matches!(**verb, ClothVerb::List(_) | ClothVerb::Show(_)),
        Verb::Pattern(verb) => !matches!(**verb, PatternVerb::List(_) | PatternVerb::Show(_)),
        _ => false,
    }
}

/// Remembers a unit that was said, where there is a log that remembers none. What cannot be remembered now is the next time:
/// the verb has done its work, and an error would have it typed again.
pub fn remember(line: &CommandLine, here: Here) {
    let Units::Said(units) = line.units else { return };
    if !stores(&line.verb) {
        return;
    }
    let Ok(Some(mut log)) = open_if_there(line.db.as_deref(), here) else { return };
    if matches!(log.units(), Ok(None)) {
        let _ = log.add(&[Fact::UnitsSet { units }]);
    }
}
