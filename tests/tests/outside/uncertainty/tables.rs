//! What a hand scale can resolve.

use crate::{assert_near, figures, length, percent, pull_on, scale, triple};
use tenter_core::{Ends, Figures, Grain, PullTest, RestFigures};

/// JCGM 100:2008 § 4.3.7: a value known to lie evenly in ± a has u = a/√3. Printed example (a translated guide on
/// distribution functions): between 7 and 10, u = 0.87. § F.2.2.1: 0.29 of a step. The others are worked out.
#[test]
fn one_reading() {
    for (division, ends, want, digits) in [
        ("3mm", Ends::One, 0.87, 0.005),
        ("1mm", Ends::One, 0.289, 0.0005),
        ("1mm", Ends::Both, 0.408, 0.0005),
        ("1/8in", Ends::One, 0.92, 0.005),
        ("1/16in", Ends::One, 0.458, 0.0005),
    ] {
        assert_near(scale(division, ends).u_mm(), want, digits, division);
    }
}

fn on_1_mm(ends: Ends, gauge: &str, extended: &str) -> PullTest {
    let test = PullTest::new(length(gauge), Grain::Crosswise).unwrap();
    let mut test = test.with_scale(scale("1mm", ends)).unwrap();
    test.add_pull(length(extended)).unwrap();
    test
}

/// Worked out from u(S) = 100 √((u/L0)² + (L1 u/L0²)²), printed to two decimals: at 5 % the standard uncertainty with
/// one end read and with both, twice it, 1.645 times it; then the standard uncertainty at 50 %.
#[test]
fn stretch_on_a_1_mm_scale() {
    for (gauge, to_5, to_50, at_5, doubled, guard, at_50) in [
        ("50mm", "52.5mm", "75mm", [0.84, 1.18], [1.67, 2.37], [1.38, 1.95], [1.04, 1.47]),
        ("100mm", "105mm", "150mm", [0.42, 0.59], [0.84, 1.18], [0.69, 0.97], [0.52, 0.74]),
        ("200mm", "210mm", "300mm", [0.21, 0.30], [0.42, 0.59], [0.34, 0.49], [0.26, 0.37]),
        ("250mm", "262.5mm", "375mm", [0.17, 0.24], [0.33, 0.47], [0.28, 0.39], [0.21, 0.29]),
    ] {
        for (k, ends) in [Ends::One, Ends::Both].into_iter().enumerate() {
            let u = figures(&on_1_mm(ends, gauge, to_5)).stretch.u;
            assert_near(u, at_5[k], 0.005, format!("{gauge} to {to_5}, {ends:?}"));
            assert_near(2.0 * u, doubled[k], 0.005, format!("{gauge} to {to_5}, {ends:?}, k = 2"));
            assert_near(1.645 * u, guard[k], 0.005, format!("{gauge} to {to_5}, {ends:?}, k = 1.645"));
            let u = figures(&on_1_mm(ends, gauge, to_50)).stretch.u;
            assert_near(u, at_50[k], 0.005, format!("{gauge} to {to_50}, {ends:?}"));
        }
    }
}

fn rest(ends: Ends, lengths: [&str; 3]) -> RestFigures {
    let mut test = on_1_mm(ends, lengths[0], lengths[1]);
    test.add_rest(60, length(lengths[2])).unwrap();
    figures(&test).rest.unwrap()
}

/// Worked out: recovery, and its standard uncertainty with one end read and with both. The fifth row is that of
/// GATE Textile 2016, question 20.
#[test]
fn recovery_on_a_1_mm_scale() {
    for (lengths, want, u) in [
        (["100mm", "105mm", "101mm"], "80.00", [7.48, 10.58]),
        (["100mm", "125mm", "102mm"], "92.00", [1.57, 2.22]),
        (["100mm", "150mm", "105mm"], "90.00", [0.78, 1.10]),
        (["100mm", "200mm", "106mm"], "94.00", [0.40, 0.56]),
        (["250mm", "262.5mm", "252.5mm"], "80.00", [2.99, 4.23]),
        (["75mm", "120mm", "95mm"], "55.56", [0.79, 1.11]),
    ] {
        for (k, ends) in [Ends::One, Ends::Both].into_iter().enumerate() {
            let recovery = rest(ends, lengths).recovery.unwrap();
            assert_eq!(percent(recovery.ratio, 2), want);
            assert_near(recovery.u, u[k], 0.005, format!("{lengths:?}, {ends:?}"));
        }
    }
}

