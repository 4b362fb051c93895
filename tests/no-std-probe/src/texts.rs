//! Reading and writing texts.

use core::fmt::{self, Write};

use tenter_core::{Decimal, Length, Limit, Range, Ratio, Table, Unit};

/// Takes every byte it is given and keeps a sum, so that nothing can be optimised away.
#[derive(Default)]
pub struct Sum(pub u32);

impl Write for Sum {
    fn write_str(&mut self, text: &str) -> fmt::Result {
        for byte in text.bytes() {
            self.0 = self.0.wrapping_mul(31).wrapping_add(byte.into());
        }
        Ok(())
    }
}

/// What `value` prints, padded and plain, as a number.
pub fn printed(value: impl fmt::Display) -> u32 {
    let mut sum = Sum::default();
    let _ = write!(sum, "{value}");
    let _ = write!(sum, "{value:>12}");
    sum.0
}

pub const fn unit(number: u8) -> Unit {
    match number {
        0 => Unit::Mm,
        1 => Unit::Cm,
        _ => Unit::Inch,
    }
}

/// # Safety
///
/// `start` is valid for `count` bytes.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn probe_length_parse(start: *const u8, count: usize, default: u8) -> i64 {
    // SAFETY: promised by the caller.
    let Some(text) = (unsafe { crate::text(start, count) }) else { return -1 };
    match Length::parse(text, unit(default)) {
        Ok(length) => length.steps().into(),
        Err(error) => -i64::from(printed(error)),
    }
}

/// # Safety
///
/// `start` is valid for `count` bytes.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn probe_limit_parse(start: *const u8, count: usize, default: u8) -> i64 {
    // SAFETY: promised by the caller.
    let Some(text) = (unsafe { crate::text(start, count) }) else { return -1 };
    match Limit::parse(text, unit(default)) {
        Ok(limit) => i64::from(printed(limit)) + limit.ratio().numerator(),
        Err(error) => -i64::from(printed(error)),
    }
}

/// # Safety
///
/// `start` is valid for `count` bytes.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn probe_range_parse(start: *const u8, count: usize, default: u8) -> i64 {
    // SAFETY: promised by the caller.
    let Some(text) = (unsafe { crate::text(start, count) }) else { return -1 };
    match Range::parse(text, unit(default)) {
        Ok(range) => range.at_most.map_or(0, |limit| limit.ratio().numerator()),
        Err(error) => -i64::from(printed(error)),
    }
}

#[unsafe(no_mangle)]
pub extern "C" fn probe_length_show(steps: i32, shown_in: u8) -> u32 {
    printed(Length::from_steps(steps).show(unit(shown_in)))
}

#[unsafe(no_mangle)]
pub extern "C" fn probe_limit_marks(gauge: i32, extended: i32) -> u32 {
    Limit::marks(Length::from_steps(gauge), Length::from_steps(extended)).map_or(0, printed)
}

#[unsafe(no_mangle)]
pub extern "C" fn probe_decimal(scaled: i64, decimals: u8, value: f32) -> u32 {
    printed(Decimal::new(scaled, decimals)) ^ printed(Decimal::round(value, decimals))
}

#[unsafe(no_mangle)]
pub extern "C" fn probe_ratio(num: i64, den: i64, decimals: u8) -> u32 {
    Ratio::new(num, den).map_or(0, |ratio| printed(ratio.percent(decimals)) ^ ratio.percent_f32().to_bits())
}

/// # Safety
///
/// `start` is valid for `count` bytes.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn probe_table_class(start: *const u8, count: usize, num: i64, den: i64) -> u32 {
    // SAFETY: promised by the caller.
    let key = unsafe { crate::text(start, count) };
    let (Some(table), Some(ratio)) = (key.and_then(Table::named), Ratio::new(num, den)) else { return 0 };
    printed(table.class(ratio).name)
}
