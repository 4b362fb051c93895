//! The serial line of the emulated chip, an nRF51822: registers as in its reference manual (v3.0, 2014, § 29).
#![allow(unsafe_code)] // Registers are read and written in place.

use core::ptr;

const UART: u32 = 0x4000_2000;
const START_RECEIVING: u32 = 0x000;
const START_SENDING: u32 = 0x008;
const RECEIVED: u32 = 0x108;
const SENT: u32 = 0x11C;
const ENABLE: u32 = 0x500;
const READ: u32 = 0x518;
const WRITE: u32 = 0x51C;

/// The line, which there is one of.
pub struct Uart(());

impl Uart {
    /// Switches it on.
    pub fn start() -> Self {
        write(ENABLE, 4);
        write(START_RECEIVING, 1);
        write(START_SENDING, 1);
        Self(())
    }

    /// Waits for a byte.
    pub fn receive(&mut self) -> u8 {
        while read(RECEIVED) == 0 {}
        write(RECEIVED, 0);
        let [byte, ..] = read(READ).to_le_bytes();
        byte
    }

    /// Sends a text.
    pub fn send(&mut self, text: &str) {
        for byte in text.bytes() {
            write(SENT, 0);
            write(WRITE, byte.into());
            while read(SENT) == 0 {}
        }
    }
}

fn read(register: u32) -> u32 {
    // SAFETY: a register of the chip, which is always there.
    unsafe { ptr::read_volatile((UART + register) as *const u32) }
}

fn write(register: u32, value: u32) {
    // SAFETY: as above.
    unsafe { ptr::write_volatile((UART + register) as *mut u32, value) }
}
