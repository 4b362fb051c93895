//! Flash, memory, instructions and sleep, printed and held against the budget.

use std::time::Instant;

use tenter_firmware::ui::{Action, Screen};
use tenter_tests::emulator::{self, Board as _, Key, Pico, Qemu};
use tenter_tests::handheld::Handheld;

use crate::boards;
use crate::walk::{Walk, as_text, golden};
use crate::whole_test::ROOM;

/// How long a tap takes to show on the board one can build, its own time: looked at every millisecond.
#[test]
fn a_tap_shows_soon() {
    let (_folder, options) = boards::pico_options();
    let mut board = boards::start_pico(options);
    let before = board.photo().unwrap();
    board.press(Key::More).unwrap();
    let mut first = None;
    let mut last = 0;
    let mut shown = before;
    for ms in 1..=300 {
        board.wait(1).unwrap();
        let photo = board.photo().unwrap();
        if photo != shown {
            first = first.or(Some(ms));
            last = ms;
            shown = photo;
        }
    }
    println!("pico: a tap begins to show after {first:?} ms and is drawn after {last} ms");
    assert!(last > 0 && last <= 100, "a tap shows after {last} ms");
}

/// Idle boards sleep: the emulated processor runs a few instructions in ten seconds, the other is awake for a
/// thousandth of the time.
#[test]
fn idle_boards_sleep() {
    let (_folder, options) = boards::qemu_options();
    let mut board = boards::start_qemu(options);
    board.wait_for_photo(&mut |photo| as_text(photo) == golden("home")).unwrap();
    board.wait(200).unwrap();
    let (before, began) = (board.instructions().unwrap(), Instant::now());
    board.wait(5_000).unwrap();
    let (idle, seconds) = (board.instructions().unwrap() - before, began.elapsed().as_secs_f64());
    // 64 ns an instruction; asleep, the board's clock goes with ours.
    let awake = idle as f64 * 0.064 / seconds;
    println!("lm3s6965evb: {idle} instructions in {seconds:.1} idle seconds, {awake:.0} ppm awake");
    assert!(awake < 128.0, "{awake}");

    let (_folder, options) = boards::pico_options();
    let mut board = Pico::start(options).unwrap();
    println!("pico: at rest {:.0} ms after power-on", boards::until_it_sleeps(&mut board));
    let before = board.stats().unwrap();
    board.wait(60_000).unwrap();
    let after = board.stats().unwrap();
    let awake = (after.ms - before.ms) - (after.asleep_ms - before.asleep_ms);
    println!("pico: awake for {awake:.2} ms of an idle minute; deepest stack {} bytes", after.stack_bytes);
    assert!(awake < 60.0, "{awake}");
}

/// While the clock of a pull runs, the picture changes every second, and in between the processor sleeps.
#[test]
fn boards_sleep_between_two_seconds_of_a_running_clock() {
    let (_folder, options) = boards::pico_options();
    let mut board = boards::start_pico(options);
    for _ in 0..2 {
        board.tap(Key::Next, 100).unwrap(); // Measure; the settling pull is made.
    }
    board.wait(1_000).unwrap();
    let before = board.stats().unwrap();
    board.wait(20_000).unwrap();
    let after = board.stats().unwrap();
    let asleep = 100.0 * (after.asleep_ms - before.asleep_ms) / (after.ms - before.ms);
    println!("pico: asleep for {asleep:.1} % of the time while a clock runs on the display");
    assert!(asleep > 90.0, "{asleep}");
}

/// Flash and RAM of the emulated board's chip, in bytes (its data sheet, from memory), and where the RAM begins.
const FLASH_BYTES: u32 = 256 * 1024;
const RAM: u32 = 0x2000_0000;
const RAM_BYTES: u32 = 64 * 1024;

/// The stack must leave a quarter of the RAM free: what the tests walk through need not go deepest.
const MOST_RAM: u32 = RAM_BYTES / 4 * 3;

/// Statics and the deepest stack so far, in bytes: what was never touched still reads zero.
pub fn assert_ram(board: &mut Qemu) {
    let (_, data, bss) = emulator::image_sizes("lm3s6965evb").unwrap();
    let statics = data + bss;
    let ram = board.memory(RAM, RAM_BYTES).unwrap();
    let untouched = ram.iter().skip(statics as usize + 8).take_while(|byte| **byte == 0).count();
    let stack = RAM_BYTES - statics - 8 - u32::try_from(untouched).unwrap();
    println!("lm3s6965evb: statics {statics} bytes, deepest stack {stack} bytes, {} in all", statics + stack);
    assert!(statics + stack <= MOST_RAM, "{statics} + {stack}");
}

