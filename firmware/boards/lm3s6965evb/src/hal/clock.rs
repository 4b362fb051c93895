//! Time since start, and sleep.
//!
//! SysTick counts down freely and is read for the time; it interrupts only when it wraps, every 1.342 s.
//! Timer 0 is set for the one moment at which the sleeper wants to wake. So nothing ticks while nothing is due.

use super::reg::{self, Block};
use core::sync::atomic::{AtomicBool, AtomicU32, Ordering::Relaxed};
use cortex_m::{
    asm,
    peripheral::{SCB, SYST, syst::SystClkSource},
};
use cortex_m_rt::exception;
use embedded_hal::delay::DelayNs;
use lm3s6965::{Interrupt, interrupt};

/// Processor cycles in a second.
pub const HZ: u32 = 12_500_000;
const CYCLES_A_MS: u32 = HZ / 1000;
/// The most whole milliseconds that SysTick's 24 bits can count.
const WRAP_MS: u32 = 0xFF_FFFF / CYCLES_A_MS;
const WRAP: u32 = WRAP_MS * CYCLES_A_MS;
/// Timer 0 has 32 bits, 343 s: sleep longer in pieces.
const LONGEST_MS: u32 = 300_000;

const CONFIG: u16 = 0x00;
const MODE: u16 = 0x04;
const CONTROL: u16 = 0x0C;
const INTERRUPT_MASK: u16 = 0x18;
const INTERRUPT_CLEAR: u16 = 0x24;
const LOAD: u16 = 0x28;

/// When SysTick last wrapped, in milliseconds since start.
static WRAPPED_AT: AtomicU32 = AtomicU32::new(0);
/// A key or the line has interrupted since the program last woke up.
static WOKEN: AtomicBool = AtomicBool::new(false);

/// A handle to the time; copies are the same clock.
#[derive(Clone, Copy)]
pub struct Clock(());

impl Clock {
    pub fn start(mut systick: SYST) -> Self {
        systick.set_clock_source(SystClkSource::Core);
        systick.set_reload(WRAP - 1);
        systick.clear_current();
        systick.enable_interrupt();
        systick.enable_counter();
        leave_zero();
        Block::Timer0.write(CONFIG, 0); // one timer of 32 bits
        Block::Timer0.write(MODE, 1); // runs once
        Block::Timer0.write(INTERRUPT_MASK, 1);
        reg::enable(Interrupt::TIMER_0A);
        Self(())
    }

    /// Milliseconds since start. Starts again from 0 after 2³² ms, about 50 days.
    pub fn now(self) -> u32 {
        now().0
    }

    /// Sleeps until the time comes, or until a key or the line interrupts. Returns at once if one already did
    /// since the last return, so an interrupt between the program's last look and this call is not slept through.
    pub fn sleep_until(self, deadline: u32) {
        while !WOKEN.swap(false, Relaxed) && nap(deadline, || !WOKEN.load(Relaxed)) {}
    }
}

impl DelayNs for Clock {
    /// Spins: too short to be worth a sleep.
    fn delay_ns(&mut self, ns: u32) {
        let mut left = (ns / 80).saturating_add(1);
        let mut last = SYST::get_current();
        while left > 0 {
            let count = SYST::get_current();
            let passed = if count <= last { last - count } else { last + WRAP - count };
            left = left.saturating_sub(passed);
            last = count;
        }
    }

    /// Sleeps; a key or the line does not shorten it.
    fn delay_ms(&mut self, ms: u32) {
        let deadline = self.now().wrapping_add(ms).wrapping_add(1);
        while nap(deadline, || true) {}
    }
}

/// Tells the sleeper that something happened.
pub fn wake() {
    WOKEN.store(true, Relaxed);
}

/// Sleeps for a millisecond or until any interrupt.
pub fn doze() {
    nap(now().0.wrapping_add(1), || true);
}

/// Milliseconds since start, and the cycles since that millisecond began.
fn now() -> (u32, u32) {
    critical_section::with(|_| {
        let mut base = WRAPPED_AT.load(Relaxed);
        let mut count = SYST::get_current();
        let wrapped = SCB::is_pendst_pending();
        if wrapped {
            // The handler, held off by this critical section, has not counted this wrap yet.
            base = base.wrapping_add(WRAP_MS);
            count = SYST::get_current();
        }
        // A count of 0 is the moment of the wrap: the end of one round and the start of the next.
        let cycles = if wrapped && count == 0 { 0 } else { WRAP - count };
        (base.wrapping_add(cycles / CYCLES_A_MS), cycles % CYCLES_A_MS)
    })
}

/// Sets the alarm and waits for any interrupt, if `may_sleep` still says so with interrupts held off.
/// False when the deadline is over.
fn nap(deadline: u32, may_sleep: impl Fn() -> bool) -> bool {
    critical_section::with(|_| {
        let (now, into_ms) = now();
        let left = deadline.wrapping_sub(now);
        if left == 0 || left > u32::MAX / 2 {
            return false;
        }
        Block::Timer0.write(CONTROL, 0);
        Block::Timer0.write(INTERRUPT_CLEAR, 1);
        Block::Timer0.write(LOAD, left.min(LONGEST_MS) * CYCLES_A_MS - into_ms);
        Block::Timer0.write(CONTROL, 1);
        if may_sleep() {
            asm::wfi(); // wakes on a pending interrupt although it is held off
        }
        true
    })
}

/// Waits for the count to start its round. Afterwards a reader meets 0 only at the end of a round not yet counted.
/// It takes one cycle on the chip; the emulator may show 0 for milliseconds when its host is busy.
fn leave_zero() {
    while SYST::get_current() == 0 {}
}

#[exception]
fn SysTick() {
    leave_zero();
    WRAPPED_AT.store(WRAPPED_AT.load(Relaxed).wrapping_add(WRAP_MS), Relaxed);
}

#[interrupt]
fn TIMER_0A() {
    Block::Timer0.write(INTERRUPT_CLEAR, 1);
}
