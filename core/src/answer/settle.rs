//! What would settle a test that is too close to call.

use heapless::Vec;

use crate::answer::bars::{AS_PLANNED, Made, TAKEN_UP};
use crate::answer::figure::{Budget, Figure};
use crate::answer::readings::{Readings, Worth};
use crate::answer::{Ask, Rules};
use crate::number::num;
use crate::reading::length::Length;
use crate::reading::pull_test::{Load, PullTest};
use crate::statistics::components::PLACING;
use crate::statistics::mixture::{Degrees, variance_of_scale};
use crate::statistics::student::{self, Tail};

/// A plan is proposed where it gives an answer in four cases of five.
pub const ASSURANCE: f32 = 0.8;

/// What to do. Where the model is true it gives an answer in at least [`ASSURANCE`] of cases.
///
/// ```
/// use tenter_core::Plan;
///
/// let plan = Plan { days: 1, pulls: 5, looks: 3, rests: 0, known_load: true };
/// assert!(plan.is_another_day());
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct Plan {
    /// New days, each with so many pulls, looks and readings; 0 for going on with this test up to those numbers.
    pub days: u8,
    /// Pulls.
    pub pulls: u8,
    /// Looks at the gauge length.
    pub looks: u8,
    /// Readings after release, at the time that is asked; 0 where they are not needed.
    pub rests: u8,
    /// Whether to pull with a known load, such as a hung mass, and not by hand.
    pub known_load: bool,
}

impl Plan {
    /// Whether it is done on another day and not by going on.
    #[must_use]
    pub const fn is_another_day(&self) -> bool {
        self.days > 0
    }
}

/// What would turn *close* into an answer.
///
/// ```
/// use tenter_core::{Demand, Evaluation, Grain, Length, PullTest, Range, Rules, Unit};
///
/// let mut test = PullTest::new(Length::from_mm(100), Grain::Crosswise).unwrap().with_settling_pull(true);
/// test.add_pull(Length::from_mm(106)).unwrap();
/// let demand = Demand::for_grain(Grain::Crosswise, Range::parse("5%", Unit::Mm).unwrap());
/// let settle = Evaluation::of(&test, &demand, &Rules::default()).unwrap().settle.unwrap();
/// assert_eq!(settle.complete, Some(3));
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct Settle {
    /// Make all the pulls that were planned, so many. Worth doing whether or not it settles anything.
    pub complete: Option<u8>,
    /// Read growth again so many seconds after release: it was read earlier, and has still to fall.
    pub wait_until: Option<u32>,
    /// Lay marks so far apart: on these the scale is coarser than the cloth.
    pub marks: Option<Length>,
    /// The least work that would settle it four times in five. `None` where no test of this size would.
    pub plan: Option<Plan>,
}

/// An open question: a figure, and how far it lies from its limit.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Open {
    pub ask: Ask,
    percent: f32,
    /// How many points are missing to the limit.
    missing: f32,
    /// The variance of a cloth on the limit and its degrees of freedom.
    now: f32,
    degrees: Degrees,
}

/// The deviate that [`ASSURANCE`] of cases lie on one side of, for infinitely many degrees of freedom and for 5, the fewest there are.
const ASSURED: (f32, f32) = (0.841, 0.92);

/// For ends that lie farther off than the first number, what they can add to the other end, as a part of its deviate: the tail of 5
/// degrees of freedom over the density at four cases of five.
const FAR: [(f32, f32); 4] = [(4.0, 0.03), (3.0, 0.07), (2.0, 0.25), (1.5, 0.42)];

/// Pulls, looks and readings after release to go on to, by the work they are. Of each list the last tells the most, and the last
/// of all that fit the question tells the most of all.
const ON: [&[(u8, u8, u8)]; 5] = [
    &[(5, 0, 0), (10, 0, 0)],
    &[(0, 2, 0), (0, 4, 0)],
    &[(5, 2, 0), (10, 4, 0)],
    &[(0, 2, 2), (0, 3, 3), (0, 5, 5)],
    &[(5, 5, 5), (10, 5, 5)],
];
/// How many of those need no reading after release.
const WITHOUT_RESTS: usize = 3;

