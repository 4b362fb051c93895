//! `tenter export`: the whole log in a file.

use std::collections::HashMap;
use std::io::Write;
use std::path::Path;

use super::refuse_the_log_itself;
use crate::cli::export::{ExportArgs, TableOf};
use crate::error::Error;
use crate::exchange::exported;
use crate::exchange::table;
use crate::log::{Fabric, Id};
use crate::store::{self, Read, Which};
use crate::text::Screen;
use crate::text::progress::Progress;
use crate::whole_file::WholeFile;

/// Runs the verb.
///
/// # Errors
///
/// A log that cannot be read, or a file that cannot be written.
pub fn run(args: &ExportArgs, db: &Path, screen: &mut Screen<'_>) -> Result<u8, Error> {
    let write = |out: &mut dyn Write| {
        let store = store::open(db)?;
        match args.csv {
            None => lines(&store, out).map(|count| format!("{count} entries")),
            Some(TableOf::Tests) => tests(&store, out).map(|count| format!("{count} tests")),
            Some(TableOf::Fabrics) => fabrics(&store, out).map(|count| format!("{count} fabrics")),
        }
    };
    if args.file == "-" {
        write(screen.out)?;
        return Ok(0);
    }
    let path = Path::new(&args.file);
    refuse_the_log_itself(path, db)?;
    let mut file = WholeFile::begin(path)?;
    let written = write(&mut file).map_err(|error| file.explain(error))?;
    file.finish()?;
    writeln!(screen.out, "{written} in {}", crate::error::shown(path))?;
    Ok(0)
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

/// One row a test, the oldest first; how many.
fn tests(read: &dyn Read, out: &mut dyn Write) -> Result<u64, Error> {
    let fabrics: HashMap<Id, Fabric> = read.fabrics()?.into_iter().map(|fabric| (fabric.id, fabric)).collect();
    let hands = read.hands()?;
    let mut progress = Progress::of("exporting", None);
    let mut rows = csv::Writer::from_writer(out);
    rows.write_record(table::TESTS).map_err(failed)?;
    let mut count = 0;
    read.each_test(Which::All, &mut |test| {
        let fabric = test.said.fabric.and_then(|id| fabrics.get(&id));
        rows.write_record(table::test(&test, fabric, &hands)?).map_err(failed)?;
        count += 1;
        progress.step();
        Ok(())
    })?;
    rows.flush()?;
    Ok(count)
}

/// One row a fabric, by tag, dropped ones too; how many.
fn fabrics(read: &dyn Read, out: &mut dyn Write) -> Result<u64, Error> {
    let mut rows = csv::Writer::from_writer(out);
    rows.write_record(table::FABRICS).map_err(failed)?;
    let mut count = 0;
    for fabric in read.fabrics()? {
        rows.write_record(table::fabric(&fabric)).map_err(failed)?;
        count += 1;
    }
    rows.flush()?;
    Ok(count)
}

/// A row is never refused, so only the output can fail.
fn failed(error: csv::Error) -> Error {
    match error.into_kind() {
        csv::ErrorKind::Io(error) => Error::Output(error),
        other => Error::Output(std::io::Error::other(format!("{other:?}"))),
    }
}
