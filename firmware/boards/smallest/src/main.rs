//! The core on the smallest chip that it is meant for: 32 KiB of flash and 4 KiB of memory, the stack among them. A line
//! with a test comes in, a line with the answer and the deepest stack so far goes out.
#![no_std]
#![no_main]

mod answer;
mod stack;
mod uart;

use core::fmt::{self, Write as _};

use cortex_m_rt::entry;
use tenter_core::Decimal;
use uart::Uart;

/// The longest line: ten readings and more; a longer one is no test.
const LONGEST: usize = 128;

#[entry]
fn main() -> ! {
    stack::paint();
    let mut line = Line(Uart::start());
    let mut room = [0; LONGEST];
    loop {
        let text = line.read(&mut room);
        // Writing to the line cannot fail.
        let _ = answer::answer(text, &mut line);
        let _ = line.write_str(" stack ");
        let deepest = i64::try_from(stack::deepest()).unwrap_or(i64::MAX);
        let _ = line.write_str(&Decimal::new(deepest, 0).text());
        let _ = line.write_str("\n");
    }
}

struct Line(Uart);

impl Line {
    /// The next line; empty where it is too long or no text.
    fn read<'r>(&mut self, room: &'r mut [u8; LONGEST]) -> &'r str {
        let mut count = 0;
        loop {
            match self.0.receive() {
                b'\n' => break,
                byte => {
                    if let Some(place) = room.get_mut(count) {
                        *place = byte;
                    }
                    count = count.saturating_add(1);
                }
            }
        }
        room.get(..count).and_then(|bytes| core::str::from_utf8(bytes).ok()).unwrap_or_default()
    }
}

impl fmt::Write for Line {
    fn write_str(&mut self, text: &str) -> fmt::Result {
        self.0.send(text);
        Ok(())
    }
}

#[panic_handler]
fn panic(_: &core::panic::PanicInfo<'_>) -> ! {
    loop {}
}
