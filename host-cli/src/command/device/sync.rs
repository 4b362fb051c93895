//! `tenter device sync`: fetches every test, stores it, and only then lets the handheld forget it.
//!
//! However it is cut short, each test is on the handheld, in the log, or in both; the next sync completes it.

use std::collections::{HashMap, HashSet};
use std::hash::{BuildHasher as _, Hasher as _, RandomState};

use jiff::{SignedDuration, Timestamp};
use tenter_core::record::RecordError;
use tenter_core::{Figure, Figures, PullTest};

use super::super::progress::Progress;
use crate::cli::device::SyncArgs;
use crate::error::Error;
use crate::link::{Fetched, Session, Transport};
use crate::log::handheld::{self, FromHandheld};
use crate::log::{Construction, Device, Fact, Hands, Id, Subject, fold};
use crate::store::{Read, Store, Which};
use crate::text::Screen;
use crate::text::device as report;
use crate::text::device::Arrived;
use crate::text::device::Counts;

/// How to do it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Options {
    /// The number for a handheld that has none; never 0.
    pub name: Option<u32>,
    /// Whether tests that arrive damaged may be forgotten.
    pub give_up_damaged: bool,
    /// How many tests are stored and acknowledged at a time, from 1 on: on a slow line a cut costs no more than these.
    pub batch: usize,
}

impl Default for Options {
    fn default() -> Self {
        Self { name: None, give_up_damaged: false, batch: 32 }
    }
}

impl Options {
    /// Reads the flags.
    ///
    /// # Errors
    ///
    /// A number that is none.
    pub fn of(args: &SyncArgs) -> Result<Self, Error> {
        let number = |text: &String| {
            let number = text.trim().parse().ok().filter(|number| *number != 0);
            number.ok_or_else(|| Error::argument("--name", text, "type a whole number from 1 to 4294967295"))
        };
        let name = args.name.as_ref().map(number).transpose()?;
        Ok(Self { name, give_up_damaged: args.give_up_damaged, ..Self::default() })
    }
}

/// Synchronises.
///
/// # Errors
///
/// A number other than the handheld has, a line that breaks, a log that cannot be written, and tests that cannot be
/// read: then everything else was done.
pub fn run<T: Transport>(
    session: &mut Session<T>,
    options: Options,
    store: &mut dyn Store,
    screen: &mut Screen<'_>,
) -> Result<(), Error> {
    let before = known(store)?;
    let fresh = name(session, options.name, &before)?;
    let device = session.identity().device;
    let clock = super::set_clock(session)?;
    let listing = session.list()?;
    screen.say(&report::greeting(device, fresh, clock))?;
    let mut sync = Sync {
        device,
        store,
        screen,
        numbers: before.get(&device).cloned().unwrap_or_default(),
        progress: Progress::of(listing.unacknowledged.into()),
        stamp: Timestamp::UNIX_EPOCH,
        stuck: false,
        unread: Vec::new(),
        counts: Counts::default(),
    };
    if let Some(oldest) = listing.oldest {
        sync.fetch(session, oldest, options)?;
    }
    let Sync { counts, unread, progress, .. } = sync;
    drop(progress); // The bar is not to stand between the lines that follow.
    let hand = super::send_hand(session, store)?;
    for line in report::summary(&counts).into_iter().chain(hand.map(str::to_owned)) {
        screen.say(&line)?;
    }
    report::unread(&unread, options.give_up_damaged).map_or(Ok(()), |line| Err(Error::Usage(line)))
}

/// The numbers that handhelds gave to tests that are in the log, and as what.
type Numbers = HashMap<u32, HashSet<Id>>;

fn known(read: &dyn Read) -> Result<HashMap<u32, Numbers>, Error> {
    let mut known: HashMap<u32, Numbers> = HashMap::new();
    read.each_test(Which::All, &mut |test| {
        if let Some(Device { device, number }) = test.said.device {
            known.entry(device).or_default().entry(number).or_default().insert(test.id);
        }
        Ok(())
    })?;
    Ok(known)
}

