//! What the handheld knows, and what follows from it.

use tenter_core::Repeatability;
use tenter_core::record::LabelledDemand;
use tenter_core::saved::Meant;
use tenter_core::{Context, Demand, Evaluation, Grain, Length, PullTest, Rules, Unit};

use super::{Dial, MakingState, ReadingAt, Screen, TagUse, making, readings};
use crate::log::{Named, Settings};

/// Seconds after release at which a reading is asked for, one after the other.
pub const REST_SECONDS: [u32; 3] = [60, 300, 1800];

/// When the buzzer sounds after it is time to read, in milliseconds: three times, so that nobody takes it for another.
const BEEPS: [(u32, u32); 3] = [(0, 150), (300, 450), (600, 750)];

/// Why there is no log.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum MemoryFault {
    /// The chip does not answer.
    Silent,
    /// A newer program wrote it.
    Newer,
    /// It has too few pages.
    TooSmall,
}

/// Why it started again by itself.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum Restart {
    /// The program found a fault in itself.
    Panic,
    /// It stood still until the watchdog ended that.
    Watchdog,
}

/// What is known of the log.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct LogState {
    /// Whether the chip answers.
    pub present: bool,
    /// Whole tests that still fit.
    pub room: u16,
    /// Tests the host has not taken yet.
    pub unsent: u16,
    /// Demands that the host has sent.
    pub demands: u8,
    /// The user's repeatability, where the host has sent it.
    pub repeatability: Option<Repeatability>,
    /// The tag to give next.
    pub next_tag: u16,
    /// Whether it was agreed with a log, so that it is free there.
    pub agreed: bool,
    /// People whom the host has named.
    pub people: u8,
    /// Whether the date is known.
    pub dated: bool,
    /// Why there is none.
    pub fault: Option<MemoryFault>,
}

/// Everything a screen shows.
#[derive(Clone, Debug)]
pub struct Model {
    /// The screen.
    pub screen: Screen,
    /// The row of its list, or the page of the result.
    pub row: u8,
    /// The time of the newest event, in milliseconds since power-on; it may wrap round.
    pub now: u32,
    /// When the clock on the screen began.
    pub since: u32,
    /// The grain to pull.
    pub grain: Grain,
    /// The gauge length to mark.
    pub gauge: Length,
    /// Whether it is marked on an inch scale: 254 mm and 10 in are one length on two scales.
    pub inch: bool,
    /// The demand to hold the cloth against, and its slot.
    pub demand: Option<LabelledDemand>,
    pub(super) slot: Option<u8>,
    /// The test at hand.
    pub test: Option<PullTest>,
    /// When it was let go last.
    pub released: Option<u32>,
    /// Seconds since release of the reading being dialled.
    pub rest_seconds: u32,
    /// The number being dialled.
    pub dial: Dial,
    /// When the pull at hand was let go, until its reading is taken.
    pub(super) let_go: Option<u32>,
    /// For how long it was held, in seconds.
    pub held_seconds: u32,
    /// The reading that is being corrected.
    pub correcting: Option<ReadingAt>,
    /// The figures and answers of a finished test.
    pub evaluation: Option<Evaluation>,
    /// The tag to save under, and what is known of it.
    pub tag: u16,
    /// What is known of that tag.
    pub tag_use: TagUse,
    /// Which cloth the person meant by it.
    pub meant: Meant,
    /// Who pulls, and in which slot that stands.
    pub by: Option<Named>,
    pub(super) person: Option<u8>,
    /// The sequence number of the test saved last.
    pub saved: Option<u32>,
    /// What is known of the log.
    pub log: LogState,
    /// What is being made of saved tests.
    pub making: MakingState,
    /// Why it started by itself, until somebody pressed a key.
    pub restart: Option<Restart>,
    /// Whether the only button was used last, so that hints speak of taps and holds.
    pub one_button: bool,
}

impl Default for Model {
    fn default() -> Self {
        Self {
            screen: Screen::Home,
            row: 0,
            now: 0,
            since: 0,
            grain: Grain::Crosswise,
            gauge: Length::from_mm(100),
            inch: false,
            demand: None,
            slot: None,
            test: None,
            released: None,
            rest_seconds: 0,
            dial: Dial::count(1),
            let_go: None,
            held_seconds: 0,
            correcting: None,
            evaluation: None,
            tag: 1,
            tag_use: TagUse::Free,
            meant: Meant::Unsaid,
            by: None,
            person: None,
            saved: None,
            log: LogState::default(),
            making: MakingState::default(),
            restart: None,
            one_button: false,
        }
    }
}

impl Model {
    pub(super) fn show(&mut self, screen: Screen) {
        self.screen = screen;
        self.row = 0;
    }

    #[inline(never)] // Long; once is enough.
    pub(super) fn evaluate(&mut self) {
        let demand = self.demand.as_ref().map_or_else(Demand::default, |labelled| labelled.demand);
        let rules = Rules { scatter: making::scatter(self.log.repeatability), ..Rules::default() };
        self.evaluation =
            self.test.as_ref().and_then(|test| Evaluation::believed(test, &demand, &rules, &Context::default()).ok());
    }

