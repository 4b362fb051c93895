//! Tests of one grain, each alone and then together: figures, doubts, answers.

use heapless::Vec;

use crate::answer::bars::{AS_PLANNED, Made};
use crate::answer::doubt::{self, Doubt, MAX_DOUBTS};
use crate::answer::evaluation::{Ask, Part, Rules, Side};
use crate::answer::figure::Figure;
use crate::answer::figures::{Figures, RestFigures};
use crate::answer::joint::{self, Combined, MAX_SITTINGS, Sitting, WIDENINGS, Widening};
use crate::answer::readings::Readings;
use crate::answer::rest::{Pick, Timing};
use crate::answer::settle::{self, Open, Settle};
use crate::answer::verdict::Answer;
use crate::number::list::list;
use crate::number::ratio::Ratio;
use crate::reading::limit::{Demand, Limit};
use crate::reading::look::MAX_LOOKS;
use crate::reading::pull_test::{MAX_PULLS, PullTest, TestError};
use crate::statistics::discordant::PriorVariance;

/// Pulls that must be left for an answer beside one that was left out.
const ENOUGH_PULLS: u32 = 3;

/// One test with what it gives.
#[derive(Clone, Debug)]
pub(crate) struct One<'t> {
    /// Its place in the list that was given.
    index: u8,
    sitting: Sitting<'t>,
    readings: Readings,
    /// What the readings themselves give to doubt.
    doubts: Vec<Doubt, MAX_DOUBTS>,
}

/// Room for the tests that count, the newest first. It is large, so that it is made once, by the caller, and not moved.
pub(crate) type Ones<'t> = Vec<One<'t>, MAX_SITTINGS>;

/// The tests that count, and what they give together.
#[derive(Clone, Debug)]
pub(crate) struct Judged<'s, 't> {
    newest: &'s One<'t>,
    /// All that count, the newest first.
    ones: &'s [One<'t>],
    pub figures: Figures,
    pub contradicts: Option<u8>,
    timing: Option<Timing>,
}

impl<'s, 't> Judged<'s, 't> {
    /// One test alone: what several amount to takes room that a small processor has not.
    pub fn alone(one: &'s One<'t>) -> Self {
        let ones = core::slice::from_ref(one);
        Self { figures: one.figures(true), timing: one.timing(), newest: one, ones, contradicts: None }
    }

    /// Several tests, read into that room.
    pub fn of(
        sittings: &[Sitting<'t>],
        demand: &Demand,
        rules: &Rules,
        ones: &'s mut Ones<'t>,
    ) -> Result<Self, TestError> {
        let grain = sittings.last().map(|sitting| sitting.test.grain());
        ones.clear();
        for (index, sitting) in sittings.iter().enumerate().rev().take(MAX_SITTINGS) {
            if Some(sitting.test.grain()) != grain || sitting.test.pulls().is_empty() {
                continue;
            }
            let one = One { index: u8::try_from(index).unwrap_or(u8::MAX), ..One::of(*sitting, demand, rules) };
            // Doubted readings do not count beside others.
            if !one.doubts.is_empty() && !ones.is_empty() {
                continue;
            }
            if ones.first().is_some_and(|one| !one.doubts.is_empty()) {
                ones.clear();
            }
            let _ = ones.push(one); // Room for all.
        }
        let ones = &*ones;
        let mut judged = Self { ones, ..Self::alone(ones.first().ok_or(TestError::NoPull)?) };
        if judged.ones.len() > 1 {
            judged.combine();
        }
        Ok(judged)
    }

    /// All that count.
    fn all(&self) -> impl Iterator<Item = &One<'t>> + Clone {
        self.ones.iter().rev()
    }

