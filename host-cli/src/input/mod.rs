//! What was typed, as readings, demands and rules.

pub mod fabric;
pub mod guided;
pub mod making;
pub mod pattern;
pub mod size;
pub mod when;

use tenter_core::making::hanging::STANDARD_GRAVITY;
use tenter_core::{
    Confidence, Demand, Ends, Grain, Held, Length, LengthError, Limit, Load, PullTest, Range, Rules, Scale, Scatter,
    Table, Unit,
};

use crate::cli::check::CheckArgs;
use crate::cli::pull::PullArgs;
use crate::cli::reading::{
    ConfidenceArg, EndsArg, GrainArg, HeldArg, Reading, ShowArgs, TableArg, TestArgs, TestFlags, UnitArg, WantsArgs,
};
use crate::error::Error;

/// The weight of a kilogram, in millinewtons.
const MILLINEWTONS_PER_KG: f64 = STANDARD_GRAVITY as f64 / 100.0;
/// The avoirdupois pound in kilograms (exact, international agreement of 1959).
const KG_PER_POUND: f64 = 0.453_592_37;
/// Degrees of freedom granted to a scatter that the user states: as if it came from thirty-one pulls.
const STATED_SCATTER_DOF: f32 = 30.0;

/// Everything that `check` needs.
#[derive(Debug)]
pub struct CheckInput {
    /// The readings.
    pub test: PullTest,
    /// What is asked.
    pub demand: Demand,
    /// How answers are given.
    pub rules: Rules,
    /// The table of stretch classes.
    pub table: &'static Table,
    /// The unit of the text.
    pub unit: Unit,
}

/// Reads the flags of `check`.
///
/// # Errors
///
/// The first flag that cannot be read, with what to type instead.
pub fn check(args: &CheckArgs) -> Result<CheckInput, Error> {
    let unit = unit_for(&args.show, &args.test.flags);
    let test = pull_test(&args.test, unit)?;
    let mut input = asked(test, unit, &args.wants, &args.confidence, &args.table)?;
    input.rules.scatter = scatter(args.scatter.as_deref())?;
    Ok(input)
}

/// Reads the flags of `pull`; the scatter is known once the log is asked.
///
/// # Errors
///
/// As above.
pub fn pull(args: &PullArgs) -> Result<CheckInput, Error> {
    let unit = unit_for(&args.show, &args.test.flags);
    asked(pull_test(&args.test, unit)?, unit, &args.wants, &args.confidence, &args.table)
}

/// What is asked of a test, on the assumed scatter.
///
/// # Errors
///
/// As above.
pub fn asked(
    test: PullTest,
    unit: Unit,
    wants: &WantsArgs,
    sure: &ConfidenceArg,
    classes: &TableArg,
) -> Result<CheckInput, Error> {
    let demand = demand(wants, test.grain(), unit)?;
    let rules = Rules { confidence: confidence(&sure.confidence)?, ..Rules::default() };
    Ok(CheckInput { test, demand, rules, table: table(&classes.table)?, unit })
}

/// The unit of bare numbers: the one that was chosen, that of the gauge, or millimetres.
fn unit_for(show: &ShowArgs, flags: &TestFlags) -> Unit {
    show.units.map(unit).or_else(|| flags.marks.as_deref().and_then(unit_of)).unwrap_or_default()
}

