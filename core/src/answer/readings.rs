//! The readings of one test as sums and variances, and the figures they give.
//!
//! In points, percent of the mean gauge length G: stretch 100 (E/G − 1), growth 100 (R/G − 1), recovery
//! 100 (E − R)/(E − G). Each figure is put as a margin that is linear in the lengths, and its variance is that of a cloth
//! lying exactly on the limit (a score test), which makes yes and no equally honest where errors grow with the stretch.

use crate::answer::figure::{Errors, Even, Figure, SessionUncertainty};
use crate::answer::rest::{Pick, RestReadings};
use crate::answer::{Figures, RestFigures};
use crate::number::num;
use crate::number::ratio::Ratio;
use crate::reading::construction::Construction;
use crate::reading::pull_test::{PullTest, TestError};
use crate::reading::scale::Ends;
use crate::statistics::components::FirstPull;
use crate::statistics::kept::Kept;
use crate::statistics::mixture::{Mixture, variance_of_scale};
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
    session_dof: f32,
}

impl Worth {
    /// That of readings not made yet.
    pub fn fresh(prior: Prior, rounding: f32, (looks, pulls, rests): (f32, f32, f32), stretch: f32) -> Self {
        let up = stretch.max(0.0);
        let look_dof = prior.placing_dof + looks - 1.0 + (rests - 1.0).max(0.0);
        let pull_dof = prior.pull_dof + pulls - 1.0;
        let pull = prior.pull + rounding;
        Self {
            looks,
            pulls,
            rests,
            stretch,
            rest_stretch: stretch,
            look: Rounded::new(prior.placing + rounding, look_dof, rounding, 0.0),
            pull: Rounded::new(pull, pull_dof, rounding, prior.pull_per_point * up * up),
            pull_per_point: prior.pull_per_point,
            unsettled: 0.0,
            first: 0.0,
            placing_dof: prior.placing_dof,
            session: variance_of_scale(prior.session, prior.session_dof),
            session_dof: prior.session_dof,
        }
    }

    /// The same with more readings that scatter as these.
    pub fn with_more(mut self, looks: f32, pulls: f32, rests: f32) -> Self {
        self.look.dof += looks + if self.rests > 0.0 { rests } else { (rests - 1.0).max(0.0) };
        self.pull.dof += pulls;
        self.looks += looks;
        self.pulls += pulls;
        self.rests += rests;
        self
    }

    fn gauge(&self) -> f32 {
        self.look.of_mean(self.looks)
    }

    /// Mean pull at a stretch, over `count` pulls.
    fn pulls_at(&self, stretch: f32, count: f32) -> f32 {
        let grows = variance_of_scale(self.pull_per_point * stretch * stretch, self.pull.dof);
        self.pull.of_mean(count) + grows / count
    }

    fn rested(&self) -> f32 {
        self.look.of_mean(self.rests)
    }

    /// What a day adds for each point squared, and its degrees of freedom.
    pub const fn of_day(&self) -> (f32, f32) {
        (self.session, self.session_dof)
    }

    /// Whether days count beside the readings.
    fn day(&self, day: bool) -> f32 {
        if day { self.session } else { 0.0 }
    }

    /// Of the stretch.
    pub fn of_stretch(&self, shift: f32, day: bool) -> Errors {
        let (up, gauge, day) = (self.stretch.max(0.0), self.gauge(), self.day(day));
        let by_gauge = square(1.0 + up / 100.0);
        let mut parts = Mixture::default();
        parts.add(by_gauge * gauge, self.look.dof);
        parts.add(by_gauge * self.unsettled, self.placing_dof);
        parts.add(self.pulls_at(up, self.pulls), self.pull.dof);
        parts.add(day * up * up, self.session_dof);
        parts.add(self.first, self.placing_dof);
        let look = gauge + self.unsettled;
        let grows = variance_of_scale(self.pull_per_point, self.pull.dof) / self.pulls;
        let at_none = self.pulls_at(0.0, self.pulls) + look + self.first;
        Errors::of([at_none, look / 50.0, grows + look / 1e4 + day], (self.stretch + shift).max(0.0), parts)
    }

    /// Of the growth. Where it reads below nothing, as of the stretch, the variance is that at nothing: errors that grow with
    /// it fall no further, and asking for less must not become surer than asking for more.
    pub fn of_growth(&self, growth: f32, day: bool) -> Errors {
        let growth = growth.max(0.0);
        let (gauge, rested, day) = (self.gauge() + self.unsettled, self.rested(), self.day(day));
        let mut parts = Mixture::default();
        parts.add(rested + gauge, self.look.dof);
        parts.add(day * growth * growth, self.session_dof);
        Errors::of([rested + gauge, gauge / 50.0, gauge / 1e4 + day], growth, parts)
    }