    /// The first test of each session.
    fn sessions(&self) -> impl Iterator<Item = &One<'t>> + Clone {
        let is_first = |one: &&One<'t>| self.session_of(one).next().is_some_and(|first| first.index == one.index);
        self.all().filter(is_first)
    }

    /// The tests of the session of this one, itself among them.
    fn session_of<'o>(&'o self, one: &'o One<'t>) -> impl Iterator<Item = &'o One<'t>> + Clone {
        self.all().filter(|other| other.index == one.index || other.sitting.shares_session_of(&one.sitting))
    }

    fn combine(&mut self) {
        // Readings at the time that is asked count before earlier ones, and those before later ones.
        self.timing = self.all().filter_map(One::timing).min();
        let timing = self.timing;
        let rested = |one: &One<'t>| {
            one.readings
                .rest
                .as_ref()
                .filter(|_| one.timing() == timing)
                .map(|rest| (rest.seconds, rest.recovered.count()))
        };
        let stretch = self.together(true, |one, day| Some(one.stretch(day)));
        let growth = self.together(true, |one, day| rested(one).and_then(|_| one.growth(day)));
        // Recovery is a share of the extension, whatever the force.
        let recovery = self.together(false, |one, _| rested(one).and_then(|_| one.readings.recovery()));
        let rest = growth.map(|growth| RestFigures {
            seconds: self.all().filter_map(rested).map(|(seconds, _)| seconds).max().unwrap_or(0),
            readings: self.all().filter_map(rested).map(|(_, readings)| readings).sum(),
            growth: growth.figure,
            recovery: recovery.map(|recovery| recovery.figure),
        });
        let contradicts = [stretch, growth].into_iter().flatten().find_map(|all| all.contradicts);
        self.contradicts = contradicts.and_then(|index| u8::try_from(index).ok());
        self.figures = Figures { stretch: stretch.map_or(self.figures.stretch, |stretch| stretch.figure), rest };
    }

    /// One figure of all that give it: those of each session first, then the sessions. What contradicts the others is the
    /// index of a test, of a session that of its newest. `of` hands out that of a test, with what another day does to it or
    /// without.
    fn together(&self, day: bool, of: impl Fn(&One<'t>, bool) -> Option<Figure>) -> Option<Combined> {
        let (mut days, mut newest, mut within) =
            (Vec::<Figure, MAX_SITTINGS>::new(), Vec::<u8, MAX_SITTINGS>::new(), None);
        for first in self.sessions() {
            let tests = || self.session_of(first);
            let alone = tests().count() == 1;
            let each: Vec<(u8, Figure), MAX_SITTINGS> =
                list(tests().filter_map(|one| Some((one.index, of(one, alone)?))));
            let figures: Vec<Figure, MAX_SITTINGS> = list(each.iter().map(|(_, figure)| *figure));
            let Some(one_day) = joint::combine(&figures) else { continue };
            within = within.or(one_day.contradicts.and_then(|place| each.get::<usize>(place)).map(|(index, _)| *index));
            let of_day = first.readings.worth.of_day();
            let figure = if alone || !day { one_day.figure } else { joint::with_day(one_day.figure, of_day) };
            let _ = days.push(figure); // Room for as many as there are tests.
            let _ = newest.push(each.last().map_or(first.index, |(index, _)| *index));
        }
        let all = joint::combine(&days)?;
        let between = all.contradicts.and_then(|place| newest.get::<usize>(place)).copied();
        Some(Combined { contradicts: between.or(within).map(usize::from), ..all })
    }

    /// The stretch of each session without its day.
    pub fn stretch_by_session(&self) -> Vec<Figure, MAX_SITTINGS> {
        let of_session = |first| {
            let figures: Vec<Figure, MAX_SITTINGS> = list(self.session_of(first).map(|one| one.stretch(false)));
            joint::combine(&figures).map(|one_day| one_day.figure)
        };
        list(self.sessions().filter_map(of_session))
    }

    /// Why not to believe the readings.
    pub fn doubts(&self) -> &[Doubt] {
        &self.newest.doubts
    }

    pub const fn newest(&self) -> &Sitting<'t> {
        &self.newest.sitting
    }

    pub fn days(&self) -> u8 {
        u8::try_from(self.sessions().count()).unwrap_or(u8::MAX)
    }

    pub fn left_out(&self) -> Option<u8> {
        self.newest.readings.kept.odd.filter(|pull| self.newest.readings.kept.leaves_out(*pull))
    }

    pub fn widened(&self) -> Vec<Widening, WIDENINGS> {
        joint::widenings(self.all().map(|one| &one.sitting))
    }

    /// How often what a question rests on was read.
    fn made(&self, ask: Ask, rules: &Rules) -> Made {
        let counts = |one: &&One<'t>| ask == Ask::Stretch || (one.timing().is_some() && one.timing() == self.timing);
        let mut made = Made::default();
        for first in self.sessions() {
            let tests = || self.session_of(first).filter(counts);
            if tests().next().is_none() {
                continue;
            }
            let pulls = tests().map(|one| u32::try_from(one.sitting.test.pulls().len()).unwrap_or(u32::MAX)).sum();
            // A further test of one day is a further look.
            let planned = tests().take(rules.looks.tests.max(1).into()).map(|one| one.planned(rules)).sum();
            // The day with the fewest of what was planned.
            if made.days == 0
                || i64::from(pulls) - i64::from(planned) < i64::from(made.pulls.0) - i64::from(made.pulls.1)
            {
                made.pulls = (pulls, planned);
            }
            made.days = made.days.saturating_add(1);
            made.looks += tests().map(|one| one.readings.kept.looks.count()).sum::<u32>();
            made.rests +=
                tests().filter_map(|one| one.readings.rest.as_ref()).map(|rest| rest.recovered.count()).sum::<u32>();
        }
        made
    }

    /// The figure that is asked about.
    fn figure(&self, ask: Ask) -> Option<&Figure> {
        let rest = self.figures.rest.as_ref();
        match ask {
            Ask::Stretch => Some(&self.figures.stretch),
            Ask::Growth => rest.map(|rest| &rest.growth),
            Ask::Recovery => rest.and_then(|rest| rest.recovery.as_ref()),
        }
    }

    /// The parts of a demand, each answered; those too close to call are open.
    #[inline(never)]
    pub fn parts(&self, demand: &Demand, rules: &Rules, open: &mut Vec<Open, 4>) -> Vec<Part, 4> {
        let stretch = demand.stretch(self.newest.sitting.test.grain());
        let asked = [
            (Ask::Stretch, Side::AtLeast, stretch.at_least),
            (Ask::Stretch, Side::AtMost, stretch.at_most),
            (Ask::Growth, Side::AtMost, demand.growth_at_most),
            (Ask::Recovery, Side::AtLeast, demand.recovery_at_least),
        ];
        let mut parts = Vec::new();
        for (ask, side, limit) in asked {
            let Some(limit) = limit else { continue };
            let (answer, chance) = match self.figure(ask) {
                Some(figure) => {
                    let missing = figure.missing(limit.ratio());
                    let (answer, chance) = self.answer(figure, missing, (ask, side, limit), rules);
                    if answer == Answer::Close {
                        let _ = open.push(Open::new(ask, figure, missing)); // Room for every part.
                    }
                    (answer, chance)
                }
                None => (Answer::Unknown, None),
            };
            let _ = parts.push(Part { ask, side, limit, answer, chance });
        }
        parts
    }

    fn answer(
        &self,
        figure: &Figure,
        missing: f32,
        (ask, side, limit): (Ask, Side, Limit),
        rules: &Rules,
    ) -> (Answer, Option<f32>) {
        let at_least = figure.chance_of(limit.ratio(), missing);
        let (chance, no) = match side {
            Side::AtLeast => (at_least, Answer::Short),
            Side::AtMost => (1.0 - at_least, Answer::Over),
        };
        let share = self.share_of_risk(ask, rules);
        // What holds of any cloth holds whenever it was read.
        let anyway = self.chance_anyway(ask, side, limit.ratio());
        if rules.confidence.judge_with(share, anyway, no) == Answer::Meets {
            return (Answer::Meets, Some(chance.max(anyway)));
        }
        let chance = chance.max(anyway);
        let answer = rules.confidence.judge_with(share, chance, no);
        let timing = self.timing.filter(|_| ask != Ask::Stretch);
        let no_only_low = ask == Ask::Stretch && side == Side::AtLeast && self.newest.readings.never_short;
        let believed = match (answer, timing) {
            (Answer::Meets, Some(Timing::Late)) => false,
            (Answer::Short | Answer::Over, Some(Timing::Early)) => false,
            (Answer::Short, _) => !(no_only_low && self.ones.len() == 1),
            _ => true,
        };
        if believed { (answer, Some(chance)) } else { (Answer::Close, None) }
    }

    /// The least chance that a cloth conforms, without a look at the figure that is asked. No cloth stretches or comes back by less
    /// than nothing, so that a least of nothing is always met, by a rigid cloth too; and no cloth grows by more than it
    /// stretched, so that one whose stretch is within a limit of growth is within it.
    fn chance_anyway(&self, ask: Ask, side: Side, limit: Ratio) -> f32 {
        match (ask, side) {
            (Ask::Stretch | Ask::Recovery, Side::AtLeast) if limit <= Ratio::ZERO => 1.0,
            (Ask::Growth, Side::AtMost) => 1.0 - self.figures.stretch.chance_at_least(limit),
            _ => 0.0,
        }
    }

    /// The share of the risk that an answer may take.
    pub fn share_of_risk(&self, ask: Ask, rules: &Rules) -> f32 {
        // A scale that alone counts answers the same however often it is read.
        if self.newest.readings.prior.is_none() { AS_PLANNED } else { rules.looks.share(ask, self.made(ask, rules)) }
    }

    pub fn settle(&self, open: &Vec<Open, 4>, demand: &Demand, rules: &Rules) -> Option<Settle> {
        let asks_rest = open.iter().any(|open| open.ask != Ask::Stretch);
        let wait = asks_rest && self.timing == Some(Timing::Early);
        let made = Made { rests: self.made(Ask::Growth, rules).rests, ..self.made(Ask::Stretch, rules) };
        let newest = (self.newest.sitting.test, &self.newest.readings);
        settle::settle(newest, self.ones.len() == 1, open, made, rules, wait.then_some(demand.rest_seconds))
    }
}

