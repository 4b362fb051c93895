//! Handhelds that cannot be reached, or say no.

use tenter_core::wire::PROTOCOL;

use crate::link::{LinkError, NotOpened};
use crate::plain::one_line;

/// What went wrong between this program and a handheld, and what to do.
///
/// ```
/// use tenter::link::LinkError;
/// use tenter::words::errors::link;
/// use tenter_core::wire::Refusal;
///
/// let error = LinkError::Refused(Refusal::Chip);
/// assert_eq!(link(&error), "the handheld refuses: its memory cannot be read or written");
/// ```
#[must_use]
pub fn link(error: &LinkError) -> String {
    match error {
        LinkError::Open { address, why } => {
            let why = match why {
                NotOpened::NoPort => "type tcp:HOST:PORT, such as tcp:localhost:5555".to_owned(),
                NotOpened::NobodyListens(system) => format!("{system}; does anything listen there?"),
                NotOpened::Serial { system, ports } if ports.is_empty() => {
                    format!("{system}; no serial port was found: plug the handheld in")
                }
                NotOpened::Serial { system, ports } => format!("{system}; the ports here are {}", ports.join(", ")),
            };
            format!("cannot open '{}': {why}", one_line(address))
        }
        LinkError::Silent => "the handheld does not answer: is it switched on, and is this its port?".to_owned(),
        LinkError::Garbled => {
            "the device on this port is not a tenter handheld, or the cable is bad: try another port or cable".to_owned()
        }
        LinkError::Version(theirs) => format!(
            "the handheld speaks version {theirs} of the protocol, this program version {PROTOCOL}: update the older one"
        ),
        LinkError::Unknown => "this program does not know the handheld's answer: update this program".to_owned(),
        LinkError::Refused(reason) => format!("the handheld refuses: {reason}"),
        LinkError::TooManyDemands { given, slots } => {
            format!("the handheld has room for {slots} demands, not for {given}: choose fewer")
        }
        LinkError::Missing { listed, sent } => format!(
            "the handheld listed {listed} tests and sent {sent}; those are stored, and it keeps all of them: type tenter \
             device sync again"
        ),
        LinkError::Exchanged => {
            "the handheld was switched off or exchanged meanwhile; what was stored is safe: type tenter device sync again"
                .to_owned()
        }
        LinkError::Closed => "lost the connection to the handheld: plug it in and try again".to_owned(),
        LinkError::Broken(error) => {
            format!("lost the connection to the handheld: {error}; plug it in and try again")
        }
    }
}
