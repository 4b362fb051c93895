//! `tenter pull` step by step in a real terminal: a pseudo-terminal of 80 columns, its screen read by a terminal emulator.

#![cfg(unix)]
#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing)] // A test says what it expected.

mod program;

use core::num::NonZero;
use core::time::Duration;
use std::env;
use std::fs::{self, File};
use std::io::{Read as _, Write as _};
use std::path::Path;
use std::process::{Child, Command};
use std::sync::mpsc::{self, Receiver};
use std::thread;
use std::time::Instant;

use jiff::Timestamp;
use program::Program;
use program::pty::Pty;
use rustix::termios::{LocalModes, tcgetattr};
use tenter::cli::{self, Parsed};
use tenter::log::Here;
use tenter::text::TextOutput;
use vt100::Parser;

/// Ends a wait for a screen that never comes. No machine is so busy that it takes that long.
const HANGS: Duration = Duration::from_secs(300);

/// A program in a terminal.
struct Terminal {
    keyboard: File,
    /// The side that the program has; held open so that its modes can be read after the program has gone.
    line: File,
    bytes: Receiver<Vec<u8>>,
    screen: Parser,
    bells: usize,
    running: Child,
}

impl Terminal {
    fn start(program: &Program, arguments: &[&str]) -> Self {
        Self::of(program.command(arguments))
    }

    fn of(mut command: Command) -> Self {
        let pty = Pty::of(80, 24);
        pty.attach(&mut command);
        let running = command.env("NO_COLOR", "1").spawn().unwrap();
        let Pty { keyboard, line } = pty;
        let (rows, columns) = (NonZero::new(24).unwrap(), NonZero::new(80).unwrap());
        let mut display = keyboard.try_clone().unwrap();
        let (send, bytes) = mpsc::channel();
        thread::spawn(move || {
            let mut buffer = [0; 4096];
            while let Ok(count @ 1..) = display.read(&mut buffer) {
                if send.send(buffer[..count].to_vec()).is_err() {
                    return;
                }
            }
        });
        Self { keyboard, line, bytes, screen: Parser::new(rows, columns, 0), bells: 0, running }
    }

    fn rows(&self) -> Vec<String> {
        self.screen.screen().rows(0, 80).map(|row| row.trim_end().to_owned()).collect()
    }

    /// Waits for a screen that holds what is wanted.
    fn until(&mut self, what: &str, wanted: impl Fn(&[String]) -> bool) -> Vec<String> {
        let begun = Instant::now();
        loop {
            let rows = self.rows();
            if wanted(&rows) {
                return rows;
            }
            assert!(begun.elapsed() < HANGS, "no {what}:\n{}", rows.join("\n"));
            if let Ok(bytes) = self.bytes.recv_timeout(Duration::from_millis(50)) {
                self.bells += bytes.iter().filter(|byte| **byte == 7).count();
                self.screen.process(&bytes);
            }
        }
    }

    fn holds(&mut self, words: &str) -> Vec<String> {
        self.until(words, |rows| rows.iter().any(|row| row.contains(words)))
    }

    fn keys(&mut self, keys: &str) {
        self.keyboard.write_all(keys.as_bytes()).unwrap();
    }

    /// Whether the terminal edits and shows the line that is typed, as every shell expects.
    fn is_ordinary(&self) -> bool {
        let modes = tcgetattr(&self.line).unwrap().local_modes;
        modes.contains(LocalModes::ICANON | LocalModes::ECHO | LocalModes::ISIG)
    }
}

/// Where the clock of the program in the terminal stands, in a file that the test writes.
const CLOCK: &str = "TENTER_TEST_CLOCK";

fn set(clock: &Path, seconds: u32) {
    let next = clock.with_extension("next");
    fs::write(&next, seconds.to_string()).unwrap();
    fs::rename(next, clock).unwrap();
}

/// 2026-11-25 00:00 UTC and as many seconds as the file says.
fn our_clock() -> Timestamp {
    let seconds = fs::read_to_string(env::var_os(CLOCK).unwrap()).unwrap();
    Timestamp::from_second(1_795_564_800 + seconds.parse::<i64>().unwrap()).unwrap()
}

/// The program by our clock, in place of the test that starts it.
fn program_by_our_clock() -> ! {
    let Parsed::Run(line) = cli::parse(["tenter", "pull", "1", "--wants", "10%"]).unwrap() else { unreachable!() };
    let mut out = std::io::stdout();
    let mut screen =
        TextOutput { out: &mut out, width: 80, unicode: true, here: Here { now: our_clock, ..Here::desk() } };
    std::process::exit(tenter::command::run(&line, &mut screen).unwrap().into());
}

