//! `tenter device`: the handheld.

pub mod demands;
pub mod inbox;
pub mod list;
pub mod sync;

use std::time::Duration;

use tenter_core::wire::{NameList, Refusal};

use crate::cli::device::{ClockArgs, DeviceVerb, PortArg};
use crate::deed::{handheld as deed, tags};
use crate::error::Error;
use crate::finding::handheld::ClockState;
use crate::link::{self, LinkError, LinkSession, Transport};
use crate::log::{Here, Id, Marks};
use crate::store::{Change as _, LogWithDrafts, Read};
use crate::text::TextOutput;
use crate::text::device as report;
use crate::words::done;

/// A conversation over whatever line was named.
pub type PortLine = LinkSession<Box<dyn Transport>>;

/// Runs the verb.
///
/// # Errors
///
/// What was typed wrong, a handheld that does not answer, or a log that cannot be read or written.
pub fn run(verb: &DeviceVerb, store: &mut dyn LogWithDrafts, screen: &mut TextOutput<'_>) -> Result<u8, Error> {
    match verb {
        DeviceVerb::List(args) => list::run(&mut open(&args.port)?, args.json, store, screen),
        DeviceVerb::Sync(args) => {
            let options = sync::Options::of(args)?;
            sync::run(&mut open(&args.port)?, &options, store, screen)
        }
        DeviceVerb::Demands(args) => {
            let wanted = demands::wanted(args, store)?;
            demands::run(&mut open(&args.port)?, &wanted, store, screen)
        }
        DeviceVerb::People(args) => people(&mut open(&args.port)?, &args.names, store, screen),
        DeviceVerb::Clock(ClockArgs { port }) => clock(&mut open(port)?, screen),
        DeviceVerb::Inbox(args) => inbox::list(args, store, screen),
        DeviceVerb::Assign(args) => inbox::assign(args, store, screen),
    }?;
    Ok(0)
}

/// Opens the line that was named.
fn open(arg: &PortArg) -> Result<PortLine, Error> {
    let Some(port) = arg.port.as_deref().filter(|port| !port.trim().is_empty()) else {
        return Err(LinkError::WhichPort(link::ports().unwrap_or_default()).into());
    };
    let patience = Duration::from_secs(arg.patience.into());
    Ok(LinkSession::open_with(link::open(port)?, patience, PortLine::TRIES)?)
}

/// Sets the clock and says how far off it was.
///
/// # Errors
///
/// As [`run`].
pub fn clock<T: Transport>(session: &mut LinkSession<T>, screen: &mut TextOutput<'_>) -> Result<(), Error> {
    let was = set_clock(session, screen.here)?;
    let now = report::moment(screen.here.now(), screen.here);
    Ok(screen.say(&done::clock_set(&now, &report::clock_was(was)))?)
}

/// Sets the clock; how it was before.
fn set_clock<T: Transport>(session: &mut LinkSession<T>, here: Here) -> Result<ClockState, LinkError> {
    session.same_as_before()?;
    let was = ClockState::of(ahead(session.identity().unix_s, here));
    session.set_clock(|| u32::try_from(here.now().as_second()).unwrap_or(u32::MAX))?;
    Ok(was)
}

/// By how many seconds a handheld's clock is ahead of this machine's.
fn ahead(unix_s: Option<u32>, here: Here) -> Option<i64> {
    unix_s.map(|unix_s| i64::from(unix_s) - here.now().as_second())
}

/// Lends the handheld tags, and tells it which cloths have the others. What to say about it, if anything.
fn send_tags<T: Transport>(
    session: &mut LinkSession<T>,
    store: &mut dyn LogWithDrafts,
) -> Result<Option<&'static str>, Error> {
    match session.tags() {
        Ok(_) => {}
        Err(LinkError::Refused(Refusal::Unknown)) => return Ok(Some(report::OLD_TAGS)),
        Err(error) => return Err(error.into()),
    }
    let device = session.identity().device;
    // Noted first, for every copy of the log: whatever becomes of the line, nobody else gives them.
    let (_, range) = store.change(|read| tags::lend(read, device))?;
    if let Some(range) = range.filter(|range| range.most <= deed::DIALLED) {
        let mut desk = store.desk()?;
        if !(desk.has_lent(device, range.least) && desk.has_lent(device, range.most)) {
            desk.lent.entry(device).or_default().push(range);
            store.set_desk(&desk)?;
        }
        // Not to another one plugged in meanwhile: two would give the same.
        session.same_as_before()?;
        session.set_tags(range.least, range.most)?;
    }
    session.set_names(NameList::Cloths, &deed::cloth_names(store, u8::MAX.into())?)?;
    Ok(None)
}

/// Puts people on the handheld, the first as its owner.
///
/// # Errors
///
/// As [`run`].
pub fn people<T: Transport>(
    session: &mut LinkSession<T>,
    names: &[String],
    store: &mut dyn LogWithDrafts,
    screen: &mut TextOutput<'_>,
) -> Result<(), Error> {
    let (_, all) = store.change(|read| deed::people(read, names))?;
    let sent: Vec<_> = all.iter().map(|(id, name)| (Marks::of(*id), 0, deed::short_name(name).to_owned())).collect();
    let count = session.set_names(NameList::People, &sent)?;
    let mut desk = store.desk()?;
    match all.first() {
        Some((owner, _)) => desk.handhelds.insert(session.identity().device, *owner),
        None => desk.handhelds.remove(&session.identity().device),
    };
    store.set_desk(&desk)?;
    for line in report::people(&all, count.into()) {
        screen.say(&line)?;
    }
    Ok(())
}

/// Sends the repeatability of the handheld's owner, or of everybody while nothing of theirs is known, from pull to pull and
/// from day to day, over all cloths: the handheld does not know the cloth. What to say about it, if anything.
fn send_hand<T: Transport>(
    session: &mut LinkSession<T>,
    read: &(impl Read + ?Sized),
    owner: Option<Id>,
) -> Result<Option<&'static str>, Error> {
    let hands = read.repeatability()?;
    let own = owner.and_then(|owner| hands.of(Some(owner)).all().repeatability());
    let hand = own.or_else(|| hands.all().repeatability());
    let understood = |sent: Result<(), LinkError>| match sent {
        Ok(()) => Ok(true),
        Err(LinkError::Refused(Refusal::Unknown)) => Ok(false),
        Err(error) => Err(Error::from(error)),
    };
    if !understood(session.set_repeatability(hand))? {
        return Ok(Some(report::OLD_HAND));
    }
    Ok((!understood(session.set_sessions(hand))?).then_some(report::OLD_DAYS))
}
