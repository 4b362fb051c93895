//! What can go wrong with a log, as data.

use jiff::Timestamp;

/// What is wrong with a log.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum StoreError {
    /// What is there is not a log of this program.
    #[error("not a tenter log")]
    NotALog {
        /// Where the log was looked for.
        place: String,
    },
    /// A newer version of this program wrote it.
    #[error("log of a newer tenter")]
    Newer {
        /// Where the log is.
        place: String,
        /// Its schema.
        found: i64,
        /// The newest schema known here.
        known: i64,
    },
    /// The log is damaged.
    #[error("damaged log")]
    Damaged {
        /// Where the log is.
        place: String,
    },
    /// The system does not allow it.
    #[error("access denied")]
    Denied {
        /// What was tried.
        access: Access,
        /// The file or folder.
        place: String,
        /// What the system says.
        system: String,
    },
    /// There is no room left.
    #[error("disk full")]
    Full {
        /// Where the log is.
        place: String,
    },
    /// Another program writes and does not end.
    #[error("log in use")]
    Busy {
        /// Where the log is.
        place: String,
    },
    /// An address of a log on a server that cannot be read.
    #[error("invalid address")]
    Address(AddressFault),
    /// The server cannot be reached.
    #[error("server out of reach")]
    Unreachable {
        /// The log's address.
        place: String,
        /// What the system or the server says.
        system: String,
    },
    /// The server does not let this user in.
    #[error("not let in")]
    NotLetIn {
        /// The log's address.
        place: String,
        /// What the server says.
        system: String,
    },
    /// The user may not do that to a log on a server.
    #[error("no right")]
    NoRight {
        /// What was tried.
        access: Access,
        /// The log's address.
        place: String,
    },
    /// The connection was lost.
    #[error("connection lost")]
    Lost {
        /// The log's address.
        place: String,
        /// Whether what was to be stored may have been: the connection was lost while the server was storing it.
        perhaps: bool,
    },
    /// A database whose texts are not in UTF-8.
    #[error("encoding of the database")]
    Encoding {
        /// The log's address.
        place: String,
        /// The encoding of its texts.
        encoding: String,
    },
    /// The clock by which entries are named cannot be right.
    #[error("clock is wrong")]
    Clock {
        /// What it shows.
        shows: Timestamp,
    },
    /// The disk failed while something was stored, so that it may be there or not.
    #[error("perhaps stored")]
    Unsure {
        /// Where the log is.
        place: String,
        /// What the engine says.
        system: String,
    },
    /// What lies beside the log, of a work that was cut off, belongs to another file than this one.
    #[error("left over from another log")]
    LeftOver {
        /// Where the log is.
        place: String,
    },
    /// Anything else.
    #[error("log unusable")]
    Other {
        /// Where the log is.
        place: String,
        /// What the engine says.
        system: String,
    },
    /// The caller's own closure ended the work: the caller knows why, see [`caught`](super::caught).
    #[error("ended by the caller")]
    Stopped,
}

/// What is wrong with the address of a log on a server.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum AddressFault {
    /// It holds a password, which every user of the machine could read.
    Password,
    /// A value of `sslmode` that is not known.
    SslMode(String),
    /// Nothing that can be read as an address; what is wrong.
    Unreadable(String),
    /// Certificates that cannot be read.
    Certificates {
        /// The file.
        file: String,
        /// What is wrong with it.
        system: String,
    },
    /// No home folder that could hold what is begun and not finished.
    NoHome,
    /// A file without a certificate in it.
    NoCertificate {
        /// The file.
        file: String,
    },
    /// This program was built without PostgreSQL.
    NotBuilt,
}

/// What was tried on a log, or on its file or folder.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Access {
    /// To make it.
    Make,
    /// To open it.
    Open,
    /// To read it.
    Read,
    /// To write it.
    Write,
}

/// What is not as it should be in a log.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum LogFault {
    /// A row of a table names something that is not there.
    Dangling {
        /// The table.
        table: String,
    },
    /// Entries without a number of arrival, or numbers without an entry.
    Unnumbered,
    /// Things that an entry added and no table holds.
    Unfolded {
        /// How many.
        count: u64,
    },
    /// Rows of a table that are not what the entries say.
    Differs {
        /// The table.
        table: String,
        /// How many.
        count: u64,
    },
    /// Entries that cannot be read.
    Unreadable {
        /// How many.
        count: u64,
    },
    /// What the engine's own check says.
    Engine(String),
}

/// The caller ends the work, for a reason of its own.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Stop;

impl From<Stop> for StoreError {
    fn from(Stop: Stop) -> Self {
        Self::Stopped
    }
}
