//! What survives the loss of power: saved tests, demands, the handheld's number, its user's repeatability.
//!
//! A chip of 512 pages of 64 bytes ([`Storage`]) holds, in this order:
//!
//! | pages | hold |
//! | --- | --- |
//! | 0, 1 | the state, written in turn: its number and its user's repeatability, which tests the host has, how many demands there are |
//! | 2 – 17 | eight demands, two pages each |
//! | 18 – 447 | a ring of saved tests: most take one page, the largest four |
//! | 448, 449 | what is remembered besides ([`Settings`]), written in turn |
//! | 450 – 501 | names that the host sent: of 96 cloths, then of 8 people, two a page |
//! | 502 – 509 | the test in hand, in two places written in turn |
//!
//! A smaller chip has a shorter ring, and one of fewer than 128 pages nothing behind it: that is then forgotten with the
//! power. On a chip of an older program the ring went to its end; the last pages are set apart as soon as the host has
//! every test. Every page and every record carries a checksum. The ring spreads the wear, and
//! never overwrites a test that the host has not acknowledged. After an error everything is as it was before the
//! call, or done; every call can be made again.

use core::fmt;
use core::num::NonZeroU32;

use heapless::Vec;
use tenter_core::PullTest;
use tenter_core::Repeatability;
use tenter_core::record::{LabelledDemand, MAX_DEMAND_BYTES, RecordError, encode_demand};
use tenter_core::saved::{self, MAX_SAVED_BYTES, SavedTest};

mod demands;
pub mod eeprom;
mod journal;
mod names;
mod page;
mod ring;
mod settings;
mod state;
mod storage;
mod told;

pub use journal::TestInHand;
pub use names::{CLOTH_SLOTS, Named, PEOPLE_SLOTS};
pub use settings::Settings;
pub use storage::{PAGE_BYTES, Storage, StoragePage};

use journal::{JOURNAL_PAGES, Journal};
use names::NAME_PAGES;
use page::{PAYLOAD_BYTES, State};
use ring::Ring;
use settings::SettingsPages;
use state::StatePages;

const STATE_PAGES: u16 = 2;
const DEMAND_START: u16 = STATE_PAGES;
const SLOT_PAGES: u16 = 2;
const RING_START: u16 = DEMAND_START + DEMAND_SLOTS as u16 * SLOT_PAGES;

/// How many pages at the end of the chip are set apart.
const APART_PAGES: u16 = 64;
/// The smallest chip on which they are.
const LEAST_PAGES: u16 = 128;
const _: () = assert!(2 + NAME_PAGES + JOURNAL_PAGES <= APART_PAGES);

/// How many demands fit.
///
/// ```
/// assert_eq!(tenter_firmware::log::DEMAND_SLOTS, 8);
/// ```
pub const DEMAND_SLOTS: u8 = 8;

/// The most pages that one test takes.
///
/// ```
/// assert_eq!(tenter_firmware::log::MAX_TEST_PAGES, 4);
/// ```
pub const MAX_TEST_PAGES: u16 = 4;
const _: () = assert!(MAX_SAVED_BYTES.div_ceil(PAYLOAD_BYTES) == MAX_TEST_PAGES as usize);

/// The pages that a test of some length takes: up to ten pulls with a reading after each.
const LONG_TEST_PAGES: u16 = 2;

/// How often a page that does not keep what is written is passed over in one save.
const PASS_OVER: u8 = 2;

/// A saved test as it is stored and sent; see [`tenter_core::saved`].
///
/// ```
/// assert_eq!(tenter_firmware::log::RecordBytes::new().capacity(), tenter_core::saved::MAX_SAVED_BYTES);
/// ```
pub type RecordBytes = Vec<u8, MAX_SAVED_BYTES>;

