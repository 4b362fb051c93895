//! A file that is written whole or not at all.

use std::fs::{self, File};
use std::io::{self, BufWriter, Write};
use std::path::{Path, PathBuf};
use std::time::Duration;

use tempfile::NamedTempFile;

use crate::error::Error;
use crate::input::FileFault;
use crate::store::Access;

/// A file being written beside the one it will replace, readable by nobody else. Dropped before [`WholeFile::finish`],
/// it leaves no trace and what was there is as it was.
#[derive(Debug)]
pub struct WholeFile {
    path: PathBuf,
    to: To,
}

/// How the name of an unfinished file begins.
const BEGUN: &str = ".tenter-";
/// How it ends.
const UNFINISHED: &str = ".part";
/// After so long nobody works on it any more: whoever did was killed.
const DAY: Duration = Duration::from_secs(24 * 3600);

/// Deletes what was left in a folder by works that were killed, by the clock of the folder's disk.
fn clear_up(folder: &Path, newest: &File) {
    let Some(now) = newest.metadata().and_then(|there| there.modified()).ok() else { return };
    for left in fs::read_dir(folder).into_iter().flatten().flatten() {
        let name = left.file_name();
        let is_ours = name.to_str().is_some_and(|name| name.starts_with(BEGUN) && name.ends_with(UNFINISHED));
        let age =
            || left.metadata().and_then(|there| there.modified()).ok().and_then(|then| now.duration_since(then).ok());
        if is_ours && age().is_some_and(|age| age > DAY) {
            let _ = fs::remove_file(left.path()).or_else(|_| fs::remove_dir_all(left.path()));
        }
    }
}

#[derive(Debug)]
enum To {
    Beside(BufWriter<NamedTempFile>),
    /// A pipe or a device, which cannot be replaced atomically.
    Through(BufWriter<File>),
}

impl WholeFile {
    /// Begins to write; a place that cannot be written is refused here, before any work.
    ///
    /// # Errors
    ///
    /// A folder, a file that may not be replaced, a folder that may not be written.
    pub fn begin(path: &Path) -> Result<Self, Error> {
        // A link stays a link: what it points to is replaced.
        Self::begin_at(&fs::canonicalize(path).unwrap_or_else(|_| path.to_owned()), path)
    }

    /// As [`WholeFile::begin`], of a name that was not typed: a link that somebody laid there is replaced itself.
    ///
    /// # Errors
    ///
    /// As above.
    pub fn begin_here(path: &Path) -> Result<Self, Error> {
        match fs::symlink_metadata(path) {
            Ok(there) if there.is_symlink() => Self::beside(path.to_owned(), path),
            _ => Self::begin_at(path, path),
        }
    }

    fn begin_at(path: &Path, typed: &Path) -> Result<Self, Error> {
        let wrong = |error: io::Error| Error::file(Access::Write, typed, &error);
        let refused = |fault: FileFault| Error::file(Access::Write, typed, fault);
        let path = path.to_owned();
        match fs::metadata(&path) {
            Ok(there) if there.is_dir() => return Err(refused(FileFault::Folder)),
            Ok(there) if !there.is_file() => {
                let through = fs::OpenOptions::new().write(true).open(&path).map_err(wrong)?;
                return Ok(Self { path, to: To::Through(BufWriter::new(through)) });
            }
            Ok(there) if there.permissions().readonly() => {
                return Err(refused(FileFault::Fixed));
            }
            Ok(_) => {}
            Err(error) if error.kind() == io::ErrorKind::NotFound => {}
            Err(error) => return Err(wrong(error)),
        }
        Self::beside(path, typed)
    }

    fn beside(path: PathBuf, typed: &Path) -> Result<Self, Error> {
        let folder = path.parent().filter(|folder| !folder.as_os_str().is_empty()).unwrap_or(Path::new("."));
        let beside = tempfile::Builder::new()
            .prefix(BEGUN)
            .suffix(UNFINISHED)
            .tempfile_in(folder)
            .map_err(|error| Error::file(Access::Write, typed, &error))?;
        clear_up(folder, beside.as_file());
        Ok(Self { path, to: To::Beside(BufWriter::new(beside)) })
    }

