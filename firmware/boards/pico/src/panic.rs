//! What happens when nothing more can: the board starts again, and says why. The test in hand is in the memory, so nothing
//! that stands on the display is left there to be believed.

use core::panic::PanicInfo;
#[cfg(feature = "defmt")]
use defmt_rtt as _;
use rp2040_hal::Watchdog;
use rp2040_hal::pac::WATCHDOG;
use rp2040_hal::watchdog::ScratchRegister;
use tenter_firmware::ui::Restart;

/// Left in a register that outlives a reset.
const PANICKED: u32 = 0x7E47_E70F;

#[panic_handler]
fn panic(info: &PanicInfo) -> ! {
    #[cfg(feature = "defmt")]
    defmt::error!("{}", defmt::Display2Format(info));
    let _ = info;
    start_again()
}

/// Why the program started, where it did so by itself; forgotten by this look.
pub fn reason(watchdog: &mut Watchdog, stood_still: bool) -> Option<Restart> {
    let panicked = watchdog.read_scratch(ScratchRegister::Scratch0) == PANICKED;
    watchdog.write_scratch(ScratchRegister::Scratch0, 0);
    match (panicked, stood_still) {
        (true, _) => Some(Restart::Panic),
        (false, true) => Some(Restart::Watchdog),
        (false, false) => None,
    }
}

/// Resets the chip.
pub fn start_again() -> ! {
    cortex_m::interrupt::disable();
    #[allow(unsafe_code, reason = "whoever owns the peripheral does not run any more")]
    // SAFETY: interrupts are off and this never returns, so nobody else uses it; any number may be kept in it.
    unsafe {
        let watchdog = &*WATCHDOG::ptr();
        watchdog.scratch0().write(|w| w.bits(PANICKED));
        watchdog.ctrl().modify(|_, w| w.trigger().set_bit());
    }
    loop {
        cortex_m::asm::nop();
    }
}
