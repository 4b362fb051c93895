//! Everything together: keys and time in, pictures and replies out. A board reads levels and bytes, and sleeps.

use tenter_core::saved::{Meant, SavedTest};

use crate::calendar::{Calendar, NoCalendar};
use crate::desk::Records;
use crate::fmt;
use crate::frame::Frame;
use crate::keys::{Keys, Levels};
use crate::knob::Knob;
use crate::link::Responder;
use crate::log::{Log, Storage};
use crate::panel::{CachedPanel, Panel};
use crate::ui::{self, Effect, Event, Input, Model, Restart};
use crate::view;

/// A handheld.
///
/// A board calls [`App::step`] at every change of a key and whenever the time that it hands back has passed, and
/// [`App::receive`] with every byte that comes in.
#[derive(Debug)]
pub struct App<P, S: Storage, C = NoCalendar> {
    model: Model,
    keys: Keys,
    knob: Knob,
    input: Input,
    frame: Frame,
    screen: CachedPanel<P>,
    records: Records<S, C>,
    session: Responder,
    /// The picture is no longer that of the model. Drawing takes a small processor tens of milliseconds, in which a
    /// short tap would be missed, so nothing is drawn twice.
    stale: bool,
    /// The second that the clock on the screen showed last.
    second: u32,
}

/// How soon a display that does not answer is tried again, in milliseconds.
const TRY_AGAIN_MS: u32 = 250;

impl<P: Panel, S: Storage> App<P, S> {
    /// A handheld on its panel and its memory chip, without a calendar. A missing chip or a dark panel stops nothing else.
    pub fn new(panel: P, storage: S) -> Self {
        Self::with_calendar(panel, storage, NoCalendar)
    }
}

impl<P: Panel, S: Storage, C: Calendar> App<P, S, C> {
    /// The same with a clock that goes on without power, should it answer.
    pub fn with_calendar(panel: P, storage: S, calendar: C) -> Self {
        Self {
            model: Model::default(),
            keys: Keys::default(),
            knob: Knob::default(),
            input: Input::default(),
            frame: Frame::default(),
            screen: CachedPanel::new(panel),
            records: Records::with_calendar(storage, calendar),
            session: Responder::new(),
            stale: true,
            second: 0,
        }
    }

    /// Says why it started by itself, before [`App::start`].
    pub fn restarted(&mut self, why: Restart) {
        fmt::info!("{}", why);
        ui::update(&mut self.model, Event::Restarted(why), 0);
    }

    /// Shows the first picture.
    #[inline(never)] // So that its room on the stack is free again afterwards; so for the others below.
    pub fn start(&mut self) {
        let log = self.records.state();
        fmt::info!("log: present {}, room {}, unsent {}", log.present, log.room, log.unsent);
        ui::update(&mut self.model, Event::Log(log), 0);
        if let Some(settings) = self.records.settings() {
            // Before anything is remembered in its place.
            self.load_person(settings.by);
            self.happen(Event::Settings(settings), 0);
        }
        if let Some(draft) = self.records.log().and_then(Log::take_draft) {
            fmt::info!("a test was in hand");
            self.happen(Event::Draft(draft.test), 0);
        }
        self.draw();
    }

    /// Takes the levels of the keys at a time in milliseconds since power-on, shows what changed, and says in how
    /// many milliseconds it wants to be called again even if no key changes; none while nothing is due.
    #[inline(never)]
    pub fn step(&mut self, levels: Levels, now: u32) -> Option<u32> {
        self.records.tell_time(now);
        let mut keys = self.keys;
        for (key, event) in keys.update(levels, now) {
            if let Some(action) = self.input.action(key, event) {
                fmt::info!("{}", action);
                self.happen(Event::Key(action), now);
            }
        }
        self.keys = keys;
        ui::update(&mut self.model, Event::Tick, now);
        let second = self.model.seconds();
        if self.stale || self.model.has_clock() && second != self.second {
            self.draw();
        }
        let again = self.stale.then_some(TRY_AGAIN_MS);
        [self.keys.due_in(now), self.knob.due_in(now), self.model.due_in(now), again].into_iter().flatten().min()
    }

