//! What PostgreSQL says, as what it means for the log.

use postgres::Error;
use postgres::error::SqlState;

use crate::store::{Access, StoreError};

/// What the server, or the way to it, says: one line, and what caused it.
fn said(error: &Error) -> String {
    let text = match error.as_db_error() {
        Some(said) => said.message().to_owned(),
        None => std::error::Error::source(error).map_or_else(|| error.to_string(), ToString::to_string),
    };
    text.chars().map(|c| if c.is_control() { ' ' } else { c }).collect()
}

/// An error of a connection that is being made.
pub fn explain_connecting(place: &str, error: &Error) -> StoreError {
    let (place, system) = (place.to_owned(), said(error));
    let refused = |code: &SqlState| code.code().starts_with("28");
    match error.code() {
        Some(code) if refused(code) || *code == SqlState::INSUFFICIENT_PRIVILEGE => {
            StoreError::NotLetIn { place, system }
        }
        // A password that is needed and not there is found out on this side.
        None if system.contains("password") => StoreError::NotLetIn { place, system },
        _ => StoreError::Unreachable { place, system },
    }
}

/// Whether a server that is just starting, or recovering after a crash, turned us away.
pub fn is_starting(error: &StoreError) -> bool {
    matches!(error, StoreError::Unreachable { system, .. } if system.contains("the database system is"))
}

/// Whether the connection is gone.
pub fn is_lost(error: &Error) -> bool {
    match error.code() {
        // An end by the server's keeper or a crash, and the class of connection exceptions.
        Some(code) => code.code().starts_with("57P") || code.code().starts_with("08"),
        None => error.is_closed() || std::error::Error::source(error).is_some_and(|cause| cause.is::<std::io::Error>()),
    }
}

/// An error of a question or a change.
pub fn explain(place: &str, access: Access, error: &Error) -> StoreError {
    if is_lost(error) {
        return StoreError::Lost { place: place.to_owned(), perhaps: false };
    }
    let (place, system) = (place.to_owned(), said(error));
    match error.code() {
        Some(code) if *code == SqlState::DISK_FULL => StoreError::Full { place },
        Some(code) if *code == SqlState::INSUFFICIENT_PRIVILEGE || *code == SqlState::READ_ONLY_SQL_TRANSACTION => {
            StoreError::NoRight { access, place }
        }
        Some(code) if *code == SqlState::LOCK_NOT_AVAILABLE || *code == SqlState::QUERY_CANCELED => {
            StoreError::Busy { place }
        }
        Some(code) if *code == SqlState::DATA_CORRUPTED || *code == SqlState::INDEX_CORRUPTED => {
            StoreError::Damaged { place }
        }
        Some(_) => StoreError::Other { place, system },
        // A row that does not hold what it must.
        None => StoreError::Damaged { place },
    }
}
