//! What is asked of a cloth, and how sure an answer must be, as typed.

use tenter_core::{Confidence, Demand, Grain, Limit, LimitError, Range, Ratio, Scatter, TABLES, Table, Unit};

use super::amount::timed;
use super::{ClassFigures, Field, Why, Wrong, synonym};

/// Degrees of freedom granted to a scatter that the user states: as if it came from thirty-one pulls.
const STATED_SCATTER_DOF: f32 = 30.0;

/// What is asked of a cloth, as typed.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct TypedWants {
    /// The stretch: `5%`, `20%..30%`, `4in to 5 3/8in`.
    pub wants: Option<String>,
    /// The most growth that will do.
    pub growth_at_most: Option<String>,
    /// The least recovery that will do.
    pub recovery_at_least: Option<String>,
}

/// What is asked along a grain.
///
/// # Errors
///
/// The first text that cannot be read.
pub fn demand(typed: &TypedWants, grain: Grain, unit: Unit) -> Result<Demand, Wrong> {
    let demand = Demand::for_grain(grain, range(Field::Wants, typed.wants.as_deref(), unit)?);
    let growth = typed.growth_at_most.as_deref();
    let recovery = typed.recovery_at_least.as_deref();
    let (growth_at_most, growth_time) = timed_limit(Field::GrowthAtMost, growth, unit)?;
    let (recovery_at_least, recovery_time) = timed_limit(Field::RecoveryAtLeast, recovery, unit)?;
    let rest_seconds = one_time(growth_time, recovery_time, recovery)?.unwrap_or(demand.rest_seconds);
    Ok(Demand { growth_at_most, recovery_at_least, rest_seconds, ..demand })
}

/// A limit with the time since release at which it is asked, where one was typed.
///
/// # Errors
///
/// A text that is no limit, no time, or a recovery above 100 %.
pub fn timed_limit(field: Field, text: Option<&str>, unit: Unit) -> Result<(Option<Limit>, Option<u32>), Wrong> {
    let Some(text) = text else { return Ok((None, None)) };
    let (text, seconds) = timed(field, text)?;
    let limit =
        if field == Field::RecoveryAtLeast { recovery(Some(text), unit) } else { limit(field, Some(text), unit) };
    Ok((limit?, seconds))
}

/// The time at which growth and recovery are asked: one for both.
///
/// # Errors
///
/// Two times that differ.
pub fn one_time(growth: Option<u32>, recovery: Option<u32>, text: Option<&str>) -> Result<Option<u32>, Wrong> {
    match (growth, recovery) {
        (Some(growth), Some(recovery)) if growth != recovery => {
            Err(Wrong::new(Field::RecoveryAtLeast, text.unwrap_or_default(), Why::TwoTimes))
        }
        (growth, recovery) => Ok(growth.or(recovery)),
    }
}

/// A range of stretch; empty where nothing was typed.
///
/// # Errors
///
/// A text that is no range.
pub fn range(field: Field, text: Option<&str>, unit: Unit) -> Result<Range, Wrong> {
    let range = |text| Range::parse(text, unit).map_err(|error| no_limit(field, text, error));
    let range = text.map_or_else(|| Ok(Range::default()), range)?;
    // Every cloth stretches by 0 % or more: "0-5%" asks for at most 5 %.
    let asks_no_least = range.at_most.is_some() && range.at_least.is_some_and(|least| least.ratio() <= Ratio::ZERO);
    Ok(if asks_no_least { Range { at_least: None, ..range } } else { range })
}

/// A limit, where one was typed.
///
/// # Errors
///
/// A text that is no limit.
pub fn limit(field: Field, text: Option<&str>, unit: Unit) -> Result<Option<Limit>, Wrong> {
    let limit = |text| Limit::parse(text, unit).map_err(|error| no_limit(field, text, error));
    text.map(limit).transpose()
}

/// A text that is no limit; a class of stretch is none, since each table has other figures for it.
fn no_limit(field: Field, text: &str, error: LimitError) -> Wrong {
    let tables = TABLES.iter().flat_map(|table| {
        let from = core::iter::once(0).chain(table.classes.iter().filter_map(|class| class.up_to));
        let rungs = table.classes.iter().zip(from);
        rungs.map(|(class, from)| (class.name, ClassFigures { table: table.key, from, up_to: class.up_to }))
    });
    let figures: Vec<ClassFigures> =
        tables.filter(|(name, _)| synonym::is(text, name)).map(|(_, figures)| figures).collect();
    let why = if figures.is_empty() { Why::Limit(error) } else { Why::Class(figures) };
    Wrong::new(field, text, why)
}

