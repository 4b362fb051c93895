//! The file of a log: begun for this user only, opened for writing or, where that cannot be, for reading.

use std::fs;
use std::io::{ErrorKind, Read as _};
use std::path::{Path, PathBuf};

use rusqlite::backup::Backup;
use rusqlite::{Connection, OpenFlags};

use super::migrate::{self, FoundFile, NEWEST};
use super::{PATIENCE, commit, explain, settle};
use crate::log::Here;
use crate::plain::{reason, shown};
use crate::store::{Access, StoreError};

/// The first bytes of every SQLite database (SQLite file format, § 1.3).
const MAGIC: &[u8; 16] = b"SQLite format 3\0";

/// Opens a log for writing.
///
/// # Errors
///
/// [`StoreError`], here and below.
pub fn open(path: &Path, here: Here) -> Result<Connection, StoreError> {
    prepare(path)?;
    if !commit::belongs(path) {
        return Err(StoreError::LeftOver { place: shown(path) });
    }
    let wrong = |error| explain(path, error);
    let flags = OpenFlags::SQLITE_OPEN_READ_WRITE | OpenFlags::SQLITE_OPEN_NO_MUTEX;
    let mut connection = Connection::open_with_flags(path, flags).map_err(wrong)?;
    connection.busy_timeout(PATIENCE).map_err(wrong)?;
    settle(&mut connection, path, here)?;
    Ok(connection)
}

/// Opens a log of which nothing can be written, not even beside it. One of an earlier schema is brought up to date in memory.
///
/// # Errors
///
/// As above; also where something was stored and is not in the file yet, which only somebody who may write can put there.
pub fn open_to_read(path: &Path, here: Here) -> Result<Connection, StoreError> {
    let wrong = |error| explain(path, error);
    if fs::metadata(beside(path, "-wal")).is_ok_and(|wal| wal.len() > 0) {
        return Err(StoreError::Busy { place: shown(path) });
    }
    let connection = unmoved(path).map_err(wrong)?;
    match migrate::look(&connection).map_err(wrong)? {
        FoundFile::Schema(NEWEST) => Ok(connection),
        FoundFile::Schema(found) if found < NEWEST => {
            let mut memory = Connection::open_in_memory().map_err(wrong)?;
            Backup::new(&connection, &mut memory).and_then(|copy| copy.step(-1)).map_err(wrong)?;
            settle(&mut memory, Path::new(super::IN_MEMORY), here)?;
            Ok(memory)
        }
        FoundFile::Schema(found) => Err(StoreError::Newer { place: shown(path), found, known: NEWEST }),
        FoundFile::Empty | FoundFile::Foreign => Err(StoreError::NotALog { place: shown(path) }),
    }
}

/// Opens the file as it lies there, whatever lies beside it, and leaves no trace.
pub fn unmoved(path: &Path) -> rusqlite::Result<Connection> {
    let flags = OpenFlags::SQLITE_OPEN_READ_ONLY | OpenFlags::SQLITE_OPEN_NO_MUTEX | OpenFlags::SQLITE_OPEN_URI;
    Connection::open_with_flags(format!("file:{}?immutable=1", escaped(path)), flags)
}

/// A path in a URI of SQLite (sqlite.org/uri.html, § 3.1).
fn escaped(path: &Path) -> String {
    let text = path.to_string_lossy();
    let slashed = if cfg!(windows) { text.replace('\\', "/") } else { text.into_owned() };
    let escaped = slashed.replace('%', "%25").replace('?', "%3f").replace('#', "%23");
    // A double slash at the beginning would name a machine.
    if escaped.starts_with("//") { format!("//{escaped}") } else { escaped }
}

/// A file that SQLite keeps beside the log.
pub fn beside(path: &Path, ending: &str) -> PathBuf {
    let mut name = path.as_os_str().to_owned();
    name.push(ending);
    PathBuf::from(name)
}

/// Makes folder and file where they are missing, for this user only, and refuses what is no database.
fn prepare(path: &Path) -> Result<(), StoreError> {
    let denied = |access, path: &Path, error: &std::io::Error| match error.kind() {
        ErrorKind::StorageFull | ErrorKind::QuotaExceeded => StoreError::Full { place: shown(path) },
        _ => StoreError::Denied { access, place: shown(path), system: reason(error) },
    };
    // A pipe would be waited for without an end.
    if fs::metadata(path).is_ok_and(|there| !there.is_file() && !there.is_dir()) {
        return Err(StoreError::NotALog { place: shown(path) });
    }
    if let Some(folder) = path.parent().filter(|folder| !folder.as_os_str().is_empty() && !folder.exists()) {
        let mut builder = fs::DirBuilder::new();
        builder.recursive(true);
        #[cfg(unix)]
        std::os::unix::fs::DirBuilderExt::mode(&mut builder, 0o700);
        builder.create(folder).map_err(|error| denied(Access::Make, folder, &error))?;
    }
    let mut options = fs::OpenOptions::new();
    options.read(true).write(true).create(true).truncate(false);
    #[cfg(unix)]
    std::os::unix::fs::OpenOptionsExt::mode(&mut options, 0o600);
    let file = options.open(path).map_err(|error| denied(Access::Write, path, &error))?;
    #[cfg(unix)]
    close_to_others(&file);
    let mut head = Vec::new();
    file.take(MAGIC.len() as u64).read_to_end(&mut head).map_err(|error| denied(Access::Read, path, &error))?;
    if head.is_empty() || head.starts_with(MAGIC) { Ok(()) } else { Err(StoreError::NotALog { place: shown(path) }) }
}

/// A log is for one user, however its file came here; whoever does not own it cannot help it.
#[cfg(unix)]
fn close_to_others(file: &fs::File) {
    use std::os::unix::fs::PermissionsExt as _;

    let Ok(there) = file.metadata() else { return };
    let mode = there.permissions().mode();
    if mode & 0o077 != 0 {
        let _ = file.set_permissions(fs::Permissions::from_mode(mode & !0o077));
    }
}
