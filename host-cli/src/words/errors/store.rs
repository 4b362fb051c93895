//! Logs that cannot be used.

use crate::store::{Access, StoreError};

/// What is wrong with a log, and what to do.
#[must_use]
pub fn store(error: &StoreError) -> String {
    match error {
        StoreError::NotALog { place } => {
            format!("{place} is not a tenter log; pass another file with --db, or move this one away")
        }
        StoreError::Newer { place, found, known } => {
            format!("{place} was written by a newer tenter (schema {found}, this one knows {known}); use that version")
        }
        StoreError::Damaged { place } => format!(
            "{place} is damaged; nothing was changed: restore a copy, or import your last export with --db NEWFILE"
        ),
        StoreError::Denied { access, place, system } => {
            let what = match access {
                Access::Make => "make",
                Access::Open => "open",
                Access::Read => "read",
                Access::Write => "write",
            };
            format!("may not {what} {place}: {system}; pass a file of your own with --db")
        }
        StoreError::Full { place } => {
            format!("the disk that holds {place} is full; nothing was changed: make room and type it again")
        }
        StoreError::Busy { place } => format!("{place} is in use by another tenter; try again when it has finished"),
        StoreError::Other { place, system } => format!("cannot use {place}: {system}"),
        StoreError::Stopped => "the log was not written; type it again".to_owned(),
    }
}
