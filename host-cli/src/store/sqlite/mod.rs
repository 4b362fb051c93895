//! The log in one SQLite file.

mod commit;
mod file;
mod migrate;
mod project;
mod read;
mod rebuild;
mod rows;

use std::cell::Cell;
use std::path::{Path, PathBuf};
use std::time::{Duration, Instant};

use rusqlite::{Connection, ErrorCode, Transaction, TransactionBehavior, ffi, params};

use super::naming::{self, Naming};
use super::touched::Touched;
use super::{
    Access, Arriving, Drafts, LogPiece, LogWithDrafts, Make, Merged, Read as _, Stop, Store, StoreError, Taken, Written,
};
use crate::log::{Entry, Fact, Here, Id, Photo, PhotoName, Subject};
use crate::plain::shown;
use migrate::FoundFile;

#[cfg(feature = "postgres")]
pub(super) use rows::{More, RoleAsks};

pub use migrate::{APPLICATION_ID, MIGRATIONS, NEWEST};

/// What a log that is forgotten at the end is called.
const IN_MEMORY: &str = "memory";
/// How long to wait for another program that writes.
const PATIENCE: Duration = Duration::from_secs(20);

/// A log in one SQLite file.
#[derive(Debug)]
pub struct Sqlite {
    connection: Connection,
    path: PathBuf,
    here: Here,
    who: Option<Id>,
    /// Why it can only be read, where that is so.
    unwritable: Option<StoreError>,
    /// Whether the last thing done here was to store entries: what fails after that is told with a warning.
    stored: Cell<bool>,
}

impl Sqlite {
    /// Opens the log, and begins one, readable by nobody else, where there is none. One that cannot be written, because its disk
    /// is full or only to be read, is opened for reading: whoever writes to it is told then.
    ///
    /// # Errors
    ///
    /// [`StoreError`]; the file is then as it was.
    pub fn open(path: &Path, here: Here) -> Result<Self, StoreError> {
        let of = |connection, unwritable| Self {
            connection,
            path: path.to_owned(),
            here,
            who: None,
            unwritable,
            stored: Cell::default(),
        };
        match file::open(path, here) {
            Ok(connection) => Ok(of(connection, None)),
            Err(why @ (StoreError::Denied { .. } | StoreError::Full { .. })) => match file::open_to_read(path, here) {
                Ok(connection) => Ok(of(connection, Some(why))),
                Err(_) => Err(why),
            },
            Err(other) => Err(other),
        }
    }

    /// A log that is forgotten at the end, for a trial.
    ///
    /// # Errors
    ///
    /// What SQLite says.
    pub fn in_memory(here: Here) -> Result<Self, StoreError> {
        let path = Path::new(IN_MEMORY);
        let mut connection = Connection::open_in_memory().map_err(|error| explain(path, error))?;
        settle(&mut connection, path, here)?;
        Ok(Self { connection, path: path.to_owned(), here, who: None, unwritable: None, stored: Cell::default() })
    }

    fn wrong(&self, error: rusqlite::Error) -> StoreError {
        let system = error.to_string();
        match explain(&self.path, error) {
            // Whoever is told no more than that types it again, and has it twice.
            StoreError::Other { place, .. }
            | StoreError::Denied { place, .. }
            | StoreError::Full { place }
            | StoreError::Damaged { place }
                if self.stored.get() =>
            {
                StoreError::Unsure { place, system }
            }
            other => other,
        }
    }

