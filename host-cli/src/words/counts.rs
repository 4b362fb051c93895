//! Which tests a figure comes from, in sentences.

use tenter_core::{Confidence, Doubt, Figure, Grain, Unit, Widening};

use crate::finding::cloth::{Disagreement, Standing};
use crate::finding::measured::{Counted, Measured};
use crate::finding::pull::Together;
use crate::log::{Here, StoredTest};
use crate::words::{doubt, quantity, terms};

/// Over a grain whose tests contradict each other.
pub const DISAGREE: &str = "TESTS DISAGREE";

/// The same in a list of cloths, with the grains; nothing where all tests agree.
#[must_use]
pub fn disagree(grains: &[Grain]) -> String {
    let grains: Vec<&str> = grains.iter().map(|grain| grain.word()).collect();
    if grains.is_empty() { String::new() } else { format!("{DISAGREE}, {}", grains.join(" and ")) }
}

/// What two or more tests say that do not agree, and what to do.
#[must_use]
pub fn disagreement(disagreement: &Disagreement, confidence: Confidence, here: Here) -> String {
    let gives = |(test, stretch): (&StoredTest, Option<&Figure>)| {
        let stretch = stretch.map(|stretch| terms::figure(stretch, confidence)).unwrap_or_default();
        format!("{} ({}) gives {stretch}", test.id.short(), quantity::day(test.said.pulled, here))
    };
    let all = core::iter::once((&disagreement.apart, disagreement.stretch.as_ref()));
    let all = all.chain(disagreement.others.iter().map(|(test, stretch)| (test, stretch.as_ref())));
    let all: Vec<String> = all.map(gives).collect();
    format!("{}; pull it again, or retire the one that went wrong", all.join(", "))
}

/// Why a test counts for less.
const fn why(widening: Widening) -> &'static str {
    match widening {
        Widening::SingleLayer => "a single layer curls and reads high",
        Widening::RawEdge => "a cut strip reads high",
        Widening::ShortMarks => "marks less than 10 cm apart read high",
        Widening::BeforeWash => "you washed the cloth since",
    }
}

/// Which tests a figure comes from, and which of them count for less; none where one plain test says it all.
#[must_use]
pub fn from(standing: &Standing, unit: Unit) -> Option<String> {
    let mut parts = Vec::new();
    if standing.measured.tests.len() > 1 {
        parts.push(format!("{} tests judged together: {}", standing.measured.tests.len(), letters(&standing.measured)));
    }
    parts.extend(lesser(&standing.measured));
    if !standing.measured.doubted.is_empty() {
        let doubted: Vec<String> = standing.measured.doubted.iter().map(|test| test.id.short()).collect();
        parts.push(format!("{} left out, since tenter doubts the readings", doubted.join(", ")));
    }
    parts.extend(doubted(&standing.measured, &standing.doubts, unit));
    (!parts.is_empty()).then(|| parts.join("; "))
}

/// The letters of the tests that count.
fn letters(measured: &Measured) -> String {
    measured.tests.iter().map(|counted| counted.stored.id.short()).collect::<Vec<_>>().join(", ")
}

/// Those that count for less, and why.
fn lesser(measured: &Measured) -> Vec<String> {
    let said = |counted: &Counted| {
        let widened = counted.widened();
        let whys: Vec<&str> = widened.into_iter().map(why).collect();
        (!whys.is_empty()).then(|| format!("{} counts for less: {}", counted.stored.id.short(), whys.join(" and ")))
    };
    measured.tests.iter().filter_map(said).collect()
}

/// The tests from before a wash, where any counts.
#[must_use]
pub fn before_wash(measured: &Measured) -> Option<String> {
    let before: Vec<String> =
        measured.tests.iter().filter(|one| one.before_wash).map(|one| one.stored.id.short()).collect();
    let all = before.len() == measured.tests.len();
    match (before.is_empty(), all) {
        (true, _) => None,
        (false, true) => Some("you washed the cloth after this test: pull it again".to_owned()),
        (false, false) => {
            let (tests, count) = if before.len() == 1 { ("test", "it counts") } else { ("tests", "they count") };
            Some(format!("you washed the cloth after {tests} {}, so {count} for less", before.join(", ")))
        }
    }
}

/// That nothing but doubtful readings are there, and the first reason.
#[must_use]
pub fn doubted(measured: &Measured, doubts: &[Doubt], unit: Unit) -> Option<String> {
    let (doubtful, first) = (measured.newest()?, doubts.first()?);
    let test = &doubtful.stored.said.test;
    // Lengths are told as they stand on the scale that was read.
    let unit = match unit {
        _ if test.scale().is_inch() => Unit::Inch,
        Unit::Inch => Unit::Cm,
        unit => unit,
    };
    let why = doubt::line(first, test, unit);
    Some(format!("tenter doubts {}: {why}; pull it again", doubtful.stored.id.short()))
}

/// What a stored test amounts to with the others of its grain.
#[must_use]
pub fn together(together: &Together, confidence: Confidence) -> String {
    let Together { tests, left_out, .. } = together;
    let stretch = terms::figure(together.stretch(), confidence);
    match (left_out, tests) {
        (true, 1) => format!("this test is left out, since tenter doubts its readings; the other one gives {stretch}"),
        (true, tests) => {
            format!("this test is left out, since tenter doubts its readings; the other {tests} give {stretch}")
        }
        (false, tests) => format!("{tests} tests of this grain judged together give {stretch}"),
    }
}
