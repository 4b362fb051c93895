//! What the handheld does: a pure state machine. No drawing, no clock, no chip; time comes in with the events.

mod dial;
mod input;
mod making;
mod model;
pub mod readings;
mod screen;
mod tag;
#[cfg(test)]
mod tests;

use tenter_core::record::LabelledDemand;
use tenter_core::saved::Meant;
use tenter_core::{Ends, Grain, Length, MAX_LENGTH, MAX_LOOKS, MAX_PULLS, MAX_RESTS, PullTest, Scale, TestError};

use crate::log::{Named, Settings};

pub use dial::{Dial, DialKind};
pub use input::{Action, BACK_MS, Input};
pub use making::{MakingState, MeasuredCloth};
pub use model::{LogState, MemoryFault, Model, REST_SECONDS, Restart};
pub use readings::ReadingAt;
pub use screen::{ListRow, Screen};
pub use tag::TagUse;

/// The gauge lengths offered, and whether they are marked on an inch scale; after the last comes a dial.
const GAUGES: [(Length, bool); 5] = [
    (Length::from_mm(100), false),
    (Length::from_mm(200), false),
    (Length::from_mm(250), false),
    (Length::from_inch_64ths(256), true),
    (Length::from_inch_64ths(640), true),
];

/// The pulls that a test has unless somebody wants more or fewer.
const PULLS: usize = 3;

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
    /// What is known of the tag that was asked for.
    Tag(TagUse),
    /// The person that was asked for, and in which slot; none where there is no further one.
    Person(Option<(u8, Named)>),
    /// What was remembered while it was off.
    Settings(Settings),
    /// The test that was in hand when the power went.
    Draft(PullTest),
    /// It started by itself.
    Restarted(Restart),
}

/// What is to be done outside.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Effect {
    /// Write the test at hand under this tag.
    Save {
        /// The number pinned to the cloth.
        tag: u16,
        /// Which cloth that is.
        meant: Meant,
        /// The mark of the person who pulled.
        by: Option<u32>,
    },
    /// Say what is known of a tag.
    LookUpTag {
        /// The tag.
        tag: u16,
    },
    /// Look for the log again.
    LookForLog,
    /// Bring the person of this slot.
    LoadPerson {
        /// The slot, from 0.
        slot: u8,
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
            let effect = key(model, action);
            model.restart = model.restart.filter(|_| model.screen == Screen::Resume);
            effect
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
            // It was found after all.
            if model.screen == Screen::NoLog && log.present && !model.is_measured() {
                model.show(Screen::Home);
            }
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
        Event::Tag(found) => tag::looked_up(model, found),
        Event::Person(person) => {
            (model.person, model.by) = person.map_or((None, None), |(slot, named)| (Some(slot), Some(named)));
            None
        }
        Event::Settings(settings) => {
            let Settings { gauge, inch, grain, demand, .. } = settings;
            // What was remembered is as good as what is offered, or it is not believed.
            if PullTest::new(gauge, grain).is_ok() {
                (model.gauge, model.inch, model.grain) = (gauge, inch, grain);
            }
            model.slot = demand.filter(|slot| *slot < model.log.demands);
            model.slot.map(|slot| Effect::LoadDemand { slot })
        }
        Event::Restarted(why) => {
            model.restart = Some(why);
            None
        }
        Event::Draft(test) => {
            model.test = Some(test);
            model.show(Screen::Resume);
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
            if screen == Screen::Pull && action == Action::Step {
                go_on(model);
                return None;
            }
            let rows = model.row_count();
            model.row = match action {
                Action::Less(_) => model.row.saturating_sub(1),
                Action::More(_) => (model.row + 1).min(rows - 1),
                _ => (model.row + 1) % rows,
            };
            None
        }
        (Screen::Readings, Action::Next | Action::Accept) => {
            let row = usize::from(model.row);
            model.correcting = model.test.as_ref().and_then(|test| readings::newest_first(test).get(row).copied());
            model.show(if model.correcting.is_some() { Screen::Reading } else { Screen::Choice });
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
        ListRow::Start if !model.is_measured() && !model.log.present && model.screen != Screen::NoLog => {
            model.show(Screen::NoLog);
            return Some(Effect::LookForLog);
        }
        ListRow::Start => start(model),
        ListRow::Demand => return next_demand(model),
        ListRow::By => {
            let slot = model.person.map_or(0, |slot| slot.saturating_add(1));
            return Some(Effect::LoadPerson { slot });
        }
        ListRow::GoOn => model.show(Screen::Choice),
        ListRow::ThatTag | ListRow::OtherTag => return tag::choose(model, row),
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
        ListRow::Correct => model.show(Screen::Readings),
        ListRow::DialAgain => dial_again(model),
        ListRow::Drop => change(model, None),
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
        ListRow::TryAgain => return tag::save(model),
        ListRow::Saved => return making::open_shelf(model),
        ListRow::Join => return making::join(model),
        ListRow::PassOver => making::pass_over(model),
    }
    None
}

