//! The few `f32` functions that the uncertainties need, and the only places where numbers change kind.

use micromath::F32Ext;

/// Square root, rounded to the nearest `f32`; 0 for a negative or undefined argument.
pub(crate) fn sqrt(x: f32) -> f32 {
    // Above nothing and not undefined, by one comparison of whole numbers.
    if (1..=f32::INFINITY.to_bits()).contains(&x.to_bits()) { libm::sqrtf(x) } else { 0.0 }
}

/// Natural logarithm for `x` ≥ 1 by `micromath`, absolute error up to 6.2 × 10⁻⁵ (stated by the tests of this
/// file). Below 1 that function is off by up to 0.118, so ratios are turned round before they come here.
pub(crate) fn rough_ln(x: f32) -> f32 {
    F32Ext::ln(x.max(1.0))
}

/// The exponential by `micromath`, relative error up to 0.24 % on −10 … 10 (stated by the tests of this file).
pub(crate) fn rough_exp(x: f32) -> f32 {
    F32Ext::exp(x)
}

/// An integer as `f32`: the nearest representable value.
#[allow(clippy::cast_precision_loss)] // The one place where a count or a sum of steps becomes a float.
pub(crate) fn float(x: i64) -> f32 {
    x as f32
}

/// The nearest `f32`; infinite beyond its range.
#[allow(clippy::cast_possible_truncation)] // Digits are lost on purpose.
pub(crate) fn narrow(x: f64) -> f32 {
    x as f32
}

/// A length of a list as `i64`.
pub(crate) fn count(x: usize) -> i64 {
    i64::try_from(x).unwrap_or(i64::MAX)
}

/// A wide integer as `f32`, for the quotient of two exact sums.
#[allow(clippy::cast_precision_loss, clippy::cast_possible_truncation)] // The nearest float is what is wanted, and the halves fit.
pub(crate) fn float_wide(x: u128) -> f32 {
    // In two halves: the quotient of two small counts then needs no wide conversion, which is long on a small processor.
    const HALF: f32 = 4_294_967_296.0 * 4_294_967_296.0;
    match (x >> 64, x as u64) {
        (0, low) => low as f32,
        (high, low) => high as u64 as f32 * HALF + low as f32,
    }
}

/// The nearest whole number, ties away from zero; ends of the range for what lies beyond them, 0 for NaN.
#[allow(clippy::cast_possible_truncation)] // `as` saturates and maps NaN to 0: the wanted meaning.
pub(crate) fn round(x: f32) -> i64 {
    if x < 0.0 { (x - 0.5) as i64 } else { (x + 0.5) as i64 }
}

/// Quotient and rest; nothing and all of it for a divisor of zero.
pub(crate) fn divide(dividend: u64, divisor: u64) -> (u64, u64) {
    (dividend.checked_div(divisor).unwrap_or(0), dividend.checked_rem(divisor).unwrap_or(dividend))
}

// The next three are those of `libm` to the last digit or two, and quicker, since they are asked in part of its range only.

/// e to the power of `x` ≤ 0, to 3 × 10⁻⁷ of itself; 0 below −87.
#[allow(clippy::cast_possible_truncation, clippy::cast_precision_loss, clippy::cast_sign_loss)] // 0 ≤ halvings < 127.
pub(crate) fn exp_falling(x: f32) -> f32 {
    if x < -87.0 {
        return 0.0;
    }
    // 2⁻ⁿ e^r with |r| ≤ ½ ln 2, which is taken off in two parts so that r keeps its digits.
    let halvings = (0.5 - x * core::f32::consts::LOG2_E) as u32;
    let r = x + halvings as f32 * 0.693_359_4 - halvings as f32 * 2.121_944_4e-4;
    let series = [1.0 / 720.0, 1.0 / 120.0, 1.0 / 24.0, 1.0 / 6.0, 0.5, 1.0];
    let power = 1.0 + r * series.into_iter().fold(0.0, |sum, coefficient| sum * r + coefficient);
    power * f32::from_bits((127 - halvings) << 23)
}

