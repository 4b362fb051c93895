//! The OLED of the board one can build, on I²C: SSD1306 (0.96″), SSD1309 (2.42″) or SH1106 (1.3″), at 3Ch or 3Dh.
//!
//! All are written page by page, which the three have in common; the SH1106 has 132 columns, of which the panel shows the
//! third to the last but two. Which of them it is, and whether it is still on, its status byte says: bit 6 is set while
//! the display is off, and the lower half is 8 on an SH1106 (data sheets of Solomon Systech's SSD1306 and SSD1309 and Sino
//! Wealth's SH1106; the lower half from common practice, no source). Commands from the same data sheets, from memory.

use embedded_hal::i2c::I2c;

use super::Panel;
use crate::frame::Page;

/// The two addresses that such a panel can have.
const ADDRESSES: [u8; 2] = [0x3C, 0x3D];

const IS_OFF: u8 = 0x40;

/// What comes before commands and before data.
const COMMANDS: u8 = 0x00;
const DATA: u8 = 0x40;

/// Off; clock, 64 rows, no offset, start line 0; upright; pins of 64 rows; contrast, precharge, VCOMH; what is in memory,
/// not inverted.
const SETUP: [u8; 19] =
    [0xAE, 0xD5, 0x80, 0xA8, 0x3F, 0xD3, 0x00, 0x40, 0xA1, 0xC8, 0xDA, 0x12, 0x81, 0x8F, 0xD9, 0xF1, 0xDB, 0x20, 0xA4];
/// Page addressing and the charge pump of an SSD1306 (an SSD1309 has none and takes no notice), not inverted, on.
const SSD1306_ON: [u8; 6] = [0x20, 0x02, 0x8D, 0x14, 0xA6, 0xAF];
/// The converter of an SH1106, not inverted, on.
const SH1106_ON: [u8; 4] = [0xAD, 0x8B, 0xA6, 0xAF];

/// A panel on its bus.
#[derive(Debug)]
pub struct Oled<I> {
    bus: I,
    address: u8,
    /// The column of the controller that the panel shows first.
    first_column: u8,
}

impl<I: I2c> Oled<I> {
    /// A panel; [`Panel::start`] finds it and wakes it up.
    pub const fn new(bus: I) -> Self {
        Self { bus, address: ADDRESSES[0], first_column: 0 }
    }

    fn status(&mut self) -> Result<u8, I::Error> {
        let mut status = [0];
        self.bus.read(self.address, &mut status)?;
        let [status] = status;
        Ok(status)
    }

    fn commands(&mut self, commands: &[u8]) -> Result<(), I::Error> {
        let mut bytes = [COMMANDS; 20];
        let length = commands.len().saturating_add(1);
        for (place, command) in bytes.iter_mut().skip(1).zip(commands) {
            *place = *command;
        }
        self.bus.write(self.address, bytes.get(..length).unwrap_or(&bytes))
    }
}

impl<I: I2c> Panel for Oled<I> {
    type Error = I::Error;

    fn start(&mut self) -> Result<(), I::Error> {
        let mut status = self.status();
        if status.is_err() {
            // The other address, should it be that one; else this one again at the next try.
            let [first, second] = ADDRESSES;
            self.address = if self.address == first { second } else { first };
            status = self.status();
        }
        let is_sh1106 = status? & 0x0F == 0x08;
        self.first_column = if is_sh1106 { 2 } else { 0 };
        self.commands(&SETUP)?;
        self.commands(if is_sh1106 { &SH1106_ON } else { &SSD1306_ON })
    }

    fn is_lost(&mut self) -> bool {
        self.status().map_or(true, |status| status & IS_OFF != 0)
    }

