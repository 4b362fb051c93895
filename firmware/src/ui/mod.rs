//! What the handheld does: a pure state machine. No drawing, no clock, no chip; time comes in with the events.

mod dial;
mod input;
mod screen;
#[cfg(test)]
mod tests;

use tenter_core::record::LabelledDemand;
use tenter_core::scatter::Hand;
use tenter_core::{
    Demand, Ends, Evaluation, Grain, Length, MAX_LENGTH, MAX_PULLS, MAX_RESTS, PullTest, Rest, Rules, Scale, Scatter,
    TestError, Unit,
};

pub use dial::{Dial, Kind};
pub use input::{Action, BACK_MS, Input};
pub use screen::{Row, Screen};

/// Seconds after release at which a reading is asked for, one after the other.
pub const REST_SECONDS: [u32; 3] = [60, 300, 1800];
/// Pages of the result.
pub const RESULT_PAGES: u8 = 3;

/// The gauge lengths offered, and whether they are marked on an inch scale; after the last comes a dial.
const GAUGES: [(Length, bool); 4] = [
    (Length::from_mm(100), false),
    (Length::from_mm(200), false),
    (Length::from_inch_64ths(256), true),
    (Length::from_inch_64ths(640), true),
];

/// What happened.
#[derive(Clone, Debug, PartialEq)]
pub enum Event {
    /// A key was used.
    Key(Action),
    /// Time went on.
    Tick,
    /// The test was written, under this sequence number.
    Saved(u32),
    /// The test could not be written.
    NotSaved,
    /// The log changed, by a save or by the host.
    Log(LogState),
    /// The demand that was asked for; none where the slot is empty.
    Demand(Option<LabelledDemand>),
}

/// What is to be done outside.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Effect {
    /// Write the test at hand under this tag.
    Save {
        /// The number pinned to the cloth.
        tag: u16,
    },
    /// Bring the demand of this slot.
    LoadDemand {
        /// The slot, from 0.
        slot: u8,
    },
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
    /// How steadily the person who uses it pulls, where the host has said so.
    pub hand: Option<Hand>,
}

/// A reading that was taken back to be dialled again.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Correcting {
    Pull(Length),
    Rest(Rest),
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
    slot: Option<u8>,
    /// The test at hand.
    pub test: Option<PullTest>,
    /// When it was let go last.
    pub released: Option<u32>,
    /// Seconds since release of the reading being dialled.
    pub rest_seconds: u32,
    /// The number being dialled.
    pub dial: Dial,
    /// The reading that is being corrected, should that be called off.
    correcting: Option<Correcting>,
    /// The figures and answers of a finished test.
    pub evaluation: Option<Evaluation>,
    /// The tag proposed next.
    pub next_tag: u16,
    /// The sequence number of the test saved last.
    pub saved: Option<u32>,
    /// What is known of the log.
    pub log: LogState,
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
            one_button: false,
        }
    }
}

/// Takes an event at a time in milliseconds; what is to be done outside.
pub fn update(model: &mut Model, event: Event, now: u32) -> Option<Effect> {
    model.now = now;
    match event {
        Event::Tick => None,
        Event::Key(action) => {
            model.one_button = match action {
                Action::Step | Action::Accept => true,
                Action::Less(_) | Action::More(_) | Action::Next => false,
                Action::Back => model.one_button,
            };
            key(model, action)
        }
        Event::Saved(sequence) => {
            model.saved = Some(sequence);
            model.show(Screen::Saved);
            None
        }
        Event::NotSaved => {
            model.show(Screen::NotSaved);
            None
        }
        Event::Log(log) => {
            let other_hand = log.hand != model.log.hand;
            model.log = log;
            if other_hand && model.evaluation.is_some() {
                model.evaluate();
            }
            None
        }
        Event::Demand(demand) => {
            model.demand = demand;
            None
        }
    }
}