/// Why the log did not do it.
///
/// ```
/// use core::convert::Infallible;
/// use tenter_firmware::log::LogError;
///
/// assert_eq!(LogError::<Infallible>::Full.to_string(), "the log is full");
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LogError<E> {
    /// The chip did not answer.
    Chip(E),
    /// The chip answers but does not keep what is written.
    NotKept,
    /// The chip has too few pages.
    TooSmall,
    /// The chip was written by a newer version of this program.
    Newer,
    /// Every page holds a test that the host does not have.
    Full,
    /// An acknowledgement of tests that were never saved here: it is meant for another handheld.
    NeverSaved,
    /// The handheld has another number already.
    Named,
    /// There are only [`DEMAND_SLOTS`].
    NoSlot,
    /// A record cannot be written, or not read.
    Record(RecordError),
}

impl<E> fmt::Display for LogError<E> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Chip(_) => "the memory chip does not answer",
            Self::NotKept => "the memory chip does not keep what is written",
            Self::TooSmall => "the memory chip is too small",
            Self::Newer => "the memory chip was written by a newer version",
            Self::Full => "the log is full",
            Self::NeverSaved => "no such test was saved here",
            Self::Named => "this handheld has another number already",
            Self::NoSlot => "no such demand slot",
            Self::Record(error) => return error.fmt(f),
        })
    }
}

impl<E: fmt::Debug> core::error::Error for LogError<E> {}

/// The log on its chip.
///
/// ```
/// use tenter_core::{Grain, Length, PullTest, saved::{Clock, SavedTest}};
/// use tenter_firmware::log::Log;
/// # use core::convert::Infallible;
/// # use tenter_firmware::log::{StoragePage, Storage};
/// # struct Ram([StoragePage; 64]);
/// # impl Storage for Ram {
/// #     type Error = Infallible;
/// #     fn pages(&self) -> u16 { 64 }
/// #     fn read(&mut self, page: u16, buffer: &mut StoragePage) -> Result<(), Infallible> {
/// #         *buffer = self.0[usize::from(page)];
/// #         Ok(())
/// #     }
/// #     fn write(&mut self, page: u16, bytes: &StoragePage) -> Result<(), Infallible> {
/// #         self.0[usize::from(page)] = *bytes;
/// #         Ok(())
/// #     }
/// # }
/// # let mut chip = Ram([[0xFF; 64]; 64]);
/// let test = PullTest::new(Length::from_mm(100), Grain::Crosswise).unwrap();
/// let saved = SavedTest::new(7, Clock::default(), test);
///
/// let number = Log::open(&mut chip)?.save(&saved)?;
///
/// // Power off, power on.
/// let mut log = Log::open(&mut chip)?;
/// assert_eq!(log.fetch(number)?, Some((number, saved)));
/// log.acknowledge(number)?;
/// assert_eq!(log.unacknowledged(), 0);
/// # Ok::<(), tenter_firmware::log::LogError<Infallible>>(())
/// ```
#[derive(Debug)]
pub struct Log<S> {
    storage: S,
    state: StatePages,
    ring: Ring,
    settings: SettingsPages,
    journal: Journal,
    /// The test in hand when the power went.
    draft: Option<TestInHand>,
}

/// Where what is set apart begins.
#[derive(Clone, Copy)]
struct Apart {
    settings: Option<u16>,
    journal: Option<u16>,
}

impl Apart {
    fn of(pages: u16, state: State) -> Self {
        // No honest chip says so that is smaller.
        let start = pages.checked_sub(APART_PAGES).filter(|_| state.apart && pages >= LEAST_PAGES);
        Self { settings: start, journal: start.map(|start| start + 2 + NAME_PAGES) }
    }
}

impl<S: Storage> Log<S> {
    /// Reads every page of the state and of the ring once. What was cut short counts for nothing; a chip never
    /// written is an empty log.
    ///
    /// # Errors
    ///
    /// [`LogError::Chip`], [`LogError::TooSmall`] or [`LogError::Newer`]; nothing is written.
    pub fn open(storage: S) -> Result<Self, LogError<S::Error>> {
        Self::open_or_back(storage).map_err(|(_, error)| error)
    }

    /// As [`Log::open`]; hands the chip back where it is no log.
    ///
    /// # Errors
    ///
    /// As [`Log::open`].
    pub fn open_or_back(mut storage: S) -> Result<Self, (S, LogError<S::Error>)> {
        match Self::parts(&mut storage) {
            Ok((state, ring, settings, journal, draft)) => Ok(Self { storage, state, ring, settings, journal, draft }),
            Err(error) => Err((storage, error)),
        }
    }

