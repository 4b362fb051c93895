//! Lengths of real swatches from the data of "Programming mechanics in knitted materials, stitch by stitch"
//! (*Nature Communications* 15 (2024) 2622, doi 10.1038/s41467-024-46498-z), repository sabetta/stitch-by-stitch,
//! folder `data/uniaxial_experiments`: MIT licence, copyright 2023 the data set's authors. The percentages beside the
//! lengths were computed apart from this project. A = acrylic; X, Y = direction of the pull.

use crate::{assert_near, growth, percent, pull, recovery, stretch, triple};
use tenter_core::stats::Series;

/// Pin to pin in mm: unloaded, at 2 N, at 5 N, and the stretch at 2 N and at 5 N in percent.
const PULLS: [(&str, &str, &str, &str, &str, &str); 20] = [
    ("garter X 1", "84.7", "102.6", "116.7", "21.13", "37.78"),
    ("garter X 2", "84.4", "103.0", "118.1", "22.04", "39.93"),
    ("garter X 3", "84.5", "102.7", "117.9", "21.54", "39.53"),
    ("garter Y 1", "33.4", "37.8", "44.7", "13.17", "33.83"),
    ("garter Y 2", "32.9", "38.7", "45.3", "17.63", "37.69"),
    ("rib X 1", "49.9", "94.1", "115.2", "88.58", "130.86"),
    ("rib X 2", "49.3", "94.9", "117.0", "92.49", "137.32"),
    ("rib X 3", "48.9", "94.3", "116.0", "92.84", "137.22"),
    ("rib Y 1", "67.1", "75.6", "85.0", "12.67", "26.68"),
    ("rib Y 2", "67.4", "77.5", "86.3", "14.99", "28.04"),
    ("seed X 1", "99.6", "119.2", "134.2", "19.68", "34.74"),
    ("seed X 2", "99.8", "120.8", "135.9", "21.04", "36.17"),
    ("seed X 3", "100.7", "122.4", "136.9", "21.55", "35.95"),
    ("seed Y 1", "36.9", "45.0", "53.2", "21.95", "44.17"),
    ("stockinette X 1", "59.4", "63.9", "71.9", "7.58", "21.04"),
    ("stockinette X 2", "59.6", "65.2", "73.4", "9.40", "23.15"),
    ("stockinette X 3", "59.4", "65.7", "73.4", "10.61", "23.57"),
    ("stockinette Y 1", "36.6", "37.5", "38.6", "2.46", "5.46"),
    ("stockinette Y 2", "37.9", "39.1", "40.9", "3.17", "7.92"),
    ("stockinette Y 4", "38.3", "39.2", "40.5", "2.35", "5.74"),
];

#[test]
fn stretch_of_raw_lengths() {
    for (swatch, gauge, at_2_newton, at_5_newton, stretch_2, stretch_5) in PULLS {
        assert_eq!(percent(stretch(&pull(gauge, at_2_newton)), 2), stretch_2, "{swatch} at 2 N");
        assert_eq!(percent(stretch(&pull(gauge, at_5_newton)), 2), stretch_5, "{swatch} at 5 N");
    }
}

/// Unloaded, near 30 N, unloaded again before the next pull. Rest time and re-mounting are not documented, so this is
/// arithmetic and no recovery test: growth below zero and recovery above 100 % are kept as they are.
#[test]
fn triples_of_raw_lengths() {
    for (swatch, lengths, want) in [
        ("garter X", ["84.7", "137.5", "84.4"], ["62.34", "-0.35", "100.57"]),
        ("garter Y", ["33.4", "55.9", "32.9"], ["67.37", "-1.50", "102.22"]),
        ("rib Y", ["67.1", "101.3", "67.4"], ["50.97", "0.45", "99.12"]),
        ("seed X", ["99.6", "156.6", "99.8"], ["57.23", "0.20", "99.65"]),
        ("stockinette X", ["59.4", "89.4", "59.6"], ["50.51", "0.34", "99.33"]),
        ("stockinette Y", ["36.6", "44.5", "37.9"], ["21.58", "3.55", "83.54"]),
    ] {
        let test = triple(lengths[0], lengths[1], lengths[2]);
        let got = [stretch(&test), growth(&test), recovery(&test)].map(|ratio| percent(ratio, 2));
        assert_eq!(got, want, "{swatch}");
    }
}

