//! Figures and answers from any valid test, demand and rules.

use num_bigint::BigInt;
use num_rational::BigRational;
use proptest::prelude::*;
use tenter_core::{
    Answer, Ask, Confidence, Construction, Context, Demand, Evaluation, Figure, Figures, Length, Limit, MAX_LOOKS,
    MAX_PULLS, MAX_RESTS, Part, PullTest, Range, Ratio, Rules, Side, TestError, implausible, suits,
};

use crate::given;

/// How much a chance may differ from the exact one: what `f32` leaves of it.
const CHANCE_ERROR: f32 = 1e-4;

fn rational(ratio: Ratio) -> BigRational {
    BigRational::new(ratio.numerator().into(), ratio.denominator().into())
}

fn assert_sane(figure: &Figure, confidence: Confidence) {
    assert!(figure.u > 0.0 && figure.u.is_finite() && figure.dof >= 1.0, "{figure:?}");
    let (low, high) = figure.interval(confidence);
    let middle = figure.percent();
    assert!(figure.here.u <= figure.u * 1.000_01 && figure.here.dof >= 1.0, "{figure:?}");
    assert!(low.is_finite() && high.is_finite() && low <= middle && middle <= high, "{low} {middle} {high}");
}

/// The figures are the quotients they are said to be, worked out in whole numbers.
fn assert_quotients(test: &PullTest, figures: &Figures) {
    let sum =
        |lengths: &mut dyn Iterator<Item = Length>| lengths.map(|length| BigInt::from(length.steps())).sum::<BigInt>();
    let looks: Vec<Length> = test.counted_looks().map(|look| look.length).collect();
    let gauge = BigRational::new(sum(&mut looks.iter().copied()), looks.len().into());
    let mean = |lengths: &[Length]| BigRational::new(sum(&mut lengths.iter().copied()), lengths.len().into());
    let one = BigRational::from(BigInt::from(1));
    let first = test.settling_pull().map_or(0, |settling| settling + 1);
    let pulls = &test.pulls()[first..];
    // Of three and more, one may be left out for lying far from the others.
    let without =
        |left: usize| pulls.iter().enumerate().filter(move |(at, _)| *at != left).map(|(_, pull)| *pull).collect();
    let kept = [pulls.to_vec()].into_iter().chain((0..pulls.len()).filter(|_| pulls.len() > 2).map(without));
    let stretches: Vec<_> = kept.map(|kept: Vec<Length>| mean(&kept) / &gauge - &one).collect();
    let Some(way) = stretches.iter().position(|stretch| *stretch == rational(figures.stretch.ratio)) else {
        panic!("{:?} of {test:?}", figures.stretch.ratio);
    };
    let left_out = way.checked_sub(1).map(|left| first + left);
    let Some(figures) = figures.rest else {
        return assert!(test.rests().is_empty());
    };
    // Two ways to leave one out may give one mean; then what follows cannot tell.
    if stretches.iter().filter(|stretch| **stretch == stretches[way]).count() > 1 {
        return;
    }
    let out = |rest: &tenter_core::Rest| Some(usize::from(rest.after_pull)) == left_out;
    let all_out = test.rests().iter().all(out);
    let believed = || test.rests().iter().filter(|rest| all_out || !out(rest));
    let longest = believed().map(|rest| rest.seconds).max().unwrap();
    let rests: Vec<_> = believed().filter(|rest| rest.seconds == longest).collect();
    assert_eq!((figures.seconds, usize::try_from(figures.readings).unwrap()), (longest, rests.len()));
    let recovered = mean(&rests.iter().map(|rest| rest.recovered).collect::<Vec<_>>());
    let extended = mean(&rests.iter().map(|rest| test.pulls()[usize::from(rest.after_pull)]).collect::<Vec<_>>());
    assert_eq!(rational(figures.growth.ratio), &recovered / &gauge - one);
    let recovery = (extended > gauge).then(|| (&extended - recovered) / (&extended - gauge));
    assert_eq!(figures.recovery.map(|figure| rational(figure.ratio)), recovery);
}