    /// Takes something out for good: it is overwritten, and nothing of it stays behind in the file beside the log.
    fn for_good<T>(&self, take: impl FnOnce(&Transaction<'_>) -> rusqlite::Result<T>) -> Result<T, StoreError> {
        self.connection.pragma_update(None, "secure_delete", true).map_err(|error| self.wrong(error))?;
        let transaction = self.begin()?;
        let taken = take(&transaction).map_err(|error| self.wrong(error))?;
        self.commit(transaction)?;
        let emptied = self.connection.query_row("PRAGMA wal_checkpoint(TRUNCATE)", [], |row| row.get::<_, bool>(0));
        // Another program that reads just now keeps the old bytes in the file beside the log.
        match emptied.map_err(|error| self.wrong(error))? {
            true => Err(StoreError::Busy { place: shown(&self.path) }),
            false => Ok(taken),
        }
    }

    /// Begins to write and keeps other writers out; dropped without a commit, nothing was written.
    fn begin(&self) -> Result<Transaction<'_>, StoreError> {
        if let Some(why) = &self.unwritable {
            return Err(why.clone());
        }
        // "Unchecked" means that nesting is found out at run time; `write` and `merge` take `&mut self`.
        Transaction::new_unchecked(&self.connection, TransactionBehavior::Immediate).map_err(|error| self.wrong(error))
    }

