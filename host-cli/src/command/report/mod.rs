//! `tenter report`: pages and pictures in files.

mod book;
mod cards;
mod class;
mod form;
mod gauge;
mod picture;
mod sheet;
mod sheets;

use std::io::Write as _;
use std::path::Path;

use tenter_core::Table;

pub(super) use sheet::page as sheet_page;

use super::{find, refuse_the_log_itself};
use crate::cli::reading::{ConfidenceArg, TableArg};
use crate::cli::report::{ReportVerb, UnitsArg, ViewArg};
use crate::error::Error;
use crate::finding::shown::ShownRules;
use crate::input;
use crate::log::Pattern;
use crate::store::{LogPlace, Read};
use crate::text::TextOutput;
use crate::whole_file::WholeFile;

/// Runs the verb.
///
/// # Errors
///
/// What was typed wrong, a log that cannot be read, or a file that cannot be written; here and below.
pub fn run(verb: &ReportVerb, read: &dyn Read, db: &LogPlace, screen: &mut TextOutput<'_>) -> Result<u8, Error> {
    refuse_the_log_itself(Path::new(&verb.out().out), db)?;
    match verb {
        ReportVerb::Book(args) => book::run(args, read, screen),
        ReportVerb::Cards(args) => cards::run(args, read, screen),
        ReportVerb::Sheet(args) => sheet::run(args, read, screen),
        ReportVerb::Gauge(args) => gauge::run(args, read, screen),
        ReportVerb::Sheets(args) => sheets::run(args, read, screen),
        ReportVerb::Form(args) => form::run(args, read, screen),
        ReportVerb::Class(args) => class::run(args, read, screen),
        ReportVerb::Picture(args) => picture::run(args, read, screen),
    }?;
    Ok(0)
}

impl ShownRules {
    fn of(confidence: &ConfidenceArg, table: &TableArg, units: &UnitsArg) -> Result<Self, Error> {
        let table = input::table(&table.table)?;
        let confidence = input::confidence(&confidence.confidence)?;
        Ok(Self { confidence, table, unit: units.units.unwrap_or_default() })
    }

    /// With the tool's own classes.
    fn plain(confidence: &ConfidenceArg, units: &UnitsArg) -> Result<Self, Error> {
        Self::of(confidence, &TableArg { table: Table::OWN.key.to_owned() }, units)
    }
}

/// The pattern and the view that were named.
fn view(read: &dyn Read, args: &ViewArg) -> Result<Option<(Pattern, String)>, Error> {
    let Some([pattern, view]) = args.view.as_deref() else { return Ok(None) };
    let pattern = find::pattern(read, pattern)?;
    let view = find::view(&pattern, view)?.to_owned();
    Ok(Some((pattern, view)))
}

/// Writes a file whole, or to a pipe; `said` is told where a person can read it.
fn write(out: &str, bytes: &str, said: &str, screen: &mut TextOutput<'_>) -> Result<(), Error> {
    if out == "-" {
        screen.out.write_all(bytes.as_bytes())?;
        return Ok(());
    }
    let path = Path::new(out);
    let mut file = WholeFile::begin(path)?;
    file.write_all(bytes.as_bytes()).map_err(|error| file.explain(error.into()))?;
    file.finish()?;
    writeln!(screen.out, "{said}; {} in {}", size(bytes.len()), crate::plain::shown(path))?;
    Ok(())
}

fn size(bytes: usize) -> String {
    match bytes {
        small if small < 1_000_000 => format!("{} kB", small.div_ceil(1000)),
        large => format!("{} MB", large.div_ceil(1_000_000)),
    }
}
