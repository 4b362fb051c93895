//! A handheld at the page: what it is asked, step by step, while the page's script moves the bytes. The steps are those of
//! `tenter device sync`: a test is acknowledged only after the answer that stored it left here, so after it is on the disk.

use jiff::{SignedDuration, Timestamp};
use tenter::deed::handheld as deed;
use tenter::finding::handheld::Counts;
use tenter::link::{Asker, LinkError};
use tenter::log::handheld::FromHandheld;
use tenter::log::{Device, Id};
use tenter::store::memory::Memory;
use tenter::store::{Read as _, StoreError};
use tenter::words::errors;
use tenter::words::page::told;
use tenter_core::Repeatability;
use tenter_core::record::RecordError;
use tenter_core::wire::{Identity, LinkReply, LinkRequest, Listing, Refusal};

/// How often a question is asked before giving up.
const TRIES: u32 = 4;
/// How many tests are stored at a time.
const BATCH: usize = 32;

/// What is asked now.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Step {
    Identify,
    Name(u32),
    Clock,
    List,
    Fetch(u32),
    /// Whether the same handheld still answers, before its tests are stored.
    SameToStore,
    /// The same, before it may forget them.
    SameToAcknowledge,
    Acknowledge(u32),
    Pulls,
    Days,
}

/// A reply that answers what was asked.
enum Heard {
    Identity(Identity),
    Listing(Listing),
    Test(u32, Vec<u8>),
    NoTest,
    Done,
}

impl Step {
    fn heard(self, reply: LinkReply<'_>) -> Option<Heard> {
        match (self, reply) {
            (Self::Identify | Self::SameToStore | Self::SameToAcknowledge, LinkReply::Identity(identity)) => {
                Some(Heard::Identity(identity))
            }
            (Self::List, LinkReply::Listing(listing)) => Some(Heard::Listing(listing)),
            (Self::Fetch(asked), LinkReply::Test { from, seq, record }) if asked == from && seq >= from => {
                Some(Heard::Test(seq, record.to_vec()))
            }
            (Self::Fetch(asked), LinkReply::NoTest { from }) if asked == from => Some(Heard::NoTest),
            (Self::Name(_) | Self::Clock | Self::Acknowledge(_) | Self::Pulls | Self::Days, LinkReply::Done) => {
                Some(Heard::Done)
            }
            _ => None,
        }
    }
}

/// What the page does next.
#[derive(Debug, PartialEq, Eq)]
pub enum Next {
    /// Write these bytes, and listen.
    Write(Vec<u8>),
    /// Listen on.
    Listen,
    /// Tell the person this: it is done.
    Tell(String),
}

/// Why it ended early.
#[derive(Debug)]
pub enum Trouble {
    /// The handheld or its line.
    Link(LinkError),
    /// The log.
    Store(StoreError),
}

impl From<LinkError> for Trouble {
    fn from(error: LinkError) -> Self {
        Self::Link(error)
    }
}

impl From<StoreError> for Trouble {
    fn from(error: StoreError) -> Self {
        Self::Store(error)
    }
}

impl Trouble {
    /// In words, for a page.
    #[must_use]
    pub fn words(&self) -> String {
        match self {
            Self::Link(error) => sentence(&told(&errors::link(error))),
            Self::Store(error) => sentence(&errors::store(error)),
        }
    }
}

/// A conversation with a handheld.
#[derive(Debug)]
pub struct Handheld {
    asker: Asker,
    step: Step,
    tries: u32,
    /// How often it was asked to acknowledge.
    acknowledged: u32,
    device: u32,
    uptime_s: u32,
    listing: Listing,
    batch: Vec<FromHandheld>,
    /// Where to go on fetching; none once all came.
    from: Option<u32>,
    /// Everything up to this number is stored for good, once the batch is.
    safe: Option<u32>,
    /// Whether a test came that cannot be read: nothing from it on is acknowledged.
    stuck: bool,
    unread: Vec<(u32, RecordError)>,
    counts: Counts,
    hand: Option<Repeatability>,
}

impl Handheld {
    /// Begins one; what to write first.
    ///
    /// # Errors
    ///
    /// As [`Self::hear`].
    pub fn begin(log: &Memory) -> Result<(Self, Next), Trouble> {
        let [token, ..] = log.here().number().to_le_bytes();
        let mut handheld = Self {
            asker: Asker::new(token),
            step: Step::Identify,
            tries: 0,
            acknowledged: 0,
            device: 0,
            uptime_s: 0,
            listing: Listing { oldest: None, next: 0, unacknowledged: 0, free_pages: 0 },
            batch: Vec::new(),
            from: None,
            safe: None,
            stuck: false,
            unread: Vec::new(),
            counts: Counts::default(),
            hand: None,
        };
        let first = handheld.ask(Step::Identify, log)?;
        Ok((handheld, first))
    }

