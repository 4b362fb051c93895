//! The flags of `export`.

use clap::{Args, ValueEnum};

/// Examples for the help.
pub const EXAMPLES: &str = "\
Examples:
  A copy of everything, as a backup or for another computer:
      tenter export log.jsonl

  Join another log with yours; both histories are kept:
      tenter demo other.sqlite3
      tenter --db other.sqlite3 export - | tenter import -

  Tables for a spreadsheet:
      tenter export --csv tests tests.csv
      tenter export --csv cloths cloths.csv
      tenter export --csv garments garments.csv
      tenter export --csv patterns patterns.csv

  For somebody who need not know who pulled, or for whom you sew:
      tenter export --without-names class.jsonl

--without-names keeps the tests of each person together, without the name; what you typed as notes stays. The tables \
leave out retired tests. Without --csv you get one entry a line, as JSON; import reads it without loss. \
A file that is there already is replaced once the new one is complete.";

/// The flags of `export`, as typed.
#[derive(Args, Debug, Clone)]
pub struct ExportArgs {
    /// File to write; - or nothing for the terminal or a pipe
    #[arg(value_name = "FILE", default_value = "-")]
    pub file: String,
    /// Write a table instead of the whole log
    #[arg(long, value_enum, value_name = "TABLE")]
    pub csv: Option<TableOf>,
    /// Leave out the names of people: who pulled, and for whom a garment is made
    #[arg(long)]
    pub without_names: bool,
}

/// What a table holds, as typed.
#[derive(ValueEnum, Debug, Clone, Copy, PartialEq, Eq)]
pub enum TableOf {
    /// One row a pull test, with its readings and figures
    Tests,
    /// One row a cloth
    #[value(alias = "fabrics")]
    Cloths,
    /// One row a garment
    Garments,
    /// One row a role of a view of a pattern
    Patterns,
}
