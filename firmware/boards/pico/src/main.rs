//! The handheld on a Raspberry Pi Pico class board.
//!
//! | Pico pin | RP2040 | used for |
//! | --- | --- | --- |
//! | 1 | GP0 | UART0 TX, 115 200 baud 8N1: to the host's RX |
//! | 2 | GP1 | UART0 RX: from the host's TX |
//! | 6 | GP4 | I2C0 SDA, 400 kHz: display (SSD1306, 0x3C) and EEPROM (24C256, 0x50); 4.7 kΩ to 3V3 |
//! | 7 | GP5 | I2C0 SCL, likewise |
//! | 14 | GP10 | key Less, to ground when pressed (so are all keys; the chip's pull-ups are on) |
//! | 15 | GP11 | key More |
//! | 16 | GP12 | key Next |
//! | 17 | GP13 | key Back |
//! | 19 | GP14 | key Select |
//! | 3, 8, 13, 18 | GND | |
//! | 36 | 3V3 | display and EEPROM |
//!
//! Clocks: the 12 MHz crystal, and 48 MHz from the system PLL for the processor, which sleeps nearly all the time.

#![no_std]
#![no_main]

mod board;
mod bus;
mod clock;
mod keys;
mod line;
mod panic;

use board::Board;
use embedded_hal_bus::i2c::RefCellDevice;
use tenter_firmware::app::App;
use tenter_firmware::log::eeprom::{Eeprom, PAGES_24C256, SlaveAddr};
use tenter_firmware::panel::Ssd1306;

/// The second stage boot loader: sets up the flash chip, here the W25Q16 of a Pico.
#[unsafe(link_section = ".boot2")]
#[used]
#[allow(unsafe_code, reason = "a section name is the only way to place the boot loader")]
static BOOT2: [u8; 256] = rp2040_boot2::BOOT_LOADER_W25Q080;

/// The longest sleep; interrupts end it sooner.
const HOUR_MS: u32 = 3_600_000;

#[rp2040_hal::entry]
fn main() -> ! {
    let Some(board) = Board::take() else { panic::stop() };
    let Board { mut keys, mut line, mut clock, bus } = board;
    let memory = Eeprom::new(RefCellDevice::new(&bus), SlaveAddr::default(), PAGES_24C256, clock.timer());
    let mut app = App::new(Ssd1306::new(RefCellDevice::new(&bus)), memory);
    app.start();
    loop {
        while let Some(byte) = line.read() {
            if let Some(reply) = app.receive(byte, clock.now_ms()) {
                line.write(reply);
            }
        }
        let now = clock.now_ms();
        let due = app.step(keys.pressed(), now).unwrap_or(HOUR_MS);
        clock.sleep_until(now.wrapping_add(due), || line.has_unread());
    }
}
