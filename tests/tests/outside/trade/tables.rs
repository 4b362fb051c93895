//! Tables and rules of thumb that are put in numbers.

use crate::{length, percent, pull, stretch, whole_percent};
use tenter_core::{Length, Limit, Ratio, SUITS, Table, Unit};

/// "4 in to X in". 25, 50, 75 and 100 % are printed by Utah State University Extension, *Considerations for Knit
/// Fabrics*, undated; the others are worked out.
#[test]
fn four_inches_to() {
    for (extended, want) in [
        ("4 1/4in", "6.250"),
        ("4 1/2in", "12.500"),
        ("4 3/4in", "18.750"),
        ("5in", "25.000"),
        ("5 1/4in", "31.250"),
        ("5 3/8in", "34.375"),
        ("5 1/2in", "37.500"),
        ("6in", "50.000"),
        ("7in", "75.000"),
        ("8in", "100.000"),
        ("10in", "150.000"),
    ] {
        let ratio = stretch(&pull("4in", extended));
        assert_eq!(percent(ratio, 3), want, "4 in to {extended}");
        let printed = Limit::parse(&format!("4in to {extended}"), Unit::Mm).unwrap();
        let typed = Limit::parse(want, Unit::Mm).unwrap();
        assert!(printed.ratio() == ratio && typed.ratio() == ratio, "4 in to {extended}");
    }
}

/// "Knit gauge", sewing blog, 2006: on 5 in each half inch is 10 %, so that 12 in is 140 %. On 10 cm each millimetre
/// is 1 % (worked out).
#[test]
fn other_gauge_lengths() {
    for halves in 10..=24i16 {
        let extended = Length::from_inch_64ths(32 * halves).show(Unit::Inch).to_string();
        assert_eq!(stretch(&pull("5in", &extended)), whole_percent(10 * (i64::from(halves) - 10)), "{extended}");
    }
    assert_eq!(stretch(&pull("5in", "12in")), whole_percent(140));
    for mm in 100..=200 {
        assert_eq!(stretch(&pull("10cm", &format!("{mm}mm"))), whole_percent(mm - 100));
    }
}

/// The rows of the extension leaflet: stable up to 4 3/4 in, moderate up to 5 3/8 in (printed as 35 %, exactly
/// 34.375), stretchy from 5 1/2 in. Its hole between 5 3/8 and 5 1/2 in counts as moderate here.
#[test]
fn extension_leaflet() {
    let table = Table::named("utah-extension").unwrap();
    for (extended, want) in [
        ("4in", "stable"),
        ("4 3/4in", "stable"),
        ("4 49/64in", "moderate"),
        ("5 3/8in", "moderate"),
        ("5 25/64in", "moderate"),
        ("5 31/64in", "moderate"),
        ("5 1/2in", "stretchy"),
        ("8in", "stretchy"),
    ] {
        assert_eq!(table.class(stretch(&pull("4in", extended))).name, want, "4 in to {extended}");
    }
    assert_eq!(table.class(whole_percent(35)).name, "moderate");
}

/// The same 40 % cloth is "stretchy" to the leaflet and "moderate" to K. Richardson, *Designing and Patternmaking for
/// Stretch Fabrics*, 2008 (26 to 50 %, from memory).
#[test]
fn tables_disagree() {
    let class = |key| Table::named(key).unwrap().class(whole_percent(40)).name;
    assert_eq!((class("utah-extension"), class("richardson-2008")), ("stretchy", "moderate"));
}

/// H. J. Armstrong, *Patternmaking for Fashion Design*, ch. 27 (from memory): 5 in to 5 7/8 in is printed as 18 % and
/// is 17.5 %; 6 1/4 in is 25 %, 7 1/2 in 50 %, 10 in 100 %.
#[test]
fn five_inch_chart() {
    for (extended, want) in [("5 7/8in", "17.5"), ("6 1/4in", "25.0"), ("7 1/2in", "50.0"), ("10in", "100.0")] {
        assert_eq!(percent(stretch(&pull("5in", extended)), 1), want, "5 in to {extended}");
    }
}

/// One division of the scale in points of stretch (worked out, printed to one decimal).
#[test]
fn one_division_in_points() {
    for (gauge, division, want) in [
        ("2in", "1/16in", "3.1"),
        ("4in", "1/16in", "1.6"),
        ("4in", "1/8in", "3.1"),
        ("5in", "1/8in", "2.5"),
        ("10in", "1/8in", "1.3"), // Printed as 1.25.
        ("5cm", "1mm", "2.0"),
        ("10cm", "1mm", "1.0"),
        ("20cm", "1mm", "0.5"),
    ] {
        let points = Ratio::new(length(division).steps().into(), length(gauge).steps().into()).unwrap();
        assert_eq!(percent(points, 1), want, "{division} on {gauge}");
    }
}

/// A jacket that asks for "slight stretch, about 5 %": common practice, no source was found, and the row says so.
#[test]
fn five_percent_for_an_outer_layer_has_no_source() {
    let row = SUITS.iter().find(|row| row.garment.starts_with("trousers, skirt or coat")).unwrap();
    assert_eq!(row.at_least, 5_000);
    assert_eq!(row.source, tenter_core::Source::CommonPractice);
}
