//! What was typed about a pattern.

use tenter_core::making::body::{Direction, MOVEMENTS, demand};
use tenter_core::{Demand, Grain, Length, Range, SUITS, Unit};

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
    let mut note = flags.note.as_deref().map(|text| short("--note", text)).transpose()?;
    if flags.garment.is_some() || flags.movement.is_some() {
        let (asked, from) = body(flags)?;
        demand = Demand { growth_at_most: demand.growth_at_most, recovery_at_least: demand.recovery_at_least, ..asked };
        note = note.or(Some(from));
    } else if flags.around.is_some() {
        return Err(Error::Usage("--around belongs to --garment or --movement; say one of them too".to_owned()));
    }
    let mut constructions: Vec<_> = flags.construction.iter().copied().map(construction).collect();
    constructions.dedup();
    Ok(RoleChange {
        demand: (demand != before).then_some(DemandField(demand)),
        constructions: (!constructions.is_empty()).then_some(constructions),
        cloth: flags.cloth.as_deref().map(cloth_at).transpose()?,
        note,
        ..RoleChange::default()
    })
}

/// What a garment and a movement ask, and where that comes from.
fn body(flags: &RoleFlags) -> Result<(Demand, String), Error> {
    let mut from: Vec<String> = Vec::new();
    let mut suit = None;
    if let Some(text) = &flags.garment {
        let found = named("--garment", text, SUITS.iter().map(|suit| (suit.garment, suit)))?;
        from.push(format!("{} [{}]", found.garment, found.source));
        suit = Some(found);
    }
    let mut movement = None;
    if let Some(text) = &flags.movement {
        let (text, line) = match text.rsplit_once(':') {
            Some((text, "along")) => (text, Some(Direction::Along)),
            Some((text, "around")) => (text, Some(Direction::Around)),
            _ => (text.as_str(), None),
        };
        let found = named("--movement", text, MOVEMENTS.iter().map(|movement| (movement.name, movement)))?;
        let line = line.or(found.line).ok_or_else(|| {
            let remedy =
                format!("its source does not say along which line; type '{0}:along' or '{0}:around'", found.name);
            Error::argument("--movement", text, remedy)
        })?;
        // A garment that lies on the body as it is: the cloth must do all of it.
        let body = Length::from_mm(1000);
        let needs = found.needs(body, body).map_err(|error| Error::argument("--movement", text, error))?;
        from.push(format!("{} [{}]", found.name, found.source));
        movement = Some((line, needs));
    }
    let around = flags.around.map_or(Grain::Crosswise, super::grain);
    let demand = demand(suit, movement, around).map_err(|error| Error::Usage(error.to_string()))?;
    Ok((demand, from.join("; ")))
}

/// The row that a text names: the one that is equal, or the only one that holds it.
fn named<'t, T>(
    flag: &str,
    text: &str,
    rows: impl Iterator<Item = (&'static str, &'t T)> + Clone,
) -> Result<&'t T, Error> {
    let wanted = text.trim().to_lowercase();
    if let Some((_, row)) = rows.clone().find(|(name, _)| name.to_lowercase() == wanted) {
        return Ok(row);
    }
    let mut found = rows.clone().filter(|(name, _)| name.to_lowercase().contains(&wanted));
    match (found.next(), found.next()) {
        (Some((_, row)), None) => Ok(row),
        _ => {
            let names: Vec<&str> = rows.map(|(name, _)| name).collect();
            Err(Error::argument(flag, text, format!("type one of: {}", names.join("; "))))
        }
    }
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
