//! Where the log is kept.
//!
//! [`Store`] says what the rest of the program may ask of a place that keeps the log, in the log's own words. SQL is
//! spoken in [`sqlite`] and nowhere else.

pub mod sqlite;

use std::path::{Path, PathBuf};

use crate::error::Error;
use crate::log::{Entry, Fabric, Fact, Hands, Id, Pattern, StoredTest, Subject};

/// Which tests are wanted. Dropped tests come only where it says so.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Which {
    /// Of one fabric, dropped ones too, the oldest first.
    Of(Id),
    /// The newest of each grain of each fabric, in no order.
    Newest,
    /// Those that belong to no fabric, the oldest first.
    Inbox,
    /// All of them, the oldest first.
    All,
}

/// What can be read. Within [`Store::change`] everything read belongs to one moment.
pub trait Read {
    /// All fabrics, dropped ones too, by tag.
    ///
    /// # Errors
    ///
    /// A log that cannot be read, here and below.
    fn fabrics(&self) -> Result<Vec<Fabric>, Error>;

    /// The fabrics under a tag, dropped ones too: usually one, more after two logs were merged.
    ///
    /// # Errors
    ///
    /// As above.
    fn fabrics_tagged(&self, tag: u16) -> Result<Vec<Fabric>, Error>;

    /// The fabric with this identifier.
    ///
    /// # Errors
    ///
    /// As above.
    fn fabric(&self, id: Id) -> Result<Option<Fabric>, Error>;

    /// Tests, one by one, so that a large log need not fit into memory.
    ///
    /// # Errors
    ///
    /// As above, or what `each` says, which ends it.
    fn each_test(&self, which: Which, each: &mut dyn FnMut(StoredTest) -> Result<(), Error>) -> Result<(), Error>;

    /// The test with this identifier.
    ///
    /// # Errors
    ///
    /// As above.
    fn test(&self, id: Id) -> Result<Option<StoredTest>, Error>;

    /// All patterns with their roles, dropped ones too, in the order they were added.
    ///
    /// # Errors
    ///
    /// As above.
    fn patterns(&self) -> Result<Vec<Pattern>, Error>;

    /// How steadily she pulls.
    ///
    /// # Errors
    ///
    /// As above.
    fn hands(&self) -> Result<Hands, Error>;

    /// Every entry about one thing, in order.
    ///
    /// # Errors
    ///
    /// As above.
    fn history(&self, subject: Subject) -> Result<Vec<Entry>, Error>;

    /// Every entry in order, as JSON, one by one.
    ///
    /// # Errors
    ///
    /// As above, or what `each` says, which ends it.
    fn each_entry(&self, each: &mut dyn FnMut(&str) -> Result<(), Error>) -> Result<(), Error>;

    /// How many entries there are.
    ///
    /// # Errors
    ///
    /// As above.
    fn count(&self) -> Result<u64, Error>;

    /// Something begun and not finished, kept under a name outside the log.
    ///
    /// # Errors
    ///
    /// As above.
    fn draft(&self, name: &str) -> Result<Option<String>, Error>;

    /// The tests as a list.
    ///
    /// # Errors
    ///
    /// As above.
    fn tests(&self, which: Which) -> Result<Vec<StoredTest>, Error> {
        let mut tests = Vec::new();
        self.each_test(which, &mut |test| {
            tests.push(test);
            Ok(())
        })?;
        Ok(tests)
    }
}

/// Says what to add, from what is there.
pub type Make<'m> = dyn FnMut(&dyn Read) -> Result<Vec<Fact>, Error> + 'm;

/// A place that keeps the log. What it has reported as stored survives a crash of the program or of the machine.
pub trait Store: Read {
    /// Adds what `make` says, all or none: what `make` reads is true until its facts are stored, whoever else writes.
    /// Hands back the entries.
    ///
    /// # Errors
    ///
    /// What `make` says, and then nothing is stored; or a log that cannot be written.
    fn change(&mut self, make: &mut Make<'_>) -> Result<Vec<Entry>, Error>;

    /// Adds entries from elsewhere under the identifiers they have, all or none; those that are here already are left
    /// as they are.
    ///
    /// # Errors
    ///
    /// The first error among the entries, and then nothing is stored; or a log that cannot be written.
    fn merge(&mut self, entries: &mut dyn Iterator<Item = Result<Entry, Error>>) -> Result<Merged, Error>;

    /// Keeps something begun and not finished, or forgets it.
    ///
    /// # Errors
    ///
    /// A log that cannot be written.
    fn set_draft(&mut self, name: &str, text: Option<&str>) -> Result<(), Error>;

    /// Whether the log is whole, with one line for each fault.
    ///
    /// # Errors
    ///
    /// A log that cannot be read at all.
    fn faults(&self) -> Result<Vec<String>, Error>;
}

/// What a merge did.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Merged {
    /// Entries that were new.
    pub new: u64,
    /// Entries that were here already.
    pub known: u64,
    /// Of those, entries that say something else here than there.
    pub differ: u64,
}

/// What is wrong with a log, in one line that says what to do.
#[derive(Debug, thiserror::Error)]
pub enum StoreError {
    /// It is no log of this program.
    #[error("{0} is not a tenter log; say --db with another file, or move it away")]
    NotALog(PathBuf),
    /// A newer version of this program wrote it.
    #[error("{path} was written by a newer tenter (schema {found}, this one knows {known}); use that version")]
    Newer {
        /// The file.
        path: PathBuf,
        /// Its schema.
        found: i64,
        /// The newest schema known here.
        known: i64,
    },
    /// The file is damaged.
    #[error("{0} is damaged; nothing was changed: restore a copy, or import your last export with --db NEWFILE")]
    Damaged(PathBuf),
    /// It may not be read or written.
    #[error("may not {what} {path}: {reason}; say --db with a file of your own")]
    Denied {
        /// What was tried.
        what: &'static str,
        /// The file or folder.
        path: PathBuf,
        /// What the system says.
        reason: String,
    },
    /// The disk is full.
    #[error("the disk that holds {0} is full; nothing was changed: make room and type it again")]
    Full(PathBuf),
    /// Somebody else writes and does not end.
    #[error("{0} is in use by another tenter; try again when it has finished")]
    Busy(PathBuf),
    /// Anything else.
    #[error("cannot use {path}: {reason}")]
    Other {
        /// The file.
        path: PathBuf,
        /// What SQLite says.
        reason: String,
    },
}

/// The log's file in the user's data folder, after the XDG base directory specification.
#[must_use]
pub fn default_path() -> Option<PathBuf> {
    use etcetera::BaseStrategy as _;

    etcetera::base_strategy::Xdg::new().ok().map(|folders| folders.data_dir().join("tenter").join("log.sqlite3"))
}

/// Opens the log, and begins one where there is none.
///
/// # Errors
///
/// [`StoreError`].
pub fn open(path: &Path) -> Result<sqlite::Sqlite, Error> {
    Ok(sqlite::Sqlite::open(path)?)
}
