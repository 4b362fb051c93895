//! Student's t and the normal distribution, for any number of degrees of freedom from 1 to infinity.

use crate::number::num;

/// The chance that a t-distributed quantity exceeds `t`.
///
/// Hill's expansion (*Communications of the ACM* 13 (1970) 617, algorithm 395; from memory, compared with a
/// reference library to 2 × 10⁻⁵ by the tests) from 3 degrees of freedom on, the closed forms for 1 and 2, and the
/// normal distribution for infinitely many. Below 3, degrees of freedom are cut to the whole number, which errs on
/// the side of caution; below 1 they count as 1.
///
/// ```
/// use tenter_core::student::upper_tail;
///
/// assert!((upper_tail(1.645, f32::INFINITY) - 0.05).abs() < 1e-4);
/// assert!((upper_tail(2.132, 4.0) - 0.05).abs() < 1e-4);
/// ```
#[must_use]
pub fn upper_tail(t: f32, dof: f32) -> f32 {
    if t.is_nan() || dof.is_nan() {
        return 0.5;
    }
    if t < 0.0 {
        return 1.0 - upper_tail(-t, dof);
    }
    // Beyond, the tail is at most 3 × 10⁻⁷, and squares would overflow.
    let t = t.min(1e6);
    if dof < 2.0 {
        return 0.5 - num::atan(t) / core::f32::consts::PI;
    }
    if dof < 3.0 {
        // 1 − t/√(2 + t²) without cancellation.
        let root = num::sqrt(2.0 + t * t);
        return 1.0 / (root * (root + t));
    }
    normal_tail(normal_deviate(t, dof))
}

/// The chance that a normal quantity exceeds `z` ≥ 0, to 10⁻⁷.
///
/// Abramowitz and Stegun, *Handbook of Mathematical Functions* (1964), 26.2.17; the coefficients from memory, compared
/// with a reference library by the tests. A fifth of the room that an error function takes on a small processor.
fn normal_tail(z: f32) -> f32 {
    if z == 0.0 {
        return 0.5; // On the limit is a toss, exactly.
    }
    let t = 1.0 / (1.0 + 0.231_641_9 * z);
    let series = [1.330_274_4, -1.821_256, 1.781_477_9, -0.356_563_78, 0.319_381_53];
    let sum = series.into_iter().fold(0.0, |sum, coefficient| (sum + coefficient) * t);
    (0.398_942_3 * num::exp_falling(-0.5 * z * z) * sum).min(0.5)
}

/// The normal deviate with the same tail as `t`.
fn normal_deviate(t: f32, dof: f32) -> f32 {
    if dof > 1e6 {
        return t;
    }
    let a = dof - 0.5;
    let b = 48.0 * a * a;
    let y = a * num::ln_1p(t * t / dof);
    let series = (((-0.4 * y - 3.3) * y - 24.0) * y - 85.5) / (0.8 * y * y + 100.0 + b);
    ((series + y + 3.0) / b + 1.0) * num::sqrt(y)
}

/// The value that a t-distributed quantity exceeds with chance `tail` (0 < tail ≤ ½): the coverage factor.
///
/// From 5 degrees of freedom on by the expansion of Abramowitz and Stegun 26.7.5 about the normal quantile (relative error
/// up to 4 × 10⁻⁵ at 5 %, 1.5 × 10⁻³ at 0.25 %, against a reference library), with a correction below 8 degrees of freedom and
/// a tail of 1 %; below 5 by halving on [`upper_tail`], which takes twenty times as long. 0 for a tail of ½ or more.
///
/// ```
/// use tenter_core::student::quantile;
///
/// assert!((quantile(0.025, 4.0) - 2.776).abs() < 1e-3);
/// assert!((quantile(0.025, 10.0) - 2.228).abs() < 1e-3);
/// ```
#[must_use]
pub fn quantile(tail: f32, dof: f32) -> f32 {
    if tail.is_nan() || tail >= 0.5 {
        return 0.0;
    }
    if dof.is_nan() || dof < EXPANDED_FROM || tail < LEAST_EXPANDED {
        return halved(tail, dof);
    }
    let t = Tail::of(tail).quantile(dof);
    if dof < GOOD_FROM || tail < LEAST_GOOD { corrected(t, tail, dof) } else { t }
}

