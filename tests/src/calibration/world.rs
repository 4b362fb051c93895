//! A world: what is asked, how it is read, and what goes wrong.

use rand::Rng;
use rand::rngs::StdRng;
use rand_distr::{ChiSquared, Distribution, StandardNormal, StudentT};
use tenter_core::components::{
    PLACING, PLACING_DOF, PULL_PER_POINT_HAND, PULL_PER_POINT_LOAD, SESSION_DOF, SESSION_HAND, SESSION_LOAD,
};
use tenter_core::{Construction, Ends, Grain, Length, Load, Looks, PullTest, Rules, Scale};

/// Where the true stretch lies, in percent.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Truth {
    /// Evenly around the demand, within 3.6 standard deviations of one pull.
    Around,
    /// So far from the demand: 0.001 below it is the worst place for a wrong *meets*.
    Off(f64),
    /// Here.
    At(f64),
}

/// How pulls of one cloth differ, and what else goes wrong.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Noise {
    /// Variances drawn from the prior; then `times`, `points`, `lay` and `session` do not count.
    pub from_prior: bool,
    /// Standard deviation of a pull, times 0.46 S^0.37 points: the fit of all pulls on their own gauge.
    pub times: f64,
    /// Standard deviation of a pull in points, instead of that.
    pub points: Option<f64>,
    /// Tails of Student's t with 3 degrees of freedom.
    pub heavy: bool,
    /// Correlation of each pull with the one before.
    pub correlation: f64,
    /// Half the readings are read to 5 mm.
    pub coarse: bool,
    /// Standard deviation of the marks, in millimetres.
    pub marks: f64,
    /// Standard deviation of laying the gauge, in percent of it.
    pub lay: f64,
    /// Standard deviation from day to day, as a share of the stretch.
    pub session: f64,
    /// The force falls by this share from pull to pull.
    pub fade: f64,
    /// The first pull reads so many points off.
    pub first: f64,
    /// One pull is off by so many millimetres, either way.
    pub slip: f64,
}

impl Noise {
    /// Pulls that scatter, and nothing else.
    pub const PLAIN: Self = Self {
        from_prior: false,
        times: 1.0,
        points: None,
        heavy: false,
        correlation: 0.0,
        coarse: false,
        marks: 0.0,
        lay: 0.0,
        session: 0.0,
        fade: 0.0,
        first: 0.0,
        slip: 0.0,
    };
    /// As the core assumes.
    pub const PRIOR: Self = Self { from_prior: true, ..Self::PLAIN };
}

/// One kind of test.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct World {
    /// Least stretch that is asked, in percent.
    pub least: f64,
    /// Most stretch that is asked.
    pub most: Option<f64>,
    /// Where the true stretch lies.
    pub truth: Truth,
    /// Pulls.
    pub pulls: usize,
    /// Pulls that were planned.
    pub planned: u8,
    /// Looks at the gauge length.
    pub looks: usize,
    /// Gauge length, in millimetres.
    pub gauge: f64,
    /// Scale division, in millimetres.
    pub division: f64,
    /// Whether the test says that a settling pull was made.
    pub settled: bool,
    /// Whether a known load pulls.
    pub load: bool,
    /// The construction that is known.
    pub construction: Construction,
    /// What goes wrong.
    pub noise: Noise,
}

impl World {
    /// Three settled pulls by hand on 100 mm marks, looked at once, on a 1 mm scale.
    #[must_use]
    pub const fn of(least: f64) -> Self {
        Self {
            least,
            most: None,
            truth: Truth::Around,
            pulls: 3,
            planned: 3,
            looks: 1,
            gauge: 100.0,
            division: 1.0,
            settled: true,
            load: false,
            construction: Construction::Other,
            noise: Noise::PLAIN,
        }
    }

    /// The rules of the core for it.
    #[must_use]
    pub fn rules(&self) -> Rules {
        let looks = Looks { pulls: self.planned, ..Looks::default() };
        Rules { construction: self.construction, looks, ..Rules::default() }
    }