/// A least recovery, which cannot lie above 100 %.
///
/// # Errors
///
/// A text that is no limit, or one above 100 %.
pub fn recovery(text: Option<&str>, unit: Unit) -> Result<Option<Limit>, Wrong> {
    let field = Field::RecoveryAtLeast;
    let least = limit(field, text, unit)?;
    let whole = Limit::milli_percent(100_000).ok();
    if let (Some(text), Some(least), Some(whole)) = (text, least, whole)
        && least.ratio() > whole.ratio()
    {
        return Err(Wrong::new(field, text, Why::AboveWhole));
    }
    Ok(least)
}

/// How sure an answer must be.
///
/// # Errors
///
/// A text that is no percentage from 50.1 to 99.9.
pub fn confidence(text: &str) -> Result<Confidence, Wrong> {
    let wrong = || Wrong::new(Field::Confidence, text, Why::NotAConfidence);
    let percent = Limit::parse(text, Unit::Mm).map_err(|_| wrong())?;
    let tenths = percent.ratio().percent(3).scaled();
    let tenths = if percent.printed_marks().is_none() && tenths % 100 == 0 { tenths / 100 } else { 0 };
    u16::try_from(tenths).ok().and_then(Confidence::per_mille).ok_or_else(wrong)
}

/// A table of stretch classes.
///
/// # Errors
///
/// A name that no table has.
pub fn table(name: &str) -> Result<&'static Table, Wrong> {
    let named = TABLES.iter().find(|table| synonym::is(name, table.key));
    named.ok_or_else(|| {
        let names = TABLES.iter().map(|table| table.key.to_owned()).collect();
        Wrong::new(Field::Table, name, Why::NotOneOf(names))
    })
}

/// The scatter of the user's own pulls; the assumed one where nothing was typed.
///
/// # Errors
///
/// A text that is no number of points.
pub fn scatter(text: Option<&str>) -> Result<Scatter, Wrong> {
    let Some(text) = text else { return Ok(Scatter::ASSUMED) };
    let wrong = || Wrong::new(Field::Scatter, text, Why::NotPoints);
    let points: f32 = text.trim().trim_end_matches('%').trim().replace(',', ".").parse().map_err(|_| wrong())?;
    if points == 0.0 {
        return Ok(Scatter::SCALE_ONLY);
    }
    Scatter::known(points, STATED_SCATTER_DOF).ok_or_else(wrong)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_class_is_no_figure() {
        let wrong = |text| range(Field::Wants, Some(text), Unit::Mm).unwrap_err().why;
        let Why::Class(figures) = wrong(" Moderate ") else { panic!("no class") };
        // The tool's own ladder, and that of an extension leaflet.
        assert_eq!(figures[0], ClassFigures { table: "own", from: 25_000, up_to: Some(50_000) });
        assert!(figures.contains(&ClassFigures { table: "utah-extension", from: 18_750, up_to: Some(37_500) }));
        assert!(matches!(wrong("Slight"), Why::Class(_)));
        assert_eq!(wrong("a lot"), Why::Limit(LimitError::NotALimit));
    }

    #[test]
    fn no_least_of_nothing() {
        let range = |text| range(Field::Wants, Some(text), Unit::Mm).unwrap();
        assert_eq!(range("0%..5%"), range("..5%"));
        assert!(range("1%..5%").at_least.is_some());
    }

    #[test]
    fn tables_in_any_capitals() {
        assert_eq!(table("OWN").unwrap().key, "own");
        assert_eq!(table("Utah extension").unwrap().key, "utah-extension");
    }

    #[test]
    fn confidences() {
        assert_eq!(confidence("99.5 %").unwrap(), Confidence::per_mille(995).unwrap());
        for text in ["50", "100", "95.05", "high", "4in to 5in", "-95"] {
            assert!(confidence(text).is_err(), "{text}");
        }
    }
}