    /// Takes which contacts of a rotary encoder are closed, at every change; what is drawn is drawn by the next
    /// [`App::step`].
    pub fn turn(&mut self, contacts: [bool; 2], now: u32) {
        if let Some(action) = self.knob.turn(contacts) {
            self.happen(Event::Key(action), now);
        }
    }

    /// Takes the level of the encoder's button, as often as [`App::step`] is called.
    pub fn push(&mut self, down: bool, now: u32) {
        if let Some(action) = self.knob.press(down, now) {
            self.happen(Event::Key(action), now);
        }
    }

    /// Takes a byte from the line at a time in milliseconds since power-on; the reply to send, if there is one.
    #[inline(never)]
    pub fn receive(&mut self, byte: u8, now: u32) -> Option<&[u8]> {
        self.records.tell_time(now);
        // Borrowed for as long as the reply is: so what follows from it is done first.
        self.session.hear(byte, &mut self.records).then_some(())?;
        // The host may have taken tests, sent demands, or named people.
        ui::update(&mut self.model, Event::Log(self.records.state()), now);
        let by = self.records.settings().and_then(|settings| settings.by);
        self.load_person(by);
        self.stale = true;
        Some(self.session.reply())
    }

    /// Whether the buzzer sounds now.
    #[must_use]
    pub fn buzzes(&self) -> bool {
        self.model.buzzes()
    }

    /// The model, for tests and for the board's own log.
    pub const fn model(&self) -> &Model {
        &self.model
    }

    /// The picture that is shown.
    pub const fn frame(&self) -> &Frame {
        &self.frame
    }

    fn happen(&mut self, event: Event, now: u32) {
        self.stale = true;
        let mut effect = ui::update(&mut self.model, event, now);
        while let Some(wanted) = effect {
            let done = self.carry_out(wanted);
            ui::update(&mut self.model, Event::Log(self.records.state()), now);
            effect = ui::update(&mut self.model, done, now);
            self.stale = true;
        }
        self.keep();
    }

    fn carry_out(&mut self, effect: Effect) -> Event {
        match effect {
            Effect::Save { tag, meant, by } => {
                self.draw(); // Says that it saves, and not to switch off.
                self.save(tag, meant, by)
            }
            Effect::LoadDemand { slot } => {
                Event::Demand(self.records.log().and_then(|log| log.demand(slot).ok().flatten()))
            }
            Effect::LookForLog => {
                self.records.look_again();
                Event::Log(self.records.state())
            }
            Effect::LookUpTag { tag } => Event::Tag(self.records.tag_use(tag)),
            Effect::LoadPerson { slot } => Event::Person(self.records.person(slot).map(|named| (slot, named))),
            Effect::Browse { than, newer, round } => {
                let found = self.records.cloth(than, newer);
                Event::Cloth(found.or_else(|| if round { self.records.cloth(None, false) } else { None }))
            }
        }
    }

    /// The person who pulls: the one that was chosen, or the owner.
    fn load_person(&mut self, by: Option<u32>) {
        let person = self.records.person_marked(by);
        let now = self.model.now;
        ui::update(&mut self.model, Event::Person(person), now);
    }

    /// Keeps what must outlive the power before it is shown: every reading, and how one measures.
    #[inline(never)]
    fn keep(&mut self) {
        let Some(log) = self.records.log() else { return };
        let kept = log.keep_draft(self.model.draft()).is_ok();
        let remembered = log.set_settings(self.model.remembered(log.settings())).is_ok();
        if !(kept && remembered) {
            fmt::info!("not kept: {} {}", kept, remembered);
        }
    }

    #[inline(never)]
    fn save(&mut self, tag: u16, meant: Meant, by: Option<u32>) -> Event {
        let clock = self.records.clock();
        let saved = self.model.test.clone().map(|test| SavedTest { tag, clock, meant, by, test });
        match saved.zip(self.records.log()).map(|(saved, log)| log.save(&saved)) {
            Some(Ok(number)) => {
                fmt::info!("saved {}", number);
                Event::Saved(number)
            }
            _ => {
                fmt::info!("not saved");
                Event::NotSaved
            }
        }
    }

    #[inline(never)]
    fn draw(&mut self) {
        self.second = self.model.seconds();
        view::draw(&self.model, &mut self.frame);
        // What the panel did not take is tried again at the next step.
        self.stale = !self.screen.show(&self.frame);
    }
}
