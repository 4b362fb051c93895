//! A percentage and what it is worth.

use crate::answer::confidence::Confidence;
use crate::number::num;
use crate::number::ratio::Ratio;
use crate::statistics::mixture::Mixture;
use crate::statistics::{rectangular, student};

/// A percentage with its standard uncertainty, for another day and for these readings alone.
///
/// What the readings would be worth if the true value lay elsewhere is kept too, because a larger stretch scatters more:
/// a limit is judged with the variance of a cloth that lies exactly on it.
///
/// ```
/// use tenter_core::{Figures, Grain, Length, PullTest, Scatter};
///
/// let mut test = PullTest::new(Length::from_mm(100), Grain::Crosswise)?.with_settling_pull(true);
/// test.add_pull(Length::from_mm(105))?;
/// let stretch = Figures::of(&test, Scatter::ASSUMED)?.stretch;
/// assert_eq!(stretch.ratio.percent(1).to_string(), "5.0");
/// assert!((stretch.u - 1.2309).abs() < 1e-3 && (stretch.here.u - 1.1480).abs() < 1e-3);
/// # Ok::<(), tenter_core::TestError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct Figure {
    /// The value, exact in the readings.
    pub ratio: Ratio,
    /// How many points the readings are known to lie too low: those of a first pull. Chances and intervals count them.
    pub shift: f32,
    /// Its standard uncertainty for another day, in points (1 point = 1 %).
    pub u: f32,
    /// The effective degrees of freedom of `u`.
    pub dof: f32,
    /// What these readings alone are worth: for the same hand on the same day.
    pub here: SessionUncertainty,
    /// How the variance grows with the true value, about this one: points² for each point.
    pub slope: f32,
    /// The same, for each point squared.
    pub curve: f32,
    /// Where the scale alone counts: even errors, whose chances are exact.
    pub even: Option<Even>,
}

/// The uncertainty of these readings alone.
///
/// ```
/// use tenter_core::{Confidence, Figures, Grain, Length, PullTest, Scatter};
///
/// let mut test = PullTest::new(Length::from_mm(100), Grain::Crosswise)?.with_settling_pull(true);
/// test.add_pull(Length::from_mm(105))?;
/// let stretch = Figures::of(&test, Scatter::ASSUMED)?.stretch;
/// // Another day adds to it.
/// assert!(stretch.here.half_width(Confidence::default()) < stretch.half_width(Confidence::default()));
/// # Ok::<(), tenter_core::TestError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct SessionUncertainty {
    /// Standard uncertainty, in points.
    pub u: f32,
    /// The effective degrees of freedom of `u`.
    pub dof: f32,
}

impl SessionUncertainty {
    /// Half the width of the two-sided interval at `confidence`, in points.
    #[must_use]
    pub fn half_width(&self, confidence: Confidence) -> f32 {
        self.u * student::quantile(0.5 * (1.0 - confidence.chance()), self.dof)
    }
}

/// Readings at one end of a scale that alone counts: each lies evenly within ± half a division.
///
/// ```
/// use tenter_core::{Figures, Grain, Length, PullTest, Scatter};
///
/// let mut test = PullTest::new(Length::from_mm(100), Grain::Crosswise)?.with_settling_pull(true);
/// test.add_pull(Length::from_mm(105))?;
/// let half_width = |scatter| Figures::of(&test, scatter).map(|all| all.stretch.even.map(|even| even.half_width));
/// // Half a millimetre of 100.
/// assert!(half_width(Scatter::SCALE_ONLY)?.is_some_and(|points| (points - 0.5).abs() < 1e-6));
/// assert_eq!(half_width(Scatter::ASSUMED), Ok(None));
/// # Ok::<(), tenter_core::TestError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct Even {
    /// Half a division, in points of the figure.
    pub half_width: f32,
    /// Whether the figure is a recovery, which three lengths make up.
    pub is_recovery: bool,
}

/// A squared scale at the value that was read, and how it changes with the true one.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Errors {
    pub squared_scale: f32,
    pub dof: f32,
    pub slope: f32,
    pub curve: f32,
}