/// Other days by hand: how many, pulls, looks; each tells more than the one before.
const DAYS_BY_HAND: [(u8, u8, u8); 3] = [(1, 5, 3), (2, 5, 3), (3, 5, 3)];
/// The same under a known load.
const DAYS_BY_LOAD: [(u8, u8, u8); 5] = [(1, 5, 3), (1, 10, 5), (2, 5, 3), (2, 10, 5), (3, 10, 5)];
const MOST_DAYS: f32 = 3.0;
/// How many sizes of a day there are among them, told apart by their pulls.
const DAY_SIZES: usize = 2;

/// Longer gauges worth proposing, in millimetres: to what two hands can hold and read.
const LONGER_MM: [i16; 7] = [100, 150, 200, 250, 300, 400, 500];
/// The same on an inch scale, in 64ths of an inch: 4 to 20 in.
const LONGER_INCH: [i16; 8] = [256, 320, 384, 512, 640, 768, 1024, 1280];

/// Marks on which rounding scatters no more than the cloth; `None` where it does not on these.
fn longer_marks(test: &PullTest) -> Option<Length> {
    let rounding = |gauge: Length| 100.0 * test.scale().u_mm() / gauge.mm();
    if rounding(test.gauge()) <= PLACING {
        return None;
    }
    let steps: fn(i16) -> Length = if test.scale().is_inch() { Length::from_inch_64ths } else { Length::from_mm };
    let ladder: &[i16] = if test.scale().is_inch() { &LONGER_INCH } else { &LONGER_MM };
    ladder.iter().map(|size| steps(*size)).find(|size| rounding(*size) <= PLACING)
}

fn count_of(items: impl Iterator) -> u32 {
    u32::try_from(items.count()).unwrap_or(u32::MAX)
}