impl<'t> One<'t> {
    /// Reads a test that has a pull, by somebody of whom the rules know the scatter.
    pub fn alone(test: &'t PullTest, demand: &Demand, rules: &Rules) -> Self {
        Self::of(Sitting { scatter: rules.scatter, ..Sitting::new(test) }, demand, rules)
    }

    // Its frame ends before the next begins: the stack of a small processor is short.
    #[inline(never)]
    fn of(sitting: Sitting<'t>, demand: &Demand, rules: &Rules) -> Self {
        let readings = Readings::of(sitting.test, sitting.scatter, rules.construction, Pick::of(demand));
        let mut one = Self { index: 0, sitting, readings, doubts: Vec::new() };
        one.doubts = doubts(sitting.test, &one.readings);
        one
    }

    fn timing(&self) -> Option<Timing> {
        self.readings.rest.as_ref().map(|rest| rest.timing)
    }

    /// How many pulls were planned.
    fn planned(&self, rules: &Rules) -> u32 {
        let planned = self.sitting.test.planned_pulls().unwrap_or(rules.looks.pulls).max(1);
        u32::from(planned).min(u32::try_from(MAX_PULLS).unwrap_or(u32::MAX))
    }

    /// The figures, widened for how the test was done, with what another day does to them or without.
    #[inline(never)]
    fn figures(&self, day: bool) -> Figures {
        let rest = self.growth(day).and_then(|growth| self.readings.rest_figures(growth));
        Figures { stretch: self.stretch(day), rest }
    }

