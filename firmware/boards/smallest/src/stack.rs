//! How deep the stack has been: what lies below it is painted at the start, and what is still painted was never used.
#![allow(unsafe_code)] // Memory is looked at that no value owns.

use core::ptr;

const PAINT: u32 = 0xA5A5_A5A5;

unsafe extern "C" {
    // Of cortex-m-rt's linker script: the end of the statics, and where the stack begins.
    static mut __sheap: u32;
    static _stack_start: u32;
}

/// Paints what is free. The painter's own frame is left out by a margin.
#[inline(never)]
pub fn paint() {
    const MARGIN: usize = 128;
    let here = 0u32;
    let end = (&raw const here as usize).saturating_sub(MARGIN);
    let mut at = &raw mut __sheap;
    while (at as usize) < end {
        // SAFETY: between the statics and this frame lies nothing.
        unsafe { ptr::write_volatile(at, PAINT) };
        at = at.wrapping_add(1);
    }
}

/// The most that was used since then, in bytes.
pub fn deepest() -> usize {
    let (mut at, top) = (&raw const __sheap, &raw const _stack_start);
    // SAFETY: within the memory of the chip, below the frames that are in use.
    while at < top && unsafe { ptr::read_volatile(at) } == PAINT {
        at = at.wrapping_add(1);
    }
    top as usize - at as usize
}