/// Names a handheld that has no number; whether it had none.
fn name<T: Transport>(
    session: &mut Session<T>,
    wanted: Option<u32>,
    known: &HashMap<u32, Numbers>,
) -> Result<bool, Error> {
    match (session.identity().device, wanted) {
        (0, wanted) => {
            let random = || u32::try_from(RandomState::new().build_hasher().finish() >> 32).unwrap_or_default();
            let mut free = core::iter::repeat_with(random).filter(|number| *number != 0 && !known.contains_key(number));
            let number = wanted.or_else(|| free.next()).unwrap_or(1);
            session.name(number)?;
            Ok(true)
        }
        (number, Some(wanted)) if wanted != number => Err(Error::argument(
            "--name",
            &wanted.to_string(),
            format!("this handheld is number {number} and keeps it; leave --name out"),
        )),
        _ => Ok(false),
    }
}

/// A synchronisation under way.
struct Sync<'s, 'o> {
    device: u32,
    store: &'s mut dyn Store,
    screen: &'s mut Screen<'o>,
    numbers: Numbers,
    progress: Progress,
    /// The time last given to a test whose own is not known.
    stamp: Timestamp,
    /// Whether a test came that cannot be read: nothing from it on is acknowledged.
    stuck: bool,
    unread: Vec<(u32, RecordError)>,
    counts: Counts,
}

impl Sync<'_, '_> {
    fn fetch<T: Transport>(&mut self, session: &mut Session<T>, oldest: u32, options: Options) -> Result<(), Error> {
        let mut from = Some(oldest);
        while let Some(start) = from {
            let mut batch = Vec::new();
            let (mut safe, mut broken) = (None, None);
            from = None;
            for fetched in session.fetch_all_from(start).take(options.batch.max(1)) {
                let Fetched { seq, record } = match fetched {
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
                    safe = Some(seq);
                }
            }
            if broken.is_none() && !batch.is_empty() {
                session.same_as_before()?;
            }
            self.keep(&batch)?;
            if let Some(error) = broken {
                return Err(error.into());
            }
            if let Some(up_to) = safe {
                session.acknowledge(up_to)?;
            }
        }
        Ok(())
    }

    /// Stores tests for good and says so.
    fn keep(&mut self, batch: &[FromHandheld]) -> Result<(), Error> {
        let span = SignedDuration::from_millis(i64::try_from(batch.len()).unwrap_or_default());
        self.stamp = super::now().max(self.stamp.saturating_add(span).unwrap_or(self.stamp));
        let before: Vec<bool> =
            batch.iter().map(|test| Ok(self.store.test(test.id)?.is_some())).collect::<Result<_, Error>>()?;
        let pulled = handheld::pulled(batch, self.stamp);
        self.store.merge(&mut batch.iter().zip(pulled).map(|(test, pulled)| Ok(test.entry(pulled))))?;
        self.store.change(&mut |read| {
            let mut facts = Vec::new();
            for test in batch {
                facts.extend(assignment(read, test.id)?);
            }
            Ok(facts)
        })?;
        let hands = self.store.hands()?;
        let mut lines = Vec::new();
        for (test, was_known) in batch.iter().zip(before) {
            let bearers = self.numbers.entry(test.device.number).or_default();
            let bears_again = bearers.insert(test.id) && bearers.len() > 1;
            let Some(stored) = self.store.test(test.id)? else { continue };
            let fabric = stored.said.fabric.map(|fabric| self.store.fabric(fabric)).transpose()?.flatten();
            self.counts.known += u64::from(was_known);
            self.counts.stored += u64::from(!was_known);
            self.counts.in_inbox += u64::from(!was_known && fabric.is_none());
            self.counts.bear_again += u64::from(bears_again);
            let construction = fabric.as_ref().map(|fabric| fabric.construction).unwrap_or_default();
            let stretch = stretch(&stored.said.test, &hands, construction);
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

/// The stretch with what it is worth.
pub(super) fn stretch(test: &PullTest, hands: &Hands, construction: Construction) -> Option<Figure> {
    Figures::of(test, hands.scatter_for(construction, test)).ok().map(|figures| figures.stretch)
}

/// Gives a test to the one live fabric that wears its tag, unless it was ever given to one.
pub(super) fn assignment(read: &dyn Read, id: Id) -> Result<Option<Fact>, Error> {
    let Some(test) = fold::test(read.history(Subject::Test(id))?) else { return Ok(None) };
    let (None, false, Some(tag)) = (test.said.fabric, test.dropped, test.said.tag) else { return Ok(None) };
    let mut worn = read.fabrics_tagged(tag)?.into_iter().filter(|fabric| !fabric.dropped);
    Ok(match (worn.next(), worn.next()) {
        (Some(fabric), None) => Some(Fact::TestAssigned { test: id, fabric: fabric.id }),
        _ => None,
    })
}
