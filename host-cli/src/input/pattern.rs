//! What was typed about a pattern.

use tenter_core::making::body::{Direction, MOVEMENTS, demand};
use tenter_core::{DEFAULT_REST_SECONDS, Demand, Grain, Length, Limit, LimitError, Range, SUITS, Suit, Unit};

use super::amount::{cloth, of_width};
use super::cloth::{name, short};
use super::named::{NameMatch, named};
use super::synonym::{DRAPE, FINISH, KIND, PURPOSE, Words, garments};
use super::wants::{one_time, timed_limit};
use super::{Field, Why, Wrong, range};
use crate::log::pattern::DemandField;
use crate::log::{ClothNeed, Construction, MassPerArea, MassRange, RoleChange};

/// What a role asks, as typed; none for what is not said.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct TypedRole {
    /// Stretch across, or `none`.
    pub crosswise: Option<String>,
    /// Stretch along, or `none`.
    pub lengthwise: Option<String>,
    /// Stretch at 45°, or `none`.
    pub bias: Option<String>,
    /// The most growth that will do, or `none`.
    pub growth_at_most: Option<String>,
    /// The least recovery that will do, or `none`.
    pub recovery_at_least: Option<String>,
    /// The constructions that will do; any when empty.
    pub constructions: Vec<Construction>,
    /// The masses per area that will do, or `none`.
    pub mass: Option<String>,
    /// The drapes that will do, or `none`; not said when empty.
    pub drapes: Vec<String>,
    /// The finishes that will do, or `none`; not said when empty.
    pub finishes: Vec<String>,
    /// What the cloth must be made for, or `none`.
    pub purpose: Option<String>,
    /// The garment that the view is, or `none`.
    pub kind: Option<String>,
    /// How much cloth it takes, and of which width, or `none`.
    pub cloth: Option<String>,
    /// A kind of garment that asks, instead of figures.
    pub garment: Option<String>,
    /// A movement of the body that asks.
    pub movement: Option<String>,
    /// The grain that goes round the body.
    pub around: Option<Grain>,
    /// Anything else.
    pub note: Option<String>,
}

impl TypedRole {
    /// Whether nothing is asked, whatever the note says.
    #[must_use]
    pub fn asks_nothing(&self) -> bool {
        Self { note: None, ..self.clone() } == Self::default()
    }
}

/// The name of a view: what was typed, or the only one.
///
/// # Errors
///
/// A text that says nothing.
pub fn view(text: &str) -> Result<String, Wrong> {
    name(Field::View, text)
}

/// What is said about a role that asked `before` so far.
///
/// # Errors
///
/// The first field that cannot be read.
pub fn role(flags: &TypedRole, before: Demand) -> Result<RoleChange, Wrong> {
    let unit = Unit::Mm;
    let mut demand = before;
    let stretch = |field, text: &Option<String>, had: Range| match text.as_deref() {
        None => Ok(had),
        Some(text) if is_none(text) => Ok(Range::default()),
        Some(text) => range(field, Some(text), unit),
    };
    demand.crosswise = stretch(Field::Crosswise, &flags.crosswise, before.crosswise)?;
    demand.lengthwise = stretch(Field::Lengthwise, &flags.lengthwise, before.lengthwise)?;
    demand.bias = stretch(Field::Bias, &flags.bias, before.bias)?;
    let asked = |field, text: &Option<String>, had: Option<Limit>| match text.as_deref() {
        None => Ok((had, None)),
        Some(text) if is_none(text) => Ok((None, None)),
        text => timed_limit(field, text, unit),
    };
    let (growth_at_most, growth_time) = asked(Field::GrowthAtMost, &flags.growth_at_most, before.growth_at_most)?;
    let (recovery_at_least, recovery_time) =
        asked(Field::RecoveryAtLeast, &flags.recovery_at_least, before.recovery_at_least)?;
    (demand.growth_at_most, demand.recovery_at_least) = (growth_at_most, recovery_at_least);
    let time = one_time(growth_time, recovery_time, flags.recovery_at_least.as_deref())?;
    demand.rest_seconds = match (growth_at_most, recovery_at_least) {
        (None, None) => DEFAULT_REST_SECONDS,
        _ => time.unwrap_or(before.rest_seconds),
    };
    let mut note = flags.note.as_deref().map(|text| short(Field::Note, text)).transpose()?;
    if flags.garment.is_some() || flags.movement.is_some() {
        let (asked, from) = body(flags)?;
        // What was typed of growth and recovery counts before what the garment asks.
        let typed = [&flags.growth_at_most, &flags.recovery_at_least].iter().any(|text| text.is_some());
        let Demand { growth_at_most, recovery_at_least, rest_seconds, .. } = demand;
        let says = typed || growth_at_most.is_some() || recovery_at_least.is_some();
        demand = if says { Demand { growth_at_most, recovery_at_least, rest_seconds, ..asked } } else { asked };
        note = note.or(Some(from));
    } else if let Some(around) = flags.around {
        return Err(Wrong::new(Field::Around, around.word(), Why::WithoutBody));
    }
    let mut constructions = flags.constructions.clone();
    constructions.dedup();
    Ok(RoleChange {
        demand: (demand != before).then_some(DemandField(demand)),
        constructions: (!constructions.is_empty()).then_some(constructions),
        mass: flags.mass.as_deref().map(masses).transpose()?,
        drapes: several(Field::Drape, &flags.drapes, &DRAPE)?,
        finishes: several(Field::Finish, &flags.finishes, &FINISH)?,
        purpose: one(Field::Purpose, flags.purpose.as_deref(), &PURPOSE)?,
        kind: one(Field::Kind, flags.kind.as_deref(), &KIND)?,
        cloth: flags.cloth.as_deref().map(cloth_at).transpose()?,
        note,
        ..RoleChange::default()
    })
}

