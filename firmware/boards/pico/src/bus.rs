//! The I2C bus of display and EEPROM.
//!
//! The HAL sets the peripheral up. Transfers are made here, since those of rp2040-hal 0.12.0 lose a refusal
//! (`write_internal` looks for an abort only while the FIFO is full, and reads the reason a second time after it was
//! cleared): a write to a busy EEPROM or to an absent display counts as done, and the abort left standing spoils the next
//! transfer. The EEPROM's acknowledge polling needs the refusal.

use embedded_hal::i2c::{ErrorKind, ErrorType, I2c, NoAcknowledgeSource, Operation};
use fugit::{HertzU32, RateExtU32};
use rp2040_hal::gpio::bank0::{Gpio4, Gpio5};
use rp2040_hal::gpio::{FunctionI2c, InOutPin, Pin, PullUp};
use rp2040_hal::pac::{I2C0, RESETS, i2c0::RegisterBlock};
use rp2040_hal::{I2C, Timer};
use tenter_firmware::recovery::clear_bus;

type Controller = I2C<I2C0, (Pin<Gpio4, FunctionI2c, PullUp>, Pin<Gpio5, FunctionI2c, PullUp>)>;

/// The clock of the bus.
pub(crate) const SPEED_HZ: u32 = 400_000;
/// A byte takes 22.5 µs; a bus that stands still for this long has a fault.
const STUCK_US: u32 = 10_000;

/// The bus, for one owner; share it by `embedded_hal_bus::i2c::RefCellDevice`.
pub struct Bus {
    /// Not there only while the bus is cleared by hand.
    controller: Option<Controller>,
    timer: Timer,
    resets: RESETS,
    clock: HertzU32,
}

/// Why a transfer ended early.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Error {
    /// No device answered, or it refused a byte.
    NoAcknowledge(NoAcknowledgeSource),
    /// Somebody else drove the bus.
    ArbitrationLoss,
    /// The bus stood still.
    Stuck,
    /// No byte to send or receive: this peripheral cannot send an address alone.
    Empty,
}

#[derive(Clone, Copy)]
struct Step {
    /// What to send; `None` reads.
    byte: Option<u8>,
    restart: bool,
    stop: bool,
}

impl Bus {
    pub(crate) fn new(controller: Controller, timer: Timer, resets: RESETS, clock: HertzU32) -> Self {
        Self { controller: Some(controller), timer, resets, clock }
    }

    /// Clears a bus that a chip holds, with the pins taken from the peripheral, and sets the peripheral up anew.
    fn recover(&mut self) {
        let Some(controller) = self.controller.take() else { return };
        let (peripheral, (sda, scl)) = controller.free(&mut self.resets);
        let (mut sda, mut scl) = (InOutPin::new(sda), InOutPin::new(scl));
        let _ = clear_bus(&mut scl, &mut sda, &mut self.timer); // Still held, it is stuck again at the next transfer.
        let (sda, scl) = (sda.release(), scl.release());
        self.controller = Some(I2C::i2c0(peripheral, sda, scl, SPEED_HZ.Hz(), &mut self.resets, self.clock));
    }

