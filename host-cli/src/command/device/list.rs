//! `tenter device list`: who is there and what waits; changes nothing on either side.

use tenter_core::wire::Listing;

use super::super::progress::Progress;
use crate::deed::handheld::will_go_to;
use crate::error::Error;
use crate::finding::handheld::{There, Waiting};
use crate::json::device as device_json;
use crate::link::{LinkSession, Transport};
use crate::log::Device;
use crate::log::handheld::FromHandheld;
use crate::store::Read;
use crate::text::TextOutput;
use crate::text::device as report;

/// Lists.
///
/// # Errors
///
/// A handheld that does not answer, or a log that cannot be read.
pub fn run<T: Transport>(
    session: &mut LinkSession<T>,
    json: bool,
    read: &dyn Read,
    screen: &mut TextOutput<'_>,
) -> Result<(), Error> {
    let identity = session.identify()?.clone();
    let ahead = super::ahead(identity.unix_s, screen.here);
    let listing @ Listing { oldest, unacknowledged, .. } = session.list()?;
    let mut progress = Progress::of("reading", Some(unacknowledged.into()));
    let mut waiting = Vec::new();
    let all = oldest.map(|oldest| session.fetch_all_from(oldest));
    for fetched in all.into_iter().flatten() {
        let fetched = fetched?;
        let test = FromHandheld::read(Device { device: identity.device, number: fetched.seq }, &fetched.record);
        let in_log = match &test {
            // Without a number of its own it has never been here.
            Ok(test) if identity.device != 0 => read.test(test.id)?.is_some(),
            _ => false,
        };
        let fabric = test.as_ref().ok().map(|test| will_go_to(read, test)).transpose()?.flatten();
        waiting.push(Waiting { number: fetched.seq, test, fabric, in_log });
        progress.at(u64::try_from(waiting.len()).unwrap_or(u64::MAX));
    }
    drop(progress);
    let there = There { identity, ahead, listing, waiting };
    if json {
        writeln!(screen.out, "{}", device_json::there(&there))?;
    } else {
        write!(screen.out, "{}", report::there(&there, screen.width, screen.here))?;
    }
    Ok(())
}
