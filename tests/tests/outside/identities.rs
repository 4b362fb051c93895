//! The identities that follow from the definitions (stretch, growth: ASTM D6614; recovery: JIS L 1096 B-1), for any
//! lengths, with the exact rational numbers of `num-rational` as the other side.

use crate::figures;
use num_bigint::BigInt;
use num_rational::BigRational;
use num_traits::{One, Zero};
use proptest::prelude::*;
use proptest::test_runner::RngSeed;
use tenter_core::{Grain, Length, PullTest, Ratio, RestFigures, TestError};

fn settings() -> ProptestConfig {
    ProptestConfig { cases: 512, rng_seed: RngSeed::Fixed(1), failure_persistence: None, ..ProptestConfig::default() }
}

fn rational(num: i64, den: i64) -> BigRational {
    BigRational::new(BigInt::from(num), BigInt::from(den))
}

fn exact(ratio: Ratio) -> BigRational {
    rational(ratio.numerator(), ratio.denominator())
}

fn test_of(gauge: i32, extended: i32) -> PullTest {
    let mut test = PullTest::new(Length::from_steps(gauge), Grain::Crosswise).unwrap().with_settling_pull(true);
    test.add_pull(Length::from_steps(extended)).unwrap();
    test
}

fn rest_of(gauge: i32, extended: i32, recovered: i32) -> RestFigures {
    let mut test = test_of(gauge, extended);
    test.add_rest(60, Length::from_steps(recovered)).unwrap();
    figures(&test).rest.unwrap()
}

/// Gauge lengths from 1 mm to 1 m, extended up to threefold, recovered to anywhere from nine tenths of the gauge to
/// the extended length.
fn lengths() -> impl Strategy<Value = (i32, i32, i32)> {
    (1_600..1_600_000i32)
        .prop_flat_map(|gauge| (Just(gauge), gauge + 1..gauge * 3))
        .prop_flat_map(|(gauge, extended)| (Just(gauge), Just(extended), gauge - gauge / 10..=extended))
}

