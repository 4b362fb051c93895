//! Calibration: simulated swatches whose truth is known, on fewer swatches than the printed table (`tests/calibration.md`)
//! and with other seeds, so that the two confirm each other. Goals, the project's own: of the answers given at most 5 % are
//! wrong where the model's prior holds and 7 % elsewhere, at the limit at most 6 % of all; intervals hold the truth in 93 %
//! and more; *close* is said at most 1.15 times as often as by an oracle that knows every variance. Where a goal is not
//! reached the row stands in a list of exceptions, with its figure and the reason.

use tenter_tests::calibration::{Tally, growth, plans, repeated, rows, rules, time};

const SWATCHES: u32 = 4_000;
/// Neither the printed table's seed nor one with which a constant was chosen.
const SEED: u64 = 40_961;

fn simulated(rows: &[rows::Row], offset: u64) -> Vec<(String, Tally)> {
    rows.iter()
        .enumerate()
        .map(|(index, row)| (row.name.clone(), rules::simulate(&row.world, SWATCHES, SEED + offset + index as u64)))
        .collect()
}

/// Three standard errors of a share in percent of all swatches.
fn three_errors(share: f64, swatches: u32) -> f64 {
    300.0 * (share / 100.0 * (1.0 - share / 100.0) / f64::from(swatches)).sqrt()
}

#[test]
fn where_the_prior_holds() {
    for (name, tally) in simulated(&rows::assumed(), 0) {
        let wrong = tally.wrong_of_given(&tally.tenter);
        assert!(wrong <= 5.0 + tally.allowance(5.0), "{name}: {wrong} % of the answers given are wrong");
        let held = tally.percent(tally.covered);
        assert!(held >= 93.0 - three_errors(93.0, SWATCHES), "{name}: intervals hold {held} %");
        // Exceptions: a person who pulls fewer times than planned (1.5 to 1.6) or more often (1.4) must be surer, because a test
        // that is looked at again and again would be wrong too often; one planned pull at 5 % on 100 mm lives on 7 degrees of
        // freedom, where the oracle knows all (1.2).
        let most = match name.as_str() {
            name if name.contains("1 pulls of 3") => 1.75,
            name if name.contains("5 pulls of 3") => 1.55,
            name if name.contains("1 pulls of 1") => 1.30,
            _ => 1.15,
        };
        let (ratio, allowance) = (tally.ratio(), 3.0 / f64::from(tally.oracle.close).sqrt());
        assert!(ratio <= most + allowance, "{name}: close {ratio} times as often as the oracle");
    }
}

#[test]
fn where_the_prior_does_not_hold() {
    for (name, tally) in simulated(&rows::attacks(), 100) {
        let wrong = tally.wrong_of_given(&tally.tenter);
        assert!(wrong <= 7.0 + tally.allowance(7.0), "{name}: {wrong} % of the answers given are wrong");
        let held = tally.percent(tally.covered);
        assert!(held >= 93.0 - three_errors(93.0, SWATCHES), "{name}: intervals hold {held} %");
        assert!(tally.tenter.wrong() < tally.division.wrong(), "{name}: {tally:?}");
    }
}

/// Exceptions: a force that differs by 10.6 % of the stretch from day to day, where 7.6 to 8.7 are assumed, is wrong in 6.5 % at
/// 25 % and 7.3 at 50.
#[test]
fn at_the_limit() {
    for (name, tally) in simulated(&rows::at_the_limit(), 200) {
        let most = if name.contains("by day") { 7.5 } else { 6.0 };
        let wrong = tally.percent(tally.tenter.wrong());
        assert!(wrong <= most + three_errors(most, SWATCHES), "{name}: {wrong} % wrong");
    }
}

/// It stays useful: with two looks at the marks most everyday questions have an answer.
#[test]
fn everyday_questions_are_answered() {
    let shares: Vec<(String, f64)> = simulated(&rows::everyday(), 300)
        .into_iter()
        .map(|(name, tally)| (name, tally.percent(tally.tenter.meets)))
        .collect();
    // One look: 84.5, 94.4, 94.1 %; two: 92.1, 95.1, 97.3 %. Only the first misses its goal, of 90 %, with one look: laying
    // the gauge is then too large a part.
    for ((name, share), least) in shares.iter().zip([83.0, 93.5, 80.0, 90.0, 95.0, 80.0]) {
        assert!(*share >= least - three_errors(least, SWATCHES), "{name}: {share} %");
    }
}

