//! `tenter import`: what another log exported, or readings typed into a table.

use std::fs::File;
use std::io::{self, BufRead, BufReader};
use std::path::Path;

use super::progress::Progress;
use crate::cli::import::ImportArgs;
use crate::error::Error;
use crate::exchange::jsonl::Exported;
use crate::exchange::table;
use crate::finding::tag;
use crate::json::import as import_json;
use crate::plain::shown;
use crate::store::{Change as _, LogPlace};
use crate::text::TextOutput;
use crate::text::import as report;

/// Runs the verb.
///
/// # Errors
///
/// A file or a log that cannot be read, and then nothing is imported.
pub fn run(args: &ImportArgs, db: &LogPlace, screen: &mut TextOutput<'_>) -> Result<u8, Error> {
    if args.as_read && !args.is_table() {
        return Err(Error::Usage("--as-read belongs to a table of readings; add --csv if the file is one".to_owned()));
    }
    let (mut file, name) = source(&args.file)?;
    let (merged, shared) = if args.is_table() {
        let mut bytes = Vec::new();
        file.read_to_end(&mut bytes).map_err(|error| Error::file("read", Path::new(&args.file), &error))?;
        let mut store = db.open(screen.here)?;
        let entries = table::read::entries(&bytes, &*store, args.as_read, screen.here)?;
        (store.merge(&mut entries.into_iter().map(Ok))?, Vec::new())
    } else {
        let entries = Exported::begin(file, &name)?;
        let mut store = db.open(screen.here)?;
        let mut progress = Progress::of("importing", None);
        let merged = store.merge_all(entries.inspect(|_| progress.step()))?;
        (merged, tag::shared(&*store)?)
    };
    if args.json {
        writeln!(screen.out, "{}", import_json::merged(merged, &shared))?;
    } else {
        write!(screen.out, "{}", report::text(merged, &shared, screen.width))?;
    }
    Ok(0)
}

/// What is read, and what to call it.
fn source(file: &str) -> Result<(Box<dyn BufRead>, String), Error> {
    if file == "-" {
        return Ok((Box::new(BufReader::new(io::stdin())), "standard input".to_owned()));
    }
    let path = Path::new(file);
    let wrong = |error: io::Error| Error::file("read", path, &error);
    let file = File::open(path).map_err(wrong)?;
    if file.metadata().map_err(wrong)?.is_dir() {
        let reason = "it is a folder; type the name of a file in it".to_owned();
        return Err(Error::File { what: "read", path: shown(path), reason });
    }
    let name = path.file_name().map(|name| name.to_string_lossy().into_owned()).unwrap_or_default();
    Ok((Box::new(BufReader::new(file)), name))
}
