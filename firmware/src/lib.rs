//! The handheld, whatever board it runs on: a `no_std` library that also builds and tests on a desk.
//!
//! Boards are thin: they own pins and clocks, read the levels of their keys through [`keys`], and hand them with the
//! time to this library. Nothing here knows a register or a clock.

#![no_std]

#[cfg(test)]
extern crate std;

pub mod app;
pub mod button;
pub mod calendar;
pub mod desk;
mod fmt;
pub mod frame;
pub mod keys;
pub mod knob;
pub mod link;
pub mod log;
pub mod panel;
pub mod recovery;
pub mod ui;
pub mod view;
