//! A share of a length, in whole steps.

use crate::length::Length;

/// To which whole step.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Round {
    Down,
    Nearest,
    Up,
}

/// `length` · `num` / `den`; none unless `den` is positive and the result fits. Exact in 128 bits, since the difference of two
/// measured ratios has terms of up to 57.
pub(crate) fn scaled(length: Length, num: i64, den: i64, round: Round) -> Option<Length> {
    if den <= 0 {
        return None;
    }
    let (product, den) = (i128::from(length.steps()) * i128::from(num), i128::from(den));
    let down = product.checked_div_euclid(den)?;
    let rest = product.checked_rem_euclid(den)?;
    let up = match round {
        Round::Down => false,
        Round::Nearest => rest >= den - rest,
        Round::Up => rest > 0,
    };
    i32::try_from(down + i128::from(up)).ok().map(Length::from_steps)
}

#[cfg(test)]
mod tests {
    use super::*;

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
