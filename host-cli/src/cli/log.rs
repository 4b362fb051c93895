//! The flags of `log`.

use clap::{Args, Subcommand};

/// Examples for the help.
#[cfg(feature = "postgres")]
pub const EXAMPLES: &str = "\
Examples:
  Is the log whole?
      tenter log check

  This desk gives the tags 100 to 199:
      tenter log tags 100-199

  If you keep a shared log, give each person only the rights they need:
      tenter log roles

A log that several people share lies on a PostgreSQL server. Pass its address with --db or TENTER_DB in place of a file, \
as postgres://USER@HOST/DATABASE, and put the password into ~/.pgpass. Pipe the rights into psql.";

/// Examples for the help.
#[cfg(not(feature = "postgres"))]
pub const EXAMPLES: &str = "\
Examples:
  Is the log whole?
      tenter log check";

const CHECK: &str = "\
Examples:
  Is the log whole? The exit code is 1 if it is not:
      tenter log check

  Make the lists anew from the entries if they do not agree:
      tenter log check --rebuild

A log is one file, whole after each command. While another tenter is reading it, what was stored last may still lie in the file \
beside it whose name ends in -wal: copy both then. If you put a copy in the place of the log, delete the files that end in -wal \
and -shm.";

/// `log check`, as typed.
#[derive(Args, Debug, Clone, PartialEq, Eq)]
pub struct LogCheckArgs {
    /// Make everything anew that the entries say
    #[arg(long)]
    pub rebuild: bool,
}

#[cfg(feature = "postgres")]
const ROLES: &str = "\
Examples:
  Pipe this into psql, as the owner of the database in which the log lies:
      tenter log roles";

const TAGS: &str = "\
Examples:
  This desk gives the tags 100 to 199, the other one 200 to 299:
      tenter log tags 100-199

  Show its tags; let it give all again:
      tenter log tags
      tenter log tags all

The next cloth gets the next tag of the range. Once the range is full, tenter cloth add says so. The log remembers which \
desk, phone or handheld gives which tags, and no other copy of it gives those, once the two were joined. Make a copy with \
tenter sync or tenter import: a copied file would give the same tags as yours. If a phone is lost, tenter log tags --free 1700-1799 gives back its tags.";

/// The tags that a desk gives, where a log begins or a copy of it.
#[derive(Args, Debug, Clone, Default, PartialEq, Eq)]
pub struct TagsArg {
    /// Tags that this desk gives from now on, such as 100-199, so that no other desk gives the same
    #[arg(long, value_name = "TAGS")]
    pub tags: Option<String>,
}

/// `log tags`, as typed.
#[derive(Args, Debug, Clone, PartialEq, Eq)]
pub struct TagsArgs {
    /// The first and the last tag, such as 100-199, or all [default: only show them]
    #[arg(value_name = "TAGS")]
    pub range: Option<String>,
    /// Tags of a desk, phone or handheld that is gone: others may give them again
    #[arg(long, value_name = "TAGS")]
    pub free: Option<String>,
}

const FORGET_PHOTOS: &str = "\
Examples:
  A photograph that you retired is off its cloth; this takes its bytes out of the file as well:
      tenter log forget-photos

A retired photograph cannot be put back after that. Files that you exported before still hold it, and importing one brings \
it back.";

/// What to do with the log itself.
#[derive(Subcommand, Debug, Clone, PartialEq, Eq)]
pub enum LogVerb {
    /// Check that the log is whole
    #[command(after_help = CHECK)]
    Check(LogCheckArgs),
    /// Set the tags that this desk gives, so that no two desks give the same
    #[command(after_help = TAGS)]
    Tags(TagsArgs),
    /// Take the bytes of retired photographs out of the log for good
    #[command(after_help = FORGET_PHOTOS)]
    ForgetPhotos,
    /// Print the rights to a shared log, as SQL for psql
    #[cfg(feature = "postgres")]
    #[command(after_help = ROLES)]
    Roles,
}
