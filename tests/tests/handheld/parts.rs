//! Parts that are missing, busy or held down, and the line as another program opens it.

use tenter::link::{self, LinkSession};
use tenter_firmware::ui::Action;
use tenter_tests::emulator::{self, Board as _, BoardLine, HANGS, Key, Pico, SerialVia, pico};
use tenter_tests::handheld::Handheld;

use crate::boards;
use crate::walk::{as_text, golden, photo_of};
use crate::whole_test::ROOM;

/// Every key of the emulated board reads as down at power-on until it was pressed and let go once: nothing may happen.
#[test]
fn keys_down_at_power_on_mean_nothing() {
    let (_folder, options) = boards::qemu_options();
    let mut board = boards::start_qemu(emulator::Options { keys_pressed_at_start: true, ..options });
    let home = board.wait_for_photo(&mut |photo| as_text(photo) == golden("home")).unwrap();
    board.wait(2_500).unwrap(); // Longer than a hold, and than a hold that goes back.
    assert_eq!(board.photo().unwrap(), home);
    // Pressed and let go once, the key is known to be up; then it counts, and as one tap.
    board.tap(Key::More, 100).unwrap();
    board.tap(Key::More, 100).unwrap();
    let mut twin = Handheld::with_log(Vec::new());
    twin.log(true, ROOM);
    twin.act(Action::More(1));
    board.wait_for_photo(&mut |photo| *photo == photo_of(&twin)).unwrap();
}

#[test]
fn without_a_memory_chip_it_says_so_and_still_measures() {
    let (_folder, options) = boards::pico_options();
    let mut board = boards::start_pico(pico::Options { without_eeprom: true, ..options });
    assert_eq!(as_text(&board.photo().unwrap()), golden("home-no-log"));
    board.tap(Key::Next, 100).unwrap();
    assert_eq!(as_text(&board.photo().unwrap()), golden("no-log"));
    board.tap(Key::Next, 100).unwrap();
    assert_eq!(as_text(&board.photo().unwrap()), golden("settle"));
}

#[test]
fn without_a_display_the_host_is_still_answered() {
    let (_folder, options) = boards::pico_options();
    let mut board = boards::start_pico(pico::Options { without_display: true, ..options });
    assert!(board.photo().unwrap().is_dark());
    let mut session = LinkSession::open_with(BoardLine::new(&mut board), HANGS, 1).unwrap();
    assert_eq!(session.list().unwrap().unacknowledged, 0);
}

/// The chip answers nothing for 5 ms after a page; it is asked again every half millisecond, not believed to be gone.
#[test]
fn a_busy_memory_chip_is_waited_for() {
    let (_folder, options) = boards::pico_options();
    let mut board = boards::start_pico(options);
    LinkSession::open_with(BoardLine::new(&mut board), HANGS, 1).unwrap().name(7).unwrap();
    let stats = board.stats().unwrap();
    assert!(stats.eeprom_writes >= 1 && stats.eeprom_refused >= 5, "{stats:?}");
}

/// Deaf for two seconds from power-on, and reset alone in the middle: both times the picture comes by itself or with the
/// next key, and whole.
#[test]
fn a_display_that_was_lost_is_found_again() {
    let (_folder, options) = boards::pico_options();
    let mut board = Pico::start(options).unwrap();
    board.display(false, true).unwrap();
    board.wait(3_000).unwrap();
    assert!(board.photo().unwrap().is_dark());
    board.display(false, false).unwrap();
    board.wait(600).unwrap();
    assert_eq!(as_text(&board.photo().unwrap()), golden("home"));
    board.display(true, false).unwrap();
    assert!(board.photo().unwrap().is_dark());
    let mut twin = Handheld::with_log(Vec::new());
    twin.log(true, ROOM);
    twin.act(Action::More(1));
    board.tap(Key::More, 100).unwrap();
    board.wait(100).unwrap();
    assert_eq!(board.photo().unwrap(), photo_of(&twin));
}

/// The host's own link, as a user's program opens it: a serial terminal, and a socket.
#[test]
fn the_host_opens_the_line_itself() {
    for (via, prefix) in [(SerialVia::Pty, ""), (SerialVia::Socket, "unix:")] {
        let (_folder, options) = boards::qemu_options();
        let mut board = boards::start_qemu(emulator::Options { serial_via: via, ..options });
        board.wait_for_photo(&mut |photo| as_text(photo) == golden("home")).unwrap();
        let address = format!("{prefix}{}", board.serial_path().unwrap().display());
        let mut session = LinkSession::open_with(link::open(&address).unwrap(), HANGS, 1).unwrap();
        session.name(0x5EED).unwrap();
        assert_eq!(session.identify().unwrap().device, 0x5EED, "{address}");
    }
}