fn key(model: &mut Model, action: Action) -> Option<Effect> {
    match (model.screen, action) {
        (_, Action::Back) => {
            back(model);
            None
        }
        (Screen::Gauge | Screen::Extended | Screen::Recovered | Screen::Tag, action) => dial(model, action),
        (Screen::Result, Action::Less(_)) => {
            model.row = model.row.saturating_sub(1);
            None
        }
        (Screen::Result, Action::More(_)) => {
            model.row = (model.row + 1).min(RESULT_PAGES - 1);
            None
        }
        (Screen::Result, Action::Step) => {
            model.row = (model.row + 1) % RESULT_PAGES;
            None
        }
        (screen, Action::Less(_) | Action::More(_) | Action::Step) => {
            let rows = u8::try_from(screen.rows().len()).unwrap_or(u8::MAX).max(1);
            model.row = match action {
                Action::Less(_) => model.row.saturating_sub(1),
                Action::More(_) => (model.row + 1).min(rows - 1),
                _ => (model.row + 1) % rows,
            };
            None
        }
        (screen, Action::Next | Action::Accept) => match screen.rows().get(usize::from(model.row)) {
            Some(row) => choose(model, *row),
            None => {
                go_on(model);
                None
            }
        },
    }
}

/// A row was accepted.
fn choose(model: &mut Model, row: Row) -> Option<Effect> {
    match row {
        Row::Start => start(model),
        Row::Demand => return next_demand(model),
        Row::Grain => {
            model.grain = match model.grain {
                Grain::Crosswise => Grain::Lengthwise,
                Grain::Lengthwise => Grain::Bias,
                Grain::Bias => Grain::Crosswise,
            };
            model.put_aside_unstarted();
        }
        Row::Gauge => next_gauge(model),
        Row::Settled | Row::SkipSettling => {
            model.test = model.test.take().map(|test| test.with_settling_pull(row == Row::Settled));
            model.start_clock(Screen::Pull);
        }
        Row::Released | Row::ReadAgain if model.test.as_ref().is_some_and(|test| test.rests().len() >= MAX_RESTS) => {
            model.show(Screen::Choice);
        }
        Row::Released => {
            model.released = Some(model.now);
            model.start_clock(Screen::Rest);
        }
        Row::PullAgain if model.test.as_ref().is_some_and(|test| test.pulls().len() >= MAX_PULLS) => {}
        Row::PullAgain => model.start_clock(Screen::Pull),
        Row::Finish => finish(model),
        Row::ReadAgain => match model.released {
            Some(released) => {
                model.since = released;
                model.show(Screen::Rest);
            }
            None => model.show(Screen::Release),
        },
        Row::Correct => correct(model),
        Row::Discard => model.show(Screen::Discard),
        Row::SkipRest | Row::Keep => model.show(Screen::Choice),
        Row::ThrowAway => {
            model.forget_test();
            model.show(Screen::Home);
        }
        // A test that was measured but cannot be saved is done with, as the row says.
        Row::MeasureAnyway if model.is_measured() => {
            model.forget_test();
            model.show(Screen::Home);
        }
        Row::MeasureAnyway => begin(model),
        Row::GoBack => back(model),
        Row::TryAgain => model.show(Screen::Tag),
    }
    None
}

/// A screen without a list was accepted.
fn go_on(model: &mut Model) {
    match model.screen {
        Screen::Pull => {
            dial_extended(model, None);
        }
        Screen::Rest => {
            model.rest_seconds = model.seconds_since_release();
            dial_recovered(model, None);
        }
        Screen::Result => {
            if model.can_save() {
                model.dial = Dial::count(model.next_tag);
                model.show(Screen::Tag);
            } else {
                model.show(if model.log.present { Screen::Full } else { Screen::NoLog });
            }
        }
        Screen::Saved => {
            model.forget_test();
            model.show(Screen::Home);
        }
        _ => {}
    }
}

