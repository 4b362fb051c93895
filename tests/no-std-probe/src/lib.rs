//! Calls every public operation of core with values that the compiler cannot know. Built with link-time
//! optimisation, the archive that comes out names the panic handler unless the compiler proved that no input reaches
//! one. `check` looks for it. Overflow of whole numbers wraps here, as in every release build, so it is no panic;
//! `tests/tests/hostile_input.rs` runs with the checks for it.
//!
//! That it builds at all shows that core is `no_std`: `std` would bring a second panic handler.

#![no_std]

mod figures;
mod making;
mod records;
mod texts;

use core::slice;

use tenter_core::{Ends, Grain, Held, Length, Load, PullTest, Scale};

unsafe extern "C" {
    /// Defined nowhere, so that its name stands in the archive if the panic handler is ever called.
    fn tenter_panic_is_reachable() -> !;
}

#[panic_handler]
fn panic(_: &core::panic::PanicInfo<'_>) -> ! {
    // SAFETY: never linked into a program.
    unsafe { tenter_panic_is_reachable() }
}

/// Bytes from the caller.
///
/// # Safety
///
/// `start` is valid for `count` bytes.
unsafe fn bytes<'b>(start: *const u8, count: usize) -> &'b [u8] {
    // SAFETY: promised by the caller.
    unsafe { slice::from_raw_parts(start, count) }
}

/// Text from the caller; bytes that are no UTF-8 are none.
///
/// # Safety
///
/// As for [`bytes`].
unsafe fn text<'b>(start: *const u8, count: usize) -> Option<&'b str> {
    // SAFETY: promised by the caller.
    core::str::from_utf8(unsafe { bytes(start, count) }).ok()
}

/// A pull test out of eight bytes a reading: four for a length in steps, four for the seconds. Seconds with the
/// highest bit set make a pull of it, the two highest an undo.
fn pull_test(readings: &[u8]) -> Option<PullTest> {
    let mut words = readings.as_chunks::<4>().0.iter().map(|word| u32::from_le_bytes(*word));
    let mut length = || words.next().map(|word| Length::from_steps(word.cast_signed()));
    let (gauge, division, how) = (length()?, length()?, length()?.steps());
    let ends = if how & 1 == 0 { Ends::One } else { Ends::Both };
    let grain = if how & 2 == 0 { Grain::Lengthwise } else { Grain::Bias };
    let mut test = PullTest::new(gauge, grain).ok()?.with_scale(Scale::new(division, ends)?).ok()?;
    test = test.with_held(Held::Strip).with_load(Load::Force { millinewtons: how.unsigned_abs() });
    test = test.with_settling_pull(how & 4 == 0);
    while let (Some(reading), Some(seconds)) = (length(), length()) {
        let seconds = seconds.steps().cast_unsigned();
        let _ = match seconds >> 30 {
            3 => test.undo().then_some(()).ok_or(tenter_core::TestError::NoPull),
            2 => test.add_pull(reading),
            _ => test.add_rest(seconds, reading),
        };
    }
    Some(test)
}

/// Can panic: the check must see it.
///
/// # Safety
///
/// As for [`bytes`].
#[cfg(feature = "with-panic")]
#[unsafe(no_mangle)]
pub unsafe extern "C" fn probe_panics(start: *const u8, count: usize, index: usize) -> u8 {
    // SAFETY: promised by the caller.
    let bytes = unsafe { bytes(start, count) };
    bytes[index]
}