/// The answer of a part is no surer than its chance.
fn assert_consistent(part: &Part, confidence: Confidence) {
    let Some(chance) = part.chance else {
        // Not measured, or read so that it cannot tell.
        return assert!(matches!(part.answer, Answer::Unknown | Answer::Close), "{part:?}");
    };
    assert!((0.0..=1.0).contains(&chance), "{part:?}");
    let no = if part.side == Side::AtLeast { Answer::Short } else { Answer::Over };
    // Sure enough is needed for a plain answer; a doubt, another look or an early reading asks for more.
    let enough = confidence.chance();
    match part.answer {
        Answer::Meets => assert!(chance >= enough, "{part:?}"),
        Answer::Close => {}
        plain => assert!(plain == no && 1.0 - chance >= enough, "{part:?}"),
    }
}

fn assert_plans_more(test: &PullTest, evaluation: &Evaluation) {
    let Some(settle) = evaluation.settle else { return };
    assert_eq!(evaluation.answer, Some(Answer::Close));
    assert!(settle.marks.is_none_or(|marks| marks > test.gauge()), "{settle:?}");
    let (pulls, most) = (u8::try_from(test.pulls().len()).unwrap(), u8::try_from(MAX_PULLS).unwrap());
    assert!(settle.complete.is_none_or(|all| all > pulls), "{settle:?}");
    let Some(plan) = settle.plan else { return };
    let looks = u8::try_from(test.looks().count()).unwrap();
    assert!(plan.pulls <= most && usize::from(plan.looks) <= MAX_LOOKS && usize::from(plan.rests) <= MAX_RESTS);
    let goes_on = plan.pulls > pulls || plan.looks > looks || usize::from(plan.rests) > 0;
    assert!(plan.days > 0 || plan.pulls >= pulls && plan.looks >= looks && goes_on, "{settle:?}");
}

fn chances(test: &PullTest, demand: &Demand, rules: &Rules) -> Vec<(Ask, Side, Option<f32>)> {
    let evaluation = Evaluation::of(test, demand, rules).unwrap();
    evaluation.parts.iter().map(|part| (part.ask, part.side, part.chance)).collect()
}

/// The same limit on both sides of everything.
fn all_ask(limit: Limit) -> Demand {
    let range = Range { at_least: Some(limit), at_most: Some(limit) };
    Demand {
        lengthwise: range,
        crosswise: range,
        bias: range,
        growth_at_most: Some(limit),
        recovery_at_least: Some(limit),
        ..Demand::default()
    }
}

/// Whether every pull that was read after release surely extended the cloth, by more than the errors of reading both ends.
/// Otherwise the true extension may be negative, and the share of it that came back means nothing.
fn is_extended(test: &PullTest) -> bool {
    let extension = |pull: u8| i64::from(test.pulls()[usize::from(pull)].steps() - test.gauge().steps());
    test.rests().iter().all(|rest| extension(rest.after_pull) > 4 * i64::from(test.scale().division().steps()))
}

