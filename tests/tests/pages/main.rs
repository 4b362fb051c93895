//! The pages of `tenter report`, made by the program itself and opened in a real browser: on a phone, a tablet and a desk,
//! light and dark, and on paper.

mod golden;
mod hostile;
mod large;
mod looks;
mod paper;
mod search;

use std::path::{Path, PathBuf};
use std::process::Command;

use tempfile::TempDir;
use tenter_tests::program::program;

/// The log of the samples that `tenter demo` makes: invented cloths and patterns.
const EVENING: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/../host-cli/demo/evening.jsonl");

/// A folder with a log, in which pages are made.
struct Desk {
    folder: TempDir,
}

impl Desk {
    /// With the log of the evening.
    fn evening() -> Self {
        let desk = Self::empty();
        desk.run(&["import", EVENING]);
        desk
    }

    fn empty() -> Self {
        Self { folder: tempfile::tempdir().unwrap() }
    }

    fn path(&self, name: &str) -> PathBuf {
        self.folder.path().join(name)
    }

    /// Runs the program, which must succeed, and gives what it said.
    fn run(&self, words: &[&str]) -> String {
        let output = self.command(words).output().unwrap();
        assert!(output.status.success(), "tenter {words:?}: {}", String::from_utf8_lossy(&output.stderr));
        String::from_utf8(output.stdout).unwrap()
    }

    /// Runs the program, which must understand, and gives what it found, whatever the answer.
    fn told(&self, words: &[&str]) -> String {
        let output = self.command(words).output().unwrap();
        assert!(output.status.code().is_some_and(|code| code != 2), "{}", String::from_utf8_lossy(&output.stderr));
        String::from_utf8(output.stdout).unwrap()
    }

    fn command(&self, words: &[&str]) -> Command {
        let mut command = Command::new(program());
        command.args(words).current_dir(self.folder.path()).env("TENTER_DB", self.path("log.sqlite3"));
        command.env("TZ", "UTC").env("COLUMNS", "80");
        command
    }

    /// Makes a report; where it lies.
    fn report(&self, words: &[&str]) -> PathBuf {
        self.run(&[&["report"], words, &["--out", "made"]].concat());
        let page = words[0] != "picture";
        let named = self.path(if page { "made.html" } else { "made.svg" });
        std::fs::rename(self.path("made"), &named).unwrap();
        named
    }
}

/// Where photographs and printed pages are kept to be looked at.
fn kept(name: &str) -> PathBuf {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join("pages");
    std::fs::create_dir_all(&folder).unwrap();
    folder.join(name)
}
