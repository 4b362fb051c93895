//! Plans carried out: how often what would settle it does, and how often it settles it wrongly.

use tenter_core::{Answer, Evaluation, Looks, Plan, PullTest, Sitting};

use super::rules::demand;
use super::world::{Cloth, Day, Noise, World, random};

/// What came of plans, in counts.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Carried {
    /// Swatches.
    pub swatches: u32,
    /// Answers that were close at first.
    pub close: u32,
    /// Of those, with a plan.
    pub planned: u32,
    /// Of those, an answer after the plan was carried out.
    pub answered: u32,
    /// Of those, wrong.
    pub wrong: u32,
}

impl Carried {
    /// The share of plans that gave an answer, in percent.
    #[must_use]
    pub fn success(&self) -> f64 {
        100.0 * f64::from(self.answered) / f64::from(self.planned.max(1))
    }

    /// Three standard errors of 80 % among the plans, in points.
    #[must_use]
    pub fn allowance(&self) -> f64 {
        300.0 * (0.16 / f64::from(self.planned.max(1))).sqrt()
    }
}

/// Every row: what is asked, pulls, gauge length, looks, whether a known load pulls.
pub const ROWS: [(f64, usize, f64, usize, bool); 8] = [
    (5.0, 1, 100.0, 1, false),
    (5.0, 3, 100.0, 1, false),
    (5.0, 3, 250.0, 2, false),
    (25.0, 1, 100.0, 1, false),
    (25.0, 3, 100.0, 1, false),
    (25.0, 3, 250.0, 2, false),
    (50.0, 3, 250.0, 2, false),
    (5.0, 3, 250.0, 2, true),
];

/// Simulates so many cloths around the limit, and does what each plan says. As many pulls were planned as were made.
#[must_use]
pub fn simulate(
    (least, pulls, gauge, looks, load): (f64, usize, f64, usize, bool),
    swatches: u32,
    seed: u64,
) -> Carried {
    let mut random = random(seed);
    let planned = u8::try_from(pulls).unwrap_or(u8::MAX);
    let world = World { pulls, planned, gauge, looks, load, noise: Noise::PRIOR, ..World::of(least) };
    let (demand, rules) = (demand(&world), world.rules());
    let mut carried = Carried { swatches, ..Carried::default() };
    for _ in 0..swatches {
        let cloth = Cloth::new(&world, &mut random);
        let first = Day::new(&world, &cloth, 6, 10, &mut random);
        let test = first.test(&world, looks, pulls);
        let evaluation = Evaluation::of(&test, &demand, &rules).expect("pulls");
        if evaluation.answer != Some(Answer::Close) || !evaluation.doubts.is_empty() {
            continue;
        }
        carried.close += 1;
        let Some(plan) = evaluation.settle.and_then(|settle| settle.plan) else { continue };
        carried.planned += 1;
        let again = if plan.is_another_day() {
            let more = other_days(&world, &cloth, plan, &mut random);
            let sittings: Vec<Sitting<'_>> = [&test].into_iter().chain(&more).map(Sitting::new).collect();
            // The first day is as it was planned then; so are the new ones.
            let looks =
                Looks { pulls: planned.min(plan.pulls), days: plan.days + 1, looked_before: true, ..rules.looks };
            Evaluation::of_all(&sittings, &demand, &tenter_core::Rules { looks, ..rules })
        } else {
            let on = first.test(&world, plan.looks.into(), plan.pulls.into());
            let looks = Looks { pulls: plan.pulls, looked_before: true, ..rules.looks };
            Evaluation::of(&on, &demand, &tenter_core::Rules { looks, ..rules })
        };
        let answer = again.expect("pulls").answer.expect("asked");
        if answer != Answer::Close {
            carried.answered += 1;
            carried.wrong += u32::from((answer == Answer::Meets) != (cloth.stretch >= least));
        }
    }
    carried
}

fn other_days(world: &World, cloth: &Cloth, plan: Plan, random: &mut rand::rngs::StdRng) -> Vec<PullTest> {
    let (pulls, looks) = (usize::from(plan.pulls), usize::from(plan.looks));
    let then = World { load: plan.known_load, pulls, looks, ..*world };
    let cloth = cloth.under(world, &then);
    (0..plan.days)
        .map(|_| {
            let day = Day::new(&then, &cloth, looks, pulls, random);
            // Each day's number of pulls was planned with the plan.
            day.test(&then, looks, pulls).with_planned_pulls(plan.pulls).expect("1 to 10")
        })
        .collect()
}
