//! A folder with logs, and the program to use them: for tests of the program and for those of every engine, whose `main.rs`
//! says by `tenter()` where the program is.

#![allow(dead_code)] // Each test uses its part.

use std::io::Write as _;
use std::path::PathBuf;
use std::process::{Command, Output, Stdio};

use tempfile::TempDir;

/// A folder of its own for one test.
pub struct Desk {
    folder: TempDir,
}

impl Desk {
    pub fn new() -> Self {
        Self { folder: tempfile::tempdir().unwrap() }
    }

    /// A file in the folder.
    pub fn path(&self, name: &str) -> PathBuf {
        self.folder.path().join(name)
    }

    /// The program on a log: a file in the folder, or the address of a server. Its own data folder lies in this one, and
    /// nothing of the machine's is used.
    pub fn command(&self, log: &str, arguments: &[&str]) -> Command {
        let mut command = Command::new(crate::tenter());
        for name in ["PGPASSWORD", "PGPASSFILE", "PGUSER", "PGSSLROOTCERT", "XDG_DATA_HOME"] {
            command.env_remove(name);
        }
        command.env("TENTER_DB", if log.contains("://") { log.into() } else { self.path(log) });
        command.current_dir(self.folder.path()).env("TZ", "UTC").env("HOME", self.folder.path());
        command.args(arguments).stdin(Stdio::null());
        command
    }

    pub fn run(&self, log: &str, arguments: &[&str]) -> Output {
        self.command(log, arguments).output().unwrap()
    }

    /// What the program printed; it must have been content.
    pub fn ok(&self, log: &str, arguments: &[&str]) -> String {
        let output = self.run(log, arguments);
        assert!(output.status.success(), "{arguments:?}: {output:?}");
        String::from_utf8(output.stdout).unwrap()
    }

    /// The same where others write at the same time: asked again while the log is in use, as the program says to do.
    pub fn ok_in_turn(&self, log: &str, arguments: &[&str]) -> String {
        let in_use = |output: &Output| String::from_utf8_lossy(&output.stderr).contains("is in use by another tenter");
        // Each time it waits itself, for 20 s.
        for _ in 0..15 {
            let output = self.run(log, arguments);
            if !in_use(&output) {
                assert!(output.status.success(), "{arguments:?}: {output:?}");
                return String::from_utf8(output.stdout).unwrap();
            }
        }
        panic!("{arguments:?}: the log stays in use");
    }

    /// The one line with which the program refused.
    pub fn refused(&self, log: &str, arguments: &[&str]) -> String {
        complaint(&self.run(log, arguments))
    }

    /// Runs the program on what it reads from a pipe.
    pub fn piped(&self, log: &str, arguments: &[&str], input: &[u8]) -> Output {
        let mut command = self.command(log, arguments);
        let mut child = command.stdin(Stdio::piped()).stdout(Stdio::piped()).stderr(Stdio::piped()).spawn().unwrap();
        // It may refuse before it has read all of it.
        let _ = child.stdin.take().unwrap().write_all(input);
        child.wait_with_output().unwrap()
    }

    /// The log that `tenter demo` makes.
    pub fn demo(&self, log: &str) {
        let path = self.path(log);
        std::fs::create_dir_all(path.parent().unwrap()).unwrap();
        self.ok("own.db", &["demo", path.to_str().unwrap()]);
    }

    /// Two fabrics, one of them cut and dropped and brought back: six entries.
    pub fn fill(&self, log: &str) {
        self.ok(log, &["cloth", "add", "Vestry \"twill\" ü, 2 m", "--length", "2.4m", "--width", "148cm"]);
        self.ok(
            log,
            &["cloth", "add", "Doorway rib", "--construction", "knit", "--seen", "a market", "--price", "9/m"],
        );
        self.ok(log, &["cloth", "cut", "1", "80cm", "--note", "hem; facing"]);
        self.ok(log, &["cloth", "edit", "1", "--width", "unknown"]);
        self.ok(log, &["cloth", "retire", "1"]);
        self.ok(log, &["cloth", "return", "1"]);
    }
}

impl Desk {
    /// A swatch of one colour as a PNG in the folder.
    pub fn swatch(&self, name: &str, colour: [u8; 3]) {
        std::fs::write(self.path(name), crate::swatch_png(colour)).unwrap();
    }

    /// A cloth with two photographs, one that was learned, and a garment that is cut and done: nine entries.
    pub fn fill_memory(&self, log: &str) {
        self.swatch("red.png", [200, 30, 40]);
        self.swatch("blue.png", [30, 40, 200]);
        for line in [
            "cloth add drill --length 5m --width 150cm --washed",
            "pattern add coat - main --cloth",
            "cloth picture 1 red.png --note right",
            "cloth picture 1 blue.png",
            "cloth learned 1 --needle 90",
            "make start coat --use main=1 --for Ruth",
            "make cut 1",
            "make done 1",
        ] {
            let mut words: Vec<&str> = line.split(' ').collect();
            if line.ends_with("--cloth") {
                words.push("2m at 150cm");
            }
            self.ok(log, &words);
        }
    }
}

/// The one line with which the program refused, and nothing else.
pub fn complaint(output: &Output) -> String {
    assert_eq!(output.status.code(), Some(2), "{output:?}");
    assert!(output.stdout.is_empty(), "{output:?}");
    let text = String::from_utf8(output.stderr.clone()).unwrap();
    assert_eq!(text.matches('\n').count(), 1, "{text}");
    assert!(text.starts_with("tenter: "), "{text}");
    text
}