    fn reach(&self) -> f64 {
        if !self.noise.from_prior {
            return 3.6 * plain(self.least);
        }
        let (per_point, session) = self.per_point();
        let placing = 2.0 * 1.4 * f64::from(PLACING).powi(2);
        3.6 * (placing + self.least.powi(2) * (1.4 * per_point.powi(2) + session.powi(2) * 4.0 / 3.0)).sqrt()
    }

    fn per_point(&self) -> (f64, f64) {
        let both = if self.load { (PULL_PER_POINT_LOAD, SESSION_LOAD) } else { (PULL_PER_POINT_HAND, SESSION_HAND) };
        (both.0.into(), both.1.into())
    }
}

/// Standard deviation of a pull in points at a stretch, in worlds that are not drawn from the prior.
fn plain(stretch: f64) -> f64 {
    0.46 * stretch.max(1.0).powf(0.37)
}

/// One cloth with one hand: its true stretch and the scatter that it has.
#[derive(Clone, Copy, Debug)]
pub struct Cloth {
    /// True stretch, in percent.
    pub stretch: f64,
    /// Standard deviation of a pull over that of the prior's scale; 1 where nothing is drawn.
    pull: f64,
    /// Standard deviation of a placing, in percent.
    pub placing: f64,
    /// Standard deviation of the day, as a share of the stretch.
    pub session: f64,
}

/// The square root of a variance drawn from a scaled inverse chi-square of scale 1.
pub fn drawn(dof: f32, random: &mut StdRng) -> f64 {
    let dof = f64::from(dof);
    let chi: f64 = ChiSquared::new(dof).expect("above zero").sample(random);
    (dof / chi).sqrt()
}

pub(super) fn normal(random: &mut StdRng) -> f64 {
    random.sample(StandardNormal)
}

impl Cloth {
    /// A new cloth.
    pub fn new(world: &World, random: &mut StdRng) -> Self {
        let reach = world.reach();
        let stretch = match world.truth {
            Truth::Around => {
                random.random_range(world.least - reach..world.most.unwrap_or(world.least) + reach).max(0.0)
            }
            Truth::Off(off) => world.least + off,
            Truth::At(stretch) => stretch,
        };
        if !world.noise.from_prior {
            return Self { stretch, pull: 1.0, placing: world.noise.lay, session: world.noise.session };
        }
        let session = world.per_point().1 * drawn(SESSION_DOF, random);
        let pull = drawn(PLACING_DOF, random);
        Self { stretch, pull, placing: f64::from(PLACING) * drawn(PLACING_DOF, random), session }
    }

    /// Standard deviation of a pull, in points, at its true stretch.
    #[must_use]
    pub fn sigma(&self, world: &World) -> f64 {
        if world.noise.from_prior {
            let (per_point, _) = world.per_point();
            return self.pull * f64::from(PLACING).hypot(per_point * self.stretch);
        }
        world.noise.points.unwrap_or(world.noise.times * plain(self.stretch))
    }

    /// Another hand or mass on the same cloth: the day's share as it is for that load.
    #[must_use]
    pub fn under(&self, from: &World, to: &World) -> Self {
        Self { session: self.session / from.per_point().1 * to.per_point().1, ..*self }
    }
}

/// A day's readings, in millimetres.
#[derive(Clone, Debug)]
pub struct Day {
    /// Looks at the gauge length.
    pub looks: Vec<f64>,
    /// Extended lengths.
    pub pulls: Vec<f64>,
    /// The gauge length that the cloth really had.
    pub true_gauge: f64,
    /// How much more or less than its true stretch the cloth gave that day.
    pub day: f64,
}

/// How far the force of a hand carries into the stretch of a cloth at 2 to 5 N (open data, `outside/scatter.rs`).
const ELASTICITY: f64 = 0.707;

