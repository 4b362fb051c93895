//! The sum of errors whose variances are each known only roughly.

use crate::statistics::components::{PLACING_DOF, SESSION_DOF};

/// The variance of a t-distributed error from its squared scale: wider than the scale, by ν/(ν − 2).
///
/// `dof` must be above 2; infinitely many leave the scale as it is.
pub(crate) const fn variance_of_scale(squared_scale: f32, dof: f32) -> f32 {
    if dof.is_finite() { squared_scale * dof / (dof - 2.0) } else { squared_scale }
}

/// Degrees of freedom with what they make of a scale. Worked out once, because a division is long work for a small processor.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Degrees {
    pub count: f32,
    /// What turns a squared scale into a variance: ν/(ν − 2).
    pub up: f32,
    /// 1/(ν − 4), see [`Mixture`].
    tails: f32,
}

impl Degrees {
    const OF_PLACING: Self = Self::worked_out(PLACING_DOF);
    const OF_SESSION: Self = Self::worked_out(SESSION_DOF);

    /// `count` must be above 2.
    pub fn new(count: f32) -> Self {
        // Those that are assumed are met in every test.
        let assumed =
            [Self::OF_PLACING, Self::OF_SESSION].into_iter().find(|assumed| assumed.count.to_bits() == count.to_bits());
        assumed.unwrap_or_else(|| Self::worked_out(count))
    }

    const fn worked_out(count: f32) -> Self {
        Self { count, up: variance_of_scale(1.0, count), tails: tails(count) }
    }
}

const fn tails(dof: f32) -> f32 {
    1.0 / (dof - 4.0).max(1.0)
}

/// A sum of independent t-distributed errors, taken as one t-distribution with the same variance and kurtosis.
///
/// Two errors of 7 degrees of freedom each give one of 10. Welch and Satterthwaite's 14 come out a tenth too narrow in
/// the tails that answers are made of.
///
/// ```
/// use tenter_core::mixture::Mixture;
///
/// let mut both = Mixture::default();
/// for _ in 0..2 {
///     both.add(1.4, 7.0); // Squared scale 1, so a variance of 7/5.
/// }
/// assert!((both.dof() - 10.0).abs() < 1e-4 && (both.narrowing() - 0.8).abs() < 1e-5);
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Mixture {
    /// Σ variance.
    variance: f32,
    /// Σ variance² / (ν − 4): a sixth of the excess of the fourth moment.
    excess: f32,
}

impl Mixture {
    /// Adds an error by its variance and its degrees of freedom, which count as 5 at least.
    pub fn add(&mut self, variance: f32, dof: f32) {
        if variance != 0.0 {
            self.add_tails(variance, tails(dof));
        }
    }

    pub(crate) fn add_of(&mut self, variance: f32, degrees: &Degrees) {
        self.add_tails(variance, degrees.tails);
    }

    fn add_tails(&mut self, variance: f32, tails: f32) {
        self.variance += variance;
        self.excess += variance * variance * tails;
    }

    /// The degrees of freedom of the sum; infinitely many where every error is certain.
    #[must_use]
    pub fn dof(self) -> f32 {
        self.shape().0
    }

    /// What turns the variance of the sum into the squared scale of its t-distribution: (ν − 2)/ν.
    #[must_use]
    pub fn narrowing(self) -> f32 {
        self.shape().1
    }

    /// Both.
    pub(crate) fn shape(self) -> (f32, f32) {
        if self.excess > 0.0 {
            let dof = (4.0 + self.variance * self.variance / self.excess).min(1e6);
            (dof, 1.0 - 2.0 / dof)
        } else {
            (f32::INFINITY, 1.0)
        }
    }
}
