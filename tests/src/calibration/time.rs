//! How growth falls with time in six synthetic families, and what early readings and forecasts say of it.

use rand::Rng;
use rand::rngs::StdRng;
use tenter_core::components::{PLACING, PLACING_DOF};
use tenter_core::forecast::forecast;
use tenter_core::{Answer, Demand, Evaluation, Grain, Length, PullTest, Rules};

use super::world::{drawn, length, limit, normal, random};

/// Kinds of curve: logarithm, stretched exponential, power, four exponentials, logarithm after a hold, one exponential.
pub const FAMILIES: [&str; 6] =
    ["logarithm", "stretched exponential", "power", "four exponentials", "hold", "one exponential"];

const GAUGE: f64 = 250.0;

/// The growth of one cloth in millimetres, so many seconds after release.
struct Curve {
    family: usize,
    first: f64,
    keeps: f64,
    a: f64,
    b: f64,
    weights: [f64; 4],
    taus: [f64; 4],
}

impl Curve {
    fn new(family: usize, random: &mut StdRng) -> Self {
        let extension = random.random_range(0.10..0.40) * GAUGE;
        let first = extension * random.random_range(0.06..0.25);
        let keeps = random.random_range(0.25..0.80);
        let power = |low: f64, high: f64, random: &mut StdRng| 10f64.powf(random.random_range(low..high));
        let (a, b) = match family {
            1 => (random.random_range(0.2..0.6), power(1.5, 3.5, random)),
            4 => (power(1.0, 1800f64.log10(), random), 0.0),
            5 => (power(1.8, 3.3, random), 0.0),
            _ => (0.0, 0.0),
        };
        let mut weights = [0.0; 4].map(|_: f64| -(1.0 - random.random::<f64>()).ln());
        let sum: f64 = weights.iter().sum();
        weights = weights.map(|weight| weight / sum);
        let taus = [15.0, 120.0, 900.0, 7200.0].map(|tau: f64| tau * power(-0.2, 0.2, random));
        Self { family, first, keeps, a, b, weights, taus }
    }

    fn shape(&self, t: f64) -> f64 {
        match self.family {
            0 => -(t / 10.0).ln_1p(),
            1 => (-(t / self.b).powf(self.a)).exp(),
            3 => self.weights.iter().zip(self.taus).map(|(weight, tau)| weight * (-t / tau).exp()).sum(),
            4 => ((t + self.a + 5.0) / (t + 5.0)).ln(),
            _ => (-t / self.a).exp(),
        }
    }

    fn at(&self, t: f64) -> f64 {
        if self.family == 2 {
            let n = -self.keeps.ln() / (3610f64 / 15.0).ln();
            return self.first * ((t + 10.0) / 15.0).powf(-n);
        }
        let (start, end) = (self.shape(5.0), self.shape(3600.0));
        self.first * (self.keeps + (1.0 - self.keeps) / (start - end) * (self.shape(t) - end))
    }
}

fn read(curve: &Curve, t: f64, division: f64, random: &mut StdRng) -> f64 {
    let growth = curve.at(t + 2.0 * normal(random)) + 0.2 * normal(random);
    (growth / division).round() * division
}

fn test(division: f64) -> PullTest {
    let scale = tenter_core::Scale::new(length(division), tenter_core::Ends::One).expect("a division");
    let mut test =
        PullTest::new(length(GAUGE), Grain::Crosswise).and_then(|test| test.with_scale(scale)).expect("a gauge");
    test = test.with_settling_pull(true);
    test.add_pull(Length::from_mm(400)).expect("a pull");
    test
}

/// The share of forecasts that hold, in percent, for each family: readings at 60 s and at `last` seconds, forecast for
/// `at`. Where cloth is `placed`, each reading and the gauge length is that of a cloth laid anew, as the core assumes; else nothing
/// but reading goes wrong.
#[must_use]
pub fn forecasts_hold(division: f64, (last, at): (u32, u32), placed: bool, cloths: u32, seed: u64) -> [f64; 6] {
    std::array::from_fn(|family| {
        let mut random = random(seed + family as u64);
        let mut held = 0;
        for _ in 0..cloths {
            let curve = Curve::new(family, &mut random);
            let mut test = test(division);
            let scatter =
                if placed { GAUGE / 100.0 * f64::from(PLACING) * drawn(PLACING_DOF, &mut random) } else { 0.0 };
            let laid = scatter * normal(&mut random);
            for seconds in [60, last] {
                let off = laid + scatter * normal(&mut random);
                let growth =
                    read(&curve, f64::from(seconds), division, &mut random) + (off / division).round() * division;
                test.add_rest(seconds, length(GAUGE + growth)).expect("a reading");
            }
            let forecast = forecast(&test, at).expect("late enough");
            let truth = 100.0 * curve.at(f64::from(at)) / GAUGE;
            held += u32::from((f64::from(forecast.percent) - truth).abs() <= f64::from(forecast.half_width));
        }
        100.0 * f64::from(held) / f64::from(cloths)
    })
}

/// Of readings at 60 s that lie over 3 % by more than the scale explains: the share whose growth is within it at 30 min, in
/// percent, and how many of them are called *over*.
#[must_use]
pub fn early_overs(cloths: u32, seed: u64) -> [(f64, u32); 6] {
    let demand = Demand { growth_at_most: Some(limit(3.0)), ..Demand::default() };
    std::array::from_fn(|family| {
        let mut random = random(seed + family as u64);
        let (mut over, mut within, mut called) = (0u32, 0u32, 0u32);
        for _ in 0..cloths {
            let curve = Curve::new(family, &mut random);
            let growth = read(&curve, 60.0, 1.0, &mut random);
            if 100.0 * growth / GAUGE <= 3.28 {
                continue;
            }
            over += 1;
            within += u32::from(100.0 * curve.at(1800.0) / GAUGE <= 3.0);
            let mut test = test(1.0);
            test.add_rest(60, length(GAUGE + growth)).expect("a reading");
            let answer = Evaluation::of(&test, &demand, &Rules::default()).expect("a pull").answer;
            called += u32::from(answer == Some(Answer::Over));
        }
        (100.0 * f64::from(within) / f64::from(over.max(1)), called)
    })
}
