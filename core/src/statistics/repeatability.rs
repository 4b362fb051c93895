//! How much one person's pulls differ from each other: pooled from their own tests, for each construction.

use crate::number::num;
use crate::reading::construction::Construction;
use crate::reading::pull_test::{Load, PullTest};
use crate::statistics::assumed::{self, ASSUMED_DOF};
use crate::statistics::stats::Series;

/// One person's repeatability: the standard deviation from pull to pull as a multiple of the assumed one.
///
/// The term is that of ISO 5725-1:2023 and VIM 2.21 (JCGM 200:2012): the same person, cloth, scale and sitting.
///
/// ```
/// use tenter_core::Repeatability;
///
/// // Pulls pooled over 22.5 degrees of freedom scatter half as much as assumed.
/// let steady = Repeatability::new(0.5, 22.5).unwrap();
/// assert_eq!(steady.share(), 0.75); // Three quarters of what is known of the scatter is their own.
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct Repeatability {
    ratio: f32,
    dof: f32,
}

impl Repeatability {
    /// A standard deviation as a multiple of the assumed one, with its degrees of freedom.
    ///
    /// `None` unless 0 ≤ ratio ≤ 100 and 1 ≤ dof; more than a million degrees of freedom count as a million.
    ///
    /// ```
    /// assert!(tenter_core::Repeatability::new(f32::NAN, 5.0).is_none());
    /// ```
    #[must_use]
    pub fn new(ratio: f32, dof: f32) -> Option<Self> {
        ((0.0..=100.0).contains(&ratio) && dof >= 1.0).then_some(Self { ratio, dof: dof.min(1e6) })
    }

    /// As it is sent and kept: the ratio in thousandths, and whole degrees of freedom.
    ///
    /// `None` as for [`Repeatability::new`].
    ///
    /// ```
    /// use tenter_core::Repeatability;
    ///
    /// assert_eq!(Repeatability::from_thousandths(500, 22), Repeatability::new(0.5, 22.0));
    /// assert!(Repeatability::from_thousandths(100_001, 22).is_none());
    /// ```
    #[must_use]
    pub fn from_thousandths(ratio: u32, dof: u32) -> Option<Self> {
        Self::new(num::float(ratio.into()) / 1000.0, num::float(dof.into()))
    }

    /// The ratio in thousandths and the degrees of freedom, each to the nearest whole number.
    #[must_use]
    pub fn thousandths(self) -> (u32, u32) {
        let whole = |x: f32| u32::try_from(num::round(x)).unwrap_or(0);
        (whole(self.ratio * 1000.0), whole(self.dof))
    }

    /// The standard deviation as a multiple of the assumed one.
    #[must_use]
    pub const fn ratio(self) -> f32 {
        self.ratio
    }

    /// Its degrees of freedom.
    #[must_use]
    pub const fn dof(self) -> f32 {
        self.dof
    }

    /// How much of what is known of the scatter is the person's own, 0 to 1; the rest is [assumed](crate::scatter::ASSUMED_DOF).
    #[must_use]
    pub fn share(self) -> f32 {
        self.dof / (self.dof + ASSUMED_DOF)
    }
}

/// What tests say about a repeatability: their degrees of freedom, and the sum of ν (s/σ)² over them, with the assumed σ
/// at each test's own stretch.
///
/// Sums so that tests can be added and left out again. The pooled variance is the mean of the tests' variances, weighted
/// with their degrees of freedom: ISO 5725-2:2019 § 7.4.5.1, and NIST/SEMATECH e-Handbook § 7.4.3.3; dividing by σ first
/// lets cloths of different stretch be pooled.
///
/// ```
/// use tenter_core::{Grain, Length, PullTest, repeatability::Pooled};
///
/// let mut test = PullTest::new(Length::from_mm(100), Grain::Crosswise)?;
/// for extended in [109, 111, 110] {
///     test.add_pull(Length::from_mm(extended))?;
/// }
/// let said = Pooled::of(&test);
/// assert_eq!(said.and(said).without(said), said);
/// let own = said.repeatability().unwrap();
/// assert_eq!(own.dof(), 2.0);
/// assert!((own.ratio() - 1.0 / 1.08).abs() < 0.01); // 1 point where 1.08 are assumed at 10 %.
/// # Ok::<(), tenter_core::TestError>(())
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct Pooled {
    /// Degrees of freedom, Σ ν.
    pub dof: f64,
    /// Σ ν (s/σ)².
    pub sum: f64,
}

