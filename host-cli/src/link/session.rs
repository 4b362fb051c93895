//! Asking a handheld: typed questions, patience, and asking again when an answer is lost.

use std::collections::hash_map::RandomState;
use std::hash::{BuildHasher, Hasher};
use std::io::{self, BufRead, BufReader};
use std::iter;
use std::time::{Duration, Instant};

use tenter_core::Repeatability;
use tenter_core::record::{LabelledDemand, MAX_DEMAND_BYTES, encode_demand};
use tenter_core::wire::{Identity, LentTags, LinkReply, LinkRequest, Listing, NameList, Refusal};

use super::{Asker, LinkError, Transport};

/// A test as it lies on the handheld.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Fetched {
    /// Its number on that handheld, for ever.
    pub seq: u32,
    /// Its record. It carries a checksum of its own: decode it and store the result before acknowledging.
    pub record: Vec<u8>,
}

/// A conversation with a handheld.
#[derive(Debug)]
pub struct LinkSession<T> {
    line: BufReader<T>,
    asker: Asker,
    identity: Identity,
    patience: Duration,
    tries: u32,
}

impl<T: Transport> LinkSession<T> {
    /// How long a reply may take.
    pub const PATIENCE: Duration = Duration::from_secs(1);
    /// How often a request is sent before giving up.
    pub const TRIES: u32 = 4;

    /// Finds out who is there.
    ///
    /// A line keeps the order of what it carries. So with the answer to this first question, whatever an earlier
    /// program left unread on the line is past.
    ///
    /// # Errors
    ///
    /// [`LinkError`]: nobody there, somebody else, or of another version.
    pub fn open(line: T) -> Result<Self, LinkError> {
        Self::open_with(line, Self::PATIENCE, Self::TRIES)
    }

    /// As [`LinkSession::open`], with another patience.
    ///
    /// # Errors
    ///
    /// As [`LinkSession::open`].
    pub fn open_with(line: T, patience: Duration, tries: u32) -> Result<Self, LinkError> {
        // Not the same in two programs one after the other.
        let [token, ..] = RandomState::new().build_hasher().finish().to_le_bytes();
        let nobody = Identity { device: 0, version: Default::default(), uptime_s: 0, unix_s: None, demand_slots: 0 };
        let line = BufReader::new(line);
        let mut session = Self { line, asker: Asker::new(token), identity: nobody, patience, tries };
        session.identify()?;
        Ok(session)
    }

    /// Who is there, as last said.
    pub const fn identity(&self) -> &Identity {
        &self.identity
    }

    /// Who is there and what its clocks say now.
    ///
    /// # Errors
    ///
    /// [`LinkError`].
    pub fn identify(&mut self) -> Result<&Identity, LinkError> {
        self.identity = self.ask(LinkRequest::Identify, |reply| match reply {
            LinkReply::Identity(identity) => Some(identity),
            _ => None,
        })?;
        Ok(&self.identity)
    }

    /// What is saved on the handheld.
    ///
    /// # Errors
    ///
    /// [`LinkError`].
    pub fn list(&mut self) -> Result<Listing, LinkError> {
        self.ask(LinkRequest::List, |reply| match reply {
            LinkReply::Listing(listing) => Some(listing),
            _ => None,
        })
    }

    /// The first saved test with the number `from` or a higher one.
    ///
    /// # Errors
    ///
    /// [`LinkError`].
    pub fn fetch(&mut self, from: u32) -> Result<Option<Fetched>, LinkError> {
        self.ask(LinkRequest::Fetch { from }, |reply| match reply {
            LinkReply::Test { from: asked, seq, record } if asked == from && seq >= from => {
                Some(Some(Fetched { seq, record: record.to_vec() }))
            }
            LinkReply::NoTest { from: asked } if asked == from => Some(None),
            _ => None,
        })
    }

    /// All saved tests from the number `from` on, in rising order; ends after the first error.
    pub fn fetch_all_from(&mut self, from: u32) -> impl Iterator<Item = Result<Fetched, LinkError>> {
        let mut next = Some(from);
        iter::from_fn(move || {
            let fetched = self.fetch(next.take()?).transpose()?;
            if let Ok(Fetched { seq, .. }) = &fetched {
                next = seq.checked_add(1);
            }
            Some(fetched)
        })
    }

