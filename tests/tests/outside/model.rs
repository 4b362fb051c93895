//! The error model against SciPy 1.17, an independent computation from the same formulas (`tests/data/model-vectors.csv`
//! and the numbers below): figures, uncertainties, degrees of freedom, chances and ends of intervals.

use tenter_core::components::{SESSION_DOF, SESSION_HAND};
use tenter_core::discordant::{PriorVariance, farthest, trend};
use tenter_core::mixture::Mixture;
use tenter_core::student::quantile;
use tenter_core::{
    Answer, Confidence, Construction, Demand, Ends, Evaluation, Figure, Figures, Grain, Length, Limit, Load, Looks,
    PullTest, Range, Ratio, Rules, Scale, Scatter, Sitting, days, retests,
};

use crate::assert_near;

const VECTORS: &str = include_str!("../../data/model-vectors.csv");

struct Row {
    ask: String,
    test: PullTest,
    rules: Rules,
    limit: Limit,
    value: f64,
    u_here: f64,
    dof_here: f64,
    u_day: f64,
    dof_day: f64,
    chance: f64,
    ends: [f64; 2],
    monte_carlo: f64,
}

fn millimetres(text: &str) -> Length {
    let steps = text.parse::<f64>().unwrap() * f64::from(Length::STEPS_PER_MM);
    #[allow(clippy::cast_possible_truncation)] // Under ten metres.
    let rounded = steps.round() as i32;
    assert!((steps - f64::from(rounded)).abs() < 1e-6, "{text} mm is no whole number of steps");
    Length::from_steps(rounded)
}

fn rows() -> Vec<Row> {
    let data = VECTORS.lines().filter(|line| !line.starts_with('#')).skip(1);
    data.map(|line| {
        let cell: Vec<&str> = line.split(',').collect();
        let number = |index: usize| cell[index].parse::<f64>().unwrap();
        let lengths = |index: usize| cell[index].split_whitespace().map(millimetres).collect::<Vec<_>>();
        let (looks, pulls, rests) = (lengths(1), lengths(2), lengths(3));
        let mut test = PullTest::new(looks[0], Grain::Crosswise)
            .and_then(|test| test.with_scale(Scale::new(millimetres(cell[4]), Ends::One).unwrap()))
            .unwrap()
            .with_settling_pull(cell[6] == "1");
        if cell[5] == "load" {
            test = test.with_load(Load::Force { millinewtons: 5_000 });
        }
        for look in &looks[1..] {
            test.add_look(*look).unwrap();
        }
        for (index, pull) in pulls.iter().enumerate() {
            test.add_pull(*pull).unwrap();
            // The last readings after the last pulls; one after the first where there is one.
            if let Some(rest) = rests.get(index) {
                test.add_rest(1800, *rest).unwrap();
            }
        }
        let construction = match cell[7] {
            "knit" => Construction::Knit,
            "woven" => Construction::Woven,
            _ => Construction::Other,
        };
        Row {
            ask: cell[0].to_owned(),
            test,
            rules: Rules { construction, ..Rules::default() },
            limit: Limit::parse(&format!("{}%", cell[8]), tenter_core::Unit::Mm).unwrap(),
            value: number(9),
            u_here: number(10),
            dof_here: number(11),
            u_day: number(12),
            dof_day: number(13),
            chance: number(14),
            ends: [number(15), number(16)],
            monte_carlo: number(17),
        }
    })
    .collect()
}

fn figure(row: &Row) -> Figure {
    let figures = Evaluation::of(&row.test, &Demand::default(), &row.rules).unwrap().figures;
    match row.ask.as_str() {
        "stretch" => figures.stretch,
        "growth" => figures.rest.unwrap().growth,
        _ => figures.rest.unwrap().recovery.unwrap(),
    }
}

#[test]
fn figures_and_their_worth() {
    let rows = rows();
    assert_eq!(rows.len(), 34);
    for row in &rows {
        let (figure, name) = (figure(row), format!("{} {:?}", row.ask, row.test));
        assert_near(figure.percent(), row.value, 2e-5 * row.value.abs().max(1.0), &name);
        assert_near(figure.here.u, row.u_here, 2e-5 * row.u_here, &name);
        assert_near(figure.here.dof, row.dof_here, 1e-4 * row.dof_here, &name);
        assert_near(figure.u, row.u_day, 2e-5 * row.u_day, &name);
        assert_near(figure.dof, row.dof_day, 1e-4 * row.dof_day, &name);
        let (low, high) = figure.interval(Confidence::default());
        let width = row.ends[1] - row.ends[0];
        assert_near(low, row.ends[0], 1e-3 + 2e-5 * width, &name);
        assert_near(high, row.ends[1], 1e-3 + 2e-5 * width, &name);
    }
}

