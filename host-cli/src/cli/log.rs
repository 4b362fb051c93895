//! The flags of `log`.

use clap::Subcommand;

/// Examples for the help.
#[cfg(feature = "postgres")]
pub const EXAMPLES: &str = "\
Examples:
  Is everything there that should be?
      tenter log check

  A log that a workroom shares, on a server; put the password into ~/.pgpass:
      tenter --db postgres://anna@guild.example/stash cloth list
      tenter --db postgres://anna@guild.example/stash import log.jsonl

  Who keeps the server gives each person the least rights that do:
      tenter log roles | psql stash";

/// Examples for the help.
#[cfg(not(feature = "postgres"))]
pub const EXAMPLES: &str = "\
Examples:
  Is everything there that should be?
      tenter log check";

/// What to do with the log itself.
#[derive(Subcommand, Debug, Clone, Copy, PartialEq, Eq)]
pub enum LogVerb {
    /// Check that the log is whole
    Check,
    /// Print the rights to a shared log, as SQL for psql
    #[cfg(feature = "postgres")]
    Roles,
}
