//! The flags of `import`.

use clap::Args;

/// Examples for the help.
pub const EXAMPLES: &str = "\
Examples:
  What another log exported, with its whole history:
      tenter import log.jsonl

  Readings typed into a spreadsheet, saved as CSV:
      tenter import --csv notebook.csv
  with the columns
      tag,pulled,grain,gauge,settling,readings,note
      12,2026-11-20,crosswise,10cm,yes,10.5cm 10.6cm 10.1cm@60s,before washing
  A bare number has the unit of the gauge, and a bare gauge is in centimetres; 10.1cm@60s was read 60 s after the pull before it. Two rows that say the same are two
  tests; the same table, saved again by whatever program, is known.

All of a file is taken in, or nothing. Importing it again changes nothing: what is known already stays as it is.";

/// The flags of `import`, as typed.
#[derive(Args, Debug, Clone)]
pub struct ImportArgs {
    /// File to read; - for a pipe
    #[arg(value_name = "FILE")]
    pub file: String,
    /// The file is a table of readings, with , ; or tabs between the cells
    #[arg(long)]
    pub csv: bool,
    /// Take the readings of the table as they are, though tenter doubts them
    #[arg(long, requires = "csv")]
    pub as_read: bool,
    /// Print one JSON object instead of text
    #[arg(long)]
    pub json: bool,
}
