//! The flags of `import`.

use clap::Args;

use super::log::TagsArg;

/// Examples for the help.
pub const EXAMPLES: &str = "\
Examples:
  Another log with its whole history:
      tenter export log.jsonl
      tenter import log.jsonl

  Cloths from a spreadsheet; tenter gives each a tag where that cell is empty:
      printf 'name,tag,fibre,construction,width,length,colour\\n' > cloths.csv
      printf 'Lobby drill,,cotton,woven,150cm,2.4m,black\\n' >> cloths.csv
      tenter import cloths.csv

  Readings from a spreadsheet, saved as CSV:
      printf 'tag,pulled,grain,gauge,settling,readings,note\\n' > notebook.csv
      printf '12,2026-11-20,crosswise,10cm,yes,11.2cm 11.3cm 10.1cm@60s,washed\\n' >> notebook.csv
      tenter import notebook.csv
  A bare number has the unit of the gauge, and a bare gauge is in centimetres. 10.1cm@60s was read 60 s after the pull
  before it. Two equal rows are two tests.

  A copy of a log, on a second desk that gives tags of its own:
      tenter export - | tenter --db copy.sqlite3 import - --tags 200-299

A file is imported whole or not at all. You may import it again: entries that are known stay as they are.";

/// The flags of `import`, as typed.
#[derive(Args, Debug, Clone)]
pub struct ImportArgs {
    /// File to read; - for a pipe
    #[arg(value_name = "FILE")]
    pub file: String,
    /// The file is a table of readings or of cloths, with , ; or tabs between the cells [default: where its name ends in .csv or .tsv]
    #[arg(long)]
    pub csv: bool,
    /// Take the readings of the table as they are, though tenter doubts them
    #[arg(long)]
    pub as_read: bool,
    /// The tags of this desk.
    #[command(flatten)]
    pub range: TagsArg,
    /// Print one JSON object instead of text
    #[arg(long)]
    pub json: bool,
}

impl ImportArgs {
    /// Whether the file is a table of readings.
    #[must_use]
    pub fn is_table(&self) -> bool {
        let ending = self.file.rsplit_once('.').map(|(_, ending)| ending.to_lowercase());
        self.csv || ending.is_some_and(|ending| matches!(ending.as_str(), "csv" | "tsv"))
    }
}
