//! `tenter device demands`: what a view asks, put on the handheld.

use tenter_core::record::LabelledDemand;

use crate::cli::device::DemandsArgs;
use crate::deed::handheld::{self, WantedDemands};
use crate::error::Error;
use crate::link::{LinkSession, Transport};
use crate::store::Read;
use crate::text::TextOutput;
use crate::text::device as report;

/// Finds what was typed.
///
/// # Errors
///
/// A pattern, view or role that is not there, or a view that asks nothing.
pub fn wanted(args: &DemandsArgs, read: &dyn Read) -> Result<WantedDemands, Error> {
    let Some(pattern) = &args.pattern else { return Ok(WantedDemands::default()) };
    Ok(handheld::wanted(read, pattern, args.view.as_deref(), &args.role)?)
}

/// Puts them there, as many as there is room for.
///
/// # Errors
///
/// A handheld that does not answer or refuses.
pub fn run<T: Transport>(
    session: &mut LinkSession<T>,
    wanted: &WantedDemands,
    read: &dyn Read,
    screen: &mut TextOutput<'_>,
) -> Result<(), Error> {
    let slots = usize::from(session.identity().demand_slots);
    let sent: Vec<LabelledDemand> = wanted.demands.iter().take(slots).map(|(demand, _)| demand.clone()).collect();
    session.set_demands(&sent)?;
    let hand = super::send_hand(session, read, read.desk()?.handhelds.get(&session.identity().device).copied())?;
    for line in report::demands(wanted, sent.len()).into_iter().chain(hand.map(str::to_owned)) {
        screen.say(&line)?;
    }
    Ok(())
}
