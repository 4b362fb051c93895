//! Growth and recovery: the same for readings after release, at the time that is asked.

use rand::Rng;
use tenter_core::components::{PLACING, PLACING_DOF, PULL_PER_POINT_HAND, SESSION_DOF, SESSION_HAND};
use tenter_core::{Answer, Confidence, Demand, Evaluation, Looks, Rules};

use super::world::{Cloth, Day, Noise, Truth, World, drawn, length, limit, normal, random};
use super::{CONFIDENCE, Tally};
use statrs::distribution::{ContinuousCDF, Normal};

/// What is asked of cloth that stretches by 25 %.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Asks {
    /// At most so much growth, in percent.
    Growth(f64),
    /// At least so much recovery, in percent.
    Recovery(f64),
}

/// One kind of test.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rested {
    /// What is asked.
    pub asks: Asks,
    /// Readings after release, each after a pull of its own; as many were planned.
    pub readings: usize,
    /// Looks at the gauge length.
    pub looks: usize,
    /// Scale division, in millimetres.
    pub division: f64,
    /// The scatter of recovered lengths in points, and no other; or as the core assumes.
    pub scatter: Option<f64>,
    /// Where the true figure lies off the limit; evenly around it without.
    pub off: Option<f64>,
}

const STRETCH: f64 = 25.0;
const GAUGE: f64 = 250.0;

/// Every row with its name.
#[must_use]
pub fn rows() -> Vec<(String, Rested)> {
    let (growth, recovery) = (Asks::Growth(3.0), Asks::Recovery(90.0));
    let of = |asks, readings, looks| Rested { asks, readings, looks, division: 1.0, scatter: None, off: None };
    let plain = |asks, readings, division| Rested { scatter: Some(0.77), division, ..of(asks, readings, 1) };
    let mut rows = vec![
        ("growth ≤ 3 %, 0.5 mm, scatter 0.77, 1 reading".to_owned(), plain(growth, 1, 0.5)),
        ("the same, 3 readings".to_owned(), plain(growth, 3, 0.5)),
        ("recovery ≥ 90 %, scatter 0.77, 1 reading".to_owned(), plain(recovery, 1, 1.0)),
        ("the same, 3 readings".to_owned(), plain(recovery, 3, 1.0)),
    ];
    for (readings, looks) in [(1, 1), (1, 2), (2, 2), (3, 2), (3, 3), (5, 3)] {
        for (name, asks) in [("growth ≤ 3 %", growth), ("recovery ≥ 90 %", recovery)] {
            rows.push((format!("{name}, {readings} readings, {looks} looks"), of(asks, readings, looks)));
        }
    }
    for off in [-0.001, 0.001] {
        for (name, asks) in [("growth", growth), ("recovery", recovery)] {
            rows.push((
                format!("{name} {off} from the limit, 3 readings, 2 looks"),
                Rested { off: Some(off), ..of(asks, 3, 2) },
            ));
        }
    }
    rows
}

/// Simulates so many cloths.
#[must_use]
pub fn simulate(rested: &Rested, swatches: u32, seed: u64) -> Tally {
    let mut random = random(seed);
    let mut tally = Tally { swatches, ..Tally::default() };
    let noise = if rested.scatter.is_some() { Noise::PLAIN } else { Noise::PRIOR };
    let pulls = rested.readings.max(3);
    let world = World {
        truth: Truth::At(STRETCH),
        gauge: GAUGE,
        division: rested.division,
        looks: rested.looks,
        pulls,
        noise,
        ..World::of(STRETCH)
    };
    let looks = Looks { rests: u8::try_from(rested.readings).unwrap_or(u8::MAX), ..Looks::default() };
    let rules = Rules { looks, ..Rules::default() };
    let demand = match rested.asks {
        Asks::Growth(most) => Demand { growth_at_most: Some(limit(most)), ..Demand::default() },
        Asks::Recovery(least) => Demand { recovery_at_least: Some(limit(least)), ..Demand::default() },
    };
    let on_lines = |length: f64| (length / rested.division).round() * rested.division;
    let quantile = Normal::standard().inverse_cdf(CONFIDENCE);
    for _ in 0..swatches {
        let cloth = Cloth::new(&world, &mut random);
        let scatter = rested.scatter.unwrap_or(cloth.placing);
        let around = |half: f64, random: &mut rand::rngs::StdRng| random.random_range(-half..half);
        let (growth, conforms, truth) = match rested.asks {
            Asks::Growth(most) => {
                let growth = most + rested.off.unwrap_or_else(|| around(2.0, &mut random));
                (growth, growth <= most, growth)
            }
            Asks::Recovery(least) => {
                let recovery = least + rested.off.unwrap_or_else(|| around(8.0, &mut random));
                (STRETCH * (1.0 - recovery / 100.0), recovery >= least, recovery)
            }
        };
        let day = Day::new(&world, &cloth, rested.looks, pulls, &mut random);
        // Growth goes with the stretch, day by day.
        let recovered: Vec<f64> = (0..rested.readings)
            .map(|_| on_lines(day.true_gauge * (1.0 + (growth * day.day + scatter * normal(&mut random)) / 100.0)))
            .collect();
        let mut test = day.test(&world, rested.looks, 0);
        for (index, pull) in day.pulls.iter().enumerate() {
            test.add_pull(length(*pull)).expect("no shorter than the gauge");
            if let Some(recovered) = recovered.get(index) {
                test.add_rest(1800, length(recovered.min(*pull))).expect("no longer than the pull");
            }
        }
        let evaluation = Evaluation::of(&test, &demand, &rules).expect("a test with pulls");
        tally.tenter.count(evaluation.answer.expect("something is asked"), conforms);
        tally.doubted += u32::from(!evaluation.doubts.is_empty());
        let rest = evaluation.figures.rest.expect("read after release");
        let figure = match rested.asks {
            Asks::Growth(_) => rest.growth,
            Asks::Recovery(_) => rest.recovery.expect("extended"),
        };
        let (low, high) = figure.interval(Confidence::default());
        tally.covered += u32::from((f64::from(low)..=f64::from(high)).contains(&truth));
        let u = oracle_u(rested, &world, &cloth, scatter);
        let margin = match rested.asks {
            Asks::Growth(most) => most - f64::from(figure.percent()),
            Asks::Recovery(least) => f64::from(figure.percent()) - least,
        };
        let (margin, no) = match rested.asks {
            Asks::Growth(_) => (margin, Answer::Over),
            Asks::Recovery(_) => (margin * f64::from(evaluation.figures.stretch.percent()) / 100.0, Answer::Short),
        };
        let oracle = match margin / u {
            z if z >= quantile => Answer::Meets,
            z if -z >= quantile => no,
            _ => Answer::Close,
        };
        tally.oracle.count(oracle, conforms);
    }
    tally
}

