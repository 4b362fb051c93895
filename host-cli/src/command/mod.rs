//! One file a verb: read options, ask store and core, hand the result to a report.

pub mod check;
pub mod cloth;
pub mod demo;
pub mod device;
pub mod export;
pub mod fit;
pub mod handle;
pub mod hang;
pub mod import;
pub mod log;
pub mod make;
pub mod manual;
pub mod pair;
pub mod pattern;
pub mod people;
pub mod phone;
pub mod progress;
pub mod pull;
pub mod remember;
pub mod report;
#[cfg(feature = "serve")]
pub mod serve;
pub mod sheet;
pub mod size;
pub mod sync;
pub mod units;
pub mod wash;

use std::fs;
use std::path::Path;

use crate::cli::people::by_for_now;
use crate::cli::{CommandLine, Verb};
use crate::deed::find;
use crate::error::Error;
use crate::input::{FileFault, Misuse};
use crate::log::Here;
use crate::store::{self, Access, LogPlace, LogWithDrafts};
use crate::text::TextOutput;

/// Runs a verb and writes its result to `screen`; the exit code.
///
/// # Errors
///
/// What was typed wrong, or a log or an output that cannot be read or written.
pub fn run(line: &CommandLine, screen: &mut TextOutput<'_>) -> Result<u8, Error> {
    let code = run_verb(line, screen)?;
    units::remember(line, screen.here);
    Ok(code)
}

fn run_verb(line: &CommandLine, screen: &mut TextOutput<'_>) -> Result<u8, Error> {
    let (db, here) = (line.db.as_deref(), screen.here);
    match &line.verb {
        Verb::Check(args) => check::run(args, db, screen),
        Verb::Device(verb) => device::run(verb, &mut *open(db, here)?, screen),
        Verb::Pull(args) => pull::run(args, &mut *open(db, here)?, screen),
        Verb::Cloth(verb) => cloth::run(verb, &mut *open(db, here)?, &place_of(db)?, screen),
        Verb::Make(verb) => make::run(verb, &mut *open(db, here)?, &place_of(db)?, screen),
        Verb::Pattern(verb) => pattern::run(verb, &mut *open(db, here)?, screen),
        Verb::People(verb) => people::run(verb, &mut *open(db, here)?, screen),
        Verb::Pair(args) => pair::run(args, &*open(db, here)?, screen),
        Verb::Handle(args) => handle::run(args, &*open(db, here)?, screen),
        Verb::Hang(args) => hang::run(args, screen),
        Verb::Size(args) => size::run(args, &mut || Ok(open(db, here)?), screen),
        Verb::Wash(args) => wash::run(args, &mut || Ok(open(db, here)?), screen),
        Verb::Completions(args) => manual::completions(args, screen),
        Verb::Man(args) => manual::man(args, screen),
        Verb::Demo(args) => demo::run(args, screen),
        Verb::Fit(args) => fit::run(args, &*open(db, here)?, screen),
        Verb::Report(verb) => report::run(verb, &*open(db, here)?, &place_of(db)?, screen),
        #[cfg(feature = "serve")]
        Verb::Serve(args) => serve::run(args, place_of(db)?, screen),
        Verb::Phone(args) => phone::run(args, screen),
        Verb::Export(args) => export::run(args, &place_of(db)?, screen),
        Verb::Log(verb) => log::run(verb, db, screen),
        Verb::Import(args) => import::run(args, &place_of(db)?, screen),
        Verb::Sync(args) => sync::run(args, db, screen),
    }
}

/// The log that was named, or the user's own.
fn open(db: Option<&Path>, here: Here) -> Result<Box<dyn LogWithDrafts>, Error> {
    let mut log = place_of(db)?.open(here)?;
    // Whoever sits at the desk for now says what is stored in the meantime.
    if let Some(name) = by_for_now()
        && let [person] = log.people()?.called(&name).as_slice()
    {
        log.speak_as(person.id);
    }
    Ok(log)
}

/// The log as [`open`] finds it, unless there is none yet.
fn open_if_there(db: Option<&Path>, here: Here) -> Result<Option<Box<dyn LogWithDrafts>>, Error> {
    Ok(place_of(db)?.open_if_there(here)?)
}

/// Where the log is kept.
fn place_of(db: Option<&Path>) -> Result<LogPlace, Error> {
    let own = || store::default_path().ok_or_else(|| Error::from(Misuse::NoHome));
    db.map_or_else(|| own().map(LogPlace::File), |db| Ok(LogPlace::of(db)?))
}

/// Nobody means to put what a verb writes in the place of the log at `db`.
fn refuse_the_log_itself(path: &Path, db: &LogPlace) -> Result<(), Error> {
    let Some(db) = db.file() else { return Ok(()) };
    let same = |name: &str| {
        let beside = db.with_file_name(format!("{}{name}", db.file_name().unwrap_or_default().to_string_lossy()));
        fs::canonicalize(path).is_ok_and(|path| fs::canonicalize(beside).is_ok_and(|beside| path == beside))
    };
    if ["", "-wal", "-shm"].into_iter().any(same) {
        return Err(Error::file(Access::Write, path, FileFault::TheLog));
    }
    Ok(())
}
