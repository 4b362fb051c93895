//! The handheld: [`open`] a line to it, then hold a [`Session`].

mod serial;
mod session;
mod socket;

use std::io::{self, Read, Write};
use std::time::Duration;

use tenter_core::wire::{PROTOCOL, Refusal};

use crate::error::one_line;

pub use serial::ports;
pub use session::{Fetched, Session};

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
/// let error = tenter::link::open("tcp:localhost").err().unwrap();
/// assert_eq!(error.to_string(), "cannot open 'tcp:localhost': type tcp:HOST:PORT, such as tcp:localhost:5555");
/// ```
pub fn open(address: &str) -> Result<Box<dyn Transport>, LinkError> {
    let opened = match address.split_once(':') {
        Some(("tcp", place)) => socket::tcp(place),
        #[cfg(unix)]
        Some(("unix", path)) => socket::unix(path),
        _ => serial::open(address),
    };
    opened.map_err(|reason| LinkError::Open { address: one_line(address), reason })
}

/// What can go wrong between this program and a handheld, in one line that says what to do.
///
/// ```
/// use tenter::link::LinkError;
/// use tenter_core::wire::Refusal;
///
/// let error = LinkError::Refused(Refusal::Chip);
/// assert_eq!(error.to_string(), "the handheld refuses: its memory cannot be read or written");
/// ```
#[derive(Debug, thiserror::Error)]
pub enum LinkError {
    /// There is no line.
    #[error("cannot open '{address}': {reason}")]
    Open {
        /// The address, as typed.
        address: String,
        /// What is wrong and what to do.
        reason: String,
    },
    /// Not a byte came back.
    #[error("the handheld does not answer: is it switched on, and is this its port?")]
    Silent,
    /// Something came back, but no reply.
    #[error("what answers is no handheld of this program, or the line is bad: try another port or another cable")]
    Garbled,
    /// The handheld's program is of another time.
    #[error("the handheld speaks version {0} of the protocol, this program version {PROTOCOL}: update the older one")]
    Version(u8),
    /// The handheld's program says what this one does not know.
    #[error("the handheld answers what this program does not know: update this program")]
    Unknown,
    /// The handheld does not do it.
    #[error("the handheld refuses: {0}")]
    Refused(Refusal),
    /// More demands than it has room for.
    #[error("the handheld has room for {slots} demands, not for {given}: choose fewer")]
    TooManyDemands {
        /// How many were given.
        given: usize,
        /// How many it can hold.
        slots: u8,
    },
    /// Somebody else answers, or the same after a pause.
    #[error(
        "the handheld was switched off or exchanged meanwhile; what was stored is safe: say tenter device sync again"
    )]
    Exchanged,
    /// The other end went away.
    #[error("the handheld went away: plug it in and try again")]
    Closed,
    /// The line broke.
    #[error("the line to the handheld broke: {0}; plug it in and try again")]
    Broken(#[from] io::Error),
}