/// The last column is a Monte Carlo after JCGM 101: it shows what it costs to take a sum of t-distributions as one.
#[test]
fn chances() {
    for row in &rows() {
        let (figure, name) = (figure(row), format!("{} {:?}", row.ask, row.test));
        let chance = figure.chance_at_least(row.limit.ratio());
        assert_near(chance, row.chance, 2e-5, &name);
        assert_near(chance, row.monte_carlo, 0.0035, &name);
        if row.chance == 0.5 {
            assert_eq!(chance, 0.5, "on the limit is a toss, exactly: {name}");
        }
    }
}

/// The value to reach is read from the readings as whole numbers: 250 mm to 262.5 mm on any number of looks is 5 %.
#[test]
fn exactly_on_the_limit_with_several_looks() {
    let mut test = PullTest::new(Length::from_mm(250), Grain::Crosswise).unwrap().with_settling_pull(true);
    test.add_look(Length::from_mm(251)).unwrap();
    test.add_look(Length::from_mm(249)).unwrap();
    for extended in [262, 263] {
        test.add_pull(Length::from_mm(extended)).unwrap();
    }
    let demand =
        Demand::for_grain(Grain::Crosswise, Range { at_least: Limit::milli_percent(5_000).ok(), at_most: None });
    let part = Evaluation::of(&test, &demand, &Rules::default()).unwrap().parts[0];
    assert_eq!(part.chance, Some(0.5));
}

#[test]
fn odd_readings_and_trends() {
    let odd: [(&[f32], f32, usize, f64); 7] = [
        (&[5.0, 15.0, 6.0], 0.7, 1, 3.905_31e-5),
        (&[6.0, 26.0, 6.5, 6.2], 0.8, 1, 1.949_09e-8),
        (&[10.0, 20.0, 30.0], 2.0, 0, 0.007_534_66),
        (&[25.0, 22.0, 20.0], 2.2, 0, 0.173_012),
        (&[5.0, 5.0, 6.0], 0.6, 2, 0.877_379),
        (&[8.0, 8.4, 7.6, 8.2, 11.5], 0.62, 4, 0.005_664_02),
        (&[5.0, 9.0], 0.62, 0, 0.008_832_29),
    ];
    for (readings, variance, index, tail) in odd {
        let found = farthest(readings, PriorVariance { variance, dof: 7.0 }).unwrap();
        assert_eq!(found.index, index, "{readings:?}");
        assert_near(found.tail(), tail, 3e-4 * tail + 1e-6, format!("{readings:?}"));
        assert_eq!(found.is_odd(), tail < 0.005, "{readings:?}");
    }
    let trends: [(&[f32], f32, f64, f64); 6] = [
        (&[5.0, 15.0, 6.0], 0.7, 0.5, 0.810_425),
        (&[6.0, 26.0, 6.5, 6.2], 0.8, -1.89, 0.468_711),
        (&[10.0, 20.0, 30.0], 2.0, 10.0, 5.145_27e-6),
        (&[25.0, 22.0, 20.0], 2.2, -2.5, 0.035_006_1),
        (&[5.0, 5.0, 6.0], 0.6, 0.5, 0.366_545),
        (&[8.0, 8.4, 7.6, 8.2, 11.5], 0.62, 0.68, 0.052_792_1),
    ];
    for (readings, variance, slope, tail) in trends {
        let found = trend(readings, PriorVariance { variance, dof: 7.0 }).unwrap();
        assert_near(found.off, slope, 1e-5 * slope.abs() + 1e-5, format!("{readings:?}"));
        assert_near(found.tail(), tail, 3e-4 * tail + 1e-6, format!("{readings:?}"));
    }
}

#[test]
fn quantiles() {
    let dofs = [4.5, 5.0, 7.0, 8.0, 10.5, 15.0, 30.0, 1e5];
    let known = [
        (0.05, [2.065_576, 2.015_048, 1.894_579, 1.859_548, 1.803_743, 1.753_050, 1.697_261, 1.644_869], 5e-5),
        (0.025, [2.658_912, 2.570_582, 2.364_624, 2.306_004, 2.213_840, 2.131_450, 2.042_272, 1.959_988], 1.2e-4),
        (0.015, [3.128_577, 3.002_875, 2.714_573, 2.633_814, 2.508_078, 2.397_005, 2.278_262, 2.170_121], 3e-4),
        (0.01, [3.527_051, 3.364_930, 2.997_952, 2.896_459, 2.739_672, 2.602_480, 2.457_262, 2.326_385], 4e-4),
        (0.0025, [5.117_219, 4.773_341, 4.029_337, 3.832_519, 3.536_577, 3.286_039, 3.029_798, 2.807_096], 1.6e-3),
    ];
    for (tail, quantiles, relative) in known {
        for (dof, expected) in dofs.into_iter().zip(quantiles) {
            assert_near(quantile(tail, dof), expected, relative * expected, format!("{tail} at {dof}"));
        }
    }
}

