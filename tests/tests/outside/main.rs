//! The arithmetic, the statistics and the answers of `tenter-core` against sources outside this project: published
//! worked examples, certified data sets, tables of guides, open data, and other libraries. The source stands beside
//! each check; nothing here was copied from our own output.

mod care;
mod components;
mod conformance;
mod discordance;
mod elastic;
mod fits;
mod garments;
mod handling;
mod hanging;
mod identities;
mod library;
mod making_up;
mod model;
mod nist;
mod open_data;
mod people;
mod scatter;
mod stash;
mod student;
mod trade;
mod uncertainty;
mod units;
mod washing;
mod wearing;
mod worked_examples;
mod yardage;
mod zips;

use tenter_core::{Ends, Figures, Grain, Length, PullTest, Ratio, Scale, Scatter, Unit};

/// A length as people write it.
fn length(text: &str) -> Length {
    Length::parse(text, Unit::Mm).unwrap_or_else(|error| panic!("{text}: {error}"))
}

fn scale(division: &str, ends: Ends) -> Scale {
    Scale::new(length(division), ends).unwrap()
}

/// One crosswise pull, read at one end on a scale of `division`.
fn pull_on(division: &str, gauge: &str, extended: &str) -> PullTest {
    let test = PullTest::new(length(gauge), Grain::Crosswise).unwrap();
    let mut test = test.with_scale(scale(division, Ends::One)).unwrap();
    test.add_pull(length(extended)).unwrap();
    test
}

/// One crosswise pull on a 1 mm scale.
fn pull(gauge: &str, extended: &str) -> PullTest {
    pull_on("1mm", gauge, extended)
}

/// The same with the recovered length a minute after release.
fn triple(gauge: &str, extended: &str, recovered: &str) -> PullTest {
    let mut test = pull(gauge, extended);
    test.add_rest(60, length(recovered)).unwrap();
    test
}

/// Several pulls of one swatch, each with its recovered length a minute after release.
fn triples_in_one(gauge: &str, extended: &[&str], recovered: &[&str]) -> PullTest {
    let mut test = PullTest::new(length(gauge), Grain::Crosswise).unwrap();
    for (extended, recovered) in extended.iter().zip(recovered) {
        test.add_pull(length(extended)).unwrap();
        test.add_rest(60, length(recovered)).unwrap();
    }
    test
}

/// What the readings give when only the scale counts.
fn figures(test: &PullTest) -> Figures {
    Figures::of(test, Scatter::SCALE_ONLY).unwrap()
}

fn stretch(test: &PullTest) -> Ratio {
    figures(test).stretch.ratio
}

fn growth(test: &PullTest) -> Ratio {
    figures(test).rest.unwrap().growth.ratio
}

fn recovery(test: &PullTest) -> Ratio {
    figures(test).rest.unwrap().recovery.unwrap().ratio
}

/// A ratio in percent as text, with so many decimals.
fn percent(ratio: Ratio, decimals: u8) -> String {
    ratio.percent(decimals).to_string()
}

/// So many percent as an exact ratio.
fn whole_percent(percent: i64) -> Ratio {
    Ratio::new(percent, 100).unwrap()
}

#[track_caller]
fn assert_near(got: impl Into<f64>, want: f64, within: f64, what: impl std::fmt::Display) {
    let got = got.into();
    assert!((got - want).abs() <= within, "{what}: got {got}, want {want} ± {within}");
}