    /// As [`Store::take`], with something else in the same transaction.
    fn take_and(
        &self,
        pieces: &mut dyn Iterator<Item = Result<LogPiece, Stop>>,
        finish: impl FnOnce(&Transaction<'_>) -> rusqlite::Result<()>,
    ) -> Result<Merged, StoreError> {
        let wrong = |error| self.wrong(error);
        let taken = Taken::all(pieces, |_| StoreError::Damaged { place: shown(&self.path) })?;
        self.stored.set(false);
        let transaction = self.begin()?;
        let mut touched = Touched::default();
        let mut merged = Merged::default();
        for photo in &taken.photos {
            merged.photos += u64::from(keep(&transaction, photo).map_err(wrong)?);
        }
        for entry in &taken.entries {
            if insert(&transaction, entry).map_err(wrong)? {
                merged.new += 1;
                touched.note(entry);
            } else {
                merged.known += 1;
                merged.differ += u64::from(differs(&transaction, entry).map_err(wrong)?);
            }
        }
        project::project(touched, &transaction, self.here).and_then(|()| finish(&transaction)).map_err(wrong)?;
        self.commit(transaction)?;
        self.stored.set(merged.new > 0);
        Ok(merged)
    }
}

/// Sets the connection up and brings the schema up to date.
fn settle(connection: &mut Connection, path: &Path, here: Here) -> Result<(), StoreError> {
    let wrong = |error| explain(path, error);
    match migrate::look(connection).map_err(wrong)? {
        FoundFile::Foreign => return Err(StoreError::NotALog { place: shown(path) }),
        FoundFile::Schema(found) if found > NEWEST => {
            return Err(StoreError::Newer { place: shown(path), found, known: NEWEST });
        }
        FoundFile::Empty | FoundFile::Schema(_) => {}
    }
    // Write-ahead log, flushed at every commit: what was reported as stored outlasts a power cut.
    patiently(|| connection.pragma_update(None, "journal_mode", "WAL")).map_err(wrong)?;
    connection.pragma_update(None, "synchronous", "FULL").map_err(wrong)?;
    connection.pragma_update(None, "foreign_keys", true).map_err(wrong)?;
    connection.set_prepared_statement_cache_capacity(64);
    if matches!(migrate::look(connection).map_err(wrong)?, FoundFile::Schema(NEWEST)) {
        return Ok(());
    }
    let transaction = connection.transaction_with_behavior(TransactionBehavior::Immediate).map_err(wrong)?;
    // Somebody else may have brought it up to date while we waited.
    match migrate::look(&transaction).map_err(wrong)? {
        FoundFile::Empty => migrate::migrate(&transaction, 0, NEWEST).map_err(wrong)?,
        FoundFile::Schema(from) if from < NEWEST => {
            migrate::migrate(&transaction, from, NEWEST).map_err(wrong)?;
            project::fabrics_again(&transaction, here).map_err(wrong)?;
        }
        _ => {}
    }
    commit::stamp(&transaction, path).and_then(|()| transaction.commit()).map_err(wrong)?;
    commit::checkpoint(connection);
    Ok(())
}

/// Tries again while somebody else is at it: SQLite does not wait by itself where it changes the journal mode.
fn patiently<T>(mut work: impl FnMut() -> rusqlite::Result<T>) -> rusqlite::Result<T> {
    let begun = Instant::now();
    loop {
        match work() {
            Err(error)
                if matches!(error.sqlite_error_code(), Some(ErrorCode::DatabaseBusy | ErrorCode::DatabaseLocked))
                    && begun.elapsed() < PATIENCE =>
            {
                std::thread::sleep(Duration::from_millis(5));
            }
            done => return done,
        }
    }
}

/// SQLite's error as what it means for the log.
fn explain(path: &Path, error: rusqlite::Error) -> StoreError {
    let (place, system) = (shown(path), error.to_string());
    match error.sqlite_error_code() {
        Some(ErrorCode::NotADatabase) => StoreError::NotALog { place },
        Some(ErrorCode::DatabaseCorrupt) => StoreError::Damaged { place },
        Some(ErrorCode::DiskFull) => StoreError::Full { place },
        // There is no room for the index of what is written beside the log.
        Some(ErrorCode::SystemIoFailure) if is_extended(&error, ffi::SQLITE_IOERR_SHMSIZE) => {
            StoreError::Full { place }
        }
        Some(ErrorCode::DatabaseBusy | ErrorCode::DatabaseLocked) => StoreError::Busy { place },
        Some(ErrorCode::ReadOnly | ErrorCode::PermissionDenied) => {
            StoreError::Denied { access: Access::Write, place, system }
        }
        Some(ErrorCode::CannotOpen) => StoreError::Denied { access: Access::Open, place, system },
        Some(_) => StoreError::Other { place, system },
        // A row that does not hold what it must.
        None => StoreError::Damaged { place },
    }
}

fn is_extended(error: &rusqlite::Error, code: i32) -> bool {
    error.sqlite_error().is_some_and(|error| error.extended_code == code)
}

fn insert(connection: &Connection, arriving: &Arriving) -> rusqlite::Result<bool> {
    let Arriving { id, subject, body, .. } = arriving;
    let mut insert =
        connection.prepare_cached("INSERT OR IGNORE INTO entry (id, subject, body) VALUES (?1, ?2, ?3)")?;
    let new = insert.execute(params![id.to_string(), subject.id().to_string(), body])? == 1;
    if new {
        connection.prepare_cached("INSERT INTO arrival (entry) VALUES (?1)")?.execute(params![id.to_string()])?;
    }
    Ok(new)
}

fn keep(connection: &Connection, photo: &Photo) -> rusqlite::Result<bool> {
    let mut insert = connection.prepare_cached("INSERT OR IGNORE INTO photo (name, jpeg) VALUES (?1, ?2)")?;
    Ok(insert.execute(params![photo.name().to_string(), photo.jpeg()])? == 1)
}

/// Whether the log says something else under the identifier of `arriving`.
fn differs(connection: &Connection, arriving: &Arriving) -> rusqlite::Result<bool> {
    let mut select = connection.prepare_cached("SELECT body FROM entry WHERE id = ?1")?;
    select.query_row(params![arriving.id.to_string()], |row| {
        arriving.differs(row.get_ref(0)?.as_str()?).map_err(|error| rows::wrong(0, error))
    })
}

fn arriving(entry: &Entry) -> rusqlite::Result<Arriving> {
    Arriving::of(entry).map_err(|error| rusqlite::Error::ToSqlConversionFailure(Box::new(error)))
}

/// Names and stores what was said.
fn store(
    transaction: &Transaction<'_>,
    (here, who): (Here, Option<Id>),
    once: Option<Id>,
    facts: Vec<Fact>,
) -> rusqlite::Result<Vec<Entry>> {
    let newest = |below| read::newest(transaction, below);
    let mut naming = Naming::begin(here.now(), here.random, once, newest)?.by(who);
    let mut touched = Touched::default();
    let mut entries = Vec::with_capacity(facts.len());
    for fact in facts {
        let entry = naming.name(fact, |subject| read::last_about(transaction, subject))?;
        let arriving = arriving(&entry)?;
        insert(transaction, &arriving)?;
        touched.note(&arriving);
        entries.push(entry);
    }
    project::project(touched, transaction, here)?;
    Ok(entries)
}

impl Store for Sqlite {
    fn write(&mut self, once: Option<Id>, make: &mut Make<'_>) -> Result<Written, StoreError> {
        self.stored.set(false);
        let transaction = self.begin()?;
        let wrong = |error| self.wrong(error);
        if let Some(once) = once {
            let before = read::drawn(&transaction, once, naming::since(once, self.here.now())).map_err(wrong)?;
            if let Some(entry) = before {
                return Ok(Written::Before(Box::new(entry)));
            }
        }
        let facts = make(&*self)?;
        naming::possible(self.here.now())?;
        let who = self.who.or(self.desk()?.who);
        let entries = store(&transaction, (self.here, who), once, facts).map_err(wrong)?;
        self.commit(transaction)?;
        self.stored.set(true);
        Ok(Written::New(entries))
    }

