//! Seeded simulation of swatches of known true stretch, scale and pull scatter: how often tenter's answer is
//! *close*, and how often it is wrong, beside three other rules that see the same readings.
//!
//! The model is the one the core assumes, so it shows whether the arithmetic keeps its promise, not whether real cloth
//! obeys the model; the rows with half and twice the assumed scatter show what a wrong assumption costs.

use rand::rngs::StdRng;
use rand::{Rng, SeedableRng};
use rand_distr::StandardNormal;
use statrs::distribution::{ContinuousCDF, Normal, StudentsT};
use tenter_core::{Answer, Demand, Ends, Evaluation, Grain, Length, Limit, PullTest, Range, Rules, Scale, Scatter};

/// The confidence of all four rules: the default of [`Rules`].
const CONFIDENCE: f64 = 0.95;

/// How far the true stretch lies from the demand at most, in assumed standard deviations of one pull: for a demand of
/// 5 % this is 2 to 8 %.
const REACH: f64 = 3.6;

/// One row of the table.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Setup {
    /// Least stretch that is asked, in percent.
    pub demand: u32,
    /// The true pull-to-pull standard deviation over the assumed one.
    pub scatter_times: f64,
    /// Pulls of each swatch.
    pub pulls: usize,
    /// Gauge length as read.
    pub gauge: Length,
    /// Scale division.
    pub division: Length,
}

impl Setup {
    /// Every row: scatter of half, once and twice the assumed; 1, 3, 5 pulls; 100 and 250 mm; 0.5 and 1 mm; demands
    /// of 5, 25 and 50 %.
    pub fn all() -> impl Iterator<Item = Self> {
        let lengths = [(100, 1600), (100, 800), (250, 1600), (250, 800)];
        [0.5, 1.0, 2.0].into_iter().flat_map(move |scatter_times| {
            [1, 3, 5].into_iter().flat_map(move |pulls| {
                lengths.into_iter().flat_map(move |(gauge, steps)| {
                    let (gauge, division) = (Length::from_mm(gauge), Length::from_steps(steps));
                    [5, 25, 50].map(|demand| Self { demand, scatter_times, pulls, gauge, division })
                })
            })
        })
    }

    fn demand(&self) -> Demand {
        let at_least = Limit::milli_percent(self.demand * 1000).expect("a small percentage");
        Demand::for_grain(Grain::Crosswise, Range { at_least: Some(at_least), at_most: None })
    }
}

/// Where the true stretch lies.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Truth {
    /// Evenly around the demand.
    Around,
    /// 0.001 points below the demand: the worst place for a wrong *meets*.
    JustBelow,
    /// 0.001 points above the demand: the worst place for a wrong *short*.
    JustAbove,
}

/// What one rule answered.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Answers {
    /// Too close to call.
    pub close: u32,
    /// *Meets* where the true stretch does not.
    pub wrong_meets: u32,
    /// *Short* where the true stretch is not.
    pub wrong_short: u32,
}

impl Answers {
    fn count(&mut self, answer: Answer, conforms: bool) {
        match answer {
            Answer::Close => self.close += 1,
            Answer::Meets => self.wrong_meets += u32::from(!conforms),
            Answer::Short => self.wrong_short += u32::from(conforms),
            Answer::Over | Answer::Unknown => panic!("{answer:?} to a measured \"at least\""),
        }
    }

    /// Both kinds of wrong answer.
    #[must_use]
    pub fn wrong(&self) -> u32 {
        self.wrong_meets + self.wrong_short
    }
}

/// What all rules answered to the same swatches.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Tally {
    /// How many swatches.
    pub swatches: u32,
    /// The rule under test.
    pub tenter: Answers,
    /// The normal distribution with the true scatter, which nobody knows.
    pub oracle: Answers,
    /// Student's t on the pulls alone.
    pub plain_t: Answers,
    /// Meets when the quotient reaches the demand: never close.
    pub division: Answers,
    /// Swatches on which exactly one of tenter and the oracle said *close*.
    pub disagree: u32,
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

    /// Tenter's share of *close* over the oracle's.
    #[must_use]
    pub fn ratio(&self) -> f64 {
        f64::from(self.tenter.close) / f64::from(self.oracle.close)
    }

    /// The standard error of [`Tally::ratio`] from the number of swatches: both rules see the same ones, so only
    /// those on which they disagree count (the usual estimate for a ratio of paired proportions).
    #[must_use]
    pub fn ratio_error(&self) -> f64 {
        let both = f64::from(self.tenter.close) * f64::from(self.oracle.close);
        self.ratio() * (f64::from(self.disagree) / both).sqrt()
    }
}

/// Simulates so many swatches; the same seed gives the same tally.
#[must_use]
pub fn simulate(setup: &Setup, truth: Truth, swatches: u32, seed: u64) -> Tally {
    let mut random = StdRng::seed_from_u64(seed);
    let demand = setup.demand();
    let others = OtherRules::new(setup);
    let mut tally = Tally { swatches, ..Tally::default() };
    for _ in 0..swatches {
        let (test, stretch) = swatch(setup, truth, &mut random);
        let conforms = stretch >= f64::from(setup.demand);
        let tenter = Evaluation::of(&test, &demand, &Rules::default()).expect("a test with pulls");
        let tenter = tenter.answer.expect("something is asked");
        let (mean, s) = mean_and_deviation(&test);
        let sigma = setup.scatter_times * assumed(stretch);
        let oracle = others.oracle(mean, sigma);
        tally.tenter.count(tenter, conforms);
        tally.oracle.count(oracle, conforms);
        tally.plain_t.count(others.plain_t(mean, s), conforms);
        tally.division.count(others.division(&test), conforms);
        tally.disagree += u32::from((tenter == Answer::Close) != (oracle == Answer::Close));
    }
    tally
}

