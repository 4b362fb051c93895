//! Variances with their degrees of freedom, and how they combine.

use crate::number::num;
use crate::statistics::stats::Series;

/// A variance and how well it is known: infinitely many degrees of freedom for one that is certain.
///
/// ```
/// use tenter_core::uncertainty::Variance;
///
/// assert_eq!(Variance::certain(4.0).u(), 2.0);
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Variance {
    /// The variance, in the square of the quantity's unit.
    pub value: f32,
    /// Its degrees of freedom.
    pub dof: f32,
}

impl Variance {
    /// A variance that is known beforehand, such as that of a scale reading.
    ///
    /// ```
    /// assert!(tenter_core::uncertainty::Variance::certain(1.0).dof.is_infinite());
    /// ```
    #[must_use]
    pub const fn certain(value: f32) -> Self {
        Self { value, dof: f32::INFINITY }
    }

    /// The same error seen through a sensitivity: `value` is multiplied by its square.
    ///
    /// ```
    /// use tenter_core::uncertainty::Variance;
    ///
    /// assert_eq!(Variance::certain(2.0).times(-3.0), Variance::certain(18.0));
    /// ```
    #[must_use]
    pub fn times(self, sensitivity: f32) -> Self {
        Self { value: self.value * sensitivity * sensitivity, ..self }
    }

    /// The same, but no smaller than `other`: readings that agree by chance are still read on a scale.
    ///
    /// ```
    /// use tenter_core::uncertainty::Variance;
    ///
    /// let lucky = Variance { value: 0.5, dof: 9.0 };
    /// assert_eq!(lucky.at_least(Variance::certain(2.0)), Variance { value: 2.0, dof: 9.0 });
    /// ```
    #[must_use]
    pub fn at_least(self, other: Self) -> Self {
        Self { value: self.value.max(other.value), ..self }
    }

    /// The variance of the mean of `count` such readings; unchanged for a count below one.
    ///
    /// ```
    /// use tenter_core::uncertainty::Variance;
    ///
    /// assert_eq!(Variance::certain(10.0).over(5), Variance::certain(2.0));
    /// ```
    #[must_use]
    pub fn over(self, count: i64) -> Self {
        Self { value: self.value / num::float(count.max(1)), ..self }
    }

    /// The standard uncertainty, the root of the variance.
    #[must_use]
    pub fn u(self) -> f32 {
        num::sqrt(self.value)
    }
}

/// Adds independent variances; the effective degrees of freedom after Welch and Satterthwaite (JCGM 100:2008 § G.4).
///
/// ```
/// use tenter_core::uncertainty::{Variance, sum};
///
/// let repeats = Variance { value: 1.0, dof: 4.0 };
/// let both = sum(&[repeats, Variance::certain(1.0)]);
/// assert_eq!((both.value, both.dof), (2.0, 16.0));
/// ```
#[must_use]
pub fn sum(parts: &[Variance]) -> Variance {
    let value: f32 = parts.iter().map(|part| part.value).sum();
    let uncertain: f32 = parts.iter().map(|part| part.value * part.value / part.dof).sum();
    // More than a million are as good as certain, but stay finite: only what is certain is infinitely well known.
    let dof = if uncertain > 0.0 { (value * value / uncertain).min(1e6) } else { f32::INFINITY };
    Variance { value, dof }
}

/// The variance of one reading: what the readings show, pooled with what is known beforehand, each with the weight
/// of its degrees of freedom. A prior that is certain stays as it is.
///
/// ```
/// use tenter_core::{stats::Series, uncertainty::{Variance, pooled}};
///
/// let readings: Series = [0, 2, 4].into_iter().collect();
/// let prior = Variance { value: 1.0, dof: 6.0 };
/// assert_eq!(pooled(&readings, prior), Variance { value: 14.0 / 8.0, dof: 8.0 });
/// ```
#[must_use]
pub fn pooled(readings: &Series, prior: Variance) -> Variance {
    match readings.variance() {
        Some(own) if prior.dof.is_finite() => {
            let own_dof = num::float(i64::from(readings.count()) - 1);
            let dof = own_dof + prior.dof;
            Variance { value: (own_dof * own + prior.dof * prior.value) / dof, dof }
        }
        _ => prior,
    }
}
