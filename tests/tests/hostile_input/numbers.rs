//! The statistics and the numbers, from any floats and integers: no panic, and chances are chances.

use num_bigint::BigInt;
use num_rational::BigRational;
use proptest::num::f32::ANY;
use proptest::prelude::*;
use tenter_core::line::{FittedLine, WeightedPoint};
use tenter_core::stats::Series;
use tenter_core::student::{quantile, upper_tail};
use tenter_core::uncertainty::{self, Variance};
use tenter_core::{
    Decimal, Ends, GrowthClass, Length, Ratio, RecoveryClass, Scale, Scatter, TABLES, rectangular::chance_not_negative,
};

/// Any float, or one of a size that occurs.
fn float() -> impl Strategy<Value = f32> {
    prop_oneof![ANY, -50f32..50f32]
}

fn is_chance(chance: f32) -> bool {
    (0.0..=1.0).contains(&chance)
}

fn rational(ratio: Ratio) -> BigRational {
    BigRational::new(ratio.numerator().into(), ratio.denominator().into())
}

/// The chance that `c` + Σ eᵢ ≥ 0 by another way: the widest error is exact, the others, which come after it, are cut
/// into slices.
fn volume_above(c: f64, widths: &[f64]) -> f64 {
    const SLICES: u32 = 100;
    match widths {
        [] | [0.0, ..] => f64::from(u8::from(c > 0.0)) + 0.5 * f64::from(u8::from(c == 0.0)),
        [width] => (0.5 + c / (2.0 * width)).clamp(0.0, 1.0),
        [first @ .., 0.0] => volume_above(c, first),
        [first @ .., last] => {
            let middle = |slice: u32| last * ((2.0 * f64::from(slice) + 1.0) / f64::from(SLICES) - 1.0);
            (0..SLICES).map(|slice| volume_above(c + middle(slice), first)).sum::<f64>() / f64::from(SLICES)
        }
    }
}

