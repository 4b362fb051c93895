//! `tenter device sync`: fetches every test, stores it, and only then lets the handheld forget it.
//!
//! However it is cut short, each test is on the handheld, in the log, or in both; the next sync completes it.

use std::collections::{HashMap, HashSet};

use jiff::{SignedDuration, Timestamp};
use tenter_core::record::RecordError;
use tenter_core::wire::Listing;

use super::super::progress::Progress;
use crate::cli::device::SyncArgs;
use crate::deed::handheld::{self as deed, Numbers};
use crate::deed::{Refused, people};
use crate::error::Error;
use crate::finding::handheld::{Arrived, Counts, stretch};
use crate::link::{Fetched, LinkError, LinkSession, Transport};
use crate::log::handheld::FromHandheld;
use crate::log::{Device, Id};
use crate::store::{Change as _, LogWithDrafts};
use crate::text::TextOutput;
use crate::text::device as report;

/// How to do it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Options {
    /// The number for a handheld that has none; never 0.
    pub name: Option<u32>,
    /// Who pulled, by name; none for the owner who is remembered.
    pub by: Option<String>,
    /// Whether tests that arrive damaged may be forgotten.
    pub give_up_damaged: bool,
    /// How many tests are stored at a time, from 1 on.
    pub batch: usize,
}

impl Default for Options {
    fn default() -> Self {
        Self { name: None, by: None, give_up_damaged: false, batch: 32 }
    }
}

impl Options {
    /// Reads the flags.
    ///
    /// # Errors
    ///
    /// A number that is none.
    pub fn of(args: &SyncArgs) -> Result<Self, Error> {
        let name = args.name.as_deref().map(deed::number).transpose()?;
        Ok(Self { name, by: args.by.clone(), give_up_damaged: args.give_up_damaged, ..Self::default() })
    }
}

/// Synchronises.
///
/// # Errors
///
/// A number other than the handheld has, a line that breaks, a log that cannot be written, and tests that cannot be
/// read: then everything else was done.
pub fn run<T: Transport>(
    session: &mut LinkSession<T>,
    options: &Options,
    store: &mut dyn LogWithDrafts,
    screen: &mut TextOutput<'_>,
) -> Result<(), Error> {
    let before = deed::numbers(store)?;
    let fresh = name(session, options.name, &before, screen)?;
    let device = session.identity().device;
    let owner = owner(device, options.by.as_deref(), store)?;
    let clock = super::set_clock(session, screen.here)?;
    let listing = session.list()?;
    screen.say(&report::greeting(device, fresh, clock))?;
    let mut sync = Sync {
        device,
        owner,
        store,
        screen,
        numbers: before.get(&device).cloned().unwrap_or_default(),
        progress: Progress::of("fetching", Some(listing.unacknowledged.into())),
        stamp: Timestamp::UNIX_EPOCH,
        stuck: false,
        safe: None,
        unread: Vec::new(),
        counts: Counts::default(),
    };
    if let Some(oldest) = listing.oldest {
        sync.fetch(session, oldest, &listing, options)?;
    }
    let Sync { counts, unread, progress, safe, store, screen, .. } = sync;
    drop(progress); // The bar is not to stand between the lines that follow.
    let (listed, sent) = (listing.unacknowledged.into(), counts.fetched);
    if sent < listed {
        // Its memory misread one: acknowledging would give up what never came.
        return Err(LinkError::Missing { listed, sent }.into());
    }
    if let Some(up_to) = safe {
        session.acknowledge(up_to)?;
    }
    let hand = super::send_hand(session, store, owner)?;
    let hand = if hand.is_some() { hand } else { super::send_tags(session, store)? };
    for line in report::summary(&counts).into_iter().chain(hand.map(str::to_owned)) {
        screen.say(&line)?;
    }
    if unread.is_empty() {
        return Ok(());
    }
    Err(LinkError::Unread { numbers: unread, given_up: options.give_up_damaged }.into())
}

/// Who pulled with a handheld: of a name, and then remembered as its owner; else the one who is remembered.
fn owner(device: u32, name: Option<&str>, log: &mut dyn LogWithDrafts) -> Result<Option<Id>, Error> {
    let mut desk = log.desk()?;
    if name.is_none() {
        return Ok(desk
            .handhelds
            .get(&device)
            .copied()
            .map(|owner| log.people().map(|all| all.resolve(owner)))
            .transpose()?);
    }
    let (_, owner) = log.change(|read| {
        let mut who = people::puller(read, name)?;
        Ok::<_, Refused>((core::mem::take(&mut who.facts), who.id))
    })?;
    if let Some(owner) = owner
        && desk.handhelds.insert(device, owner) != Some(owner)
    {
        log.set_desk(&desk)?;
    }
    Ok(owner)
}