proptest! {
    #![proptest_config(settings())]

    #[test]
    fn definitions((gauge, extended, recovered) in lengths()) {
        let rest = rest_of(gauge, extended, recovered);
        let (l0, l1, l2) = (i64::from(gauge), i64::from(extended), i64::from(recovered));
        prop_assert_eq!(exact(figures(&test_of(gauge, extended)).stretch.ratio), rational(l1 - l0, l0));
        prop_assert_eq!(exact(rest.growth.ratio), rational(l2 - l0, l0));
        prop_assert_eq!(exact(rest.recovery.unwrap().ratio), rational(l1 - l2, l1 - l0));
    }

    /// G = S (1 − R), and the inverse form L2 = L1 − R (L1 − L0).
    #[test]
    fn growth_from_stretch_and_recovery((gauge, extended, recovered) in lengths()) {
        let rest = rest_of(gauge, extended, recovered);
        let stretch = exact(figures(&test_of(gauge, extended)).stretch.ratio);
        let back = exact(rest.recovery.unwrap().ratio);
        prop_assert_eq!(exact(rest.growth.ratio), stretch * (BigRational::one() - &back));
        let whole = |steps: i32| rational(steps.into(), 1);
        prop_assert_eq!(whole(extended) - back * whole(extended - gauge), whole(recovered));
    }

    /// As many 64ths of an inch as hundredths of a millimetre: the figures are the same.
    #[test]
    fn the_unit_does_not_matter(gauge in 2_000..5_000i32, more in 1..20_000i32, back in 0..20_000i32) {
        let more = more.min(3 * gauge); // More than 300 % is refused.
        let (extended, recovered) = (gauge + more, gauge + back.min(more));
        let stretch_in = |unit| figures(&test_of(gauge * unit, extended * unit)).stretch.ratio;
        let rest_in = |unit| rest_of(gauge * unit, extended * unit, recovered * unit);
        let (hundredth_mm, inch_64th) = (16, 635);
        prop_assert_eq!(stretch_in(hundredth_mm), stretch_in(inch_64th));
        let (mm, inch) = (rest_in(hundredth_mm), rest_in(inch_64th));
        prop_assert_eq!(mm.growth.ratio, inch.growth.ratio);
        prop_assert_eq!(mm.recovery.unwrap().ratio, inch.recovery.unwrap().ratio);
    }

    #[test]
    fn at_the_edges((gauge, extended, _) in lengths()) {
        let whole = rest_of(gauge, extended, gauge);
        prop_assert_eq!((exact(whole.growth.ratio), exact(whole.recovery.unwrap().ratio)), (zero(), one()));
        let none = rest_of(gauge, extended, extended);
        prop_assert_eq!(none.growth.ratio, figures(&test_of(gauge, extended)).stretch.ratio);
        prop_assert_eq!(exact(none.recovery.unwrap().ratio), zero());
        prop_assert!(rest_of(gauge, gauge, gauge).recovery.is_none());
    }

    /// Real cloth can come back shorter: kept, not cut off.
    #[test]
    fn below_the_gauge((gauge, extended, _) in lengths(), share in 1..=99i32) {
        let recovered = gauge - (gauge / 1000 * share).max(1);
        let rest = rest_of(gauge, extended, recovered);
        prop_assert!(exact(rest.growth.ratio) < zero());
        prop_assert!(exact(rest.recovery.unwrap().ratio) > one());
    }

    #[test]
    fn above_the_extended_length((gauge, extended, _) in lengths(), more in 1..100_000i32) {
        let refused = test_of(gauge, extended).add_rest(60, Length::from_steps(extended + more));
        prop_assert!(matches!(refused, Err(TestError::RecoveredAboveExtended { .. })), "{refused:?}");
    }

    /// Over several pulls the figures are those of the mean lengths.
    #[test]
    fn means((gauge, extended, _) in lengths(), more in proptest::collection::vec(0..10_000i32, 0..10)) {
        let mut test = test_of(gauge, extended);
        for more in &more {
            // More than 300 % is refused.
            test.add_pull(Length::from_steps((extended + more).min(4 * gauge))).unwrap();
        }
        let sum: i64 = test.pulls().iter().map(|length| i64::from(length.steps())).sum();
        let gauges = i64::from(gauge) * i64::try_from(test.pulls().len()).unwrap();
        prop_assert_eq!(exact(figures(&test).stretch.ratio), rational(sum - gauges, gauges));
    }

    #[test]
    fn order(a: i64, b in 1..=i64::MAX, c: i64, d in 1..=i64::MAX) {
        let (left, right) = (Ratio::new(a, b).unwrap(), Ratio::new(c, d).unwrap());
        prop_assert_eq!(left.cmp(&right), exact(left).cmp(&exact(right)));
    }

    /// Close together, where a quotient of floats would say equal.
    #[test]
    fn order_of_neighbours(a in 1..i64::MAX, b in 1..i64::MAX) {
        let (left, right) = (Ratio::new(a, b).unwrap(), Ratio::new(a - 1, b).unwrap());
        prop_assert!(left > right);
        let mirrored = Ratio::new(a, b + 1).unwrap();
        prop_assert_eq!(left.cmp(&mirrored), exact(left).cmp(&exact(mirrored)));
    }

    /// `BigRational::round` takes ties away from zero.
    #[test]
    fn rounding(num in -10_000_000_000..10_000_000_000i64, den in 1..=i64::MAX, decimals in 0..=6u8) {
        for den in [den, den % 5_000 + 1, 2_000] {
            let ratio = Ratio::new(num, den).unwrap();
            let unit = BigRational::from(BigInt::from(100 * 10i64.pow(decimals.into())));
            let rounded = (exact(ratio) * unit).round().to_integer();
            prop_assert_eq!(BigInt::from(ratio.percent(decimals).scaled()), rounded);
        }
    }
}

fn zero() -> BigRational {
    BigRational::zero()
}

fn one() -> BigRational {
    BigRational::one()
}
