//! The handheld: [`open()`] a line to it, then hold a [`LinkSession`]. Beside it, the pages of another tenter.

#[cfg(feature = "serve")]
pub mod pages;
mod serial;
mod session;
mod socket;

use std::io::{self, Read, Write};
use std::time::Duration;

use tenter_core::record::RecordError;
use tenter_core::wire::Refusal;

pub use serial::ports;
pub use session::{Fetched, LinkSession};

/// How long a line may take to open, and to take what is written.
const SLOW: Duration = Duration::from_secs(5);

/// A line to a handheld. What is written is sent at once, without a flush; a read that got nothing for the set time
/// ends in [`io::ErrorKind::TimedOut`] or [`io::ErrorKind::WouldBlock`], one that never will in no bytes.
pub trait Transport: Read + Write {
    /// How long a read may wait; never zero.
    ///
    /// # Errors
    ///
    /// Whatever the operating system says.
    fn set_patience(&mut self, patience: Duration) -> io::Result<()>;
}

impl<T: Transport + ?Sized> Transport for Box<T> {
    fn set_patience(&mut self, patience: Duration) -> io::Result<()> {
        (**self).set_patience(patience)
    }
}

/// Opens the line that an address names: `tcp:HOST:PORT`, on Unix also `unix:PATH`, else a serial port such as
/// `/dev/ttyACM0` or `COM3`.
///
/// # Errors
///
/// [`LinkError::Open`].
///
/// ```
/// use tenter::link::{LinkError, NotOpened, open};
///
/// assert!(matches!(open("tcp:localhost"), Err(LinkError::Open { why: NotOpened::NoPort, .. })));
/// ```
pub fn open(address: &str) -> Result<Box<dyn Transport>, LinkError> {
    let opened = match address.split_once(':') {
        Some(("tcp", place)) => socket::tcp(place),
        #[cfg(unix)]
        Some(("unix", path)) => socket::unix(path),
        _ => serial::open(address),
    };
    opened.map_err(|why| LinkError::Open { address: address.to_owned(), why })
}

/// What can go wrong between this program and a handheld.
#[derive(Debug, thiserror::Error)]
pub enum LinkError {
    /// There is no line.
    #[error("line not opened")]
    Open {
        /// The address, as typed.
        address: String,
        /// What is wrong with it.
        why: NotOpened,
    },
    /// No line was named; the serial ports of this machine.
    #[error("no port named")]
    WhichPort(Vec<String>),
    /// Tests that cannot be read.
    #[error("unreadable tests")]
    Unread {
        /// Their numbers, each with what is wrong.
        numbers: Vec<(u32, RecordError)>,
        /// Whether damaged ones were given up.
        given_up: bool,
    },
    /// Not a byte came back.
    #[error("no answer")]
    Silent,
    /// Something came back, but no reply.
    #[error("garbled answer")]
    Garbled,
    /// Protocol versions differ: that of the handheld.
    #[error("protocol version {0}")]
    Version(u8),
    /// The handheld's program says what this one does not know.
    #[error("unknown answer")]
    Unknown,
    /// The handheld does not do it.
    #[error("refused: {0}")]
    Refused(Refusal),
    /// More demands than it has room for.
    #[error("{given} demands for {slots} slots")]
    TooManyDemands {
        /// How many were given.
        given: usize,
        /// How many it can hold.
        slots: u8,
    },
    /// Fewer tests came than it listed.
    #[error("{sent} of {listed} tests came")]
    Missing {
        /// How many it listed.
        listed: u64,
        /// How many it sent.
        sent: u64,
    },
    /// Another handheld answers, or the same after a pause.
    #[error("handheld exchanged")]
    Exchanged,
    /// The connection to the handheld is lost.
    #[error("connection lost")]
    Closed,
    /// The line failed.
    #[error("line failed: {0}")]
    Broken(#[from] io::Error),
}

/// Why a line could not be opened.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum NotOpened {
    /// An address in a network without the number of a port.
    NoPort,
    /// Nothing answers there: what the system says.
    NobodyListens(String),
    /// The serial port does not open: what the system says, and the ports there are.
    Serial {
        /// What the system says.
        system: String,
        /// The serial ports of this machine.
        ports: Vec<String>,
    },
}
