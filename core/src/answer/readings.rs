//! The readings of one test as sums and variances, and the figures they give.
//!
//! In points, percent of the mean gauge length G: stretch 100 (E/G − 1), growth 100 (R/G − 1), recovery
//! 100 (E − R)/(E − G). Each figure is put as a margin that is linear in the lengths, and its variance is that of a cloth
//! lying exactly on the limit (a score test), which makes yes and no equally honest where errors grow with the stretch.

use crate::answer::figure::{Budget, Errors, Even, Figure, SessionUncertainty};
use crate::answer::rest::{Pick, RestReadings};
use crate::answer::{Figures, RestFigures};
use crate::number::num;
use crate::number::ratio::Ratio;
use crate::reading::construction::Construction;
use crate::reading::pull_test::PullTest;
use crate::reading::scale::Ends;
use crate::statistics::components::FirstPull;
use crate::statistics::kept::Kept;
use crate::statistics::mixture::{Degrees, Mixture, variance_of_scale};
use crate::statistics::rounded::Rounded;
use crate::statistics::scatter::{Prior, Scatter};

/// Variances of one test, in points², and how often each length was read. A plan is the same with other counts.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Worth {
    pub looks: f32,
    pub pulls: f32,
    pub rests: f32,
    /// Mean stretch in points, and the extension of the pulls that were read after release.
    pub stretch: f32,
    rest_stretch: f32,
    look: Rounded,
    pull: Rounded,
    pull_per_point: f32,
    /// Of a gauge length read before settling, and of a first pull.
    unsettled: f32,
    first: f32,
    placing_dof: f32,
    /// Variance for each point of stretch squared.
    session: f32,
    session_degrees: Degrees,
}

impl Worth {
    /// That of one look and one pull not made yet.
    pub fn fresh(prior: Prior, rounding: f32, stretch: f32) -> Self {
        let up = stretch.max(0.0);
        let look = Rounded::new(prior.placing + rounding, prior.placing_dof, rounding, 0.0);
        let pull = Rounded::new(prior.pull + rounding, prior.pull_dof, rounding, prior.pull_per_point * up * up);
        Self::of(prior, (1.0, 1.0, 0.0), (stretch, stretch), (look, pull, prior.pull_per_point))
    }

    fn of(
        prior: Prior,
        (looks, pulls, rests): (f32, f32, f32),
        (stretch, rest_stretch): (f32, f32),
        (look, pull, pull_per_point): (Rounded, Rounded, f32),
    ) -> Self {
        Self {
            looks,
            pulls,
            rests,
            stretch,
            rest_stretch,
            look,
            pull,
            pull_per_point,
            unsettled: 0.0,
            first: 0.0,
            placing_dof: prior.placing_dof,
            session: variance_of_scale(prior.session, prior.session_dof),
            session_degrees: Degrees::new(prior.session_dof),
        }
    }

    /// The same with more readings that scatter as these.
    pub fn with_more(mut self, looks: f32, pulls: f32, rests: f32) -> Self {
        self.look = self.look.with_more(looks + if self.rests > 0.0 { rests } else { (rests - 1.0).max(0.0) });
        self.pull = self.pull.with_more(pulls);
        self.looks += looks;
        self.pulls += pulls;
        self.rests += rests;
        self
    }

    /// Mean pull at no stretch, and how that grows with the square of the stretch, over `count` pulls.
    fn pulls(&self, count: f32) -> (f32, f32) {
        (self.pull.of_mean(count), self.pull.degrees().up * self.pull_per_point / count)
    }

    /// What a day adds for each point squared, and its degrees of freedom.
    pub const fn of_day(&self) -> (f32, f32) {
        (self.session, self.session_degrees.count)
    }

    /// A budget of these readings for another day, at a stretch or a growth.
    fn another_day(&self, mut budget: Budget, at: f32) -> Budget {
        let [a, b, c] = budget.terms;
        budget.terms = [a, b, c + self.session];
        budget.parts.add_of(self.session * at * at, &self.session_degrees);
        budget
    }

    /// Of the stretch, of these readings alone.
    pub fn of_stretch(&self, shift: f32) -> Budget {
        let up = self.stretch.max(0.0);
        let gauge = self.look.of_mean(self.looks);
        let (pulls, grows) = self.pulls(self.pulls);
        let by_gauge = square(1.0 + 0.01 * up);
        let mut parts = Mixture::default();
        parts.add_of(by_gauge * gauge, self.look.degrees());
        parts.add_of(pulls + grows * up * up, self.pull.degrees());
        parts.add(by_gauge * self.unsettled, self.placing_dof);
        parts.add(self.first, self.placing_dof);
        let look = gauge + self.unsettled;
        let terms = [pulls + look + self.first, 0.02 * look, grows + 1e-4 * look];
        Budget { terms, value: (self.stretch + shift).max(0.0), parts }
    }