/// Searches for the least work that answers every open question; going on with the newest test where it is the only one.
#[inline(never)]
pub(crate) fn settle(
    newest: (&PullTest, &Readings),
    is_alone: bool,
    open: &Vec<Open, 4>,
    made: Made,
    rules: &Rules,
    wait_until: Option<u32>,
) -> Option<Settle> {
    let (test, readings) = newest;
    // More readings of a scale that alone counts say the same again.
    let prior = readings.prior?;
    let asks_rest = open.iter().any(|open| open.ask != Ask::Stretch);
    let risk = 1.0 - rules.confidence.chance();
    let plans = Tail::of(TAKEN_UP * risk);
    let planned = made.pulls.1;
    let few = is_alone && made.pulls.0 < planned && open.iter().any(|open| open.ask == Ask::Stretch);
    let complete = u8::try_from(planned).ok().filter(|_| few);
    let mut settle = Settle { complete, wait_until, marks: longer_marks(test), plan: None };
    if wait_until.is_some() {
        return Some(settle);
    }
    let worth = &readings.worth;
    let (pulls, looks, rests) = (made.pulls.0, count_of(test.looks()), made.rests);
    let more = |wanted: u8, had: u32| u32::from(wanted).saturating_sub(had);
    let going_on = |plan: Plan, tail: &Tail| {
        let add = [more(plan.looks, looks), more(plan.pulls, pulls), more(plan.rests, rests)];
        let [more_looks, more_pulls, more_rests] = add.map(|count| num::float(count.into()));
        let after = worth.with_more(more_looks, more_pulls, more_rests);
        add != [0; 3] && open.iter().all(|open| open.is_settled_by(&after, readings.shift, tail))
    };
    let whole = |count: u32| u8::try_from(count).unwrap_or(u8::MAX);
    let on = |(more_pulls, more_looks, more_rests): (u8, u8, u8)| Plan {
        days: 0,
        pulls: more_pulls.max(whole(pulls)).max(whole(planned)).max(if asks_rest { more_rests } else { 0 }),
        looks: more_looks.max(whole(looks)),
        rests: if asks_rest { more_rests.max(whole(rests)) } else { 0 },
        known_load: test.load().is_known(),
    };
    let within_reach = |days: f32| open.iter().all(|open| open.is_within_reach(worth.of_day().0, days, &plans));
    if is_alone && test.settling_pull().is_none() && test.settled() && (few || within_reach(0.0)) {
        let all = on((0, 0, 0));
        let first = (few && going_on(all, &Tail::of(AS_PLANNED * risk))).then_some(all);
        let lists = ON.get(..if asks_rest { ON.len() } else { WITHOUT_RESTS }).unwrap_or(&ON);
        settle.plan = first.or_else(|| least(lists, |plan| Some(on(*plan)).filter(|plan| going_on(*plan, &plans))));
    }
    if settle.plan.is_none() {
        let days = |prior, known_load| Days {
            open,
            tail: &plans,
            asks_rest,
            known_load,
            one: Worth::fresh(prior, readings.kept.rounding, worth.stretch),
            worth: Vec::new(),
        };
        let by_hand = !test.load().is_known() && within_reach(MOST_DAYS);
        let by_hand = if by_hand { days(prior, false).least(&DAYS_BY_HAND) } else { None };
        // Under a known load only what is less work than that.
        let work = by_hand.map_or((u8::MAX, 0), |plan| (plan.days, plan.pulls));
        let less = DAYS_BY_LOAD.partition_point(|(days, pulls, _)| (*days, *pulls) < work);
        // What is learnt of the hand does not hold for a mass; a mass of any weight is known alike.
        let load = rules.scatter.prior(Load::Force { millinewtons: 1 })?;
        let by_load = DAYS_BY_LOAD.get(..less).filter(|list| !list.is_empty());
        settle.plan = by_load.and_then(|list| days(load, true).least(list)).or(by_hand);
    }
    Some(settle)
}

/// The first that settles, of the first list whose last does; nothing where the last of all does not.
fn least<T>(lists: &[&[T]], settles: impl Fn(&T) -> Option<Plan>) -> Option<Plan> {
    let (last, before) = lists.split_last()?;
    let most = settles(last.last()?)?;
    before.iter().find_map(|list| first(list, &settles)).or_else(|| first_but(most, last, &settles))
}

/// The first that settles, in a list where each tells more than the one before: by halving.
fn first<T>(list: &[T], mut settles: impl FnMut(&T) -> Option<Plan>) -> Option<Plan> {
    let most = settles(list.last()?)?;
    first_but(most, list, settles)
}

/// The same where the last settles.
fn first_but<T>(most: Plan, list: &[T], mut settles: impl FnMut(&T) -> Option<Plan>) -> Option<Plan> {
    let (_, mut open) = list.split_last()?;
    let mut found = most;
    while let Some((before, [middle, after @ ..])) = open.split_at_checked(open.len() / 2) {
        match settles(middle) {
            Some(plan) => (found, open) = (plan, before),
            None => open = after,
        }
    }
    Some(found)
}

/// Tests on other days.
struct Days<'o> {
    open: &'o Vec<Open, 4>,
    tail: &'o Tail,
    asks_rest: bool,
    known_load: bool,
    /// One look and one pull.
    one: Worth,
    /// What a day of so many pulls is worth to each question: the same for one day as for three, and the most of the work.
    worth: Vec<(u8, Vec<f32, 4>), DAY_SIZES>,
}

