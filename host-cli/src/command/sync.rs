//! `tenter sync`: two logs take from each other what each lacks.

use std::path::Path;

use super::progress::Progress;
use super::{open, place_of};
use crate::cli::sync::LogSyncArgs;
use crate::deed::sync::{self, SyncedLogs};
use crate::error::Error;
use crate::exchange::ImportError;
use crate::finding::tag;
use crate::input::Misuse;
use crate::json::sync as json;
use crate::log::Here;
use crate::store::{LogPlace, LogWithDrafts, Store};
use crate::text::TextOutput;
use crate::text::sync as report;

/// Runs the verb.
///
/// # Errors
///
/// Another log that is none or the same, or one of both that cannot be read or written.
pub fn run(args: &LogSyncArgs, db: Option<&Path>, screen: &mut TextOutput<'_>) -> Result<u8, Error> {
    let place = place_of(db)?;
    let (synced, mine, other) = match with_pages(args, db, &place, screen.here)? {
        Some(done) => done,
        None => with_log(args, db, &place, screen.here)?,
    };
    let shared = tag::shared(&*mine)?;
    if args.json {
        writeln!(screen.out, "{}", json::synced(&synced, &shared))?;
    } else {
        let apart = report::apart(&*mine, &synced, &other)?;
        write!(screen.out, "{}", report::text(&synced, &other, &apart, &shared, screen.width))?;
    }
    Ok(0)
}

type Synced = (SyncedLogs, Box<dyn LogWithDrafts>, String);

/// With a log that this program opens.
fn with_log(args: &LogSyncArgs, db: Option<&Path>, place: &LogPlace, here: Here) -> Result<Synced, Error> {
    let other = LogPlace::of(&args.other)?;
    if place.is(&other) {
        return Err(Misuse::SameLog.into());
    }
    let Some(mut theirs) = other.open_if_there(here)? else {
        let own = place.open_if_there(here)?.map(|_| place.name());
        return Err(Misuse::NoLogThere { other: other.name(), own }.into());
    };
    let mut mine = begun(args, db, here)?;
    let theirs: &mut dyn Store = &mut *theirs;
    let synced = exchanged(&mut *mine, &mut { theirs }, place, &other.name())?;
    Ok((synced, mine, other.name()))
}

/// With the log behind the pages of another tenter, where an address of pages was typed.
#[cfg(feature = "serve")]
fn with_pages(args: &LogSyncArgs, db: Option<&Path>, place: &LogPlace, here: Here) -> Result<Option<Synced>, Error> {
    use crate::link::pages::PageClient;

    let typed = args.other.to_str().unwrap_or_default();
    if !PageClient::is_meant(typed) {
        return Ok(None);
    }
    let mut pages = PageClient::new(typed, std::env::var("TENTER_TOKEN").ok()).map_err(ImportError::from)?;
    let other = pages.name();
    let mut mine = begun(args, db, here)?;
    let synced = exchanged(&mut *mine, &mut pages, place, &other)?;
    Ok(Some((synced, mine, other)))
}

#[cfg(not(feature = "serve"))]
fn with_pages(_: &LogSyncArgs, _: Option<&Path>, _: &LogPlace, _: Here) -> Result<Option<Synced>, Error> {
    Ok(None)
}

/// One's own log, which may begin here.
fn begun(args: &LogSyncArgs, db: Option<&Path>, here: Here) -> Result<Box<dyn LogWithDrafts>, Error> {
    let mut mine = open(db, here)?;
    if args.range.tags.is_some() {
        super::log::give(&mut *mine, args.range.tags.as_deref())?;
    }
    Ok(mine)
}

fn exchanged(
    mine: &mut dyn Store,
    theirs: &mut dyn sync::OtherLog,
    place: &LogPlace,
    other: &str,
) -> Result<SyncedLogs, Error> {
    let mut progress = Progress::of("comparing", None);
    Ok(sync::exchange(mine, theirs, [&place.name(), other], &mut || progress.step())?)
}
