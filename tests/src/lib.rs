//! What crosses crates: outside references, calibration, hostile input, layering. This library holds what several
//! of the tests share.

pub mod bench_data;
pub mod bench_log;
pub mod browser;
pub mod calibration;
pub mod cluster;
pub mod emulator;
pub mod fake_eeprom;
pub mod gallery;
pub mod handheld;
pub mod load;
pub mod phone;
pub mod picture;
pub mod pressed;
pub mod program;

/// How much a test does: by default enough to find what is wrong in the time that a whole run may take, and with
/// `TENTER_THOROUGH=1` as much as is worth waiting for.
#[must_use]
pub fn thorough<T>(by_default: T, thorough: T) -> T {
    if std::env::var_os("TENTER_THOROUGH").is_some() { thorough } else { by_default }
}
