//! The line to the host (UART0), and the sending half that UART1 shares.

use super::{
    clock,
    reg::{self, Block},
};
use core::{cell::RefCell, convert::Infallible};
use critical_section::Mutex;
use embedded_io::{ErrorType, Read, ReadReady, Write};
use heapless::spsc::{Consumer, Producer, Queue};
use lm3s6965::{Interrupt, interrupt};

const DATA: u16 = 0x00;
const FLAGS: u16 = 0x18;
const DIVISOR: u16 = 0x24;
const FRACTION: u16 = 0x28;
const FORMAT: u16 = 0x2C;
const CONTROL: u16 = 0x30;
const INTERRUPT_MASK: u16 = 0x38;

const BUSY: u32 = 1 << 3;
const NOTHING_RECEIVED: u32 = 1 << 4;
const SEND_FULL: u32 = 1 << 5;
/// Received to the trigger level, or received and then silence.
const RECEIVING: u32 = 1 << 4 | 1 << 6;
/// Framing, parity or break: this byte is noise. The checksum of the link finds what is missing.
const NOISE: u32 = 0x700;

/// The host waits for an answer before it asks again, and no request is longer than 123 bytes.
const RING: usize = 256;
static RECEIVED: Mutex<RefCell<Option<Producer<'static, u8>>>> = Mutex::new(RefCell::new(None));

/// The sending half of a UART at 115200 8N1. Writing waits for room in the chip's queue of 16 bytes.
pub struct Sender(Block);

impl Sender {
    pub fn new(uart: Block) -> Self {
        const SIXTYFOURTHS: u32 = (clock::HZ * 8 + 115_200) / (2 * 115_200); // of 16 clocks a bit, rounded
        uart.write(CONTROL, 0);
        uart.write(DIVISOR, SIXTYFOURTHS / 64);
        uart.write(FRACTION, SIXTYFOURTHS % 64);
        uart.write(FORMAT, 0x70); // 8 bits, with queues; takes the divisor over
        uart.write(CONTROL, 0x301); // sends, receives, on
        Self(uart)
    }
}

impl ErrorType for Sender {
    type Error = Infallible;
}

impl Write for Sender {
    fn write(&mut self, bytes: &[u8]) -> Result<usize, Infallible> {
        for &byte in bytes {
            self.0.wait_clear(FLAGS, SEND_FULL);
            self.0.write(DATA, byte.into());
        }
        Ok(bytes.len())
    }

    fn flush(&mut self) -> Result<(), Infallible> {
        self.0.wait_clear(FLAGS, BUSY);
        Ok(())
    }
}

/// The line: what comes in waits in a ring filled by the interrupt handler.
pub struct Line {
    sender: Sender,
    received: Consumer<'static, u8>,
}

impl Line {
    /// None when called a second time.
    pub fn new() -> Option<Self> {
        let ring = cortex_m::singleton!(: Queue<u8, RING> = Queue::new())?;
        let (producer, received) = ring.split();
        critical_section::with(|cs| RECEIVED.replace(cs, Some(producer)));
        let sender = Sender::new(Block::Uart0);
        Block::Uart0.write(INTERRUPT_MASK, RECEIVING);
        reg::enable(Interrupt::UART0);
        Some(Self { sender, received })
    }

    /// The next byte, if one has come.
    pub fn take(&mut self) -> Option<u8> {
        let byte = self.received.dequeue();
        if byte.is_none() {
            // There is room again, should the handler have stopped for want of it.
            Block::Uart0.write(INTERRUPT_MASK, RECEIVING);
        }
        byte
    }
}

impl ErrorType for Line {
    type Error = Infallible;
}

impl ReadReady for Line {
    fn read_ready(&mut self) -> Result<bool, Infallible> {
        Ok(self.received.ready())
    }
}

impl Read for Line {
    /// Waits for the first byte only.
    fn read(&mut self, bytes: &mut [u8]) -> Result<usize, Infallible> {
        let mut count = 0;
        for place in bytes {
            *place = match self.take() {
                Some(byte) => byte,
                None if count > 0 => break,
                None => loop {
                    clock::doze();
                    if let Some(byte) = self.take() {
                        break byte;
                    }
                },
            };
            count += 1;
        }
        Ok(count)
    }
}

impl Write for Line {
    fn write(&mut self, bytes: &[u8]) -> Result<usize, Infallible> {
        self.sender.write(bytes)
    }

    fn flush(&mut self) -> Result<(), Infallible> {
        self.sender.flush()
    }
}

/// Empties the chip's queue: the interrupt stays until that is done. With the ring full it leaves the rest in the
/// queue, where a sender that can wait is held back, and asks no more until the program has made room.
#[interrupt]
fn UART0() {
    critical_section::with(|cs| {
        if let Some(ring) = RECEIVED.borrow_ref_mut(cs).as_mut() {
            while Block::Uart0.read(FLAGS) & NOTHING_RECEIVED == 0 {
                if !ring.ready() {
                    Block::Uart0.write(INTERRUPT_MASK, 0);
                    break;
                }
                let data = Block::Uart0.read(DATA);
                if data & NOISE == 0 {
                    let _ = ring.enqueue(data as u8); // `ready` said there is room
                }
            }
        }
    });
    clock::wake();
}
