//! What was typed about a pattern.

use tenter_core::{Demand, Range, Unit};

use super::fabric::{cloth, construction, name, short};
use super::{limit, range, recovery};
use crate::cli::pattern::RoleFlags;
use crate::error::Error;
use crate::log::pattern::DemandField;
use crate::log::{Cloth, RoleChange};

/// The name of a view: what was typed, or the only one.
///
/// # Errors
///
/// The first flag that cannot be read, with what to type instead; here and below.
pub fn view(text: &str) -> Result<String, Error> {
    name("VIEW", text)
}

/// What the flags say about a role that asked `before` so far.
///
/// # Errors
///
/// As above.
pub fn role(flags: &RoleFlags, before: Demand) -> Result<RoleChange, Error> {
    let unit = Unit::Mm;
    let mut demand = before;
    let stretch = |flag, text: &Option<String>, had: Range| match text.as_deref() {
        None => Ok(had),
        Some(text) if is_none(text) => Ok(Range::default()),
        Some(text) => range(flag, Some(text), unit),
    };
    demand.crosswise = stretch("--crosswise", &flags.crosswise, before.crosswise)?;
    demand.lengthwise = stretch("--lengthwise", &flags.lengthwise, before.lengthwise)?;
    demand.bias = stretch("--bias", &flags.bias, before.bias)?;
    demand.growth_at_most = match flags.growth_at_most.as_deref() {
        None => before.growth_at_most,
        Some(text) if is_none(text) => None,
        text => limit("--growth-at-most", text, unit)?,
    };
    demand.recovery_at_least = match flags.recovery_at_least.as_deref() {
        None => before.recovery_at_least,
        Some(text) if is_none(text) => None,
        text => recovery(text, unit)?,
    };
    let mut constructions: Vec<_> = flags.construction.iter().copied().map(construction).collect();
    constructions.dedup();
    Ok(RoleChange {
        demand: (demand != before).then_some(DemandField(demand)),
        constructions: (!constructions.is_empty()).then_some(constructions),
        cloth: flags.cloth.as_deref().map(cloth_at).transpose()?,
        note: flags.note.as_deref().map(|text| short("--note", text)).transpose()?,
        ..RoleChange::default()
    })
}

fn is_none(text: &str) -> bool {
    text.trim().eq_ignore_ascii_case("none")
}

/// `1.6m at 140cm`, or `none`.
fn cloth_at(text: &str) -> Result<Option<Cloth>, Error> {
    if is_none(text) {
        return Ok(None);
    }
    let wrong = || Error::argument("--cloth", text, "type a length and the width it is for, such as '1.6m at 140cm'");
    let (length, width) = text.split_once(" at ").ok_or_else(wrong)?;
    let (length, width) = (cloth("--cloth", length)?, cloth("--cloth", width)?);
    if length.steps() == 0 || width.steps() == 0 {
        return Err(wrong());
    }
    Ok(Some(Cloth { length, width }))
}
