//! The handheld on a Raspberry Pi Pico class board.
//!
//! | Pico pin | RP2040 | used for |
//! | --- | --- | --- |
//! | 1 | GP0 | UART0 TX, 115 200 baud 8N1: to the host's RX |
//! | 2 | GP1 | UART0 RX: from the host's TX |
//! | 6 | GP4 | I2C0 SDA, 400 kHz: display (SSD1306, SSD1309 or SH1106, 0x3C or 0x3D), EEPROM (24C256, 0x50), and a clock (DS3231, 0x68) or none; 4.7 kΩ to 3V3 |
//! | 7 | GP5 | I2C0 SCL, likewise |
//! | 14 | GP10 | key Less, to ground when pressed (so are all keys; the chip's pull-ups are on) |
//! | 15 | GP11 | key More |
//! | 16 | GP12 | key Next |
//! | 17 | GP13 | key Back |
//! | 19 | GP14 | key Select |
//! | 20 | GP15 | contact A of a rotary encoder, or nothing; to ground when closed |
//! | 21 | GP16 | its contact B, likewise |
//! | 22 | GP17 | its button, likewise |
//! | 24 | GP18 | an active buzzer, or nothing: high sounds |
//! | 3, 8, 13, 18 | GND | |
//! | 36 | 3V3 | display and EEPROM |
//!
//! Clocks: the 12 MHz crystal, and 48 MHz from the system PLL for the processor, which sleeps nearly all the time.

#![no_std]
#![no_main]

mod board;
mod bus;
mod clock;
mod info;
mod keys;
mod line;
mod panic;

use board::Board;
use embedded_hal::digital::OutputPin as _;
use embedded_hal_bus::i2c::RefCellDevice;
use fugit::ExtU32;
use tenter_firmware::app::App;
use tenter_firmware::calendar::Ds3231;
use tenter_firmware::log::eeprom::{Eeprom, PAGES_24C256, SlaveAddr};
use tenter_firmware::panel::Oled;

/// The second stage boot loader: sets up the flash chip, here the W25Q16 of a Pico.
#[unsafe(link_section = ".boot2")]
#[used]
#[allow(unsafe_code, reason = "a section name is the only way to place the boot loader")]
static BOOT2: [u8; 256] = rp2040_boot2::BOOT_LOADER_W25Q080;

/// The longest sleep; interrupts end it sooner. The watchdog must be fed in between.
const SLEEP_MS: u32 = 4_000;
/// A program that stands still for so long is started again; the chip's longest is 8.38 s.
const WATCHDOG_S: u32 = 8;

#[rp2040_hal::entry]
fn main() -> ! {
    let Some(board) = Board::take() else { panic::start_again() };
    let Board { mut keys, mut knob, mut buzzer, mut line, mut clock, mut watchdog, restart, bus } = board;
    let memory = Eeprom::new(RefCellDevice::new(&bus), SlaveAddr::default(), PAGES_24C256, clock.timer());
    let calendar = Ds3231::new(RefCellDevice::new(&bus));
    let mut app = App::with_calendar(Oled::new(RefCellDevice::new(&bus)), memory, calendar);
    if let Some(why) = restart {
        app.restarted(why);
    }
    app.start();
    watchdog.start(WATCHDOG_S.secs());
    loop {
        watchdog.feed();
        while let Some(byte) = line.read() {
            if let Some(reply) = app.receive(byte, clock.now_ms()) {
                line.write(reply);
            }
        }
        let now = clock.now_ms();
        app.turn(knob.contacts(), now);
        app.push(knob.pressed(), now);
        let due = app.step(keys.pressed(), now).map_or(SLEEP_MS, |due| due.min(SLEEP_MS));
        let _ = buzzer.set_state(app.buzzes().into()); // A pin of this chip can always be set.
        clock.sleep_until(now.wrapping_add(due), || line.has_unread());
    }
}