    fn take(&mut self, pieces: &mut dyn Iterator<Item = Result<LogPiece, Stop>>) -> Result<Merged, StoreError> {
        self.take_and(pieces, |_| Ok(()))
    }

    fn forget_names(&mut self, of: Subject) -> Result<(), StoreError> {
        self.for_good(|transaction| {
            let mut update = transaction.prepare("UPDATE entry SET body = ?2 WHERE id = ?1")?;
            for mut entry in project::history(transaction, of.id())? {
                if entry.fact.forget_names() {
                    update.execute(params![entry.id.to_string(), arriving(&entry)?.body])?;
                }
            }
            drop(update);
            let mut touched = Touched::default();
            touched.note_subject(of);
            project::project(touched, transaction, self.here)
        })
    }

    fn forget_photos(&mut self, names: &[PhotoName]) -> Result<u64, StoreError> {
        self.for_good(|transaction| {
            let mut delete = transaction.prepare("DELETE FROM photo WHERE name = ?1")?;
            names.iter().try_fold(0, |gone, name| Ok(gone + delete.execute(params![name.to_string()])? as u64))
        })
    }

    fn rebuild(&mut self) -> Result<(), StoreError> {
        rebuild::rebuild(self)
    }

    fn speak_as(&mut self, who: Id) {
        self.who = Some(who);
    }
}

impl Drafts for Sqlite {
    fn draft(&self, name: &str) -> Result<Option<String>, StoreError> {
        self.one("SELECT text FROM draft WHERE name = ?1", params![name], |row| row.get(0))
    }

    fn drafts_under(&self, name: &str) -> Result<Vec<(String, String)>, StoreError> {
        let read = || -> rusqlite::Result<Vec<(String, String)>> {
            let sql = "SELECT name, text FROM draft WHERE substr(name, 1, length(?1)) = ?1 ORDER BY name";
            let mut select = self.connection.prepare_cached(sql)?;
            select.query_map(params![format!("{name}/")], |row| Ok((row.get(0)?, row.get(1)?)))?.collect()
        };
        read().map_err(|error| self.wrong(error))
    }

    fn set_draft(&mut self, name: &str, text: Option<&str>) -> Result<(), StoreError> {
        let transaction = self.begin()?;
        set_draft(&transaction, name, text).map_err(|error| self.wrong(error))?;
        self.commit(transaction)
    }
}

impl LogWithDrafts for Sqlite {
    fn take_finished(
        &mut self,
        pieces: &mut dyn Iterator<Item = Result<LogPiece, Stop>>,
        draft: &str,
    ) -> Result<Merged, StoreError> {
        self.take_and(pieces, |transaction| set_draft(transaction, draft, None))
    }
}

fn set_draft(connection: &Connection, name: &str, text: Option<&str>) -> rusqlite::Result<()> {
    match text {
        Some(text) => {
            connection.execute("INSERT OR REPLACE INTO draft (name, text) VALUES (?1, ?2)", params![name, text])
        }
        None => connection.execute("DELETE FROM draft WHERE name = ?1", params![name]),
    }
    .map(drop)
}
