//! The rule under test and those it is held against. The others are written here in full, in f64 and with another
//! library's quantiles, so that they share nothing with the core but the readings.

use statrs::distribution::{ContinuousCDF, Normal, StudentsT};
use tenter_core::{Answer, Confidence, Demand, Evaluation, Grain, Range};

use super::CONFIDENCE;
use super::world::{Cloth, Day, World, limit, random};

/// What one rule answered.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Answers {
    /// Too close to call.
    pub close: u32,
    /// *Meets* where the true figure does not.
    pub wrong_meets: u32,
    /// *Short* or *over* where the true figure conforms.
    pub wrong_no: u32,
    /// *Meets*, right or wrong.
    pub meets: u32,
}

impl Answers {
    /// Counts an answer.
    pub fn count(&mut self, answer: Answer, conforms: bool) {
        match answer {
            Answer::Close => self.close += 1,
            Answer::Meets => {
                self.meets += 1;
                self.wrong_meets += u32::from(!conforms);
            }
            Answer::Short | Answer::Over => self.wrong_no += u32::from(conforms),
            Answer::Unknown => panic!("unknown, to a measured figure"),
        }
    }

    /// Both kinds of wrong answer.
    #[must_use]
    pub const fn wrong(&self) -> u32 {
        self.wrong_meets + self.wrong_no
    }
}

/// What all rules answered to the same swatches.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Tally {
    /// How many swatches.
    pub swatches: u32,
    /// The rule under test.
    pub tenter: Answers,
    /// The normal distribution with every variance of this very cloth and hand, which nobody knows.
    pub oracle: Answers,
    /// Student's t on the pulls alone.
    pub plain_t: Answers,
    /// Meets when the quotient reaches the demand: never close.
    pub division: Answers,
    /// Intervals that hold the true figure.
    pub covered: u32,
    /// Tests whose readings are doubted.
    pub doubted: u32,
}

impl Tally {
    /// A count as a share of all swatches, in percent.
    #[must_use]
    pub fn percent(&self, count: u32) -> f64 {
        100.0 * f64::from(count) / f64::from(self.swatches)
    }

    /// Wrong answers as a share of the answers given, in percent.
    #[must_use]
    pub fn wrong_of_given(&self, rule: &Answers) -> f64 {
        100.0 * f64::from(rule.wrong()) / f64::from((self.swatches - rule.close).max(1))
    }

    /// Three standard errors of a share of the answers given, in points; large where few are given.
    #[must_use]
    pub fn allowance(&self, share: f64) -> f64 {
        let given = f64::from((self.swatches - self.tenter.close).max(1));
        300.0 * (share / 100.0 * (1.0 - share / 100.0) / given).sqrt()
    }

    /// Tenter's share of *close* over the oracle's.
    #[must_use]
    pub fn ratio(&self) -> f64 {
        f64::from(self.tenter.close) / f64::from(self.oracle.close.max(1))
    }
}

/// The demand of a world.
#[must_use]
pub fn demand(world: &World) -> Demand {
    let range = Range { at_least: Some(limit(world.least)), at_most: world.most.map(limit) };
    Demand::for_grain(Grain::Crosswise, range)
}

/// Simulates so many swatches; the same seed gives the same tally.
#[must_use]
pub fn simulate(world: &World, swatches: u32, seed: u64) -> Tally {
    let (demand, rules) = (demand(world), world.rules());
    let mut random = random(seed);
    let mut tally = Tally { swatches, ..Tally::default() };
    let others = OtherRules::new(world);
    for _ in 0..swatches {
        let cloth = Cloth::new(world, &mut random);
        let day = Day::new(world, &cloth, world.looks, world.pulls, &mut random);
        let conforms = cloth.stretch >= world.least && world.most.is_none_or(|most| cloth.stretch <= most);
        let test = day.test(world, world.looks, world.pulls);
        let evaluation = Evaluation::of(&test, &demand, &rules).expect("a test with pulls");
        tally.tenter.count(evaluation.answer.expect("something is asked"), conforms);
        let (low, high) = evaluation.figures.stretch.interval(Confidence::default());
        tally.covered += u32::from((f64::from(low)..=f64::from(high)).contains(&cloth.stretch));
        tally.doubted += u32::from(!evaluation.doubts.is_empty());
        tally.oracle.count(others.oracle(&day, &cloth), conforms);
        tally.plain_t.count(others.plain_t(&day), conforms);
        tally.division.count(others.answer(&day, |_| 0.0), conforms);
    }
    tally
}

fn mean(values: &[f64]) -> f64 {
    values.iter().sum::<f64>() / values.len() as f64
}

struct OtherRules<'w> {
    world: &'w World,
    /// Variance of one reading, in points².
    reading: f64,
    normal_quantile: f64,
    /// None for one pull, which knows nothing of its scatter.
    t_quantile: Option<f64>,
}

impl<'w> OtherRules<'w> {
    fn new(world: &'w World) -> Self {
        let division = 100.0 * world.division / world.gauge;
        let t = StudentsT::new(0.0, 1.0, world.pulls as f64 - 1.0).ok();
        Self {
            world,
            reading: division * division / 12.0,
            normal_quantile: Normal::standard().inverse_cdf(CONFIDENCE),
            t_quantile: t.map(|t| t.inverse_cdf(CONFIDENCE)),
        }
    }

    /// The answer with a guard band on both sides of each limit.
    fn answer(&self, day: &Day, guard: impl Fn(f64) -> f64) -> Answer {
        let stretch = 100.0 * (mean(&day.pulls) / mean(&day.looks) - 1.0);
        let one = |limit: f64, side: f64, no: Answer| match side * (stretch - limit) {
            margin if margin >= guard(limit) => Answer::Meets,
            margin if -margin >= guard(limit) => no,
            _ => Answer::Close,
        };
        let least = one(self.world.least, 1.0, Answer::Short);
        self.world.most.map_or(least, |most| least.worse(one(most, -1.0, Answer::Over)))
    }

    fn oracle(&self, day: &Day, cloth: &Cloth) -> Answer {
        let (sigma, marks) = (cloth.sigma(self.world), self.world.noise.marks * 100.0 / self.world.gauge);
        self.answer(day, |limit| {
            let look = (cloth.placing.powi(2) + self.reading) / day.looks.len() as f64 + marks.powi(2);
            let pull = (sigma.powi(2) + self.reading) / day.pulls.len() as f64;
            self.normal_quantile
                * ((1.0 + limit / 100.0).powi(2) * look + pull + (cloth.session * limit).powi(2)).sqrt()
        })
    }

    fn plain_t(&self, day: &Day) -> Answer {
        let Some(t) = self.t_quantile else { return Answer::Close };
        let (middle, count) = (mean(&day.pulls), day.pulls.len() as f64);
        let squares: f64 = day.pulls.iter().map(|pull| (pull - middle).powi(2)).sum();
        let s = 100.0 / self.world.gauge * (squares / (count - 1.0)).sqrt();
        self.answer(day, |limit| {
            t * ((1.0 + limit / 100.0).powi(2) * self.reading / day.looks.len() as f64 + s * s / count).sqrt()
        })
    }
}