    #[allow(clippy::type_complexity)] // Named once, just above.
    fn parts(
        storage: &mut S,
    ) -> Result<(StatePages, Ring, SettingsPages, Journal, Option<TestInHand>), LogError<S::Error>> {
        let all = storage.pages();
        if all < RING_START + MAX_TEST_PAGES {
            return Err(LogError::TooSmall);
        }
        let mut state = StatePages::read(storage)?;
        let mut ring = Self::ring(storage, all, state.newest())?;
        if !state.newest().apart && all >= LEAST_PAGES && ring.unacknowledged() == 0 {
            // Nothing that waits can be in the way. A chip that does not take it stays as it is.
            let apart = State { apart: true, ..state.newest() };
            if state.write_both(storage, apart).is_ok() {
                ring = Self::ring(storage, all, apart)?;
            }
        }
        let apart = Apart::of(all, state.newest());
        let settings = SettingsPages::read(storage, apart.settings)?;
        let (journal, draft) = Journal::read(storage, apart.journal)?;
        let draft = match draft {
            Some(draft) if is_saved(storage, &mut ring, &draft)? => None,
            draft => draft,
        };
        Ok((state, ring, settings, journal, draft))
    }

    fn ring(storage: &mut S, all: u16, state: State) -> Result<Ring, LogError<S::Error>> {
        let end = Apart::of(all, state).settings.unwrap_or(all);
        let pages = end.checked_sub(RING_START).filter(|pages| *pages >= MAX_TEST_PAGES);
        let pages = pages.and_then(|pages| NonZeroU32::new(pages.into())).ok_or(LogError::TooSmall)?;
        Ring::read(storage, pages, state.acknowledged)
    }

    /// The test in hand when the power went, once.
    pub const fn take_draft(&mut self) -> Option<TestInHand> {
        self.draft.take()
    }

    /// Keeps the test in hand, or that there is none, over a loss of power.
    ///
    /// # Errors
    ///
    /// [`LogError::Chip`] or [`LogError::NotKept`]: what was kept before is still there.
    pub fn keep_draft(&mut self, test: Option<&PullTest>) -> Result<(), LogError<S::Error>> {
        self.journal.keep(&mut self.storage, test, self.ring.next())
    }

    /// Saves a test under the next number and hands the number back. Numbers grow, and may leave gaps.
    ///
    /// # Errors
    ///
    /// [`LogError::Full`] (not while [`Log::is_full`] says no), [`LogError::Chip`] or [`LogError::NotKept`]: the test
    /// is not saved.
    pub fn save(&mut self, saved: &SavedTest) -> Result<u32, LogError<S::Error>> {
        let mut buffer = [0; MAX_SAVED_BYTES];
        let record = saved::encode(saved, &mut buffer).map_err(LogError::Record)?;
        // First: whatever happens, the tag is not given again.
        let mut settings = self.settings();
        settings.give(saved.tag);
        self.set_settings(settings)?;
        if self.ring.overwrites(&mut self.storage, record.len())? {
            self.ring = self.ring.again(&mut self.storage)?;
        }
        for _ in 0..PASS_OVER {
            match self.ring.append(&mut self.storage, record) {
                Err(LogError::NotKept) => {}
                done => return done,
            }
        }
        self.ring.append(&mut self.storage, record)
    }

    /// The first saved test with this number or a greater one. A test that the host has is still found until it is
    /// overwritten.
    ///
    /// # Errors
    ///
    /// [`LogError::Chip`], or [`LogError::Record`] for a test that only a newer version can read.
    pub fn fetch(&mut self, from: u32) -> Result<Option<(u32, SavedTest)>, LogError<S::Error>> {
        let Some((seq, record)) = self.fetch_record(from)? else { return Ok(None) };
        saved::decode(&record).map(|saved| Some((seq, saved))).map_err(LogError::Record)
    }

