//! The sum of errors whose variances are each known only roughly.

/// The variance of a t-distributed error from its squared scale: wider than the scale, by ν/(ν − 2).
///
/// `dof` must be above 2; infinitely many leave the scale as it is.
pub(crate) fn variance_of_scale(squared_scale: f32, dof: f32) -> f32 {
    if dof.is_finite() { squared_scale * dof / (dof - 2.0) } else { squared_scale }
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
        self.variance += variance;
        self.excess += variance * variance / (dof - 4.0).max(1.0);
    }

    /// The degrees of freedom of the sum; infinitely many where every error is certain.
    #[must_use]
    pub fn dof(self) -> f32 {
        if self.excess > 0.0 { (4.0 + self.variance * self.variance / self.excess).min(1e6) } else { f32::INFINITY }
    }

    /// What turns the variance of the sum into the squared scale of its t-distribution: (ν − 2)/ν.
    #[must_use]
    pub fn narrowing(self) -> f32 {
        let dof = self.dof();
        if dof.is_finite() { (dof - 2.0) / dof } else { 1.0 }
    }
}