    /// Works out again everything that rests on the repeatability.
    pub(super) fn recompute(&mut self) {
        if self.evaluation.is_some() {
            self.evaluate();
        }
        self.making.cloth = None;
        self.making.first = None;
        if self.screen.is_making() {
            self.show(Screen::Home);
        }
    }

    pub(super) fn start_clock(&mut self, screen: Screen) {
        self.since = self.now;
        self.show(screen);
    }

    /// A test without a pull follows a change of grain or gauge; one with pulls keeps its own.
    pub(super) fn put_aside_unstarted(&mut self) {
        if self.test.as_ref().is_some_and(|test| test.pulls().is_empty()) {
            self.test = None;
        }
    }

    /// Whether the test at hand has a pull.
    #[must_use]
    pub fn is_measured(&self) -> bool {
        self.test.as_ref().is_some_and(|test| !test.pulls().is_empty())
    }

    /// Whether a test can be saved.
    #[must_use]
    pub const fn can_save(&self) -> bool {
        self.log.present && self.log.room > 0
    }

    /// The test to keep should the power go now: none before its first reading, and none that is saved.
    #[must_use]
    pub fn draft(&self) -> Option<&PullTest> {
        self.test.as_ref().filter(|test| !test.pulls().is_empty() && self.screen != Screen::Saved)
    }

    /// What is to be remembered of this handheld's ways.
    #[must_use]
    pub fn remembered(&self, settings: Settings) -> Settings {
        let by = self.by.as_ref().map(|person| person.mark);
        Settings { gauge: self.gauge, inch: self.inch, grain: self.grain, demand: self.slot, by, ..settings }
    }

    /// How many rows or pages the screen has, at least one.
    #[must_use]
    pub fn row_count(&self) -> u8 {
        let rows = match self.screen {
            Screen::Readings => self.test.as_ref().map_or(0, |test| readings::newest_first(test).len()),
            screen => screen.rows().len(),
        };
        self.screen.pages().unwrap_or(u8::try_from(rows).unwrap_or(u8::MAX)).max(1)
    }

    /// Whether a clock on the screen runs.
    #[must_use]
    pub const fn has_clock(&self) -> bool {
        self.screen.has_clock() || matches!(self.screen, Screen::Extended) && self.correcting.is_none()
    }

    /// Whether the buzzer sounds: three times as it is time to read.
    #[must_use]
    pub fn buzzes(&self) -> bool {
        self.since_target().is_some_and(|ms| BEEPS.iter().any(|(from, to)| (*from..*to).contains(&ms)))
    }

    /// Milliseconds since the time to read.
    fn since_target(&self) -> Option<u32> {
        let target = self.rest_target().filter(|_| self.screen == Screen::Rest)?;
        self.now.wrapping_sub(self.since).checked_sub(target.saturating_mul(1000))
    }

    pub(super) fn forget_test(&mut self) {
        self.correcting = None;
        self.let_go = None;
        self.test = None;
        self.evaluation = None;
        self.released = None;
    }

    /// The unit in which lengths are shown: that of the test at hand.
    #[must_use]
    pub fn unit(&self) -> Unit {
        let inch = self.test.as_ref().map_or(self.inch, |test| test.scale().is_inch());
        if inch { Unit::Inch } else { Unit::Mm }
    }

    /// Seconds on the running clock.
    #[must_use]
    pub const fn seconds(&self) -> u32 {
        self.now.wrapping_sub(self.since) / 1000
    }

    pub(super) fn seconds_since_release(&self) -> u32 {
        self.now.wrapping_sub(self.released.unwrap_or(self.since)) / 1000
    }

    /// The rest that is waited for, in seconds: the next of [`REST_SECONDS`], none after the last.
    #[must_use]
    pub fn rest_target(&self) -> Option<u32> {
        let newest = self.test.as_ref().and_then(|test| test.rests().last());
        let read = newest.map_or(0, |rest| rest.seconds);
        let same_pull = self.test.as_ref().is_some_and(|test| {
            newest.is_some_and(|rest| usize::from(rest.after_pull).saturating_add(1) == test.pulls().len())
        });
        REST_SECONDS.into_iter().find(|target| !same_pull || *target > read)
    }

    /// In how many milliseconds something on the screen or the buzzer changes by itself; none while nothing does.
    #[must_use]
    pub fn due_in(&self, now: u32) -> Option<u32> {
        let second = 1000 - now.wrapping_sub(self.since) % 1000;
        let beep = self.since_target().and_then(|ms| {
            BEEPS
                .iter()
                .flat_map(|(from, to)| [*from, *to])
                .find_map(|edge| edge.checked_sub(ms).filter(|wait| *wait > 0))
        });
        self.has_clock().then(|| beep.map_or(second, |beep| beep.min(second)))
    }
}
