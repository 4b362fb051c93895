//! Where a figure lies in a picture.

/// How figures are spread along an axis.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Spread {
    /// The same room for every step.
    Even,
    /// By square root: more room near 0.
    Root,
    /// By logarithm: the same room for every doubling.
    Log,
}

/// An axis from `low` to `high`, drawn from `from` to `to`.
#[derive(Debug, Clone, Copy)]
pub struct Axis {
    low: f64,
    high: f64,
    from: f64,
    to: f64,
    spread: Spread,
}

impl Axis {
    /// An axis; `high` must lie above `low`.
    #[must_use]
    pub const fn new(spread: Spread, low: f64, high: f64, from: f64, to: f64) -> Self {
        Self { low, high, from, to, spread }
    }

    /// Where `value` is drawn: on the axis, at its end when the value lies beyond it.
    #[must_use]
    pub fn at(&self, value: f64) -> f64 {
        let share = (self.spread(value) - self.spread(self.low)) / (self.spread(self.high) - self.spread(self.low));
        let share = if share.is_nan() { 0.0 } else { share.clamp(0.0, 1.0) };
        self.from + share * (self.to - self.from)
    }

    fn spread(&self, value: f64) -> f64 {
        match self.spread {
            Spread::Even => value,
            Spread::Root => value.max(0.0).sqrt(),
            Spread::Log => value.max(1e-3).ln(),
        }
    }

    /// Whether `value` lies beyond the upper end.
    #[must_use]
    pub fn is_beyond(&self, value: f64) -> bool {
        value > self.high
    }

    /// Whether `value` lies before the lower end.
    #[must_use]
    pub fn is_before(&self, value: f64) -> bool {
        value < self.low
    }

    /// The lower end, as a figure.
    #[must_use]
    pub const fn low(&self) -> f64 {
        self.low
    }

    /// The upper end, as a figure.
    #[must_use]
    pub const fn high(&self) -> f64 {
        self.high
    }
}

/// The step of 1, 2 or 5 times a power of ten that divides `reach` into about `parts`.
#[must_use]
pub fn step(reach: f64, parts: f64) -> f64 {
    let wanted = (reach / parts).clamp(0.01, 1e5);
    let mut step = 0.01;
    for factor in [2.0, 2.5, 2.0].into_iter().cycle().take(24) {
        if step >= wanted * 0.999 {
            break;
        }
        step *= factor;
    }
    step
}

/// Where an axis from 0 ends: beyond everything that matters by a quarter, and beyond the upper end of a trust unless
/// that reaches twice as far; a whole number of steps.
#[must_use]
pub fn upper_end(most: f64, highest: f64) -> f64 {
    let most = most.max(4.0);
    let wanted = (most * 1.25).max(highest.min(most * 2.0) * 1.06);
    let step = step(wanted, 6.0);
    (wanted / step).ceil() * step
}

/// The multiples of `step` from `low` to `high`.
pub fn ticks(low: f64, high: f64, step: f64) -> impl Iterator<Item = f64> {
    let first = (low / step - 1e-6).ceil();
    (0..200_u32).map(move |k| (first + f64::from(k)) * step).take_while(move |tick| *tick <= high + step * 1e-6)
}

/// A count as a number to draw with.
#[must_use]
pub fn count(things: usize) -> f64 {
    u32::try_from(things).map_or(f64::from(u32::MAX), f64::from)
}

/// A number with at most two decimals (a hundredth of a pixel or of a millimetre). What is no number becomes 0.
#[must_use]
pub fn number(value: f64) -> String {
    let finite = if value.is_finite() { value.clamp(-1e6, 1e6) } else { 0.0 };
    let text = format!("{finite:.2}");
    let short = text.trim_end_matches('0').trim_end_matches('.');
    if short == "-0" { "0".to_owned() } else { short.to_owned() }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn steps_are_round() {
        for (reach, want) in [(10.0, 2.0), (12.0, 2.0), (30.0, 5.0), (100.0, 20.0), (1000.0, 200.0), (1.0, 0.2)] {
            assert!((step(reach, 6.0) - want).abs() < 1e-9, "{reach}: {}", step(reach, 6.0));
        }
        assert_eq!(ticks(-3.0, 10.0, 5.0).collect::<Vec<_>>(), [0.0, 5.0, 10.0]);
    }

    #[test]
    fn nothing_leaves_an_axis() {
        let axis = Axis::new(Spread::Even, 0.0, 10.0, 20.0, 120.0);
        for (value, want) in [(5.0, 70.0), (-5.0, 20.0), (1e9, 120.0), (f64::NAN, 20.0), (f64::INFINITY, 120.0)] {
            assert!((axis.at(value) - want).abs() < 1e-9, "{value}");
        }
    }
}