    /// Of the recovery; no day, because growth goes with the stretch.
    pub fn of_recovery(&self, recovery: f32) -> Errors {
        let (gauge, rested) = (self.gauge() + self.unsettled, self.rested());
        let pulls = self.pulls_at(self.stretch.max(0.0), self.rests);
        let share = recovery / 100.0;
        let mut parts = Mixture::default();
        parts.add(square(1.0 - share) * pulls, self.pull.dof);
        parts.add(rested + share * share * gauge, self.look.dof);
        // The margin is the extension times the points of recovery.
        let per_point = 1.0 / square(self.rest_stretch / 100.0);
        let terms = [pulls + rested, -pulls / 50.0, (pulls + gauge) / 1e4].map(|term| term * per_point);
        Errors::of(terms, recovery, parts)
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
    pub fn of(test: &PullTest, scatter: Scatter, construction: Construction, pick: Pick) -> Result<Self, TestError> {
        let kept = Kept::of(test, scatter);
        if kept.count() == 0 {
            return Err(TestError::NoPull);
        }
        let rest = RestReadings::of(test, &kept, pick);
        let prior = scatter.prior(test.load());
        let one_first_pull = !test.settled() && test.settling_pull().is_none();
        let up = kept.stretch.max(0.0);
        let FirstPull { shift, spread, unsettled } = match prior {
            Some(_) => FirstPull::of(construction),
            None => FirstPull::of(Construction::Woven),
        };
        let only_if = |holds: bool, value: f32| if holds { value } else { 0.0 };
        let worth = Worth {
            unsettled: only_if(test.gauge_is_unsettled(), unsettled * unsettled),
            first: only_if(one_first_pull, spread * spread * up),
            ..worth(&kept, rest.as_ref(), prior)
        };
        Ok(Self {
            shift: only_if(one_first_pull, shift * num::sqrt(up)),
            never_short: one_first_pull && prior.is_some() && construction != Construction::Woven,
            one_end: test.scale().ends() == Ends::One,
            kept,
            rest,
            worth,
            prior,
        })
    }

    /// The figures, with what another day does to them or without.
    pub fn figures(&self, day: bool) -> Figures {
        Figures { stretch: self.stretch(day), rest: self.rest.as_ref().map(|rest| self.rest_figures(rest, day)) }
    }

    fn stretch(&self, day: bool) -> Figure {
        let (pulls, looks) = (i64::from(self.kept.count()), i64::from(self.kept.looks.count()));
        let gauges = pulls * self.kept.looks.sum();
        let ratio = Ratio::new(self.kept.pulls.sum() * looks - gauges, gauges);
        let [day, here] = [day, false].map(|day| self.worth.of_stretch(self.shift, day));
        Figure { shift: self.shift, even: self.even(false, 1.0), ..figure(ratio, day, here) }
    }

    fn rest_figures(&self, rest: &RestReadings, day: bool) -> RestFigures {
        let looks = i64::from(self.kept.looks.count());
        let gauges = rest.count() * self.kept.looks.sum();
        let grown = Ratio::new(rest.recovered.sum() * looks - gauges, gauges).unwrap_or(Ratio::ZERO);
        let [day, here] = [day, false].map(|day| self.worth.of_growth(grown.percent_f32(), day));
        let growth = Figure { even: self.even(false, 1.0), ..figure(Some(grown), day, here) };
        let extension = rest.extended_sum * looks - gauges;
        let recovery = Ratio::new((rest.extended_sum - rest.recovered.sum()) * looks, extension).map(|ratio| {
            let errors = self.worth.of_recovery(ratio.percent_f32());
            let even = self.even(true, self.worth.rest_stretch / 100.0);
            Figure { even, ..figure(Some(ratio), errors, errors) }
        });
        let readings = rest.recovered.count();
        RestFigures { seconds: rest.seconds, readings, growth, recovery }
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
    let rounding = kept.rounding;
    let rest_stretch = rest.map_or(kept.stretch, |rest| rest.stretch(kept));
    let Some(prior) = prior else { return scale_alone(counts, rounding, kept.stretch, rest_stretch) };
    let fresh = Worth::fresh(prior, rounding, counts, kept.stretch);
    // What the readings show, each prior with the weight of its degrees of freedom.
    let squares = kept.look_squares() + rest.map_or(0.0, |rest| rest.squares(kept));
    let look = (prior.placing_dof * (prior.placing + rounding) + squares) / fresh.look.dof;
    let pull = (prior.pull_dof * (prior.pull + rounding) + kept.squares) / fresh.pull.dof;
    let pull_per_point = prior.pull_dof * prior.pull_per_point / fresh.pull.dof;
    let up = kept.stretch.max(0.0);
    Worth {
        rest_stretch,
        look: Rounded::new(look, fresh.look.dof, rounding, 0.0),
        pull: Rounded::new(pull, fresh.pull.dof, rounding, pull_per_point * up * up),
        pull_per_point,
        ..fresh
    }
}

/// Rounding alone, which is common to all readings of one tape on one cloth.
fn scale_alone((looks, pulls, rests): (f32, f32, f32), rounding: f32, stretch: f32, rest_stretch: f32) -> Worth {
    let certain = Rounded::new(rounding, f32::INFINITY, rounding, 0.0);
    Worth {
        looks,
        pulls,
        rests,
        stretch,
        rest_stretch,
        look: certain,
        pull: certain,
        pull_per_point: 0.0,
        unsettled: 0.0,
        first: 0.0,
        placing_dof: f32::INFINITY,
        session: 0.0,
        session_dof: f32::INFINITY,
    }
}

fn figure(ratio: Option<Ratio>, day: Errors, here: Errors) -> Figure {
    let here = SessionUncertainty { u: here.u, dof: here.dof };
    let Errors { u, dof, slope, curve } = day;
    Figure { u, dof, slope, curve, here, ..Figure::exact(ratio.unwrap_or(Ratio::ZERO)) }
}

fn square(x: f32) -> f32 {
    x * x
}
