//! A draft from what was typed beforehand, and what is asked of it in the end.

use tenter_core::{Load, Unit};

use super::Draft;
use crate::input::{
    self, CheckInput, Field, TypedAsked, TypedPull, TypedTest, TypedWants, Wrong, cloth::short, person, test, unit_of,
    when,
};
use crate::log::json::Mm;
use crate::log::{Here, Id};

/// A draft that begins now.
///
/// # Errors
///
/// The first field that cannot be read: better now than after three pulls.
pub fn begun(typed: &TypedPull, id: Id, here: Here) -> Result<Draft, Wrong> {
    let TypedTest { grain, division, ends, held, load, .. } = &typed.check.test;
    let stated = typed.check.asked.unit;
    let unit = stated.unwrap_or(Unit::Cm);
    let mut draft = Draft::new(id, here.now(), *grain, unit);
    draft.held = *held;
    draft.ends = *ends;
    let demand = input::demand(&typed.check.asked.wants, *grain, unit)?;
    if demand.growth_at_most.or(demand.recovery_at_least).is_some() {
        draft.wait = Some(demand.rest_seconds);
    }
    if let Some(Load::Force { millinewtons }) = load.as_deref().map(input::load).transpose()? {
        draft.millinewtons = Some(millinewtons);
    }
    if let Some(text) = division {
        draft.division = Some(Mm(test::scale(&typed.check.test, unit)?.division()));
        draft.unit = stated.or_else(|| unit_of(text)).unwrap_or(unit);
    }
    said_again(typed, &mut draft, here)?;
    Ok(draft)
}

/// What may be passed again when a test is resumed.
///
/// # Errors
///
/// The first field that cannot be read.
pub fn said_again(typed: &TypedPull, draft: &mut Draft, here: Here) -> Result<(), Wrong> {
    let TypedWants { wants, growth_at_most, recovery_at_least } = typed.check.asked.wants.clone();
    for (kept, said) in draft.wants.iter_mut().zip([wants, growth_at_most, recovery_at_least]) {
        *kept = said.or(kept.take());
    }
    if let Some(text) = typed.check.test.planned.as_deref() {
        draft.planned = Some(test::planned(text)?);
    }
    if let Some(text) = typed.note.as_deref() {
        draft.note = short(Field::Note, text)?;
    }
    if let Some(text) = typed.by.as_deref() {
        draft.by = Some(person::name(Field::PulledBy, text)?);
    }
    if let Some(text) = typed.at.as_deref() {
        draft.pulled = when::past(Field::Pulled, text, here)?;
    }
    input::demand(&wants_of(draft), draft.grain, draft.unit)?;
    input::confidence(&typed.check.asked.confidence)?;
    input::table(&typed.check.asked.table).map(drop)
}

/// The finished test with what is asked of it.
///
/// # Errors
///
/// The first field that cannot be read, or a test without a pull.
pub fn finished(typed: &TypedPull, draft: &Draft) -> Result<CheckInput, Wrong> {
    let test = input::pull_test(&draft.typed(), Unit::Mm)?;
    let unit = typed.check.asked.unit.unwrap_or(draft.unit);
    let asked = TypedAsked { wants: wants_of(draft), ..typed.check.asked.clone() };
    input::asked(test, unit, &asked)
}

fn wants_of(draft: &Draft) -> TypedWants {
    let [wants, growth_at_most, recovery_at_least] = draft.wants.clone();
    TypedWants { wants, growth_at_most, recovery_at_least }
}