fn dial(model: &mut Model, action: Action) -> Option<Effect> {
    let complete = match action {
        Action::Less(steps) => {
            model.dial.less(steps);
            false
        }
        Action::More(steps) => {
            model.dial.more(steps);
            false
        }
        Action::Step => {
            model.dial.step();
            false
        }
        Action::Accept => model.dial.accept(),
        Action::Next => true,
        Action::Back => false,
    };
    if complete { dialled(model) } else { None }
}

/// A number is complete.
fn dialled(model: &mut Model) -> Option<Effect> {
    let length = model.dial.as_length();
    match model.screen {
        Screen::Gauge => {
            (model.gauge, model.inch) = (length, false);
            model.put_aside_unstarted();
            model.show(Screen::Home);
            model.row = 3;
        }
        Screen::Extended if model.correcting.is_some() => measured(model, |test| test.add_pull(length), Screen::Choice),
        Screen::Extended => {
            // Until now the release of the pull before still counted: "pull again" can be called off.
            model.released = None;
            measured(model, |test| test.add_pull(length), Screen::Release);
        }
        Screen::Recovered => {
            let seconds = model.rest_seconds;
            measured(model, |test| test.add_rest(seconds, length), Screen::Choice);
        }
        Screen::Tag => {
            let tag = model.dial.as_count();
            model.next_tag = if tag < 999 { tag + 1 } else { 1 };
            model.show(Screen::Saving);
            return Some(Effect::Save { tag });
        }
        _ => {}
    }
    None
}

/// Adds a reading to the test and goes on; one that cannot be stays on its dial.
fn measured(model: &mut Model, add: impl FnOnce(&mut PullTest) -> Result<(), TestError>, next: Screen) {
    if model.test.as_mut().is_some_and(|test| add(test).is_ok()) {
        model.correcting = None;
        model.show(next);
    }
}

/// Dials an extended length, beginning at `start`, at the pull before, or at the gauge length.
fn dial_extended(model: &mut Model, start: Option<Length>) {
    let Some(test) = &model.test else { return };
    let gauge = test.gauge();
    let most = Length::from_steps(gauge.steps().saturating_mul(11).min(MAX_LENGTH.steps()));
    let start = start.or_else(|| test.pulls().last().copied()).unwrap_or(gauge);
    model.dial = Dial::length(test.scale().is_inch(), start, gauge, most);
    model.show(Screen::Extended);
}

/// Dials a recovered length, beginning at `start` or at the gauge length.
fn dial_recovered(model: &mut Model, start: Option<Length>) {
    let Some(test) = &model.test else { return };
    let Some(extended) = test.pulls().last().copied() else { return };
    let gauge = test.gauge();
    let least = Length::from_steps(gauge.steps() / 10 * 9 + 9);
    model.dial = Dial::length(test.scale().is_inch(), start.unwrap_or(gauge), least, extended);
    model.show(Screen::Recovered);
}

/// Takes the newest reading back and dials it again.
fn correct(model: &mut Model) {
    let Some(test) = &mut model.test else { return };
    let Some(extended) = test.pulls().last().copied() else { return };
    let newest_pull = test.pulls().len().saturating_sub(1);
    let rest = test.rests().last().copied().filter(|rest| usize::from(rest.after_pull) == newest_pull);
    test.undo();
    match rest {
        Some(rest) => {
            model.correcting = Some(Correcting::Rest(rest));
            model.rest_seconds = rest.seconds;
            dial_recovered(model, Some(rest.recovered));
        }
        None => {
            model.correcting = Some(Correcting::Pull(extended));
            dial_extended(model, Some(extended));
        }
    }
}

/// Puts back a reading whose correction was called off; false when none was under way.
fn call_off(model: &mut Model) -> bool {
    let (Some(correcting), Some(test)) = (model.correcting.take(), &mut model.test) else { return false };
    let put_back = match correcting {
        Correcting::Pull(extended) => test.add_pull(extended),
        Correcting::Rest(rest) => test.add_rest(rest.seconds, rest.recovered),
    };
    put_back.is_ok()
}

