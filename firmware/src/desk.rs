//! The log and the clock, as the host sees them.

use heapless::String;
use tenter_core::saved::Clock;
use tenter_core::wire::{Identity, LentTags, Listing, NameList, Refusal};

use crate::calendar::{Calendar, NoCalendar};
use crate::link::RequestHandler;
use crate::log::{DEMAND_SLOTS, Log, LogError, Named, Settings, Storage};
use crate::ui::{LogState, MeasuredCloth, MemoryFault, TagUse};

/// The log, if its chip answers, and the time.
#[derive(Debug)]
pub struct Records<S: Storage, C = NoCalendar> {
    log: Result<Log<S>, MemoryFault>,
    /// The chip, while it is no log.
    spare: Option<S>,
    calendar: C,
    /// Milliseconds since power-on, as of the newest call.
    now: u32,
    /// The date the host gave, and when.
    set: Option<(u32, u32)>,
}

impl<S: Storage> Records<S> {
    /// Opens the log on its chip, on a board without a calendar; without a log everything but saving works.
    pub fn open(storage: S) -> Self {
        Self::with_calendar(storage, NoCalendar)
    }
}

impl<S: Storage, C: Calendar> Records<S, C> {
    /// Opens the log on its chip, and asks the calendar for the date.
    #[inline(never)] // It reads the whole chip; its room on the stack is free again afterwards.
    pub fn with_calendar(storage: S, mut calendar: C) -> Self {
        let set = calendar.read().map(|unix_s| (unix_s, 0));
        let mut records = Self { log: Err(MemoryFault::Silent), spare: Some(storage), calendar, now: 0, set };
        records.look_again();
        records
    }

    /// Looks for the log again, where none was found: a chip may wake up late, or be plugged in.
    pub fn look_again(&mut self) {
        let Some(storage) = self.spare.take() else { return };
        match Log::open_or_back(storage) {
            Ok(log) => self.log = Ok(log),
            Err((storage, error)) => (self.spare, self.log) = (Some(storage), Err(fault(&error))),
        }
    }

    /// Tells the time, in milliseconds since power-on.
    pub const fn tell_time(&mut self, now: u32) {
        self.now = now;
    }

    /// The log, if its chip answers.
    pub fn log(&mut self) -> Option<&mut Log<S>> {
        self.log.as_mut().ok()
    }

    /// What the screens need to know.
    pub fn state(&self) -> LogState {
        let dated = self.set.is_some();
        let fault = self.log.as_ref().err().copied();
        self.log.as_ref().map_or_else(
            |_| LogState { fault, dated, ..LogState::default() },
            |log| LogState {
                fault,
                present: true,
                room: log.room(),
                unsent: log.unacknowledged(),
                demands: log.demand_count(),
                repeatability: log.repeatability(),
                next_tag: log.tags().next,
                agreed: log.settings().agreed,
                people: log.name_count(NameList::People),
                dated,
            },
        )
    }

    /// What is remembered, if the chip answers.
    pub fn settings(&self) -> Option<Settings> {
        self.log.as_ref().ok().map(Log::settings)
    }

    /// What is known of a tag.
    pub fn tag_use(&mut self, tag: u16) -> TagUse {
        let Ok(log) = &mut self.log else { return TagUse::Unknown };
        let (tags, agreed) = (log.tags(), log.settings().agreed);
        match log.cloth_tagged(tag) {
            Ok(Some(cloth)) => TagUse::Cloth(cloth),
            // A list that cannot be read may hold it.
            Err(_) => TagUse::Unknown,
            Ok(None) if tags.is_free(tag) => TagUse::Free,
            Ok(None) if tags.holds(tag) => TagUse::Given,
            Ok(None) if agreed => TagUse::Unknown,
            Ok(None) => TagUse::Free,
        }
    }

    /// The person in a slot.
    pub fn person(&mut self, slot: u8) -> Option<Named> {
        self.log()?.name(NameList::People, slot).ok()?
    }

    /// The person with a mark and where it stands; the owner, who is the first, where nobody has it.
    pub fn person_marked(&mut self, mark: Option<u32>) -> Option<(u8, Named)> {
        let count = self.log.as_ref().ok()?.name_count(NameList::People);
        let mut people = (0..count).rev().filter_map(|slot| self.person(slot).map(|named| (slot, named)));
        let mut owner = None;
        people
            .find_map(|(slot, named)| {
                if Some(named.mark) == mark {
                    return Some((slot, named));
                }
                owner = Some((slot, named));
                None
            })
            .or(owner)
    }

