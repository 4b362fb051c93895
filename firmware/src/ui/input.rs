//! From what the buttons did to what is meant.

use crate::button::{ButtonEvent, HOLD_MS, REPEAT_MS};
use crate::keys::Key;

/// How long the only button must be held to go back, in milliseconds.
pub const BACK_MS: u32 = 2000;
/// The repeat at which that time has passed.
const BACK_REPEAT: u32 = (BACK_MS - HOLD_MS) / REPEAT_MS;

/// What a person means.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum Action {
    /// Lower the figure by so many steps, or move up a list.
    Less(u16),
    /// Raise the figure by so many steps, or move down a list.
    More(u16),
    /// Accept and go on.
    Next,
    /// Go back; nothing measured is lost.
    Back,
    /// The only button: raise the digit at hand, or move down a list and round again.
    Step,
    /// The only button: accept the digit at hand, or the choice.
    Accept,
}

/// Turns button events into actions.
///
/// ```
/// use tenter_firmware::{button::ButtonEvent, keys::Key, ui::{Action, Input}};
///
/// let mut input = Input::default();
/// assert_eq!(input.action(Key::Only, ButtonEvent::Tapped), Some(Action::Step));
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Input {
    /// The only button was held long enough to go back; its release is then ignored.
    went_back: bool,
}

impl Input {
    /// What is meant, if anything.
    pub fn action(&mut self, key: Key, event: ButtonEvent) -> Option<Action> {
        match (key, event) {
            (Key::Less, ButtonEvent::Pressed) => Some(Action::Less(1)),
            (Key::More, ButtonEvent::Pressed) => Some(Action::More(1)),
            (Key::Less, ButtonEvent::Repeated(count)) => Some(Action::Less(stride(count))),
            (Key::More, ButtonEvent::Repeated(count)) => Some(Action::More(stride(count))),
            (Key::Next, ButtonEvent::Pressed) => Some(Action::Next),
            (Key::Back, ButtonEvent::Pressed) => Some(Action::Back),
            (Key::Only, event) => self.only(event),
            _ => None,
        }
    }

    fn only(&mut self, event: ButtonEvent) -> Option<Action> {
        match event {
            ButtonEvent::Tapped => Some(Action::Step),
            ButtonEvent::Repeated(count) if u32::from(count) == BACK_REPEAT => {
                self.went_back = true;
                Some(Action::Back)
            }
            ButtonEvent::Released if !core::mem::take(&mut self.went_back) => Some(Action::Accept),
            _ => None,
        }
    }
}

/// A hold runs faster the longer it lasts: from 100 mm to 187.5 mm in half millimetres takes three seconds.
const fn stride(repeats: u16) -> u16 {
    match repeats {
        0..=4 => 1,
        5..=14 => 4,
        _ => 10,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_only_button_taps_holds_and_goes_back() {
        let mut input = Input::default();
        let mut play = |events: &[ButtonEvent]| {
            events.iter().filter_map(|event| input.action(Key::Only, *event)).collect::<std::vec::Vec<_>>()
        };
        use ButtonEvent::*;
        assert_eq!(play(&[Pressed, Tapped]), [Action::Step]);
        assert_eq!(play(&[Pressed, Held, Repeated(1), Released]), [Action::Accept]);
        let long: std::vec::Vec<_> = (1..=20).map(Repeated).collect();
        assert_eq!(play(&[Pressed, Held]), []);
        assert_eq!(play(&long), [Action::Back]);
        assert_eq!(play(&[Released]), []);
        assert_eq!(play(&[Pressed, Held, Released]), [Action::Accept]);
    }

    #[test]
    fn a_long_way_is_quick() {
        let (mut steps, mut repeats) = (1u16, 0);
        while steps < 175 {
            repeats += 1;
            steps += stride(repeats);
        }
        let milliseconds = HOLD_MS + u32::from(repeats) * REPEAT_MS;
        assert!(milliseconds < 4000, "100.0 to 187.5 mm takes {milliseconds} ms");
    }
}
