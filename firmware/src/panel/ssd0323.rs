//! The grey OLED of the emulated board: an SSD0323-class controller, 128 × 64, four bits a pixel.
//!
//! Commands and their order after the controller's data sheet (Solomon Systech SSD0323, from memory), as far as the
//! emulated model takes them: 15h column addresses, 75h row addresses, A0h remap, A4h normal display, AEh/AFh off/on.

use embedded_hal::digital::OutputPin;
use embedded_hal::spi::SpiDevice;

use super::Panel;
use crate::frame::{Page, WIDTH};

/// A panel on a serial bus, with a line that tells commands (low) from data (high).
#[derive(Debug)]
pub struct Ssd0323<S, D> {
    bus: S,
    data: D,
}

impl<S: SpiDevice, D: OutputPin> Ssd0323<S, D> {
    /// A panel; [`Panel::start`] wakes it up.
    pub const fn new(bus: S, data: D) -> Self {
        Self { bus, data }
    }

    fn command(&mut self, bytes: &[u8]) -> Result<(), S::Error> {
        let _ = self.data.set_low(); // A pin that cannot be set shows as a dark display.
        self.bus.write(bytes)
    }
}

impl<S: SpiDevice, D: OutputPin> Panel for Ssd0323<S, D> {
    type Error = S::Error;

    fn start(&mut self) -> Result<(), S::Error> {
        self.command(&[0xAE, 0xA0, 0x52, 0xA4, 0x15, 0x00, 0x3F, 0x75, 0x00, 0x3F, 0xAF])
    }

    fn show(&mut self, page: u8, strip: &Page) -> Result<(), S::Error> {
        let top = page.saturating_mul(8);
        self.command(&[0x15, 0x00, 0x3F, 0x75, top, top.saturating_add(7)])?;
        let _ = self.data.set_high();
        for row in 0..8 {
            // Two pixels a byte, the left one in the upper half.
            let mut bytes = [0; WIDTH / 2];
            for (byte, pair) in bytes.iter_mut().zip(strip.chunks_exact(2)) {
                let grey = |column: Option<&u8>| column.map_or(0, |column| (column >> row & 1) * 0xF);
                *byte = grey(pair.first()) << 4 | grey(pair.get(1));
            }
            self.bus.write(&bytes)?;
        }
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use embedded_hal_mock::eh1::digital::{Mock as Pin, State, Transaction as PinTransaction};
    use embedded_hal_mock::eh1::spi::{Mock as Spi, Transaction};
    use std::vec::Vec;

    /// A lit pixel in column 0, row 10 is the left half-byte of the third row of strip 1.
    #[test]
    fn a_strip_becomes_eight_rows_of_grey() {
        let mut expected = Vec::new();
        let mut write = |bytes: Vec<u8>| {
            expected.extend([
                Transaction::transaction_start(),
                Transaction::write_vec(bytes),
                Transaction::transaction_end(),
            ]);
        };
        write([0x15, 0x00, 0x3F, 0x75, 8, 15].to_vec());
        for row in 0..8 {
            let mut bytes = std::vec![0; 64];
            bytes[0] = if row == 2 { 0xF0 } else { 0 };
            write(bytes);
        }
        let mut bus = Spi::new(&expected);
        let mut data = Pin::new(&[PinTransaction::set(State::Low), PinTransaction::set(State::High)]);
        let mut strip = [0; WIDTH];
        strip[0] = 0b100;
        Ssd0323::new(&mut bus, &mut data).show(1, &strip).unwrap();
        bus.done();
        data.done();
    }
}