/// Five pulls of one swatch.
struct Repeats {
    swatch: &'static str,
    /// Clamp to clamp before each pull and at its longest, in video pixels; taken as millimetres here.
    gauge: [&'static str; 5],
    extended: [&'static str; 5],
    /// Mean and standard deviation of the five stretches, in percent.
    mean: f64,
    sd: f64,
    /// From each pull to the next, in percent.
    recovery: [f64; 4],
}

const REPEATS: [Repeats; 8] = [
    Repeats {
        swatch: "garter X",
        gauge: ["362.8", "367.1", "367.9", "374.0", "362.9"],
        extended: ["608.3", "584.9", "611.9", "604.5", "610.6"],
        mean: 64.6,
        sd: 3.95,
        recovery: [98.2, 99.6, 97.5, 104.8],
    },
    Repeats {
        swatch: "garter Y",
        gauge: ["201.1", "202.5", "201.3", "203.2", "200.2"],
        extended: ["348.5", "350.3", "350.9", "352.9", "351.1"],
        mean: 73.9,
        sd: 0.95,
        recovery: [99.1, 100.8, 98.7, 102.0],
    },
    Repeats {
        swatch: "rib X",
        gauge: ["265.0", "267.9", "267.0", "267.8", "269.3"],
        extended: ["805.1", "807.6", "812.1", "812.6", "812.8"],
        mean: 202.9,
        sd: 1.22,
        recovery: [99.5, 100.2, 99.9, 99.7],
    },
    Repeats {
        swatch: "rib Y",
        gauge: ["376.4", "378.3", "380.0", "379.4", "381.6"],
        extended: ["572.3", "579.3", "579.8", "578.9", "579.0"],
        mean: 52.4,
        sd: 0.54,
        recovery: [99.0, 99.2, 100.3, 98.9],
    },
    Repeats {
        swatch: "seed X",
        gauge: ["469.3", "473.3", "473.9", "474.7", "474.1"],
        extended: ["765.8", "771.3", "772.7", "771.6", "772.2"],
        mean: 62.9,
        sd: 0.24,
        recovery: [98.7, 99.8, 99.7, 100.2],
    },
    Repeats {
        swatch: "seed Y",
        gauge: ["189.6", "191.4", "193.3", "191.5", "193.2"],
        extended: ["367.8", "370.1", "372.2", "374.2", "374.9"],
        mean: 93.9,
        sd: 1.05,
        recovery: [99.0, 98.9, 101.0, 99.1],
    },
    Repeats {
        swatch: "stockinette X",
        gauge: ["318.6", "318.8", "317.9", "316.9", "318.4"],
        extended: ["479.2", "481.8", "480.6", "481.5", "481.8"],
        mean: 51.2,
        sd: 0.55,
        recovery: [99.9, 100.6, 100.6, 99.1],
    },
    Repeats {
        swatch: "stockinette Y",
        gauge: ["267.6", "269.0", "270.1", "269.2", "269.3"],
        extended: ["341.1", "341.9", "345.1", "341.3", "341.9"],
        mean: 27.2,
        sd: 0.40,
        recovery: [98.1, 98.5, 101.2, 99.9],
    },
];

/// To the printed digit.
#[test]
fn five_pulls_of_eight_swatches() {
    for Repeats { swatch, gauge, extended, mean, sd, recovery: next } in REPEATS {
        let of_each = (0..5).map(|k| stretch(&pull(gauge[k], extended[k])).percent(6).scaled());
        let series: Series = of_each.collect();
        let micro_percent = series.mean().unwrap();
        assert_near(micro_percent.percent_f32() / 1e8, mean, 0.0505, format!("{swatch}: mean stretch"));
        assert_near(series.standard_deviation().unwrap() / 1e6, sd, 0.00505, format!("{swatch}: SD of stretch"));
        for (k, want) in next.into_iter().enumerate() {
            let test = triple(gauge[k], extended[k], gauge[k + 1]);
            assert_near(recovery(&test).percent_f32(), want, 0.0505, format!("{swatch}: recovery {k}"));
        }
    }
}
