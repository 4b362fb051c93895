//! Stored and sent records, both ways.

use tenter_core::record::{self, LabelledDemand, MAX_DEMAND_BYTES, MAX_TEST_BYTES};
use tenter_core::saved::{self, Clock, MAX_SAVED_BYTES, SavedTest};
use tenter_core::{Demand, Grain, Range};

use crate::figures::limit;
use crate::texts::printed;

fn sum(bytes: &[u8]) -> u32 {
    bytes.iter().fold(0, |sum: u32, byte| sum.wrapping_mul(31).wrapping_add((*byte).into()))
}

/// # Safety
///
/// `start` is valid for `count` bytes.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn probe_encode_test(start: *const u8, count: usize, room: usize) -> u32 {
    // SAFETY: promised by the caller.
    let Some(test) = crate::pull_test(unsafe { crate::bytes(start, count) }) else { return 0 };
    let mut buffer = [0; MAX_TEST_BYTES];
    let Some(buffer) = buffer.get_mut(..room) else { return 0 };
    record::encode_test(&test, buffer).map_or_else(printed, sum)
}

/// # Safety
///
/// `start` is valid for `count` bytes.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn probe_decode_test(start: *const u8, count: usize) -> u32 {
    // SAFETY: promised by the caller.
    match record::decode_test(unsafe { crate::bytes(start, count) }) {
        Ok(test) => test.pulls().iter().fold(0, |sum, pull| sum ^ pull.steps().unsigned_abs()),
        Err(error) => printed(error),
    }
}

/// # Safety
///
/// `start` is valid for `count` bytes.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn probe_encode_demand(
    start: *const u8,
    count: usize,
    limits: &[[i32; 2]; 3],
    room: usize,
) -> u32 {
    // SAFETY: promised by the caller.
    let Some(label) = (unsafe { crate::text(start, count) }) else { return 0 };
    let [least, most, growth] = limits.map(limit);
    let mut demand = Demand::for_grain(Grain::Bias, Range { at_least: least, at_most: most });
    demand.growth_at_most = growth;
    let Some(demand) = LabelledDemand::new(label, demand) else { return 0 };
    let mut buffer = [0; MAX_DEMAND_BYTES];
    let Some(buffer) = buffer.get_mut(..room) else { return 0 };
    record::encode_demand(&demand, buffer).map_or_else(printed, sum)
}

/// # Safety
///
/// `start` is valid for `count` bytes.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn probe_decode_demand(start: *const u8, count: usize) -> u32 {
    // SAFETY: promised by the caller.
    match record::decode_demand(unsafe { crate::bytes(start, count) }) {
        Ok(demand) => printed(demand.label()) ^ u32::from(demand.demand.crosswise.is_empty()),
        Err(error) => printed(error),
    }
}

/// # Safety
///
/// `start` is valid for `count` bytes.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn probe_encode_saved(start: *const u8, count: usize, room: usize, tag: u16, unix_s: u32) -> u32 {
    // SAFETY: promised by the caller.
    let Some(test) = crate::pull_test(unsafe { crate::bytes(start, count) }) else { return 0 };
    let mut buffer = [0; MAX_SAVED_BYTES];
    let Some(buffer) = buffer.get_mut(..room) else { return 0 };
    let clock = Clock { uptime_s: unix_s ^ 1, unix_s: Some(unix_s) };
    saved::encode(&SavedTest::new(tag, clock, test), buffer).map_or_else(printed, sum)
}

/// # Safety
///
/// `start` is valid for `count` bytes.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn probe_decode_saved(start: *const u8, count: usize) -> u32 {
    // SAFETY: promised by the caller.
    match saved::decode(unsafe { crate::bytes(start, count) }) {
        Ok(saved) => saved.clock.uptime_s ^ saved.test.gauge().steps().unsigned_abs(),
        Err(error) => printed(error),
    }
}