/// Worked out: the sensitivities of recovery to gauge, extended and recovered length, c0 = 100 (L1 − L2)/d²,
/// c1 = 100 (L2 − L0)/d², c2 = −100/d with d = L1 − L0, in % a mm. Seen here from outside, by moving each length by a
/// hundredth of a millimetre either way; together with the scale's u they must give the uncertainty stated.
#[test]
fn sensitivities_of_recovery() {
    let rows: [([f64; 3], [f64; 3], f64); 6] = [
        ([100.0, 105.0, 101.0], [16.0, 4.0, -20.0], 0.005),
        ([100.0, 125.0, 102.0], [3.68, 0.32, -4.0], 0.0005),
        ([100.0, 150.0, 105.0], [1.8, 0.2, -2.0], 0.0005),
        ([100.0, 200.0, 106.0], [0.94, 0.06, -1.0], 0.0005),
        ([250.0, 262.5, 252.5], [6.4, 1.6, -8.0], 0.005),
        ([75.0, 120.0, 95.0], [1.23, 0.99, -2.22], 0.006),
    ];
    let recovery = |lengths: [f64; 3]| {
        let [gauge, extended, recovered] = lengths.map(|mm| format!("{mm:.2}mm"));
        figures(&triple(&gauge, &extended, &recovered)).rest.unwrap().recovery.unwrap()
    };
    let exact = |lengths: [f64; 3]| {
        let ratio = recovery(lengths).ratio;
        100.0 * ratio.numerator() as f64 / ratio.denominator() as f64
    };
    for (lengths, want, within) in rows {
        let mut squares = 0.0;
        for k in 0..3 {
            let moved = |by: f64| {
                let mut moved = lengths;
                moved[k] += by;
                exact(moved)
            };
            let slope = (moved(0.01) - moved(-0.01)) / 0.02;
            assert_near(slope, want[k], within, format!("c{k} of {lengths:?}"));
            squares += slope * slope;
        }
        let u = squares.sqrt() / 12f64.sqrt();
        assert_near(recovery(lengths).u, u, u * 1e-3, format!("u of {lengths:?}"));
    }
}

/// Worked out: growth at 100 mm has 0.41 points (0.58 with both ends) whatever the stretch.
#[test]
fn growth_on_a_1_mm_scale() {
    for extended in ["105mm", "125mm", "200mm"] {
        for (ends, want) in [(Ends::One, 0.41), (Ends::Both, 0.58)] {
            assert_near(rest(ends, ["100mm", extended, "101mm"]).growth.u, want, 0.005, extended);
        }
    }
}

/// Worked out to four digits: u(S), 1.96 u(S), u(R), 1.96 u(R), for a scale of the stated division. The sixth row
/// of that table, with an exact gauge length, is in `combination`: a pull test has one scale for all its lengths.
#[test]
fn four_digits() {
    for (division, lengths, [u_s, wide_s, u_r, wide_r]) in [
        ("1mm", ["100mm", "105mm", "101mm"], [0.4186, 0.820, 7.483, 14.67]),
        ("0.5mm", ["100mm", "105mm", "101mm"], [0.2093, 0.410, 3.742, 7.33]),
        ("1mm", ["250mm", "262.5mm", "252.5mm"], [0.1674, 0.328, 2.993, 5.87]),
        ("0.5mm", ["250mm", "262.5mm", "252.5mm"], [0.0837, 0.164, 1.497, 2.93]),
        ("1mm", ["100mm", "150mm", "105mm"], [0.5204, 1.020, 0.779, 1.53]),
    ] {
        let Figures { stretch, rest } = triple_on(division, lengths);
        let recovery = rest.unwrap().recovery.unwrap();
        let confidence = tenter_core::Confidence::default();
        assert_near(stretch.u, u_s, 5.5e-5, format!("u(S), {division} {lengths:?}"));
        assert_near(stretch.half_width(confidence), wide_s, 5.5e-4, format!("U(S), {division} {lengths:?}"));
        assert_near(recovery.u, u_r, 5.5e-4, format!("u(R), {division} {lengths:?}"));
        assert_near(recovery.half_width(confidence), wide_r, 5.5e-3, format!("U(R), {division} {lengths:?}"));
    }
}

fn triple_test(division: &str, [gauge, extended, recovered]: [&str; 3]) -> PullTest {
    let mut test = pull_on(division, gauge, extended);
    test.add_rest(60, length(recovered)).unwrap();
    test
}

fn triple_on(division: &str, lengths: [&str; 3]) -> Figures {
    figures(&triple_test(division, lengths))
}

/// Worked out: growth 1.00 ± 0.410 points.
#[test]
fn growth_of_one_percent() {
    let growth = triple_on("1mm", ["100mm", "105mm", "101mm"]).rest.unwrap().growth;
    assert_eq!(percent(growth.ratio, 2), "1.00");
    assert_near(growth.u, 0.410, 5.5e-4, "u(G)");
}
