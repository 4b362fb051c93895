//! A rotary encoder with a button: two contacts a quarter turn apart. Pure: no pin, no clock.

use crate::button::{Button, ButtonEvent};
use crate::ui::Action;

/// The contacts as they follow each other through one notch, clockwise.
const ORDER: [[bool; 2]; 4] = [[false, false], [true, false], [true, true], [false, true]];
/// Steps between two notches: those of the usual encoder rest with both contacts open.
const A_NOTCH: i8 = 4;

/// The knob: turned it lowers and raises, pressed it goes on, held it goes back.
///
/// ```
/// use tenter_firmware::{knob::Knob, ui::Action};
///
/// let mut knob = Knob::default();
/// let turn = [[true, false], [true, true], [false, true], [false, false]];
/// let actions: Vec<_> = turn.into_iter().filter_map(|contacts| knob.turn(contacts)).collect();
/// assert_eq!(actions, [Action::More(1)]);
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Knob {
    contacts: [bool; 2],
    /// Quarter steps from the notch, clockwise.
    beyond: i8,
    button: Button,
    /// Whether a board ever said how its button stands: one without a knob never does, and none is waited for.
    is_there: bool,
}

impl Knob {
    /// Takes which contacts are closed, at every change. A contact that bounces goes there and back, which counts for
    /// nothing; one that was missed is not guessed.
    pub fn turn(&mut self, contacts: [bool; 2]) -> Option<Action> {
        let place = |contacts| ORDER.iter().position(|known| *known == contacts).unwrap_or(0);
        let moved = (place(contacts) + ORDER.len() - place(self.contacts)) % ORDER.len();
        self.contacts = contacts;
        self.beyond += match moved {
            1 => 1,
            3 => -1,
            _ => 0,
        };
        if contacts != [false, false] {
            return None;
        }
        // At a notch again. After a missed step the nearer side decides.
        let beyond = core::mem::take(&mut self.beyond);
        match beyond {
            A_NOTCH.. | 2..A_NOTCH => Some(Action::More(1)),
            ..=-2 => Some(Action::Less(1)),
            _ => None,
        }
    }

    /// Takes the level of its button at a time in milliseconds.
    pub fn press(&mut self, down: bool, now: u32) -> Option<Action> {
        self.is_there = true;
        match self.button.update(down, now)? {
            ButtonEvent::Tapped => Some(Action::Next),
            ButtonEvent::Held => Some(Action::Back),
            ButtonEvent::Pressed | ButtonEvent::Repeated(_) | ButtonEvent::Released => None,
        }
    }

    /// In how many milliseconds [`Knob::press`] must be called again even if nothing changes.
    #[must_use]
    pub fn due_in(&self, now: u32) -> Option<u32> {
        self.button.due_in(now).filter(|_| self.is_there)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::vec::Vec;

    #[test]
    fn a_board_without_a_knob_waits_for_none() {
        let mut knob = Knob::default();
        assert_eq!((knob.due_in(0), knob.due_in(1_000)), (None, None));
        knob.press(false, 0);
        assert_eq!(knob.due_in(0), Some(20));
    }

    fn notches(knob: &mut Knob, count: i32) -> Vec<Action> {
        let mut actions = Vec::new();
        for _ in 0..count.abs() {
            for step in 1..=4 {
                let at = if count > 0 { step % 4 } else { 4 - step };
                // Each contact bounces as it changes.
                let before = knob.contacts;
                for contacts in [ORDER[at], before, ORDER[at]] {
                    actions.extend(knob.turn(contacts));
                }
            }
        }
        actions
    }

    #[test]
    fn a_notch_is_a_step_either_way() {
        let mut knob = Knob::default();
        assert_eq!(notches(&mut knob, 3), [Action::More(1); 3]);
        assert_eq!(notches(&mut knob, -2), [Action::Less(1); 2]);
        // Half a notch and back is nothing.
        let there_and_back = [[true, false], [true, true], [true, false], [false, false]];
        assert!(there_and_back.into_iter().all(|contacts| knob.turn(contacts).is_none()));
    }

    #[test]
    fn pressed_it_goes_on_and_held_it_goes_back() {
        let mut knob = Knob::default();
        let levels = [(false, 0), (false, 30), (true, 100), (true, 130), (false, 200), (false, 230)];
        let actions: Vec<_> = levels.into_iter().filter_map(|(down, now)| knob.press(down, now)).collect();
        assert_eq!(actions, [Action::Next]);
        let levels = [(true, 300), (true, 330), (true, 1000), (false, 1100), (false, 1130)];
        let actions: Vec<_> = levels.into_iter().filter_map(|(down, now)| knob.press(down, now)).collect();
        assert_eq!(actions, [Action::Back]);
    }
}