/// What a figure's error is made of.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Budget {
    /// The variance a + b p + c p² at p percent.
    pub terms: [f32; 3],
    /// Where it lies.
    pub value: f32,
    /// The parts that it is made of.
    pub parts: Mixture,
}

impl Budget {
    /// The variance of a cloth whose true value lies so many points above the one that was read.
    pub fn variance_at(&self, points: f32) -> f32 {
        let ([a, b, c], at) = (self.terms, self.value + points);
        (a + at * (b + at * c)).max(LEAST_VARIANCE)
    }

    /// The squared scale of such a cloth, and its degrees of freedom.
    pub fn at(&self, points: f32) -> (f32, f32) {
        let (dof, narrowing) = self.parts.shape();
        ((narrowing * self.variance_at(points)).max(LEAST_VARIANCE), dof)
    }

    /// The squared scale at the value that was read, and its degrees of freedom.
    pub fn here(&self) -> (f32, f32) {
        let ([a, b, c], value, (dof, narrowing)) = (self.terms, self.value, self.parts.shape());
        (narrowing * (a + value * (b + c * value)), dof)
    }

    pub fn errors(&self) -> Errors {
        let ([a, b, c], value, (dof, narrowing)) = (self.terms, self.value, self.parts.shape());
        let per_point = c * value;
        Errors {
            squared_scale: narrowing * (a + value * (b + per_point)),
            dof,
            slope: narrowing * (b + 2.0 * per_point),
            curve: narrowing * c,
        }
    }
}

impl Figure {
    /// A figure that is taken as it stands, such as one printed on a label or read in a table.
    ///
    /// ```
    /// use tenter_core::{Figure, Ratio};
    ///
    /// assert_eq!(Figure::exact(Ratio::new(1, 4).unwrap()).u, 0.0);
    /// ```
    #[must_use]
    pub const fn exact(ratio: Ratio) -> Self {
        let here = SessionUncertainty { u: 0.0, dof: f32::INFINITY };
        Self { ratio, shift: 0.0, u: 0.0, dof: f32::INFINITY, here, slope: 0.0, curve: 0.0, even: None }
    }

    /// The most likely value in percent: as read, and the [`shift`](Self::shift) of a first pull.
    #[must_use]
    pub fn percent(&self) -> f32 {
        self.ratio.percent_f32() + self.shift
    }

    /// The squared scale of the error of a cloth whose true value lies so many points above this one.
    pub(crate) fn variance_above(&self, points: f32) -> f32 {
        (self.u * self.u + points * (self.slope + points * self.curve)).max(LEAST_VARIANCE)
    }

    /// The chance, 0 to 1, that the true figure reaches `limit`: by Student's t, or plainly 0 or 1 for a figure without
    /// uncertainty, compared exactly. On the limit it is exactly a half.
    ///
    /// ```
    /// use tenter_core::{Figure, Ratio};
    ///
    /// let quarter = Ratio::new(1, 4).unwrap();
    /// assert_eq!(Figure::exact(quarter).chance_at_least(quarter), 1.0);
    /// let measured = Figure { u: 1.0, ..Figure::exact(quarter) };
    /// assert_eq!(measured.chance_at_least(quarter), 0.5);
    /// ```
    #[must_use]
    pub fn chance_at_least(&self, limit: Ratio) -> f32 {
        self.chance_of(limit, self.missing(limit))
    }

    /// The same where it is known how many points are missing to the limit.
    pub(crate) fn chance_of(&self, limit: Ratio, missing: f32) -> f32 {
        if self.u == 0.0 {
            return if self.ratio >= limit { 1.0 } else { 0.0 };
        }
        let exact = self.even.and_then(|even| even.chance_not_missing(missing, limit.percent_f32() / 100.0));
        exact.unwrap_or_else(|| student::upper_tail(missing / num::sqrt(self.variance_above(missing)), self.dof))
    }

    /// How many points are missing to `limit`; exactly 0 on it.
    pub(crate) fn missing(&self, limit: Ratio) -> f32 {
        limit.points_above(self.ratio) - self.shift
    }