    /// Makes sure that whoever answered before answers still, without a pause. A handheld may be unplugged and another
    /// plugged in behind the same line.
    ///
    /// # Errors
    ///
    /// [`LinkError::Exchanged`], once in 49 days also without cause: then the time since power-on begins again.
    pub fn same_as_before(&mut self) -> Result<(), LinkError> {
        let Identity { device, uptime_s, .. } = self.identity;
        let now = self.identify()?;
        if now.device == device && now.uptime_s >= uptime_s { Ok(()) } else { Err(LinkError::Exchanged) }
    }

    /// Tells the handheld that all tests up to a number are stored for good. Only then may it use their room again.
    /// Another handheld would lose its tests by that, so each try is made to [the same](LinkSession::same_as_before).
    ///
    /// # Errors
    ///
    /// [`LinkError`].
    pub fn acknowledge(&mut self, up_to: u32) -> Result<(), LinkError> {
        let mut tries = 1;
        loop {
            self.same_as_before()?;
            match self.ask_anew(1, || LinkRequest::Acknowledge { up_to }, is_done) {
                Err(LinkError::Silent | LinkError::Garbled) if tries < self.tries => tries += 1,
                done => return done,
            }
        }
    }

    /// Gives the handheld its number, once and for ever.
    ///
    /// # Errors
    ///
    /// [`LinkError`]; refused when it has another.
    pub fn name(&mut self, device: u32) -> Result<(), LinkError> {
        self.order(LinkRequest::Name { device })?;
        self.identity.device = device;
        Ok(())
    }

    /// Puts these demands on the handheld in place of those there. When it breaks off midway, some are new and some
    /// old, each whole; repeat it.
    ///
    /// # Errors
    ///
    /// [`LinkError`].
    pub fn set_demands(&mut self, demands: &[LabelledDemand]) -> Result<(), LinkError> {
        let slots = self.identity.demand_slots;
        let too_many = LinkError::TooManyDemands { given: demands.len(), slots };
        let Some(count) = u8::try_from(demands.len()).ok().filter(|count| *count <= slots) else {
            return Err(too_many);
        };
        for (slot, demand) in (0..).zip(demands) {
            let mut buffer = [0; MAX_DEMAND_BYTES];
            let record = encode_demand(demand, &mut buffer).map_err(io::Error::other)?;
            self.order(LinkRequest::SetDemand { slot, record })?;
        }
        self.order(LinkRequest::SetDemandCount { count })
    }

    /// Sets the handheld's clock; `now` gives the seconds since 1970-01-01 00:00 UTC, and is called at every try.
    ///
    /// # Errors
    ///
    /// [`LinkError`].
    pub fn set_clock(&mut self, mut now: impl FnMut() -> u32) -> Result<(), LinkError> {
        self.ask_anew(self.tries, || LinkRequest::SetClock { unix_s: now() }, is_done)
    }

    /// Tells the handheld how steadily its owner pulls, to be used in every answer, or to forget it.
    ///
    /// # Errors
    ///
    /// [`LinkError`]; refused with [`Refusal::Unknown`](tenter_core::wire::Refusal::Unknown) by a handheld whose program is
    /// older than this request, which loses nothing else by it.
    pub fn set_repeatability(&mut self, hand: Option<Repeatability>) -> Result<(), LinkError> {
        let (ratio, dof) = hand.map_or((0, 0), Repeatability::thousandths);
        self.order(LinkRequest::SetRepeatability { ratio, dof })
    }

    /// Tells the handheld how much its owner's days differ, or to forget it. It belongs to the repeatability, and is sent
    /// after it.
    ///
    /// # Errors
    ///
    /// As [`LinkSession::set_repeatability`].
    pub fn set_sessions(&mut self, hand: Option<Repeatability>) -> Result<(), LinkError> {
        let (ratio, dof) = hand.map_or((1_000, 0), Repeatability::sessions_in_thousandths);
        self.order(LinkRequest::SetSessions { ratio, dof })
    }

