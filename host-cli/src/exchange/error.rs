//! What can be wrong with a file, as data.

use std::io;

use tenter_core::TestError;

use crate::input::{Doubted, Wrong};
use crate::store::StoreError;

/// Why a file cannot be taken; then nothing of it is.
#[derive(Debug, thiserror::Error)]
pub enum ImportError {
    /// A line of an exported log.
    #[error("bad line")]
    Line(BadLine),
    /// A table.
    #[error("bad table")]
    Table(TableError),
    /// The log it goes into.
    #[error(transparent)]
    Store(#[from] StoreError),
    /// The pages of another tenter.
    #[cfg(feature = "serve")]
    #[error(transparent)]
    Pages(#[from] crate::link::pages::PagesError),
}

/// A line that cannot be taken.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct BadLine {
    /// The file, as it is called for the reader.
    pub file: String,
    /// Its line, from 1 on; 0 in an empty file.
    pub line: u64,
    /// What is wrong with it.
    pub fault: Fault,
}

/// What is wrong with a line of an exported log.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Fault {
    /// There is none.
    Empty,
    /// It is not the first line of an export.
    Foreign,
    /// A newer version wrote it.
    Newer {
        /// Its format.
        found: u64,
        /// The newest format known here.
        known: u64,
    },
    /// The system cannot read it.
    System(String),
    /// It is longer than any entry.
    TooLong,
    /// A text in it is longer than any that can be typed, in characters.
    LongText {
        /// The longest taken.
        most: usize,
    },
    /// There is more than a file may hold.
    TooMany {
        /// The most taken.
        most: u64,
        /// Of what.
        what: Many,
    },
    /// It is not UTF-8.
    NotUtf8,
    /// The file ends without its last line.
    CutOff,
    /// Something follows the last line.
    Trailing,
    /// It is not JSON.
    NotJson {
        /// Where, in characters from 1 on.
        column: usize,
        /// Whether the line has its end.
        ended: bool,
    },
    /// The last line states another number of entries.
    Count {
        /// How many were exported.
        stated: u64,
        /// How many came.
        found: u64,
    },
    /// The last line states another number of photographs.
    PhotoCount {
        /// How many were exported.
        stated: u64,
        /// How many came.
        found: u64,
    },
    /// A photograph that is not under its own name, or tells more than its picture.
    NotAPhoto,
    /// JSON, and not an entry: what the reader says.
    NotAnEntry(String),
    /// A field that would be lost.
    UnknownField(String),
    /// A text with characters that cannot be printed.
    Unprintable,
    /// An entry that no verb of this program writes.
    Unsound(Unsound),
}

/// What there may be too much of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Many {
    /// Entries in a file.
    Entries,
    /// Photographs in a file.
    Photographs,
    /// Values in one list of an entry.
    InAList,
}

/// Why an entry cannot have been written by this program.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Unsound {
    /// Its identifier.
    Id,
    /// Its time is not that of its identifier.
    Time,
    /// A time that lies ahead of the clock.
    Ahead,
    /// A force beyond those that are typed.
    Load,
    /// A recovery above 100 %.
    Recovery,
    /// A cloth without tag or name.
    Unnamed,
    /// A garment without number or name.
    Unnumbered,
    /// A garment's number of 0.
    NumberZero,
    /// A garment's name of no letters.
    NoGarmentName,
    /// A tag of 0.
    TagZero,
    /// A name of no letters: of a cloth, a pattern, a view, a role or a person.
    EmptyName,
    /// A length below zero.
    Negative,
    /// Washing marks that are not apart.
    Marks,
    /// A scale without divisions.
    Division,
    /// A length of cloth for a role.
    Cloth,
}

/// What is wrong with a table.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum TableError {
    /// It is not UTF-8.
    NotUtf8,
    /// It is no table: what the reader says.
    NotATable(String),
    /// A column that must be there is not.
    NoColumn {
        /// Its head.
        head: &'static str,
        /// The heads that are read.
        known: Vec<&'static str>,
    },
    /// A column that is not known.
    UnknownColumn(String),
    /// A column that is there twice.
    ColumnTwice(String),
    /// Rows that cannot be taken, with their lines.
    Rows(Vec<(u64, RowFault)>),
}

/// What is wrong with a row.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum RowFault {
    /// A cell cannot be read.
    Cell(Box<Wrong>),
    /// A cell stands in no column: a decimal comma between commas does that to every cell behind it.
    TooMany(String),
    /// Readings that should not be believed.
    Doubted(Box<Doubted>),
    /// The log cannot be read.
    Store(StoreError),
}

impl From<Wrong> for RowFault {
    fn from(wrong: Wrong) -> Self {
        Self::Cell(Box::new(wrong))
    }
}

impl From<StoreError> for RowFault {
    fn from(error: StoreError) -> Self {
        Self::Store(error)
    }
}

impl From<TableError> for ImportError {
    fn from(error: TableError) -> Self {
        Self::Table(error)
    }
}

/// Why a file cannot be written.
#[derive(Debug, thiserror::Error)]
pub enum ExportError {
    /// The log cannot be read.
    #[error(transparent)]
    Store(#[from] StoreError),
    /// The file cannot be written.
    #[error(transparent)]
    Output(#[from] io::Error),
    /// A test without figures, which the log does not take.
    #[error(transparent)]
    Test(#[from] TestError),
}
