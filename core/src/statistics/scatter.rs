//! How much one pull differs from the next when nothing but the hand changed.

use crate::reading::construction::Construction;
use crate::reading::pull_test::PullTest;
use crate::statistics::assumed;
pub use crate::statistics::assumed::{ASSUMED_AT_ONE_PERCENT, ASSUMED_DOF, ASSUMED_EXPONENT};
use crate::statistics::repeatability::{ByConstruction, Pooled, Repeatability};
use crate::statistics::uncertainty::Variance;

/// What is known of the pull-to-pull scatter before the pulls of this test are looked at.
///
/// ```
/// use tenter_core::Scatter;
///
/// let hand = Scatter::known(0.8, 24.0).unwrap();
/// assert_ne!(hand, Scatter::default());
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct Scatter(Kind);

#[derive(Clone, Copy, Debug, Default, PartialEq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
enum Kind {
    #[default]
    Assumed,
    Known {
        points: f32,
        dof: f32,
    },
    Own(Repeatability),
    ScaleOnly,
}

impl Scatter {
    /// Nothing but open data on other cloths: [`ASSUMED_AT_ONE_PERCENT`] and its neighbours.
    pub const ASSUMED: Self = Self(Kind::Assumed);

    /// The scale's error alone: for a demonstration, or for cloth clamped in a frame that repeats itself.
    pub const SCALE_ONLY: Self = Self(Kind::ScaleOnly);

    /// A standard deviation from one's own earlier pulls, in points of stretch, with its degrees of freedom.
    ///
    /// None unless 0 < points ≤ 100 and 3 ≤ dof: a hand of which less is known is better assumed. More than a million
    /// degrees of freedom count as a million.
    ///
    /// ```
    /// assert!(tenter_core::Scatter::known(f32::NAN, 5.0).is_none());
    /// ```
    #[must_use]
    pub fn known(points: f32, dof: f32) -> Option<Self> {
        (points > 0.0 && points <= 100.0 && dof >= 3.0).then_some(Self(Kind::Known { points, dof: dof.min(1e6) }))
    }

    /// A person's own repeatability beside the assumption, each weighted with its degrees of freedom; the assumption
    /// alone where there is none.
    ///
    /// ```
    /// use tenter_core::{Repeatability, Scatter};
    ///
    /// let steady = Scatter::with(Repeatability::new(0.5, 22.5));
    /// assert!(steady.variance(10.0).u() < Scatter::ASSUMED.variance(10.0).u());
    /// ```
    #[must_use]
    pub const fn with(own: Option<Repeatability>) -> Self {
        match own {
            Some(own) => Self(Kind::Own(own)),
            None => Self::ASSUMED,
        }
    }

    /// Whether pulls are taken to repeat exactly.
    #[must_use]
    pub const fn is_scale_only(self) -> bool {
        matches!(self.0, Kind::ScaleOnly)
    }

    /// Whether it rests on the assumption alone.
    #[must_use]
    pub const fn is_assumed(self) -> bool {
        matches!(self.0, Kind::Assumed)
    }

    /// The variance of one pull, in points², for cloth that stretches by `stretch` percent.
    ///
    /// ```
    /// let ten = tenter_core::Scatter::ASSUMED.variance(10.0).u();
    /// assert!((ten - 1.08).abs() < 0.01);
    /// ```
    #[must_use]
    pub fn variance(self, stretch: f32) -> Variance {
        match self.0 {
            Kind::Assumed => assumed::variance(stretch),
            Kind::Own(own) => {
                let Variance { value, dof: assumed } = assumed::variance(stretch);
                let both = own.dof() + assumed;
                Variance { value: value * (assumed + own.dof() * own.ratio() * own.ratio()) / both, dof: both }
            }
            Kind::Known { points, dof } => Variance { value: points * points, dof },
            Kind::ScaleOnly => Variance::certain(0.0),
        }
    }
}

impl Pooled {
    /// The scatter to judge by: this repeatability beside the assumption, or the assumption alone.
    #[must_use]
    pub fn scatter(self) -> Scatter {
        Scatter::with(self.repeatability())
    }
}

impl ByConstruction {
    /// The scatter to judge a test by on cloth of this construction. The test's own pulls are left out, because an
    /// evaluation counts those itself.
    #[must_use]
    pub fn scatter_for(&self, construction: Construction, test: &PullTest) -> Scatter {
        self.on(construction).without(Pooled::of(test)).scatter()
    }
}