/// The clocks run in their own line, in place, while an answer is typed below; a bell says that it is time to read.
#[test]
fn clocks_run_in_place() {
    // The test starts itself again in the terminal: only so can the program there have a clock that the test sets.
    if env::var_os(CLOCK).is_some() {
        program_by_our_clock();
    }
    let program = Program::with_cloth();
    let folder = tempfile::tempdir().unwrap();
    let clock = folder.path().join("clock");
    set(&clock, 0);
    let mut command = Command::new(env::current_exe().unwrap());
    command.args(["--exact", "--nocapture", "--test-threads=1", "clocks_run_in_place"]);
    command.env("TENTER_DB", program.path()).env(CLOCK, &clock);
    let mut terminal = Terminal::of(command);
    for (question, keys) in [
        ("how do you hold it?", "\r"),
        ("first pull?", "\r"),
        ("between the marks, in cm", "\r"),
        ("between the marks this time", "n\r"),
        ("read after release", "3s\r"),
    ] {
        terminal.holds(question);
        terminal.keys(keys);
    }
    terminal.holds("Enter when you hold it:");
    terminal.keys("\r");
    // The clock and, below it, the question: both must be there, since the question may scroll the screen.
    let above = |rows: &[String], shown: &str, question: &str| {
        let at = rows.iter().position(|row| row.contains(shown))?;
        rows.get(at + 1)?.starts_with(question).then_some(at)
    };
    let at = |rows: &[String]| above(rows, "held 0 s", "length while pulled, in cm:");
    let line = at(&terminal.until("clock with its question", |rows| at(rows).is_some())).unwrap();
    terminal.keys("12.");
    set(&clock, 1);
    let rows = terminal.until("running clock", |rows| {
        rows[line].starts_with("  held 1 s   read it") && rows[line + 1] == "length while pulled, in cm: 12."
    });
    assert_eq!(rows.iter().filter(|row| row.starts_with("  held ")).count(), 1, "{rows:?}");
    terminal.keys("4\r");
    let rows = terminal.holds("stretch 24.0 %, easy");
    assert_eq!(rows[line], "  held 1 s");
    assert_eq!(rows[line + 1], "length while pulled, in cm: 12.4");
    terminal.holds("Enter as you let go:");
    terminal.keys("\r");
    let at = |rows: &[String]| above(rows, " s (Enter: now)", "length after release");
    let line = at(&terminal.until("countdown with its question", |rows| at(rows).is_some())).unwrap();
    assert_eq!(terminal.bells, 0);
    set(&clock, 4);
    terminal.until("end of the countdown", |rows| rows[line].ends_with("   read it now"));
    terminal.keys("10.2\r");
    terminal.holds("growth 2.0 %, 3 s after release");
    assert_eq!(terminal.bells, 1);
    terminal.holds("f) finish");
    terminal.keys("f\r");
    terminal.holds("stored    ");
    assert_eq!(terminal.running.wait().unwrap().code(), Some(0));
    assert!(terminal.is_ordinary());
    assert_eq!(program.tests("1")[0]["extended_mm"], serde_json::json!([124.0]));
}

/// Killed while a clock runs and a length is half typed: the terminal is as it was, and what was taken is offered again.
#[test]
fn a_killed_test_leaves_the_terminal_as_it_was() {
    let program = Program::with_cloth();
    let mut terminal = Terminal::start(&program, &["pull", "1"]);
    for (question, keys) in [
        ("how do you hold it?", "\r"),
        ("first pull?", "\r"),
        ("between the marks, in cm", "10\r"),
        ("between the marks this time", "n\r"),
        ("read after release", "2\r"),
    ] {
        terminal.holds(question);
        terminal.keys(keys);
    }
    terminal.holds("Pull 1:");
    terminal.keys("12.4\r");
    terminal.holds("Enter as you let go");
    terminal.keys("\r");
    terminal.holds("released ");
    terminal.keys("10");
    terminal.running.kill().unwrap();
    terminal.running.wait().unwrap();
    assert!(terminal.is_ordinary());

    let mut terminal = Terminal::start(&program, &["pull", "1"]);
    terminal.holds("a test was broken off: crosswise, marks 10 cm, 1 pull, begun");
    terminal.keys("\r");
    // The cloth has rested on since it was let go.
    terminal.holds("released ");
    terminal.keys("10.2@60s\r");
    terminal.holds("growth 2.0 %, 60 s after release");
    terminal.keys("f\r");
    terminal.holds("stored    ");
    assert_eq!(terminal.running.wait().unwrap().code(), Some(0));
    assert_eq!(program.tests("1").len(), 1);
}
