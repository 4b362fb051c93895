//! SSI0 as an SPI bus.

use super::reg::Block;
use core::convert::Infallible;
use embedded_hal::spi::{ErrorType, SpiBus};

const CONTROL0: u16 = 0x00;
const CONTROL1: u16 = 0x04;
const DATA: u16 = 0x08;
const STATUS: u16 = 0x0C;
const PRESCALE: u16 = 0x10;

const SEND_ROOM: u32 = 1 << 1;
const RECEIVED: u32 = 1 << 2;
const BUSY: u32 = 1 << 4;

/// The bus, mode 3, 3.125 MHz: the display controller takes at most 4 MHz.
pub struct Spi(());

impl Spi {
    pub fn new() -> Self {
        Block::Ssi0.write(CONTROL1, 0);
        Block::Ssi0.write(PRESCALE, 4);
        Block::Ssi0.write(CONTROL0, 0x00C7); // 8 bits, clock idles high, sampled on its second edge
        Block::Ssi0.write(CONTROL1, 1 << 1); // on, as master
        Self(())
    }

    /// Takes one word that came in, if any. The emulator sends no further while eight of them wait.
    fn drop_received(&mut self) -> bool {
        let waits = Block::Ssi0.read(STATUS) & RECEIVED != 0;
        if waits {
            Block::Ssi0.read(DATA);
        }
        waits
    }

    fn exchange(&mut self, byte: u8) -> u8 {
        Block::Ssi0.write(DATA, byte.into());
        Block::Ssi0.wait_set(STATUS, RECEIVED);
        Block::Ssi0.read(DATA) as u8
    }
}

impl ErrorType for Spi {
    type Error = Infallible;
}

impl SpiBus for Spi {
    fn read(&mut self, words: &mut [u8]) -> Result<(), Infallible> {
        words.iter_mut().for_each(|word| *word = self.exchange(0));
        Ok(())
    }

    /// Keeps the send queue full. What came back is dropped before return, so that `exchange` starts clean.
    fn write(&mut self, words: &[u8]) -> Result<(), Infallible> {
        for &word in words {
            Block::Ssi0.wait_set(STATUS, SEND_ROOM);
            Block::Ssi0.write(DATA, word.into());
            self.drop_received();
        }
        self.flush()
    }

    fn transfer(&mut self, read: &mut [u8], write: &[u8]) -> Result<(), Infallible> {
        for i in 0..read.len().max(write.len()) {
            let got = self.exchange(write.get(i).copied().unwrap_or(0));
            if let Some(word) = read.get_mut(i) {
                *word = got;
            }
        }
        Ok(())
    }

    fn transfer_in_place(&mut self, words: &mut [u8]) -> Result<(), Infallible> {
        words.iter_mut().for_each(|word| *word = self.exchange(*word));
        Ok(())
    }

    fn flush(&mut self) -> Result<(), Infallible> {
        while self.drop_received() || Block::Ssi0.read(STATUS) & BUSY != 0 {}
        // The last word may have come in between the two looks.
        while self.drop_received() {}
        Ok(())
    }
}
