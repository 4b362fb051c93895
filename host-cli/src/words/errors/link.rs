//! Handhelds that cannot be reached, or say no.

use tenter_core::record::RecordError;
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
        LinkError::WhichPort(ports) => which_port(ports),
        LinkError::Unread { numbers, given_up } => unread(numbers, *given_up),
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

/// Which ports there are, and what to type.
fn which_port(ports: &[String]) -> String {
    match ports {
        [] => "no serial port was found; plug the handheld in, or pass --port tcp:HOST:PORT".to_owned(),
        [port, ..] => format!(
            "pass --port {port}, or set TENTER_PORT={port} once for all (serial ports here: {})",
            ports.join(", ")
        ),
    }
}

/// What is wrong with tests that cannot be read.
fn unread(unread: &[(u32, RecordError)], given_up: bool) -> String {
    let of = |newer: bool| {
        let these = unread.iter().filter(move |(_, error)| (*error == RecordError::Newer) == newer);
        these.map(|(number, _)| number.to_string()).collect::<Vec<_>>()
    };
    let (newer, damaged) = (of(true), of(false));
    let mut parts = Vec::new();
    if !newer.is_empty() {
        let numbers = newer.join(", ");
        parts.push(format!("number {numbers} was written by a newer program: update tenter and sync again"));
    }
    if !damaged.is_empty() {
        let numbers = damaged.join(", ");
        parts.push(if given_up {
            format!("number {numbers} arrived damaged and was given up")
        } else {
            format!("number {numbers} arrived damaged: sync again, or give it up with --give-up-damaged")
        });
    }
    let kept = if newer.is_empty() && given_up { "" } else { "; the handheld keeps everything from there on" };
    format!("{}{kept}", parts.join("; "))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_ports_that_are_there_are_named() {
        assert!(which_port(&[]).ends_with("plug the handheld in, or pass --port tcp:HOST:PORT"));
        let two = which_port(&["COM3".to_owned(), "COM4".to_owned()]);
        assert!(two.contains("--port COM3,") && two.ends_with("(serial ports here: COM3, COM4)"), "{two}");
    }
}
