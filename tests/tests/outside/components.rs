//! The variance between days beyond what each day is worth, as analysis of variance gives it, against published and
//! certified sets; and retests of the open data, whose intervals should hold what the other runs give.

use std::collections::BTreeMap;

use tenter_core::components::SESSION_HAND;
use tenter_core::{
    Construction, Ends, Evaluation, Figure, Grain, Length, Load, PullTest, Ratio, Rules, Scale, Scatter,
    SessionUncertainty, days,
};

use crate::assert_near;

/// The variance between groups of equal size: the core is given each group's mean with the variance of that mean, as a
/// day with its own worth.
pub fn between(groups: &[Vec<f64>]) -> f64 {
    let size = groups[0].len() as f64;
    let mean = |group: &Vec<f64>| group.iter().sum::<f64>() / size;
    let squares = |group: &Vec<f64>| group.iter().map(|x| (x - mean(group)).powi(2)).sum::<f64>();
    let within = groups.iter().map(squares).sum::<f64>() / (groups.len() as f64 * (size - 1.0));
    let figures: Vec<Figure> = groups
        .iter()
        .map(|group| {
            #[allow(clippy::cast_possible_truncation)] // Thousandths of the sets' units.
            let ratio = Ratio::new((mean(group) * 1e6).round() as i64, 100_000_000).unwrap();
            let here = SessionUncertainty { u: (within / size).sqrt() as f32, dof: f32::INFINITY };
            Figure { here, ..Figure::exact(ratio) }
        })
        .collect();
    let said = days(&figures);
    let all = groups.iter().map(mean).sum::<f64>() / groups.len() as f64;
    said.session_sum / said.session_dof * (f64::from(SESSION_HAND) * all.max(1.0)).powi(2)
}

pub const DYESTUFF: [[i32; 5]; 6] = [
    [1545, 1440, 1440, 1520, 1580],
    [1540, 1555, 1490, 1560, 1495],
    [1595, 1550, 1605, 1510, 1560],
    [1445, 1440, 1595, 1465, 1545],
    [1595, 1630, 1515, 1635, 1625],
    [1520, 1455, 1450, 1480, 1445],
];

/// Dyestuff (O. L. Davies and P. L. Goldsmith, *Statistical Methods in Research and Production*, 1972; as in R's lme4): the
/// variance between batches is 1764.05 by REML, which analysis of variance equals in a balanced set.
#[test]
fn dyestuff() {
    let groups: Vec<Vec<f64>> = DYESTUFF.iter().map(|batch| batch.iter().map(|x| f64::from(*x)).collect()).collect();
    assert_near(between(&groups), 1764.05, 0.5, "Dyestuff");
}

/// NIST StRD, one-way analysis of variance, SmLs01: nine groups of 21, certified mean squares 0.21 (given here as 1.68/8)
/// and 0.01, so 1/105 between. The set is made by its own rule: 1.4, 1.3 and 1.5 in turn, raised by 0.1 from group to group
/// in its published pattern; its group means are 1.4 to 1.6. Here groups with those mean squares are built from them.
#[test]
fn certified_mean_squares() {
    for (count, size, between_squares, within, expected) in
        [(9, 21, 0.21, 0.01, 1.0 / 105.0), (5, 5, 1.278_656_54e-2, 1.083_182_8e-2, 3.909_474_8e-4)]
    {
        // Two values in each group that have the stated variance, and group means in a row that have the stated one.
        let steps: Vec<f64> = (0..count).map(|index| f64::from(index) - f64::from(count - 1) / 2.0).collect();
        let spread = steps.iter().map(|step| step * step).sum::<f64>() / f64::from(count - 1);
        let scale = (between_squares / f64::from(size) / spread).sqrt();
        let half = (size - 1) / 2;
        let off = (within * f64::from(size - 1) / f64::from(2 * half)).sqrt();
        let group = |step: f64| {
            let middle = 10.0 + scale * step;
            let mut values = vec![middle];
            for _ in 0..half {
                values.extend([middle - off, middle + off]);
            }
            values
        };
        let groups: Vec<Vec<f64>> = steps.iter().map(|step| group(*step)).collect();
        assert_near(between(&groups), expected, 2e-3 * expected + 1e-6, format!("{count} groups of {size}"));
    }
}

/// Glucose by CLSI EP05-A3, as printed in the tests of the R package mcradds: day 1.958553 beside run 3.075 and error 7.9
/// (mean squares 415.8/19, 281/20, 316/40). The runs of a day are its readings here, so a day's mean has (MS run)/4.
#[test]
fn glucose_by_day() {
    let [day, run, _] = GLUCOSE;
    assert_near(((day - run) / 4.0) as f32, 1.958_553, 1e-5, "by hand");
    assert_near(glucose_between_days(), 1.958_553, 0.01, "day");
}

/// Its mean squares: between days, between the runs of a day, within a run.
pub const GLUCOSE: [f64; 3] = [415.8 / 19.0, 281.0 / 20.0, 316.0 / 40.0];

/// Sixteen of twenty days, as many as are judged together, with two runs of two readings: even steps from day to day, and within
/// them differences that have the published mean squares.
pub fn glucose() -> Vec<[[f64; 2]; 2]> {
    let [day, run, error] = GLUCOSE;
    let steps: Vec<f64> = (0..16).map(|index| f64::from(index) - 7.5).collect();
    let spread = steps.iter().map(|step| step * step).sum::<f64>() / 15.0;
    let (scale, run, error) = ((day / 4.0 / spread).sqrt(), run.sqrt() / 2.0, (error / 2.0).sqrt());
    let of_run = |middle: f64| [middle - error, middle + error];
    steps.iter().map(|step| 244.0 + scale * step).map(|day| [of_run(day - run), of_run(day + run)]).collect()
}