/// Names a handheld that has no number; whether it had none.
fn name<T: Transport>(
    session: &mut LinkSession<T>,
    wanted: Option<u32>,
    known: &Numbers,
    screen: &TextOutput<'_>,
) -> Result<bool, Error> {
    let number = deed::name(session.identity().device, wanted, known, screen.here)?;
    number.map_or(Ok(()), |number| session.name(number))?;
    Ok(number.is_some())
}

/// A synchronisation under way.
struct Sync<'s, 'o> {
    device: u32,
    /// Who pulled with it.
    owner: Option<Id>,
    store: &'s mut dyn LogWithDrafts,
    screen: &'s mut TextOutput<'o>,
    numbers: HashMap<u32, HashSet<Id>>,
    progress: Progress,
    /// The time last given to a test whose own is not known.
    stamp: Timestamp,
    /// Whether a test came that cannot be read: nothing from it on is acknowledged.
    stuck: bool,
    /// Everything up to this number is stored for good.
    safe: Option<u32>,
    unread: Vec<(u32, RecordError)>,
    counts: Counts,
}

impl Sync<'_, '_> {
    fn fetch<T: Transport>(
        &mut self,
        session: &mut LinkSession<T>,
        oldest: u32,
        listing: &Listing,
        options: &Options,
    ) -> Result<(), Error> {
        let mut from = Some(oldest);
        while let Some(start) = from {
            let mut batch = Vec::new();
            let mut broken = None;
            from = None;
            // More than it listed waits for the next time too.
            let left = u64::from(listing.unacknowledged).saturating_sub(self.counts.fetched);
            let batch_size = options.batch.max(1).min(usize::try_from(left).unwrap_or(usize::MAX));
            for fetched in session.fetch_all_from(start).take(batch_size) {
                let Fetched { seq, record } = match fetched {
                    // What was saved since it was listed waits for the next time, so that there is an end.
                    Ok(Fetched { seq, .. }) if seq >= listing.next => break,
                    Ok(fetched) => fetched,
                    Err(error) => {
                        broken = Some(error);
                        break;
                    }
                };
                from = seq.checked_add(1);
                self.counts.fetched += 1;
                self.progress.at(self.counts.fetched);
                match FromHandheld::read(Device { device: self.device, number: seq }, &record) {
                    Ok(test) => batch.push(test),
                    Err(error) => {
                        self.unread.push((seq, error));
                        self.stuck |= !(options.give_up_damaged && error != RecordError::Newer);
                    }
                }
                if !self.stuck {
                    self.safe = Some(seq);
                }
            }
            if broken.is_none() && !batch.is_empty() {
                session.same_as_before()?;
            }
            self.keep(&batch)?;
            if let Some(error) = broken {
                return Err(error.into());
            }
        }
        Ok(())
    }

    /// Stores tests for good and says so.
    fn keep(&mut self, batch: &[FromHandheld]) -> Result<(), Error> {
        let span = SignedDuration::from_millis(i64::try_from(batch.len()).unwrap_or_default());
        self.stamp = self.screen.here.now().max(self.stamp.saturating_add(span).unwrap_or(self.stamp));
        let before = deed::store(self.store, batch, self.stamp, self.owner)?;
        let pooled = self.store.repeatability()?;
        let mut lines = Vec::new();
        for (test, was_known) in batch.iter().zip(before) {
            let bearers = self.numbers.entry(test.device.number).or_default();
            let is_reused = bearers.insert(test.id) && bearers.len() > 1;
            let Some(stored) = self.store.test(test.id)? else { continue };
            let fabric = stored.said.fabric.map(|fabric| self.store.fabric(fabric)).transpose()?.flatten();
            self.counts.known += u64::from(was_known);
            self.counts.stored += u64::from(!was_known);
            self.counts.in_inbox += u64::from(!was_known && fabric.is_none());
            self.counts.number_reused += u64::from(is_reused);
            let construction = fabric.as_ref().map(|fabric| fabric.construction).unwrap_or_default();
            let stretch = stretch(&stored.said, &pooled, construction);
            lines.push(report::arrived(&Arrived {
                test: &stored,
                number: test.device.number,
                fabric: fabric.as_ref(),
                stretch,
                was_known,
            }));
        }
        let screen = &mut self.screen;
        self.progress.aside(|| {
            lines.iter().try_for_each(|line| screen.say(line))?;
            screen.out.flush()
        })?;
        Ok(())
    }
}
