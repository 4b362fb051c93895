//! How much one pull differs from the next when nothing but the hand changed.

use crate::number::num;
use crate::statistics::uncertainty::Variance;

/// Standard deviation of one pull at 1 % of stretch and below, in points of stretch.
///
/// Fitted, with [`ASSUMED_EXPONENT`] and [`ASSUMED_DOF`], by maximum likelihood to 150 readings in 39 pulls of eight
/// hand-knit swatches at 1, 2, 5 and 10 N (Singal et al., *Nature Communications* 15 (2024) 2622, data under MIT licence),
/// each group of up to five pulls of one swatch at one force giving a variance that is taken to follow
/// σ² · F(n − 1, ν). By band of stretch the same data pool to 0.5 points below 5 %, 1.1 from 5 to 12 %, 1.8 from 12
/// to 50 % and 2.8 above; the curve replaces those steps. `tenter-tests` fits it again on each test run.
///
/// ```
/// assert_eq!(tenter_core::scatter::ASSUMED_AT_ONE_PERCENT, 0.46);
/// ```
pub const ASSUMED_AT_ONE_PERCENT: f32 = 0.46;

/// The power of the stretch with which the assumed standard deviation grows.
///
/// ```
/// assert_eq!(tenter_core::scatter::ASSUMED_EXPONENT, 0.37);
/// ```
pub const ASSUMED_EXPONENT: f32 = 0.37;

/// What the assumption is worth: as much as a standard deviation of one's own with this many degrees of freedom.
///
/// ```
/// assert_eq!(tenter_core::scatter::ASSUMED_DOF, 7.5);
/// ```
pub const ASSUMED_DOF: f32 = 7.5;

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
    Hand(Hand),
    ScaleOnly,
}

/// How steadily one person pulls: her own pull-to-pull scatter beside the assumed one.
///
/// ```
/// use tenter_core::scatter::Hand;
///
/// // Her own pulls, pooled over 22.5 degrees of freedom, scatter half as much as assumed.
/// let steady = Hand::new(0.5, 22.5).unwrap();
/// assert_eq!(steady.share(), 0.75); // Three quarters of what is known of the scatter is hers.
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct Hand {
    ratio: f32,
    dof: f32,
}

impl Hand {
    /// Her own standard deviation as a multiple of the assumed one, pooled over all cloths as
    /// √(Σ νᵢ (sᵢ/σᵢ)² / Σ νᵢ), with its degrees of freedom Σ νᵢ.
    ///
    /// None unless 0 ≤ ratio ≤ 100 and 1 ≤ dof; more than a million degrees of freedom count as a million.
    ///
    /// ```
    /// assert!(tenter_core::scatter::Hand::new(f32::NAN, 5.0).is_none());
    /// ```
    #[must_use]
    pub fn new(ratio: f32, dof: f32) -> Option<Self> {
        ((0.0..=100.0).contains(&ratio) && dof >= 1.0).then_some(Self { ratio, dof: dof.min(1e6) })
    }

    /// As it is sent and kept: the ratio in thousandths, and whole degrees of freedom.
    ///
    /// None as for [`Hand::new`].
    ///
    /// ```
    /// use tenter_core::scatter::Hand;
    ///
    /// assert_eq!(Hand::from_thousandths(500, 22), Hand::new(0.5, 22.0));
    /// assert!(Hand::from_thousandths(100_001, 22).is_none());
    /// ```
    #[must_use]
    pub fn from_thousandths(ratio: u32, dof: u32) -> Option<Self> {
        Self::new(num::float(ratio.into()) / 1000.0, num::float(dof.into()))
    }

    /// The ratio in thousandths and the degrees of freedom, each to the nearest whole number.
    ///
    /// ```
    /// assert_eq!(tenter_core::scatter::Hand::new(0.5, 22.4).unwrap().thousandths(), (500, 22));
    /// ```
    #[must_use]
    pub fn thousandths(self) -> (u32, u32) {
        let whole = |x: f32| u32::try_from(num::round(x)).unwrap_or(0);
        (whole(self.ratio * 1000.0), whole(self.dof))
    }

    /// Her standard deviation as a multiple of the assumed one.
    ///
    /// ```
    /// assert_eq!(tenter_core::scatter::Hand::new(0.5, 20.0).unwrap().ratio(), 0.5);
    /// ```
    #[must_use]
    pub const fn ratio(self) -> f32 {
        self.ratio
    }

    /// Its degrees of freedom.
    ///
    /// ```
    /// assert_eq!(tenter_core::scatter::Hand::new(0.5, 20.0).unwrap().dof(), 20.0);
    /// ```
    #[must_use]
    pub const fn dof(self) -> f32 {
        self.dof
    }

    /// How much of what is known of the scatter is hers, 0 to 1; the rest is [assumed](ASSUMED_DOF).
    ///
    /// ```
    /// assert!(tenter_core::scatter::Hand::new(1.0, 2.0).unwrap().share() < 0.25);
    /// ```
    #[must_use]
    pub fn share(self) -> f32 {
        self.dof / (self.dof + ASSUMED_DOF)
    }
}

impl Scatter {
    /// Nothing but open data on other cloths: [`ASSUMED_AT_ONE_PERCENT`] and its neighbours.
    ///
    /// ```
    /// assert_eq!(tenter_core::Scatter::ASSUMED, tenter_core::Scatter::default());
    /// ```
    pub const ASSUMED: Self = Self(Kind::Assumed);

    /// The scale's error alone: for a demonstration, or for cloth clamped in a frame that repeats itself.
    ///
    /// ```
    /// assert!(tenter_core::Scatter::SCALE_ONLY.is_scale_only());
    /// ```
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

    /// The assumption and a person's own pulls, each weighted with its degrees of freedom.
    ///
    /// ```
    /// use tenter_core::scatter::{Hand, Scatter};
    ///
    /// let steady = Scatter::hand(Hand::new(0.5, 22.5).unwrap());
    /// assert!(steady.variance(10.0).u() < Scatter::ASSUMED.variance(10.0).u());
    /// ```
    #[must_use]
    pub const fn hand(hand: Hand) -> Self {
        Self(Kind::Hand(hand))
    }

    /// Whether pulls are taken to repeat exactly.
    ///
    /// ```
    /// assert!(!tenter_core::Scatter::ASSUMED.is_scale_only());
    /// ```
    #[must_use]
    pub const fn is_scale_only(self) -> bool {
        matches!(self.0, Kind::ScaleOnly)
    }

    /// Whether it rests on the assumption alone.
    ///
    /// ```
    /// assert!(tenter_core::Scatter::ASSUMED.is_assumed());
    /// ```
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
            Kind::Assumed => assumed(stretch),
            Kind::Hand(Hand { ratio, dof }) => {
                let Variance { value, dof: assumed } = assumed(stretch);
                let both = dof + assumed;
                Variance { value: value * (assumed + dof * ratio * ratio) / both, dof: both }
            }
            Kind::Known { points, dof } => Variance { value: points * points, dof },
            Kind::ScaleOnly => Variance::certain(0.0),
        }
    }
}

fn assumed(stretch: f32) -> Variance {
    let points = ASSUMED_AT_ONE_PERCENT * num::rough_pow(stretch, ASSUMED_EXPONENT);
    Variance { value: points * points, dof: ASSUMED_DOF }
}