proptest! {
    #[test]
    fn a_tail_is_a_chance(t in float(), dof in float()) {
        let tail = upper_tail(t, dof);
        prop_assert!(is_chance(tail), "{tail}");
        if !t.is_nan() && !dof.is_nan() {
            prop_assert!((tail + upper_tail(-t, dof) - 1.0).abs() < 1e-6);
        }
    }

    #[test]
    fn a_tail_falls_with_t(t in float(), more in float(), dof in 1f32..200f32) {
        let (low, high) = (t.min(more), t.max(more));
        prop_assert!(upper_tail(high, dof) <= upper_tail(low, dof) + 1e-5);
    }

    #[test]
    fn a_quantile_is_a_number(tail in prop_oneof![ANY, 0f32..1f32], dof in float()) {
        let t = quantile(tail, dof);
        prop_assert!(t.is_finite() && t >= 0.0, "{t}");
    }

    #[test]
    fn a_quantile_has_its_tail(tail in 1e-4..0.5f32, dof in 1f32..200f32) {
        prop_assert!((upper_tail(quantile(tail, dof), dof) - tail).abs() < 1e-5);
    }

    #[test]
    fn a_box_cut_by_a_plane_is_a_chance(c in float(), widths in prop::collection::vec(float(), 0..6)) {
        let chance = chance_not_negative(c, &widths);
        prop_assert!(chance.is_none_or(is_chance), "{chance:?}");
        if let Some((there, back)) = chance.zip(chance_not_negative(-c, &widths)) {
            prop_assert!((there + back - 1.0).abs() < 1e-6);
        }
    }

    #[test]
    fn a_box_cut_by_a_plane_is_the_volume_it_is(
        c in -3f32..3f32, wide in 0.2..2f32, wider in 0.2..2f32, any in prop_oneof![0f32..2f32, 0f32..0.01f32, Just(0.0)],
    ) {
        let chance = chance_not_negative(c, &[wide, wider, any]).unwrap();
        let mut widths = [wide, wider, any].map(f64::from);
        widths.sort_by(|a, b| b.total_cmp(a));
        let exact = volume_above(f64::from(c), &widths);
        prop_assert!((f64::from(chance) - exact).abs() < 1e-4, "{chance} {exact}");
    }

    #[test]
    fn a_box_cut_further_is_no_less(c in -4f32..4f32, more in 0f32..1f32, widths in prop::array::uniform3(0f32..2f32)) {
        let (low, high) = (chance_not_negative(c, &widths), chance_not_negative(c + more, &widths));
        prop_assert!(low.unwrap() <= high.unwrap() + 1e-3, "{low:?} {high:?}");
    }

    #[test]
    fn any_series_has_its_numbers(readings in prop::collection::vec(any::<i64>(), 0..20)) {
        let series: Series = readings.iter().copied().collect();
        prop_assert_eq!(usize::try_from(series.count()), Ok(readings.len()));
        prop_assert_eq!(series.mean().is_some(), !readings.is_empty());
        let deviation = series.standard_deviation();
        prop_assert_eq!(deviation.is_some(), readings.len() > 1);
        prop_assert!(deviation.is_none_or(|deviation| deviation >= 0.0 && deviation.is_finite()));
    }

    #[test]
    fn a_series_within_its_promise_is_exact(
        first in -1_000_000_000_000i64..1_000_000_000_000, steps in prop::collection::vec(0..1_000_000_000_000i64, 1..20),
    ) {
        let readings: Vec<i64> = steps.iter().map(|step| first + step).collect();
        let series: Series = readings.iter().copied().collect();
        let (sum, count): (BigInt, BigInt) = (readings.iter().map(|x| BigInt::from(*x)).sum(), readings.len().into());
        prop_assert_eq!(rational(series.mean().unwrap()), BigRational::new(sum, count));
        prop_assert!(series.variance().is_none_or(|variance| variance >= 0.0));
    }

    #[test]
    fn any_points_have_a_line_or_none(points in prop::collection::vec(prop::array::uniform3(float()), 0..12), at in float()) {
        let points: Vec<WeightedPoint> = points.iter().map(|[x, y, weight]| WeightedPoint { x: *x, y: *y, weight: *weight }).collect();
        if let Some(line) = FittedLine::through(&points) {
            let _ = line.at(at);
        }
    }

    #[test]
    fn likely_points_have_a_sane_line(points in prop::collection::vec((0f32..10f32, -10f32..10f32, 0.1..10f32), 2..12), at in 0f32..10f32) {
        let points: Vec<WeightedPoint> = points.iter().map(|&(x, y, weight)| WeightedPoint { x, y, weight }).collect();
        if let Some(line) = FittedLine::through(&points) {
            prop_assert!(line.at(at).is_finite() && (-1.001..=1.001).contains(&line.correlation), "{line:?}");
            prop_assert_eq!(line.u_slope.is_some(), points.len() > 2);
            prop_assert!(line.u_slope.is_none_or(|u| u.is_finite() && u >= 0.0), "{line:?}");
        }
    }

    #[test]
    fn variances_stay_above_zero(
        (value, dof, other) in (0f32..1e12, 1f32..1e6, 0f32..1e12), count: i64, readings in prop::collection::vec(-10_000_000..10_000_000i64, 0..10),
    ) {
        let variance = Variance { value, dof };
        let series: Series = readings.into_iter().collect();
        for variance in [
            variance.times(-3.0),
            variance.over(count),
            variance.at_least(Variance::certain(other)),
            uncertainty::sum(&[variance, Variance::certain(other), variance]),
            uncertainty::pooled(&series, variance),
        ] {
            prop_assert!(variance.u() >= 0.0 && variance.u().is_finite() && variance.dof >= 1.0, "{variance:?}");
        }
    }

    #[test]
    fn any_variance_has_a_root(value in float(), dof in float(), sensitivity in float(), count: i64) {
        let variance = Variance { value, dof };
        let sum = uncertainty::sum(&[variance.times(sensitivity), variance.over(count), variance]);
        prop_assert!(variance.u() >= 0.0 && sum.u() >= 0.0);
    }

    #[test]
    fn any_scatter_is_refused_or_has_a_variance(points in ANY, dof in ANY, stretch in ANY) {
        let sane = points > 0.0 && points <= 100.0 && dof >= 3.0;
        let scatter = Scatter::known(points, dof);
        prop_assert_eq!(scatter.is_some(), sane);
        for scatter in scatter.into_iter().chain([Scatter::ASSUMED, Scatter::SCALE_ONLY]) {
            let variance = scatter.variance(stretch);
            prop_assert!(variance.value >= 0.0 && variance.dof >= 1.0, "{variance:?}");
        }
    }

    #[test]
    fn any_ratio_is_ordered_named_and_printed(
        a: i64, b in prop_oneof![1i64.., 1..1000i64], c: i64, d in prop_oneof![1i64.., 1..1000i64], decimals: u8,
    ) {
        let (left, right) = (Ratio::new(a, b).unwrap(), Ratio::new(c, d).unwrap());
        prop_assert_eq!(left.cmp(&right), rational(left).cmp(&rational(right)));
        prop_assert!(left.percent_f32().is_finite());
        let percent = left.percent(decimals);
        let unit = BigInt::from(10).pow(u32::from(decimals.min(6)));
        // Half away from zero, and the ends of the range for what lies beyond them.
        let exact = rational(left) * BigRational::from(BigInt::from(100) * unit);
        let rounded = exact.round().to_integer().clamp(i64::MIN.into(), i64::MAX.into());
        prop_assert_eq!(BigInt::from(percent.scaled()), rounded);
        let _ = (percent.to_string(), GrowthClass::of(left).word(), RecoveryClass::of(left).word());
        for table in TABLES {
            let class = table.class(left);
            prop_assert!(table.classes.contains(class));
        }
    }

    #[test]
    fn no_ratio_below_a_zero(a: i64, b in ..=0i64) {
        prop_assert!(Ratio::new(a, b).is_none());
    }

    #[test]
    fn any_decimal_prints_its_digits(scaled: i64, decimals: u8, value in float()) {
        let decimal = Decimal::new(scaled, decimals);
        let text = decimal.to_string();
        let places = usize::from(decimals.min(6));
        prop_assert_eq!(text.rsplit_once('.').map_or(0, |(_, after)| after.len()), places);
        prop_assert_eq!(text.replace('.', "").parse::<i64>(), Ok(scaled));
        let rounded = Decimal::round(value, decimals);
        prop_assert!(!rounded.to_string().is_empty());
        if value.abs() < 1e3 && decimals < 3 {
            let shown: f64 = rounded.to_string().parse().unwrap();
            prop_assert!((shown - f64::from(value)).abs() <= 0.501 * 10f64.powi(-i32::from(decimals)), "{shown}");
        }
    }

    #[test]
    fn any_scale_is_refused_or_has_an_error(division: i32, length: i32, both: bool) {
        let scale = Scale::new(Length::from_steps(division), if both { Ends::Both } else { Ends::One });
        prop_assert_eq!(scale.is_some(), division > 0);
        if let Some(scale) = scale {
            prop_assert_eq!(scale.has_line_at(Length::from_steps(length)), length % division == 0);
            prop_assert!(scale.u_mm() > 0.0 && scale.u_mm().is_finite());
            let _ = scale.is_inch();
        }
    }
}
