//! What crosses crates: outside references, calibration, hostile input, layering. This library holds what several
//! of the tests share.

pub mod bench_data;
pub mod bench_log;
pub mod browser;
pub mod calibration;
pub mod emulator;
pub mod fake_eeprom;
pub mod gallery;
pub mod handheld;
pub mod picture;
pub mod program;
