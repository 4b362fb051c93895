//! `tenter sync`: two logs take from each other what each lacks.

use std::path::Path;

use super::progress::Progress;
use super::{open, place_of};
use crate::cli::sync::LogSyncArgs;
use crate::deed::sync;
use crate::error::Error;
use crate::finding::tag;
use crate::input::Misuse;
use crate::json::sync as json;
use crate::store::LogPlace;
use crate::text::TextOutput;
use crate::text::sync as report;

/// Runs the verb.
///
/// # Errors
///
/// Another log that is none or the same, or one of both that cannot be read or written.
pub fn run(args: &LogSyncArgs, db: Option<&Path>, screen: &mut TextOutput<'_>) -> Result<u8, Error> {
    let (place, other) = (place_of(db)?, LogPlace::of(&args.other)?);
    if place.is(&other) {
        return Err(Misuse::SameLog.into());
    }
    let Some(mut theirs) = other.open_if_there(screen.here)? else {
        let own = place.open_if_there(screen.here)?.map(|_| place.name());
        return Err(Misuse::NoLogThere { other: other.name(), own }.into());
    };
    let mut mine = open(db, screen.here)?;
    let mut progress = Progress::of("comparing", None);
    let names = [&*place.name(), &*other.name()];
    let synced = sync::exchange(&mut *mine, &mut *theirs, names, &mut || progress.step())?;
    let shared = tag::shared(&*mine)?;
    if args.json {
        writeln!(screen.out, "{}", json::synced(&synced, &shared))?;
    } else {
        write!(screen.out, "{}", report::text(&synced, &other.name(), &shared, screen.width))?;
    }
    Ok(0)
}
