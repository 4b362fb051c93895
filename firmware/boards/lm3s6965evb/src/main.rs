//! The handheld on QEMU's board lm3s6965evb: pins and clock of the board, everything else from the library.
//!
//! The LM3S6965 is an old part; nobody should buy one. The board to build is the Pico class one beside it.
#![no_std]
#![no_main]

mod hal;

use cortex_m_rt::entry;
use embedded_io::Write as _;
use hal::{Board, Keys};
use tenter_firmware::app::App;
use tenter_firmware::keys::{Levels, is_down};
use tenter_firmware::log::eeprom::{Eeprom, PAGES_24C256, SlaveAddr};
use tenter_firmware::panel::Ssd0323;

/// The longest sleep; interrupts end it sooner.
const HOUR_MS: u32 = 3_600_000;

#[entry]
fn main() -> ! {
    if let Some(board) = Board::take() {
        run(board);
    }
    stop()
}

fn run(board: Board) -> ! {
    let Board { mut keys, panel, data_command, bus, mut line, clock } = board;
    let memory = Eeprom::new(bus, SlaveAddr::default(), PAGES_24C256, clock);
    let mut app = App::new(Ssd0323::new(panel, data_command), memory);
    app.start();
    loop {
        while let Some(byte) = line.take() {
            if let Some(reply) = app.receive(byte, clock.now()) {
                let _ = line.write_all(reply); // Writing to the line cannot fail.
            }
        }
        let now = clock.now();
        let due = app.step(levels(&mut keys), now).unwrap_or(HOUR_MS);
        clock.sleep_until(now.wrapping_add(due));
    }
}

fn levels(keys: &mut Keys) -> Levels {
    [&mut keys.less, &mut keys.more, &mut keys.next, &mut keys.back, &mut keys.select].map(is_down)
}

fn stop() -> ! {
    cortex_m::interrupt::disable();
    loop {
        cortex_m::asm::wfi();
    }
}

/// Starts again: the test in hand is in the memory, and nothing is left on the display to be believed.
#[panic_handler]
fn panic(info: &core::panic::PanicInfo<'_>) -> ! {
    #[cfg(feature = "defmt")]
    if let Some(place) = info.location() {
        defmt::error!("panic at {=str}:{=u32}", place.file(), place.line());
    }
    let _ = info;
    cortex_m::peripheral::SCB::sys_reset()
}
