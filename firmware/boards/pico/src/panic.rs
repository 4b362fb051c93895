//! What happens when nothing more can: the processor stops, the display keeps what it last showed.

use core::panic::PanicInfo;
#[cfg(feature = "defmt")]
use defmt_rtt as _;

#[panic_handler]
fn panic(info: &PanicInfo) -> ! {
    #[cfg(feature = "defmt")]
    defmt::error!("{}", defmt::Display2Format(info));
    let _ = info;
    stop()
}

/// Interrupts off and asleep for good.
pub fn stop() -> ! {
    cortex_m::interrupt::disable();
    loop {
        cortex_m::asm::wfi();
    }
}
