//! One button: from a bouncing level and the time to presses, holds and repeats. Pure: no pin, no clock.

/// How long a level must stay before it counts, in milliseconds. Contacts bounce for 1 to 10 ms (from memory).
pub const DEBOUNCE_MS: u32 = 20;
/// How long a press must last to be a hold, in milliseconds.
pub const HOLD_MS: u32 = 600;
/// Time between two repeats of a hold, in milliseconds.
pub const REPEAT_MS: u32 = 100;

/// What a button did.
///
/// ```
/// use tenter_firmware::button::{Button, ButtonEvent};
///
/// let mut button = Button::default();
/// assert_eq!(button.update(false, 0), None); // Seen released once: from now on presses count.
/// assert_eq!(button.update(false, 30), None);
/// button.update(true, 40);
/// assert_eq!(button.update(true, 60), Some(ButtonEvent::Pressed));
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ButtonEvent {
    /// It went down.
    Pressed,
    /// It has been down for [`HOLD_MS`].
    Held,
    /// It is still down; the count of repeats so far, from 1 on.
    Repeated(u16),
    /// It went up after a short press.
    Tapped,
    /// It went up after a hold.
    Released,
}

/// A debounced button. One that is down at power-on counts as up until it was once seen up.
///
/// ```
/// use tenter_firmware::button::Button;
///
/// let mut stuck = Button::default();
/// assert!((0..10_000).step_by(10).all(|now| stuck.update(true, now).is_none()));
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Button {
    state: State,
    /// The level last seen and since when.
    level: bool,
    since: u32,
}

#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
enum State {
    /// Never seen up.
    #[default]
    Unknown,
    Up,
    Down {
        at: u32,
    },
    Holding {
        /// When the next repeat is due.
        next: u32,
        repeats: u16,
    },
}

impl Button {
    /// Takes the level at a time in milliseconds; time may wrap round. Call it at every change and whenever
    /// [`Button::due_in`] says so.
    ///
    /// ```
    /// use tenter_firmware::button::{Button, ButtonEvent, HOLD_MS};
    ///
    /// let mut button = Button::default();
    /// button.update(false, 0);
    /// button.update(false, 20);
    /// button.update(true, 100);
    /// button.update(true, 120);
    /// assert_eq!(button.update(true, 120 + HOLD_MS), Some(ButtonEvent::Held));
    /// ```
    pub fn update(&mut self, pressed: bool, now: u32) -> Option<ButtonEvent> {
        let steady = now.wrapping_sub(self.since) >= DEBOUNCE_MS;
        if pressed != self.level {
            // Whoever looks may have been drawing or asleep when the level had stayed long enough: it counts all the same.
            // How much longer it stayed is not known, so this makes no hold.
            let ended = if steady && self.state != State::Unknown { self.settle(now) } else { None };
            self.level = pressed;
            self.since = now;
            return ended;
        }
        match self.state {
            State::Down { at } if pressed && now.wrapping_sub(at) >= HOLD_MS => {
                self.state = State::Holding { next: now.wrapping_add(REPEAT_MS), repeats: 0 };
                Some(ButtonEvent::Held)
            }
            State::Holding { next, repeats } if pressed && is_past(next, now) => {
                let repeats = repeats.saturating_add(1);
                self.state = State::Holding { next: now.wrapping_add(REPEAT_MS), repeats };
                Some(ButtonEvent::Repeated(repeats))
            }
            _ if steady => self.settle(now),
            _ => None,
        }
    }

    /// Counts the level, which has stayed long enough.
    fn settle(&mut self, now: u32) -> Option<ButtonEvent> {
        let (state, event) = match (self.state, self.level) {
            (State::Unknown, false) => (State::Up, None),
            (State::Up, true) => (State::Down { at: now }, Some(ButtonEvent::Pressed)),
            (State::Down { .. }, false) => (State::Up, Some(ButtonEvent::Tapped)),
            (State::Holding { .. }, false) => (State::Up, Some(ButtonEvent::Released)),
            (state, _) => (state, None),
        };
        self.state = state;
        event
    }

    /// In how many milliseconds [`Button::update`] must be called again even if the level stays; none while nothing
    /// is due, so that the processor may sleep.
    ///
    /// ```
    /// assert_eq!(tenter_firmware::button::Button::default().due_in(0), Some(20));
    /// ```
    #[must_use]
    pub fn due_in(&self, now: u32) -> Option<u32> {
        let settles = || DEBOUNCE_MS.saturating_sub(now.wrapping_sub(self.since));
        match (self.state, self.level) {
            (State::Unknown, true) | (State::Up, false) => None,
            (State::Unknown, false) | (State::Up, true) | (State::Down { .. } | State::Holding { .. }, false) => {
                Some(settles())
            }
            (State::Down { at }, true) => Some(HOLD_MS.saturating_sub(now.wrapping_sub(at))),
            (State::Holding { next, .. }, true) => Some(if is_past(next, now) { 0 } else { next.wrapping_sub(now) }),
        }
    }
}