    /// Takes in what was heard; nothing where the time for it is over.
    ///
    /// # Errors
    ///
    /// A handheld that does not answer, refuses or was exchanged, or a log that cannot be written.
    pub fn hear(&mut self, bytes: &[u8], log: &mut Memory) -> Result<Next, Trouble> {
        if bytes.is_empty() {
            self.tries += 1;
            if self.tries >= TRIES || self.acknowledged >= TRIES {
                return Err(self.asker.unanswered().into());
            }
            if matches!(self.step, Step::Acknowledge(_)) {
                // Another handheld would lose its tests by it, so each try is made to the same.
                return self.ask(Step::SameToAcknowledge, log);
            }
            return self.write(log);
        }
        let step = self.step;
        for byte in bytes {
            match self.asker.hear(*byte, |reply| step.heard(reply)) {
                Ok(None) => {}
                Ok(Some(heard)) => return self.go_on(heard, log),
                // A program that is older than this question loses nothing else by it.
                Err(LinkError::Refused(Refusal::Unknown)) if matches!(step, Step::Pulls | Step::Days) => {
                    return self.go_on(Heard::Done, log);
                }
                Err(error) => return Err(error.into()),
            }
        }
        Ok(Next::Listen)
    }

    fn ask(&mut self, step: Step, log: &Memory) -> Result<Next, Trouble> {
        self.step = step;
        self.tries = 0;
        self.asker.begin();
        self.write(log)
    }

    fn write(&mut self, log: &Memory) -> Result<Next, Trouble> {
        let of = |(ratio, dof), request: fn(u32, u32) -> LinkRequest<'static>| request(ratio, dof);
        let request = match self.step {
            Step::Identify | Step::SameToStore | Step::SameToAcknowledge => LinkRequest::Identify,
            Step::Name(device) => LinkRequest::Name { device },
            Step::Clock => {
                LinkRequest::SetClock { unix_s: u32::try_from(log.here().now().as_second()).unwrap_or(u32::MAX) }
            }
            Step::List => LinkRequest::List,
            Step::Fetch(from) => LinkRequest::Fetch { from },
            Step::Acknowledge(up_to) => LinkRequest::Acknowledge { up_to },
            Step::Pulls => of(self.hand.map_or((0, 0), Repeatability::thousandths), |ratio, dof| {
                LinkRequest::SetRepeatability { ratio, dof }
            }),
            Step::Days => of(self.hand.map_or((1_000, 0), Repeatability::sessions_in_thousandths), |ratio, dof| {
                LinkRequest::SetSessions { ratio, dof }
            }),
        };
        Ok(Next::Write(self.asker.bytes(&request)?))
    }

    fn go_on(&mut self, heard: Heard, log: &mut Memory) -> Result<Next, Trouble> {
        match (self.step, heard) {
            (Step::Identify, Heard::Identity(identity)) => {
                (self.device, self.uptime_s) = (identity.device, identity.uptime_s);
                // Nobody wants a number of it, so none can be refused.
                let name = deed::name(self.device, None, &deed::numbers(log)?, log.here()).ok().flatten();
                self.ask(name.map_or(Step::Clock, Step::Name), log)
            }
            (Step::Name(device), _) => {
                self.device = device;
                self.ask(Step::Clock, log)
            }
            (Step::Clock, _) => self.ask(Step::List, log),
            (Step::List, Heard::Listing(listing)) => {
                self.listing = listing;
                self.from = listing.oldest;
                self.fetch(log)
            }
            (Step::Fetch(_), Heard::Test(number, record)) if number < self.listing.next => {
                self.take(number, &record);
                self.from = number.checked_add(1);
                if self.batch.len() < BATCH { self.fetch(log) } else { self.ask(Step::SameToStore, log) }
            }
            // All came; what was saved since it was listed waits for the next time, so that there is an end.
            (Step::Fetch(_), _) => {
                self.from = None;
                self.fetch(log)
            }
            (step, Heard::Identity(Identity { device, uptime_s, .. })) => {
                if device != self.device || uptime_s < self.uptime_s {
                    return Err(LinkError::Exchanged.into());
                }
                self.uptime_s = uptime_s;
                match self.safe {
                    Some(up_to) if step == Step::SameToAcknowledge => {
                        self.acknowledged += 1;
                        self.ask(Step::Acknowledge(up_to), log)
                    }
                    _ => {
                        self.keep(log)?;
                        self.fetch(log)
                    }
                }
            }
            (Step::Pulls, _) => self.ask(Step::Days, log),
            (Step::Days, _) => self.told(),
            _ => self.hand_over(log),
        }
    }

