//! Device registers: the only unsafe code of this board.
#![allow(unsafe_code)]

use cortex_m::peripheral::NVIC;
use lm3s6965::Interrupt;

/// A peripheral of the chip, by the address of its register block (LM3S6965 data sheet, memory map).
#[derive(Clone, Copy, PartialEq, Eq)]
#[repr(u32)]
pub enum Block {
    GpioA = 0x4000_4000,
    GpioB = 0x4000_5000,
    GpioC = 0x4000_6000,
    GpioD = 0x4000_7000,
    GpioE = 0x4002_4000,
    GpioF = 0x4002_5000,
    Ssi0 = 0x4000_8000,
    Uart0 = 0x4000_C000,
    #[cfg(feature = "defmt")]
    Uart1 = 0x4000_D000,
    I2c0 = 0x4002_0000,
    Timer0 = 0x4003_0000,
    Sysctl = 0x400F_E000,
}

impl Block {
    const fn register(self, offset: u16) -> *mut u32 {
        (self as usize + (offset & 0xFFC) as usize) as *mut u32
    }

    /// The register at `offset` bytes into the block.
    pub fn read(self, offset: u16) -> u32 {
        // SAFETY: every block is 4 KiB of device registers and the offset is held inside it, on a word boundary.
        // No Rust object lives there, and no register used here moves memory (the chip's DMA is never set up).
        unsafe { self.register(offset).read_volatile() }
    }

    /// Writes the register at `offset` bytes into the block.
    pub fn write(self, offset: u16, value: u32) {
        // SAFETY: as for `read`.
        unsafe { self.register(offset).write_volatile(value) }
    }

    /// Sets bits and leaves the others. Not for a register which an interrupt handler changes too.
    pub fn set(self, offset: u16, bits: u32) {
        self.write(offset, self.read(offset) | bits);
    }

    /// Waits until none of these bits is set.
    pub fn wait_clear(self, offset: u16, bits: u32) {
        while self.read(offset) & bits != 0 {}
    }

    /// Waits until one of these bits is set.
    pub fn wait_set(self, offset: u16, bits: u32) {
        while self.read(offset) & bits == 0 {}
    }
}

/// Lets an interrupt through to its handler.
pub fn enable(interrupt: Interrupt) {
    // SAFETY: the program masks single interrupts nowhere to protect data: its critical sections mask them all.
    unsafe { NVIC::unmask(interrupt) }
}
