//! Calibration: simulated swatches of known true stretch. At 95 % confidence a plain answer is wrong in at most 5 % of
//! cases, and *close* is said hardly more often than by an oracle that knows the scatter. The targets (5 %, 1.1 times
//! the oracle) are the project's own; the oracle, plain t and plain division share nothing with the core but the
//! readings.

use std::sync::OnceLock;

use tenter_core::Length;
use tenter_tests::calibration::{Answers, Setup, Tally, Truth, simulate};

const SWATCHES: u32 = 4_000;
/// Not the seed of the printed table, so that the two confirm each other.
const SEED: u64 = 70_000;

/// Every row of the table, simulated once for all tests.
fn rows() -> &'static [(Setup, Tally)] {
    static ROWS: OnceLock<Vec<(Setup, Tally)>> = OnceLock::new();
    ROWS.get_or_init(|| {
        let tally =
            |(row, setup): (usize, Setup)| (setup, simulate(&setup, Truth::Around, SWATCHES, SEED + row as u64));
        Setup::all().enumerate().map(tally).collect()
    })
}

/// Three standard errors of a share of 5 % among `count`, in percent.
fn allowance(count: u32) -> f64 {
    300.0 * (0.05 * 0.95 / f64::from(count)).sqrt()
}

#[test]
fn every_row_is_there() {
    assert_eq!(rows().len(), 3 * 3 * 2 * 2 * 3);
}

#[test]
fn wrong_answers_stay_below_five_percent() {
    for (setup, tally) in rows() {
        let Answers { wrong_meets, wrong_short, .. } = tally.tenter;
        assert!(tally.percent(wrong_meets) <= 5.0, "{setup:?}: {wrong_meets} wrong meets");
        assert!(tally.percent(wrong_short) <= 5.0, "{setup:?}: {wrong_short} wrong short");
    }
}

/// The harder reading of "5 % wrong": among the answers given, not among all swatches. It is only promised while the
/// pulls scatter no more than assumed; with twice that, one pull is wrong in a tenth of its answers (see the table).
#[test]
fn wrong_answers_stay_below_five_percent_of_those_given() {
    for (setup, tally) in rows().iter().filter(|(setup, _)| setup.scatter_times <= 1.0) {
        let wrong = tally.wrong_of_given(&tally.tenter);
        assert!(wrong <= 5.0, "{setup:?}: {wrong} % of the answers given are wrong");
    }
}

#[test]
fn close_is_said_hardly_more_often_than_by_an_oracle() {
    for (setup, tally) in rows().iter().filter(|(setup, _)| setup.scatter_times == 1.0) {
        // One pull shows nothing of its own scatter: it lives on the assumption's 7.5 degrees of freedom, whose
        // t quantile is 1.88 where the oracle's is 1.645, and on a coarse scale the guard band then takes in one more
        // line of the scale. A prototype of the same rule in another language found up to 1.19.
        let most = if setup.pulls == 1 { 1.25 } else { 1.1 };
        let (ratio, error) = (tally.ratio(), tally.ratio_error());
        assert!(ratio <= most + 3.0 * error, "{setup:?}: close {ratio} (± {error}) times as often as the oracle");
    }
}

#[test]
fn pooling_beats_plain_t_at_three_pulls() {
    for (setup, tally) in rows().iter().filter(|(setup, _)| setup.scatter_times == 1.0 && setup.pulls == 3) {
        assert!(tally.tenter.close < tally.plain_t.close, "{setup:?}: {tally:?}");
    }
}

#[test]
fn plain_division_is_wrong_more_often() {
    for (setup, tally) in rows() {
        assert!(tally.division.wrong() > tally.tenter.wrong(), "{setup:?}: {tally:?}");
    }
}

/// Every swatch lies 0.001 points off the demand. Just below it a wrong *meets* is as likely as it can be, and still
/// stays at 5 %. Just above it a *short* comes from pulls that read low, for which less scatter is assumed, and whole
/// millimetres make the readings lumpy, for which no bell curve allows: a wrong *short* comes to 7 %. The bound there
/// is what the oracle pays for the same lumps.
#[test]
fn the_worst_place() {
    let (gauge, division) = (Length::from_mm(100), Length::from_mm(1));
    let setup = Setup { demand: 5, scatter_times: 1.0, pulls: 3, gauge, division };
    let count = 5 * SWATCHES;

    let below = simulate(&setup, Truth::JustBelow, count, SEED - 1);
    let wrong_meets = below.percent(below.tenter.wrong_meets);
    assert!(wrong_meets <= 5.0 + allowance(count), "{wrong_meets} % wrong meets");

    let above = simulate(&setup, Truth::JustAbove, count, SEED - 2);
    let (wrong_short, oracle) = (above.percent(above.tenter.wrong_short), above.percent(above.oracle.wrong_short));
    assert!(wrong_short <= oracle + allowance(count), "{wrong_short} % wrong short, the oracle {oracle} %");
}

/// The same seed prints the same table.
#[test]
fn seeded() {
    let setup = Setup::all().next().expect("a first row");
    let tally = |seed| simulate(&setup, Truth::Around, 500, seed);
    assert_eq!(tally(1), tally(1));
    assert_ne!(tally(1), tally(2));
}