/// The standard uncertainty of the margin for one who knows every variance.
fn oracle_u(rested: &Rested, world: &World, cloth: &Cloth, scatter: f64) -> f64 {
    let reading = (100.0 * rested.division / GAUGE).powi(2) / 12.0;
    let (looks, readings) = (rested.looks as f64, rested.readings as f64);
    let (look, back) = ((cloth.placing.powi(2) + reading) / looks, (scatter.powi(2) + reading) / readings);
    match rested.asks {
        Asks::Growth(most) => (back + (1.0 + most / 100.0).powi(2) * look + (cloth.session * most).powi(2)).sqrt(),
        Asks::Recovery(least) => {
            let share = least / 100.0;
            let pulls = (cloth.sigma(world).powi(2) + reading) / readings;
            (back + share * share * look + (1.0 - share).powi(2) * pulls).sqrt()
        }
    }
}

/// Readings after release made one after the other until there is an answer, at the limit from below: the share of wrong
/// answers in percent, with one look at the gauge length planned and two made, by the tool's bars and at 95 % each time.
#[must_use]
pub fn until_it_answers(swatches: u32, seed: u64) -> [f64; 2] {
    let mut random = random(seed);
    let most = 3.0;
    let demand = Demand { growth_at_most: Some(limit(most)), ..Demand::default() };
    let mut wrong = [0u32; 2];
    for swatch in 0..swatches {
        let placing = f64::from(PLACING) * drawn(PLACING_DOF, &mut random);
        let session = f64::from(SESSION_HAND) * drawn(SESSION_DOF, &mut random);
        let sigma =
            drawn(PLACING_DOF, &mut random) * f64::from(PLACING).hypot(f64::from(PULL_PER_POINT_HAND) * STRETCH);
        let above = swatch % 2 == 0;
        let growth = most + if above { 0.001 } else { -0.001 };
        let day = 1.0 + session * normal(&mut random);
        let gauge = GAUGE * (1.0 + placing * normal(&mut random) / 100.0);
        let world = World { gauge: GAUGE, ..World::of(STRETCH) };
        let empty = Day {
            looks: vec![GAUGE, (gauge * (1.0 + placing * normal(&mut random) / 100.0)).round()],
            pulls: Vec::new(),
            true_gauge: gauge,
            day,
        };
        let mut test = empty.test(&world, 2, 0);
        let mut done = [false; 2];
        for _ in 0..7 {
            let pull =
                (gauge * (1.0 + (STRETCH * day + sigma * normal(&mut random)) / 100.0)).round().max(GAUGE + 40.0);
            let back = (gauge * (1.0 + (growth * day + placing * normal(&mut random)) / 100.0)).round();
            test.add_pull(length(pull)).expect("long enough");
            test.add_rest(1800, length(back.min(pull))).expect("no longer than the pull");
            let evaluation = Evaluation::of(&test, &demand, &Rules::default()).expect("a pull");
            let chance = evaluation.parts[0].chance.expect("measured");
            let plain = if chance >= 0.95 {
                Answer::Meets
            } else if chance <= 0.05 {
                Answer::Over
            } else {
                Answer::Close
            };
            for (index, answer) in [evaluation.parts[0].answer, plain].into_iter().enumerate() {
                if !done[index] && answer != Answer::Close {
                    done[index] = true;
                    wrong[index] += u32::from((answer == Answer::Meets) == above);
                }
            }
        }
    }
    wrong.map(|wrong| 100.0 * f64::from(wrong) / f64::from(swatches))
}
