//! Student's t and the normal distribution against printed tables and the library `statrs`.

use crate::assert_near;
use statrs::distribution::{ContinuousCDF, Normal, StudentsT};
use tenter_core::student::{quantile, upper_tail};

/// JCGM 100:2008 Table G.2 and NIST TN 1297 Table B.1, two-sided 95 %, to three decimals (the third from a library
/// that agrees with both tables).
#[test]
fn two_sided_95() {
    for (dof, want) in [
        (1.0, 12.706),
        (2.0, 4.303),
        (3.0, 3.182),
        (4.0, 2.776),
        (5.0, 2.571),
        (6.0, 2.447),
        (7.0, 2.365),
        (8.0, 2.306),
        (9.0, 2.262),
        (10.0, 2.228),
        (20.0, 2.086),
        (50.0, 2.009),
    ] {
        assert_near(quantile(0.025, dof), want, 5e-4, format!("{dof} degrees of freedom"));
    }
}

/// One-sided 95 %: the 90 % column of the same tables.
#[test]
fn one_sided_95() {
    for (dof, want) in [(1.0, 6.314), (2.0, 2.920), (3.0, 2.353), (4.0, 2.132), (5.0, 2.015)] {
        assert_near(quantile(0.05, dof), want, 5e-4, format!("{dof} degrees of freedom"));
    }
}

/// JCGM 100:2008 Table G.2, other columns, to its two decimals; and 95.45 % for four degrees of freedom, worked out.
#[test]
fn other_columns() {
    for (dof, percent, want, digits) in [
        (1.0, 68.27, 1.84, 0.005),
        (1.0, 95.0, 12.71, 0.005),
        (5.0, 99.73, 5.51, 0.005),
        (10.0, 90.0, 1.81, 0.005),
        (20.0, 90.0, 1.72, 0.005),
        (20.0, 95.0, 2.09, 0.005),
        (4.0, 95.45, 2.869, 5e-4),
    ] {
        let tail: f64 = (1.0 - percent / 100.0) / 2.0;
        assert_near(quantile(tail as f32, dof), want, digits, format!("{percent} %, {dof} degrees of freedom"));
    }
}

/// From −8 to 8 in steps of a hundredth.
fn abscissas() -> impl Iterator<Item = f32> {
    (-800..=800i16).map(|i| f32::from(i) / 100.0)
}

fn reference(dof: f32) -> impl Fn(f32) -> f64 {
    let distribution = StudentsT::new(0.0, 1.0, dof.into()).unwrap();
    move |t| distribution.sf(t.into())
}

fn largest_error(dof: f32, reference: impl Fn(f32) -> f64) -> f64 {
    abscissas().map(|t| (f64::from(upper_tail(t, dof)) - reference(t)).abs()).fold(0.0, f64::max)
}

/// At most 2 × 10⁻⁵ of a chance from three degrees of freedom on (measured: 1.1 × 10⁻⁵ at three, 1.2 × 10⁻⁶ at four),
/// and 4 × 10⁻⁷ in the closed forms, from five on (measured: 3.3 × 10⁻⁷ at five), and for the normal distribution: the
/// grain of `f32` and the 7.5 × 10⁻⁸ of the formula for the normal tail.
#[test]
fn tails_against_statrs() {
    for dof in [1.0, 2.0, 3.0, 4.0, 5.0, 7.5, 10.0, 16.3, 50.0, 1e4] {
        let error = largest_error(dof, reference(dof));
        let most = if dof == 3.0 || dof == 4.0 { 2e-5 } else { 4e-7 };
        assert!(error < most, "{dof} degrees of freedom: {error}");
    }
    let normal = Normal::standard();
    let error = largest_error(f32::INFINITY, |t| normal.sf(t.into()));
    assert!(error < 4e-7, "normal: {error}");
}

/// Fractions below three are cut to the whole number: never a smaller tail than the true one.
#[test]
fn cautious_below_three() {
    for dof in [1.1, 1.5, 1.9, 2.1, 2.5, 2.9] {
        let exact = reference(dof);
        for t in abscissas().filter(|t| *t > 0.0) {
            assert!(f64::from(upper_tail(t, dof)) > exact(t) - 3e-7, "{dof} degrees of freedom, {t}");
        }
        assert!(quantile(0.05, dof) > quantile(0.05, 3.0), "{dof} degrees of freedom");
    }
}

/// The chance that a coverage factor really leaves out, by the library: within the same 2 × 10⁻⁵ of what was asked.
#[test]
fn quantiles_against_statrs() {
    for dof in [1.0, 2.0, 3.0, 5.0, 7.5, 11.0, 50.0, 1e4] {
        let exact = reference(dof);
        for tail in [0.25, 0.1, 0.05, 0.025, 0.01, 0.001] {
            let left_out = exact(quantile(tail, dof));
            assert_near(left_out, tail.into(), 2e-5, format!("{tail}, {dof} degrees of freedom"));
        }
    }
}
