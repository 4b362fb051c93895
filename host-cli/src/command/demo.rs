//! `tenter demo`: a log of invented cloths in a file of its own, so that a newcomer can look round.

use std::fs::{self, OpenOptions};
use std::io::ErrorKind;
use std::path::Path;

use crate::cli::demo::DemoArgs;
use crate::error::Error;
use crate::exchange::jsonl::Exported;
use crate::input::{FileFault, Misuse};
use crate::log::{EVER, Here};
use crate::plain::shown;
use crate::store::{self, Access, Change as _};
use crate::text::TextOutput;
use crate::words::done;

/// An exported log of a sewing evening: the cloths, their figures and the people are invented.
const EVENING: &str = include_str!("../../demo/evening.jsonl");

/// Runs the verb.
///
/// # Errors
///
/// A file that is there already, the user's own log, or a file that cannot be written.
pub fn run(args: &DemoArgs, screen: &mut TextOutput<'_>) -> Result<u8, Error> {
    let path = &args.file;
    if store::default_path().is_some_and(|own| own == *path) {
        return Err(Misuse::SamplesInOwnLog.into());
    }
    begin(path)?;
    // A file that was begun here and is not whole is of no use to anybody.
    fill(path, screen.here).inspect_err(|_| drop(fs::remove_file(path)))?;
    let file = typed(path);
    screen.say(&done::samples(&shown(path)))?;
    screen.say(done::LOOK_ROUND)?;
    for line in done::look_round(&file) {
        writeln!(screen.out, "{line}")?;
    }
    screen.say(done::DELETE)?;
    writeln!(screen.out, "{}", done::delete(&file))?;
    Ok(0)
}

/// Makes the file, unless there is one.
fn begin(path: &Path) -> Result<(), Error> {
    let mut options = OpenOptions::new();
    options.write(true).create_new(true);
    #[cfg(unix)]
    std::os::unix::fs::OpenOptionsExt::mode(&mut options, 0o600);
    options.open(path).map(drop).map_err(|error| match error.kind() {
        ErrorKind::AlreadyExists => Error::file(Access::Make, path, FileFault::There),
        _ => Error::file(Access::Make, path, &error),
    })
}

fn fill(path: &Path, here: Here) -> Result<(), Error> {
    let entries = Exported::begin(EVENING.as_bytes(), "evening.jsonl", EVER)?;
    store::open(path, here)?.merge_all(entries)?;
    Ok(())
}

/// A path as a shell takes it.
fn typed(path: &Path) -> String {
    let text = shown(path);
    let plain = |c: char| c.is_alphanumeric() || matches!(c, '/' | '\\' | '.' | ':' | '-' | '_' | '+');
    if text.chars().all(plain) { text } else { format!("'{}'", text.replace('\'', r"'\''")) }
}
