//! `tenter export`: the whole log in a file.

use std::fs;
use std::io::Write;
use std::path::Path;

use crate::cli::export::ExportArgs;
use crate::error::Error;
use crate::input::exported;
use crate::report::Screen;
use crate::report::progress::Progress;
use crate::store::{self, Read};
use crate::whole_file::WholeFile;

/// Runs the verb.
///
/// # Errors
///
/// A log that cannot be read, or a file that cannot be written.
pub fn run(args: &ExportArgs, db: &Path, screen: &mut Screen<'_>) -> Result<u8, Error> {
    if args.file == "-" {
        lines(&store::open(db)?, screen.out)?;
        return Ok(0);
    }
    let path = Path::new(&args.file);
    refuse_the_log_itself(path, db)?;
    let mut file = WholeFile::begin(path)?;
    let count = lines(&store::open(db)?, &mut file).map_err(|error| file.explain(error))?;
    file.finish()?;
    writeln!(screen.out, "{count} entries in {}", crate::error::shown(path))?;
    Ok(0)
}

/// Nobody means to put the export in the place of the log.
fn refuse_the_log_itself(path: &Path, db: &Path) -> Result<(), Error> {
    let same = |name: &str| {
        let beside = db.with_file_name(format!("{}{name}", db.file_name().unwrap_or_default().to_string_lossy()));
        fs::canonicalize(path).is_ok_and(|path| fs::canonicalize(beside).is_ok_and(|beside| path == beside))
    };
    if ["", "-wal", "-shm"].into_iter().any(same) {
        let reason = "it is the log itself; say another name, such as log.jsonl".to_owned();
        return Err(Error::File { what: "write", path: crate::error::shown(path), reason });
    }
    Ok(())
}

/// All entries as lines; how many.
fn lines(read: &dyn Read, out: &mut dyn Write) -> Result<u64, Error> {
    let mut progress = Progress::of("exporting", read.count().ok());
    let mut count = 0;
    writeln!(out, "{}", exported::HEADER)?;
    read.each_entry(&mut |entry| {
        writeln!(out, "{entry}")?;
        count += 1;
        progress.step();
        Ok(())
    })?;
    writeln!(out, "{}", exported::last_line(count))?;
    Ok(count)
}
