//! Pulling until it answers: more pulls, then more days, looked at each time.

use tenter_core::{Answer, Evaluation, PullTest, Sitting};

use super::rules::demand;
use super::world::{Cloth, Day, Noise, Truth, World, random};

/// Shares of wrong answers at the limit, in percent, each the mean of a wrong *meets* below and a wrong *short* above.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Until {
    /// One pull after the other up to ten, by the tool's bars.
    pub pulls: f64,
    /// The same at 95 % every time.
    pub pulls_at_95: f64,
    /// Three pulls a day on five days, by the tool's bars.
    pub days: f64,
    /// The same at 95 % every time.
    pub days_at_95: f64,
}

/// Every row: what is asked, whether a known load pulls, gauge length and looks.
pub const ROWS: [(f64, bool, f64, usize); 5] = [
    (5.0, false, 250.0, 2),
    (5.0, true, 250.0, 2),
    (25.0, false, 250.0, 2),
    (25.0, true, 250.0, 2),
    (5.0, true, 100.0, 1),
];

/// Simulates so many cloths.
#[must_use]
pub fn simulate((least, load, gauge, looks): (f64, bool, f64, usize), swatches: u32, seed: u64) -> Until {
    let mut random = random(seed);
    let mut wrong = [0u32; 4];
    for swatch in 0..swatches {
        let above = swatch % 2 == 0;
        let truth = Truth::Off(if above { 0.001 } else { -0.001 });
        let world = World { load, gauge, looks, truth, noise: Noise::PRIOR, ..World::of(least) };
        let (demand, rules) = (demand(&world), world.rules());
        let cloth = Cloth::new(&world, &mut random);
        let first = Day::new(&world, &cloth, looks, 10, &mut random);
        let mut answers: [Vec<Answer>; 4] = Default::default();
        let mut add = |evaluation: &Evaluation, at: usize| {
            answers[at].push(evaluation.answer.expect("asked"));
            let chance = evaluation.parts[0].chance.expect("measured");
            let plain = if chance >= 0.95 { Answer::Meets } else { Answer::Short };
            let sure = chance >= 0.95 || chance <= 0.05;
            answers[at + 1].push(if sure && evaluation.doubts.is_empty() { plain } else { Answer::Close });
        };
        for pulls in 1..=10 {
            let test = first.test(&world, looks, pulls);
            add(&Evaluation::of(&test, &demand, &rules).expect("pulls"), 0);
        }
        let mut days: Vec<PullTest> = vec![first.test(&world, looks, 3)];
        for _ in 1..5 {
            days.push(Day::new(&world, &cloth, looks, 3, &mut random).test(&world, looks, 3));
        }
        for count in 1..=days.len() {
            let sittings: Vec<Sitting<'_>> = days[..count].iter().map(Sitting::new).collect();
            add(&Evaluation::of_all(&sittings, &demand, &rules).expect("pulls"), 2);
        }
        for (wrong, answers) in wrong.iter_mut().zip(&answers) {
            let given = answers.iter().find(|answer| **answer != Answer::Close);
            let is_wrong = |answer: &Answer| (*answer == Answer::Meets) != above;
            *wrong += u32::from(given.is_some_and(is_wrong));
        }
    }
    let [pulls, pulls_at_95, days, days_at_95] = wrong.map(|wrong| 100.0 * f64::from(wrong) / f64::from(swatches));
    Until { pulls, pulls_at_95, days, days_at_95 }
}