/// Reads a pull test.
///
/// # Errors
///
/// The first flag that cannot be read, here and below.
pub fn pull_test(args: &TestArgs, unit: Unit) -> Result<PullTest, Error> {
    let flags = &args.flags;
    let gauge_text = flags.marks.as_deref().ok_or_else(|| {
        Error::Usage("missing --marks <LENGTH>; type the distance between the marks, such as --marks 10cm".to_owned())
    })?;
    let gauge = length("--marks", gauge_text, unit)?;
    let scale = scale(flags, unit)?;
    let mut test = PullTest::new(gauge, grain(flags.grain))
        .map_err(|reason| Error::reading("--marks", gauge_text, reason))?
        .with_scale(scale)
        .map_err(|reason| Error::reading("--division", flags.division.as_deref().unwrap_or("1mm"), reason))?
        .with_held(held(flags.held))
        .with_load(load(&flags.load)?)
        .with_settling_pull(flags.settling);
    for reading in &args.readings {
        match reading {
            Reading::To(text) => {
                test.add_pull(length("--to", text, unit)?).map_err(|reason| Error::reading("--to", text, reason))?
            }
            Reading::Back(text) => {
                let (recovered, seconds) = rest(text, unit)?;
                test.add_rest(seconds, recovered).map_err(|reason| Error::reading("--back", text, reason))?;
            }
        }
    }
    if test.pulls().is_empty() {
        return Err(Error::Usage(
            "missing --to <LENGTH>; type the distance while pulled, such as --to 10.5cm".to_owned(),
        ));
    }
    Ok(test)
}

/// The scale that the flags name.
///
/// # Errors
///
/// As above.
pub fn scale(args: &TestFlags, unit: Unit) -> Result<Scale, Error> {
    let ends = match args.ends {
        EndsArg::One => Ends::One,
        EndsArg::Both => Ends::Both,
    };
    let division = match &args.division {
        Some(text) => length("--division", text, unit)?,
        // The scale is the one the gauge was read on, whatever unit the text is shown in.
        None => division_in(args.marks.as_deref().and_then(unit_of).unwrap_or(unit)),
    };
    Scale::new(division, ends).ok_or_else(|| {
        let text = args.division.as_deref().unwrap_or_default();
        Error::argument("--division", text, "the scale division must be above zero; type one such as 1mm or 1/16in")
    })
}

/// The division of an ordinary tape in a unit.
#[must_use]
pub const fn division_in(unit: Unit) -> Length {
    match unit {
        Unit::Inch => Length::from_inch_64ths(4),
        Unit::Mm | Unit::Cm => Length::from_mm(1),
    }
}

/// What is asked along a grain.
///
/// # Errors
///
/// As above.
pub fn demand(args: &WantsArgs, grain: Grain, unit: Unit) -> Result<Demand, Error> {
    let stretch = range("--wants", args.wants.as_deref(), unit)?;
    let demand = Demand::for_grain(grain, stretch);
    let growth_at_most = limit("--growth-at-most", args.growth_at_most.as_deref(), unit)?;
    let recovery_at_least = recovery(args.recovery_at_least.as_deref(), unit)?;
    Ok(Demand { growth_at_most, recovery_at_least, ..demand })
}

/// A range of stretch; empty where nothing was typed.
///
/// # Errors
///
/// As above.
pub fn range(flag: &str, text: Option<&str>, unit: Unit) -> Result<Range, Error> {
    let range = |text| Range::parse(text, unit).map_err(|error| Error::argument(flag, text, error));
    text.map_or_else(|| Ok(Range::default()), range)
}

/// A least recovery, which cannot lie above 100 %.
///
/// # Errors
///
/// As above.
pub fn recovery(text: Option<&str>, unit: Unit) -> Result<Option<Limit>, Error> {
    let flag = "--recovery-at-least";
    let recovery_at_least = limit(flag, text, unit)?;
    let whole = Limit::milli_percent(100_000).ok();
    if let (Some(text), Some(limit), Some(whole)) = (text, recovery_at_least, whole)
        && limit.ratio() > whole.ratio()
    {
        let remedy = "cloth cannot give back more than its extension; type a percentage up to 100%";
        return Err(Error::argument(flag, text, remedy));
    }
    Ok(recovery_at_least)
}

/// A limit, where one was typed.
///
/// # Errors
///
/// As above.
pub fn limit(flag: &str, text: Option<&str>, unit: Unit) -> Result<Option<Limit>, Error> {
    text.map(|text| Limit::parse(text, unit).map_err(|error| Error::argument(flag, text, error))).transpose()
}

