//! `tenter import`: what another log exported, or readings typed into a table.

use std::fs::File;
use std::io::{self, BufRead, BufReader};
use std::path::Path;

use super::progress::Progress;
use crate::cli::import::ImportArgs;
use crate::error::Error;
use crate::exchange::jsonl::Exported;
use crate::exchange::table;
use crate::exchange::table::read::NewNames;
use crate::finding::tag;
use crate::input::{FileFault, Misuse};
use crate::json::import as import_json;
use crate::store::{Access, Change as _, LogPlace};
use crate::text::TextOutput;
use crate::text::import as report;

/// Runs the verb.
///
/// # Errors
///
/// A file or a log that cannot be read, and then nothing is imported.
pub fn run(args: &ImportArgs, db: &LogPlace, screen: &mut TextOutput<'_>) -> Result<u8, Error> {
    if args.as_read && !args.is_table() {
        return Err(Misuse::AsReadWithoutTable.into());
    }
    let (mut file, name) = source(&args.file)?;
    let mut named = NewNames::default();
    let (merged, shared) = if args.is_table() {
        let mut bytes = Vec::new();
        file.read_to_end(&mut bytes).map_err(|error| Error::file(Access::Read, Path::new(&args.file), &error))?;
        let mut store = db.open(screen.here)?;
        super::log::give(&mut *store, args.range.tags.as_deref())?;
        let entries = table::read::entries(&bytes, &*store, args.as_read, screen.here)?;
        named = table::read::new_names(&entries, &*store)?;
        let merged = store.merge(&mut entries.into_iter().map(Ok))?;
        (merged, tag::shared(&*store)?)
    } else {
        let entries = Exported::begin(file, &name)?;
        let mut store = db.open(screen.here)?;
        let mut progress = Progress::of("importing", None);
        let merged = store.merge_all(entries.inspect(|_| progress.step()))?;
        super::log::give(&mut *store, args.range.tags.as_deref())?;
        (merged, tag::shared(&*store)?)
    };
    if args.json {
        writeln!(screen.out, "{}", import_json::merged(merged, &shared, &named))?;
    } else {
        write!(screen.out, "{}", report::text(merged, &shared, &named, screen.width))?;
    }
    Ok(0)
}

/// What is read, and what to call it.
fn source(file: &str) -> Result<(Box<dyn BufRead>, String), Error> {
    if file == "-" {
        return Ok((Box::new(BufReader::new(io::stdin())), "standard input".to_owned()));
    }
    let path = Path::new(file);
    let wrong = |error: io::Error| Error::file(Access::Read, path, &error);
    let file = File::open(path).map_err(wrong)?;
    if file.metadata().map_err(wrong)?.is_dir() {
        return Err(Error::file(Access::Read, path, FileFault::Folder));
    }
    let name = path.file_name().map(|name| name.to_string_lossy().into_owned()).unwrap_or_default();
    Ok((Box::new(BufReader::new(file)), name))
}
