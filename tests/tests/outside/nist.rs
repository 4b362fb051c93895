//! NIST Statistical Reference Datasets (StRD) with their certified values, which stand in the head of each data file.
//! All are exact decimals, so the readings go in as whole numbers of their last place, as lengths do.

use crate::assert_near;
use tenter_core::line::{FittedLine, WeightedPoint};
use tenter_core::stats::Series;

const LOTTERY: &str = include_str!("../../data/nist/lottery.txt");
const LEW: &str = include_str!("../../data/nist/lew.txt");
const MAVRO: &str = include_str!("../../data/nist/mavro.txt");
const MICHELSO: &str = include_str!("../../data/nist/michelso.txt");
const NORRIS: &str = include_str!("../../data/nist/norris.txt");

fn values(file: &str) -> impl Iterator<Item = &str> {
    file.lines().filter(|line| !line.starts_with('#')).flat_map(str::split_whitespace)
}

fn certified(file: &str, name: &str) -> f64 {
    let line = file.lines().find_map(|line| line.strip_prefix("# certified ")?.strip_prefix(name));
    let value = line.unwrap().trim_start().split(',').next().unwrap();
    value.parse().unwrap()
}

/// Decimals after the point, and the value as a count of units of its last place.
fn scaled(text: &str) -> (i32, i64) {
    let decimals = text.split_once('.').map_or(0, |(_, after)| after.len());
    (decimals.try_into().unwrap(), text.replace('.', "").parse().unwrap())
}

/// At least thirteen digits of the mean (it is exact; the division back is in `f64`), six of the standard deviation.
#[track_caller]
fn check<'a>(values: impl Iterator<Item = &'a str>, count: u32, mean: f64, sd: f64) {
    let (mut unit, mut series) = (1.0, Series::default());
    for text in values {
        let (decimals, value) = scaled(text);
        unit = 10f64.powi(decimals);
        series.push(value);
    }
    assert_eq!(series.count(), count);
    let got = series.mean().unwrap();
    let got = got.numerator() as f64 / got.denominator() as f64 / unit;
    assert_near(got, mean, mean.abs() * 1e-13, "mean");
    assert_near(f64::from(series.standard_deviation().unwrap()) / unit, sd, sd * 1e-6, "standard deviation");
}

#[test]
fn observed_data() {
    for (file, count) in [(LOTTERY, 218), (LEW, 200), (MAVRO, 50), (MICHELSO, 100)] {
        check(values(file), count, certified(file, "mean"), certified(file, "standard deviation"));
    }
}

/// The made-up sets by their definition: a number, then 500 pairs a tenth below and above it. `f32` sums of the
/// values as they come leave two correct digits of the standard deviation of the third set at best, none of the fourth.
#[test]
fn numerical_accuracy() {
    check(["10000001", "10000003", "10000002"].into_iter(), 3, 10_000_002.0, 1.0);
    for (first, low, high, mean) in [
        ("1.2", "1.1", "1.3", 1.2),
        ("1000000.2", "1000000.1", "1000000.3", 1_000_000.2),
        ("10000000.2", "10000000.1", "10000000.3", 10_000_000.2),
    ] {
        let pairs = std::iter::repeat_n([low, high], 500).flatten();
        check(std::iter::once(first).chain(pairs), 1001, mean, 0.1);
    }
}

/// Linear regression. The line is for short fits on the handheld and works in `f32`: five digits of the slope, and an
/// intercept within a thousandth of its own standard deviation, are what it owes.
#[test]
fn norris() {
    let numbers: Vec<f32> = values(NORRIS).map(|text| text.parse().unwrap()).collect();
    let points: Vec<_> =
        numbers.chunks_exact(2).map(|pair| WeightedPoint { x: pair[1], y: pair[0], weight: 1.0 }).collect();
    assert_eq!(points.len(), 36);
    let line = FittedLine::through(&points).unwrap();
    // Standard deviations of intercept and slope: NIST StRD, Norris.
    let (sd_intercept, sd_slope) = (0.232818234301152, 0.000429796848199937);
    assert_near(line.intercept, certified(NORRIS, "intercept"), sd_intercept / 1000.0, "intercept");
    assert_near(line.slope, certified(NORRIS, "slope"), 1e-6, "slope");
    assert_near(line.u_intercept.unwrap(), sd_intercept, 1e-5, "standard deviation of the intercept");
    assert_near(line.u_slope.unwrap(), sd_slope, 1e-8, "standard deviation of the slope");
    assert_near(line.residual.unwrap(), certified(NORRIS, "residual standard deviation"), 1e-5, "residual");
}