/// Nothing that was measured is lost by going back.
fn back(model: &mut Model) {
    if call_off(model) {
        return model.show(Screen::Choice);
    }
    let measured = model.is_measured();
    let screen = match model.screen {
        Screen::Home | Screen::Gauge | Screen::Settle | Screen::Choice => Screen::Home,
        Screen::Full | Screen::NoLog if measured => Screen::Result,
        Screen::Full | Screen::NoLog => Screen::Home,
        Screen::Pull if measured => Screen::Choice,
        Screen::Pull => Screen::Settle,
        Screen::Extended => return model.show(Screen::Pull),
        Screen::Recovered => return model.show(Screen::Rest),
        Screen::Release | Screen::Rest | Screen::Discard | Screen::Result => Screen::Choice,
        Screen::Tag | Screen::NotSaved => Screen::Result,
        Screen::Saving => return,
        Screen::Saved => {
            model.forget_test();
            Screen::Home
        }
    };
    model.show(screen);
}

fn start(model: &mut Model) {
    match &model.test {
        Some(test) if !test.pulls().is_empty() => model.show(Screen::Choice),
        _ if !model.log.present => model.show(Screen::NoLog),
        _ if model.log.room == 0 => model.show(Screen::Full),
        _ => begin(model),
    }
}

fn begin(model: &mut Model) {
    let division = if model.inch { Length::from_inch_64ths(4) } else { Length::from_mm(1) };
    let scale = Scale::new(division, Ends::One).unwrap_or_default();
    model.test = PullTest::new(model.gauge, model.grain).and_then(|test| test.with_scale(scale)).ok();
    model.show(Screen::Settle);
}

fn finish(model: &mut Model) {
    model.evaluate();
    if model.evaluation.is_some() {
        model.show(Screen::Result);
    }
}

/// The next demand, or none after the last.
fn next_demand(model: &mut Model) -> Option<Effect> {
    // A slot that cannot be read shows as no demand; the next press goes on to the slot after it.
    let next = model.slot.map_or(0, |slot| slot.saturating_add(1));
    if next >= model.log.demands {
        model.slot = None;
        model.demand = None;
        return None;
    }
    model.slot = Some(next);
    Some(Effect::LoadDemand { slot: next })
}

/// The next gauge length offered; after the last a dial.
fn next_gauge(model: &mut Model) {
    let at = GAUGES.iter().position(|gauge| *gauge == (model.gauge, model.inch));
    match at.map_or(Some(0), |at| at.checked_add(1)).and_then(|next| GAUGES.get(next)) {
        Some(gauge) => {
            (model.gauge, model.inch) = *gauge;
            model.put_aside_unstarted();
        }
        None => {
            let (least, most) = (Length::from_mm(20), Length::from_mm(1000));
            model.dial = Dial::length(false, Length::from_mm(250), least, most);
            model.show(Screen::Gauge);
        }
    }
}

impl Model {
    fn show(&mut self, screen: Screen) {
        self.screen = screen;
        self.row = 0;
    }

    #[inline(never)] // Long; once is enough.
    fn evaluate(&mut self) {
        let demand = self.demand.as_ref().map_or_else(Demand::default, |labelled| labelled.demand);
        let scatter = self.log.hand.map_or(Scatter::ASSUMED, Scatter::hand);
        let rules = Rules { scatter, ..Rules::default() };
        self.evaluation = self.test.as_ref().and_then(|test| Evaluation::of(test, &demand, &rules).ok());
    }

    fn start_clock(&mut self, screen: Screen) {
        self.since = self.now;
        self.show(screen);
    }

    /// A test without a pull follows a change of grain or gauge; one with pulls keeps its own.
    fn put_aside_unstarted(&mut self) {
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

    fn forget_test(&mut self) {
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

    fn seconds_since_release(&self) -> u32 {
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
