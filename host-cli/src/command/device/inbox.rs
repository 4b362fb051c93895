//! `tenter device inbox` and `assign`: tests that belong to no cloth, or to the wrong one.

use crate::cli::device::{AssignArgs, InboxArgs};
use crate::deed::handheld::{self as deed, Assigned};
use crate::error::Error;
use crate::finding::handheld::{inbox, stretch};
use crate::json::device as device_json;
use crate::store::{Change as _, Read, Store, WhichTests};
use crate::text::TextOutput;
use crate::text::device as report;

/// Lists the tests that belong to no cloth.
///
/// # Errors
///
/// A log that cannot be read.
pub fn list(args: &InboxArgs, read: &dyn Read, screen: &mut TextOutput<'_>) -> Result<(), Error> {
    let unclaimed = inbox(read)?;
    if args.json {
        writeln!(screen.out, "{}", device_json::inbox(&unclaimed))?;
    } else {
        write!(screen.out, "{}", report::inbox(&unclaimed, args.units.unwrap_or_default(), screen.width, screen.here))?;
    }
    Ok(())
}

/// Gives tests to cloths.
///
/// # Errors
///
/// A test or cloth that is not there, or a log that cannot be written.
pub fn assign(args: &AssignArgs, store: &mut dyn Store, screen: &mut TextOutput<'_>) -> Result<(), Error> {
    if let (Some(test), Some(cloth)) = (&args.test, &args.fabric) {
        let (_, moved) = store.change(|read| deed::assign(read, test, cloth))?;
        return say(&moved, store, screen);
    }
    let (_, moved) = store.change(deed::assign_all)?;
    moved.iter().try_for_each(|one| say(one, store, screen))?;
    Ok(screen.say(&report::assigned_all(moved.len(), store.tests(WhichTests::Inbox)?.len()))?)
}

fn say(moved: &Assigned, read: &dyn Read, screen: &mut TextOutput<'_>) -> Result<(), Error> {
    let stretch = stretch(&moved.test.said, &read.repeatability()?, moved.fabric.construction);
    Ok(screen.say(&report::assigned(moved, stretch))?)
}
