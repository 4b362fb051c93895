//! The few `f32` functions that the uncertainties need, and the only places where numbers change kind.

use micromath::F32Ext;

/// Square root, good to 2 × 10⁻⁷ of its value; 0 for a negative or undefined argument.
///
/// `micromath`'s own root is a bit trick with errors up to 6.1 % (measured over 10⁻⁶ … 10⁶, and again by the tests
/// of this file), so it only seeds three Newton steps. Together they are a quarter of the size of a table-free
/// exact root on a Cortex-M0.
pub(crate) fn sqrt(x: f32) -> f32 {
    if x.is_nan() || x <= 0.0 {
        return 0.0;
    }
    if x.is_infinite() {
        return x;
    }
    let mut root = F32Ext::sqrt(x);
    for _ in 0..3 {
        root = 0.5 * (root + x / root);
    }
    root
}

/// `x` to the power `y` for `x` ≥ 1, by `micromath`: measured error up to 0.3 % for the exponents used here
/// (the tests of this file state it). Harmless where the quantity itself is known to a quarter at best.
pub(crate) fn rough_pow(x: f32, y: f32) -> f32 {
    F32Ext::powf(x.max(1.0), y)
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

/// A length of a list as `i64`.
pub(crate) fn count(x: usize) -> i64 {
    i64::try_from(x).unwrap_or(i64::MAX)
}

/// A wide integer as `f32`, for the quotient of two exact sums.
#[allow(clippy::cast_precision_loss, clippy::cast_possible_truncation)] // As above; the halves are what is wanted.
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

#[cfg(test)]
mod tests {
    use super::*;

    /// Points spread evenly in the logarithm over 10⁻⁶ … 10⁶.
    fn spread() -> impl Iterator<Item = f32> {
        (0..=24_000).map(|i| libm::powf(10.0, f32::from(i16::try_from(i - 12_000).unwrap()) / 2000.0))
    }

    #[test]
    fn root_against_libm() {
        let mut seed_error = 0f32;
        for x in spread() {
            let exact = libm::sqrtf(x);
            assert!((sqrt(x) - exact).abs() <= 2e-7 * exact, "root of {x}");
            seed_error = seed_error.max((F32Ext::sqrt(x) - exact).abs() / exact);
        }
        assert!(seed_error > 0.05 && seed_error < 0.062, "micromath alone is off by {seed_error}");
        assert_eq!((sqrt(0.0), sqrt(-1.0), sqrt(f32::NAN)), (0.0, 0.0, 0.0));
        assert_eq!(sqrt(f32::INFINITY), f32::INFINITY);
        assert!(sqrt(f32::MIN_POSITIVE / 8.0) >= 0.0);
    }

    #[test]
    fn micromath_errors_are_as_stated() {
        for x in spread().filter(|x| *x >= 1.0 && *x < 10_000.0) {
            assert!((rough_ln(x) - libm::logf(x)).abs() < 6.3e-5, "ln of {x}");
            let exact = libm::powf(x, 0.37);
            assert!((rough_pow(x, 0.37) - exact).abs() < 3e-3 * exact, "{x} to the power 0.37");
        }
        for i in -1000..=1000i16 {
            let x = f32::from(i) / 100.0;
            let exact = libm::expf(x);
            assert!((rough_exp(x) - exact).abs() < 2.5e-3 * exact, "exp of {x}");
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
