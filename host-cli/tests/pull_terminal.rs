//! `tenter pull` step by step in a real terminal: a pseudo-terminal of 80 columns, its screen read by a terminal emulator.

#![cfg(unix)]
#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing)] // A test says what it expected.

mod program;

use core::num::NonZero;
use core::time::Duration;
use std::fs::File;
use std::io::{Read as _, Write as _};
use std::process::Child;
use std::sync::mpsc::{self, Receiver};
use std::thread;
use std::time::Instant;

use program::Program;
use program::pty::Pty;
use rustix::termios::{LocalModes, tcgetattr};
use vt100::Parser;

/// How long to wait for a screen.
const PATIENCE: Duration = Duration::from_secs(20);

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
        let pty = Pty::of(80, 24);
        let mut command = program.command(arguments);
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
            assert!(begun.elapsed() < PATIENCE, "no {what}:\n{}", rows.join("\n"));
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

/// The row that holds some words, and its place.
fn row<'r>(rows: &'r [String], words: &str) -> (usize, &'r str) {
    let place = rows.iter().position(|row| row.contains(words));
    let place = place.unwrap_or_else(|| panic!("no '{words}':\n{}", rows.join("\n")));
    (place, &rows[place])
}

/// The clocks run in their own line, in place, while an answer is typed below; a bell says that it is time to read.
#[test]
fn clocks_run_in_place() {
    let program = Program::with_cloth();
    let mut terminal = Terminal::start(&program, &["pull", "1", "--wants", "20%"]);
    for question in ["between the marks", "held 1 flat", "done?", "read after release"] {
        terminal.holds(question);
        terminal.keys(if question == "read after release" { "3s\r" } else { "\r" });
    }
    terminal.holds("Enter when you hold it:");
    terminal.keys("\r");
    let asked = |rows: &[String]| {
        let at = rows.iter().position(|row| row.contains("held 0 s"));
        at.is_some_and(|at| rows.get(at + 1).is_some_and(|row| row.starts_with("length while pulled")))
    };
    let (clock, _) = row(&terminal.until("clock with its question", asked), "held 0 s");
    terminal.keys("12.");
    let ran = |row: &str| row.starts_with("  held ") && !row.contains("held 0 s") && row.contains("   read it");
    let rows = terminal.until("running clock", |rows| ran(&rows[clock]));
    assert_eq!(rows[clock + 1], "length while pulled, in cm: 12.");
    terminal.keys("4\r");
    let rows = terminal.holds("stretch 24.0 %, easy");
    assert!(rows[clock].starts_with("  held ") && !rows[clock].contains("read it"), "{}", rows[clock]);
    assert_eq!(rows[clock + 1], "length while pulled, in cm: 12.4");
    terminal.keys("\r");
    // The question below the clock may scroll the screen, so both must be there.
    let asked = |rows: &[String]| {
        let at = rows.iter().position(|row| row.contains(" s (Enter: now)"));
        at.is_some_and(|at| rows.get(at + 1).is_some_and(|row| row.starts_with("length after release")))
    };
    let (clock, _) = row(&terminal.until("countdown with its question", asked), "released ");
    assert_eq!(terminal.bells, 0);
    let rows = terminal.holds("   read it now");
    assert_eq!(row(&rows, "read it now").0, clock);
    terminal.keys("10.2\r");
    terminal.holds("growth 2.0 %, ");
    assert_eq!(terminal.bells, 1);
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
    for (question, keys) in [("between the marks", "10\r"), ("held 1 flat", "\r"), ("done?", "\r")] {
        terminal.holds(question);
        terminal.keys(keys);
    }
    terminal.holds("read after release");
    terminal.keys("\r");
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
