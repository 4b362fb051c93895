//! The small OLED of the board one can build, an SSD1306 on I²C, through the crate `ssd1306`.

use display_interface::DisplayError;
use embedded_hal::i2c::I2c;
use ssd1306::mode::BasicMode;
use ssd1306::prelude::{DisplayRotation, I2CInterface};
use ssd1306::size::DisplaySize128x64;
use ssd1306::{I2CDisplayInterface, Ssd1306 as Driver};

use super::Panel;
use crate::frame::Page;

/// A panel at the usual address, 3Ch.
pub struct Ssd1306<I> {
    driver: Driver<I2CInterface<I>, DisplaySize128x64, BasicMode>,
}

impl<I> core::fmt::Debug for Ssd1306<I> {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        f.write_str("Ssd1306")
    }
}

impl<I: I2c> Ssd1306<I> {
    /// A panel; [`Panel::start`] wakes it up.
    pub fn new(bus: I) -> Self {
        let interface = I2CDisplayInterface::new(bus);
        Self { driver: Driver::new(interface, DisplaySize128x64, DisplayRotation::Rotate0) }
    }
}

impl<I: I2c> Panel for Ssd1306<I> {
    type Error = DisplayError;

    fn start(&mut self) -> Result<(), DisplayError> {
        self.driver.init_with_addr_mode(ssd1306::command::AddrMode::Horizontal)
    }

    fn show(&mut self, page: u8, strip: &Page) -> Result<(), DisplayError> {
        let top = page.saturating_mul(8);
        self.driver.set_draw_area((0, top), (128, top.saturating_add(8)))?;
        self.driver.draw(strip)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use core::cell::RefCell;
    use core::convert::Infallible;
    use embedded_hal::i2c::{ErrorType, Operation};
    use std::rc::Rc;
    use std::vec::Vec;

    /// A bus that remembers what was written to address 3Ch.
    #[derive(Clone, Default)]
    struct Recorder(Rc<RefCell<Vec<Vec<u8>>>>);

    impl ErrorType for Recorder {
        type Error = Infallible;
    }

    impl I2c for Recorder {
        fn transaction(&mut self, address: u8, operations: &mut [Operation<'_>]) -> Result<(), Infallible> {
            assert_eq!(address, 0x3C);
            for operation in operations {
                let Operation::Write(bytes) = operation else { panic!("nothing is read from the panel") };
                self.0.borrow_mut().push(bytes.to_vec());
            }
            Ok(())
        }
    }

    /// Column and page address (21h, 22h), then the strip as data (control byte 40h) in pieces: the controller's data
    /// sheet (Solomon Systech SSD1306, sections on I2C data and on the addressing commands), from memory.
    #[test]
    fn a_strip_goes_to_its_page() {
        let bus = Recorder::default();
        let mut panel = Ssd1306::new(bus.clone());
        panel.start().unwrap();
        assert!(bus.0.borrow().iter().any(|bytes| bytes[..] == [0x00, 0xAF]), "display on");
        bus.0.borrow_mut().clear();
        let mut strip = [0; 128];
        for (column, byte) in (0u8..).zip(&mut strip) {
            *byte = column;
        }
        panel.show(3, &strip).unwrap();
        let written = bus.0.borrow();
        assert_eq!(written[0], [0x00, 0x21, 0, 127]);
        assert_eq!(written[1], [0x00, 0x22, 3, 3]);
        let data: Vec<u8> =
            written[2..].iter().flat_map(|bytes| bytes.strip_prefix(&[0x40]).unwrap().to_vec()).collect();
        assert_eq!(data, strip);
    }
}