proptest! {
    #[test]
    fn any_test_has_figures(test in given::test(), rules in given::rules()) {
        let Ok(figures) = Figures::of(&test, rules.scatter) else {
            prop_assert!(test.pulls().is_empty());
            return Ok(());
        };
        assert_quotients(&test, &figures);
        assert_sane(&figures.stretch, rules.confidence);
        if let Some(rest) = figures.rest {
            assert_sane(&rest.growth, rules.confidence);
            rest.recovery.iter().for_each(|recovery| assert_sane(recovery, rules.confidence));
        }
    }

    /// Whatever is known beside the readings: a doubted test has no plain answer, and is told from an undoubted one.
    #[test]
    fn a_doubted_test_has_no_plain_answer(
        test in given::pulled_test(),
        demand in given::demand(),
        construction in prop::option::of(prop::sample::select(Construction::ALL.to_vec())),
        width in prop::option::of(given::gauge()),
        bare: bool,
    ) {
        let evaluation = Evaluation::of(&test, &demand, &Rules::default()).unwrap();
        let cloth_width = width.map(Length::from_steps);
        let doubts = implausible(&test, &Context { construction, cloth_width, demand: Some(&demand), bare });
        let undoubted = evaluation.doubts.is_empty() && doubts.is_empty();
        let doubted = evaluation.clone().with_doubts(&doubts);
        prop_assert!(doubts.iter().all(|doubt| doubted.doubts.contains(doubt)));
        let plain = |answer: Answer| !matches!(answer, Answer::Close | Answer::Unknown);
        if undoubted {
            prop_assert_eq!(doubted, evaluation);
        } else {
            prop_assert!(!doubted.parts.iter().any(|part| plain(part.answer)) && !doubted.answer.is_some_and(plain));
        }
    }

    #[test]
    fn any_test_has_an_answer(test in given::test(), demand in given::demand(), rules in given::rules()) {
        let Ok(evaluation) = Evaluation::of(&test, &demand, &rules) else {
            prop_assert!(test.pulls().is_empty());
            prop_assert_eq!(Figures::of(&test, rules.scatter), Err(TestError::NoPull));
            return Ok(());
        };
        let stretch = demand.stretch(test.grain());
        let asked = [stretch.at_least, stretch.at_most, demand.growth_at_most, demand.recovery_at_least];
        let limits: Vec<Limit> = asked.into_iter().flatten().collect();
        prop_assert_eq!(evaluation.parts.iter().map(|part| part.limit).collect::<Vec<_>>(), limits);
        evaluation.parts.iter().for_each(|part| assert_consistent(part, rules.confidence));
        let worst = evaluation.parts.iter().map(|part| part.answer).reduce(Answer::worse);
        prop_assert_eq!(evaluation.answer, worst);
        prop_assert!(evaluation.parts.iter().all(|part| part.answer.worse(worst.unwrap()) == worst.unwrap() || worst.unwrap().worse(part.answer) == worst.unwrap()));
        assert_plans_more(&test, &evaluation);
        let notes: std::collections::HashSet<_> = evaluation.notes.iter().collect();
        prop_assert_eq!(notes.len(), evaluation.notes.len());
    }

    #[test]
    fn asking_more_is_met_no_more_likely(
        test in given::pulled_test(), rules in given::rules(), one in given::limit(), other in given::limit(),
    ) {
        let (less, more) = if one.ratio() <= other.ratio() { (one, other) } else { (other, one) };
        let (less, more) = (chances(&test, &all_ask(less), &rules), chances(&test, &all_ask(more), &rules));
        for ((ask, side, less), (_, _, more)) in less.into_iter().zip(more) {
            let Some((less, more)) = less.zip(more) else { continue };
            // More than all of the extension is no recovery that anybody asks, and none that a cloth gives.
            let all = Ratio::new(1, 1).unwrap();
            let read = Figures::of(&test, rules.scatter).unwrap().rest.and_then(|rest| rest.recovery);
            // A reading of another time may be the one that is judged, and the marks may have been read again.
            let looks = test.looks().map(|look| look.length).chain([test.gauge()]).max().unwrap();
            let shrunk = test.rests().iter().any(|rest| rest.recovered < looks);
            let odd =
                shrunk || one.ratio().max(other.ratio()) > all || read.is_none_or(|recovery| recovery.ratio > all);
            if ask == Ask::Recovery && (odd || !is_extended(&test)) {
                continue;
            }
            match side {
                Side::AtLeast => prop_assert!(more <= less + CHANCE_ERROR, "{ask:?} at least: {less} {more}"),
                Side::AtMost => prop_assert!(less <= more + CHANCE_ERROR, "{ask:?} at most: {less} {more}"),
            }
        }
    }

    #[test]
    fn the_two_sides_of_a_limit_share_the_whole(test in given::pulled_test(), rules in given::rules(), limit in given::limit()) {
        let chances = chances(&test, &all_ask(limit), &rules);
        // A first pull that falls short does not tell; no cloth gives less than nothing.
        match (chances[0].2, chances[1].2.unwrap()) {
            (None, _) => prop_assert!(!test.settled() && test.pulls().len() == 1),
            (Some(least), most) if limit.ratio() > Ratio::ZERO => {
                prop_assert!((least + most - 1.0).abs() < 1e-6, "{least} {most}");
            }
            (Some(least), most) => prop_assert!(least == 1.0 && most <= 1.0, "{least} {most}"),
        }
    }

    /// A least of nothing is met by any cloth, and no cloth grows by more than it stretched.
    #[test]
    fn what_holds_of_any_cloth(test in given::pulled_test(), rules in given::rules(), limit in given::limit()) {
        let chance = |demand: &Demand, ask: Ask, side: Side| {
            chances(&test, demand, &rules).into_iter().find(|part| (part.0, part.1) == (ask, side)).unwrap().2
        };
        let nothing = all_ask(Limit::milli_percent(0).unwrap());
        prop_assert_eq!(chance(&nothing, Ask::Stretch, Side::AtLeast), Some(1.0));
        if !test.rests().is_empty() {
            let asked = all_ask(limit);
            let within = chance(&asked, Ask::Stretch, Side::AtMost).unwrap();
            // Read so that growth cannot tell, the stretch may.
            let growth = chance(&asked, Ask::Growth, Side::AtMost);
            let holds = growth.map_or(within < 1.0, |growth| growth >= within - CHANCE_ERROR);
            prop_assert!(holds, "{growth:?} {within}");
        }
    }

    #[test]
    fn longer_pulls_are_no_shorter(
        test in given::pulled_test(), rules in given::rules(), limit in given::limit(), longer in 1..100_000i32,
    ) {
        let again = PullTest::new(test.gauge(), test.grain()).unwrap().with_scale(test.scale()).unwrap();
        let mut further = again.with_settling_pull(test.settled()).with_held(test.held()).with_load(test.load());
        let pulls = test.pulls().to_vec();
        let mut test = further.clone();
        for pull in pulls {
            test.add_pull(pull).unwrap();
        }
        let room = test.gauge().steps().saturating_mul(4).min(given::MOST) - test.pulls().iter().max().unwrap().steps();
        for pull in test.pulls() {
            further.add_pull(Length::from_steps(pull.steps() + longer.min(room))).unwrap();
        }
        let demand = Demand::for_grain(test.grain(), Range { at_least: Some(limit), at_most: None });
        let [near, far] = [&test, &further].map(|test| Evaluation::of(test, &demand, &rules).unwrap());
        // The scatter that is assumed grows with the stretch: what lies far out of it here may not there, and the degrees of
        // freedom change a little.
        prop_assume!(near.left_out == far.left_out);
        let error = if rules.scatter.is_scale_only() { CHANCE_ERROR } else { 0.02 };
        let [near, far] = [near, far].map(|evaluation| evaluation.parts[0].chance);
        // A first pull that falls short does not tell.
        let Some((near, far)) = near.zip(far) else {
            prop_assert!(near.is_none() && test.pulls().len() == 1);
            return Ok(());
        };
        prop_assert!(near <= far + error, "{near} {far}");
    }

    #[test]
    fn what_suits_is_met(test in given::pulled_test(), rules in given::rules()) {
        for row in suits(&test, &rules).unwrap() {
            let milli = |milli| Limit::milli_percent(milli).ok();
            let range = Range { at_least: milli(row.at_least), at_most: row.at_most.and_then(milli) };
            let demand = Demand::for_grain(test.grain(), range);
            prop_assert_eq!(Evaluation::of(&test, &demand, &rules).unwrap().answer, Some(Answer::Meets), "{}", row.garment);
        }
    }
}
