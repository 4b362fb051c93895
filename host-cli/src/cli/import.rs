//! The flags of `import`.

use clap::Args;

/// Examples for the help.
pub const EXAMPLES: &str = "\
Examples:
  What another log exported, with its whole history:
      tenter import log.jsonl

All of a file is taken in, or nothing. Importing it again changes nothing: what is known already stays as it is.";

/// The flags of `import`, as typed.
#[derive(Args, Debug, Clone)]
pub struct ImportArgs {
    /// File to read; - for a pipe
    #[arg(value_name = "FILE")]
    pub file: String,
    /// Print one JSON object instead of text
    #[arg(long)]
    pub json: bool,
}