    /// The same for another day.
    pub fn of_stretch_another_day(&self, budget: Budget) -> Budget {
        self.another_day(budget, self.stretch.max(0.0))
    }

    /// Of the growth, of these readings alone. Where it reads below nothing, as of the stretch, the variance is that at
    /// nothing: errors that grow with it fall no further, and asking for less must not become surer than asking for more.
    pub fn of_growth(&self, growth: f32) -> Budget {
        let gauge = self.look.of_mean(self.looks) + self.unsettled;
        let both = self.look.of_mean(self.rests) + gauge;
        let mut parts = Mixture::default();
        parts.add_of(both, self.look.degrees());
        Budget { terms: [both, 0.02 * gauge, 1e-4 * gauge], value: growth.max(0.0), parts }
    }

    /// The same for another day.
    pub fn of_growth_another_day(&self, budget: Budget) -> Budget {
        self.another_day(budget, budget.value)
    }

    /// Of the recovery; no day, because growth goes with the stretch.
    pub fn of_recovery(&self, recovery: f32) -> Budget {
        let (gauge, rested) = (self.look.of_mean(self.looks) + self.unsettled, self.look.of_mean(self.rests));
        let (pulls, grows) = self.pulls(self.rests);
        let pulls = pulls + grows * square(self.stretch.max(0.0));
        let share = 0.01 * recovery;
        let mut parts = Mixture::default();
        parts.add_of(square(1.0 - share) * pulls, self.pull.degrees());
        parts.add_of(rested + share * share * gauge, self.look.degrees());
        // The margin is the extension times the points of recovery.
        let per_point = 1.0 / square(0.01 * self.rest_stretch);
        let terms = [pulls + rested, -0.02 * pulls, 1e-4 * (pulls + gauge)].map(|term| term * per_point);
        Budget { terms, value: recovery, parts }
    }
}

/// One test's readings.
#[derive(Clone, Debug)]
pub(crate) struct Readings {
    pub kept: Kept,
    pub rest: Option<RestReadings>,
    pub worth: Worth,
    /// How many points a first pull reads low.
    pub shift: f32,
    /// Whether the only pull was a first one, which reads low: it never shows that a cloth falls short.
    pub never_short: bool,
    /// What is known beforehand; `None` where only the scale counts.
    pub prior: Option<Prior>,
    one_end: bool,
}

impl Readings {
    /// Of a test that has a pull.
    pub fn of(test: &PullTest, scatter: Scatter, construction: Construction, pick: Pick) -> Self {
        let kept = Kept::of(test, scatter);
        let rest = RestReadings::of(test, &kept, pick);
        let prior = scatter.prior(test.load());
        let one_first_pull = !test.settled() && test.settling_pull().is_none();
        let up = kept.stretch.max(0.0);
        let FirstPull { shift, spread, unsettled } = match prior {
            Some(_) => FirstPull::of(construction),
            None => FirstPull::of(Construction::Woven),
        };
        let worth = Worth {
            unsettled: if test.gauge_is_unsettled() { unsettled * unsettled } else { 0.0 },
            first: if one_first_pull { spread * spread * up } else { 0.0 },
            ..worth(&kept, rest.as_ref(), prior)
        };
        Self {
            shift: if one_first_pull { shift * num::sqrt(up) } else { 0.0 },
            never_short: one_first_pull && prior.is_some() && construction != Construction::Woven,
            one_end: test.scale().ends() == Ends::One,
            kept,
            rest,
            worth,
            prior,
        }
    }

    /// The figures, with what another day does to them or without.
    pub fn figures(&self, day: bool) -> Figures {
        let rest = self.growth(day).and_then(|growth| self.rest_figures(growth));
        Figures { stretch: self.stretch(day), rest }
    }

    /// The stretch, as the figures have it.
    pub fn stretch(&self, day: bool) -> Figure {
        let (pulls, looks) = (i64::from(self.kept.count()), i64::from(self.kept.looks.count()));
        let gauges = pulls * self.kept.looks.sum();
        let ratio = Ratio::new(self.kept.pulls.sum() * looks - gauges, gauges);
        let here = self.worth.of_stretch(self.shift);
        let budget = if day { self.worth.of_stretch_another_day(here) } else { here };
        Figure { shift: self.shift, even: self.even(false, 1.0), ..figure(ratio, budget.errors(), here.here()) }
    }