    /// Fetches the next test, or ends with what came.
    fn fetch(&mut self, log: &mut Memory) -> Result<Next, Trouble> {
        if let Some(from) = self.from {
            return self.ask(Step::Fetch(from), log);
        }
        if !self.batch.is_empty() {
            return self.ask(Step::SameToStore, log);
        }
        let (listed, sent) = (self.listing.unacknowledged.into(), self.counts.fetched);
        if sent < listed {
            // Its memory misread one: acknowledging would give up what never came.
            return Err(LinkError::Missing { listed, sent }.into());
        }
        match self.safe {
            Some(_) => self.ask(Step::SameToAcknowledge, log),
            None => self.hand_over(log),
        }
    }

    fn take(&mut self, number: u32, record: &[u8]) {
        self.counts.fetched += 1;
        match FromHandheld::read(Device { device: self.device, number }, record) {
            Ok(test) => self.batch.push(test),
            Err(error) => {
                self.unread.push((number, error));
                self.stuck = true;
            }
        }
        if !self.stuck {
            self.safe = Some(number);
        }
    }

    fn owner(&self, log: &Memory) -> Result<Option<Id>, StoreError> {
        let owner = log.desk()?.handhelds.get(&self.device).copied();
        owner.map(|owner| log.people().map(|people| people.resolve(owner))).transpose()
    }

    /// Stores what was fetched.
    fn keep(&mut self, log: &mut Memory) -> Result<(), Trouble> {
        let batch = core::mem::take(&mut self.batch);
        // Where its clock was not set, tests of one batch still follow each other.
        let span = SignedDuration::from_millis(i64::try_from(self.counts.fetched).unwrap_or_default());
        let stamp: Timestamp = log.here().now().saturating_add(span).unwrap_or_default();
        let before = deed::store(log, &batch, stamp, self.owner(log)?)?;
        for (test, was_known) in batch.iter().zip(before) {
            let has_cloth = log.test(test.id)?.is_some_and(|test| test.said.fabric.is_some());
            self.counts.known += u64::from(was_known);
            self.counts.stored += u64::from(!was_known);
            self.counts.in_inbox += u64::from(!was_known && !has_cloth);
        }
        Ok(())
    }

    /// Tells it how steadily its owner pulls, or everybody while nothing of theirs is known.
    fn hand_over(&mut self, log: &Memory) -> Result<Next, Trouble> {
        let hands = log.repeatability()?;
        let own = self.owner(log)?.and_then(|owner| hands.of(Some(owner)).all().repeatability());
        self.hand = own.or_else(|| hands.all().repeatability());
        self.ask(Step::Pulls, log)
    }

    fn told(&mut self) -> Result<Next, Trouble> {
        if !self.unread.is_empty() {
            let numbers = core::mem::take(&mut self.unread);
            return Err(LinkError::Unread { numbers, given_up: false }.into());
        }
        let Counts { stored, known, in_inbox, .. } = self.counts;
        let came =
            |count: u64, one: &str, many: &str| if count == 1 { one.to_owned() } else { format!("{count} {many}") };
        let mut words = vec![match stored {
            0 => format!("Nothing new is on handheld {}.", self.device),
            _ => format!("{} from handheld {}.", came(stored, "1 test came", "tests came"), self.device),
        }];
        if known > 0 {
            words.push(format!("{} here already.", came(known, "1 was", "were")));
        }
        if in_inbox > 0 {
            words.push(format!("{} no cloth yet.", came(in_inbox, "1 has", "have")));
        }
        Ok(Next::Tell(words.join(" ")))
    }
}

/// A line of ours as a sentence.
fn sentence(line: &str) -> String {
    let mut letters = line.chars();
    let first: String = letters.next().into_iter().flat_map(char::to_uppercase).collect();
    let end = if line.ends_with(['.', '?']) { "" } else { "." };
    format!("{first}{}{end}", letters.as_str())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::here::here;

    #[test]
    fn nobody_who_answers_is_told_after_four_tries() {
        let mut log = Memory::new(here());
        let (mut handheld, first) = Handheld::begin(&log).unwrap();
        for _ in 1..TRIES {
            assert_eq!(handheld.hear(b"", &mut log).unwrap(), first, "the same question again");
        }
        let words = handheld.hear(b"", &mut log).unwrap_err().words();
        assert_eq!(words, "The handheld does not answer: is it switched on, and is this its port?");
    }

    #[test]
    fn an_echo_and_noise_are_no_answer() {
        let mut log = Memory::new(here());
        let (mut handheld, first) = Handheld::begin(&log).unwrap();
        let Next::Write(first) = first else { panic!("{first:?}") };
        assert_eq!(handheld.hear(&first, &mut log).unwrap(), Next::Listen);
        assert_eq!(handheld.hear(&[0, 1, 2, 255, 0], &mut log).unwrap(), Next::Listen);
        for _ in 1..TRIES {
            handheld.hear(b"", &mut log).unwrap();
        }
        let words = handheld.hear(b"", &mut log).unwrap_err().words();
        assert!(words.contains("not a tenter handheld"), "{words}");
        assert!(!words.contains("tenter device"), "{words}");
    }
}