/// A length.
///
/// # Errors
///
/// As above.
pub fn length(flag: &str, text: &str, unit: Unit) -> Result<Length, Error> {
    Length::parse(text, unit).map_err(|error: LengthError| Error::argument(flag, text, error))
}

/// A recovered length and its time: `101mm@60s`.
fn rest(text: &str, unit: Unit) -> Result<(Length, u32), Error> {
    let Some((recovered, time)) = text.split_once('@') else {
        return Err(Error::argument("--back", text, "say when it was read, such as 101mm@60s or 101mm@30min"));
    };
    let recovered = Length::parse(recovered, unit).map_err(|error| Error::argument("--back", text, error))?;
    let seconds = seconds(time.trim()).ok_or_else(|| {
        Error::argument("--back", text, "type the time since release after the @, such as 60s, 30min or 1h")
    })?;
    Ok((recovered, seconds))
}

/// `60s`, `30min`, `1h`, `2d`, or bare seconds.
#[must_use]
pub fn seconds(text: &str) -> Option<u32> {
    let end = text.find(|c: char| !c.is_ascii_digit()).unwrap_or(text.len());
    let (number, unit) = text.split_at_checked(end)?;
    let count: u32 = number.parse().ok()?;
    count.checked_mul(match unit.trim() {
        "" | "s" | "sec" | "seconds" => 1,
        "min" | "minute" | "minutes" => 60,
        "h" | "hour" | "hours" => 3600,
        "d" | "day" | "days" => 86_400,
        _ => return None,
    })
}

/// `hand`, `500g`, `1.5kg`, `3lb`, `15N`, `50cN`.
///
/// # Errors
///
/// As above.
pub fn load(text: &str) -> Result<Load, Error> {
    let wrong = |remedy: &str| Error::argument("--load", text, remedy);
    let trimmed = text.trim();
    if trimmed.eq_ignore_ascii_case("hand") {
        return Ok(Load::Hand);
    }
    let end = trimmed.find(|c: char| !c.is_ascii_digit() && !matches!(c, '.' | ',')).unwrap_or(trimmed.len());
    let (number, unit) = trimmed.split_at_checked(end).unwrap_or((trimmed, ""));
    let number: f64 = number
        .replace(',', ".")
        .parse()
        .map_err(|_| wrong("type hand, or a mass or force such as 500g, 15N or 3lb"))?;
    let per_unit = match unit.trim().to_ascii_lowercase().as_str() {
        "g" => MILLINEWTONS_PER_KG / 1000.0,
        "kg" => MILLINEWTONS_PER_KG,
        "lb" | "lbs" => MILLINEWTONS_PER_KG * KG_PER_POUND,
        "oz" => MILLINEWTONS_PER_KG * KG_PER_POUND / 16.0,
        "n" => 1000.0,
        "cn" => 10.0,
        _ => return Err(wrong("unknown unit; type g, kg, oz, lb, N or cN after the number")),
    };
    let millinewtons = (number * per_unit).round();
    if !(1.0..=1e6).contains(&millinewtons) {
        return Err(wrong("a pull between 1 mN and 1000 N is meant; type one such as 500g or 15N"));
    }
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // Within 1 and 10⁶ as checked above.
    Ok(Load::Force { millinewtons: millinewtons as u32 })
}

fn scatter(text: Option<&str>) -> Result<Scatter, Error> {
    let Some(text) = text else { return Ok(Scatter::ASSUMED) };
    let wrong = || Error::argument("--scatter", text, "type points of stretch from 0 to 100, such as 0.8");
    let points: f32 = text.trim().trim_end_matches('%').trim().replace(',', ".").parse().map_err(|_| wrong())?;
    if points == 0.0 {
        return Ok(Scatter::SCALE_ONLY);
    }
    Scatter::known(points, STATED_SCATTER_DOF).ok_or_else(wrong)
}

