//! `tenter device inbox` and `assign`: tests that belong to no fabric, or to the wrong one.

use super::super::find;
use super::sync::{assignment, stretch};
use crate::cli::device::{AssignArgs, InboxArgs};
use crate::error::Error;
use crate::json::device as device_json;
use crate::log::{Fabric, Fact, Hands, StoredTest};
use crate::store::{Read, Store, Which};
use crate::text::Screen;
use crate::text::device as report;
use crate::text::device::Unclaimed;

/// Lists the tests that belong to no fabric.
///
/// # Errors
///
/// A log that cannot be read, here and below.
pub fn list(args: &InboxArgs, read: &dyn Read, screen: &mut Screen<'_>) -> Result<(), Error> {
    let hands = read.hands()?;
    let mut unclaimed = Vec::new();
    for test in read.tests(Which::Inbox)? {
        let worn = test.said.tag.map(|tag| read.fabrics_tagged(tag)).transpose()?.unwrap_or_default();
        let worn = worn.into_iter().filter(|fabric| !fabric.dropped).collect();
        let stretch = stretch(&test.said.test, &hands, Default::default());
        unclaimed.push(Unclaimed { test, worn, stretch });
    }
    if args.json {
        writeln!(screen.out, "{}", device_json::inbox(&unclaimed))?;
    } else {
        write!(screen.out, "{}", report::inbox(&unclaimed, screen.width))?;
    }
    Ok(())
}

/// Gives tests to fabrics.
///
/// # Errors
///
/// A test or fabric that is not there, or a log that cannot be written.
pub fn assign(args: &AssignArgs, store: &mut dyn Store, screen: &mut Screen<'_>) -> Result<(), Error> {
    let (Some(test), Some(fabric)) = (&args.test, &args.fabric) else { return assign_all(store, screen) };
    let mut moved = None;
    store.change(&mut |read| {
        let test = find::test(read, test)?;
        let fabric = find::live_fabric(read, fabric)?;
        let before = test.said.fabric.map(|before| read.fabric(before)).transpose()?.flatten();
        let fact = Fact::TestAssigned { test: test.id, fabric: fabric.id };
        let facts = if test.said.fabric == Some(fabric.id) { Vec::new() } else { vec![fact] };
        moved = Some((test, before, fabric));
        Ok(facts)
    })?;
    let hands = store.hands()?;
    moved.map_or(Ok(()), |(test, before, fabric)| say(&test, before.as_ref(), &fabric, &hands, screen))
}

fn assign_all(store: &mut dyn Store, screen: &mut Screen<'_>) -> Result<(), Error> {
    let mut moved = Vec::new();
    store.change(&mut |read| {
        let mut facts = Vec::new();
        for test in read.tests(Which::Inbox)? {
            let Some(Fact::TestAssigned { fabric, .. }) = assignment(read, test.id)? else { continue };
            facts.push(Fact::TestAssigned { test: test.id, fabric });
            moved.push((test, fabric));
        }
        Ok(facts)
    })?;
    let hands = store.hands()?;
    for (test, fabric) in &moved {
        let Some(fabric) = store.fabric(*fabric)? else { continue };
        say(test, None, &fabric, &hands, screen)?;
    }
    Ok(screen.say(&report::assigned_all(moved.len(), store.tests(Which::Inbox)?.len()))?)
}

fn say(
    test: &StoredTest,
    before: Option<&Fabric>,
    fabric: &Fabric,
    hands: &Hands,
    screen: &mut Screen<'_>,
) -> Result<(), Error> {
    let stretch = stretch(&test.said.test, hands, fabric.construction);
    Ok(screen.say(&report::assigned(test, stretch, before, fabric))?)
}
