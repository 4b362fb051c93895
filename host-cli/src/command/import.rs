//! `tenter import`: what another log exported.

use std::fs::File;
use std::io::{self, BufRead, BufReader};
use std::path::Path;

use crate::cli::import::ImportArgs;
use crate::error::Error;
use crate::exchange::exported::Exported;
use crate::exchange::typed as table;
use crate::log::Ids;
use crate::store::{self, Merged, Read, Store};
use crate::text::Screen;
use crate::text::import as report;
use crate::text::progress::Progress;

/// Runs the verb.
///
/// # Errors
///
/// A file or a log that cannot be read, and then nothing is imported.
pub fn run(args: &ImportArgs, db: &Path, screen: &mut Screen<'_>) -> Result<u8, Error> {
    let (mut file, name) = source(&args.file)?;
    if args.csv {
        return csv(args, &mut file, &mut store::open(db)?, screen);
    }
    let entries = Exported::begin(file, &name)?;
    let mut store = store::open(db)?;
    let merged = merge(&mut store, entries)?;
    let shared = shared_tags(&store)?;
    if args.json {
        writeln!(screen.out, "{}", report::json(merged, &shared))?;
    } else {
        write!(screen.out, "{}", report::text(merged, &shared, screen.width))?;
    }
    Ok(0)
}

/// Readings typed into a table: all of them, or none.
fn csv(args: &ImportArgs, file: &mut dyn BufRead, store: &mut dyn Store, screen: &mut Screen<'_>) -> Result<u8, Error> {
    let mut bytes = Vec::new();
    file.read_to_end(&mut bytes).map_err(|error| Error::file("read", Path::new(&args.file), &error))?;
    let text = String::from_utf8(bytes)
        .map_err(|_| Error::Usage("the table is not UTF-8; save it once more as CSV, UTF-8".to_owned()))?;
    let entries = table::entries(&text, store, Ids::now())?;
    let merged = store.merge(&mut entries.into_iter().map(Ok))?;
    if args.json {
        writeln!(screen.out, "{}", report::json(merged, &[]))?;
    } else {
        write!(screen.out, "{}", report::text(merged, &[], screen.width))?;
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
        let reason = "it is a folder; say the name of a file in it".to_owned();
        return Err(Error::File { what: "read", path: crate::error::shown(path), reason });
    }
    let name = path.file_name().map(|name| name.to_string_lossy().into_owned()).unwrap_or_default();
    Ok((Box::new(BufReader::new(file)), name))
}

/// Merges entries, all or none.
fn merge<R: BufRead>(store: &mut dyn Store, entries: Exported<R>) -> Result<Merged, Error> {
    let mut progress = Progress::of("importing", None);
    store.merge(&mut entries.inspect(|_| progress.step()))
}

/// The tags that two live fabrics wear, as may happen when two logs come together.
fn shared_tags(read: &dyn Read) -> Result<Vec<report::SharedTag>, Error> {
    let mut live = read.fabrics()?;
    live.retain(|fabric| !fabric.dropped);
    let mut free = live.iter().map(|fabric| fabric.tag).max().unwrap_or(0);
    let mut shared = Vec::new();
    for worn in live.chunk_by(|one, other| one.tag == other.tag) {
        let [first, second, ..] = worn else { continue };
        free = free.saturating_add(1);
        shared.push(report::SharedTag {
            tag: first.tag,
            names: worn.iter().map(|fabric| fabric.name.clone()).collect(),
            second: second.id,
            free,
        });
    }
    Ok(shared)
}
