//! What was begun at this desk, for a log that is kept elsewhere: one file each, in the user's data folder.

use std::fs;
use std::io::{ErrorKind, Write as _};
use std::path::{Path, PathBuf};

use super::{Access, Drafts, StoreError};
use crate::plain::{reason, shown};

/// A folder with a file for each draft.
#[derive(Clone, Debug)]
pub struct DraftFiles {
    folder: PathBuf,
}

impl DraftFiles {
    /// In a folder, which need not be there yet.
    #[must_use]
    pub fn new(folder: &Path) -> Self {
        Self { folder: folder.to_owned() }
    }

    /// The file of a name, whatever characters it has: letters and digits as they are, others as `_` and two digits.
    fn file(&self, name: &str) -> PathBuf {
        let letter = |byte: u8| match byte {
            b'a'..=b'z' | b'A'..=b'Z' | b'0'..=b'9' => char::from(byte).to_string(),
            other => format!("_{other:02x}"),
        };
        self.folder.join(name.bytes().map(letter).collect::<String>())
    }

    /// The name of a file.
    fn name(file: &str) -> Option<String> {
        let (first, others) = file.split_once('_').unwrap_or((file, ""));
        let mut bytes = first.as_bytes().to_vec();
        for part in others.split('_').filter(|part| !part.is_empty()) {
            bytes.push(u8::from_str_radix(part.get(..2)?, 16).ok()?);
            bytes.extend(part.get(2..)?.bytes());
        }
        String::from_utf8(bytes).ok()
    }
}

fn denied(access: Access, path: &Path, error: &std::io::Error) -> StoreError {
    match error.kind() {
        ErrorKind::StorageFull => StoreError::Full { place: shown(path) },
        _ => StoreError::Denied { access, place: shown(path), system: reason(error) },
    }
}

impl Drafts for DraftFiles {
    fn draft(&self, name: &str) -> Result<Option<String>, StoreError> {
        let path = self.file(name);
        match fs::read_to_string(&path) {
            Ok(text) => Ok(Some(text)),
            Err(error) if error.kind() == ErrorKind::NotFound => Ok(None),
            Err(error) => Err(denied(Access::Read, &path, &error)),
        }
    }

    fn drafts_under(&self, name: &str) -> Result<Vec<(String, String)>, StoreError> {
        let files = match fs::read_dir(&self.folder) {
            Ok(files) => files,
            Err(error) if error.kind() == ErrorKind::NotFound => return Ok(Vec::new()),
            Err(error) => return Err(denied(Access::Read, &self.folder, &error)),
        };
        let names = files.filter_map(|file| Self::name(file.ok()?.file_name().to_str()?));
        let mut names: Vec<String> = names.filter(|found| found.starts_with(&format!("{name}/"))).collect();
        names.sort();
        let text = |name: String| Ok(self.draft(&name)?.map(|text| (name, text)));
        names.into_iter().filter_map(|name| text(name).transpose()).collect()
    }

    /// Written beside and moved into place, so that a kill leaves the old text or the new one.
    fn set_draft(&mut self, name: &str, text: Option<&str>) -> Result<(), StoreError> {
        let path = self.file(name);
        let Some(text) = text else {
            return match fs::remove_file(&path) {
                Err(error) if error.kind() != ErrorKind::NotFound => Err(denied(Access::Write, &path, &error)),
                _ => Ok(()),
            };
        };
        let mut builder = fs::DirBuilder::new();
        builder.recursive(true);
        #[cfg(unix)]
        std::os::unix::fs::DirBuilderExt::mode(&mut builder, 0o700);
        builder.create(&self.folder).map_err(|error| denied(Access::Make, &self.folder, &error))?;
        let write = || -> std::io::Result<()> {
            let mut file = tempfile::NamedTempFile::new_in(&self.folder)?;
            file.write_all(text.as_bytes())?;
            file.as_file().sync_all()?;
            file.persist(&path)?;
            Ok(())
        };
        write().map_err(|error| denied(Access::Write, &path, &error))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_draft_is_kept_replaced_and_forgotten() {
        let folder = tempfile::tempdir().unwrap();
        let mut drafts = DraftFiles::new(&folder.path().join("below/drafts"));
        for name in ["pull/01M0", "pull_2f01M0", "../x"] {
            assert_eq!(drafts.draft(name), Ok(None));
            for text in ["one\ntwo", "three"] {
                drafts.set_draft(name, Some(text)).unwrap();
                assert_eq!(drafts.draft(name).unwrap().as_deref(), Some(text));
            }
        }
        assert_eq!(fs::read_dir(folder.path().join("below/drafts")).unwrap().count(), 3, "each in the folder");
        drafts.set_draft("pull/01M0/b", Some("four")).unwrap();
        let under = |name: &str| drafts.drafts_under(name).unwrap();
        assert_eq!(under("pull/01M0"), [("pull/01M0/b".to_owned(), "four".to_owned())]);
        let names: Vec<String> = under("pull").into_iter().map(|(name, _)| name).collect();
        assert_eq!(names, ["pull/01M0", "pull/01M0/b"]);
        assert_eq!(DraftFiles::new(Path::new("/none")).drafts_under("pull"), Ok(Vec::new()));
        drafts.set_draft("../x", None).unwrap();
        drafts.set_draft("../x", None).unwrap();
        assert_eq!(drafts.draft("../x"), Ok(None));
    }
}
