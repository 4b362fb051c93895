//! What was typed for a test that is asked step by step.

use jiff::Timestamp;
use tenter_core::{Ends, Load, Unit};

use super::{CheckInput, fabric::short, when};
use crate::cli::pull::PullArgs;
use crate::cli::reading::{EndsArg, WantsArgs};
use crate::error::Error;
use crate::guide::Draft;
use crate::log::Id;
use crate::log::json::Mm;

/// A draft that begins `now`, from the flags.
///
/// # Errors
///
/// The first flag that cannot be read: better now than after three pulls; here and below.
pub fn begun(args: &PullArgs, id: Id, now: Timestamp) -> Result<Draft, Error> {
    let flags = &args.test.flags;
    let unit = args.show.units.map_or(Unit::Cm, super::unit);
    let grain = super::grain(flags.grain);
    let mut draft = Draft::new(id, now, grain, unit);
    draft.held = super::held(flags.held);
    if let Load::Force { millinewtons } = super::load(&flags.load)? {
        draft.millinewtons = Some(millinewtons);
    }
    if let Some(text) = flags.division.as_deref() {
        let division = super::scale(flags, unit)?.division();
        draft.division = Some(Mm(division));
        draft.unit = args.show.units.map(super::unit).or_else(|| super::unit_of(text)).unwrap_or(unit);
    }
    draft.ends = match flags.ends {
        EndsArg::One => Ends::One,
        EndsArg::Both => Ends::Both,
    };
    said_again(args, &mut draft, now)?;
    Ok(draft)
}

/// What may be said anew when a test is resumed.
///
/// # Errors
///
/// As above.
pub fn said_again(args: &PullArgs, draft: &mut Draft, now: Timestamp) -> Result<(), Error> {
    let WantsArgs { wants, growth_at_most, recovery_at_least } = args.wants.clone();
    for (kept, said) in draft.wants.iter_mut().zip([wants, growth_at_most, recovery_at_least]) {
        *kept = said.or(kept.take());
    }
    if let Some(text) = args.note.as_deref() {
        draft.note = short("--note", text)?;
    }
    if let Some(text) = args.at.as_deref() {
        draft.pulled = when::past("--at", text, now)?;
    }
    super::demand(&wants_of(draft), draft.grain, draft.unit)?;
    super::confidence(&args.confidence.confidence)?;
    super::table(&args.table.table).map(drop)
}

/// The finished test with what is asked of it.
///
/// # Errors
///
/// As above, or a test without a pull.
pub fn finished(args: &PullArgs, draft: &Draft) -> Result<CheckInput, Error> {
    let test = draft.test().map_err(|reason| Error::reading("--to", "", reason))?;
    let unit = args.show.units.map_or(draft.unit, super::unit);
    super::asked(test, unit, &wants_of(draft), &args.confidence, &args.table)
}

fn wants_of(draft: &Draft) -> WantsArgs {
    let [wants, growth_at_most, recovery_at_least] = draft.wants.clone();
    WantsArgs { wants, growth_at_most, recovery_at_least }
}
