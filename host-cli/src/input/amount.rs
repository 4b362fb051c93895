//! Lengths, times and forces, as typed.

use tenter_core::{Length, Load, MAX_REST_SECONDS, Unit};

use super::{Field, Why, Wrong};

/// The weight of a kilogram, in millinewtons: standard gravity, 9.80665 m/s² (CGPM 1901).
const MILLINEWTONS_PER_KG: f64 = 9806.65;
/// The avoirdupois pound in kilograms (exact, international agreement of 1959).
const KG_PER_POUND: f64 = 0.453_592_37;
/// The most that a load is taken for: 1000 N is about 100 kg.
pub const MAX_MILLINEWTONS: u32 = 1_000_000;

/// A length; a bare number is in `unit`.
///
/// # Errors
///
/// A text that is no length.
pub fn length(field: Field, text: &str, unit: Unit) -> Result<Length, Wrong> {
    Length::parse(text, unit).map_err(|error| Wrong::new(field, text, Why::Length(error)))
}

/// A length of cloth: at least zero, and with its unit, because a bare 2 could be metres or yards.
///
/// # Errors
///
/// A text that is no such length.
pub fn cloth(field: Field, text: &str) -> Result<Length, Wrong> {
    let wrong = |why| Wrong::new(field, text, why);
    let unitless = Length::parse(text, Unit::Mm).is_ok() && unit_of(text).is_none();
    if unitless && text.trim() != "0" {
        return Err(wrong(Why::NoUnit));
    }
    let length = length(field, text, Unit::Mm)?;
    if length < Length::ZERO { Err(wrong(Why::Negative)) } else { Ok(length) }
}

/// The unit a length was typed in, if it has one.
#[must_use]
pub fn unit_of(text: &str) -> Option<Unit> {
    Unit::typed(text)
}

/// The unit of the text: what was asked for, else that of the first length that was typed with one.
#[must_use]
pub fn shown_in<'t>(asked: Option<Unit>, typed: impl IntoIterator<Item = &'t Option<String>>) -> Option<Unit> {
    let unit = |text: &String| of_width(text).and_then(|(length, _)| unit_of(length)).or_else(|| unit_of(text));
    asked.or_else(|| typed.into_iter().flatten().find_map(unit))
}

/// A length of a width: `1.6m at 140cm`, `1.5m of 150cm`, `2yd x 58in`.
#[must_use]
pub fn of_width(text: &str) -> Option<(&str, &str)> {
    [" at ", " of ", " x ", " by ", "@", "\u{d7}"].iter().find_map(|mark| split(text, mark))
}

/// Two lengths, the one before the other: `50cm to 48.5cm`, `50cm -> 48.5cm`, `50cm-48.5cm`. A dash may belong to a
/// length, as in 4-1/8in, so it must leave a length on either side, and no other dash may.
#[must_use]
pub fn before_after(text: &str) -> Option<(&str, &str)> {
    if let Some(both) = [" to ", "->", "\u{2192}"].iter().find_map(|mark| split(text, mark)) {
        return Some(both);
    }
    let dashes = text.char_indices().filter(|(_, c)| matches!(c, '-' | '\u{2013}'));
    let halves = dashes.filter_map(|(at, c)| Some((text.get(..at)?, text.get(at.checked_add(c.len_utf8())?..)?)));
    let is = |text: &str| Length::parse(text, Unit::Mm).is_ok();
    let mut halves = halves.filter(|(one, other)| is(one) && is(other));
    halves.next().filter(|_| halves.next().is_none())
}

/// What stands before and after the first mark, whatever its capitals.
fn split<'t>(text: &'t str, mark: &str) -> Option<(&'t str, &'t str)> {
    let at = text.to_ascii_lowercase().find(mark)?;
    Some((text.get(..at)?, text.get(at.checked_add(mark.len())?..)?))
}

/// `60s`, `30min` or `30m`, `1h`, `2d`, or bare seconds.
#[must_use]
pub fn seconds(text: &str) -> Option<u32> {
    let end = text.find(|c: char| !c.is_ascii_digit()).unwrap_or(text.len());
    let (number, unit) = text.split_at_checked(end)?;
    let count: u32 = number.parse().ok()?;
    count.checked_mul(match unit.trim().to_ascii_lowercase().as_str() {
        "" | "s" | "sec" | "secs" | "second" | "seconds" => 1,
        "m" | "min" | "mins" | "minute" | "minutes" => 60,
        "h" | "hr" | "hour" | "hours" => 3600,
        "d" | "day" | "days" => 86_400,
        _ => return None,
    })
}

