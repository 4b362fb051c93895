//! After every commit the one file is the whole log, and a file laid in its place is not mixed with what was left beside it.
//!
//! SQLite writes ahead: what is committed lies in `-wal` until it is copied into the file. It is copied at once here, and `-wal`
//! emptied. Where a reader or a kill prevents that, SQLite would lay what is in `-wal` over whatever file it finds. So each
//! commit leaves a stamp: a number of its own, and the number of the commit that the file held when `-wal` was begun. What is
//! in `-wal` belongs to a file if that holds the same beginning, or the commit on which `-wal` builds.

use std::fs;
use std::path::Path;

use rusqlite::config::DbConfig;
use rusqlite::{Connection, ErrorCode, OpenFlags, OptionalExtension as _, Transaction, params};

use super::{PATIENCE, Sqlite, file};
use crate::plain::shown;
use crate::store::StoreError;

/// The name under which the stamp lies beside what is begun and not finished: neither is exported.
const STAMP: &str = "file";
/// How often to look at a file into which somebody else copies just now.
const LOOKS: usize = 200;

/// The stamp of a commit; empty where none was left.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
struct Stamp {
    /// The commit that the file held when `-wal` was begun.
    base: String,
    /// The commit.
    this: String,
}

impl Stamp {
    fn read(connection: &Connection) -> rusqlite::Result<Self> {
        let select = connection.query_row("SELECT text FROM draft WHERE name = ?1", params![STAMP], |row| row.get(0));
        let text: String = select.optional()?.unwrap_or_default();
        let (base, this) = text.split_once(' ').unwrap_or_default();
        Ok(Self { base: base.to_owned(), this: this.to_owned() })
    }

    /// Of the file alone.
    fn of_file(path: &Path) -> rusqlite::Result<Self> {
        Self::read(&file::unmoved(path)?)
    }

    /// With what lies beside it, of which nothing is copied into the file.
    fn with_wal(path: &Path) -> rusqlite::Result<Self> {
        let flags = OpenFlags::SQLITE_OPEN_READ_WRITE | OpenFlags::SQLITE_OPEN_NO_MUTEX;
        let connection = Connection::open_with_flags(path, flags)?;
        connection.set_db_config(DbConfig::SQLITE_DBCONFIG_NO_CKPT_ON_CLOSE, true)?;
        connection.busy_timeout(PATIENCE)?;
        Self::read(&connection)
    }
}

/// Whether what lies in `-wal` belongs to the file.
pub fn belongs(path: &Path) -> bool {
    for _ in 0..LOOKS {
        if is_empty(path) {
            return true;
        }
        // A file into which not all was copied when the power failed may hold no stamp that can be found; one without a stamp was
        // written by an earlier version. Neither says that they are apart.
        let Ok(before) = Stamp::of_file(path) else { return true };
        let belongs = before == Stamp::default()
            || match Stamp::with_wal(path) {
                Ok(after) => after.base == before.this || after.base == before.base,
                // Together they are no database; what else may be wrong is told when it is opened.
                Err(error) => {
                    !matches!(error.sqlite_error_code(), Some(ErrorCode::DatabaseCorrupt | ErrorCode::NotADatabase))
                }
            };
        if belongs {
            return true;
        }
        // Somebody may have copied it in meanwhile.
        if Stamp::of_file(path).is_ok_and(|after| after == before) && !is_empty(path) {
            return false;
        }
        std::thread::yield_now();
    }
    true
}

fn is_empty(path: &Path) -> bool {
    fs::metadata(file::beside(path, "-wal")).map_or(0, |wal| wal.len()) == 0
}

/// Leaves the stamp of the commit to come; nobody else writes.
pub fn stamp(transaction: &Transaction<'_>, path: &Path) -> rusqlite::Result<()> {
    if transaction.path().is_none_or(str::is_empty) {
        return Ok(());
    }
    let before = Stamp::read(transaction)?;
    let is_in_file = is_empty(path) || Stamp::of_file(path).is_ok_and(|file| file.this == before.this);
    put(transaction, if is_in_file { &before.this } else { &before.base })
}

/// Stamps what is not in a file yet and will come in place of the one with this commit.
pub fn put(connection: &Connection, base: &str) -> rusqlite::Result<()> {
    let sql = "INSERT OR REPLACE INTO draft (name, text) VALUES (?1, ?2 || ' ' || hex(randomblob(8)))";
    connection.execute(sql, params![STAMP, base]).map(drop)
}

/// The commit that the file holds.
pub fn held(connection: &Connection) -> rusqlite::Result<String> {
    Stamp::read(connection).map(|stamp| stamp.this)
}

/// Copies what was committed into the file, so far as nobody reads the state before. What fails here fails later again, and
/// is told then: it is stored already.
pub fn checkpoint(connection: &Connection) {
    let _ = connection.busy_timeout(core::time::Duration::ZERO);
    let _ = connection.query_row("PRAGMA wal_checkpoint(TRUNCATE)", [], |_| Ok(()));
    let _ = connection.busy_timeout(PATIENCE);
}

impl Sqlite {
    /// Ends a transaction for good.
    pub(super) fn commit(&self, transaction: Transaction<'_>) -> Result<(), StoreError> {
        stamp(&transaction, &self.path).map_err(|error| self.wrong(error))?;
        transaction.commit().map_err(|error| match self.wrong(error) {
            // What was written may be found there when the disk is well again.
            StoreError::Other { system, .. } => StoreError::Unsure { place: shown(&self.path), system },
            other => other,
        })?;
        checkpoint(&self.connection);
        Ok(())
    }
}
