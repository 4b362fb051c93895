//! What the handheld knows, and what follows from it.

use tenter_core::Repeatability;
use tenter_core::record::LabelledDemand;
use tenter_core::{Context, Demand, Evaluation, Grain, Length, PullTest, Rest, Rules, Unit};

use super::{Dial, MakingState, Screen, making};

/// Seconds after release at which a reading is asked for, one after the other.
pub const REST_SECONDS: [u32; 3] = [60, 300, 1800];

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
}

/// A reading that was taken back to be dialled again.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Correcting {
    Pull(Length),
    Rest(Rest),
    Look(Length),
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
    /// The reading that is being corrected, should that be called off.
    pub(super) correcting: Option<Correcting>,
    /// The figures and answers of a finished test.
    pub evaluation: Option<Evaluation>,
    /// The tag proposed next.
    pub next_tag: u16,
    /// The sequence number of the test saved last.
    pub saved: Option<u32>,
    /// What is known of the log.
    pub log: LogState,
    /// What is being made of saved tests.
    pub making: MakingState,
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
            correcting: None,
            evaluation: None,
            next_tag: 1,
            saved: None,
            log: LogState::default(),
            making: MakingState::default(),
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

    pub(super) fn forget_test(&mut self) {
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

    /// In how many milliseconds something on the screen changes by itself; none while nothing does.
    #[must_use]
    pub const fn due_in(&self, now: u32) -> Option<u32> {
        if self.screen.has_clock() { Some(1000 - now.wrapping_sub(self.since) % 1000) } else { None }
    }
}
