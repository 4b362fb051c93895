//! The parts of the board, each behind its embedded-hal or embedded-io trait.
//!
//! Addresses and bits are the LM3S6965 data sheet's. They have run in the emulator only, never on the chip.

mod clock;
mod gpio;
mod i2c;
mod reg;
mod spi;
mod uart;

pub use clock::Clock;
pub use gpio::{Input, Output};
pub use i2c::I2c;
pub use uart::Line;

use embedded_hal_bus::spi::ExclusiveDevice;
use lm3s6965::Interrupt;
use reg::Block;
use spi::Spi;

const RAW_INTERRUPTS: u16 = 0x50;
const RUN_CLOCK: u16 = 0x60;
const PERIPHERALS: u16 = 0x104;
const PORTS: u16 = 0x108;

/// The five keys; each reads low while pressed.
pub struct Keys {
    pub less: Input,
    pub more: Input,
    pub next: Input,
    pub back: Input,
    pub select: Input,
}

/// Everything the board offers.
pub struct Board {
    pub keys: Keys,
    /// The display's SSD0323.
    pub panel: ExclusiveDevice<Spi, Output, Clock>,
    /// High for data, low for a command to the display.
    pub data_command: Output,
    /// The bus with the memory for the log.
    pub bus: I2c,
    pub line: Line,
    pub clock: Clock,
}

impl Board {
    /// Sets the chip up. None when called a second time.
    pub fn take() -> Option<Self> {
        let core = cortex_m::Peripherals::take()?;
        start_clocks();
        let clock = Clock::start(core.SYST);

        gpio::give_to_peripheral(Block::GpioA, 0b0011_0111); // UART0 on 0 and 1, SSI0 on 2, 4 and 5
        gpio::give_to_peripheral(Block::GpioB, 0b0000_1100); // I2C0 on 2 and 3
        gpio::open_drain(Block::GpioB, 0b0000_1000);
        #[cfg(feature = "defmt")]
        start_log()?;

        // PD0 deselects the memory card when high. The emulator selects the display by the same pin.
        Output::new(Block::GpioD, 0);
        let panel = ExclusiveDevice::new(Spi::new(), Output::new(Block::GpioA, 3), clock).ok()?;

        let keys = Keys {
            more: Input::new(Block::GpioE, 0),
            less: Input::new(Block::GpioE, 1),
            back: Input::new(Block::GpioE, 2),
            next: Input::new(Block::GpioE, 3),
            select: Input::new(Block::GpioF, 1),
        };
        reg::enable(Interrupt::GPIOE);
        reg::enable(Interrupt::GPIOF);

        let data_command = Output::new(Block::GpioC, 7);
        Some(Self { keys, panel, data_command, bus: I2c::new(), line: Line::new()?, clock })
    }
}

/// 12.5 MHz from the crystal of 8 MHz: 200 MHz of the loop divided by 16, then every part in use gets its clock.
fn start_clocks() {
    const DIVIDE_BY_16: u32 = 0xF << 23;
    const USE_DIVISOR: u32 = 1 << 22;
    const BYPASS_LOOP: u32 = 1 << 11;
    const CRYSTAL_8_MHZ: u32 = 0xE << 6;
    const LOOP_LOCKED: u32 = 1 << 6;
    let running = DIVIDE_BY_16 | USE_DIVISOR | CRYSTAL_8_MHZ;
    Block::Sysctl.write(RUN_CLOCK, running | BYPASS_LOOP);
    Block::Sysctl.wait_set(RAW_INTERRUPTS, LOOP_LOCKED);
    Block::Sysctl.write(RUN_CLOCK, running);
    Block::Sysctl.set(PERIPHERALS, 1 << 16 | 1 << 12 | 1 << 4 | 1 << 1 | 1); // timer 0, I2C0, SSI0, UART1, UART0
    Block::Sysctl.set(PORTS, 0b11_1111); // GPIO A to F
    Block::Sysctl.read(PORTS); // the clocks run a few cycles later
}

/// defmt frames leave on UART1.
#[cfg(feature = "defmt")]
fn start_log() -> Option<()> {
    gpio::give_to_peripheral(Block::GpioD, 0b0000_1100);
    let sender = cortex_m::singleton!(: uart::Sender = uart::Sender::new(Block::Uart1))?;
    defmt_serial::defmt_serial(sender);
    Some(())
}
