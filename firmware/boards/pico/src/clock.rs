//! Milliseconds since start, and sleep until one of them.

use fugit::ExtU64;
use rp2040_hal::Timer;
use rp2040_hal::pac::{Interrupt, NVIC};
use rp2040_hal::timer::{Alarm, Alarm0, Instant};

/// The chip's microsecond timer and its first alarm.
pub struct Clock {
    timer: Timer,
    alarm: Alarm0,
}

impl Clock {
    pub(crate) fn new(mut timer: Timer) -> Option<Self> {
        let mut alarm = timer.alarm_0()?;
        alarm.enable_interrupt();
        Some(Self { timer, alarm })
    }

    /// Milliseconds since start; begins again at 0 after 49.7 days.
    pub fn now_ms(&self) -> u32 {
        (self.timer.get_counter().ticks() / 1000) as u32
    }

    /// A copy of the timer, which can wait: it implements `embedded_hal::delay::DelayNs`.
    pub fn timer(&self) -> Timer {
        self.timer
    }

    /// Sleeps until `now_ms()` is `ms`, or until a key's edge or a received byte, whichever is first. Returns at once
    /// when `ms` is not in the future or `busy` says that something is left to do. No alarm lies further off than half
    /// an hour (the chip's limit is 71 minutes); the caller then simply asks again.
    pub fn sleep_until(&mut self, ms: u32, busy: impl Fn() -> bool) {
        const HALF_AN_HOUR_MS: u32 = 1_800_000;
        // With interrupts held back a wake-up that comes after the look at `busy` still ends `wfi`: nothing is missed.
        cortex_m::interrupt::free(|_| {
            let now = self.timer.get_counter().ticks();
            let ahead = ms.wrapping_sub((now / 1000) as u32);
            if ahead == 0 || ahead > u32::MAX / 2 || busy() {
                return;
            }
            let start_of_ms = Instant::from_ticks(now - now % 1000);
            if self.alarm.schedule_at(start_of_ms + u64::from(ahead.min(HALF_AN_HOUR_MS)).millis()).is_err() {
                return;
            }
            listen(true);
            cortex_m::asm::wfi();
            listen(false);
            let _ = self.alarm.cancel();
            self.alarm.clear_interrupt();
            NVIC::unpend(Interrupt::TIMER_IRQ_0);
            NVIC::unpend(Interrupt::IO_IRQ_BANK0);
        });
    }
}

/// The alarm and the keys only ever end a sleep: their interrupts are let through to `wfi` with interrupts held back,
/// and shut again before a handler (there is none) could run.
#[allow(unsafe_code, reason = "enabling an interrupt is unsafe in cortex-m")]
fn listen(on: bool) {
    for interrupt in [Interrupt::TIMER_IRQ_0, Interrupt::IO_IRQ_BANK0] {
        if on {
            // SAFETY: called with interrupts masked, and shut again before they are unmasked, so no critical section
            // of anybody can be broken by a handler.
            unsafe { NVIC::unmask(interrupt) };
        } else {
            NVIC::mask(interrupt);
        }
    }
}