/// One step of the secant on [`upper_tail`].
fn corrected(t: f32, tail: f32, dof: f32) -> f32 {
    let (there, step) = (upper_tail(t, dof), 0.01 * t);
    let falls = (upper_tail(t + step, dof) - there) / step;
    if falls < 0.0 { t - (there - tail) / falls } else { t }
}

/// A tail whose quantile is asked for many numbers of degrees of freedom, 5 and more.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Tail {
    /// The normal quantile.
    z: f32,
    /// The terms in 1/ν of the expansion about it.
    terms: [f32; 4],
}

impl Tail {
    /// The tails of an answer that is 95 % sure, on one side and on two, which are asked for nearly always.
    const USUAL: [(f32, Self); 2] = [(0.05, Self::about(1.644_853_6)), (0.025, Self::about(1.959_964))];

    /// 20 %.
    pub const ONE_IN_5: Self = Self::about(0.841_621_2);

    /// A tail of 10⁻⁴ to ½.
    pub fn of(tail: f32) -> Self {
        let tail = tail.clamp(LEAST_EXPANDED, 0.5);
        let usual = Self::USUAL.into_iter().find(|(usual, _)| (tail - usual).abs() < 1e-7);
        usual.map_or_else(|| Self::about(nearer(rough_quantile(tail), tail)), |(_, usual)| usual)
    }

    const fn about(z: f32) -> Self {
        let y = z * z;
        let first = (y + 1.0) / 4.0;
        let second = ((5.0 * y + 16.0) * y + 3.0) / 96.0;
        let third = (((3.0 * y + 19.0) * y + 17.0) * y - 15.0) / 384.0;
        let fourth = ((((79.0 * y + 776.0) * y + 1482.0) * y - 1920.0) * y - 945.0) / 92_160.0;
        Self { z, terms: [first, second, third, fourth] }
    }

    /// The quantile of t from that of the normal distribution.
    pub fn quantile(self, dof: f32) -> f32 {
        if dof == f32::INFINITY {
            return self.z;
        }
        let (per_dof, [first, second, third, fourth]) = (1.0 / dof, self.terms);
        self.z * (1.0 + per_dof * (first + per_dof * (second + per_dof * (third + per_dof * fourth))))
    }
}

/// Degrees of freedom, and the tail, from which on the expansion is good.
const EXPANDED_FROM: f32 = 5.0;
const LEAST_EXPANDED: f32 = 1e-4;

/// Degrees of freedom, and the tail, from which on it is good to the digits of printed tables.
const GOOD_FROM: f32 = 8.0;
const LEAST_GOOD: f32 = 0.01;

/// Abramowitz and Stegun 26.2.23, to 4.5 × 10⁻⁴.
fn rough_quantile(tail: f32) -> f32 {
    // −2 ln tail, from the logarithm of a number above 1.
    let t = num::sqrt(2.0 * num::ln_1p(1.0 / tail - 1.0));
    let above = 2.515_517 + t * (0.802_853 + t * 0.010_328);
    let below = 1.0 + t * (1.432_788 + t * (0.189_269 + t * 0.001_308));
    t - above / below
}

/// One step of Newton's on [`normal_tail`].
fn nearer(z: f32, tail: f32) -> f32 {
    let density = 0.398_942_3 * num::exp_falling(-0.5 * z * z);
    z + (normal_tail(z) - tail) / density
}

fn halved(tail: f32, dof: f32) -> f32 {
    let (mut low, mut high) = (0.0, 2.0);
    while upper_tail(high, dof) > tail && high < 1e6 {
        low = high;
        high *= 2.0;
    }
    for _ in 0..32 {
        let middle = 0.5 * (low + high);
        if upper_tail(middle, dof) > tail {
            low = middle;
        } else {
            high = middle;
        }
    }
    0.5 * (low + high)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// What is kept of the usual tails is what is worked out for any other.
    #[test]
    fn usual_tails() {
        for (tail, usual) in Tail::USUAL {
            let worked_out = Tail::about(nearer(rough_quantile(tail), tail));
            for dof in [5.0, 7.0, 20.0, 1e6] {
                let (kept, found) = (usual.quantile(dof), worked_out.quantile(dof));
                assert!((kept / found - 1.0).abs() < 3e-6, "{tail} {dof}: {kept} {found}");
            }
        }
    }
}