/// One reading on one look gives few answers (6 of 100). Of the 2 400 in the printed table 5.6 % are wrong, of the 3 200 of another
/// run 5.1 %: each within two standard errors (0.5 and 0.4 %) of the goal's 5, and the row to watch.
#[test]
fn growth_and_recovery() {
    for (index, (name, rested)) in growth::rows().into_iter().enumerate() {
        let tally = growth::simulate(&rested, SWATCHES, SEED + 400 + index as u64);
        if rested.off.is_some() {
            let wrong = tally.percent(tally.tenter.wrong());
            assert!(wrong <= 6.0 + three_errors(6.0, SWATCHES), "{name}: {wrong} % wrong at the limit");
        } else {
            let wrong = tally.wrong_of_given(&tally.tenter);
            assert!(wrong <= 5.0 + tally.allowance(5.0), "{name}: {wrong} % of the answers given are wrong");
        }
        let held = tally.percent(tally.covered);
        assert!(held >= 93.0 - three_errors(93.0, SWATCHES), "{name}: intervals hold {held} %");
    }
}

#[test]
fn pulling_until_it_answers() {
    for (index, row) in repeated::ROWS.into_iter().enumerate() {
        let until = repeated::simulate(row, SWATCHES, SEED + 500 + index as u64);
        let most = 6.0 + three_errors(6.0, SWATCHES);
        assert!(until.pulls <= most && until.days <= most, "{row:?}: {until:?}");
        // Without the bars it would be more.
        assert!(until.pulls_at_95 > until.pulls && until.days_at_95 > until.days, "{row:?}: {until:?}");
    }
    // Growth read again up to seven times.
    let [bars, plain] = growth::until_it_answers(SWATCHES, SEED + 550);
    assert!(bars <= 6.0 + three_errors(6.0, SWATCHES) && plain > bars, "{bars} {plain}");
}

#[test]
fn plans_hold_in_four_cases_of_five() {
    let mut all = plans::Carried::default();
    for (index, row) in plans::ROWS.into_iter().enumerate() {
        let carried = plans::simulate(row, SWATCHES, SEED + 600 + index as u64);
        all.planned += carried.planned;
        all.answered += carried.answered;
        all.wrong += carried.wrong;
        assert!(carried.success() >= 79.0 - carried.allowance(), "{row:?}: {carried:?}");
    }
    assert!(all.planned > 1_000 && all.success() >= 80.0 - all.allowance(), "{all:?}");
    assert!(f64::from(all.wrong) <= 0.01 * f64::from(all.answered), "{all:?}");
}

/// Worst of six families.
#[test]
fn forecasts_hold() {
    for division in [0.5, 1.0] {
        for (last, at) in [(600, 1800), (600, 3600), (900, 3600), (1800, 3600)] {
            for placed in [false, true] {
                let held = time::forecasts_hold(division, (last, at), placed, 2_000, SEED);
                for (family, held) in time::FAMILIES.into_iter().zip(held) {
                    assert!(held >= 95.0, "{division} mm, from {last} to {at} s, {family}, {placed}: {held} %");
                }
            }
        }
    }
}

/// A quarter and more of the readings at 60 s over the limit are within it at 30 min, and none is called *over*.
#[test]
fn an_early_excess_is_never_final() {
    for (within, called) in time::early_overs(2_000, SEED) {
        assert!(within > 20.0 && called == 0, "{within} {called}");
    }
}

/// The same seed prints the same table.
#[test]
fn seeded() {
    let world = rows::assumed()[0].world;
    assert_eq!(rules::simulate(&world, 500, 1), rules::simulate(&world, 500, 1));
    assert_ne!(rules::simulate(&world, 500, 1), rules::simulate(&world, 500, 2));
}
