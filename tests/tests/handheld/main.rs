//! The handheld for real: the images that ship, on an emulated Cortex-M3 board and on the emulated board one can
//! build, with keys pressed, display photographed, line spoken on and power cut. Needs the emulators and the firmware
//! compiler (`tests/install`), and fails without them.

mod boards;
mod budget;
mod busy;
mod chip_model;
mod making;
mod parts;
mod power;
mod smallest;
mod verbs;
mod walk;
mod whole_test;
