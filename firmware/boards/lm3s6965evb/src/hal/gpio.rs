//! Pins: keys in, chip select and data/command out.

use super::{clock, reg::Block};
use core::convert::Infallible;
use embedded_hal::digital::{ErrorType, InputPin, OutputPin};
use lm3s6965::interrupt;

const DIRECTION: u16 = 0x400;
const BOTH_EDGES: u16 = 0x408;
const INTERRUPT_MASK: u16 = 0x410;
const INTERRUPT_CLEAR: u16 = 0x41C;
const ALTERNATE: u16 = 0x420;
const OPEN_DRAIN: u16 = 0x50C;
const PULL_UP: u16 = 0x510;
const DIGITAL: u16 = 0x51C;

/// Hands pins of a port to the peripheral that shares them.
pub fn give_to_peripheral(port: Block, pins: u32) {
    port.set(ALTERNATE, pins);
    port.set(DIGITAL, pins);
}

/// Makes pins pull down only, as I2C asks.
pub fn open_drain(port: Block, pins: u32) {
    port.set(OPEN_DRAIN, pins);
}

struct Pin {
    port: Block,
    bit: u8,
}

impl Pin {
    fn mask(&self) -> u32 {
        1 << self.bit
    }

    /// The data register of this pin alone: the address carries the mask.
    fn data(&self) -> u16 {
        4 << self.bit
    }
}

/// An input with pull-up whose both edges wake the processor. A key to ground reads low while pressed.
pub struct Input(Pin);

impl Input {
    pub fn new(port: Block, bit: u8) -> Self {
        let pin = Pin { port, bit };
        for register in [PULL_UP, DIGITAL, BOTH_EDGES, INTERRUPT_MASK] {
            port.set(register, pin.mask());
        }
        Self(pin)
    }
}

impl ErrorType for Input {
    type Error = Infallible;
}

impl InputPin for Input {
    fn is_high(&mut self) -> Result<bool, Infallible> {
        Ok(self.0.port.read(self.0.data()) != 0)
    }

    fn is_low(&mut self) -> Result<bool, Infallible> {
        self.is_high().map(|high| !high)
    }
}

/// An output, high from the start.
pub struct Output(Pin);

impl Output {
    pub fn new(port: Block, bit: u8) -> Self {
        let mut pin = Self(Pin { port, bit });
        port.set(DIRECTION, pin.0.mask());
        pin.write(true);
        port.set(DIGITAL, pin.0.mask());
        pin
    }

    fn write(&mut self, high: bool) {
        self.0.port.write(self.0.data(), if high { self.0.mask() } else { 0 });
    }
}

impl ErrorType for Output {
    type Error = Infallible;
}

impl OutputPin for Output {
    fn set_low(&mut self) -> Result<(), Infallible> {
        self.write(false);
        Ok(())
    }

    fn set_high(&mut self) -> Result<(), Infallible> {
        self.write(true);
        Ok(())
    }
}

/// Edges are only a reason to wake up: the program reads levels.
fn edge(port: Block) {
    port.write(INTERRUPT_CLEAR, 0xFF);
    clock::wake();
}

#[interrupt]
fn GPIOE() {
    edge(Block::GpioE);
}

#[interrupt]
fn GPIOF() {
    edge(Block::GpioF);
}
