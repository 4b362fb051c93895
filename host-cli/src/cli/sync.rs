//! The flags of `sync`.

use std::path::PathBuf;

use clap::Args;

/// Examples for the help.
pub const EXAMPLES: &str = "\
Examples:
  A copy of your log for a laptop:
      tenter export - | tenter --db copy.sqlite3 import -

  Back at the desk, after both were used; each log takes what it lacks from the other:
      tenter --db copy.sqlite3 cloth add 'Aisle gabardine' woven
      tenter sync copy.sqlite3

With the log of a workroom, type its address: tenter sync postgres://anna@guild.example/stash. You may pull the plug at \
any time and sync again: nothing is lost, and nothing is stored twice. No entry is overwritten. What you have begun and \
not finished stays on your computer. The pictures that you took off a cloth are not sent.";

/// The flags of `sync`, as typed.
#[derive(Args, Debug, Clone)]
pub struct LogSyncArgs {
    /// The other log: a file, or postgres://USER@HOST/DATABASE
    #[arg(value_name = "OTHER")]
    pub other: PathBuf,
    /// Print one JSON object instead of text
    #[arg(long)]
    pub json: bool,
}
