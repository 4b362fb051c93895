//! Takes the chip's parts and sets them up once.

use core::cell::RefCell;

use fugit::RateExtU32;
use rp2040_hal::clocks::{Clock as _, ClocksManager};
use rp2040_hal::pll::{common_configs::PLL_USB_48MHZ, setup_pll_blocking};
use rp2040_hal::{I2C, Sio, Timer, Watchdog, gpio, pac, xosc};

use tenter_firmware::ui::Restart;

use crate::bus::{Bus, SPEED_HZ};
use crate::keys::{Keys, Knob};
use crate::{clock::Clock, line::Line, panic};

const CRYSTAL_HZ: u32 = 12_000_000;
/// Four times the crystal, by the system PLL: drawing a picture at 12 MHz took long enough to miss a short tap.
const SYSTEM_HZ: u32 = 48_000_000;

/// All that the program may use.
pub struct Board {
    /// The five keys.
    pub keys: Keys,
    /// The rotary encoder, where there is one.
    pub knob: Knob,
    /// The buzzer, where there is one: high sounds.
    pub buzzer: gpio::Pin<gpio::bank0::Gpio18, gpio::FunctionSioOutput, gpio::PullNone>,
    /// Ends a program that stands still; not started yet.
    pub watchdog: Watchdog,
    /// Why the program started by itself.
    pub restart: Option<Restart>,
    /// The serial line to the host.
    pub line: Line,
    /// Time and sleep.
    pub clock: Clock,
    /// Display and EEPROM; borrow it through `embedded_hal_bus::i2c::RefCellDevice`.
    pub bus: RefCell<Bus>,
}

impl Board {
    /// Sets everything up; `None` when called twice or when the crystal does not start.
    pub fn take() -> Option<Self> {
        let mut chip = pac::Peripherals::take()?;
        let crystal = xosc::setup_xosc_blocking(chip.XOSC, CRYSTAL_HZ.Hz()).ok()?;
        // The timer counts the watchdog's ticks: one a microsecond.
        let stood_still = chip.WATCHDOG.reason().read().timer().bit_is_set();
        let mut watchdog = Watchdog::new(chip.WATCHDOG);
        watchdog.enable_tick_generation((CRYSTAL_HZ / 1_000_000) as u8);
        let restart = panic::reason(&mut watchdog, stood_still);
        watchdog.pause_on_debug(true);
        let mut clocks = ClocksManager::new(chip.CLOCKS);
        clocks.reference_clock.configure_clock(&crystal, CRYSTAL_HZ.Hz()).ok()?;
        let pll = setup_pll_blocking(
            chip.PLL_SYS,
            crystal.operating_frequency(),
            PLL_USB_48MHZ,
            &mut clocks,
            &mut chip.RESETS,
        )
        .ok()?;
        clocks.system_clock.configure_clock(&pll, SYSTEM_HZ.Hz()).ok()?;
        clocks.peripheral_clock.configure_clock(&clocks.system_clock, SYSTEM_HZ.Hz()).ok()?;
        let timer = Timer::new(chip.TIMER, &mut chip.RESETS, &clocks);

        let sio = Sio::new(chip.SIO);
        let pins = gpio::Pins::new(chip.IO_BANK0, chip.PADS_BANK0, sio.gpio_bank0, &mut chip.RESETS);
        let i2c = I2C::i2c0(
            chip.I2C0,
            pins.gpio4.reconfigure(),
            pins.gpio5.reconfigure(),
            SPEED_HZ.Hz(),
            &mut chip.RESETS,
            clocks.system_clock.freq(),
        );
        Some(Self {
            keys: Keys::new([
                pins.gpio10.reconfigure().into_dyn_pin(),
                pins.gpio11.reconfigure().into_dyn_pin(),
                pins.gpio12.reconfigure().into_dyn_pin(),
                pins.gpio13.reconfigure().into_dyn_pin(),
                pins.gpio14.reconfigure().into_dyn_pin(),
            ]),
            line: Line::new(
                chip.UART0,
                (pins.gpio0.reconfigure(), pins.gpio1.reconfigure()),
                &mut chip.RESETS,
                clocks.peripheral_clock.freq(),
            )?,
            knob: Knob::new(
                [pins.gpio15.reconfigure().into_dyn_pin(), pins.gpio16.reconfigure().into_dyn_pin()],
                pins.gpio17.reconfigure().into_dyn_pin(),
            ),
            buzzer: pins.gpio18.reconfigure(),
            clock: Clock::new(timer)?,
            watchdog,
            restart,
            bus: RefCell::new(Bus::new(i2c, timer, chip.RESETS, clocks.system_clock.freq())),
        })
    }
}