    /// Puts the file in its place, after it has reached the disk.
    ///
    /// # Errors
    ///
    /// A full disk, and then what was there is as it was.
    pub fn finish(mut self) -> Result<(), Error> {
        self.settle().map_err(|error| Error::file(Access::Write, &self.path, &error))?;
        let To::Beside(beside) = self.to else { return Ok(()) };
        let wrong = |error: &io::Error| Error::file(Access::Write, &self.path, error);
        let temporary = beside.into_inner().map_err(|error| wrong(error.error()))?;
        temporary.persist(&self.path).map_err(|error| wrong(&error.error))?;
        // The new name outlasts a power cut too, where folders can be flushed.
        if let Some(folder) = self.path.parent().and_then(|folder| File::open(folder).ok()) {
            let _ = folder.sync_all();
        }
        Ok(())
    }

    fn settle(&mut self) -> io::Result<()> {
        self.flush()?;
        match &self.to {
            To::Beside(beside) => beside.get_ref().as_file().sync_all(),
            To::Through(_) => Ok(()),
        }
    }

    /// What went wrong while writing, with the file named.
    #[must_use]
    pub fn explain(&self, error: Error) -> Error {
        match error {
            Error::Output(error) => Error::file(Access::Write, &self.path, &error),
            other => other,
        }
    }
}

impl Write for WholeFile {
    fn write(&mut self, bytes: &[u8]) -> io::Result<usize> {
        match &mut self.to {
            To::Beside(beside) => beside.write(bytes),
            To::Through(through) => through.write(bytes),
        }
    }

    fn flush(&mut self) -> io::Result<()> {
        match &mut self.to {
            To::Beside(beside) => beside.flush(),
            To::Through(through) => through.flush(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn names(folder: &Path) -> Vec<String> {
        fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().file_name().into_string().unwrap()).collect()
    }

    #[test]
    fn a_file_appears_only_when_it_is_finished() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("out");
        fs::write(&path, "old").unwrap();
        let mut file = WholeFile::begin(&path).unwrap();
        file.write_all(b"new").unwrap();
        file.flush().unwrap();
        assert_eq!(fs::read_to_string(&path).unwrap(), "old");
        drop(file);
        assert_eq!(
            (fs::read_to_string(&path).unwrap(), names(folder.path())),
            ("old".to_owned(), vec!["out".to_owned()])
        );
        let mut file = WholeFile::begin(&path).unwrap();
        file.write_all(b"new").unwrap();
        file.finish().unwrap();
        assert_eq!(
            (fs::read_to_string(&path).unwrap(), names(folder.path())),
            ("new".to_owned(), vec!["out".to_owned()])
        );
    }

    /// Two days old, half a day old, and one of somebody else.
    #[test]
    fn what_a_kill_left_is_cleared_up_after_a_day() {
        let folder = tempfile::tempdir().unwrap();
        let mut hours = [(".tenter-old.part", 48), (".tenter-new.part", 12), ("mine.part", 48)].into_iter();
        hours.by_ref().for_each(|(name, hours)| {
            let file = File::create(folder.path().join(name)).unwrap();
            let now = file.metadata().unwrap().modified().unwrap();
            file.set_modified(now - Duration::from_secs(hours * 3600)).unwrap();
        });
        WholeFile::begin(&folder.path().join("out")).unwrap().finish().unwrap();
        let mut names = names(folder.path());
        names.sort();
        assert_eq!(names, [".tenter-new.part", "mine.part", "out"]);
    }

    #[test]
    fn what_cannot_be_written_is_refused_at_once() {
        let folder = tempfile::tempdir().unwrap();
        let text = |path: &Path| WholeFile::begin(path).unwrap_err().to_string();
        assert!(text(folder.path()).contains("it is a folder"));
        assert!(text(&folder.path().join("none").join("out")).contains("no such file"));
        let fixed = folder.path().join("fixed");
        fs::write(&fixed, "old").unwrap();
        let mut permissions = fs::metadata(&fixed).unwrap().permissions();
        permissions.set_readonly(true);
        fs::set_permissions(&fixed, permissions).unwrap();
        assert!(text(&fixed).contains("may not be changed"));
        assert_eq!(names(folder.path()), ["fixed"]);
    }
}
