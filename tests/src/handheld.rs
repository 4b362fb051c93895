//! The handheld without a board: its model, driven by actions and time.

use tenter_core::Repeatability;
use tenter_core::record::LabelledDemand;
use tenter_firmware::frame::Frame;
use tenter_firmware::ui::{Action, Effect, Event, LogState, MeasuredCloth, Model, update};
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
}

impl Handheld {
    /// A handheld whose log answers and is empty.
    #[must_use]
    pub fn with_log(demands: Vec<LabelledDemand>) -> Self {
        let mut handheld = Self { demands, ..Self::default() };
        handheld.log(true, 490);
        handheld
    }

    /// The log says something new.
    pub fn log(&mut self, present: bool, room: u16) {
        let demands = u8::try_from(self.demands.len()).unwrap_or(u8::MAX);
        let unsent = u16::try_from(self.saved.len()).unwrap_or(u16::MAX);
        update(
            &mut self.model,
            Event::Log(LogState { present, room, unsent, demands, repeatability: self.hand }),
            self.now,
        );
    }

    /// Acts, and does what the model asks for.
    pub fn act(&mut self, action: Action) {
        match update(&mut self.model, Event::Key(action), self.now) {
            Some(Effect::LoadDemand { slot }) => {
                let demand = self.demands.get(usize::from(slot)).cloned();
                update(&mut self.model, Event::Demand(demand), self.now);
            }
            Some(Effect::Save { tag }) => {
                if let Some(test) = self.model.test.clone() {
                    self.saved.push((tag, test));
                    let sequence = u32::try_from(self.saved.len()).unwrap_or(u32::MAX);
                    let room = self.model.log.room.saturating_sub(1);
                    self.log(true, room);
                    update(&mut self.model, Event::Saved(sequence), self.now);
                }
            }
            Some(Effect::Browse { than, newer, round }) => {
                let cloth = self.beside(than, newer).or_else(|| if round { self.beside(None, false) } else { None });
                update(&mut self.model, Event::Cloth(cloth), self.now);
            }
            None => {}
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
