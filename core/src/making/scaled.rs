//! A share of a length, in whole steps.

use crate::number::num;
use crate::reading::length::Length;

/// To which whole step.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Round {
    Down,
    Nearest,
    Up,
}

/// `length` · `above` / `den`; none unless `den` is positive and the result fits. Exact, though the difference of two
/// measured ratios has terms of up to 57 bits: bit by bit, since a small processor has no room for 128-bit division.
pub(crate) fn scaled(length: Length, above: i64, den: i64, round: Round) -> Option<Length> {
    let den = u64::try_from(den).ok().filter(|den| *den > 0)?;
    let (whole, part) = num::divide(above.unsigned_abs(), den);
    // Both below `den`, so their sum fits.
    let add = |size: u64, rest: u64, more: u64| {
        let sum = rest + more;
        if sum >= den { (size.saturating_add(1), sum - den) } else { (size, sum) }
    };
    let (mut size, mut rest) = (0u64, 0u64);
    for bit in (0..u32::BITS).rev() {
        (size, rest) = add(size.saturating_mul(2), rest, rest);
        if length.steps().unsigned_abs() >> bit & 1 == 1 {
            (size, rest) = add(size.saturating_add(whole), rest, part);
        }
    }
    let is_negative = (length.steps() < 0) != (above < 0);
    let from_zero = match (round, is_negative) {
        (Round::Down, false) | (Round::Up, true) => false,
        (Round::Nearest, false) => rest >= den - rest,
        (Round::Nearest, true) => rest > den - rest,
        (Round::Up, false) | (Round::Down, true) => rest > 0,
    };
    let size = i64::try_from(size.saturating_add(from_zero.into())).ok()?;
    i32::try_from(if is_negative { -size } else { size }).ok().map(Length::from_steps)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        /// Against division in 128 bits.
        #[test]
        fn exact(steps: i32, num: i64, (small, large) in (1..1_000_000i64, 1..=i64::MAX), pick: bool) {
            let den = if pick { small } else { large };
            let wide = |round| {
                let (product, den) = (i128::from(steps) * i128::from(num), i128::from(den));
                let (down, rest) = (product.div_euclid(den), product.rem_euclid(den));
                let up = match round {
                    Round::Down => false,
                    Round::Nearest => 2 * rest >= den,
                    Round::Up => rest > 0,
                };
                i32::try_from(down + i128::from(up)).ok()
            };
            for round in [Round::Down, Round::Nearest, Round::Up] {
                prop_assert_eq!(scaled(Length::from_steps(steps), num, den, round).map(Length::steps), wide(round));
            }
        }
    }

    #[test]
    fn rounds_each_way_and_refuses_what_does_not_fit() {
        let ten = |num, den, round| scaled(Length::from_steps(10), num, den, round).map(Length::steps);
        assert_eq!([Round::Down, Round::Nearest, Round::Up].map(|round| ten(1, 3, round)), [Some(3), Some(3), Some(4)]);
        assert_eq!([Round::Down, Round::Nearest, Round::Up].map(|round| ten(1, 4, round)), [Some(2), Some(3), Some(3)]);
        assert_eq!([Round::Down, Round::Nearest, Round::Up].map(|round| ten(1, 5, round)), [Some(2); 3]);
        assert_eq!(ten(-1, 3, Round::Down), Some(-4));
        assert_eq!(ten(i64::MAX, i64::MAX, Round::Nearest), Some(10));
        for (num, den) in [(1, 0), (1, -1), (i64::MAX, 1), (1 << 40, 1), (i64::MIN, i64::MIN)] {
            assert_eq!(ten(num, den, Round::Nearest), None, "{num}/{den}");
        }
    }
}