/// How sure an answer must be.
///
/// # Errors
///
/// As above.
pub fn confidence(text: &str) -> Result<Confidence, Error> {
    let wrong = || Error::argument("--confidence", text, "type a percentage from 50.1 to 99.9, such as 95");
    let percent = Limit::parse(text, Unit::Mm).map_err(|_| wrong())?;
    let tenths = percent.ratio().percent(3).scaled();
    let tenths = if percent.printed_marks().is_none() && tenths % 100 == 0 { tenths / 100 } else { 0 };
    u16::try_from(tenths).ok().and_then(Confidence::per_mille).ok_or_else(wrong)
}

/// A table of stretch classes.
///
/// # Errors
///
/// As above.
pub fn table(name: &str) -> Result<&'static Table, Error> {
    Table::named(name).ok_or_else(|| {
        let names: Vec<_> = tenter_core::TABLES.iter().map(|table| table.key).collect();
        Error::argument("--table", name, format!("type one of {}", names.join(", ")))
    })
}

/// The unit a length was typed in, if it has one.
#[must_use]
pub fn unit_of(text: &str) -> Option<Unit> {
    let unit = text.trim_start_matches(|c: char| !c.is_alphabetic() && !matches!(c, '"' | '″' | '”' | '\''));
    match unit.to_ascii_lowercase().as_str() {
        "mm" => Some(Unit::Mm),
        "cm" | "m" => Some(Unit::Cm),
        "in" | "inch" | "inches" | "\"" | "″" | "”" | "''" | "yd" | "yard" | "yards" => Some(Unit::Inch),
        _ => None,
    }
}

/// A unit.
#[must_use]
pub const fn unit(arg: UnitArg) -> Unit {
    match arg {
        UnitArg::Mm => Unit::Mm,
        UnitArg::Cm => Unit::Cm,
        UnitArg::In => Unit::Inch,
    }
}

/// A grain.
#[must_use]
pub const fn grain(arg: GrainArg) -> Grain {
    match arg {
        GrainArg::Lengthwise => Grain::Lengthwise,
        GrainArg::Crosswise => Grain::Crosswise,
        GrainArg::Bias => Grain::Bias,
    }
}

/// A way of holding.
#[must_use]
pub const fn held(arg: HeldArg) -> Held {
    match arg {
        HeldArg::Flat => Held::Flat,
        HeldArg::Folded => Held::Folded,
        HeldArg::Strip => Held::Strip,
        HeldArg::Loop => Held::Loop,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn times() {
        for (text, want) in [("60s", 60), ("30min", 1800), ("1 h", 3600), ("2d", 172_800), ("90", 90)] {
            assert_eq!(seconds(text), Some(want), "{text}");
        }
        for text in ["", "s", "1.5h", "60m", "99999999999s", "5000000d", "-1s"] {
            assert_eq!(seconds(text), None, "{text}");
        }
    }

    #[test]
    fn forces() {
        // 3 lb and 4 lb as 13.3 N and 17.8 N: conversion factors of NIST SP 811, App. B.8 (exact since 1959).
        for (text, want) in [("500g", 4903), ("15N", 15_000), ("3 lb", 13_345), ("50cN", 500), ("1,5 kg", 14_710)] {
            assert_eq!(load(text).unwrap(), Load::Force { millinewtons: want }, "{text}");
        }
        for text in ["", "heavy", "5", "0g", "1e9N", "2000N", "5 stone", "1.2.3g"] {
            assert!(load(text).is_err(), "{text}");
        }
    }

    #[test]
    fn confidences() {
        assert_eq!(confidence("99.5 %").unwrap(), Confidence::per_mille(995).unwrap());
        for text in ["50", "100", "95.05", "high", "4in to 5in", "-95"] {
            assert!(confidence(text).is_err(), "{text}");
        }
    }

    #[test]
    fn the_gauge_names_the_unit() {
        assert_eq!(unit_of("4 1/8 in"), Some(Unit::Inch));
        assert_eq!(unit_of("4\""), Some(Unit::Inch));
        assert_eq!(unit_of("10 CM"), Some(Unit::Cm));
        assert_eq!(unit_of("100"), None);
    }
}
