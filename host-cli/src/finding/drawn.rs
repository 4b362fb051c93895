//! What a picture of a cloth shows, beside what a role asks.

use tenter_core::forecast::{Forecast, forecast};
use tenter_core::making::handling::{self, Needle, SeamUse, Sewing};
use tenter_core::{Answer, Demand, Figure, Figures, Grain, Limit, PullTest, Range, Ratio, Rest, Scatter};

use crate::finding::cloth::{Shown, Standing};
use crate::finding::fit::{Stock, asked, known};
use crate::log::{Role, StoredTest};

/// Stretch along one grain.
#[derive(Debug, Clone)]
pub struct GrainStretch {
    /// The grain.
    pub grain: Grain,
    /// Its stretch; none where it was not measured.
    pub stretch: Option<Figure>,
    /// What is asked along it.
    pub asked: Range,
    /// The answer to that; none where nothing is asked.
    pub answer: Option<Answer>,
    /// The stretch of each pull.
    pub pulls: Vec<Ratio>,
}

/// One reading after release.
#[derive(Debug, Clone, Copy)]
pub struct GrowthReading {
    /// Seconds after release.
    pub seconds: u32,
    /// What was left then.
    pub growth: Figure,
}

/// Growth along one grain.
#[derive(Debug, Clone)]
pub struct Course {
    /// The grain.
    pub grain: Grain,
    /// The readings, in the order they were made.
    pub readings: Vec<GrowthReading>,
    /// Growth to come, each at its seconds after release, in rising order.
    pub to_come: Vec<(u32, Forecast)>,
    /// The most growth that is asked.
    pub at_most: Option<Limit>,
}

/// What a card says of a cloth, beside its name and measures.
#[derive(Debug, Clone)]
pub struct CardFacts {
    /// Stretch along each grain: both straight ones, and the bias where it was measured.
    pub stretch: Vec<(Grain, Option<Figure>)>,
    /// The most growth along any grain, with the seconds after release.
    pub growth: Option<(Grain, Figure, u32)>,
    /// The tests behind the first of these figures that was measured, the newest last.
    pub tests: Vec<StoredTest>,
    /// The needle; none where nothing was measured.
    pub needle: Option<Needle>,
    /// The stitch of a seam that runs lengthwise; none where nothing was measured.
    pub stitch: Option<Sewing>,
}

fn along<'s>(shown: &'s Shown<'_>, grain: Grain) -> Option<&'s Standing> {
    shown.standing.iter().find(|standing| standing.grain == grain)
}

/// The stretch of a cloth beside what a role asks: both straight grains, measured or not, and the bias where it was
/// measured or is asked.
#[must_use]
pub fn rows(shown: &Shown<'_>, beside: Option<&Role>) -> Vec<GrainStretch> {
    let row = |grain| {
        let standing = along(shown, grain);
        let asked = beside.map(|role| role.demand.stretch(grain)).unwrap_or_default();
        if grain == Grain::Bias && standing.is_none() && asked.is_empty() {
            return None;
        }
        let answer = (!asked.is_empty()).then(|| {
            let demand = Demand::for_grain(grain, asked);
            standing.map_or(Answer::Unknown, |standing| answer(shown, standing, beside, &demand))
        });
        let stretch = standing.map(|standing| standing.figures.stretch);
        Some(GrainStretch { grain, stretch, asked, answer, pulls: standing.map(pulls).unwrap_or_default() })
    };
    [Grain::Crosswise, Grain::Lengthwise, Grain::Bias].into_iter().filter_map(row).collect()
}

/// The stretch of each pull of the tests that count.
fn pulls(standing: &Standing) -> Vec<Ratio> {
    let of = |test: &PullTest| {
        let gauge = i64::from(test.gauge().steps());
        test.pulls().iter().filter_map(|to| Ratio::new(i64::from(to.steps()) - gauge, gauge)).collect::<Vec<_>>()
    };
    standing.measured.tests.iter().flat_map(|counted| of(&counted.stored.said.test)).collect()
}

fn answer(shown: &Shown<'_>, standing: &Standing, role: Option<&Role>, demand: &Demand) -> Answer {
    let judged = standing.measured.judge(demand, role.map(|role| role.id.at()), shown.confidence);
    let agreed = judged.map(|judged| match judged.contradicts {
        Some(_) => judged.answer.map(Answer::doubted),
        None => judged.answer,
    });
    agreed.ok().flatten().unwrap_or(Answer::Unknown)
}

impl GrowthReading {
    /// The readings of a test, each with its own trust.
    #[must_use]
    pub fn all(test: &PullTest, scatter: Scatter) -> Vec<Self> {
        test.rests().iter().filter_map(|rest| Self::of(test, rest, scatter)).collect()
    }

    /// A reading as if it were the only one after its pull.
    fn of(test: &PullTest, rest: &Rest, scatter: Scatter) -> Option<Self> {
        let mut one = PullTest::new(test.gauge(), test.grain()).and_then(|one| one.with_scale(test.scale())).ok()?;
        one.add_stored_pull(*test.pulls().get(usize::from(rest.after_pull))?).ok()?;
        one.add_rest(rest.seconds, rest.recovered).ok()?;
        let seen = Figures::of(&one, scatter).ok()?.rest?;
        Some(Self { seconds: seen.seconds, growth: seen.growth })
    }
}

/// What is to come half an hour and an hour after release, as far as the readings tell.
#[must_use]
pub fn to_come(test: &PullTest) -> Vec<(u32, Forecast)> {
    [1800, 3600].into_iter().filter_map(|at| Some((at, forecast(test, at).ok()?))).collect()
}

impl Course {
    /// The growth along the grain of a standing, beside what a role allows.
    #[must_use]
    pub fn of(shown: &Shown<'_>, standing: &Standing, beside: Option<&Role>) -> Self {
        let (test, by) = (&standing.released.said.test, standing.released.said.pulled_by);
        let scatter = shown.pooled.scatter_for(by, shown.fabric.construction, test);
        Self {
            grain: standing.grain,
            readings: GrowthReading::all(test, scatter),
            to_come: to_come(test),
            at_most: beside.and_then(|role| asked::demand(role).growth_at_most),
        }
    }

    /// Whether there is a course to see: of one reading words say everything.
    #[must_use]
    pub const fn is_worth_drawing(&self) -> bool {
        self.readings.len() > 1
    }
}

impl CardFacts {
    /// Gathers them.
    #[must_use]
    pub fn of(shown: &Shown<'_>, stock: &Stock) -> Self {
        let stretch = |grain| (grain, along(shown, grain).map(|standing| standing.figures.stretch));
        let growths = shown.standing.iter().filter_map(|standing| {
            let rest = standing.figures.rest?;
            Some((standing.grain, rest.growth, rest.seconds))
        });
        let straight = [Grain::Crosswise, Grain::Lengthwise].into_iter();
        let cloth = known::cloth(shown.fabric, stock);
        let pulled = !shown.standing.is_empty();
        Self {
            stretch: straight.chain(along(shown, Grain::Bias).map(|standing| standing.grain)).map(stretch).collect(),
            growth: growths.max_by_key(|(_, growth, _)| growth.ratio),
            tests: shown.standing.first().map(Standing::tests).unwrap_or_default(),
            needle: pulled.then(|| handling::needle(&cloth)),
            stitch: pulled.then(|| handling::sewing(&cloth, &SeamUse::default())),
        }
    }
}