/// The variance between those days that the core finds from the mean of each and what it is worth.
pub fn glucose_between_days() -> f64 {
    let [_, run, _] = GLUCOSE;
    let here = SessionUncertainty { u: (run / 4.0).sqrt() as f32, dof: f32::INFINITY };
    let figure = |day: &[[f64; 2]; 2]| {
        #[allow(clippy::cast_possible_truncation)] // A glucose value in millionths.
        let ratio = Ratio::new((day.iter().flatten().sum::<f64>() / 4.0 * 1e6).round() as i64, 100_000_000).unwrap();
        Figure { here, ..Figure::exact(ratio) }
    };
    let said = days(&glucose().iter().map(figure).collect::<Vec<_>>());
    said.session_sum / said.session_dof * (f64::from(SESSION_HAND) * 244.0).powi(2)
}

const DATA: &str = include_str!("../../data/knit-pulls.csv");

type Run = [Option<f64>; 5];

fn swatches() -> Vec<Vec<Run>> {
    let mut swatches: BTreeMap<&str, Vec<Run>> = BTreeMap::new();
    for row in DATA.lines().filter(|line| !line.starts_with('#')).skip(1) {
        let cells: Vec<&'static str> = row.split(',').collect();
        swatches.entry(cells[0]).or_default().push(std::array::from_fn(|index| cells[2 + index].parse().ok()));
    }
    swatches.into_values().collect()
}

/// A test at a known load, on the data's own tenth of a millimetre.
fn retest(gauge: f64, pulls: &[f64], settled: bool) -> PullTest {
    let length = |millimetres: f64| Length::parse(&format!("{millimetres:.1}mm"), tenter_core::Unit::Mm).unwrap();
    let scale = Scale::new(Length::from_steps(160), Ends::One).unwrap();
    let mut test = PullTest::new(length(gauge), Grain::Crosswise)
        .and_then(|test| test.with_scale(scale))
        .unwrap()
        .with_settling_pull(settled)
        .with_load(Load::Force { millinewtons: 5_000 });
    for pull in pulls {
        test.add_pull(length(pull.max(gauge))).unwrap();
    }
    test
}

fn holds(test: &PullTest, truth: f64) -> bool {
    let rules = Rules { construction: Construction::Knit, scatter: Scatter::ASSUMED, ..Rules::default() };
    let figures = Evaluation::of(test, &tenter_core::Demand::default(), &rules).unwrap().figures;
    let (low, high) = figures.stretch.interval(rules.confidence);
    (f64::from(low)..=f64::from(high)).contains(&truth)
}

/// Eight swatches, four forces. Before the session's errors counted, intervals from an unsettled single pull held the mean of
/// the later runs in 22 of 30, and those on the gauge of the first run in 18 of 28. The reference computation of the
/// model (Python) found 29 of 30, 26 of 28 and, with the gauge read after settling, 28 of 28; and 114 of 120 single settled runs.
#[test]
fn retests_hold() {
    let mean = |values: &[f64]| values.iter().sum::<f64>() / values.len() as f64;
    let mut counts = [[0; 2]; 4];
    let mut count = |row: usize, held: bool| {
        counts[row][0] += i32::from(held);
        counts[row][1] += 1;
    };
    for runs in swatches() {
        for force in 1..5 {
            let own = |run: &Run| Some(100.0 * (run[force]? / run[0]? - 1.0));
            let later: Vec<f64> = runs[1..].iter().filter_map(own).collect();
            if let (Some(gauge), Some(pull)) = (runs[0][0], runs[0][force]) {
                count(0, holds(&retest(gauge, &[pull], false), mean(&later)));
            }
            let pulls: Vec<f64> = runs[1..4].iter().filter_map(|run| run[force]).collect();
            if let (Some(gauge), 3) = (runs[0][0], pulls.len()) {
                // The first pull is the settling pull.
                let unsettled = [&pulls[..1], &pulls[..]].concat();
                count(1, holds(&retest(gauge, &unsettled, false), mean(&later)));
            }
            if let (Some(gauge), 3) = (runs[1][0], pulls.len()) {
                count(2, holds(&retest(gauge, &pulls, true), mean(&later)));
            }
            for (index, run) in runs[1..].iter().enumerate() {
                let others: Vec<f64> = runs[1..]
                    .iter()
                    .enumerate()
                    .filter(|(at, _)| *at != index)
                    .filter_map(|(_, run)| own(run))
                    .collect();
                if let (Some(gauge), Some(pull), false) = (run[0], run[force], others.is_empty()) {
                    count(3, holds(&retest(gauge, &[pull], true), mean(&others)));
                }
            }
        }
    }
    println!("held: unsettled single, gauge before settling, gauge after settling, settled single: {counts:?}");
    assert!(counts[0][0] >= 28 && counts[0][1] == 30, "unsettled single pulls: {counts:?}");
    assert!(counts[1][0] >= 25 && counts[1][1] == 28, "gauge read before settling: {counts:?}");
    assert!(counts[2][0] >= 27 && counts[2][1] == 28, "gauge read after settling: {counts:?}");
    assert!(
        f64::from(counts[3][0]) >= 0.93 * f64::from(counts[3][1]) && counts[3][1] >= 110,
        "single runs: {counts:?}"
    );
}
