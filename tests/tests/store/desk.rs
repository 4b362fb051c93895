//! The program on the log of an engine, in a folder of its own.

use std::path::PathBuf;
use std::process::{Command, Output, Stdio};

use tempfile::TempDir;
use tenter_tests::program::program;

/// A folder in which the program runs.
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

    /// A swatch of one colour as a PNG in the folder.
    pub fn swatch(&self, name: &str, colour: [u8; 3]) {
        let mut encoder = png::Encoder::new(std::fs::File::create(self.path(name)).unwrap(), 40, 30);
        encoder.set_color(png::ColorType::Rgb);
        encoder.write_header().unwrap().write_image_data(&colour.repeat(40 * 30)).unwrap();
    }

    /// The program on a log; its own data folder lies in this one, and nothing of the machine's is used.
    pub fn command(&self, log: &str, arguments: &[&str]) -> Command {
        let mut command = Command::new(program());
        for name in ["PGPASSWORD", "PGPASSFILE", "PGUSER", "PGSSLROOTCERT"] {
            command.env_remove(name);
        }
        command.current_dir(self.folder.path()).env("TENTER_DB", log).env("TZ", "UTC").env("HOME", self.folder.path());
        command.env_remove("XDG_DATA_HOME").args(arguments).stdin(Stdio::null());
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

    /// The one line with which the program refused.
    pub fn refused(&self, log: &str, arguments: &[&str]) -> String {
        complaint(&self.run(log, arguments))
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
