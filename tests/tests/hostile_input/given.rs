//! Strategies: readings, limits and rules, sensible and not.

use proptest::prelude::*;
use tenter_core::{
    Confidence, Construction, Demand, Ends, Grain, Held, Length, Limit, Load, Looks, MAX_LENGTH, MAX_REST_SECONDS,
    MIN_GAUGE, PullTest, Range, Rules, Scale, Scatter,
};

/// What is done to a test, lengths in steps.
#[derive(Clone, Copy, Debug)]
pub enum Act {
    Pull(i32),
    Rest(u32, i32),
    Look(i32),
    Undo,
}

impl Act {
    /// Whether the test took it.
    pub fn on(self, test: &mut PullTest) -> bool {
        match self {
            Self::Pull(steps) => test.add_pull(Length::from_steps(steps)).is_ok(),
            Self::Rest(seconds, steps) => test.add_rest(seconds, Length::from_steps(steps)).is_ok(),
            Self::Look(steps) => test.add_look(Length::from_steps(steps)).is_ok(),
            Self::Undo => test.undo(),
        }
    }
}

/// The longest length taken, in steps.
pub const MOST: i32 = MAX_LENGTH.steps();

/// The shortest gauge length taken, in steps.
pub const LEAST: i32 = MIN_GAUGE.steps();

/// Gauge lengths: everyday ones most of the time, any valid one otherwise.
pub fn gauge() -> impl Strategy<Value = i32> {
    prop_oneof![
        4 => (50..=500i32).prop_map(|mm| mm * 1600),
        2 => (100..=1500i32).prop_map(|sixty_fourths| sixty_fourths * 635),
        2 => LEAST..=MOST,
        1 => LEAST..=3000i32,
    ]
}

/// A length that may follow a gauge length: a share of it from a little below up to twelve times.
fn about(gauge: i32) -> impl Strategy<Value = i32> {
    let share = move |per_mille: i64| i32::try_from(i64::from(gauge) * per_mille / 1000).unwrap_or(i32::MAX);
    prop_oneof![
        6 => (1000..=1500i64).prop_map(share),
        3 => (980..=1060i64).prop_map(share),
        2 => (800..=12_000i64).prop_map(share),
        2 => (-20..=20i32).prop_map(move |more| gauge.saturating_add(more)),
    ]
}

fn seconds() -> impl Strategy<Value = u32> {
    prop_oneof![4 => 0..=4000u32, 1 => 0..=MAX_REST_SECONDS + 1]
}

/// Pulls and rests that are mostly taken, and a few undone.
pub fn acts(gauge: i32) -> impl Strategy<Value = Vec<Act>> {
    let act = prop_oneof![
        5 => about(gauge).prop_map(Act::Pull),
        5 => (seconds(), about(gauge)).prop_map(|(seconds, length)| Act::Rest(seconds, length)),
        1 => about(gauge).prop_map(Act::Look),
        1 => Just(Act::Undo),
    ];
    (about(gauge), prop::collection::vec(act, 0..16)).prop_map(|(first, acts)| [vec![Act::Pull(first)], acts].concat())
}

/// Acts of any size, in any order.
pub fn any_acts() -> impl Strategy<Value = Vec<Act>> {
    let act = prop_oneof![
        any::<i32>().prop_map(Act::Pull),
        any::<(u32, i32)>().prop_map(|(seconds, length)| Act::Rest(seconds, length)),
        any::<i32>().prop_map(Act::Look),
        Just(Act::Undo),
    ];
    prop::collection::vec(act, 0..40)
}

pub fn grain() -> impl Strategy<Value = Grain> {
    prop::sample::select(vec![Grain::Lengthwise, Grain::Crosswise, Grain::Bias])
}

/// Divisions: of rulers most of the time, any up to the gauge length otherwise.
fn division(gauge: i32) -> impl Strategy<Value = i32> {
    let ruler = [1600, 800, 160, 16, 635, 1270, 2540, 5080].map(|steps: i32| steps.min(gauge));
    prop_oneof![5 => prop::sample::select(ruler.to_vec()), 1 => 1..=gauge]
}

