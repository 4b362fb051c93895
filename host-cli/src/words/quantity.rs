//! Lengths of cloth, dates and other quantities as people write them.

use jiff::Timestamp;
use tenter_core::making::printed::Printed;
use tenter_core::making::yardage::ShopCut;
use tenter_core::{Decimal, Length, Ratio, Unit};

use crate::finding::amounts;
use crate::log::Here;
use crate::log::tested::Tested;
use crate::words::terms::duration;

/// A length of cloth on hand: `2.40 m`, or `2 5/8 yd` or `2 yd 22 in` for inches. Rounded down: nobody should count on
/// what is not there.
#[must_use]
pub fn cloth(length: Length, unit: Unit) -> String {
    rounded(length, unit, |steps, one| steps.div_euclid(one))
}

/// A length of cloth that is needed, rounded up to the next centimetre or inch.
#[must_use]
pub fn cloth_needed(length: Length, unit: Unit) -> String {
    rounded(length, unit, |steps, one| steps.saturating_add(one - 1).div_euclid(one))
}

/// A length of cloth to ask for in a shop, rounded up to what shops cut where the reader shops: `1.80 m`, `2 1/8 yd`.
#[must_use]
pub fn cloth_to_buy(length: Length, unit: Unit, cut: Option<ShopCut>) -> String {
    as_cut(amounts::as_cut(length, unit, cut), unit)
}

/// A length that was rounded up to what shops cut already.
#[must_use]
pub fn as_cut(length: Length, unit: Unit) -> String {
    cloth_needed(length, unit)
}

/// Metres with two decimals; or yards, in eighths where it is a whole number of them, else yards and inches. `round` takes
/// steps and the steps of a centimetre or an inch.
fn rounded(length: Length, unit: Unit, round: impl Fn(i64, i64) -> i64) -> String {
    let steps = i64::from(length.steps());
    if unit != Unit::Inch {
        let centimetres = round(steps, i64::from(Length::METRE.steps()) / 100);
        return format!("{} m", Decimal::new(centimetres, 2));
    }
    let eighth = i64::from(Length::YARD.steps()) / 8;
    if steps % eighth == 0 {
        return format!("{} yd", eighths(steps / eighth));
    }
    let inches = round(steps, i64::from(Length::INCH.steps()));
    match (inches / 36, inches % 36) {
        (0, inches) => format!("{inches} in"),
        (yards, 0) => format!("{yards} yd"),
        (yards, inches) => format!("{yards} yd {inches} in"),
    }
}

/// Eighths as people write them: `2 5/8`, `1/2`, `3`.
fn eighths(count: i64) -> String {
    let (whole, part) = (count / 8, count % 8);
    let part = match part {
        0 => return whole.to_string(),
        2 => "1/4".to_owned(),
        4 => "1/2".to_owned(),
        6 => "3/4".to_owned(),
        odd => format!("{odd}/8"),
    };
    if whole == 0 { part } else { format!("{whole} {part}") }
}

/// A length to measure off with a tape: to the nearest millimetre, or sixteenth of an inch.
#[must_use]
pub fn tape(length: Length, unit: Unit) -> String {
    let step = if unit == Unit::Inch { Length::INCH.steps() / 16 } else { Length::STEPS_PER_MM };
    let up = length.steps().saturating_add(step / 2);
    Length::from_steps(up - up.rem_euclid(step)).show(unit).to_string()
}

/// A length to cut or to sew: to the nearest millimetre, or eighth of an inch, but never zero of something.
#[must_use]
pub fn to_sew(length: Length, unit: Unit) -> String {
    let step = if unit == Unit::Inch { Length::INCH.steps() / 8 } else { Length::STEPS_PER_MM };
    let up = length.steps().saturating_add(step / 2);
    let near = (up - up.rem_euclid(step)).max(if length > Length::ZERO { step } else { 0 });
    Length::from_steps(near).show(unit).to_string()
}

/// A width that patterns print, in the reader's unit: millimetres, or eighths of an inch.
#[must_use]
pub fn printed(width: Printed, unit: Unit) -> String {
    let in_inches = unit == Unit::Inch;
    width.seen(in_inches).show(seam_unit(unit)).to_string()
}

/// A length that must not be exceeded: down to the millimetre, or the sixteenth of an inch.
#[must_use]
pub fn at_most(length: Length, unit: Unit) -> String {
    let (step, unit) = match unit {
        Unit::Inch => (Length::INCH.steps() / 16, unit),
        _ => (Length::STEPS_PER_MM, Unit::Mm),
    };
    Length::from_steps(length.steps() - length.steps().rem_euclid(step)).show(unit).to_string()
}

/// A width of cloth or the length of a seam: `150 cm`, or `58 in`, to the quarter of an inch.
#[must_use]
pub fn width(length: Length, unit: Unit) -> String {
    if unit != Unit::Inch {
        return tape(length, marks_unit(unit));
    }
    let quarter = Length::INCH.steps() / 4;
    let up = length.steps().saturating_add(quarter / 2);
    Length::from_steps(up - up.rem_euclid(quarter)).show(unit).to_string()
}

/// A reading as it was made: in the unit of the reader, inches to the nearest sixteenth; but in inches where it is a whole
/// number of sixteenths and no whole number of tenths of a millimetre.
#[must_use]
pub fn reading(length: Length, unit: Unit) -> String {
    let whole = |step: i32| length.steps().checked_rem(step) == Some(0);
    let is_inches = whole(Length::INCH.steps() / 16) && !whole(Length::STEPS_PER_MM / 10);
    match unit {
        _ if is_inches => length.show(Unit::Inch).to_string(),
        Unit::Inch => tape(length, unit),
        metric => length.show(metric).to_string(),
    }
}