/// A limit with the time since release at which it is asked, where it says one: `3%@30min`.
///
/// # Errors
///
/// A time that is none, or longer than is read.
pub fn timed(field: Field, text: &str) -> Result<(&str, Option<u32>), Wrong> {
    let Some((limit, time)) = text.split_once('@') else { return Ok((text, None)) };
    let seconds = seconds(time.trim()).filter(|seconds| (1..=MAX_REST_SECONDS).contains(seconds));
    seconds.map(|seconds| (limit, Some(seconds))).ok_or_else(|| Wrong::new(field, text, Why::NotATime))
}

/// `hand`, `500g`, `1.5kg`, `3lb`, `15N`, `50cN`.
///
/// # Errors
///
/// A text that is no such force.
pub fn load(text: &str) -> Result<Load, Wrong> {
    let wrong = |why| Wrong::new(Field::Load, text, why);
    let trimmed = text.trim();
    if trimmed.eq_ignore_ascii_case("hand") {
        return Ok(Load::Hand);
    }
    let end = trimmed.find(|c: char| !c.is_ascii_digit() && !matches!(c, '.' | ',')).unwrap_or(trimmed.len());
    let (number, unit) = trimmed.split_at_checked(end).unwrap_or((trimmed, ""));
    let number: f64 = number.replace(',', ".").parse().map_err(|_| wrong(Why::NotALoad))?;
    let per_unit = match unit.trim().to_ascii_lowercase().as_str() {
        "g" => MILLINEWTONS_PER_KG / 1000.0,
        "kg" => MILLINEWTONS_PER_KG,
        "lb" | "lbs" => MILLINEWTONS_PER_KG * KG_PER_POUND,
        "oz" => MILLINEWTONS_PER_KG * KG_PER_POUND / 16.0,
        "n" => 1000.0,
        "cn" => 10.0,
        _ => return Err(wrong(Why::ForceUnit)),
    };
    let millinewtons = (number * per_unit).round();
    if !(1.0..=f64::from(MAX_MILLINEWTONS)).contains(&millinewtons) {
        return Err(wrong(Why::ForceRange));
    }
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // Within 1 and 10⁶ as checked above.
    Ok(Load::Force { millinewtons: millinewtons as u32 })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn times() {
        for (text, want) in
            [("60s", 60), ("30min", 1800), ("1 h", 3600), ("2d", 172_800), ("90", 90), ("1m", 60), ("30 Min", 1800)]
        {
            assert_eq!(seconds(text), Some(want), "{text}");
        }
        for text in ["", "s", "1.5h", "60x", "99999999999s", "5000000d", "-1s"] {
            assert_eq!(seconds(text), None, "{text}");
        }
    }

    #[test]
    fn two_lengths() {
        for (text, one, other) in [
            ("50cm to 48.5cm", "50cm", "48.5cm"),
            ("50 TO 48.5", "50", "48.5"),
            ("50cm-48.5cm", "50cm", "48.5cm"),
            ("50 \u{2013} 48.5", "50 ", " 48.5"),
            ("4-1/8in-4in", "4-1/8in", "4in"),
            ("20in -> 19-1/4in", "20in ", " 19-1/4in"),
        ] {
            assert_eq!(before_after(text), Some((one, other)), "{text}");
        }
        for text in ["", "50cm", "-50cm", "50cm-", "1-2-3", "50cm--48cm"] {
            assert_eq!(before_after(text), None, "{text}");
        }
        for text in ["1.5m of 150cm", "1.5m AT 150cm", "1.5m x 150cm", "1.5m@150cm", "1.5m\u{d7}150cm"] {
            assert_eq!(of_width(text), Some(("1.5m", "150cm")), "{text}");
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
    fn the_gauge_names_the_unit() {
        assert_eq!(unit_of("4 1/8 in"), Some(Unit::Inch));
        assert_eq!(unit_of("4\""), Some(Unit::Inch));
        assert_eq!(unit_of("10 CM"), Some(Unit::Cm));
        assert_eq!(unit_of("100"), None);
    }
}
