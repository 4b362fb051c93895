//! The log behind the pages of another tenter, as the other side of an exchange.

use std::collections::BTreeSet;

use super::OtherLog;
use crate::exchange::{BadLine, Fault, ImportError, jsonl};
use crate::link::pages::{PageClient, PagesError};
use crate::log::{Photo, PhotoName};
use crate::store::{LogPiece, Merged};

/// What is sent at once, in bytes; each time all of it is stored or nothing, and less is read into memory there.
const AT_ONCE: usize = 16 << 20;

/// Where the pages take and give what is exchanged.
pub mod path {
    /// All entries.
    pub const ENTRIES: &str = "/exchange/entries.txt";
    /// The names of all photographs.
    pub const PHOTOS: &str = "/exchange/photos.json";
    /// To take pieces of a log.
    pub const TAKE: &str = "/exchange/take";
}

impl OtherLog for PageClient {
    fn lines(&mut self, each: &mut dyn FnMut(&str) -> Result<(), ImportError>) -> Result<(), ImportError> {
        let bytes = self.get(path::ENTRIES)?;
        for line in jsonl::lines(&bytes, &self.name())? {
            each(line)?;
        }
        Ok(())
    }

    fn photo_names(&mut self) -> Result<BTreeSet<PhotoName>, ImportError> {
        Ok(serde_json::from_slice(&self.get(path::PHOTOS)?).map_err(|_| PagesError::Foreign)?)
    }

    fn photo(&mut self, name: PhotoName) -> Result<Option<Photo>, ImportError> {
        let photo = Photo::new(self.get(&format!("/photos/{name}"))?).filter(|photo| photo.name() == name);
        let wrong = || BadLine { file: self.name(), line: 0, fault: Fault::NotAPhoto };
        photo.map(Some).ok_or_else(|| ImportError::Line(wrong()))
    }

    fn take(&mut self, pieces: Vec<LogPiece>) -> Result<Merged, ImportError> {
        let mut all = Merged::default();
        let (mut entries, mut photos, mut bytes) = (Vec::new(), Vec::new(), 0);
        let mut pieces = pieces.into_iter().peekable();
        while let Some(piece) = pieces.next() {
            let (line, list) = match piece {
                LogPiece::Entry(entry) => {
                    let line = serde_json::to_string(&entry).map_err(|_| PagesError::Foreign)?;
                    (line, &mut entries)
                }
                LogPiece::Photo(photo) => (jsonl::photo_line(&photo), &mut photos),
            };
            bytes += line.len();
            list.push(line);
            if bytes >= AT_ONCE || pieces.peek().is_none() {
                let file = jsonl::file_of(&core::mem::take(&mut entries), &core::mem::take(&mut photos));
                bytes = 0;
                let told = self.post(path::TAKE, file.into_bytes())?;
                let merged: Merged = serde_json::from_slice(&told).map_err(|_| PagesError::Foreign)?;
                all.new += merged.new;
                all.known += merged.known;
                all.differ += merged.differ;
                all.photos += merged.photos;
            }
        }
        Ok(all)
    }
}