impl Days<'_> {
    /// The least work of a list that settles.
    fn least(mut self, list: &[(u8, u8, u8)]) -> Option<Plan> {
        first(list, |plan| self.settling(*plan))
    }

    fn settling(&mut self, (days, pulls, looks): (u8, u8, u8)) -> Option<Plan> {
        let rests = if self.asks_rest { looks } else { 0 };
        if self.worth.iter().all(|(size, _)| *size != pulls) {
            let more = [looks.saturating_sub(1), pulls.saturating_sub(1), rests];
            let [more_looks, more_pulls, rests] = more.map(|count| num::float(count.into()));
            let day = self.one.with_more(more_looks, more_pulls, rests);
            // As many as there are questions; to collect them would be a panic that can be reached.
            let mut worth = Vec::new();
            for open in self.open {
                let _ = worth.push(open.of_a_day(&day));
            }
            let _ = self.worth.push((pulls, worth)); // Room for each size.
        }
        let (_, worth) = self.worth.iter().find(|(size, _)| *size == pulls)?;
        let times = num::float(days.into());
        let settles = self.open.iter().zip(worth).all(|(open, day)| open.is_settled_by_days(*day, times, self.tail));
        settles.then_some(Plan { days, pulls, looks, rests, known_load: self.known_load })
    }
}

impl Open {
    pub fn new(ask: Ask, figure: &Figure, missing: f32) -> Self {
        let degrees = Degrees::new(figure.dof);
        let now = degrees.up * figure.variance_above(missing);
        Self { ask, percent: figure.percent(), missing, now, degrees }
    }

    fn budget(&self, worth: &Worth, shift: f32) -> Budget {
        match self.ask {
            Ask::Stretch => worth.of_stretch_another_day(worth.of_stretch(shift)),
            Ask::Growth => worth.of_growth_another_day(worth.of_growth(self.percent)),
            Ask::Recovery => worth.of_recovery(self.percent),
        }
    }

    fn is_settled_by(&self, after: &Worth, shift: f32, tail: &Tail) -> bool {
        let (squared_scale, dof) = self.budget(after, shift).at(self.missing);
        self.is_assured(&Then { variance: variance_of_scale(squared_scale, dof), squared_scale, dof }, tail)
    }

    /// The variance of such a day for a cloth on the limit.
    fn of_a_day(&self, day: &Worth) -> f32 {
        self.budget(day, 0.0).variance_at(self.missing)
    }

    fn is_settled_by_days(&self, day: f32, days: f32, tail: &Tail) -> bool {
        let variance = self.now * day / (day + days * self.now);
        let dof = self.degrees.count + days;
        self.is_assured(&Then { variance, squared_scale: variance - 2.0 * variance / dof, dof }, tail)
    }

    /// Whether readings without an error of their own would settle it, now or on so many other days: however often it is read, what
    /// a day does to a force stays, `per_point` for each point squared. Seldom so close to a limit, and it spares the search.
    fn is_within_reach(&self, per_point: f32, days: f32, tail: &Tail) -> bool {
        let limit = self.percent + self.missing;
        // Growth goes with the stretch, so that no day moves a recovery.
        let day = if self.ask == Ask::Recovery { 0.0 } else { per_point * limit * limit };
        let variance = if days > 0.0 { self.now * day / (day + days * self.now) } else { day };
        self.is_assured(&Then { variance, squared_scale: variance, dof: f32::INFINITY }, tail)
    }

    /// Whether an answer comes in four cases of five: the value read then lies about today's as far as the variance falls.
    fn is_assured(&self, then: &Then, tail: &Tail) -> bool {
        let Some(ends) = self.ends(then, tail) else { return false };
        // Most plans end here, without a tail: the one end is enough, or the other adds too little.
        let (near, far) = ends;
        if near <= -ASSURED.1 {
            return true;
        }
        if near > 0.3 {
            return false;
        }
        let adds = FAR.iter().find(|(from, _)| far > *from).map_or(f32::INFINITY, |(_, adds)| *adds);
        if near > adds - ASSURED.0 {
            return false;
        }
        let assured = Tail::ONE_IN_5.quantile(self.degrees.count);
        near <= -assured || near <= adds - assured && self.assurance(ends) >= ASSURANCE
    }

