//! The real program with a log of its own in a folder that goes away.

#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing)] // A test says what it expected.
#![allow(dead_code, missing_debug_implementations)] // Each test file uses its part.

#[cfg(unix)]
pub mod pty;

use std::io::Write as _;
use std::path::PathBuf;
use std::process::{Child, Command, Output, Stdio};

use serde_json::Value;
use tempfile::TempDir;
use tenter::store::Read as _;
use tenter::store::sqlite::Sqlite;

/// The words of a line, of which those in single quotes belong together.
pub fn words(line: &str) -> Vec<String> {
    let mut words = vec![String::new()];
    let mut quoted = false;
    for c in line.chars() {
        match c {
            '\'' => quoted = !quoted,
            ' ' if !quoted => words.push(String::new()),
            c => words.last_mut().unwrap().push(c),
        }
    }
    words.retain(|word| !word.is_empty());
    words
}

/// The program and its log.
pub struct Program {
    folder: TempDir,
}

impl Program {
    /// With an empty log.
    pub fn new() -> Self {
        Self { folder: TempDir::new().unwrap() }
    }

    /// With the log that `tenter demo` makes.
    pub fn demo() -> Self {
        let program = Self::new();
        let made = program.run(&["demo", program.path().to_str().unwrap()]);
        assert_eq!(made.code, Some(0), "{}", made.err);
        program
    }

    /// With a knit under tag 1 and a woven under tag 2.
    pub fn with_cloth() -> Self {
        let program = Self::new();
        for (name, construction) in [("Doorway rib", "knit"), ("Vestry twill", "woven")] {
            let added = program.run(&["cloth", "add", name, "--construction", construction]);
            assert_eq!(added.code, Some(0), "{}", added.err);
        }
        program
    }

    /// The program with arguments, its input closed.
    pub fn command(&self, arguments: &[&str]) -> Command {
        let mut command = Command::new(env!("CARGO_BIN_EXE_tenter"));
        command.args(arguments).env("TENTER_DB", self.path()).stdin(Stdio::null());
        command
    }

    /// The file of its log.
    pub fn path(&self) -> PathBuf {
        self.folder.path().join("log.sqlite3")
    }

    /// Runs it to its end.
    pub fn run(&self, arguments: &[&str]) -> Ran {
        self.command(arguments).output().unwrap().into()
    }

    /// Runs it to its end with lines on its standard input.
    pub fn typed(&self, arguments: &[&str], lines: &str) -> Ran {
        let mut running = self.started(arguments);
        // A program that has said no already reads nothing any more.
        let _ = running.stdin.take().unwrap().write_all(lines.as_bytes());
        running.wait_with_output().unwrap().into()
    }

    /// Starts it with everything piped.
    pub fn started(&self, arguments: &[&str]) -> Child {
        let mut command = self.command(arguments);
        command.stdin(Stdio::piped()).stdout(Stdio::piped()).stderr(Stdio::piped()).spawn().unwrap()
    }

    /// Runs words that stand in one line.
    pub fn line(&self, line: &str) -> Ran {
        self.run(&line.split_whitespace().collect::<Vec<_>>())
    }

    /// Opens its log.
    pub fn log(&self) -> Sqlite {
        tenter::store::open(&self.path(), tenter::log::Here::desk()).unwrap()
    }

    /// How many entries its log holds.
    pub fn log_entries(&self) -> u64 {
        self.log().count().unwrap()
    }

    /// How many fabrics its log holds.
    pub fn log_fabrics(&self) -> usize {
        self.log().fabrics().unwrap().len()
    }

    /// What `cloth show` says of a fabric.
    pub fn shown(&self, tag: &str) -> Value {
        self.run(&["cloth", "show", tag, "--json"]).json()
    }

    /// The tests of a fabric, the oldest first.
    pub fn tests(&self, tag: &str) -> Vec<Value> {
        self.shown(tag)["tests"].as_array().unwrap().clone()
    }
}

/// What a run left behind.
#[derive(Debug)]
pub struct Ran {
    /// The exit code.
    pub code: Option<i32>,
    /// What was printed.
    pub out: String,
    /// What was printed beside it.
    pub err: String,
}

impl Ran {
    /// What was printed, as JSON.
    pub fn json(&self) -> Value {
        serde_json::from_str(&self.out).unwrap_or_else(|error| panic!("{error}: {self:?}"))
    }
}

impl From<Output> for Ran {
    fn from(output: Output) -> Self {
        let text = |bytes| String::from_utf8(bytes).unwrap();
        Self { code: output.status.code(), out: text(output.stdout), err: text(output.stderr) }
    }
}
