//! The real program and the real image: demands go over, a test comes back, over a socket and over a pseudo-terminal.

use std::io::{Read as _, Write as _};
use std::path::Path;
use std::process::{Command, Output, Stdio};
use std::time::Duration;

use serialport::{SerialPort as _, TTYPort};
use tenter::store::{self, Read as _, WhichTests};
use tenter_core::record::LabelledDemand;
use tenter_core::wire::LentTags;
use tenter_core::{Demand, Grain, Length, Range, Unit};
use tenter_firmware::log::Named;
use tenter_tests::emulator::{Board, SerialVia};
use tenter_tests::handheld::Handheld;
use tenter_tests::program::program;

use crate::boards;
use crate::walk::{Walk, as_text, golden};
use crate::whole_test::{ROOM, head_of, measure};

/// A log with a fabric and a pattern.
fn stocked(db: &Path) {
    let run = |words: &[&str]| {
        let output = Command::new(program()).arg("--db").arg(db).args(words).output().unwrap();
        assert!(output.status.success(), "{words:?}: {output:?}");
    };
    run(&["cloth", "add", "Vestry twill", "--tag", "79", "--construction", "woven"]);
    run(&["pattern", "add", "Skirt", "B", "hem facing", "--crosswise", "5%"]);
}

/// What the program printed, where it did what it should.
fn said(output: Output) -> String {
    assert!(output.status.success(), "{output:?}");
    String::from_utf8(output.stdout).unwrap()
}

/// Demands to the handheld, a measurement on it, and the test back.
fn there_and_back<B: Board>(
    board: &mut B,
    name: &'static str,
    rest_ms: u32,
    mut tenter: impl FnMut(&mut B, &Path, &[&str]) -> Output,
) {
    let folder = tempfile::tempdir().unwrap();
    let db = folder.path().join("log.sqlite3");
    stocked(&db);
    let mut verb = |board: &mut B, words: &[&str]| said(tenter(board, &db, words));
    board.wait_for_photo(&mut |photo| as_text(photo) == golden("home")).unwrap();
    assert!(verb(board, &["list"]).starts_with("handheld not named yet\n"));
    let text = verb(board, &["sync", "--name", "4711"]);
    let wanted = "handheld 4711, named just now; clock set, it was not set\nnothing new on the handheld\n";
    assert_eq!(text, wanted);
    assert_eq!(verb(board, &["demands", "skirt", "b"]), "sent  Skirt B hem facing\n");

    let five = Demand::for_grain(Grain::Crosswise, Range::parse("5%", Unit::Mm).unwrap());
    let mut twin = Handheld::with_log(vec![LabelledDemand::new("Skirt B hem facing", five).unwrap()]);
    // Agreed with the log, whose one cloth wears tag 79.
    twin.tags = Some(LentTags { least: 80, next: 80, most: 99 });
    twin.names[0] = vec![Named::new(0, 79, "Vestry twill").unwrap()];
    twin.log(true, ROOM);
    let mut walk = Walk::new(board, twin, name);
    measure(&mut walk, rest_ms);
    let saved = walk.twin.saved[0].1.clone();

    let text = verb(board, &["list"]);
    assert!(text.ends_with("1 test to fetch: tenter device sync\n"), "{text}");
    let text = verb(board, &["sync"]);
    // 100 mm to 105 mm, five times, on the fabric that wears tag 79.
    assert!(text.contains("stored     1  crosswise     5.0 % ± "), "{text}");
    assert!(text.contains("  79 Vestry twill\n1 test stored\n"), "{text}");
    let store = store::open(&db, tenter::log::Here::desk()).unwrap();
    let stored = store.tests(WhichTests::All).unwrap();
    assert_eq!(stored.len(), 1);
    assert_eq!(stored[0].said.test, saved);
    assert_eq!(saved.pulls(), [Length::from_mm(105); 5]);
    assert!(!stored[0].said.clock_unset);
    assert_eq!(stored[0].said.fabric, Some(store.fabrics().unwrap()[0].id));
    assert_eq!(store.faults().unwrap(), Vec::new());
    let text = verb(board, &["sync"]);
    assert!(text.ends_with("\nnothing new on the handheld\n"), "{text}");
    // The host has taken it: home says so.
    board.wait_for_photo(&mut |photo| as_text(photo).starts_with(&head_of(&golden("home")))).unwrap();
}

fn device(db: &Path, port: &str, words: &[&str]) -> Command {
    let mut command = Command::new(program());
    command.arg("device").args(words).env("TENTER_DB", db).env("TENTER_PORT", port).env("TENTER_PATIENCE", "600");
    command.stdin(Stdio::null()).stdout(Stdio::piped()).stderr(Stdio::piped());
    command
}

#[test]
fn over_the_socket_of_the_emulated_cortex_m3_board() {
    let (_folder, mut options) = boards::qemu_options();
    options.serial_via = SerialVia::Socket;
    let mut board = boards::start_qemu(options);
    there_and_back(&mut board, "lm3s6965evb-verbs", 2_300, |board, db, words| {
        let port = format!("unix:{}", board.serial_path().unwrap().display());
        device(db, &port, words).output().unwrap()
    });
}

/// The board stands still unless it is told to run, so this test carries the bytes.
#[test]
fn over_a_pseudo_terminal_to_the_board_one_can_build() {
    let (_folder, options) = boards::pico_options();
    there_and_back(&mut boards::start_pico(options), "pico-verbs", 60_500, |board, db, words| {
        let (mut far, near) = TTYPort::pair().unwrap();
        far.set_timeout(Duration::from_millis(1)).unwrap();
        let port = near.name().unwrap();
        // Both ends are open to one program only.
        drop(near);
        let mut child = device(db, &port, words).spawn().unwrap();
        let mut bytes = [0; 256];
        while child.try_wait().unwrap().is_none() {
            // Before the program opens its end and after it closes it, there is nobody to read from or write to.
            if let Ok(count) = far.read(&mut bytes) {
                board.send(&bytes[..count]).unwrap();
            }
            let _ = far.write_all(&board.receive(5).unwrap());
        }
        child.wait_with_output().unwrap()
    });
}
