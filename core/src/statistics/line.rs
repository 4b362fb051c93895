//! A straight line through weighted points.

use crate::number::num;

/// A point with its weight.
///
/// ```
/// let point = tenter_core::line::WeightedPoint { x: 1.0, y: 2.0, weight: 1.0 };
/// assert_eq!(point.weight, 1.0);
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WeightedPoint {
    /// Abscissa.
    pub x: f32,
    /// Ordinate.
    pub y: f32,
    /// Weight, above zero.
    pub weight: f32,
}

/// y = intercept + slope · x by least squares, with standard uncertainties from the residuals.
///
/// Formulas: JCGM 100:2008 § H.3, with weights. Sums are taken about the weighted mean, for `f32`'s sake.
///
/// ```
/// use tenter_core::line::{FittedLine, WeightedPoint};
///
/// let points = [(0.0, 1.0), (1.0, 3.0), (2.0, 5.0)].map(|(x, y)| WeightedPoint { x, y, weight: 1.0 });
/// let line = FittedLine::through(&points).unwrap();
/// assert_eq!((line.intercept, line.slope), (1.0, 2.0));
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FittedLine {
    /// Value at x = 0.
    pub intercept: f32,
    /// Rise per unit of x.
    pub slope: f32,
    /// Standard uncertainty of the intercept; none with two points.
    pub u_intercept: Option<f32>,
    /// Standard uncertainty of the slope; none with two points.
    pub u_slope: Option<f32>,
    /// Correlation of intercept and slope.
    pub correlation: f32,
    /// Standard deviation of the residuals; none with two points.
    pub residual: Option<f32>,
}

impl FittedLine {
    /// The line through two or more points with two or more different abscissas; none otherwise.
    ///
    /// ```
    /// assert!(tenter_core::line::FittedLine::through(&[]).is_none());
    /// ```
    #[must_use]
    pub fn through(points: &[WeightedPoint]) -> Option<Self> {
        let weights: f32 = points.iter().map(|p| p.weight).sum();
        let mean_x = points.iter().map(|p| p.weight * p.x).sum::<f32>() / weights;
        let mean_y = points.iter().map(|p| p.weight * p.y).sum::<f32>() / weights;
        let spread: f32 = points.iter().map(|p| p.weight * (p.x - mean_x) * (p.x - mean_x)).sum();
        let product: f32 = points.iter().map(|p| p.weight * (p.x - mean_x) * (p.y - mean_y)).sum();
        if !(spread.is_finite() && spread > 0.0) {
            return None;
        }
        let slope = product / spread;
        let off = |p: &WeightedPoint| (p.y - mean_y) - slope * (p.x - mean_x);
        let residuals: f32 = points.iter().map(|p| p.weight * off(p) * off(p)).sum();
        let free = num::float(num::count(points.len()) - 2);
        let variance = (free > 0.0).then(|| residuals / free);
        let at_zero = 1.0 / weights + mean_x * mean_x / spread;
        Some(Self {
            intercept: mean_y - slope * mean_x,
            slope,
            u_intercept: variance.map(|v| num::sqrt(v * at_zero)),
            u_slope: variance.map(|v| num::sqrt(v / spread)),
            correlation: -mean_x / num::sqrt(spread * at_zero),
            residual: variance.map(num::sqrt),
        })
    }

    /// The value at `x`.
    ///
    /// ```
    /// use tenter_core::line::{FittedLine, WeightedPoint};
    ///
    /// let points = [(0.0, 1.0), (2.0, 5.0)].map(|(x, y)| WeightedPoint { x, y, weight: 1.0 });
    /// assert_eq!(FittedLine::through(&points).unwrap().at(3.0), 7.0);
    /// ```
    #[must_use]
    pub fn at(&self, x: f32) -> f32 {
        self.intercept + self.slope * x
    }
}
