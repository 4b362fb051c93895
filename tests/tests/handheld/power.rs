//! Power cuts around saving: what was shown as saved is there, nothing is torn, nothing is doubled.

use std::path::Path;
use std::thread;

use rand::rngs::StdRng;
use rand::{Rng as _, SeedableRng as _};
use tenter_core::Length;
use tenter_tests::emulator::{Board, Key, Photo, Qemu};
use tenter_tests::thorough;

use crate::boards::{self, saved_in};
use crate::walk::{as_text, golden};
use crate::whole_test::head_of;

/// A press as a finger makes it: 80 to 150 ms (from memory).
const TAP_MS: u32 = 80;

fn is_home(photo: &Photo) -> bool {
    as_text(photo).lines().nth(20) == golden("home").lines().nth(20)
}

/// The large word on the screen that says so.
fn is_saved(photo: &Photo) -> bool {
    let golden = golden("saved");
    as_text(photo).lines().take(13).eq(golden.lines().take(13))
}

/// From home to the dial of the tag: one pull of half a millimetre, not read back. Where the power went in the middle of a
/// test, that one is offered first, with its reading, and thrown away.
fn to_the_tag(board: &mut impl Board) {
    use Key::{Back, More, Next};
    if is_offered(&started(board)) {
        taps(board, &[More, Next, More, Next]);
        board.wait_for_photo(&mut is_home).unwrap();
    }
    taps(board, &[Next, Next, Next, More, Next, Back, More, Next, Next]);
    board.wait_for_photo(&mut is_tag).unwrap();
}

/// The first picture after power-on, all of it.
fn started(board: &mut impl Board) -> Photo {
    board.wait_for_photo(&mut |photo| is_home(photo) || is_offered(photo)).unwrap();
    board.wait(500).unwrap();
    board.photo().unwrap()
}

/// Whether the test in hand when the power went is offered again.
fn is_offered(photo: &Photo) -> bool {
    head_of(&as_text(photo)) == head_of(&golden("resume"))
}

/// Taps keys of which every one changes the picture.
fn taps(board: &mut impl Board, keys: &[Key]) {
    for key in keys {
        let before = board.photo().unwrap();
        board.tap(*key, TAP_MS).unwrap();
        board.wait_for_photo(&mut |photo| is_other(photo, &before)).unwrap();
    }
}

/// Whether a picture is another one than before; that a clock on it went on does not count.
fn is_other(photo: &Photo, before: &Photo) -> bool {
    let head = |photo| head_of(&as_text(photo));
    *photo != *before && (head(photo) != head(before) || head(before) != head_of(&golden("pull")))
}

/// The dial of the tag, whatever the number.
fn is_tag(photo: &Photo) -> bool {
    as_text(photo).lines().take(5).eq(golden("tag").lines().take(5))
}

/// Every test in the memory is whole and of the one kind that was measured; how many there are.
fn whole_tests(eeprom: &Path) -> usize {
    let saved = saved_in(eeprom);
    for (_, saved) in &saved {
        assert_eq!(saved.test.pulls(), [Length::from_steps(100 * 1600 + 800)]);
    }
    let numbers: Vec<u32> = saved.iter().map(|(number, _)| *number).collect();
    assert!(numbers.windows(2).all(|pair| pair[0] < pair[1]), "{numbers:?}");
    saved.len()
}

/// The emulator's process is killed at random instants around saving, over and over on the same memory.
#[test]
fn killed_at_random_instants() {
    const WORKERS: u32 = 4;
    let kills = thorough(40, 200);
    let workers: Vec<_> =
        (0..WORKERS).map(|worker| thread::spawn(move || kill_often(worker, kills / WORKERS))).collect();
    let told: Vec<(usize, usize)> = workers.into_iter().map(|worker| worker.join().unwrap()).collect();
    let (shown, there) = told.iter().fold((0, 0), |sum, one| (sum.0 + one.0, sum.1 + one.1));
    println!("{kills} kills: {shown} tests shown as saved, {there} found, none torn, none doubled");
    assert!(shown > 0 && there < kills as usize, "the instants must fall on both sides of a save");
}