/// Whether `due` lies at or before `now` on a clock that wraps.
fn is_past(due: u32, now: u32) -> bool {
    now.wrapping_sub(due) < u32::MAX / 2
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;
    use std::vec::Vec;

    /// Plays (level, milliseconds) pairs in steps of a millisecond.
    fn play(start: u32, script: &[(bool, u32)]) -> Vec<ButtonEvent> {
        let mut button = Button::default();
        let mut now = start;
        let mut events = Vec::new();
        for (level, duration) in script {
            for _ in 0..*duration {
                events.extend(button.update(*level, now));
                now = now.wrapping_add(1);
            }
        }
        events
    }

    #[test]
    fn a_tap_and_a_hold() {
        use ButtonEvent::*;
        assert_eq!(play(0, &[(false, 50), (true, 100), (false, 50)]), [Pressed, Tapped]);
        let held = play(0, &[(false, 50), (true, 20 + HOLD_MS + 2 * REPEAT_MS + 50), (false, 50)]);
        assert_eq!(held, [Pressed, Held, Repeated(1), Repeated(2), Released]);
    }

    #[test]
    fn bounce_is_one_press() {
        let mut script: Vec<(bool, u32)> = [(false, 50)].into();
        script.extend((0..20).map(|i| (i % 2 == 0, 3)));
        script.extend([(true, 60), (false, 4), (true, 4), (false, 60)]);
        assert_eq!(play(0, &script), [ButtonEvent::Pressed, ButtonEvent::Tapped]);
    }

    #[test]
    fn held_at_power_on_is_nothing() {
        assert_eq!(play(0, &[(true, 5000), (false, 100)]), []);
        assert_eq!(play(0, &[(true, 5000), (false, 100), (true, 50), (false, 50)]).len(), 2);
    }

    #[test]
    fn a_press_nobody_looked_at_again_counts() {
        let mut button = Button::default();
        let looks = [(false, 0), (false, 30), (true, 100), (false, 100 + DEBOUNCE_MS), (false, 200)];
        let events: Vec<_> = looks.into_iter().filter_map(|(level, now)| button.update(level, now)).collect();
        assert_eq!(events, [ButtonEvent::Pressed, ButtonEvent::Tapped]);
        // Shorter than contacts bounce: nothing.
        let looks = [(true, 300), (false, 299 + DEBOUNCE_MS), (false, 400)];
        assert!(looks.into_iter().all(|(level, now)| button.update(level, now).is_none()));
    }

    proptest! {
        /// A board that looks at each change and never in between, since it draws or sleeps, loses no press.
        #[test]
        fn looking_at_changes_alone_loses_no_press(
            start in prop_oneof![Just(0), Just(u32::MAX - 500), any::<u32>()],
            durations in prop::collection::vec(DEBOUNCE_MS..900, 1..40),
        ) {
            let mut button = Button::default();
            let (mut now, mut events) = (start, Vec::new());
            for level in [false, false] {
                events.extend(button.update(level, now));
                now = now.wrapping_add(DEBOUNCE_MS);
            }
            for (turn, duration) in durations.iter().enumerate() {
                events.extend(button.update(turn % 2 == 0, now));
                now = now.wrapping_add(*duration);
            }
            events.extend(button.update(durations.len() % 2 == 0, now));
            let changes: Vec<_> = (0..durations.len())
                .map(|turn| if turn % 2 == 0 { ButtonEvent::Pressed } else { ButtonEvent::Tapped })
                .collect();
            prop_assert_eq!(events, changes);
        }

        /// Presses and releases alternate, whatever the contacts do, and also where the clock wraps.
        #[test]
        fn presses_and_releases_alternate(
            start in prop_oneof![Just(0), Just(u32::MAX - 500), any::<u32>()],
            script in prop::collection::vec((any::<bool>(), 1..900u32), 0..40),
        ) {
            let mut down = false;
            for event in play(start, &script) {
                match event {
                    ButtonEvent::Pressed => { prop_assert!(!down); down = true; }
                    ButtonEvent::Tapped | ButtonEvent::Released => { prop_assert!(down); down = false; }
                    ButtonEvent::Held | ButtonEvent::Repeated(_) => prop_assert!(down),
                }
            }
        }

        /// Sleeping as long as `due_in` allows loses no event that calling every millisecond would see.
        #[test]
        fn sleeping_loses_nothing(
            start in prop_oneof![Just(0), Just(u32::MAX - 500)],
            script in prop::collection::vec((any::<bool>(), 1..900u32), 0..30),
        ) {
            let mut button = Button::default();
            let mut events = Vec::new();
            let mut now = start;
            for (level, duration) in &script {
                let end = now.wrapping_add(*duration);
                events.extend(button.update(*level, now));
                while let Some(due) = button.due_in(now).filter(|due| *due < end.wrapping_sub(now)) {
                    now = now.wrapping_add(due.max(1));
                    if now == end { break; }
                    events.extend(button.update(*level, now));
                }
                now = end;
            }
            prop_assert_eq!(events, play(start, &script));
        }
    }
}