#[test]
fn sums_of_errors() {
    let known = [
        (&[(1.0, 7.0), (1.0, 7.0)][..], 2.24, 10.0),
        (&[(1.0, 7.0), (2.0, 8.0), (0.5, 9.0)], 3.975, 12.823_3),
        (&[(1.0, 7.0), (1.0, 1e9)], 2.025_48, 12.816_3),
        (&[(3.0, 8.0)], 3.0, 8.0),
    ];
    for (parts, squared_scale, dof) in known {
        let (mut sum, mut total) = (Mixture::default(), 0.0);
        for (scale, dof) in parts {
            let variance = scale * dof / (dof - 2.0);
            total += variance;
            sum.add(variance, *dof);
        }
        assert_near(sum.dof(), dof, 1e-4 * dof, format!("{parts:?}"));
        assert_near(total * sum.narrowing(), squared_scale, 1e-4 * squared_scale, format!("{parts:?}"));
    }
}

/// Two days of one cloth weigh by their worth; two that differ by half contradict each other.
#[test]
fn several_days() {
    let day = |looks: [i16; 2], pulls: [i16; 3]| {
        let mut test = PullTest::new(Length::from_mm(looks[0]), Grain::Crosswise).unwrap().with_settling_pull(true);
        test.add_look(Length::from_mm(looks[1])).unwrap();
        for pull in pulls {
            test.add_pull(Length::from_mm(pull)).unwrap();
        }
        test
    };
    let days = [day([250, 250], [270, 271, 269]), day([250, 251], [272, 273, 271]), day([250, 250], [300, 302, 301])];
    let judged = |days: &[&PullTest]| {
        let sittings: Vec<Sitting<'_>> = days.iter().map(|day| Sitting::new(day)).collect();
        Evaluation::of_all(&sittings, &Demand::default(), &Rules::default()).unwrap()
    };
    let alone = [judged(&[&days[0]]), judged(&[&days[1]])].map(|one| one.figures.stretch);
    let both = judged(&[&days[0], &days[1]]);
    // The formulas of the combination, in f64, from the two figures.
    let [first, second] = alone.map(|one| {
        let middle = f64::from(alone[0].percent() + alone[1].percent()) / 2.0;
        let off = middle - f64::from(one.percent());
        let variance = f64::from(one.u).powi(2) + off * (f64::from(one.slope) + off * f64::from(one.curve));
        (f64::from(one.percent()), variance)
    });
    let weight = second.1 / (first.1 + second.1);
    let value = weight * first.0 + (1.0 - weight) * second.0;
    assert_near(both.figures.stretch.percent(), value, 1e-4, "weighted mean");
    assert_eq!((both.days, both.contradicts), (2, None));
    assert!(both.figures.stretch.u < alone[0].u.min(alone[1].u), "{both:?}");
    assert_eq!(judged(&[&days[0], &days[2]]).contradicts, Some(1));
    assert_eq!(judged(&[&days[2], &days[0], &days[1]]).contradicts, Some(0));
    let exact = Figure::exact(Ratio::new(1, 10).unwrap());
    assert_eq!(exact.here.u, 0.0);
}

