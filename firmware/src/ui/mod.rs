//! What the handheld does: a pure state machine. No drawing, no clock, no chip; time comes in with the events.

mod dial;
mod input;
mod making;
mod model;
mod screen;
#[cfg(test)]
mod tests;

use tenter_core::record::LabelledDemand;
use tenter_core::{Ends, Grain, Length, MAX_LENGTH, MAX_LOOKS, MAX_PULLS, MAX_RESTS, PullTest, Scale, TestError};

pub use dial::{Dial, DialKind};
pub use input::{Action, BACK_MS, Input};
pub use making::{MakingState, MeasuredCloth};
pub use model::{LogState, Model, REST_SECONDS};
pub use screen::{ListRow, Screen};

use model::Correcting;

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
    /// The saved test that was asked for; none where there is no further one.
    Cloth(Option<MeasuredCloth>),
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
    /// Bring the saved test next to one, or the newest.
    Browse {
        /// Where that one stands.
        than: Option<u32>,
        /// The next newer, not the next older.
        newer: bool,
        /// The newest comes after the oldest.
        round: bool,
    },
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
            let other_repeatability = log.repeatability != model.log.repeatability;
            model.log = log;
            if other_repeatability {
                model.recompute();
            }
            None
        }
        Event::Demand(demand) => {
            model.demand = demand;
            None
        }
        Event::Cloth(cloth) => {
            if model.screen == Screen::Shelf && cloth.is_some() {
                model.making.cloth = cloth;
            }
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
        (screen, action) if screen.is_dial() => dial(model, action),
        (Screen::Shelf, Action::Less(_) | Action::More(_) | Action::Step) => making::browse(model, action),
        (screen, Action::Less(_) | Action::More(_) | Action::Step) => {
            let rows = u8::try_from(screen.rows().len()).unwrap_or(u8::MAX);
            let rows = screen.pages().unwrap_or(rows).max(1);
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
fn choose(model: &mut Model, row: ListRow) -> Option<Effect> {
    match row {
        ListRow::Start => start(model),
        ListRow::Demand => return next_demand(model),
        ListRow::Grain => {
            model.grain = match model.grain {
                Grain::Crosswise => Grain::Lengthwise,
                Grain::Lengthwise => Grain::Bias,
                Grain::Bias => Grain::Crosswise,
            };
            model.put_aside_unstarted();
        }
        ListRow::Gauge => next_gauge(model),
        ListRow::Settled | ListRow::SkipSettling => {
            model.test = model.test.take().map(|test| test.with_settling_pull(row == ListRow::Settled));
            model.start_clock(Screen::Pull);
        }
        ListRow::Released | ListRow::ReadAgain
            if model.test.as_ref().is_some_and(|test| test.rests().len() >= MAX_RESTS) =>
        {
            model.show(Screen::Choice);
        }
        ListRow::Released => {
            model.released = Some(model.now);
            model.start_clock(Screen::Rest);
        }
        ListRow::PullAgain if model.test.as_ref().is_some_and(|test| test.pulls().len() >= MAX_PULLS) => {}
        ListRow::PullAgain => model.start_clock(Screen::Pull),
        ListRow::Finish => finish(model),
        ListRow::ReadAgain => match model.released {
            Some(released) => {
                model.since = released;
                model.show(Screen::Rest);
            }
            None => model.show(Screen::Release),
        },
        ListRow::Correct => correct(model),
        ListRow::LookAgain => dial_look(model, None),
        ListRow::Discard => model.show(Screen::Discard),
        ListRow::SkipRest | ListRow::Keep => model.show(Screen::Choice),
        ListRow::ThrowAway => {
            model.forget_test();
            model.show(Screen::Home);
        }
        // A test that was measured but cannot be saved is done with, as the row says.
        ListRow::MeasureAnyway if model.is_measured() => {
            model.forget_test();
            model.show(Screen::Home);
        }
        ListRow::MeasureAnyway => begin(model),
        ListRow::GoBack => back(model),
        ListRow::TryAgain => model.show(Screen::Tag),
        ListRow::Saved => return making::open_shelf(model),
        ListRow::Join => return making::join(model),
        ListRow::PassOver => making::pass_over(model),
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
        Screen::Shelf => making::take(model),
        Screen::Pair | Screen::Reach => making::done(model),
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
        Screen::Look => measured(model, |test| test.add_look(length), Screen::Choice),
        Screen::Tag => {
            let tag = model.dial.as_count();
            model.next_tag = if tag < 999 { tag + 1 } else { 1 };
            model.show(Screen::Saving);
            return Some(Effect::Save { tag });
        }
        _ => making::dialled(model, length),
    }
    None
}

/// Adds a reading to the test and goes on; an invalid one stays on its dial.
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

/// Dials the gauge length as it reads now, beginning at `start` or at the first look; nothing where no more looks fit.
fn dial_look(model: &mut Model, start: Option<Length>) {
    let Some(test) = model.test.as_ref().filter(|test| test.looks().count() < MAX_LOOKS) else { return };
    let gauge = test.gauge();
    let tenth = gauge.steps() / 10;
    let [least, most] = [gauge.steps() - tenth, gauge.steps() + tenth].map(Length::from_steps);
    model.dial = Dial::length(test.scale().is_inch(), start.unwrap_or(gauge), least, most);
    model.show(Screen::Look);
}

/// Takes the newest reading back and dials it again.
fn correct(model: &mut Model) {
    let Some(test) = &mut model.test else { return };
    let newest_look = test.looks().skip(1).last().filter(|look| usize::from(look.after_pulls) == test.pulls().len());
    if let Some(look) = newest_look {
        test.undo();
        model.correcting = Some(Correcting::Look(look.length));
        return dial_look(model, Some(look.length));
    }
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
        Correcting::Look(length) => test.add_look(length),
    };
    put_back.is_ok()
}

/// Nothing that was measured is lost by going back.
fn back(model: &mut Model) {
    if call_off(model) {
        return model.show(Screen::Choice);
    }
    if model.screen.is_making() {
        return making::back(model);
    }
    let measured = model.is_measured();
    let screen = match model.screen {
        Screen::Full | Screen::NoLog if measured => Screen::Result,
        Screen::Full | Screen::NoLog => Screen::Home,
        Screen::Pull if measured => Screen::Choice,
        Screen::Pull => Screen::Settle,
        Screen::Extended => return model.show(Screen::Pull),
        Screen::Recovered => return model.show(Screen::Rest),
        Screen::Release | Screen::Rest | Screen::Look | Screen::Discard | Screen::Result => Screen::Choice,
        Screen::Tag | Screen::NotSaved => Screen::Result,
        Screen::Saving => return,
        Screen::Saved => {
            model.forget_test();
            Screen::Home
        }
        _ => Screen::Home,
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
