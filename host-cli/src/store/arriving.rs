//! What comes from elsewhere, on its way into a log.

use tenter_core::Unit;

use super::{LogPiece, Stop, StoreError};
use crate::log::{Entry, Fact, Id, Photo, Subject};

/// An entry on its way into a log, ready to be stored.
#[derive(Clone, Debug)]
pub(super) struct Arriving {
    pub(super) id: Id,
    pub(super) subject: Subject,
    /// [What it says](Entry::body).
    pub(super) body: String,
    /// The unit, where it sets that.
    pub(super) units: Option<Unit>,
}

impl Arriving {
    pub(super) fn of(entry: &Entry) -> Result<Self, serde_json::Error> {
        let units = match entry.fact {
            Fact::UnitsSet { units } => Some(units),
            _ => None,
        };
        Ok(Self { id: entry.id, subject: entry.subject(), body: entry.body()?, units })
    }

    /// Whether this says something else than the body stored under its identifier.
    pub(super) fn differs(&self, stored: &str) -> Result<bool, serde_json::Error> {
        let fact = |body: &str| Ok::<_, serde_json::Error>(Entry::of_body(self.id, body)?.fact);
        Ok(self.body != stored && !fact(stored)?.agrees_with(&fact(&self.body)?))
    }
}

/// Pieces of a log, taken in before others are kept from writing.
#[derive(Debug, Default)]
pub(super) struct Taken {
    pub(super) entries: Vec<Arriving>,
    pub(super) photos: Vec<Photo>,
}

impl Taken {
    /// Takes them in; `unwritable` tells of one that cannot be written as JSON.
    pub(super) fn all(
        pieces: &mut dyn Iterator<Item = Result<LogPiece, Stop>>,
        unwritable: impl Fn(serde_json::Error) -> StoreError,
    ) -> Result<Self, StoreError> {
        let mut taken = Self::default();
        for piece in pieces {
            match piece? {
                LogPiece::Entry(entry) => taken.entries.push(Arriving::of(&entry).map_err(&unwritable)?),
                LogPiece::Photo(photo) => taken.photos.push(photo),
            }
        }
        Ok(taken)
    }
}
