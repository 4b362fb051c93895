//! The flags of `sync`.

use std::path::PathBuf;

use clap::Args;

use super::log::TagsArg;

/// Examples for the help.
pub const EXAMPLES: &str = "\
Examples:
  A copy of your log for a laptop:
      tenter export - | tenter --db copy.sqlite3 import -

  Back at the desk, after both were used; each log takes what it lacks from the other:
      tenter --db copy.sqlite3 cloth add 'Aisle gabardine' woven
      tenter sync copy.sqlite3

With the log of a workroom, type its address: tenter sync postgres://anna@guild.example/stash. With a computer on which \
tenter serve runs, type what that prints, with its token: tenter sync 'http://192.168.1.20:7436/?token=...', or put the \
token into TENTER_TOKEN, where no list of processes shows it. You may pull the plug at any time and sync again: nothing is \
lost, and nothing is stored twice. No entry is overwritten. What both logs changed is told, the later change counts, and the \
history of the cloth shows both. What you have begun and not finished stays on your computer. The pictures that you took off \
a cloth are not sent.";

/// The flags of `sync`, as typed.
#[derive(Args, Debug, Clone)]
pub struct LogSyncArgs {
    /// The other log: a file, postgres://USER@HOST/DATABASE, or the address that tenter serve prints
    #[arg(value_name = "OTHER")]
    pub other: PathBuf,
    /// The tags of this desk.
    #[command(flatten)]
    pub range: TagsArg,
    /// Print one JSON object instead of text
    #[arg(long)]
    pub json: bool,
}
