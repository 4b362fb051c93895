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