    /// The time for a record.
    pub fn clock(&self) -> Clock {
        let unix_s = self.set.map(|(unix_s, at)| unix_s.saturating_add(self.now.wrapping_sub(at) / 1000));
        Clock { uptime_s: self.now / 1000, unix_s }
    }

    /// The cloth of the saved test beside another; see [`Log::beside`].
    #[inline(never)] // So that a test's room on the stack is free again afterwards.
    pub fn cloth(&mut self, than: Option<u32>, newer: bool) -> Option<MeasuredCloth> {
        let log = self.log()?;
        let (place, saved) = log.beside(than, newer).ok()??;
        MeasuredCloth::of(Some(place), saved.tag, &saved.test, log.repeatability())
    }

    fn with_log<T>(&mut self, act: impl FnOnce(&mut Log<S>) -> Result<T, LogError<S::Error>>) -> Result<T, Refusal> {
        self.log().ok_or(Refusal::Chip).and_then(|log| act(log).map_err(reason))
    }
}

fn reason<E>(error: LogError<E>) -> Refusal {
    match error {
        LogError::NeverSaved => Refusal::Ahead,
        LogError::Named => Refusal::Named,
        LogError::NoSlot => Refusal::Slot,
        LogError::Record(_) => Refusal::Record,
        LogError::Chip(_) | LogError::NotKept | LogError::TooSmall | LogError::Newer | LogError::Full => Refusal::Chip,
    }
}

/// Why there is no log.
fn fault<E>(error: &LogError<E>) -> MemoryFault {
    match error {
        LogError::Newer => MemoryFault::Newer,
        LogError::TooSmall => MemoryFault::TooSmall,
        _ => MemoryFault::Silent,
    }
}

impl<S: Storage, C: Calendar> RequestHandler for Records<S, C> {
    fn identity(&mut self) -> Identity {
        let clock = self.clock();
        Identity {
            device: self.log.as_ref().map_or(0, Log::device_id),
            version: String::try_from(env!("CARGO_PKG_VERSION")).unwrap_or_default(),
            uptime_s: clock.uptime_s,
            unix_s: clock.unix_s,
            demand_slots: DEMAND_SLOTS,
        }
    }

    fn listing(&mut self) -> Result<Listing, Refusal> {
        self.with_log(|log| {
            Ok(Listing {
                oldest: log.oldest()?,
                next: log.next_seq(),
                unacknowledged: log.unacknowledged(),
                free_pages: log.free_pages(),
            })
        })
    }

    fn fetch<'b>(&mut self, from: u32, buffer: &'b mut [u8]) -> Result<Option<(u32, &'b [u8])>, Refusal> {
        let Some((number, record)) = self.with_log(|log| log.fetch_record(from))? else { return Ok(None) };
        let place = buffer.get_mut(..record.len()).ok_or(Refusal::Record)?;
        place.copy_from_slice(&record);
        Ok(Some((number, place)))
    }

    fn acknowledge(&mut self, up_to: u32) -> Result<(), Refusal> {
        self.with_log(|log| log.acknowledge(up_to))
    }

    fn name(&mut self, device: u32) -> Result<(), Refusal> {
        self.with_log(|log| log.set_device_id(device))
    }

    fn set_demand(&mut self, slot: u8, record: &[u8]) -> Result<(), Refusal> {
        self.with_log(|log| log.set_demand_record(slot, record))
    }

    fn set_demand_count(&mut self, count: u8) -> Result<(), Refusal> {
        self.with_log(|log| log.set_demand_count(count))
    }

    fn set_clock(&mut self, unix_s: u32) {
        self.set = Some((unix_s, self.now));
        self.calendar.set(unix_s);
    }

    fn set_repeatability(&mut self, ratio: u32, dof: u32) -> Result<(), Refusal> {
        self.with_log(|log| log.set_repeatability(ratio, dof))
    }

    fn set_sessions(&mut self, ratio: u32, dof: u32) -> Result<(), Refusal> {
        self.with_log(|log| log.set_sessions(ratio, dof))
    }

    fn set_tags(&mut self, least: u16, most: u16) -> Result<(), Refusal> {
        self.with_log(|log| log.lend_tags(least, most))
    }

    fn tags(&mut self) -> Result<LentTags, Refusal> {
        self.with_log(|log| Ok(log.tags()))
    }

    fn set_name(&mut self, list: NameList, slot: u8, named: &Named) -> Result<(), Refusal> {
        self.with_log(|log| log.set_name(list, slot, named))
    }

    fn set_name_count(&mut self, list: NameList, count: u8) -> Result<(), Refusal> {
        self.with_log(|log| log.set_name_count(list, count))
    }
}