/// What a garment and a movement ask, and where that comes from.
fn body(flags: &TypedRole) -> Result<(Demand, String), Wrong> {
    let mut from: Vec<String> = Vec::new();
    let mut suit = None;
    if let Some(text) = &flags.garment {
        let found = suit_of(text)?;
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
        let rows: Vec<_> = MOVEMENTS.iter().map(|movement| (movement.name, movement)).collect();
        let found = row_of(Field::Movement, text, &rows)?;
        let wrong = |why| Wrong::new(Field::Movement, text, why);
        let line = line.or(found.line).ok_or_else(|| wrong(Why::NoLine { name: found.name }))?;
        // A garment that lies on the body as it is: the cloth must do all of it.
        let body = Length::from_mm(1000);
        let needs = found.needs(body, body).map_err(|error| wrong(Why::Making(error)))?;
        from.push(format!("{} [{}]", found.name, found.source));
        movement = Some((line, needs));
    }
    let around = flags.around.unwrap_or(Grain::Crosswise);
    let text = flags.garment.as_deref().unwrap_or_default();
    let wrong = |error| Wrong::new(Field::Garment, text, Why::Making(error));
    let demand = demand(suit, movement, around).map_err(wrong)?;
    Ok((demand, from.join("; ")))
}

/// The kind of garment that a text names, perhaps by another name.
fn suit_of(text: &str) -> Result<&'static Suit, Wrong> {
    let rows: Vec<_> = SUITS.iter().map(|suit| (suit.garment, suit)).collect();
    match garments(text) {
        Some([kind]) => row_of(Field::Garment, kind, &rows),
        Some(several) => {
            let names = several.iter().map(|kind| (*kind).to_owned()).collect();
            Err(Wrong::new(Field::Garment, text, Why::NotOneOf(names)))
        }
        None => row_of(Field::Garment, text, &rows),
    }
}

/// The row that a text names, or the only one that has its words.
fn row_of<'t, T>(field: Field, text: &str, rows: &[(&'static str, &'t T)]) -> Result<&'t T, Wrong> {
    let names: Vec<&'static str> = rows.iter().map(|(name, _)| *name).collect();
    let wrong = |names: Vec<&str>| {
        let names = names.into_iter().map(str::to_owned).collect();
        Wrong::new(field, text, Why::NotOneOf(names))
    };
    let found = match named(text, &names) {
        NameMatch::One(place) => rows.get(place),
        NameMatch::None => None,
        NameMatch::Several(places) => {
            return Err(wrong(places.iter().filter_map(|place| names.get(*place).copied()).collect()));
        }
    };
    found.map(|(_, row)| *row).ok_or_else(|| wrong(names))
}

/// A word of a list, or `none`.
fn one<T: Copy>(field: Field, text: Option<&str>, words: &Words<T>) -> Result<Option<Option<T>>, Wrong> {
    text.map(|text| if is_none(text) { Ok(None) } else { words.read(field, text).map(Some) }).transpose()
}

