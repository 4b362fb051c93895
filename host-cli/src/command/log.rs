//! `tenter log`: the log itself.

use std::path::Path;

use crate::cli::log::{LogVerb, TagsArgs};
use crate::deed::tags as deed;
use crate::error::Error;
use crate::finding::memory::retired_photos;
use crate::finding::tag;
use crate::log::{TagHolder, TagRange};
use crate::store::{Change as _, LogWithDrafts};
use crate::text::TextOutput;
use crate::words::errors::log_fault;
use crate::words::{done, tags as words};

/// What [`run`] answers where the log has faults.
const FAULTY: u8 = 1;

/// Runs the verb.
///
/// # Errors
///
/// A log that cannot be read, or an output that cannot be written.
pub fn run(verb: &LogVerb, db: Option<&Path>, screen: &mut TextOutput<'_>) -> Result<u8, Error> {
    match verb {
        LogVerb::Check => check(db, screen),
        LogVerb::Tags(args) => tags(args, db, screen),
        LogVerb::ForgetPhotos => forget_photos(db, screen),
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
        screen.say(&done::whole_log(&place.name(), log.count()?))?;
        return Ok(0);
    }
    for fault in &faults {
        screen.say(&log_fault(fault))?;
    }
    screen.say(&done::damaged_log(&place.name()))?;
    Ok(FAULTY)
}

fn forget_photos(db: Option<&Path>, screen: &mut TextOutput<'_>) -> Result<u8, Error> {
    let mut log = super::open(db, screen.here)?;
    let retired = retired_photos(&log.fabrics()?);
    let mut gone = 0;
    for photo in &retired {
        gone += log.photo(*photo)?.map_or(0, |photo| photo.jpeg().len());
    }
    log.forget_photos(&retired)?;
    let kilobytes = gone.div_ceil(1000);
    screen.say(&done::photographs_gone(kilobytes))?;
    Ok(0)
}

fn tags(args: &TagsArgs, db: Option<&Path>, screen: &mut TextOutput<'_>) -> Result<u8, Error> {
    let mut log = super::open(db, screen.here)?;
    if let Some(text) = &args.free {
        let (_, before) = log.change(|read| deed::give_back(read, text))?;
        screen.say(&words::given_back(&before))?;
    }
    give(&mut *log, args.range.as_deref())?;
    let given: Vec<u16> = log.fabrics()?.iter().map(|fabric| fabric.tag.number()).collect();
    let next = tag::next(&*log, &given)?.map(|next| next.to_string());
    let desk = log.desk()?;
    screen.say(&words::here(desk.tags.as_ref().map(TagRange::to_string).as_deref(), next.as_deref()))?;
    let people = log.people()?;
    for held in log.held_tags()?.iter().filter(|held| Some(held.holder) != desk.copy) {
        screen.say(&words::held(held, people.name(held.who)))?;
    }
    Ok(0)
}

/// Gives only these tags at this desk from now on, where some were typed.
pub(super) fn give(log: &mut dyn LogWithDrafts, range: Option<&str>) -> Result<(), Error> {
    Ok(range.map(|text| deed::give(log, TagHolder::Desk, deed::parse(text)?)).transpose().map(drop)?)
}
