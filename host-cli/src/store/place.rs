//! Where a log is: in a file, or on a server.

use std::fs;
use std::path::{Path, PathBuf};

use super::{AddressFault, LogWithDrafts, StoreError, sqlite};
use crate::log::Here;
use crate::plain::shown;

/// Where a log is.
#[derive(Clone, Debug)]
pub enum LogPlace {
    /// In a file of SQLite.
    File(PathBuf),
    /// On a server of PostgreSQL.
    #[cfg(feature = "postgres")]
    Server(Box<super::postgres::Server>),
}

impl LogPlace {
    /// What a person typed: the name of a file, or an address that begins with `postgres://` or `postgresql://`.
    ///
    /// # Errors
    ///
    /// [`StoreError::Address`].
    pub fn of(typed: &Path) -> Result<Self, StoreError> {
        let text = typed.to_str().unwrap_or_default();
        if !["postgres://", "postgresql://"].iter().any(|scheme| text.starts_with(scheme)) {
            return Ok(Self::File(typed.to_owned()));
        }
        #[cfg(feature = "postgres")]
        return super::postgres::Server::parse(text).map(|server| Self::Server(Box::new(server)));
        #[cfg(not(feature = "postgres"))]
        return Err(StoreError::Address(AddressFault::NotBuilt));
    }

    /// Opens the log, and begins one where there is none.
    ///
    /// # Errors
    ///
    /// [`StoreError`].
    pub fn open(&self, here: Here) -> Result<Box<dyn LogWithDrafts>, StoreError> {
        Ok(match self {
            Self::File(path) => Box::new(sqlite::Sqlite::open(path, here)?),
            #[cfg(feature = "postgres")]
            Self::Server(server) => {
                let drafts = super::default_path().map(|log| log.with_file_name("drafts"));
                let drafts = drafts.ok_or(StoreError::Address(AddressFault::NoHome))?;
                Box::new(super::postgres::Postgres::open(server, &drafts, here)?)
            }
        })
    }

    /// Opens the log unless there is none yet.
    ///
    /// # Errors
    ///
    /// [`StoreError`].
    pub fn open_if_there(&self, here: Here) -> Result<Option<Box<dyn LogWithDrafts>>, StoreError> {
        match self {
            Self::File(path) if !path.exists() => Ok(None),
            _ => self.open(here).map(Some),
        }
    }

    /// The file, where it is one.
    #[must_use]
    pub fn file(&self) -> Option<&Path> {
        match self {
            Self::File(path) => Some(path),
            #[cfg(feature = "postgres")]
            Self::Server(_) => None,
        }
    }

    /// Whether both are the same log, as far as their names tell.
    #[must_use]
    pub fn is(&self, other: &Self) -> bool {
        match (self.file(), other.file()) {
            (Some(one), Some(two)) => one == two || same_file(one, two),
            _ => self.is_on_same_server(other),
        }
    }

    #[cfg(feature = "postgres")]
    fn is_on_same_server(&self, other: &Self) -> bool {
        matches!((self, other), (Self::Server(one), Self::Server(two)) if one.is(two))
    }

    #[cfg(not(feature = "postgres"))]
    const fn is_on_same_server(&self, _: &Self) -> bool {
        false
    }

    /// What to call it.
    #[must_use]
    pub fn name(&self) -> String {
        match self {
            Self::File(path) => shown(path),
            #[cfg(feature = "postgres")]
            Self::Server(server) => server.name().to_owned(),
        }
    }
}

fn same_file(one: &Path, two: &Path) -> bool {
    fs::canonicalize(one).is_ok_and(|one| fs::canonicalize(two).is_ok_and(|two| one == two))
}