/// Tests of one day share what the day does to the hand, so it does not average out between them. The formulas in f64:
/// the readings' own variances combine with a common scale, the day's is added once, and the sum is taken as one
/// t-distribution with the same variance and kurtosis.
#[test]
fn several_tests_of_one_day() {
    let mut test = PullTest::new(Length::from_mm(250), Grain::Crosswise).unwrap().with_settling_pull(true);
    test.add_look(Length::from_mm(250)).unwrap();
    for pull in [312, 313, 311] {
        test.add_pull(Length::from_mm(pull)).unwrap();
    }
    let judged = |days: &[Option<i32>]| {
        let sittings: Vec<Sitting<'_>> = days.iter().map(|day| Sitting { day: *day, ..Sitting::new(&test) }).collect();
        Evaluation::of_all(&sittings, &Demand::default(), &Rules::default()).unwrap()
    };
    let (alone, two_days) = (judged(&[Some(1)]).figures.stretch, judged(&[Some(1), Some(2)]));
    for count in [2, 3, 10] {
        let one_day = judged(&vec![Some(7); count]);
        assert_eq!((one_day.days, one_day.contradicts), (1, None));
        let (stretch, further) = (one_day.figures.stretch, f64::from(u32::try_from(count).unwrap()) - 1.0);
        // Readings that agree entirely: scale ν/(ν + n − 1), weights 1/n.
        let (own, dof) = (f64::from(alone.here.u).powi(2), f64::from(alone.here.dof));
        let here = own * dof / (dof + further) / (further + 1.0);
        assert_near(stretch.here.u, here.sqrt(), 2e-4 * here.sqrt(), format!("{count} tests, here"));
        let of_scale = |scale: f64, dof: f64| scale * dof / (dof - 2.0);
        let (here, here_dof) = (of_scale(here, dof + further), dof + further);
        let (hand, session_dof) = (f64::from(SESSION_HAND) * f64::from(alone.percent()), f64::from(SESSION_DOF));
        let day = of_scale(hand * hand, session_dof);
        let total = here + day;
        let sum_dof = 4.0 + total * total / (here * here / (here_dof - 4.0) + day * day / (session_dof - 4.0));
        let u = (total * (sum_dof - 2.0) / sum_dof).sqrt();
        assert_near(stretch.u, u, 5e-4 * u, format!("{count} tests of one day"));
        assert_near(stretch.dof, sum_dof, 2e-3 * sum_dof, format!("{count} tests of one day"));
        assert!(f64::from(stretch.u) > 0.9 * hand, "more tests of one day never take the day away");
    }
    assert_eq!(two_days.days, 2);
    assert!(two_days.figures.stretch.u < judged(&[Some(1), Some(1)]).figures.stretch.u);
    // A day that is not known is a day of its own.
    assert_eq!(judged(&[None, None]).days, 2);
    // A second test of one day is a further look; where two were planned, it is not.
    let chance = |looks: Looks, days: &[Option<i32>]| {
        let sittings: Vec<Sitting<'_>> = days.iter().map(|day| Sitting { day: *day, ..Sitting::new(&test) }).collect();
        let at_least = Limit::parse("21%", tenter_core::Unit::Mm).ok();
        let demand = Demand::for_grain(Grain::Crosswise, Range { at_least, at_most: None });
        Evaluation::of_all(&sittings, &demand, &Rules { looks, ..Rules::default() }).unwrap().parts[0]
    };
    let planned = chance(Looks { tests: 2, ..Looks::default() }, &[Some(1), Some(1)]);
    let further = chance(Looks::default(), &[Some(1), Some(1)]);
    assert_eq!(planned.chance, further.chance);
    assert!(planned.chance.unwrap() > 0.95 && planned.chance.unwrap() < 0.985, "{planned:?}");
    assert_eq!((planned.answer, further.answer), (Answer::Meets, Answer::Close));
}

/// What retests say of days, from tests: as from the figures of each day; a test by a mass, a doubted one and a second one
/// of the same day do not make a day more.
#[test]
fn retests_by_day() {
    let pulled = |extended: [i16; 3]| {
        let mut test = PullTest::new(Length::from_mm(200), Grain::Crosswise).unwrap().with_settling_pull(true);
        for extended in extended {
            test.add_pull(Length::from_mm(extended)).unwrap();
        }
        test
    };
    let tests = [pulled([240, 241, 240]), pulled([252, 251, 252]), pulled([246, 246, 245])];
    let on = |test, day| Sitting { day: Some(day), ..Sitting::new(test) };
    let figures: Vec<Figure> = tests.iter().map(|test| Figures::of(test, Scatter::ASSUMED).unwrap().stretch).collect();
    let three = [on(&tests[0], 1), on(&tests[1], 2), on(&tests[2], 3)];
    let said = |sittings: &[Sitting<'_>]| retests(sittings, Construction::Other);
    let (found, expected) = (said(&three), days(&figures));
    assert_near(found.session_dof as f32, expected.session_dof, 1e-4, "degrees of freedom");
    assert_near(found.session_sum as f32, expected.session_sum, 1e-3 * expected.session_sum, "sum");
    assert!(found.session_dof > 0.5 && found.dof == 0.0);
    let hung = tests[1].clone().with_load(Load::Force { millinewtons: 5_000 });
    assert_eq!(said(&[on(&tests[0], 1), on(&hung, 2)]).session_dof, 0.0);
    assert_eq!(said(&[on(&tests[0], 1), on(&tests[1], 1)]).session_dof, 0.0);
    // A cloth in two states is two cloths.
    let washed = Sitting { before_wash: true, ..on(&tests[0], 1) };
    assert_eq!(said(&[washed, on(&tests[1], 2)]).session_dof, 0.0);
    let released = {
        let mut test = tests[1].clone();
        test.add_rest(60, Length::from_mm(252)).unwrap();
        test
    };
    assert_eq!(said(&[on(&tests[0], 1), on(&released, 2)]).session_dof, 0.0, "a cloth that was not let go");
}