/// Words of a list, each once, or `none`.
fn several<T: Copy + PartialEq>(field: Field, texts: &[String], words: &Words<T>) -> Result<Option<Vec<T>>, Wrong> {
    let mut all: Vec<T> = Vec::new();
    match texts {
        [] => return Ok(None),
        [text] if is_none(text) => {}
        texts => {
            for text in texts {
                let one = words.read(field, text)?;
                if !all.contains(&one) {
                    all.push(one);
                }
            }
        }
    }
    Ok(Some(all))
}

/// `200..300g/m2`, `6-8 oz`, `250g/m2..`, `..300gsm`, or `none`. A unit that stands at one end only holds for both.
pub(super) fn masses(text: &str) -> Result<MassRange, Wrong> {
    if is_none(text) {
        return Ok(MassRange::default());
    }
    let wrong = || Wrong::new(Field::Mass, text, Why::NotAMassRange);
    let (low, high) = text.split_once("..").or_else(|| text.split_once(['-', '\u{2013}'])).ok_or_else(wrong)?;
    let (low, high) = (low.trim(), high.trim());
    let unit = |end: &str| end.trim_start_matches(|c: char| c.is_ascii_digit() || ".,/ ".contains(c)).to_owned();
    let shared = [high, low].map(unit).into_iter().find(|unit| !unit.is_empty()).unwrap_or_default();
    let mass = |end: &str| {
        let with_unit = if unit(end).is_empty() { format!("{end} {shared}") } else { end.to_owned() };
        if end.is_empty() { Ok(None) } else { MassPerArea::parse(&with_unit).map(Some).ok_or_else(wrong) }
    };
    let range = MassRange { at_least: mass(low)?, at_most: mass(high)? };
    match (range.at_least, range.at_most) {
        (None, None) => Err(wrong()),
        (Some(least), Some(most)) if least > most => {
            Err(Wrong::new(Field::Mass, text, Why::Limit(LimitError::UpsideDown)))
        }
        _ => Ok(range),
    }
}

fn is_none(text: &str) -> bool {
    text.trim().eq_ignore_ascii_case("none")
}

/// `1.6m at 140cm`, `1.8m at 140cm with nap`, or `none`.
fn cloth_at(text: &str) -> Result<Option<ClothNeed>, Wrong> {
    if is_none(text) {
        return Ok(None);
    }
    let wrong = || Wrong::new(Field::Cloth, text, Why::NotACloth);
    let trimmed = text.trim();
    let lower = trimmed.to_lowercase();
    let without = |ending: &str| lower.ends_with(ending).then(|| trimmed.get(..trimmed.len() - ending.len())).flatten();
    let (layout, one_way) = match (without("with nap"), without("without nap")) {
        (Some(layout), _) => (layout, true),
        (None, Some(layout)) => (layout, false),
        (None, None) => (trimmed, false),
    };
    let (length, width) = of_width(layout.trim_end()).ok_or_else(wrong)?;
    let (length, width) = (cloth(Field::Cloth, length)?, cloth(Field::Cloth, width)?);
    if length.steps() == 0 || width.steps() == 0 {
        return Err(wrong());
    }
    Ok(Some(ClothNeed { length, width, one_way }))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// An ounce per square yard is 33.906 g/m² (see `log::quantity`): 6 and 8 of them are 203.4 and 271.2 g/m².
    #[test]
    fn masses_as_people_type_them() {
        let ends = |text: &str| {
            let range = masses(text).unwrap();
            [range.at_least, range.at_most].map(|end| end.map(|mass| mass.to_string()))
        };
        let both = |one: &str, other: &str| [Some(one.to_owned()), Some(other.to_owned())];
        for text in ["200..300g/m2", "200g/m2..300g/m2", "200 - 300 gsm", "200–300 g/m²"] {
            assert_eq!(ends(text), both("200 g/m²", "300 g/m²"), "{text}");
        }
        assert_eq!(ends("6..8oz"), both("203.4 g/m²", "271.2 g/m²"));
        assert_eq!(ends("250g/m2.."), [Some("250 g/m²".to_owned()), None]);
        assert_eq!(ends("..300gsm"), [None, Some("300 g/m²".to_owned())]);
        assert_eq!(ends("None"), [None, None]);
        for text in ["250g/m2", "heavy", "..", "200..300", "300..200gsm", "200kg..300kg"] {
            assert!(masses(text).is_err(), "{text}");
        }
    }
}