    /// How many of its own scales the value read then must move for an answer, to the nearer side and to the other. `None` where it
    /// does not move.
    fn ends(&self, then: &Then, tail: &Tail) -> Option<(f32, f32)> {
        let moves = num::sqrt((self.now - then.variance) / self.degrees.up);
        if moves <= 0.0 {
            return None;
        }
        let guard = tail.quantile(then.dof) * num::sqrt(then.squared_scale);
        let (margin, per_move) = (self.missing.abs(), 1.0 / moves);
        Some(((guard - margin) * per_move, (guard + margin) * per_move))
    }

    /// The chance of an answer: after D. J. Spiegelhalter, K. R. Abrams, J. P. Myles, *Bayesian Approaches to Clinical Trials and
    /// Health-Care Evaluation*, 2004, § 6.5 (from memory), with t for the normal distribution.
    fn assurance(&self, (near, far): (f32, f32)) -> f32 {
        student::upper_tail(near, self.degrees.count) + student::upper_tail(far, self.degrees.count)
    }
}

/// What a figure will be worth.
#[derive(Clone, Copy, Debug)]
struct Then {
    variance: f32,
    squared_scale: f32,
    dof: f32,
}

#[cfg(test)]
mod tests {
    use super::*;

    /// SciPy 1.17, an independent computation.
    #[test]
    fn assurance_against_scipy() {
        let known = [
            (1.2, (1.0, 12.0), (0.25, 18.0), 0.550_413),
            (0.9, (1.0, 12.0), (0.1, 20.0), 0.633_644),
            (1.5, (1.0, 11.0), (0.5, 12.0), 0.446_565),
        ];
        let tail = Tail::of(0.015);
        for (missing, (now, dof), (variance, dof_then), expected) in known {
            let open = Open { ask: Ask::Stretch, percent: 5.0, missing, now, degrees: Degrees::new(dof) };
            let then = Then { variance, squared_scale: variance / Degrees::new(dof_then).up, dof: dof_then };
            let found = open.assurance(open.ends(&then, &tail).unwrap());
            assert!((found - expected).abs() < 2e-4, "{found} for {expected}");
        }
    }

    /// What is decided without a tail is decided as with it.
    #[test]
    fn short_cuts_change_nothing() {
        let tail = Tail::of(0.025);
        let (mut yes, mut no) = (0, 0);
        for dof in [5.0, 6.5, 9.0, 14.0, 40.0, 1e6] {
            for step in 1..400i16 {
                for share in [0.02, 0.05, 0.1, 0.2, 0.3, 0.5, 0.8] {
                    let missing = f32::from(step) * 0.01;
                    let open = Open { ask: Ask::Stretch, percent: 5.0, missing, now: 1.0, degrees: Degrees::new(dof) };
                    let then =
                        Then { variance: share, squared_scale: share / Degrees::new(dof + 3.0).up, dof: dof + 3.0 };
                    let by_tails = open.assurance(open.ends(&then, &tail).unwrap()) >= ASSURANCE;
                    assert_eq!(open.is_assured(&then, &tail), by_tails, "{open:?} {then:?}");
                    if by_tails { yes += 1 } else { no += 1 }
                }
            }
        }
        assert!(yes > 1000 && no > 1000);
    }

    #[test]
    fn the_least_that_settles() {
        let lists: [&[u8]; 3] = [&[1, 3], &[2, 5], &[4, 7, 8, 9]];
        let found = |enough: u8| {
            let plan = |size: &u8| Plan { days: 0, pulls: *size, looks: 0, rests: 0, known_load: false };
            least(&lists, |size| (*size >= enough).then(|| plan(size))).map(|plan| plan.pulls)
        };
        assert_eq!([1, 3, 4, 6, 8, 9, 10].map(found), [Some(1), Some(3), Some(5), Some(7), Some(8), Some(9), None]);
    }
}
