//! The keys of a handheld: one button alone can drive everything, five drive it faster.

use embedded_hal::digital::InputPin;

use crate::button::{Button, ButtonEvent};

/// A key.
///
/// ```
/// assert_eq!(tenter_firmware::keys::Key::ALL.len(), 5);
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Key {
    /// Lowers the figure or moves up the list.
    Less,
    /// Raises the figure or moves down the list.
    More,
    /// Accepts and goes on.
    Next,
    /// Goes back and loses nothing.
    Back,
    /// The only button of a one-button handheld: a tap steps, a hold accepts.
    Only,
}

impl Key {
    /// All keys, in the order of [`Levels`].
    ///
    /// ```
    /// assert_eq!(tenter_firmware::keys::Key::ALL[4], tenter_firmware::keys::Key::Only);
    /// ```
    pub const ALL: [Self; 5] = [Self::Less, Self::More, Self::Next, Self::Back, Self::Only];
}

/// Which keys are down, in the order of [`Key::ALL`].
///
/// ```
/// let nothing_pressed = tenter_firmware::keys::Levels::default();
/// assert_eq!(nothing_pressed, [false; 5]);
/// ```
pub type Levels = [bool; 5];

/// Whether an active-low key with a pull-up is down. A pin that cannot be read counts as up.
///
/// ```
/// use core::convert::Infallible;
/// use embedded_hal::digital::{ErrorType, InputPin};
///
/// struct Grounded;
/// impl ErrorType for Grounded { type Error = Infallible; }
/// impl InputPin for Grounded {
///     fn is_high(&mut self) -> Result<bool, Infallible> { Ok(false) }
///     fn is_low(&mut self) -> Result<bool, Infallible> { Ok(true) }
/// }
/// assert!(tenter_firmware::keys::is_down(&mut Grounded));
/// ```
pub fn is_down(pin: &mut impl InputPin) -> bool {
    pin.is_low().unwrap_or(false)
}

/// All keys, debounced.
///
/// ```
/// use tenter_firmware::keys::Keys;
///
/// let mut keys = Keys::default();
/// assert_eq!(keys.update([false; 5], 0).count(), 0);
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Keys {
    buttons: [Button; 5],
}

impl Keys {
    /// Takes all levels at a time in milliseconds; what each key did.
    ///
    /// ```
    /// use tenter_firmware::{button::ButtonEvent, keys::{Key, Keys}};
    ///
    /// let mut keys = Keys::default();
    /// for now in [0, 20] { keys.update([false; 5], now).count(); }
    /// let more = [false, true, false, false, false];
    /// keys.update(more, 30).count();
    /// assert_eq!(keys.update(more, 50).next(), Some((Key::More, ButtonEvent::Pressed)));
    /// ```
    pub fn update(&mut self, levels: Levels, now: u32) -> impl Iterator<Item = (Key, ButtonEvent)> {
        let pairs = self.buttons.iter_mut().zip(levels).zip(Key::ALL);
        pairs.filter_map(move |((button, level), key)| button.update(level, now).map(|event| (key, event)))
    }

    /// In how many milliseconds [`Keys::update`] must be called again even if no level changes; none while no key
    /// needs it.
    ///
    /// ```
    /// assert_eq!(tenter_firmware::keys::Keys::default().due_in(0), Some(20));
    /// ```
    #[must_use]
    pub fn due_in(&self, now: u32) -> Option<u32> {
        self.buttons.iter().filter_map(|button| button.due_in(now)).min()
    }
}
