//! Five keys to ground. Their edges wake the processor; their levels are read.

use embedded_hal::digital::InputPin;
use rp2040_hal::gpio::{DynPinId, FunctionSioInput, Interrupt, Pin, PullUp};

/// A key's pin: low while pressed.
pub type KeyPin = Pin<DynPinId, FunctionSioInput, PullUp>;

/// The keys in the order Less, More, Next, Back, Select.
pub struct Keys([KeyPin; 5]);

impl Keys {
    pub(crate) fn new(pins: [KeyPin; 5]) -> Self {
        for pin in &pins {
            pin.set_interrupt_enabled(Interrupt::EdgeLow, true);
            pin.set_interrupt_enabled(Interrupt::EdgeHigh, true);
        }
        Self(pins)
    }

    /// Which keys are pressed now. An edge that comes after this look ends the next sleep at once, so none is missed:
    /// the old edges are forgotten *before* the levels are read.
    pub fn pressed(&mut self) -> [bool; 5] {
        self.0.each_mut().map(|pin| {
            pin.clear_interrupt(Interrupt::EdgeLow);
            pin.clear_interrupt(Interrupt::EdgeHigh);
            pin.is_low().unwrap_or(false)
        })
    }
}