impl Day {
    /// A day of so many looks and pulls.
    pub fn new(world: &World, cloth: &Cloth, looks: usize, pulls: usize, random: &mut StdRng) -> Self {
        let (noise, division) = (&world.noise, world.division);
        let on_lines = |length: f64| (length / division).round() * division;
        // The marks are made so that they read exactly the gauge length, which leaves half a division either way.
        let read = world.gauge + division * random.random_range(-0.5..0.5);
        let gauge = read * (1.0 + cloth.placing * normal(random) / 100.0) + noise.marks * normal(random);
        let mut all_looks = vec![world.gauge];
        for _ in 1..looks {
            all_looks.push(on_lines(gauge * (1.0 + cloth.placing * normal(random) / 100.0)));
        }
        let day = 1.0 + cloth.session * normal(random);
        let sigma = cloth.sigma(world);
        let slipped = random.random_range(0..pulls);
        let mut before: Option<f64> = None;
        let mut all_pulls = Vec::new();
        for pull in 0..pulls {
            let heavy = StudentT::new(3.0).expect("above zero");
            let new = if noise.heavy { heavy.sample(random) / 3f64.sqrt() } else { normal(random) };
            let error = match before {
                Some(before) if noise.correlation > 0.0 => {
                    noise.correlation * before + (1.0 - noise.correlation.powi(2)).sqrt() * new
                }
                _ => new,
            };
            before = Some(error);
            let fade = (1.0 - noise.fade).powf(ELASTICITY * pull as f64);
            let first = if pull == 0 { noise.first } else { 0.0 };
            let mut length = gauge * (1.0 + (cloth.stretch * day * fade + sigma * error + first) / 100.0);
            if noise.slip > 0.0 && pull == slipped {
                length += if random.random() { noise.slip } else { -noise.slip };
            }
            let length = on_lines(length);
            let coarse = noise.coarse && random.random();
            // A person who reads less than the gauge length has not pulled.
            all_pulls.push((if coarse { (length / 5.0).round() * 5.0 } else { length }).max(world.gauge));
        }
        Self { looks: all_looks, pulls: all_pulls, true_gauge: gauge, day }
    }

    /// The test of its first looks and pulls.
    #[must_use]
    pub fn test(&self, world: &World, looks: usize, pulls: usize) -> PullTest {
        let scale = Scale::new(length(world.division), Ends::One).expect("a division above zero");
        let load = if world.load { Load::Force { millinewtons: 5_000 } } else { Load::Hand };
        let mut test = PullTest::new(length(self.looks[0]), Grain::Crosswise)
            .and_then(|test| test.with_scale(scale))
            .expect("a gauge above the division")
            .with_settling_pull(world.settled)
            .with_load(load);
        for look in &self.looks[1..looks] {
            // Of a look that is refused for lying too far off, a person takes the nearest that is not.
            let near = look.clamp(0.905 * self.looks[0], 1.095 * self.looks[0]);
            test.add_look(length((near / world.division).round() * world.division)).expect("a look near the first");
        }
        for pull in &self.pulls[..pulls] {
            test.add_pull(length(*pull)).expect("an extended length no shorter than the gauge");
        }
        test
    }
}

/// Millimetres on the lines of a scale as a length.
#[must_use]
#[allow(clippy::cast_possible_truncation)] // Under ten metres.
pub fn length(millimetres: f64) -> Length {
    Length::from_steps((millimetres * f64::from(Length::STEPS_PER_MM)).round() as i32)
}

/// A percentage as a limit.
#[must_use]
#[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // A small percentage.
pub fn limit(percent: f64) -> tenter_core::Limit {
    tenter_core::Limit::milli_percent((percent * 1000.0).round() as u32).expect("a small percentage")
}

/// A generator for a row.
#[must_use]
pub fn random(seed: u64) -> StdRng {
    rand::SeedableRng::seed_from_u64(seed)
}
