//! The core alone on a Cortex-M0 with 4 KiB of memory, in QEMU's machine `microbit`: a test goes over the serial line, and the answer
//! that comes back is the host's.

use std::io::{BufRead as _, BufReader, Write as _};
use std::process::{Command, Stdio};

use tenter_tests::emulator;

#[allow(dead_code)] // The image uses all of it.
#[path = "../../../firmware/boards/smallest/src/answer.rs"]
mod answer;

/// What a chip must have for the core: flash for all of it, and memory for statics and stack. The linker holds the one; beyond the
/// other the emulated chip stops.
const MOST_FLASH: u32 = 38 * 1024;
const MOST_RAM: u32 = 4 * 1024;

/// Each with a word of its answer.
const TESTS: [(&str, &str); 10] = [
    ("250 =250 270 271 270 269 270 5%", "meets"),
    ("100 105 106 105 104 106 5%", "settle nothing"),
    ("250 =250 266 266 266 266 266 5%", "settle 1 days"),
    ("100 105 106 105 104 106 101@1800 5%", "close"),
    ("250 =250 252 251.5 252 5%", "short"),
    ("250 =250 =250.5 =249.5 300 301 315 300 300.5 299 301 300 300 301 251@60 251@1800 18%", "meets"),
    ("100 267 5%", "doubted"),
    ("100 500 5%", "no cloth reads like this"),
    ("250", "no pull"),
    ("two hundred", "no test"),
];

#[test]
fn the_core_alone_fits_a_small_chip_and_answers_as_the_host_does() {
    let (text, data, bss) = emulator::image_sizes("smallest").unwrap();
    let image = emulator::build_image("smallest").unwrap();
    let mut command = Command::new("setpriv");
    command.args(["--pdeathsig", "KILL", "qemu-system-arm", "-M", "microbit", "-display", "none", "-monitor", "none"]);
    command.args(["-serial", "stdio", "-kernel"]).arg(image).stdin(Stdio::piped()).stdout(Stdio::piped());
    let mut chip = command.spawn().unwrap();
    let (mut to, mut from) = (chip.stdin.take().unwrap(), BufReader::new(chip.stdout.take().unwrap()).lines());
    let mut stack = 0;
    for (line, word) in TESTS {
        writeln!(to, "{line}").unwrap();
        to.flush().unwrap();
        let said = from.next().expect("the chip stopped: has it run out of memory?").unwrap();
        let (said, deepest) = said.rsplit_once(" stack ").unwrap();
        let mut here = String::new();
        answer::answer(line, &mut here).unwrap();
        assert_eq!(said, here, "{line}");
        assert!(said.contains(word), "{line}: {said}");
        stack = deepest.parse().unwrap();
    }
    chip.kill().unwrap();
    chip.wait().unwrap();
    println!("smallest: flash {} bytes, statics {} bytes, deepest stack {stack} bytes", text + data, data + bss);
    assert!(text + data <= MOST_FLASH && data + bss + stack <= MOST_RAM, "{text} + {data} {bss} {stack}");
    assert!(stack > 1000, "{stack}");
}
