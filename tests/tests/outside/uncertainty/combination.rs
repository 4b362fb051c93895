//! Combination of parts, with the sensitivities and the sums that `Figures` uses.

use crate::{assert_near, figures, percent, pull, recovery, stretch, triple, triples_in_one};
use tenter_core::stats::Series;
use tenter_core::student::quantile;
use tenter_core::uncertainty::{Variance, sum};

fn certain(u: f64) -> Variance {
    Variance::certain((u * u) as f32)
}

/// NIST Technical Note 1900, example E13: thermal expansion, (L1 − L0)/(L0 ΔT), from 1.4999 ± 0.0001 at 288.15 ± 0.02
/// and 1.5021 ± 0.0002 at 373.10 ± 0.05. Its strain is our stretch: 0.001466764 with u = 0.000149125; the published
/// result is 1.7266e−5 with u = 1.76e−6. A pull test has one scale for all lengths, so this goes through the sum and
/// the sensitivities −L1/L0² and 1/L0 themselves.
#[test]
fn nist_tn_1900_e13() {
    let (l0, l1, warmer) = (1.4999, 1.5021, 373.10 - 288.15);
    let strain: f64 = (l1 - l0) / l0;
    assert_near(strain, 0.001466764, 5e-10, "strain");
    let of_strain = sum(&[certain(0.0001).times((-l1 / (l0 * l0)) as f32), certain(0.0002).times((1.0 / l0) as f32)]);
    assert_near(of_strain.u(), 0.000149125, 1e-9, "u of the strain");

    let by_temperature = (strain / (warmer * warmer)) as f32;
    let of_expansion = sum(&[
        of_strain.times((1.0 / warmer) as f32),
        certain(0.02).times(by_temperature),
        certain(0.05).times(-by_temperature),
    ]);
    assert_near(strain / warmer, 1.7266e-5, 5e-10, "expansion");
    assert_near(of_expansion.u(), 1.76e-6, 5e-9, "u of the expansion");
}

/// Worked out: 100 mm *exact*, 105 and 101 mm on a 1 mm scale: u(S) = 0.2887,
/// u(R) = 5.888 points.
#[test]
fn an_exact_gauge_length() {
    let (reading, span) = (Variance::certain(1.0 / 12.0), 5.0);
    assert_near(100.0 * reading.times(1.0 / 100.0).u(), 0.2887, 5e-5, "u(S)");
    let by_extended = (101.0 - 100.0) / (span * span);
    let of_recovery = sum(&[reading.times(by_extended), reading.times(-1.0 / span)]);
    assert_near(100.0 * of_recovery.u(), 5.888, 5e-4, "u(R)");
}

/// S. Bell, *A Beginner's Guide to Uncertainty of Measurement* (NPL, 2001), a piece of string; figures from memory:
/// 0.7, 2.5, 0.3 and 5.8 mm combine to 6.4 mm.
#[test]
fn npl_string() {
    let total = sum(&[0.7, 2.5, 0.3, 5.8].map(certain));
    assert_near(total.u(), 6.4, 0.05, "u");
    assert!(total.dof.is_infinite());
}

/// JCGM 101:2008 § 9.2: the sum of four normal quantities of standard deviation 1 lies within ± 3.92 with 95 %.
#[test]
fn jcgm_101_four_normals() {
    let total = sum(&[certain(1.0); 4]);
    assert_near(total.u() * quantile(0.025, total.dof), 3.92, 0.005, "U");
}

/// JCGM 100:2008 § H.1, end gauge: u = 32 nm with 16 degrees of freedom, of which the difference d has 9.7 nm with
/// 25.6. The four parts and the three under d are from memory of § H.1.6; the results were seen.
#[test]
fn gum_h1() {
    let part = |u: f32, dof| Variance { value: u * u, dof };
    let d = sum(&[part(5.8, 24.0), part(3.9, 5.0), part(6.7, 8.0)]);
    assert_near(d.u(), 9.7, 0.05, "u(d)");
    assert_near(d.dof, 25.6, 0.5, "degrees of freedom of d");
    let total = sum(&[part(25.0, 18.0), d, part(2.9, 50.0), part(16.6, 2.0)]);
    assert_near(total.u(), 32.0, 0.5, "u");
    assert_eq!(total.dof.floor(), 16.0);
}