    /// As [`Log::fetch`], as the bytes to send.
    ///
    /// # Errors
    ///
    /// [`LogError::Chip`].
    pub fn fetch_record(&mut self, from: u32) -> Result<Option<(u32, RecordBytes)>, LogError<S::Error>> {
        let mut record = RecordBytes::new();
        let found = self.ring.fetch(&mut self.storage, from, &mut record)?;
        Ok(found.map(|seq| (seq, record)))
    }

    /// The saved test before or after the place of another, with its own place; before no place at all stands the
    /// newest. Places hold until a test is saved.
    ///
    /// # Errors
    ///
    /// As [`Log::fetch`].
    pub fn beside(&mut self, place: Option<u32>, newer: bool) -> Result<Option<(u32, SavedTest)>, LogError<S::Error>> {
        let mut record = RecordBytes::new();
        let place = place.unwrap_or(u32::MAX);
        let found = if newer {
            self.ring.after(&mut self.storage, place, &mut record)?
        } else {
            self.ring.before(&mut self.storage, place, &mut record)?
        };
        let Some(place) = found else { return Ok(None) };
        saved::decode(&record).map(|saved| Some((place, saved))).map_err(LogError::Record)
    }

    /// The host has every test up to this number: their pages may be written again. Saying so twice, or an older
    /// number later, changes nothing.
    ///
    /// # Errors
    ///
    /// [`LogError::NeverSaved`], [`LogError::Chip`] or [`LogError::NotKept`].
    pub fn acknowledge(&mut self, up_to: u32) -> Result<(), LogError<S::Error>> {
        let state = self.state.newest();
        if up_to >= self.ring.next() {
            return Err(LogError::NeverSaved);
        }
        if up_to > state.acknowledged {
            let released = self.ring.released(&mut self.storage, up_to)?;
            self.state.write(&mut self.storage, State { acknowledged: up_to, ..state })?;
            self.ring = released;
        }
        Ok(())
    }

    /// How many tests the host does not have yet.
    pub const fn unacknowledged(&self) -> u16 {
        self.ring.unacknowledged()
    }

    /// The number of the oldest test that the host does not have.
    ///
    /// # Errors
    ///
    /// [`LogError::Chip`].
    pub fn oldest(&mut self) -> Result<Option<u32>, LogError<S::Error>> {
        self.ring.oldest(&mut self.storage)
    }

    /// The number that the next test will have at least; every test so far has a smaller one.
    pub const fn next_seq(&self) -> u32 {
        self.ring.next()
    }

    /// How many pages may be written.
    pub fn free_pages(&self) -> u16 {
        u16::try_from(self.ring.free()).unwrap_or(u16::MAX)
    }

    /// For how many more tests there is room, long ones (two pages) at that; most take one page.
    pub fn room(&self) -> u16 {
        let beyond_one = self.free_pages().checked_sub(MAX_TEST_PAGES);
        beyond_one.map_or(0, |pages| 1 + pages / LONG_TEST_PAGES)
    }

    /// Whether there may be no room for one more test, to be said before it starts.
    pub fn is_full(&self) -> bool {
        self.room() == 0
    }

    /// The handheld's number; 0 while it was never given one.
    pub const fn device_id(&self) -> u32 {
        self.state.newest().device
    }

    /// Gives the handheld its number, once.
    ///
    /// # Errors
    ///
    /// [`LogError::Named`] where it has another, [`LogError::Chip`] or [`LogError::NotKept`].
    pub fn set_device_id(&mut self, device: u32) -> Result<(), LogError<S::Error>> {
        let state = self.state.newest();
        match state.device {
            same if same == device => Ok(()),
            0 => self.state.write_both(&mut self.storage, State { device, ..state }),
            _ => Err(LogError::Named),
        }
    }

    /// How many demand slots are in use.
    pub fn demand_count(&self) -> u8 {
        self.state.newest().demands.min(DEMAND_SLOTS)
    }