impl Pooled {
    /// What one test says; nothing below two pulls, or where a stated force pulled.
    ///
    /// Readings rounded to a line of the scale cannot show a scatter below that of the rounding, d/√12 (JCGM 100:2008
    /// § 4.3.7), so no test counts for less.
    #[must_use]
    pub fn of(test: &PullTest) -> Self {
        let series: Series = test.pulls().iter().map(|pull| i64::from(pull.steps())).collect();
        let (Some(variance), Some(mean), Load::Hand) = (series.variance(), series.mean(), test.load()) else {
            return Self::default();
        };
        let gauge = f64::from(test.gauge().steps());
        let division = f64::from(test.scale().division().steps());
        let points = f64::from(variance).max(division * division / 12.0) * (100.0 / gauge) * (100.0 / gauge);
        let stretch = mean.percent_f32() / num::float(test.gauge().steps().into()) - 100.0;
        let dof = f64::from(series.count() - 1);
        Self { dof, sum: dof * points / f64::from(assumed::variance(stretch).value) }
    }

    /// Both together.
    #[must_use]
    pub fn and(self, other: Self) -> Self {
        Self { dof: self.dof + other.dof, sum: self.sum + other.sum }
    }

    /// This one without what `other` said, which was part of it.
    #[must_use]
    pub fn without(self, other: Self) -> Self {
        Self { dof: (self.dof - other.dof).max(0.0), sum: (self.sum - other.sum).max(0.0) }
    }

    /// The pooled repeatability, √(Σ ν (s/σ)² / Σ ν); `None` below one degree of freedom.
    #[must_use]
    pub fn repeatability(self) -> Option<Repeatability> {
        if self.dof < 1.0 {
            return None;
        }
        Repeatability::new(num::sqrt(num::narrow(self.sum / self.dof)), num::narrow(self.dof))
    }
}

/// What one person's tests say, for each construction apart.
///
/// ```
/// use tenter_core::{Construction, Grain, Length, PullTest, Scatter};
/// use tenter_core::repeatability::{ByConstruction, Pooled};
///
/// let mut own = ByConstruction::default();
/// own.add(Construction::Woven, Pooled { dof: 9.0, sum: 2.25 });
/// assert_eq!(own.on(Construction::Woven).repeatability().unwrap().ratio(), 0.5);
/// assert_eq!(own.on(Construction::Knit).repeatability(), None);
///
/// let test = PullTest::new(Length::from_mm(100), Grain::Crosswise).unwrap();
/// assert_eq!(own.scatter_for(Construction::Knit, &test), Scatter::ASSUMED);
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct ByConstruction {
    /// On wovens.
    pub woven: Pooled,
    /// On knits.
    pub knit: Pooled,
    /// On other cloth.
    pub other: Pooled,
}

impl ByConstruction {
    /// What the tests on a construction say.
    #[must_use]
    pub const fn on(&self, construction: Construction) -> Pooled {
        match construction {
            Construction::Woven => self.woven,
            Construction::Knit => self.knit,
            Construction::Other => self.other,
        }
    }

    /// Adds what tests on a construction say.
    pub fn add(&mut self, construction: Construction, more: Pooled) {
        let had = match construction {
            Construction::Woven => &mut self.woven,
            Construction::Knit => &mut self.knit,
            Construction::Other => &mut self.other,
        };
        *had = had.and(more);
    }

    /// Over all constructions, for a device that does not know the cloth.
    #[must_use]
    pub fn all(&self) -> Pooled {
        self.woven.and(self.knit).and(self.other)
    }
}