    /// Lends the handheld tags.
    ///
    /// # Errors
    ///
    /// As [`LinkSession::set_repeatability`].
    pub fn set_tags(&mut self, least: u16, most: u16) -> Result<(), LinkError> {
        self.order(LinkRequest::SetTags { least, most })
    }

    /// The tags that the handheld may give, and how far it gave them.
    ///
    /// # Errors
    ///
    /// As [`LinkSession::set_repeatability`].
    pub fn tags(&mut self) -> Result<LentTags, LinkError> {
        self.ask(LinkRequest::ListTags, |reply| match reply {
            LinkReply::Tags(tags) => Some(tags),
            _ => None,
        })
    }

    /// Puts names on the handheld in place of those there, as many as there is room for: how many. When it breaks off
    /// midway, some are new and some old, each whole; repeat it.
    ///
    /// # Errors
    ///
    /// As [`LinkSession::set_repeatability`].
    pub fn set_names(&mut self, list: NameList, names: &[(u32, u16, String)]) -> Result<u8, LinkError> {
        let mut count = 0;
        for (slot, (mark, tag, name)) in (0..u8::MAX).zip(names) {
            match self.order(LinkRequest::SetName { list, slot, mark: *mark, tag: *tag, name }) {
                Ok(()) => count = slot.saturating_add(1),
                Err(LinkError::Refused(Refusal::Slot)) => break,
                Err(error) => return Err(error),
            }
        }
        self.order(LinkRequest::SetNameCount { list, count })?;
        Ok(count)
    }

    fn order(&mut self, request: LinkRequest<'_>) -> Result<(), LinkError> {
        self.ask(request, is_done)
    }

    fn ask<R>(
        &mut self,
        request: LinkRequest<'_>,
        take: impl FnMut(LinkReply<'_>) -> Option<R>,
    ) -> Result<R, LinkError> {
        self.ask_anew(self.tries, || request, take)
    }

    /// Asks until a reply comes that `take` takes, or a refusal.
    fn ask_anew<'r, R>(
        &mut self,
        tries: u32,
        mut request: impl FnMut() -> LinkRequest<'r>,
        mut take: impl FnMut(LinkReply<'_>) -> Option<R>,
    ) -> Result<R, LinkError> {
        self.asker.begin();
        for _ in 0..tries {
            let bytes = self.asker.bytes(&request())?;
            match self.line.get_mut().write_all(&bytes) {
                // The reply will not come, which is reason enough to try again.
                Err(error) if is_timeout(&error) => {}
                written => written?,
            }
            let deadline = Instant::now() + self.patience;
            while let Some(byte) = self.next_byte(deadline)? {
                if let Some(taken) = self.asker.hear(byte, &mut take)? {
                    return Ok(taken);
                }
            }
        }
        Err(self.asker.unanswered())
    }

    /// The next byte, or none when the time is up.
    fn next_byte(&mut self, deadline: Instant) -> Result<Option<u8>, LinkError> {
        loop {
            if self.line.buffer().is_empty() {
                let left = deadline.saturating_duration_since(Instant::now());
                if left.is_zero() {
                    return Ok(None);
                }
                self.line.get_mut().set_patience(left)?;
            }
            match self.line.fill_buf() {
                Ok([]) => return Err(LinkError::Closed),
                Ok([byte, ..]) => {
                    let byte = *byte;
                    self.line.consume(1);
                    return Ok(Some(byte));
                }
                Err(error) if is_timeout(&error) => return Ok(None),
                Err(error) if error.kind() == io::ErrorKind::Interrupted => {}
                Err(error) => return Err(error.into()),
            }
        }
    }
}

fn is_done(reply: LinkReply<'_>) -> Option<()> {
    (reply == LinkReply::Done).then_some(())
}

fn is_timeout(error: &io::Error) -> bool {
    matches!(error.kind(), io::ErrorKind::TimedOut | io::ErrorKind::WouldBlock)
}
