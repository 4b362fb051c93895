//! A file that is written whole or not at all.

use std::fs::{self, File};
use std::io::{self, BufWriter, Write};
use std::path::{Path, PathBuf};

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
        let wrong = |error: io::Error| Error::file(Access::Write, path, &error);
        let refused = |fault: FileFault| Error::file(Access::Write, path, fault);
        // A link stays a link: what it points to is replaced.
        let path = fs::canonicalize(path).unwrap_or_else(|_| path.to_owned());
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
        let folder = path.parent().filter(|folder| !folder.as_os_str().is_empty()).unwrap_or(Path::new("."));
        let beside = tempfile::Builder::new().prefix(".tenter-").suffix(".part").tempfile_in(folder).map_err(wrong)?;
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