/// The natural logarithm of 1 + `x`, `x` ≥ 0, to 3 × 10⁻⁷ of itself.
#[allow(clippy::cast_precision_loss)] // An exponent.
pub(crate) fn ln_1p(x: f32) -> f32 {
    let sum = 1.0 + x;
    if sum == 1.0 {
        return x;
    }
    // 2ᵉ m with √½ ≤ m < √2; the logarithm of m is twice the area tangent of (m − 1)/(m + 1).
    let exponent = sum.to_bits().wrapping_sub(0x3F35_04F3).cast_signed() >> 23;
    let m = f32::from_bits(sum.to_bits().wrapping_sub((exponent << 23).cast_unsigned()));
    let s = (m - 1.0) / (m + 1.0);
    let series = [1.0 / 9.0, 1.0 / 7.0, 0.2, 1.0 / 3.0, 1.0];
    let area = s * series.into_iter().fold(0.0, |sum, coefficient| sum * (s * s) + coefficient);
    let ln = 2.0 * area + exponent as f32 * core::f32::consts::LN_2;
    // What was lost when 1 was added: Kahan's correction.
    ln * (x / (sum - 1.0))
}

/// The arc tangent of 0 ≤ `x` ≤ 10⁶, to 4 × 10⁻⁷.
pub(crate) fn atan(mut x: f32) -> f32 {
    // Three times half the angle, then the series.
    for _ in 0..3 {
        x /= 1.0 + sqrt(1.0 + x * x);
    }
    let series = [1.0 / 9.0, -1.0 / 7.0, 0.2, -1.0 / 3.0, 1.0];
    8.0 * x * series.into_iter().fold(0.0, |sum, coefficient| sum * (x * x) + coefficient)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Points spread evenly in the logarithm over 10⁻⁶ … 10⁶.
    fn spread() -> impl Iterator<Item = f32> {
        (0..=24_000).map(|i| libm::powf(10.0, f32::from(i16::try_from(i - 12_000).unwrap()) / 2000.0))
    }

    /// IEEE 754 asks for the nearest, which the processor's own root is.
    #[test]
    fn root_is_the_nearest() {
        let tiny = [f32::MIN_POSITIVE, f32::MIN_POSITIVE / 8.0, f32::from_bits(1), f32::MAX, 4.0, 2.0, 0.25];
        for x in spread().chain(tiny) {
            assert_eq!(sqrt(x), x.sqrt(), "root of {x}");
        }
        assert_eq!((sqrt(0.0), sqrt(-0.0), sqrt(-1.0), sqrt(f32::NAN)), (0.0, 0.0, 0.0, 0.0));
        assert_eq!(sqrt(f32::INFINITY), f32::INFINITY);
    }

    #[test]
    fn micromath_errors_are_as_stated() {
        for x in spread().filter(|x| *x >= 1.0 && *x < 10_000.0) {
            assert!((rough_ln(x) - libm::logf(x)).abs() < 6.3e-5, "ln of {x}");
        }
        for i in -1000..=1000i16 {
            let x = f32::from(i) / 100.0;
            let exact = libm::expf(x);
            assert!((rough_exp(x) - exact).abs() < 2.5e-3 * exact, "exp of {x}");
        }
    }

    /// Against `libm`, whose errors are below a unit in the last place.
    #[test]
    fn exponentials_and_arcs_against_libm() {
        for x in spread() {
            assert!((ln_1p(x) - libm::log1pf(x)).abs() <= 3e-7 * libm::log1pf(x), "ln of 1 + {x}");
            assert!((atan(x) - libm::atanf(x)).abs() <= 4e-7, "arc tangent of {x}");
            if x < 87.0 {
                let exact = libm::expf(-x);
                assert!((exp_falling(-x) - exact).abs() <= 3e-7 * exact, "exp of -{x}");
            }
        }
        assert_eq!((exp_falling(0.0), exp_falling(-88.0), exp_falling(-f32::INFINITY)), (1.0, 0.0, 0.0));
        assert_eq!((ln_1p(0.0), atan(0.0)), (0.0, 0.0));
        assert!(ln_1p(1e12).is_finite());
    }

    #[test]
    fn division() {
        let numbers = [1, 2, 3, 7, 10, 255, 1 << 32, 1_000_000_007, u64::MAX >> 1, 1 << 63];
        for dividend in numbers.into_iter().chain([0, u64::MAX, u64::MAX - 1]) {
            for divisor in numbers {
                assert_eq!(divide(dividend, divisor), (dividend / divisor, dividend % divisor));
            }
            assert_eq!(divide(dividend, 0), (0, dividend));
        }
    }

    #[test]
    fn rounding() {
        let pairs = [(0.4, 0), (0.5, 1), (-0.5, -1), (2.5, 3), (f32::NAN, 0), (f32::INFINITY, i64::MAX)];
        for (x, whole) in pairs {
            assert_eq!(round(x), whole, "{x}");
        }
    }
}