/// The unit in which marks are shown beside lengths of cloth.
#[must_use]
pub const fn marks_unit(unit: Unit) -> Unit {
    match unit {
        Unit::Mm => Unit::Cm,
        other => other,
    }
}

/// The unit of a small difference beside lengths of cloth.
#[must_use]
pub const fn seam_unit(unit: Unit) -> Unit {
    match unit {
        Unit::Inch => Unit::Inch,
        _ => Unit::Mm,
    }
}

/// A day, where the reader is.
#[must_use]
pub fn day(at: Timestamp, here: Here) -> String {
    here.shows(at).date().to_string()
}

/// A day and the time of day, where the reader is.
#[must_use]
pub fn minute(at: Timestamp, here: Here) -> String {
    here.shows(at).strftime("%Y-%m-%d %H:%M").to_string()
}

/// A number with a true minus sign.
#[must_use]
pub fn number(decimal: Decimal) -> String {
    decimal.to_string().replace('-', "−")
}

/// `1 pull`, `3 pulls`.
#[must_use]
pub fn counted<N: core::fmt::Display + PartialEq + From<u8>>(count: N, thing: &str) -> String {
    if count == N::from(1) { format!("1 {thing}") } else { format!("{count} {thing}s") }
}

/// A share in percent with one decimal.
#[must_use]
pub fn percent(ratio: Ratio) -> String {
    format!("{} %", number(ratio.percent(1)))
}

/// What is said of the time of a test where the handheld's clock was not set.
pub const DAY_NOT_KNOWN: &str = "day not known";

/// The day of a test, as far as it is known.
#[must_use]
pub fn pulled(said: &Tested, here: Here) -> String {
    if said.clock_unset { DAY_NOT_KNOWN.to_owned() } else { day(said.pulled, here) }
}

/// A time since release as it is typed after the `@`.
#[must_use]
pub fn time_typed(seconds: u32) -> String {
    duration(seconds).replace(' ', "")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn one_is_not_many() {
        assert_eq!([0_usize, 1, 2].map(|count| counted(count, "pull")), ["0 pulls", "1 pull", "2 pulls"]);
        assert_eq!(counted(1_u64, "test"), "1 test");
    }

    #[test]
    fn lengths_of_cloth() {
        assert_eq!(cloth(Length::from_mm(2400), Unit::Mm), "2.40 m");
        assert_eq!(cloth(Length::from_steps(1_599_999), Unit::Cm), "0.99 m");
        assert_eq!(cloth_needed(Length::from_mm(2401), Unit::Mm), "2.41 m");
        assert_eq!(cloth_needed(Length::from_mm(2400), Unit::Mm), "2.40 m");
        assert_eq!(cloth_to_buy(Length::from_mm(2401), Unit::Cm, None), "2.50 m");
        assert_eq!(cloth_to_buy(Length::from_mm(2401), Unit::Cm, Some(ShopCut::FiveCentimetres)), "2.45 m");
        // 10 yd are 9144 mm; 2.40 m are 94.49 in, 2 yd 22.49 in.
        assert_eq!(cloth(Length::from_mm(9144), Unit::Inch), "10 yd");
        assert_eq!(cloth(Length::from_mm(2400), Unit::Inch), "2 yd 22 in");
        assert_eq!(cloth_needed(Length::from_mm(2400), Unit::Inch), "2 yd 23 in");
        assert_eq!(cloth_to_buy(Length::from_mm(2400), Unit::Inch, None), "2 5/8 yd"); // 2.6247 yd.
        // 0.80 m are 31.5 in, 7/8 yd is 31 1/2 in exactly: 800.1 mm.
        assert_eq!(cloth(Length::from_mm(800), Unit::Inch), "31 in");
        assert_eq!(cloth_to_buy(Length::from_mm(800), Unit::Inch, None), "7/8 yd");
        assert_eq!(cloth_to_buy(Length::from_steps(9144 * 1600 + 1), Unit::Inch, None), "10 1/8 yd");
        assert_eq!(cloth(Length::parse("2 5/8 yd", Unit::Mm).unwrap(), Unit::Inch), "2 5/8 yd");
        assert_eq!(cloth(Length::ZERO, Unit::Inch), "0 yd");
        assert_eq!(width(Length::from_mm(1480), Unit::Mm), "148 cm");
        // 148 cm are 58.27 in, 150 cm 59.06.
        assert_eq!([1480, 1500].map(|mm| width(Length::from_mm(mm), Unit::Inch)), ["58 1/4 in", "59 in"]);
        // 4 3/8 in are 111.125 mm; 127 mm may be 5 in or not.
        assert_eq!(reading(Length::from_inch_64ths(4 * 64 + 24), Unit::Mm), "4 3/8 in");
        assert_eq!(reading(Length::from_mm(100), Unit::Inch), "3 15/16 in");
        assert_eq!([1110, 1270].map(|mm| reading(Length::from_steps(160 * mm), Unit::Mm)), ["111 mm", "127 mm"]);
        // 75 mm are 2.95 in: a sixteenth more would be too long.
        assert_eq!(at_most(Length::from_mm(75), Unit::Inch), "2 15/16 in");
        // 17 cm less half an inch is 157.3 mm; 5 in and 3/100 mm is 5 in.
        assert_eq!(tape(Length::from_steps(170 * 1600 - 20_320), Unit::Cm), "15.7 cm");
        assert_eq!(tape(Length::from_steps(5 * 40_640 + 48), Unit::Inch), "5 in");
    }
}
