//! `tenter export`: the whole log in a file.

use std::io::Write;
use std::path::Path;

use super::progress::Progress;
use super::refuse_the_log_itself;
use crate::cli::export::{ExportArgs, TableOf};
use crate::error::Error;
use crate::exchange::{jsonl, table};
use crate::plain::shown;
use crate::store::LogPlace;
use crate::text::TextOutput;
use crate::whole_file::WholeFile;

/// Runs the verb.
///
/// # Errors
///
/// A log that cannot be read, or a file that cannot be written.
pub fn run(args: &ExportArgs, db: &LogPlace, screen: &mut TextOutput<'_>) -> Result<u8, Error> {
    let (here, names) = (screen.here, !args.without_names);
    let write = |out: &mut dyn Write| -> Result<String, Error> {
        let store = db.open(here)?;
        let total = if args.csv.is_none() { store.count().ok() } else { None };
        let mut progress = Progress::of("exporting", total);
        let mut step = || progress.step();
        Ok(match args.csv {
            None => format!("{} entries", jsonl::write(&*store, names, out, &mut step)?),
            Some(TableOf::Tests) => format!("{} tests", table::write::tests(&*store, names, out, &mut step)?),
            Some(TableOf::Garments) => format!("{} garments", table::write::garments(&*store, names, out)?),
            Some(TableOf::Patterns) => format!("{} patterns", table::write::patterns(&*store, out)?),
            Some(TableOf::Cloths) => format!("{} cloths", table::write::fabrics(&*store, out)?),
        })
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
    writeln!(screen.out, "{written} in {}", shown(path))?;
    Ok(0)
}
