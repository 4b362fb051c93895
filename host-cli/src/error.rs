//! What can go wrong on the command line, in one line that says what to type instead.

use std::io;
use std::path::Path;

use tenter_core::TestError;

use crate::deed::Refused;
use crate::exchange::{ExportError, ImportError};
use crate::finding::fit::known::NotPulled;
use crate::input::{Field, FileFault, Misuse, Why, Wrong};
use crate::link::LinkError;
use crate::plain::shown;
use crate::store::{Access, StoreError};
use crate::words::errors;

pub use crate::plain::one_line;

/// An error for the person at the keyboard. The layers below say theirs as data; its text is made in
/// [`words::errors`](crate::words::errors).
///
/// ```
/// use tenter::error::Error;
/// use tenter::input::{Field, Why, Wrong};
///
/// let error = Error::from(Wrong::new(Field::Load, "heavy", Why::NotALoad));
/// assert_eq!(error.to_string(), "--load 'heavy': type hand, or a mass or force such as 500g, 15N or 3lb");
/// ```
#[derive(Debug, thiserror::Error)]
pub enum Error {
    /// The words of the command line do not fit together.
    #[error("{}", errors::misuse(.0))]
    Misuse(Misuse),
    /// A field cannot be read.
    #[error("{}", errors::wrong(.0, errors::flag))]
    Wrong(Wrong),
    /// A deed cannot be done.
    #[error("{}", errors::refused(.0))]
    Refused(Refused),
    /// A grain that must be pulled first.
    #[error("{}", errors::not_pulled(*.0))]
    NotPulled(NotPulled),
    /// A file that cannot be read or written.
    #[error("{}", errors::file(*.access, .path, .fault))]
    File {
        /// What was tried.
        access: Access,
        /// The file.
        path: String,
        /// What is wrong with it.
        fault: FileFault,
    },
    /// A file that cannot be taken.
    #[error("{}", errors::imported(.0))]
    Import(ImportError),
    /// The log cannot be used.
    #[error("{}", errors::store(.0))]
    Store(StoreError),
    /// The handheld cannot be reached, or says no.
    #[error("{}", errors::link(.0))]
    Link(LinkError),
    /// The result could not be written.
    #[error("cannot write the result: {0}")]
    Output(#[from] io::Error),
}

impl Error {
    /// A file that cannot be read or written.
    #[must_use]
    pub fn file(access: Access, path: &Path, fault: impl Into<FileFault>) -> Self {
        Self::File { access, path: shown(path), fault: fault.into() }
    }

    /// Whether the reader of the output was closed, as `head` does.
    #[must_use]
    pub fn is_closed_pipe(&self) -> bool {
        matches!(self, Self::Output(error) if error.kind() == io::ErrorKind::BrokenPipe)
    }
}

/// The exit code of an error: anything that was typed wrong or could not be done.
pub const EXIT_CODE: u8 = 2;

impl From<Misuse> for Error {
    fn from(misuse: Misuse) -> Self {
        Self::Misuse(misuse)
    }
}

impl From<Wrong> for Error {
    fn from(wrong: Wrong) -> Self {
        Self::Wrong(wrong)
    }
}

impl From<Refused> for Error {
    fn from(refused: Refused) -> Self {
        match refused {
            Refused::Wrong(wrong) => Self::Wrong(wrong),
            Refused::Store(error) => Self::Store(error),
            other => Self::Refused(other),
        }
    }
}

impl From<NotPulled> for Error {
    fn from(not: NotPulled) -> Self {
        Self::NotPulled(not)
    }
}

impl From<StoreError> for Error {
    fn from(error: StoreError) -> Self {
        Self::Store(error)
    }
}

impl From<LinkError> for Error {
    fn from(error: LinkError) -> Self {
        Self::Link(error)
    }
}

impl From<ImportError> for Error {
    fn from(error: ImportError) -> Self {
        match error {
            ImportError::Store(error) => Self::Store(error),
            other => Self::Import(other),
        }
    }
}

impl From<ExportError> for Error {
    fn from(error: ExportError) -> Self {
        match error {
            ExportError::Store(error) => Self::Store(error),
            ExportError::Output(error) => Self::Output(error),
            ExportError::Test(error) => error.into(),
        }
    }
}

/// A test that cannot be worked out lacks a pull.
impl From<TestError> for Error {
    fn from(error: TestError) -> Self {
        Self::Wrong(Wrong::new(Field::To, "", Why::Reading(error)))
    }
}