    #[allow(unsafe_code, reason = "the HAL keeps the peripheral's registers private")]
    fn registers(&mut self) -> &'static RegisterBlock {
        // SAFETY: `controller` owns I2C0 and makes no access of its own after its set-up; `&mut self` makes this one
        // the only access.
        unsafe { &*I2C0::ptr() }
    }

    fn transfer(&mut self, address: u8, operations: &mut [Operation<'_>]) -> Result<(), Error> {
        let left = |operation: &Operation<'_>| match operation {
            Operation::Read(buffer) => buffer.len(),
            Operation::Write(bytes) => bytes.len(),
        };
        let mut left: usize = operations.iter().map(left).sum();
        if left == 0 {
            return Err(Error::Empty);
        }
        self.address(address);
        let mut reading = None;
        let mut step = |byte: Option<u8>| {
            left = left.saturating_sub(1);
            let turned = reading.replace(byte.is_none()).is_some_and(|before| before != byte.is_none());
            Step { byte, restart: turned, stop: left == 0 }
        };
        for operation in operations {
            match operation {
                Operation::Write(bytes) => {
                    for byte in bytes.iter() {
                        self.push(step(Some(*byte)))?;
                    }
                }
                Operation::Read(buffer) => {
                    for slot in buffer.iter_mut() {
                        self.push(step(None))?;
                        self.wait(|i2c| i2c.ic_rxflr().read().rxflr().bits() > 0)?;
                        *slot = self.registers().ic_data_cmd().read().dat().bits();
                    }
                }
            }
        }
        self.wait(|i2c| i2c.ic_raw_intr_stat().read().stop_det().is_active())
    }

    fn address(&mut self, address: u8) {
        let i2c = self.registers();
        i2c.ic_enable().write(|w| w.enable().disabled());
        #[allow(unsafe_code, reason = "a field without named values")]
        // SAFETY: any 10-bit number is a valid target address.
        i2c.ic_tar().write(|w| unsafe { w.ic_tar().bits(u16::from(address)) });
        i2c.ic_enable().write(|w| w.enable().enabled());
        i2c.ic_clr_intr().read();
    }

    fn push(&mut self, step: Step) -> Result<(), Error> {
        self.wait(|i2c| i2c.ic_status().read().tfnf().bit_is_set())?;
        self.registers().ic_data_cmd().write(|w| {
            w.restart().bit(step.restart).stop().bit(step.stop);
            match step.byte {
                #[allow(unsafe_code, reason = "a field without named values")]
                // SAFETY: any byte is valid data.
                Some(byte) => unsafe { w.dat().bits(byte) },
                None => w.cmd().read(),
            }
        });
        Ok(())
    }

    /// Waits until `ready`. The abort flag is read after it, so that a stop seen here is never that of a refusal.
    fn wait(&mut self, ready: impl Fn(&RegisterBlock) -> bool) -> Result<(), Error> {
        let i2c = self.registers();
        let start = self.timer.get_counter_low();
        loop {
            let ready = ready(i2c);
            if i2c.ic_raw_intr_stat().read().tx_abrt().is_active() {
                return Err(self.aborted());
            }
            if ready {
                return Ok(());
            }
            if self.timer.get_counter_low().wrapping_sub(start) > STUCK_US {
                return Err(Error::Stuck);
            }
        }
    }

    /// The reason of an abort. The peripheral has emptied its FIFO and sends the stop itself; reading `IC_CLR_TX_ABRT`
    /// lets it take bytes again.
    fn aborted(&mut self) -> Error {
        let i2c = self.registers();
        let source = i2c.ic_tx_abrt_source().read();
        i2c.ic_clr_tx_abrt().read();
        let start = self.timer.get_counter_low();
        while i2c.ic_status().read().mst_activity().is_active() {
            if self.timer.get_counter_low().wrapping_sub(start) > STUCK_US {
                return Error::Stuck;
            }
        }
        if source.arb_lost().bit_is_set() {
            Error::ArbitrationLoss
        } else if source.abrt_txdata_noack().bit_is_set() {
            Error::NoAcknowledge(NoAcknowledgeSource::Data)
        } else {
            Error::NoAcknowledge(NoAcknowledgeSource::Address)
        }
    }
}

impl embedded_hal::i2c::Error for Error {
    fn kind(&self) -> ErrorKind {
        match self {
            Error::NoAcknowledge(source) => ErrorKind::NoAcknowledge(*source),
            Error::ArbitrationLoss => ErrorKind::ArbitrationLoss,
            Error::Stuck => ErrorKind::Bus,
            Error::Empty => ErrorKind::Other,
        }
    }
}

impl ErrorType for Bus {
    type Error = Error;
}

impl I2c for Bus {
    fn transaction(&mut self, address: u8, operations: &mut [Operation<'_>]) -> Result<(), Error> {
        let done = self.transfer(address, operations);
        if done == Err(Error::Stuck) {
            self.recover();
        }
        done
    }
}
