//! The handheld without a board: its model, driven by actions and time.

use tenter_core::Repeatability;
use tenter_core::record::LabelledDemand;
use tenter_core::wire::LentTags;
use tenter_firmware::frame::Frame;
use tenter_firmware::log::Named;
use tenter_firmware::ui::{Action, Effect, Event, LogState, MeasuredCloth, Model, TagUse, update};
use tenter_firmware::view;

/// A model with a clock, and demands in place of a log.
#[derive(Clone, Debug, Default)]
pub struct Handheld {
    /// The model.
    pub model: Model,
    /// Milliseconds since power-on.
    pub now: u32,
    /// Demands as the host sent them.
    pub demands: Vec<LabelledDemand>,
    /// How steadily its owner pulls, as the host said.
    pub hand: Option<Repeatability>,
    /// Tags of the tests that were saved, with the tests.
    pub saved: Vec<(u16, tenter_core::PullTest)>,
    /// Cloths that the host has named, and people.
    pub names: [Vec<Named>; 2],
    /// The tags that a log has lent, if one has.
    pub tags: Option<LentTags>,
    /// The tag after the highest that was given.
    pub given: u16,
    /// Whether it knows the date.
    pub dated: bool,
}

impl Handheld {
    /// A handheld whose log answers and is empty.
    #[must_use]
    pub fn with_log(demands: Vec<LabelledDemand>) -> Self {
        let mut handheld = Self { demands, dated: true, ..Self::default() };
        handheld.log(true, 490);
        handheld
    }

    /// The log says something new.
    pub fn log(&mut self, present: bool, room: u16) {
        let demands = u8::try_from(self.demands.len()).unwrap_or(u8::MAX);
        let unsent = u16::try_from(self.saved.len()).unwrap_or(u16::MAX);
        let next_tag = self.given.max(self.tags.map_or(1, |tags| tags.next));
        let (agreed, dated) = (self.tags.is_some(), self.dated);
        let people = u8::try_from(self.names[1].len()).unwrap_or(u8::MAX);
        let log = LogState {
            present,
            room,
            unsent,
            demands,
            repeatability: self.hand,
            next_tag,
            agreed,
            people,
            dated,
            fault: None,
        };
        update(&mut self.model, Event::Log(log), self.now);
    }

    /// What is known of a tag.
    fn tag_use(&self, tag: u16) -> TagUse {
        let tags = self.tags.unwrap_or(LentTags { least: 1, next: 1, most: 999 });
        let tags = LentTags { next: tags.next.max(self.given), ..tags };
        match self.names[0].iter().find(|named| named.tag == tag) {
            Some(named) => TagUse::Cloth(named.clone()),
            None if tags.is_free(tag) => TagUse::Free,
            None if tags.holds(tag) => TagUse::Given,
            None => TagUse::Unknown,
        }
    }

    /// Acts, and does what the model asks for.
    pub fn act(&mut self, action: Action) {
        let mut effect = update(&mut self.model, Event::Key(action), self.now);
        while let Some(wanted) = effect {
            let event = self.carry_out(wanted);
            effect = update(&mut self.model, event, self.now);
        }
    }

    fn carry_out(&mut self, effect: Effect) -> Event {
        match effect {
            Effect::LoadDemand { slot } => Event::Demand(self.demands.get(usize::from(slot)).cloned()),
            Effect::LoadPerson { slot } => {
                Event::Person(self.names[1].get(usize::from(slot)).map(|named| (slot, named.clone())))
            }
            Effect::LookForLog => Event::Log(self.model.log),
            Effect::LookUpTag { tag } => Event::Tag(self.tag_use(tag)),
            Effect::Save { tag, .. } => {
                self.saved.extend(self.model.test.clone().map(|test| (tag, test)));
                self.given = self.given.max(tag + 1);
                let room = self.model.log.room.saturating_sub(1);
                self.log(true, room);
                Event::Saved(u32::try_from(self.saved.len()).unwrap_or(u32::MAX))
            }
            Effect::Browse { than, newer, round } => {
                let cloth = self.beside(than, newer).or_else(|| if round { self.beside(None, false) } else { None });
                Event::Cloth(cloth)
            }
        }
    }

    /// The cloth of the saved test before or after another; its place is its turn.
    fn beside(&self, than: Option<u32>, newer: bool) -> Option<MeasuredCloth> {
        let place = match than {
            Some(place) if newer => place.checked_add(1)?,
            Some(place) => place.checked_sub(1)?,
            None => u32::try_from(self.saved.len()).ok()?.checked_sub(1)?,
        };
        let (tag, test) = self.saved.get(usize::try_from(place).ok()?)?;
        MeasuredCloth::of(Some(place), *tag, test, self.hand)
    }

    /// Acts several times.
    pub fn acts(&mut self, actions: &[Action]) {
        for action in actions {
            self.act(*action);
        }
    }

    /// Lets time pass.
    pub fn wait(&mut self, milliseconds: u32) {
        self.now = self.now.wrapping_add(milliseconds);
        update(&mut self.model, Event::Tick, self.now);
    }

    /// What the display shows.
    #[must_use]
    pub fn frame(&self) -> Frame {
        let mut frame = Frame::default();
        view::draw(&self.model, &mut frame);
        frame
    }
}
