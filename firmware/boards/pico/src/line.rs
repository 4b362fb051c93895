//! The serial line: received bytes go into a ring from the interrupt, sending waits for room in the chip's FIFO.

use core::cell::RefCell;

use critical_section::Mutex;
use fugit::{HertzU32, RateExtU32};
use heapless::spsc::{Consumer, Producer, Queue};
use rp2040_hal::gpio::bank0::{Gpio0, Gpio1};
use rp2040_hal::gpio::{FunctionUart, Pin, PullNone, PullUp};
use rp2040_hal::pac::{self, NVIC, RESETS, UART0, interrupt};
use rp2040_hal::uart::{DataBits, Reader, StopBits, UartConfig, UartPeripheral, Writer};

/// The host waits for an answer before it asks again, and no request is longer than 123 bytes.
const RING: usize = 256;
const BAUD: u32 = 115_200;

/// Sending and receiving. Pulled up, an open receiving pin is a quiet line.
type Pins = (Pin<Gpio0, FunctionUart, PullNone>, Pin<Gpio1, FunctionUart, PullUp>);

/// The main program's end of the line.
pub struct Line {
    received: Consumer<'static, u8>,
    writer: Writer<UART0, Pins>,
}

/// The interrupt's end.
struct Receiver {
    reader: Reader<UART0, Pins>,
    ring: Producer<'static, u8>,
}

static RECEIVER: Mutex<RefCell<Option<Receiver>>> = Mutex::new(RefCell::new(None));

impl Line {
    /// Opens the line at 115 200 baud, 8 data bits, no parity, one stop bit.
    pub(crate) fn new(uart: UART0, pins: Pins, resets: &mut RESETS, clock: HertzU32) -> Option<Self> {
        let config = UartConfig::new(BAUD.Hz(), DataBits::Eight, None, StopBits::One);
        let mut uart = UartPeripheral::new(uart, pins, resets).enable(config, clock).ok()?;
        uart.enable_rx_interrupt();
        let (reader, writer) = uart.split();
        let queue = cortex_m::singleton!(: Queue<u8, RING> = Queue::new())?;
        let (ring, received) = queue.split();
        critical_section::with(|cs| RECEIVER.replace(cs, Some(Receiver { reader, ring })));
        #[allow(unsafe_code, reason = "enabling an interrupt is unsafe in cortex-m")]
        // SAFETY: the handler touches only RECEIVER, which is complete and behind a critical section.
        unsafe {
            NVIC::unmask(pac::Interrupt::UART0_IRQ)
        };
        Some(Self { received, writer })
    }

    /// The next received byte, if there is one.
    pub fn read(&mut self) -> Option<u8> {
        self.received.dequeue()
    }

    /// True while a received byte waits.
    pub fn has_unread(&self) -> bool {
        self.received.ready()
    }

    /// Sends, waiting for room in the FIFO.
    pub fn write(&mut self, bytes: &[u8]) {
        self.writer.write_full_blocking(bytes);
    }
}

#[interrupt]
fn UART0_IRQ() {
    critical_section::with(|cs| {
        if let Some(receiver) = RECEIVER.borrow_ref_mut(cs).as_mut() {
            receiver.drain();
        }
    });
}

impl Receiver {
    /// Empties the FIFO. Bytes that find the ring full are lost, as are those with a wrong stop bit; the checksum of
    /// the link tells.
    fn drain(&mut self) {
        let mut fifo = [0; 32];
        let bytes = match self.reader.read_raw(&mut fifo) {
            Ok(count) => fifo.get(..count).unwrap_or_default(),
            Err(nb::Error::Other(error)) => error.discarded,
            Err(nb::Error::WouldBlock) => &[],
        };
        for byte in bytes {
            let _ = self.ring.enqueue(*byte);
        }
    }
}
