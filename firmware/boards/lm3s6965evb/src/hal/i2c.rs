//! I2C0 as master.

use super::{clock, reg::Block};
use embedded_hal::i2c::{self, ErrorKind, I2c as Bus, NoAcknowledgeSource, Operation};

const ADDRESS: u16 = 0x00;
/// Written: what to do. Read: how it went.
const CONTROL: u16 = 0x04;
const DATA: u16 = 0x08;
const TIMER: u16 = 0x0C;
const CONFIG: u16 = 0x20;

const RUN: u32 = 1 << 0;
const START: u32 = 1 << 1;
const STOP: u32 = 1 << 2;
const ACKNOWLEDGE: u32 = 1 << 3;

const BUSY: u32 = 1 << 0;
const ERROR: u32 = 1 << 1;

/// A byte at 312 kHz takes 29 µs; after ten times that, some device holds the clock line.
const PATIENCE: u32 = clock::HZ / 1_000_000 * 290;

/// Why a transfer failed. All bytes after the failure were left out and the bus was freed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Error {
    /// No device answered, or it refused a byte.
    NoAcknowledge,
    /// A device held the clock line.
    Stuck,
    /// Nothing to transfer: this bus cannot send an address alone.
    Empty,
}

impl i2c::Error for Error {
    fn kind(&self) -> ErrorKind {
        match self {
            Self::NoAcknowledge => ErrorKind::NoAcknowledge(NoAcknowledgeSource::Unknown),
            Self::Stuck => ErrorKind::Bus,
            Self::Empty => ErrorKind::Other,
        }
    }
}

/// The bus at 312 kHz.
pub struct I2c(());

impl I2c {
    pub fn new() -> Self {
        Block::I2c0.write(CONFIG, 1 << 4); // master
        Block::I2c0.write(TIMER, 1); // clock / (20 · (1 + 1)), the fastest below 400 kHz
        Self(())
    }

    /// Does one step and waits for its end.
    fn step(&mut self, command: u32) -> Result<(), Error> {
        Block::I2c0.write(CONTROL, command);
        for _ in 0..PATIENCE {
            let status = Block::I2c0.read(CONTROL);
            if status & BUSY == 0 {
                // Bit ERROR alone: for an absent device the chip names the address, the emulator the arbitration.
                return if status & ERROR == 0 { Ok(()) } else { Err(self.give_up(Error::NoAcknowledge)) };
            }
        }
        Err(self.give_up(Error::Stuck))
    }

    fn give_up(&mut self, error: Error) -> Error {
        Block::I2c0.write(CONTROL, STOP);
        error
    }
}

impl i2c::ErrorType for I2c {
    type Error = Error;
}

impl Bus for I2c {
    fn transaction(&mut self, address: u8, operations: &mut [Operation<'_>]) -> Result<(), Error> {
        let mut direction = None;
        let mut rest = operations.iter_mut().filter(|operation| !is_empty(operation)).peekable();
        if rest.peek().is_none() {
            return Err(Error::Empty);
        }
        while let Some(operation) = rest.next() {
            let reads = is_read(operation);
            let turns = direction.replace(reads) != Some(reads);
            let next = rest.peek().map(|operation| is_read(operation));
            if turns {
                Block::I2c0.write(ADDRESS, u32::from(address) << 1 | u32::from(reads));
            }
            // A run of one direction ends in a stop or a turn; the last byte read before either is not acknowledged.
            let first = RUN | if turns { START } else { 0 };
            let last = if next.is_none() { STOP } else { 0 };
            let go_on = if reads { ACKNOWLEDGE } else { 0 };
            let last_go_on = if next == Some(reads) { go_on } else { 0 };
            let count = length(operation);
            let command = |i: usize| {
                (if i == 0 { first } else { RUN }) | (if i + 1 == count { last | last_go_on } else { go_on })
            };
            match operation {
                Operation::Write(bytes) => {
                    for (i, &byte) in bytes.iter().enumerate() {
                        Block::I2c0.write(DATA, byte.into());
                        self.step(command(i))?;
                    }
                }
                Operation::Read(bytes) => {
                    for (i, byte) in bytes.iter_mut().enumerate() {
                        self.step(command(i))?;
                        *byte = Block::I2c0.read(DATA) as u8;
                    }
                }
            }
        }
        Ok(())
    }
}

fn length(operation: &Operation<'_>) -> usize {
    match operation {
        Operation::Read(bytes) => bytes.len(),
        Operation::Write(bytes) => bytes.len(),
    }
}

fn is_empty(operation: &Operation<'_>) -> bool {
    length(operation) == 0
}

fn is_read(operation: &Operation<'_>) -> bool {
    matches!(operation, Operation::Read(_))
}
