//! Units: the exact definitions (1 in = 25.4 mm, international yard and pound agreement of 1959) and the library
//! `uom` as a second opinion.

use crate::{assert_near, length, percent, pull, scale, stretch};
use tenter_core::{Ends, Length, LengthError, Unit};
use uom::si::f64::Length as Quantity;
use uom::si::length::{centimeter, inch, millimeter, yard};

#[test]
fn definitions() {
    for (text, mm) in [
        ("1in", "25.4 mm"),
        ("1yd", "914.4 mm"),
        ("1/8in", "3.175 mm"),
        ("1/16in", "1.5875 mm"),
        ("1/32in", "0.79375 mm"),
        ("1/64in", "0.396875 mm"),
    ] {
        assert_eq!(length(text).show(Unit::Mm).to_string(), mm, "{text}");
    }
    assert_eq!(length("36in"), length("1yd"));
}

/// The step: 1/1600 mm makes 0.1 mm 160, 0.5 mm 800 and 1/64 in 635 steps, with a reach of ± 1342 m (worked out with
/// exact fractions, confirmed with the library `pint`).
#[test]
fn steps() {
    for (text, steps) in [("0.1mm", 160), ("0.5mm", 800), ("1/64in", 635)] {
        assert_eq!(length(text).steps(), steps, "{text}");
    }
    assert!(Length::parse("1342m", Unit::Mm).is_ok());
    assert_eq!(Length::parse("1343m", Unit::Mm), Err(LengthError::TooLong));
}

/// Every mark of a 1/64 in rule up to 60 in and of a 0.5 mm rule up to 1.5 m.
fn marks() -> impl Iterator<Item = Length> {
    let inches = (0..=60 * 64).map(Length::from_inch_64ths);
    let millimetres = (0..=3000).map(|half| Length::from_steps(800 * half));
    inches.chain(millimetres)
}

#[test]
fn uom_agrees_on_every_mark() {
    for mark in marks() {
        let steps = f64::from(mark.steps());
        let by_inch = Quantity::new::<inch>(steps / 40_640.0);
        assert_near(mark.mm(), by_inch.get::<millimeter>(), 1e-7 * by_inch.get::<millimeter>(), "inch");
        let by_yard = Quantity::new::<yard>(steps / (36.0 * 40_640.0));
        assert_near(mark.mm(), by_yard.get::<millimeter>(), 1e-7 * by_yard.get::<millimeter>(), "yard");
    }
}

/// The number before the unit; a fraction of an inch, or a decimal.
fn number(text: &str) -> f64 {
    let (number, _unit) = text.rsplit_once(' ').unwrap();
    number
        .split(' ')
        .map(|part| match part.split_once('/') {
            Some((above, below)) => above.parse::<f64>().unwrap() / below.parse::<f64>().unwrap(),
            None => part.parse().unwrap(),
        })
        .sum()
}

/// What is shown is what `uom` computes: exactly in millimetres and centimetres and for 64ths of an inch, to the
/// thousandth of an inch otherwise.
#[test]
fn shown_numbers_are_those_of_uom() {
    for mark in marks() {
        let quantity = Quantity::new::<millimeter>(f64::from(mark.steps()) / 1600.0);
        let shown = |unit| number(&mark.show(unit).to_string());
        assert_near(shown(Unit::Mm), quantity.get::<millimeter>(), 1e-9, "mm");
        assert_near(shown(Unit::Cm), quantity.get::<centimeter>(), 1e-9, "cm");
        let grain = if mark.steps() % 635 == 0 { 1e-9 } else { 5e-4 + 1e-9 };
        assert_near(shown(Unit::Inch), quantity.get::<inch>(), grain, "in");
    }
}

/// inch → mm → cm → inch over texts: every inch mark comes back in every unit, every millimetre mark in both of its.
#[test]
fn every_mark_comes_back() {
    let through = |mark: Length, unit| length(&mark.show(unit).to_string());
    for mark in marks() {
        assert_eq!(through(through(mark, Unit::Mm), Unit::Cm), mark);
        if mark.steps() % 635 == 0 {
            assert_eq!(through(through(mark, Unit::Mm), Unit::Inch), mark);
        }
    }
}

/// "At least 5 %" on 4 in needs 4.2 in, which is no mark of a 1/8 or 1/16 in scale; its neighbours are 4 3/16 in,
/// 4.69 %, and 4 1/4 in, 6.25 % (worked out).
#[test]
fn five_percent_of_four_inches_is_between_the_lines() {
    let wanted = length("4.2in");
    for division in ["1/8in", "1/16in"] {
        assert!(!scale(division, Ends::One).has_line_at(wanted), "{division}");
    }
    assert_eq!(percent(stretch(&pull("4in", "4.2in")), 3), "5.000");
    for (neighbour, want) in [("4 3/16in", "4.69"), ("4 1/4in", "6.25")] {
        assert!(scale("1/16in", Ends::One).has_line_at(length(neighbour)));
        assert_eq!(percent(stretch(&pull("4in", neighbour)), 2), want);
    }
}

/// The figures do not depend on the unit: the same cloth written in five ways.
#[test]
fn stretch_in_any_unit() {
    for (gauge, extended) in
        [("254mm", "330.2mm"), ("25.4cm", "33.02cm"), ("10in", "13in"), ("0.254m", "0.3302m"), ("1yd", "1.3yd")]
    {
        assert_eq!(stretch(&pull(gauge, extended)), crate::whole_percent(30), "{gauge} to {extended}");
    }
}