    /// Says how many demand slots are in use.
    ///
    /// # Errors
    ///
    /// [`LogError::NoSlot`], [`LogError::Chip`] or [`LogError::NotKept`].
    pub fn set_demand_count(&mut self, demands: u8) -> Result<(), LogError<S::Error>> {
        let state = self.state.newest();
        match demands {
            same if same == state.demands => Ok(()),
            0..=DEMAND_SLOTS => self.state.write_both(&mut self.storage, State { demands, ..state }),
            _ => Err(LogError::NoSlot),
        }
    }

    /// The demand in a slot in use; none where its writing was cut short.
    ///
    /// # Errors
    ///
    /// [`LogError::Chip`].
    pub fn demand(&mut self, slot: u8) -> Result<Option<LabelledDemand>, LogError<S::Error>> {
        if slot < self.demand_count() { demands::read(&mut self.storage, slot) } else { Ok(None) }
    }

    /// Writes a demand into a slot, in use or not.
    ///
    /// # Errors
    ///
    /// [`LogError::NoSlot`], [`LogError::Chip`] or [`LogError::NotKept`].
    pub fn set_demand(&mut self, slot: u8, demand: &LabelledDemand) -> Result<(), LogError<S::Error>> {
        let mut buffer = [0; MAX_DEMAND_BYTES];
        self.set_demand_record(slot, encode_demand(demand, &mut buffer).map_err(LogError::Record)?)
    }

    /// As [`Log::set_demand`], as the bytes that came, so that a handheld need not hold the code that makes them.
    ///
    /// # Errors
    ///
    /// Also [`LogError::Record`] where they are no demand that this program can read.
    pub fn set_demand_record(&mut self, slot: u8, record: &[u8]) -> Result<(), LogError<S::Error>> {
        if slot < DEMAND_SLOTS { demands::write(&mut self.storage, slot, record) } else { Err(LogError::NoSlot) }
    }

    /// The user's repeatability, where the host has sent it.
    pub fn repeatability(&self) -> Option<Repeatability> {
        let state = self.state.newest();
        let ([ratio, dof], [session_ratio, session_dof]) = (state.repeatability, state.sessions);
        let own = Repeatability::from_thousandths(ratio, dof)?;
        // Erased, by a program that did not know of it: no degrees of freedom.
        // No degrees of freedom say nothing; all ones were never written.
        Some(if (1..u32::MAX).contains(&session_dof) {
            own.with_sessions_in_thousandths(session_ratio, session_dof)
        } else {
            own
        })
    }

    /// Stores how much the user's days differ, as [`Repeatability::with_sessions_in_thousandths`] takes it.
    ///
    /// # Errors
    ///
    /// [`LogError::Chip`] or [`LogError::NotKept`].
    pub fn set_sessions(&mut self, ratio: u32, dof: u32) -> Result<(), LogError<S::Error>> {
        let state = self.state.newest();
        match [ratio, dof] {
            same if same == state.sessions => Ok(()),
            sessions => self.state.write_both(&mut self.storage, State { sessions, ..state }),
        }
    }

    /// Stores the user's repeatability, as [`Repeatability::from_thousandths`] takes it; clears it where that
    /// takes nothing.
    ///
    /// # Errors
    ///
    /// [`LogError::Chip`] or [`LogError::NotKept`].
    pub fn set_repeatability(&mut self, ratio: u32, dof: u32) -> Result<(), LogError<S::Error>> {
        let state = self.state.newest();
        match [ratio, dof] {
            same if same == state.repeatability => Ok(()),
            repeatability => self.state.write_both(&mut self.storage, State { repeatability, ..state }),
        }
    }

    /// Gives the chip back.
    pub fn into_storage(self) -> S {
        self.storage
    }
}

/// Whether the power went between the saving of the test in hand and the note that there is none any more.
fn is_saved<S: Storage>(storage: &mut S, ring: &mut Ring, draft: &TestInHand) -> Result<bool, LogError<S::Error>> {
    let mut record = RecordBytes::new();
    let mut from = draft.next;
    while let Some(seq) = ring.fetch(storage, from, &mut record)? {
        if saved::decode(&record).is_ok_and(|saved| saved.test == draft.test) {
            return Ok(true);
        }
        from = seq.saturating_add(1);
    }
    Ok(false)
}