/// The assumed standard deviation of one pull at a true stretch, both in points.
#[allow(clippy::cast_possible_truncation)] // The core takes an f32.
fn assumed(stretch: f64) -> f64 {
    f64::from(Scatter::ASSUMED.variance(stretch as f32).u())
}

/// A pull test of a new swatch, and the swatch's true stretch.
fn swatch(setup: &Setup, truth: Truth, random: &mut StdRng) -> (PullTest, f64) {
    let demand = f64::from(setup.demand);
    let stretch = match truth {
        Truth::Around => demand + REACH * assumed(demand) * random.random_range(-1.0..1.0),
        Truth::JustBelow => demand - 0.001,
        Truth::JustAbove => demand + 0.001,
    };
    let sigma = setup.scatter_times * assumed(stretch);
    let division = f64::from(setup.division.steps());
    // The marks are made so that they read exactly the gauge length, which leaves half a division either way.
    let gauge = f64::from(setup.gauge.steps()) + division * random.random_range(-0.5..0.5);
    let scale = Scale::new(setup.division, Ends::One).expect("a division above zero");
    let mut test = PullTest::new(setup.gauge, Grain::Crosswise)
        .and_then(|test| test.with_scale(scale))
        .expect("a gauge above the division");
    for _ in 0..setup.pulls {
        let scatter = sigma * random.sample::<f64, _>(StandardNormal);
        let extended = gauge * (1.0 + (stretch + scatter) / 100.0);
        #[allow(clippy::cast_possible_truncation)] // Under a metre: far within reach.
        let read = Length::from_steps(((extended / division).round() * division) as i32);
        // A person who reads less than the gauge length has not pulled, and the core refuses it.
        test.add_pull(read.max(setup.gauge)).expect("an extended length no shorter than the gauge");
    }
    (test, stretch)
}

/// Mean stretch of the pulls and its standard deviation (n − 1), in points; 0 for one pull.
fn mean_and_deviation(test: &PullTest) -> (f64, f64) {
    let gauge = f64::from(test.gauge().steps());
    let stretch = |length: &Length| 100.0 * (f64::from(length.steps()) - gauge) / gauge;
    let count = test.pulls().len() as f64;
    let mean = test.pulls().iter().map(stretch).sum::<f64>() / count;
    let squares: f64 = test.pulls().iter().map(|length| (stretch(length) - mean).powi(2)).sum();
    (mean, (squares / (count - 1.0).max(1.0)).sqrt())
}

/// The rules tenter is held against. They are written here in full, in f64 and with another library's quantiles, so
/// that they share nothing with the core but the readings.
struct OtherRules {
    demand: f64,
    pulls: f64,
    /// Variance of one reading, in points².
    reading: f64,
    /// Variance of the demanded length from the gauge reading, in points².
    from_gauge: f64,
    normal_quantile: f64,
    /// None for one pull, which knows nothing of its scatter.
    t_quantile: Option<f64>,
}

impl OtherRules {
    fn new(setup: &Setup) -> Self {
        let (demand, pulls) = (f64::from(setup.demand), setup.pulls as f64);
        let division = 100.0 * f64::from(setup.division.steps()) / f64::from(setup.gauge.steps());
        let reading = division * division / 12.0;
        let t = StudentsT::new(0.0, 1.0, pulls - 1.0).ok();
        Self {
            demand,
            pulls,
            reading,
            from_gauge: (1.0 + demand / 100.0).powi(2) * reading,
            normal_quantile: Normal::standard().inverse_cdf(CONFIDENCE),
            t_quantile: t.map(|t| t.inverse_cdf(CONFIDENCE)),
        }
    }

    fn oracle(&self, mean: f64, sigma: f64) -> Answer {
        let u = (self.from_gauge + (self.reading + sigma * sigma) / self.pulls).sqrt();
        self.guarded(mean, self.normal_quantile * u)
    }

    fn plain_t(&self, mean: f64, s: f64) -> Answer {
        let u = (self.from_gauge + s * s / self.pulls).sqrt();
        self.t_quantile.map_or(Answer::Close, |t| self.guarded(mean, t * u))
    }

    fn division(&self, test: &PullTest) -> Answer {
        let sum: i64 = test.pulls().iter().map(|length| i64::from(length.steps())).sum();
        let wanted = f64::from(test.gauge().steps()) * self.pulls * (100.0 + self.demand);
        if sum as f64 * 100.0 >= wanted { Answer::Meets } else { Answer::Short }
    }

    fn guarded(&self, mean: f64, guard: f64) -> Answer {
        match mean - self.demand {
            margin if margin >= guard => Answer::Meets,
            margin if -margin >= guard => Answer::Short,
            _ => Answer::Close,
        }
    }
}
