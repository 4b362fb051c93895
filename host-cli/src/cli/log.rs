//! The flags of `log`.

use clap::Subcommand;

/// Examples for the help.
#[cfg(feature = "postgres")]
pub const EXAMPLES: &str = "\
Examples:
  Is everything there that should be?
      tenter log check

  Who keeps a shared log gives each person the least rights that do:
      tenter log roles

A log that several people share lies on a PostgreSQL server. Pass its address with --db or TENTER_DB in place of a file, \
as postgres://USER@HOST/DATABASE, and put the password into ~/.pgpass. Pipe the rights into psql.";

/// Examples for the help.
#[cfg(not(feature = "postgres"))]
pub const EXAMPLES: &str = "\
Examples:
  Is everything there that should be?
      tenter log check";

const CHECK: &str = "\
Examples:
  Is everything there that should be? You get 1 as the exit code if not:
      tenter log check";

#[cfg(feature = "postgres")]
const ROLES: &str = "\
Examples:
  Pipe this into psql, as the owner of the database in which the log lies:
      tenter log roles";

/// What to do with the log itself.
#[derive(Subcommand, Debug, Clone, Copy, PartialEq, Eq)]
pub enum LogVerb {
    /// Check that the log is whole
    #[command(after_help = CHECK)]
    Check,
    /// Print the rights to a shared log, as SQL for psql
    #[cfg(feature = "postgres")]
    #[command(after_help = ROLES)]
    Roles,
}