    /// The growth, as the figures have it.
    pub fn growth(&self, day: bool) -> Option<Figure> {
        let rest = self.rest.as_ref()?;
        let gauges = rest.count() * self.kept.looks.sum();
        let grown = rest.recovered.sum() * i64::from(self.kept.looks.count()) - gauges;
        let grown = Ratio::new(grown, gauges).unwrap_or(Ratio::ZERO);
        let here = self.worth.of_growth(grown.percent_f32());
        let budget = if day { self.worth.of_growth_another_day(here) } else { here };
        Some(Figure { even: self.even(false, 1.0), ..figure(Some(grown), budget.errors(), here.here()) })
    }

    /// The recovery, as the figures have it.
    pub fn recovery(&self) -> Option<Figure> {
        let rest = self.rest.as_ref()?;
        let looks = i64::from(self.kept.looks.count());
        let extension = rest.extended_sum * looks - rest.count() * self.kept.looks.sum();
        let ratio = Ratio::new((rest.extended_sum - rest.recovered.sum()) * looks, extension)?;
        let errors = self.worth.of_recovery(ratio.percent_f32()).errors();
        let even = self.even(true, self.worth.rest_stretch / 100.0);
        Some(Figure { even, ..figure(Some(ratio), errors, (errors.squared_scale, errors.dof)) })
    }

    /// Growth with what was read beside it.
    pub fn rest_figures(&self, growth: Figure) -> Option<RestFigures> {
        let rest = self.rest.as_ref()?;
        let (seconds, readings) = (rest.seconds, rest.recovered.count());
        Some(RestFigures { seconds, readings, growth, recovery: self.recovery() })
    }

    /// The even errors of readings at one end on a scale that alone counts.
    fn even(&self, is_recovery: bool, span: f32) -> Option<Even> {
        let alone = self.prior.is_none() && self.one_end;
        alone.then(|| Even { half_width: num::sqrt(3.0 * self.kept.rounding) / span, is_recovery })
    }
}

fn worth(kept: &Kept, rest: Option<&RestReadings>, prior: Option<Prior>) -> Worth {
    let counts = (
        num::float(kept.looks.count().into()),
        num::float(kept.count().into()),
        rest.map_or(0.0, |rest| num::float(rest.count())),
    );
    let (looks, pulls, rests) = counts;
    let rounding = kept.rounding;
    let stretches = (kept.stretch, rest.map_or(kept.stretch, |rest| rest.stretch(kept)));
    let prior = prior.unwrap_or(SCALE_ALONE);
    // What the readings show, each prior with the weight of its degrees of freedom.
    let learnt = |assumed: f32, dof: f32, squares: f32, now: f32| {
        if now.is_finite() { (dof * (assumed + rounding) + squares) / now } else { rounding }
    };
    let squares = kept.squares_of(&kept.looks) + rest.map_or(0.0, |rest| kept.squares_of(&rest.recovered));
    let look_dof = prior.placing_dof + looks - 1.0 + (rests - 1.0).max(0.0);
    let pull_dof = prior.pull_dof + pulls - 1.0;
    let look = learnt(prior.placing, prior.placing_dof, squares, look_dof);
    let pull = learnt(prior.pull, prior.pull_dof, kept.squares, pull_dof);
    let pull_per_point =
        if pull_dof.is_finite() { prior.pull_dof * prior.pull_per_point / pull_dof } else { prior.pull_per_point };
    let up = kept.stretch.max(0.0);
    let look = Rounded::new(look, look_dof, rounding, 0.0);
    let pull = Rounded::new(pull, pull_dof, rounding, pull_per_point * up * up);
    Worth::of(prior, counts, stretches, (look, pull, pull_per_point))
}

/// Rounding alone, which is common to all readings of one tape on one cloth.
const SCALE_ALONE: Prior = Prior {
    placing: 0.0,
    placing_dof: f32::INFINITY,
    pull: 0.0,
    pull_per_point: 0.0,
    pull_dof: f32::INFINITY,
    session: 0.0,
    session_dof: f32::INFINITY,
};

fn figure(ratio: Option<Ratio>, day: Errors, (here, here_dof): (f32, f32)) -> Figure {
    let here = SessionUncertainty { u: num::sqrt(here), dof: here_dof };
    let Errors { squared_scale, dof, slope, curve } = day;
    Figure { u: num::sqrt(squared_scale), dof, slope, curve, here, ..Figure::exact(ratio.unwrap_or(Ratio::ZERO)) }
}

fn square(x: f32) -> f32 {
    x * x
}