#[test]
fn images_fit() {
    for board in ["lm3s6965evb", "pico"] {
        let (text, data, bss) = emulator::image_sizes(board).unwrap();
        println!("{board}: flash {} bytes, statics {} bytes", text + data, data + bss);
    }
    let (text, data, _) = emulator::image_sizes("lm3s6965evb").unwrap();
    assert!(text + data <= FLASH_BYTES, "{text} + {data}");
}

/// Counted by the emulator, not timed: the same to a few per cent whatever else the machine does, since the clock's own
/// interrupts fall in now and then.
#[test]
fn instructions_of_an_answer_and_of_a_picture() {
    let (_folder, options) = boards::qemu_options();
    let mut board = boards::start_qemu(emulator::Options { icount: 3, ..options });
    board.wait_for_photo(&mut |photo| as_text(photo) == golden("home")).unwrap();
    let mut twin = Handheld::default();
    twin.log(true, ROOM);
    let mut walk = Walk::new(&mut board, twin, "lm3s6965evb-budget");
    // Until the picture is whole.
    let mut tap = |key: Key, action: Action| {
        let before = walk.board.instructions().unwrap();
        walk.tap(key, action);
        walk.board.instructions().unwrap() - before
    };
    let (next, more) = ((Key::Next, Action::Next), (Key::More, Action::More(1)));
    // Measure, settled, let go, 100.5 mm, no more pulls; then down the list of choices.
    for (key, action) in [next, next, next, more, next, (Key::Back, Action::Back)] {
        tap(key, action);
    }
    let picture = tap(more.0, more.1);
    let answer = tap(next.0, next.1);
    println!(
        "lm3s6965evb: a picture {picture} instructions, an answer with its picture {answer}, {} more",
        answer.saturating_sub(picture)
    );
    // At 12.5 MHz and some two cycles an instruction: a picture within a fifth of a second. A tap that drew nothing
    // would take a few thousand.
    assert!((100_000..1_500_000).contains(&picture) && (100_000..3_000_000).contains(&answer), "{picture} {answer}");
    assert_eq!(walk.twin.model.screen, Screen::Result);
}

/// What one evaluation of five pulls may take of a processor without floating point, growth and recovery read or not, and
/// what it may take where a plan is found late.
const MOST_INSTRUCTIONS: u64 = 60_000;
const MOST_WITH_A_LATE_PLAN: u64 = 80_000;

/// An evaluation alone, by an image that does nothing else and tells the cycles of [`EVALUATIONS`] of each test. A cycle of
/// 12.5 MHz is 80 ns of the board's time, in which it runs ten instructions of 8 ns: the same on every machine.
#[test]
fn instructions_of_an_evaluation() {
    const EVALUATIONS: u64 = 20;
    const A_CYCLE: u64 = 10;
    let (_folder, options) = boards::qemu_options();
    let image = options.image.with_file_name("evaluation");
    let mut board = boards::start_qemu(emulator::Options { image, icount: 3, ..options });
    let mut said = Vec::new();
    let began = Instant::now();
    while said.iter().filter(|byte| **byte == b'\n').count() < 4 {
        assert!(began.elapsed() < emulator::HANGS, "it said {}", String::from_utf8_lossy(&said));
        said.extend(board.receive(1_000).unwrap());
    }
    let said = String::from_utf8(said).unwrap();
    let mut costs = Vec::new();
    for line in said.lines() {
        let (name, cycles) = line.split_once(' ').unwrap();
        let cost = cycles.parse::<u64>().unwrap() * A_CYCLE / EVALUATIONS;
        println!("lm3s6965evb: an evaluation of five pulls, {name}: {cost} instructions");
        let most = if name == "planned" { MOST_WITH_A_LATE_PLAN } else { MOST_INSTRUCTIONS };
        // One that did nothing would take a few hundred.
        assert!((5_000..=most).contains(&cost), "{name}: {cost}");
        costs.push(cost);
    }
    assert_eq!(costs.len(), 4, "{said}");
}
