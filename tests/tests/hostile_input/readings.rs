//! Pull tests from any readings in any order.

use proptest::prelude::*;
use tenter_core::{Grain, Length, MAX_LENGTH, MAX_PULLS, MAX_REST_SECONDS, MAX_RESTS, PullTest, forecast};

use crate::given::{self, Act};

/// What holds for every test at every moment.
fn assert_valid(test: &PullTest) {
    let gauge = i64::from(test.gauge().steps());
    assert!(gauge > 0 && test.gauge() <= MAX_LENGTH);
    assert!(test.pulls().len() <= MAX_PULLS && test.rests().len() <= MAX_RESTS);
    for pull in test.pulls() {
        assert!(*pull >= test.gauge() && *pull <= MAX_LENGTH && i64::from(pull.steps()) <= 4 * gauge);
    }
    for rest in test.rests() {
        let pull = test.pulls()[usize::from(rest.after_pull)];
        assert!(rest.recovered <= pull && 10 * i64::from(rest.recovered.steps()) >= 9 * gauge);
        assert!(rest.seconds <= MAX_REST_SECONDS);
    }
    let keys: Vec<_> = test.rests().iter().map(|rest| (rest.after_pull, rest.seconds)).collect();
    assert!(keys.windows(2).all(|pair| pair[0] < pair[1]), "{keys:?}");
}

/// How many readings there are besides the first look.
fn readings(test: &PullTest) -> usize {
    test.pulls().len() + test.rests().len() + test.looks().count() - 1
}

fn assert_stays_valid(mut test: PullTest, acts: &[Act]) {
    for act in acts {
        let before = test.clone();
        let taken = act.on(&mut test);
        assert_valid(&test);
        let (was, is) = [&before, &test].map(readings).into();
        match act {
            _ if !taken => assert_eq!(before, test),
            Act::Undo => assert_eq!(is + 1, was),
            _ => assert_eq!(is, was + 1),
        }
    }
}

proptest! {
    #[test]
    fn any_readings_keep_a_test_valid(gauge: i32, near in given::gauge(), acts in given::any_acts()) {
        for gauge in [gauge, near] {
            let test = PullTest::new(Length::from_steps(gauge), Grain::Bias);
            prop_assert_eq!(test.is_ok(), (given::LEAST..=given::MOST).contains(&gauge));
            if let Ok(test) = test {
                assert_stays_valid(test, &acts);
            }
        }
    }

    #[test]
    fn likely_readings_keep_a_test_valid(
        (gauge, acts) in given::gauge().prop_flat_map(|gauge| (Just(gauge), given::acts(gauge))),
    ) {
        assert_stays_valid(PullTest::new(Length::from_steps(gauge), Grain::Bias).unwrap(), &acts);
    }

    #[test]
    fn undo_takes_everything_back(mut test in given::test()) {
        for _ in 0..readings(&test) {
            prop_assert!(test.undo());
            assert_valid(&test);
        }
        prop_assert!(!test.undo());
    }

    #[test]
    fn growth_to_come_is_never_above_growth_now(
        (gauge, extended, first, last) in (50..500i32, 20..300i32, 0..100i32, 0..100i32),
        (early, late, seconds) in (30..400u32, 300..40_000u32, prop_oneof![Just(3600), any::<u32>()]),
    ) {
        let length = |steps| Length::from_steps(steps);
        let gauge = gauge * 1600;
        let mut test = PullTest::new(length(gauge), Grain::Bias).unwrap();
        let extended = gauge + gauge / 100 * extended;
        test.add_pull(length(extended)).unwrap();
        for (seconds, grown) in [(early, first), (late, last)] {
            let _ = test.add_rest(seconds, length(gauge + (extended - gauge) / 100 * grown));
        }
        if let Ok(forecast) = forecast::forecast(&test, seconds) {
            let newest = test.rests().last().unwrap();
            let now = (newest.recovered.mm() - test.gauge().mm()).max(0.0) * 100.0 / test.gauge().mm();
            prop_assert!(newest.seconds < seconds);
            prop_assert!(forecast.percent >= 0.0 && forecast.percent <= now * 1.000_001, "{forecast:?}, now {now}");
            prop_assert!(forecast.half_width > 0.0 && forecast.half_width.is_finite());
        }
    }

    #[test]
    fn any_forecast_is_a_number(test in given::test(), seconds: u32) {
        if let Ok(forecast) = forecast::forecast(&test, seconds) {
            prop_assert!(forecast.percent.is_finite() && forecast.percent >= 0.0, "{forecast:?}");
            prop_assert!(forecast.half_width > 0.0 && forecast.half_width.is_finite(), "{forecast:?}");
        }
    }
}
