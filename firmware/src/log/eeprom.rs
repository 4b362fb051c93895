//! A 24C256-class chip on an I2C bus: pages of 64 bytes, two address bytes.

pub use eeprom24x::SlaveAddr;
use eeprom24x::{Eeprom24x, Error, addr_size::TwoBytes, page_size::B64, unique_serial::No};
use embedded_hal::delay::DelayNs;
use embedded_hal::i2c::I2c;

use super::{PAGE_BYTES, Storage, StoragePage};

/// The pages of a 24C256.
///
/// ```
/// use tenter_firmware::log::{PAGE_BYTES, eeprom};
///
/// assert_eq!(usize::from(eeprom::PAGES_24C256) * PAGE_BYTES * 8, 256 * 1024);
/// ```
pub const PAGES_24C256: u16 = 512;

/// The pages of a 24C128.
///
/// ```
/// use tenter_firmware::log::{PAGE_BYTES, eeprom};
///
/// assert_eq!(usize::from(eeprom::PAGES_24C128) * PAGE_BYTES * 8, 128 * 1024);
/// ```
pub const PAGES_24C128: u16 = 256;

/// A chip answers nothing while it writes, for 5 ms in most data sheets and 6 ms in some. Asking every half
/// millisecond for 10 ms covers them.
const TRIES: u8 = 20;
const BETWEEN_TRIES_US: u32 = 500;

/// The chip as [`Storage`].
///
/// ```
/// use embedded_hal_mock::eh1::{delay::NoopDelay, i2c::{Mock, Transaction}};
/// use tenter_firmware::log::{Storage, eeprom::{Eeprom, PAGES_24C256}};
///
/// // Page 3 starts at byte 192.
/// let mut bus = Mock::new(&[Transaction::write_read(0x50, vec![0, 192], vec![7; 64])]);
/// let mut chip = Eeprom::new(bus.clone(), Default::default(), PAGES_24C256, NoopDelay::new());
/// let mut page = [0; 64];
/// chip.read(3, &mut page).unwrap();
/// assert_eq!(page, [7; 64]);
/// bus.done();
/// ```
#[derive(Debug)]
pub struct Eeprom<I2C, D> {
    chip: Eeprom24x<I2C, B64, TwoBytes, No>,
    pages: u16,
    delay: D,
}

impl<I2C: I2c, D: DelayNs> Eeprom<I2C, D> {
    /// A chip at an address on the bus ([`SlaveAddr::default`] is 0x50), with so many pages.
    pub fn new(bus: I2C, address: SlaveAddr, pages: u16, delay: D) -> Self {
        Self { chip: Eeprom24x::new_24x256(bus, address), pages, delay }
    }

    /// Gives bus and delay back.
    pub fn destroy(self) -> (I2C, D) {
        (self.chip.destroy(), self.delay)
    }

    /// Asks until the chip answers: it may be writing still, even from before a reset.
    fn ask(
        &mut self,
        mut question: impl FnMut(&mut Eeprom24x<I2C, B64, TwoBytes, No>) -> Result<(), Error<I2C::Error>>,
    ) -> Result<(), Error<I2C::Error>> {
        for _ in 1..TRIES {
            match question(&mut self.chip) {
                Err(Error::I2C(_)) => self.delay.delay_us(BETWEEN_TRIES_US),
                answer => return answer,
            }
        }
        question(&mut self.chip)
    }
}

fn address(page: u16) -> u32 {
    u32::try_from(usize::from(page) * PAGE_BYTES).unwrap_or(u32::MAX)
}

impl<I2C: I2c, D: DelayNs> Storage for Eeprom<I2C, D> {
    type Error = Error<I2C::Error>;

    fn pages(&self) -> u16 {
        self.pages
    }

    fn read(&mut self, page: u16, buffer: &mut StoragePage) -> Result<(), Self::Error> {
        self.ask(|chip| chip.read_data(address(page), buffer))
    }

    fn write(&mut self, page: u16, bytes: &StoragePage) -> Result<(), Self::Error> {
        self.ask(|chip| chip.write_page(address(page), bytes))?;
        // Answers once the page is written.
        self.ask(|chip| chip.read_byte(address(page)).map(drop))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use embedded_hal::i2c::{ErrorKind, NoAcknowledgeSource};
    use embedded_hal_mock::eh1::delay::{CheckedDelay, Transaction as Wait};
    use embedded_hal_mock::eh1::i2c::{Mock, Transaction};
    use std::vec;
    use std::vec::Vec;

    const BUSY: ErrorKind = ErrorKind::NoAcknowledge(NoAcknowledgeSource::Address);

    fn read_byte(at: [u8; 2], answers: bool) -> Transaction {
        let asked = Transaction::write_read(0x50, at.to_vec(), vec![0]);
        if answers { asked } else { asked.with_error(BUSY) }
    }

    fn page_write(at: [u8; 2], byte: u8) -> Transaction {
        Transaction::write(0x50, [&at[..], &[byte; 64]].concat())
    }

    /// Plays a question against the bus with so many waits of half a millisecond.
    fn play<T>(bus: &[Transaction], waits: usize, question: impl FnOnce(&mut Eeprom<Mock, CheckedDelay>) -> T) -> T {
        let mut bus = Mock::new(bus);
        let waits: Vec<_> = (0..waits).map(|_| Wait::delay_us(500)).collect();
        let mut chip = Eeprom::new(bus.clone(), SlaveAddr::default(), PAGES_24C256, CheckedDelay::new(&waits));
        let answer = question(&mut chip);
        chip.delay.done();
        bus.done();
        answer
    }

    #[test]
    fn a_write_waits_until_the_chip_answers() {
        let at = [0x7F, 0xC0]; // 511 · 64 = 32 704
        let bus = [page_write(at, 9), read_byte(at, false), read_byte(at, false), read_byte(at, true)];
        play(&bus, 2, |chip| chip.write(511, &[9; 64])).unwrap();
    }

    #[test]
    fn a_chip_still_writing_is_waited_for() {
        let at = [0, 64];
        let bus = [page_write(at, 9).with_error(BUSY), page_write(at, 9), read_byte(at, true)];
        play(&bus, 1, |chip| chip.write(1, &[9; 64])).unwrap();

        let busy = Transaction::write_read(0x50, at.to_vec(), vec![0; 64]).with_error(BUSY);
        let bus = [busy, Transaction::write_read(0x50, at.to_vec(), vec![5; 64])];
        let mut page = [0; 64];
        play(&bus, 1, |chip| chip.read(1, &mut page)).unwrap();
        assert_eq!(page, [5; 64]);
    }

    #[test]
    fn an_absent_chip_is_given_up() {
        let bus = vec![page_write([0, 0], 1).with_error(BUSY); 20];
        assert!(matches!(play(&bus, 19, |chip| chip.write(0, &[1; 64])), Err(Error::I2C(BUSY))));
    }

    #[test]
    fn a_write_that_never_ends_is_an_error() {
        let mut bus = vec![page_write([0, 0], 1)];
        bus.resize(21, read_byte([0, 0], false));
        assert!(matches!(play(&bus, 19, |chip| chip.write(0, &[1; 64])), Err(Error::I2C(BUSY))));
    }

    #[test]
    fn a_page_beyond_the_chip_is_refused_at_once() {
        assert!(matches!(play(&[], 0, |chip| chip.read(512, &mut [0; 64])), Err(Error::InvalidAddr)));
    }
}
