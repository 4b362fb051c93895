//! Readings that do not go with their fellows: one far off, or all of them rising or falling.
//!
//! Three readings are too few for Grubbs', Dixon's or any iterated robust rule: what three can say of their own scatter is
//! next to nothing. Here the scatter is pooled with what is known beforehand, which works from two on.

use crate::number::num;
use crate::statistics::student;

/// The chance of a false alarm in readings that are as assumed. The tool's own limit.
pub const ODD: f32 = 0.005;

/// Below this many standard deviations no tail of any number of degrees of freedom is under [`ODD`].
const SURELY_FINE: f32 = 2.8;

/// What is known beforehand of one reading: its variance, in the square of the readings' unit, and how well.
///
/// ```
/// use tenter_core::discordant::{PriorVariance, farthest};
///
/// let readings = [5.0, 9.0, 6.0];
/// // Odd for readings that are known to repeat, not for readings of which little is known.
/// assert!(farthest(&readings, PriorVariance { variance: 0.1, dof: 50.0 }).unwrap().is_odd());
/// assert!(!farthest(&readings, PriorVariance { variance: 0.1, dof: 1.0 }).unwrap().is_odd());
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PriorVariance {
    /// The squared scale.
    pub variance: f32,
    /// Its degrees of freedom.
    pub dof: f32,
}

/// A reading or a trend, with the chance of one as large by accident.
///
/// ```
/// use tenter_core::discordant::{PriorVariance, ODD, farthest};
///
/// let slip = farthest(&[5.0, 15.0, 6.0], PriorVariance { variance: 0.7, dof: 7.0 }).unwrap();
/// assert!(slip.off == 9.5 && slip.tail() < ODD);
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Discordant {
    /// Which reading, from 0; for a trend 0.
    pub index: usize,
    /// How far the reading lies from the mean of the others, or the slope from reading to reading.
    pub off: f32,
    /// How many standard deviations that is.
    pub t: f32,
    /// The degrees of freedom of `t`.
    pub dof: f32,
    /// In how many places it might as well have been.
    places: f32,
}

impl Discordant {
    /// The two-sided chance of one as large by accident.
    #[must_use]
    pub fn tail(&self) -> f32 {
        2.0 * self.places * student::upper_tail(self.t, self.dof)
    }

    /// Whether that is below [`ODD`].
    #[must_use]
    pub fn is_odd(&self) -> bool {
        self.t >= SURELY_FINE && self.tail() < ODD
    }
}

/// A reading or a trend before its root is drawn, which is long work for a small processor and seldom needed.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Suspect {
    index: usize,
    off: f32,
    /// The square of how far off it is, and the variance that is to be held against.
    square: f32,
    variance: f32,
    dof: f32,
    places: f32,
}

impl Suspect {
    /// The reading farthest from the mean of all of `n`, two at least; `squares` is Σ (x − mean)².
    pub fn reading(n: f32, (index, from_mean): (usize, f32), squares: f32, known: PriorVariance) -> Self {
        let off = from_mean * n / (n - 1.0);
        let dof = known.dof + n - 2.0;
        let others = (squares - off * from_mean).max(0.0);
        let variance = (known.dof * known.variance + others) / dof * n / (n - 1.0);
        let places = if n == 2.0 { 1.0 } else { n };
        Self { index, off, square: off * off, variance, dof, places }
    }

    /// The trend of `n` readings, three at least; `product` is Σ (place − middle place) (x − mean).
    pub fn trend(n: f32, product: f32, squares: f32, known: PriorVariance) -> Self {
        let slope = 12.0 * product / (n * (n * n - 1.0));
        let dof = known.dof + n - 2.0;
        let square = slope * product;
        let variance = (known.dof * known.variance + (squares - square).max(0.0)) / dof;
        Self { index: 0, off: slope, square, variance, dof, places: 1.0 }
    }

    /// Where it is odd.
    pub fn odd(self) -> Option<Discordant> {
        let suspicious = self.square >= SURELY_FINE * SURELY_FINE * self.variance;
        suspicious.then(|| self.discordant()).filter(Discordant::is_odd)
    }

    fn discordant(self) -> Discordant {
        let Self { index, off, dof, places, .. } = self;
        Discordant { index, off, t: num::sqrt(self.square / self.variance), dof, places }
    }
}

/// Whether `n` readings scatter so little that none of them is odd, nor their trend, told without a division: of `squares`,
/// Σ (x − mean)², one reading's part (x − mean)² n/(n − 1) is no more than all, and so is a slope's.
pub(crate) fn are_even(n: f32, squares: f32, known: PriorVariance) -> bool {
    /// A little less than the square of [`SURELY_FINE`], for what rounding does.
    const HARDLY_ODD: f32 = 2.79 * 2.79;
    squares * (known.dof + n - 2.0) < HARDLY_ODD * known.dof * known.variance
}

/// The reading farthest from the others: the externally studentised residual (Cook and Weisberg, *Residuals and Influence
/// in Regression*, 1982, from memory) on a pooled scale, after Bonferroni. `None` below two readings.
///
/// ```
/// use tenter_core::discordant::{PriorVariance, farthest};
///
/// let known = PriorVariance { variance: 0.7, dof: 7.0 };
/// let slip = farthest(&[5.0, 15.0, 6.0], known).unwrap();
/// assert!(slip.index == 1 && slip.is_odd());
/// assert!(!farthest(&[5.0, 5.0, 6.0], known).unwrap().is_odd());
/// ```
#[must_use]
pub fn farthest(readings: &[f32], known: PriorVariance) -> Option<Discordant> {
    let n = num::float(num::count(readings.len()));
    if n < 2.0 {
        return None;
    }
    let mean = readings.iter().sum::<f32>() / n;
    let squares: f32 = readings.iter().map(|x| (x - mean) * (x - mean)).sum();
    let mut worst = (0, 0.0f32);
    for (index, off) in readings.iter().map(|x| x - mean).enumerate() {
        if off.abs() > worst.1.abs() {
            worst = (index, off);
        }
    }
    Some(Suspect::reading(n, worst, squares, known).discordant())
}

/// How the readings rise or fall in their order: the slope of the straight line by least squares (JCGM 100:2008 § H.3),
/// on a pooled scale. `None` below three readings.
///
/// ```
/// use tenter_core::discordant::{PriorVariance, trend};
///
/// let known = PriorVariance { variance: 2.0, dof: 7.0 };
/// let creep = trend(&[10.0, 20.0, 30.0], known).unwrap();
/// assert!((creep.off - 10.0).abs() < 1e-5 && creep.is_odd());
/// ```
#[must_use]
pub fn trend(readings: &[f32], known: PriorVariance) -> Option<Discordant> {
    let n = num::float(num::count(readings.len()));
    if n < 3.0 {
        return None;
    }
    let mean = readings.iter().sum::<f32>() / n;
    let (mut product, mut squares, mut at) = (0.0, 0.0, -0.5 * (n - 1.0));
    for reading in readings {
        product += at * (reading - mean);
        squares += (reading - mean) * (reading - mean);
        at += 1.0;
    }
    Some(Suspect::trend(n, product, squares, known).discordant())
}