fn kill_often(worker: u32, kills: u32) -> (usize, usize) {
    let mut random = StdRng::seed_from_u64(worker.into());
    let (_folder, options) = boards::qemu_options();
    let eeprom = options.eeprom.clone();
    let mut board = Qemu::start(options).unwrap();
    let (mut there, mut shown_ever) = (0, 0);
    for kill in 0..kills {
        to_the_tag(&mut board);
        // Some surely before it is saved and some surely after, however slow the emulator is; the others somewhere.
        if kill % 8 == 0 {
            board.stop().unwrap();
        }
        board.tap(Key::Next, TAP_MS).unwrap();
        let shown = if kill % 8 == 1 {
            board.wait_for_photo(&mut is_saved).is_ok()
        } else {
            board.wait(random.random_range(0..90)).unwrap();
            is_saved(&board.photo().unwrap())
        };
        board.kill();
        let now = whole_tests(&eeprom);
        assert!(now == there || now == there + 1, "kill {kill}: {there} tests became {now}");
        assert!(now == there + 1 || !shown, "kill {kill}: shown as saved, and gone");
        (there, shown_ever) = (now, shown_ever + usize::from(shown));
        board.power_on().unwrap();
    }
    (shown_ever, there)
}

/// The file behind the memory keeps exactly N writes of a save and no later one, for every N that a save has.
#[test]
fn frozen_after_every_write_of_a_save() {
    let mut before = 0;
    for writes in [0, 2, 3, 4, 5, 6] {
        let (_folder, options) = boards::qemu_options();
        let eeprom = options.eeprom.clone();
        let frozen = tenter_tests::emulator::Options { freeze_after_writes: Some(writes), ..options };
        let mut board = Qemu::start(frozen).unwrap();
        to_the_tag(&mut board);
        board.tap(Key::Next, TAP_MS).unwrap();
        board.wait_for_photo(&mut is_saved).unwrap();
        board.kill();
        let there = whole_tests(&eeprom);
        println!("{writes} writes kept: {there} tests");
        assert!(there >= before && there <= 1);
        before = there;
    }
    assert_eq!(before, 1, "two for the layout, one for the reading; then the tag, the test, and that none is in hand");
}

/// On the other board the power goes after every single byte that the memory takes: by default after some of them, since
/// `power_cut` does the same to the log on the desk.
#[test]
fn cut_after_every_byte_of_a_save() {
    let (_folder, options) = boards::pico_options();
    let eeprom = options.eeprom.clone();
    let mut board = boards::start_pico(options);
    let mut there = 0;
    // First the tag is counted as given, then the test is written, then the one in hand is forgotten: a page each.
    let some = [0, 1, 33, 63, 64, 65, 97, 127, 128, 160, 192];
    for bytes in (0..=193u64).filter(|bytes| thorough(some.contains(bytes), true)) {
        to_the_tag(&mut board);
        board.cut_after_bytes(Some(bytes)).unwrap();
        board.press(Key::Next).unwrap();
        board.wait(400).unwrap();
        let now = whole_tests(&eeprom);
        assert!(now == there || now == there + 1, "cut after {bytes}: {there} tests became {now}");
        if board.has_power() {
            // More bytes than a save writes: it was saved, and says so.
            assert!(is_saved(&board.photo().unwrap()) && now == there + 1);
            board.power_cut().unwrap();
        } else {
            assert!(bytes >= 128 || now == there, "cut after {bytes} of 128 bytes, and a test more");
        }
        there = now;
        board.power_on().unwrap();
        // Until the test is saved whole the one in hand is offered again, with its reading.
        let shown = started(&mut board);
        assert!(is_offered(&shown) || now > 0, "cut after {bytes}: {}", as_text(&shown));
        if bytes == 0 {
            board.tap(Key::Next, TAP_MS).unwrap();
            board.wait(200).unwrap();
            assert_eq!(head_of(&as_text(&board.photo().unwrap())), head_of(&golden("choice-one")));
            board.power_cut().unwrap();
            board.power_on().unwrap();
            assert!(is_offered(&started(&mut board)), "after a second cut too");
        }
    }
    // After all that the log still saves.
    to_the_tag(&mut board);
    board.tap(Key::Next, 100).unwrap();
    board.wait(300).unwrap();
    assert!(is_saved(&board.photo().unwrap()));
    assert_eq!(whole_tests(&eeprom), there + 1);
}