/// Five pulls, worked out apart from `tenter-core`.
struct Repeats {
    gauge: &'static str,
    extended: [&'static str; 5],
    recovered: [&'static str; 5],
    /// Mean and standard deviation of the stretches, u of their mean and its 95 % half-width.
    stretch: [f64; 4],
    /// The same for the recoveries of the single pulls.
    recovery: [f64; 4],
    /// The reading term of the shared gauge length, u of both, effective degrees of freedom, coverage factor.
    combined: [f64; 4],
}

const REPEATS: [Repeats; 2] = [
    Repeats {
        gauge: "100mm",
        extended: ["105mm", "106mm", "105mm", "104mm", "106mm"],
        recovered: ["101mm", "101mm", "102mm", "101mm", "101mm"],
        stretch: [5.20, 0.8367, 0.3742, 1.039],
        recovery: [76.33, 9.747, 4.359, 12.10],
        combined: [0.3037, 0.4819, 11.01, 2.201],
    },
    Repeats {
        gauge: "250mm",
        extended: ["262.5mm", "264mm", "263mm", "261.5mm", "264mm"],
        recovered: ["252.5mm", "252.5mm", "253.5mm", "252.5mm", "253mm"],
        stretch: [5.20, 0.4243, 0.1897, 0.527],
        recovery: [78.41, 3.352, 1.499, 4.16],
        combined: [0.0607, 0.1992, 4.86, 2.593],
    },
];

/// `Figures` pools such repeats with what is known beforehand and lets no variance sink below the scale's own, so the
/// table's plain Student t is built here from the parts it is made of.
#[test]
fn five_repeats() {
    for repeats in REPEATS {
        let five = |k| triple(repeats.gauge, repeats.extended[k], repeats.recovered[k]);
        let of_stretch: Series = (0..5).map(|k| stretch(&five(k)).percent(6).scaled()).collect();
        check_series(&of_stretch, repeats.stretch, "stretch");
        let of_recovery: Series = (0..5).map(|k| recovery(&five(k)).percent(6).scaled()).collect();
        check_series(&of_recovery, repeats.recovery, "recovery");

        let [by_gauge, u, dof, factor] = repeats.combined;
        let total = sum(&[Variance { dof: 4.0, ..certain(repeats.stretch[2]) }, certain(by_gauge)]);
        assert_near(total.u(), u, 1e-4, "u of both");
        assert_near(total.dof, dof, 0.01, "effective degrees of freedom");
        assert_near(quantile(0.025, total.dof), factor, 1e-3, "coverage factor");
    }
}

#[track_caller]
fn check_series(series: &Series, [mean, sd, u, wide]: [f64; 4], what: &str) {
    let last_place = if mean > 10.0 { 1e-3 } else { 1e-4 };
    assert_near(series.mean().unwrap().percent_f32() / 1e8, mean, 0.005, format!("mean {what}"));
    let got = f64::from(series.standard_deviation().unwrap()) / 1e6;
    assert_near(got, sd, last_place, format!("SD of {what}"));
    assert_near(got / 5f64.sqrt(), u, last_place, format!("u of mean {what}"));
    let half_width = f64::from(quantile(0.025, 4.0)) * got / 5f64.sqrt();
    assert_near(half_width, wide, 10.0 * last_place, format!("half-width of mean {what}"));
}

/// The reading term of the shared gauge length in the table above: what `Figures` gives for one pull to the mean
/// length, less that pull's own reading.
#[test]
fn the_shared_gauge_length_does_not_average_out() {
    let one = figures(&pull("100mm", "105.2mm")).stretch.u;
    let own_reading = 100.0 / 12f32.sqrt() / 100.0;
    assert_near((one * one - own_reading * own_reading).sqrt(), 0.3037, 1e-4, "u of the gauge length");
}

/// The mean of the single recoveries in the table above is 76.33 %; the recovery of the mean lengths, 105.2 and
/// 101.2 mm, is (105.2 − 101.2)/5.2 = 76.92 %. `Figures` states the latter.
#[test]
fn recovery_of_mean_lengths() {
    let Repeats { gauge, extended, recovered, .. } = &REPEATS[0];
    assert_eq!(percent(recovery(&triples_in_one(gauge, extended, recovered)), 2), "76.92");
}
