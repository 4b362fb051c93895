//! What can go wrong, in one line that says what to type instead.

use std::io;
use std::path::Path;

use tenter_core::TestError;

use crate::link::LinkError;
use crate::store::StoreError;

/// An error for the person at the keyboard.
///
/// ```
/// use tenter::error::Error;
///
/// let error = Error::argument("--load", "heavy", "type hand, or a force such as 500g or 15N");
/// assert_eq!(error.to_string(), "--load 'heavy': type hand, or a force such as 500g or 15N");
/// ```
#[derive(Debug, thiserror::Error)]
pub enum Error {
    /// The words of the command line do not fit together.
    #[error("{0}")]
    Usage(String),
    /// One argument cannot be read.
    #[error("{flag} '{text}': {remedy}")]
    Argument {
        /// The flag, as typed.
        flag: String,
        /// What was typed after it.
        text: String,
        /// What is wrong and what to type instead.
        remedy: String,
    },
    /// A reading that cannot be.
    #[error("{flag} '{text}': {reason}")]
    Reading {
        /// The flag, as typed.
        flag: String,
        /// What was typed after it.
        text: String,
        /// What the core says.
        reason: TestError,
    },
    /// A file that cannot be read or written.
    #[error("cannot {what} {path}: {reason}")]
    File {
        /// What was tried.
        what: &'static str,
        /// The file.
        path: String,
        /// What is wrong, and what to do.
        reason: String,
    },
    /// A line of a file that cannot be taken, and so none of it.
    #[error("{file}, line {line}: {remedy}; nothing was imported")]
    Line {
        /// The file.
        file: String,
        /// Its line, from 1 on.
        line: u64,
        /// What is wrong, and what to do.
        remedy: String,
    },
    /// A table with bad lines, one told a line.
    #[error("{0}")]
    Table(String),
    /// The log cannot be used.
    #[error(transparent)]
    Store(#[from] StoreError),
    /// The handheld cannot be reached, or says no.
    #[error(transparent)]
    Link(#[from] LinkError),
    /// The result could not be written.
    #[error("cannot write the result: {0}")]
    Output(#[from] io::Error),
}

impl Error {
    /// An argument that cannot be read.
    pub fn argument(flag: &str, text: &str, remedy: impl ToString) -> Self {
        Self::Argument { flag: flag.to_owned(), text: one_line(text), remedy: remedy.to_string() }
    }

    /// A reading that cannot be.
    #[must_use]
    pub fn reading(flag: &str, text: &str, reason: TestError) -> Self {
        Self::Reading { flag: flag.to_owned(), text: one_line(text), reason }
    }

    /// A file that cannot be read or written.
    #[must_use]
    pub fn file(what: &'static str, path: &Path, error: &io::Error) -> Self {
        Self::File { what, path: shown(path), reason: reason(error) }
    }

    /// Whether the reader of the output went away, as `head` does.
    #[must_use]
    pub fn is_closed_pipe(&self) -> bool {
        matches!(self, Self::Output(error) if error.kind() == io::ErrorKind::BrokenPipe)
    }
}

/// What was typed, short and without anything that would break the line.
#[must_use]
pub fn one_line(text: &str) -> String {
    let mut short: String = text.chars().take(40).flat_map(char::escape_debug).collect();
    if text.chars().nth(40).is_some() {
        short.push('…');
    }
    short.replace("\\'", "'").replace("\\\"", "\"")
}

/// A path for the reader, on one line.
#[must_use]
pub fn shown(path: &Path) -> String {
    path.display()
        .to_string()
        .chars()
        .flat_map(|c| {
            if c.is_control() { c.escape_debug().to_string() } else { c.to_string() }.chars().collect::<Vec<_>>()
        })
        .collect()
}

/// What the system says, without its number.
#[must_use]
pub fn reason(error: &io::Error) -> String {
    let text = error.to_string();
    text.split_once(" (os error").map_or(text.as_str(), |(words, _)| words).to_lowercase()
}
