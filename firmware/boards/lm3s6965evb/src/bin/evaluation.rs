//! What one evaluation costs, for a test in the emulator: sends a line `NAME CYCLES` for each test of five pulls, the cycles
//! of [`TIMES`] evaluations. The emulator counts a fixed number of instructions as one cycle.
#![no_std]
#![no_main]

#[allow(dead_code, missing_docs)] // Of the board only the line is used.
#[path = "../hal/mod.rs"]
mod hal;

use core::fmt::Write as _;
use core::hint::black_box;

use cortex_m::peripheral::SYST;
use cortex_m_rt::entry;
use embedded_io::Write as _;
use hal::Board;
use heapless::String;
use tenter_core::{Context, Demand, Evaluation, Grain, Length, Limit, PullTest, Range, Rules, TestError};

/// How often each test is evaluated: far under one round of the counter.
const TIMES: u32 = 20;
/// The round of the counter: 24 bits, in whole milliseconds of 12 500 cycles.
const ROUND: u32 = 0xFF_FFFF / 12_500 * 12_500;

#[entry]
fn main() -> ! {
    if let Some(Board { mut line, .. }) = Board::take() {
        // An everyday one, one too close to call for which no plan is found, one for which the search goes on longest, and the
        // second read after release.
        let tests = [
            ("meets", five_pulls(250, [270, 271, 270, 269, 270], None)),
            ("close", five_pulls(100, [105, 106, 105, 104, 106], None)),
            ("planned", five_pulls(250, [266, 266, 266, 266, 266], None)),
            ("released", five_pulls(100, [105, 106, 105, 104, 106], Some(101))),
        ];
        for (name, test) in tests {
            let (Ok(test), Some(demand)) = (test, five_percent()) else { continue };
            let begun = SYST::get_current();
            for _ in 0..TIMES {
                black_box(evaluate(black_box(&test), black_box(&demand)).is_ok());
            }
            let cycles = (begun + ROUND - SYST::get_current()) % ROUND;
            let mut text: String<48> = String::new();
            let _ = writeln!(text, "{name} {cycles}"); // It fits.
            let _ = line.write_all(text.as_bytes()); // Writing to the line cannot fail.
        }
    }
    stop()
}

/// What the handheld works out for its result.
#[inline(never)]
fn evaluate(test: &PullTest, demand: &Demand) -> Result<Evaluation, TestError> {
    Evaluation::believed(test, demand, &Rules::default(), &Context::default())
}

fn five_pulls(gauge: i16, pulls: [i16; 5], back: Option<i16>) -> Result<PullTest, TestError> {
    let mut test = PullTest::new(Length::from_mm(gauge), Grain::Crosswise)?.with_settling_pull(true);
    test.add_look(Length::from_mm(gauge))?;
    for pull in pulls {
        test.add_pull(Length::from_mm(pull))?;
    }
    if let Some(back) = back {
        test.add_rest(1800, Length::from_mm(back))?;
    }
    Ok(test)
}

fn five_percent() -> Option<Demand> {
    let at_least = Limit::milli_percent(5_000).ok();
    Some(Demand::for_grain(Grain::Crosswise, Range { at_least, at_most: None })).filter(|_| at_least.is_some())
}

fn stop() -> ! {
    cortex_m::interrupt::disable();
    loop {
        cortex_m::asm::wfi();
    }
}

#[panic_handler]
fn panic(_: &core::panic::PanicInfo<'_>) -> ! {
    stop()
}
