//! The flags of `export`.

use clap::Args;

/// Examples for the help.
pub const EXAMPLES: &str = "\
Examples:
  A copy of everything, for another machine or as a safeguard:
      tenter export log.jsonl

  Two people, one workroom: her log joins yours, with both histories:
      tenter --db hers.sqlite3 export - | tenter import -

One entry a line, as JSON. A file that is there already is replaced only once the new one is complete.";

/// The flags of `export`, as typed.
#[derive(Args, Debug, Clone)]
pub struct ExportArgs {
    /// File to write; - or none for the terminal or a pipe
    #[arg(value_name = "FILE", default_value = "-")]
    pub file: String,
}