    fn show(&mut self, page: u8, strip: &Page) -> Result<(), I::Error> {
        let column = self.first_column;
        self.commands(&[0xB0 | page & 7, column & 0x0F, 0x10 | column >> 4])?;
        let mut bytes = [DATA; 129];
        for (place, byte) in bytes.iter_mut().skip(1).zip(strip) {
            *place = *byte;
        }
        self.bus.write(self.address, &bytes)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::frame::Frame;
    use crate::panel::CachedPanel;
    use core::cell::RefCell;
    use embedded_hal::i2c::{ErrorKind, ErrorType, NoAcknowledgeSource, Operation};
    use std::rc::Rc;
    use std::vec;
    use std::vec::Vec;

    /// A controller as its data sheet has it, as far as this program uses it.
    #[derive(Debug)]
    struct Controller {
        address: u8,
        columns: usize,
        status: u8,
        is_on: bool,
        is_deaf: bool,
        ram: Vec<u8>,
        page: usize,
        column: usize,
    }

    #[derive(Clone, Debug)]
    struct Bus(Rc<RefCell<Controller>>);

    impl Bus {
        fn with(address: u8, is_sh1106: bool) -> Self {
            let columns = if is_sh1106 { 132 } else { 128 };
            let status = if is_sh1106 { 0x08 } else { 0x03 };
            let ram = vec![0x5A; columns * 8];
            let (page, column) = (0, 0);
            Self(Rc::new(RefCell::new(Controller {
                address,
                columns,
                status,
                is_on: false,
                is_deaf: false,
                ram,
                page,
                column,
            })))
        }

        /// Its own reset line, or its supply, dips: dark, and full of noise.
        fn reset(&self) {
            let mut chip = self.0.borrow_mut();
            chip.is_on = false;
            chip.ram.fill(0x5A);
        }

        /// What is seen of strip `page`; nothing while it is off.
        fn seen(&self, page: usize) -> Option<Vec<u8>> {
            let chip = self.0.borrow();
            let left = (chip.columns - 128) / 2;
            let strip = &chip.ram[page * chip.columns + left..][..128];
            chip.is_on.then(|| strip.to_vec())
        }
    }

    impl ErrorType for Bus {
        type Error = ErrorKind;
    }

    impl I2c for Bus {
        fn transaction(&mut self, address: u8, operations: &mut [Operation<'_>]) -> Result<(), ErrorKind> {
            let chip = &mut *self.0.borrow_mut();
            if address != chip.address || chip.is_deaf {
                return Err(ErrorKind::NoAcknowledge(NoAcknowledgeSource::Address));
            }
            for operation in operations {
                match operation {
                    Operation::Read(bytes) => bytes.fill(chip.status | if chip.is_on { 0 } else { IS_OFF }),
                    Operation::Write([COMMANDS, commands @ ..]) => {
                        let mut arguments = 0;
                        for command in commands.iter() {
                            if arguments > 0 {
                                arguments -= 1;
                                continue;
                            }
                            match *command {
                                low @ 0..=0x0F => chip.column = chip.column & 0xF0 | usize::from(low),
                                high @ 0x10..=0x17 => chip.column = chip.column & 0x0F | usize::from(high & 7) << 4,
                                page @ 0xB0..=0xB7 => chip.page = usize::from(page & 7),
                                off @ 0xAE..=0xAF => chip.is_on = off == 0xAF,
                                0x20 | 0x81 | 0x8D | 0xA8 | 0xAD | 0xD3 | 0xD5 | 0xD9 | 0xDA | 0xDB => arguments = 1,
                                _ => {}
                            }
                        }
                    }
                    Operation::Write([DATA, data @ ..]) => {
                        for byte in data.iter() {
                            chip.ram[chip.page * chip.columns + chip.column] = *byte;
                            chip.column += 1;
                        }
                    }
                    Operation::Write(other) => panic!("{other:?}"),
                }
            }
            Ok(())
        }
    }

    fn picture() -> Frame {
        let mut frame = Frame::default();
        for (x, y) in [(0, 0), (127, 63), (64, 20)] {
            frame.set(x, y, true);
        }
        frame
    }

    #[track_caller]
    fn assert_seen(bus: &Bus, frame: &Frame) {
        for (page, strip) in frame.pages().iter().enumerate() {
            assert_eq!(bus.seen(page).as_deref(), Some(&strip[..]), "strip {page}");
        }
    }

    #[test]
    fn each_kind_is_found_at_each_address() {
        for (address, is_sh1106) in [(0x3C, false), (0x3D, false), (0x3C, true), (0x3D, true)] {
            let bus = Bus::with(address, is_sh1106);
            let mut screen = CachedPanel::new(Oled::new(bus.clone()));
            assert!(screen.show(&picture()), "{address:#x} {is_sh1106}");
            assert_seen(&bus, &picture());
        }
    }

    /// Deaf at power-on, as some modules are: it is shown as soon as it hears.
    #[test]
    fn a_display_that_wakes_late_is_started_then() {
        let bus = Bus::with(0x3D, false);
        bus.0.borrow_mut().is_deaf = true;
        let mut screen = CachedPanel::new(Oled::new(bus.clone()));
        for _ in 0..8 {
            assert!(!screen.show(&picture()));
        }
        bus.0.borrow_mut().is_deaf = false;
        assert!(screen.show(&picture()));
        assert_seen(&bus, &picture());
    }

    /// Reset alone in the middle: the next picture is whole, though most of its strips had been sent before.
    #[test]
    fn a_display_that_was_reset_alone_is_started_again() {
        for is_sh1106 in [false, true] {
            let bus = Bus::with(0x3C, is_sh1106);
            let mut screen = CachedPanel::new(Oled::new(bus.clone()));
            assert!(screen.show(&picture()));
            bus.reset();
            assert_eq!(bus.seen(0), None);
            let mut next = picture();
            next.set(5, 5, true);
            assert!(screen.show(&next));
            assert_seen(&bus, &next);
        }
    }
}