    /// Half the width of the two-sided interval at `confidence`, in points, for another day.
    ///
    /// ```
    /// use tenter_core::{Confidence, Figure, Ratio};
    ///
    /// let figure = Figure { u: 0.5, ..Figure::exact(Ratio::new(1, 20).unwrap()) };
    /// assert!((figure.half_width(Confidence::default()) - 0.98).abs() < 1e-3);
    /// ```
    #[must_use]
    pub fn half_width(&self, confidence: Confidence) -> f32 {
        self.u * student::quantile(0.5 * (1.0 - confidence.chance()), self.dof)
    }

    /// The percentage that the true figure reaches at least on another day, sure to `confidence`; −10 000 where
    /// nothing is sure.
    ///
    /// ```
    /// use tenter_core::{Confidence, Figure, Ratio};
    ///
    /// let figure = Figure { u: 0.5, ..Figure::exact(Ratio::new(1, 20).unwrap()) };
    /// assert!((figure.at_least(Confidence::default()) - 4.178).abs() < 1e-3);
    /// ```
    #[must_use]
    pub fn at_least(&self, confidence: Confidence) -> f32 {
        self.ends(1.0 - confidence.chance()).0
    }

    /// The percentage that the true figure reaches at most on another day, sure to `confidence`; 10 000 where nothing is
    /// sure.
    ///
    /// ```
    /// use tenter_core::{Confidence, Figure, Ratio};
    ///
    /// let figure = Figure { u: 0.5, ..Figure::exact(Ratio::new(1, 20).unwrap()) };
    /// assert!((figure.at_most(Confidence::default()) - 5.822).abs() < 1e-3);
    /// ```
    #[must_use]
    pub fn at_most(&self, confidence: Confidence) -> f32 {
        self.ends(1.0 - confidence.chance()).1
    }

    /// The ends of the two-sided interval at `confidence`, in percent, for another day. The upper end lies farther off
    /// where larger figures scatter more.
    ///
    /// ```
    /// use tenter_core::{Confidence, Figure, Ratio};
    ///
    /// let figure = Figure { u: 0.5, ..Figure::exact(Ratio::new(1, 20).unwrap()) };
    /// let (low, high) = figure.interval(Confidence::default());
    /// assert!((low - 4.02).abs() < 1e-3 && (high - 5.98).abs() < 1e-3);
    /// ```
    #[must_use]
    pub fn interval(&self, confidence: Confidence) -> (f32, f32) {
        self.ends(0.5 * (1.0 - confidence.chance()))
    }

    /// The limits that would be missed and passed with chance `tail` each (E. C. Fieller, *Journal of the Royal Statistical
    /// Society* B 16 (1954) 175, from memory).
    fn ends(&self, tail: f32) -> (f32, f32) {
        let (t, value) = (student::quantile(tail, self.dof), self.percent());
        let lead = 1.0 - t * t * self.curve;
        if lead <= 0.0 {
            return (value.min(-UNBOUNDED), value.max(UNBOUNDED));
        }
        let half = 0.5 * t * t * self.slope;
        let root = num::sqrt(half * half + lead * t * t * self.u * self.u);
        let bounded = |end: f32| end.clamp(-UNBOUNDED, UNBOUNDED);
        (bounded(value + (half - root) / lead).min(value), bounded(value + (half + root) / lead).max(value))
    }
}

/// Where nothing is sure, the ends lie this far off, in percent: ten times the most stretch that a test can hold.
const UNBOUNDED: f32 = 10_000.0;

/// A variance that rounding of `f32` has eaten up is no certainty.
const LEAST_VARIANCE: f32 = 1e-12;

impl Even {
    /// The chance that the margin, so many points short, is not short, at a limit as a ratio.
    fn chance_not_missing(self, missing: f32, limit: f32) -> Option<f32> {
        let h = self.half_width;
        if self.is_recovery {
            rectangular::chance_not_negative(-missing, &[h, h * limit, h * (1.0 - limit)])
        } else {
            rectangular::chance_not_negative(-missing, &[h, h * (1.0 + limit)])
        }
    }
}
