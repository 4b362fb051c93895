//! Five keys to ground, and a rotary encoder with a button beside them. Their edges wake the processor; their levels are read.

use embedded_hal::digital::InputPin;
use rp2040_hal::gpio::{DynPinId, FunctionSioInput, Interrupt, Pin, PullUp};

/// A key's pin: low while pressed.
pub type KeyPin = Pin<DynPinId, FunctionSioInput, PullUp>;

/// The keys in the order Less, More, Next, Back, Select.
pub struct Keys([KeyPin; 5]);

/// The encoder: its two contacts and its button.
pub struct Knob {
    contacts: [KeyPin; 2],
    button: KeyPin,
}

impl Keys {
    pub(crate) fn new(pins: [KeyPin; 5]) -> Self {
        pins.iter().for_each(wakes);
        Self(pins)
    }

    /// Which keys are pressed now.
    pub fn pressed(&mut self) -> [bool; 5] {
        self.0.each_mut().map(is_closed)
    }
}

impl Knob {
    pub(crate) fn new(contacts: [KeyPin; 2], button: KeyPin) -> Self {
        contacts.iter().chain([&button]).for_each(wakes);
        Self { contacts, button }
    }

    /// Which contacts are closed now.
    pub fn contacts(&mut self) -> [bool; 2] {
        self.contacts.each_mut().map(is_closed)
    }

    /// Whether its button is pressed now.
    pub fn pressed(&mut self) -> bool {
        is_closed(&mut self.button)
    }
}

fn wakes(pin: &KeyPin) {
    pin.set_interrupt_enabled(Interrupt::EdgeLow, true);
    pin.set_interrupt_enabled(Interrupt::EdgeHigh, true);
}

/// An edge that comes after this look ends the next sleep at once, so none is missed: the old edges are forgotten *before*
/// the level is read.
fn is_closed(pin: &mut KeyPin) -> bool {
    pin.clear_interrupt(Interrupt::EdgeLow);
    pin.clear_interrupt(Interrupt::EdgeHigh);
    pin.is_low().unwrap_or(false)
}
