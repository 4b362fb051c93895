//! `tenter log`: the log itself.

use std::path::Path;

use crate::cli::log::LogVerb;
use crate::error::Error;
use crate::text::TextOutput;

/// What [`run`] answers where the log has faults.
const FAULTY: u8 = 1;

/// Runs the verb.
///
/// # Errors
///
/// A log that cannot be read, or an output that cannot be written.
pub fn run(verb: LogVerb, db: Option<&Path>, screen: &mut TextOutput<'_>) -> Result<u8, Error> {
    match verb {
        LogVerb::Check => check(db, screen),
        #[cfg(feature = "postgres")]
        LogVerb::Roles => {
            screen.out.write_all(crate::store::postgres::ROLES.as_bytes())?;
            Ok(0)
        }
    }
}

fn check(db: Option<&Path>, screen: &mut TextOutput<'_>) -> Result<u8, Error> {
    let place = super::place_of(db)?;
    let log = place.open(screen.here)?;
    let faults = log.faults()?;
    if faults.is_empty() {
        screen.say(&format!("{} is whole; it holds {} entries", place.name(), log.count()?))?;
        return Ok(0);
    }
    for fault in &faults {
        screen.say(fault)?;
    }
    screen
        .say(&format!("{} is damaged; restore a copy, or import your last export with --db NEWFILE", place.name()))?;
    Ok(FAULTY)
}
