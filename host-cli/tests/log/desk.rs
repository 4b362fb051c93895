//! A folder with logs, and the program to use them.

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

    /// The program, with the log of that name in the folder.
    pub fn command(&self, log: &str, arguments: &[&str]) -> Command {
        let mut command = Command::new(env!("CARGO_BIN_EXE_tenter"));
        command.current_dir(self.folder.path()).env("TENTER_DB", self.path(log)).env("TZ", "UTC").args(arguments);
        command
    }

    pub fn run(&self, log: &str, arguments: &[&str]) -> Output {
        self.command(log, arguments).stdin(Stdio::null()).output().unwrap()
    }

    /// What the program printed; it must have been content.
    pub fn ok(&self, log: &str, arguments: &[&str]) -> String {
        let output = self.run(log, arguments);
        assert!(output.status.success(), "{arguments:?}: {output:?}");
        String::from_utf8(output.stdout).unwrap()
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
        let image = image::RgbImage::from_pixel(40, 30, image::Rgb(colour));
        image.save_with_format(self.path(name), image::ImageFormat::Png).unwrap();
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