/// A screen without a list was accepted.
fn go_on(model: &mut Model) {
    match model.screen {
        // Whoever pulls has both hands full: the key is pressed as one lets go, and the dial turned while the cloth rests.
        Screen::Pull => {
            model.held_seconds = model.seconds();
            model.let_go = Some(model.now);
            model.since = model.now;
            dial_extended(model, None);
        }
        Screen::Rest => {
            model.rest_seconds = model.seconds_since_release();
            dial_recovered(model, None);
        }
        Screen::Result => {
            if model.can_save() {
                tag::ask(model);
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
        Screen::Extended | Screen::Recovered | Screen::Look if model.correcting.is_some() => {
            change(model, Some(length));
        }
        Screen::Extended => {
            // Until now the release of the pull before still counted: "pull again" can be called off.
            let released = model.let_go;
            let planned = model.test.as_ref().is_some_and(|test| test.pulls().len().saturating_add(1) < PULLS);
            if measured(model, |test| test.add_pull(length), Screen::Rest) {
                (model.released, model.since) = (released, released.unwrap_or(model.now));
                if planned {
                    model.start_clock(Screen::Pull);
                }
            }
        }
        Screen::Recovered => {
            let seconds = model.rest_seconds;
            let planned = model.test.as_ref().is_some_and(|test| test.pulls().len() < PULLS);
            if measured(model, |test| test.add_rest(seconds, length), Screen::Choice) && !planned {
                finish(model);
            }
        }
        Screen::Look => {
            measured(model, |test| test.add_look(length), Screen::Choice);
        }
        Screen::Tag => return tag::dialled(model),
        _ => making::dialled(model, length),
    }
    None
}

/// Adds a reading to the test and goes on; an invalid one stays on its dial, and is told by false.
fn measured(model: &mut Model, add: impl FnOnce(&mut PullTest) -> Result<(), TestError>, next: Screen) -> bool {
    let added = model.test.as_mut().is_some_and(|test| add(test).is_ok());
    if added {
        model.show(next);
    }
    added
}

/// Puts another length in the place of a reading, or drops it; an invalid one stays on its dial.
fn change(model: &mut Model, to: Option<Length>) {
    let Some((at, test)) = model.correcting.zip(model.test.as_ref()) else { return };
    if let Some(test) = readings::changed(test, at, to) {
        model.test = Some(test);
        model.correcting = None;
        model.show(if model.is_measured() { Screen::Choice } else { Screen::Home });
        model.put_aside_unstarted();
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
    let pull = match model.correcting {
        Some(ReadingAt::Rest(rest)) => {
            test.rests().get(rest).and_then(|rest| test.pulls().get(usize::from(rest.after_pull)))
        }
        _ => test.pulls().last(),
    };
    let Some(extended) = pull.copied() else { return };
    let gauge = test.gauge();
    let least = Length::from_steps(gauge.steps() / 10 * 9 + 9);
    model.dial = Dial::length(test.scale().is_inch(), start.unwrap_or(gauge), least, extended).finely();
    model.show(Screen::Recovered);
}

/// Dials the gauge length as it reads now, beginning at `start` or at the first look; nothing where no more looks fit.
fn dial_look(model: &mut Model, start: Option<Length>) {
    let room = |test: &&PullTest| start.is_some() || test.looks().count() < MAX_LOOKS;
    let Some(test) = model.test.as_ref().filter(room) else { return };
    let gauge = test.gauge();
    let tenth = gauge.steps() / 10;
    let [least, most] = [gauge.steps() - tenth, gauge.steps() + tenth].map(Length::from_steps);
    model.dial = Dial::length(test.scale().is_inch(), start.unwrap_or(gauge), least, most);
    model.show(Screen::Look);
}

/// Dials the reading that was chosen again; it stands until another is taken.
fn dial_again(model: &mut Model) {
    let Some((at, test)) = model.correcting.zip(model.test.as_ref()) else { return };
    let length = readings::length(test, at);
    match at {
        ReadingAt::Pull(_) => dial_extended(model, length),
        ReadingAt::Look(_) => dial_look(model, length),
        ReadingAt::Rest(rest) => {
            model.rest_seconds = test.rests().get(rest).map_or(0, |rest| rest.seconds);
            dial_recovered(model, length);
        }
    }
}

/// Nothing that was measured is lost by going back.
fn back(model: &mut Model) {
    if model.correcting.take().is_some() {
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
        Screen::Extended => {
            model.let_go = None;
            return model.start_clock(Screen::Pull);
        }
        Screen::Recovered => {
            model.since = model.released.unwrap_or(model.since);
            return model.show(Screen::Rest);
        }
        Screen::Release | Screen::Rest | Screen::Look | Screen::Discard | Screen::Result | Screen::Readings => {
            Screen::Choice
        }
        Screen::Tag | Screen::NotSaved => Screen::Result,
        Screen::TagTaken => {
            tag::ask(model);
            return;
        }
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