/// A test without readings.
fn bare_test() -> impl Strategy<Value = PullTest> {
    let held = prop::sample::select(vec![Held::Flat, Held::Folded, Held::Strip, Held::Loop]);
    let load = prop::option::of(any::<u32>())
        .prop_map(|force| force.map_or(Load::Hand, |millinewtons| Load::Force { millinewtons }));
    let lengths = gauge().prop_flat_map(|gauge| (Just(gauge), division(gauge)));
    let said = (any::<[bool; 2]>(), prop::option::of(1..=10u8));
    (lengths, any::<bool>(), grain(), held, load, said).prop_map(
        |((gauge, division), both, grain, held, load, ([settled, before], planned))| {
            let ends = if both { Ends::Both } else { Ends::One };
            let scale = Scale::new(Length::from_steps(division), ends).unwrap();
            let test = PullTest::new(Length::from_steps(gauge), grain).unwrap().with_scale(scale).unwrap();
            let test = test.with_held(held).with_load(load).with_settling_pull(settled);
            let test = test.with_gauge_before_settling(before);
            planned.map_or_else(|| test.clone(), |pulls| test.clone().with_planned_pulls(pulls).unwrap())
        },
    )
}

/// Any valid test.
pub fn test() -> BoxedStrategy<PullTest> {
    let with_readings = |test: PullTest| {
        acts(test.gauge().steps()).prop_map(move |acts| {
            let mut test = test.clone();
            for act in acts {
                act.on(&mut test);
            }
            test
        })
    };
    bare_test().prop_flat_map(with_readings).boxed()
}

/// Any valid test with a pull.
pub fn pulled_test() -> BoxedStrategy<PullTest> {
    let with_pull = |mut test: PullTest| {
        if test.pulls().is_empty() {
            test.add_pull(test.gauge()).unwrap();
        }
        test
    };
    test().prop_map(with_pull).boxed()
}

/// Any valid limit (boxed, as is a test, since many of them on the stack are too much): percentages, everyday ones most of the time, and printed gauges.
pub fn limit() -> BoxedStrategy<Limit> {
    let milli = |milli| Limit::milli_percent(milli).unwrap();
    let marks = gauge().prop_flat_map(|gauge| (Just(gauge), about(gauge))).prop_map(|(gauge, extended)| {
        let most = gauge.saturating_mul(11).min(MOST);
        Limit::marks(Length::from_steps(gauge), Length::from_steps(extended.clamp(gauge, most))).unwrap()
    });
    prop_oneof![
        4 => (0..=100_000u32).prop_map(milli),
        1 => (0..=Limit::MAX_MILLI_PERCENT).prop_map(milli),
        2 => marks,
    ]
    .boxed()
}

pub fn range() -> impl Strategy<Value = Range> {
    (prop::option::of(limit()), prop::option::of(limit())).prop_map(|(at_least, at_most)| Range { at_least, at_most })
}

pub fn demand() -> impl Strategy<Value = Demand> {
    ([range(), range(), range()], prop::option::of(limit()), prop::option::of(limit())).prop_map(
        |([lengthwise, crosswise, bias], growth_at_most, recovery_at_least)| Demand {
            lengthwise,
            crosswise,
            bias,
            growth_at_most,
            recovery_at_least,
            ..Demand::default()
        },
    )
}

/// Scatter: assumed, none, or from any two numbers that are taken.
pub fn scatter() -> impl Strategy<Value = Scatter> {
    let known = |(points, dof)| Scatter::known(points, dof).unwrap_or_default();
    prop_oneof![
        2 => Just(Scatter::ASSUMED),
        1 => Just(Scatter::SCALE_ONLY),
        2 => (0.01..10f32, 3.0..100f32).prop_map(known),
        1 => (0.01..10f32, 3.0..5f32).prop_map(known),
        2 => (prop::num::f32::ANY, prop::num::f32::ANY).prop_map(known),
    ]
}

pub fn rules() -> impl Strategy<Value = Rules> {
    let confidence = prop_oneof![3 => Just(950), 1 => 501..=999u16];
    let looks = (any::<[u8; 4]>(), any::<bool>()).prop_map(|([pulls, rests, tests, days], looked_before)| Looks {
        pulls,
        rests,
        tests,
        days,
        looked_before,
    });
    let constructions = prop::sample::select(Construction::ALL.to_vec());
    (confidence, scatter(), constructions, looks).prop_map(|(per_mille, scatter, construction, looks)| Rules {
        confidence: Confidence::per_mille(per_mille).unwrap(),
        scatter,
        construction,
        looks,
    })
}