    fn stretch(&self, day: bool) -> Figure {
        self.widened(self.readings.stretch(day))
    }

    fn growth(&self, day: bool) -> Option<Figure> {
        self.readings.growth(day).map(|growth| self.widened(growth))
    }

    fn widened(&self, figure: Figure) -> Figure {
        if self.readings.prior.is_none() {
            return figure;
        }
        Widening::of(&self.sitting).fold(figure, |figure, widening| widening.widen(figure))
    }
}

/// What the readings themselves give to doubt.
fn doubts(test: &PullTest, readings: &Readings) -> Vec<Doubt, MAX_DOUBTS> {
    let mut doubts: Vec<Doubt, MAX_DOUBTS> = doubt::impossible(test).into_iter().collect();
    let Some(prior) = readings.prior else { return doubts };
    let kept = &readings.kept;
    let known = PriorVariance { variance: prior.placing + kept.rounding, dof: prior.placing_dof };
    if let Some(pull) = kept.odd.filter(|_| !kept.left_out || kept.count() < ENOUGH_PULLS) {
        let _ = doubts.push(Doubt::OddPull { pull });
    } else if let Some(slope) = kept.trend {
        let _ = doubts.push(if slope > 0.0 { Doubt::Rising } else { Doubt::Falling });
    }
    let looks: Vec<i32, MAX_LOOKS> = list(test.counted_looks().map(|look| look.length.steps()));
    if kept.has_odd(&looks, known) {
        let _ = doubts.push(Doubt::OddLook);
    }
    if readings.rest.as_ref().is_some_and(|rest| kept.has_odd(&rest.lengths, known)) {
        let _ = doubts.push(Doubt::OddRecovered);
    }
    doubts
}
