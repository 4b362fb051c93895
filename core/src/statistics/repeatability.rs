//! How much one person's pulls differ from each other: pooled from their own tests, for each construction.

use crate::number::num;
use crate::reading::construction::Construction;
use crate::reading::pull_test::PullTest;
use crate::statistics::components::{self, PLACING_DOF, SESSION_DOF};
use crate::statistics::kept::Kept;
use crate::statistics::mixture::variance_of_scale;
use crate::statistics::scatter::Scatter;

/// One person's repeatability: the standard deviation from pull to pull as a multiple of the assumed one.
///
/// The term is that of ISO 5725-1:2023 and VIM 2.21 (JCGM 200:2012): the same person, cloth, scale and sitting.
///
/// ```
/// use tenter_core::Repeatability;
///
/// // Pulls pooled over 22.5 degrees of freedom scatter half as much as assumed.
/// let steady = Repeatability::new(0.5, 22.5).unwrap();
/// assert!(steady.share() > 0.75); // More than three quarters of what is known of the scatter is their own.
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct Repeatability {
    ratio: f32,
    dof: f32,
    session_ratio: f32,
    session_dof: f32,
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
        let own = Self { ratio, dof: dof.min(1e6), session_ratio: 1.0, session_dof: 0.0 };
        (is_ratio(ratio) && dof >= 1.0).then_some(own)
    }

    /// The same with what retests on other days say: the standard deviation from day to day as a multiple of the assumed
    /// one, with its degrees of freedom.
    ///
    /// `None` unless 0 ≤ ratio ≤ 100 and 0 ≤ dof; more than a million degrees of freedom count as a million.
    ///
    /// ```
    /// use tenter_core::Repeatability;
    ///
    /// let own = Repeatability::new(0.5, 22.5).and_then(|own| own.with_sessions(1.4, 6.0)).unwrap();
    /// assert_eq!((own.session_ratio(), own.session_dof()), (1.4, 6.0));
    /// ```
    #[must_use]
    pub fn with_sessions(self, ratio: f32, dof: f32) -> Option<Self> {
        (is_ratio(ratio) && dof >= 0.0).then_some(Self { session_ratio: ratio, session_dof: dof.min(1e6), ..self })
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

    /// The same with how much days differ, as it is sent and stored; unchanged for an impossible ratio.
    ///
    /// ```
    /// use tenter_core::Repeatability;
    ///
    /// let own = Repeatability::new(0.5, 22.0).unwrap().with_sessions_in_thousandths(1_400, 6);
    /// assert_eq!((own.session_ratio(), own.sessions_in_thousandths()), (1.4, (1_400, 6)));
    /// ```
    #[must_use]
    pub fn with_sessions_in_thousandths(self, ratio: u32, dof: u32) -> Self {
        self.with_sessions(num::float(ratio.into()) / 1000.0, num::float(dof.into())).unwrap_or(self)
    }

    /// How much days differ, in thousandths of what is assumed, and the degrees of freedom, each to the nearest whole number.
    #[must_use]
    pub fn sessions_in_thousandths(self) -> (u32, u32) {
        let whole = |x: f32| u32::try_from(num::round(x)).unwrap_or(0);
        (whole(self.session_ratio * 1000.0), whole(self.session_dof))
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

    /// The standard deviation from day to day as a multiple of the assumed one; 1 where no retest says.
    #[must_use]
    pub const fn session_ratio(self) -> f32 {
        self.session_ratio
    }

    /// Its degrees of freedom; 0 where no retest says.
    #[must_use]
    pub const fn session_dof(self) -> f32 {
        self.session_dof
    }

    /// How much of what is known of the scatter is the person's own, 0 to 1; the rest is
    /// [assumed](crate::components::PLACING_DOF).
    #[must_use]
    pub fn share(self) -> f32 {
        self.dof / (self.dof + PLACING_DOF)
    }
}

fn is_ratio(ratio: f32) -> bool {
    (0.0..=100.0).contains(&ratio)
}

/// What tests say about a repeatability: sums, so that tests can be added and left out again.
///
/// Of the scatter from pull to pull: the degrees of freedom of the tests, and the sum of ν s²/σ² over them, with the variance
/// σ² that is assumed at each test's own stretch. The pooled variance is the mean of the tests' variances, weighted with
/// their degrees of freedom: ISO 5725-2:2019 § 7.4.5.1, and NIST/SEMATECH e-Handbook § 7.4.3.3; dividing by σ² first
/// lets cloths of different stretch be pooled. Of the days: the same from [`retests`](crate::retests).
///
/// ```
/// use tenter_core::{Grain, Length, PullTest, repeatability::Pooled};
///
/// let mut test = PullTest::new(Length::from_mm(100), Grain::Crosswise)?.with_settling_pull(true);
/// for extended in [109, 111, 110] {
///     test.add_pull(Length::from_mm(extended))?;
/// }
/// let said = Pooled::of(&test);
/// assert_eq!(said.and(said).without(said), said);
/// let own = said.repeatability().unwrap();
/// assert_eq!(own.dof(), 2.0);
/// assert!((own.ratio() - 0.982).abs() < 0.01); // 0.957 points without the rounding, where 0.975 are assumed at 10 %.
/// # Ok::<(), tenter_core::TestError>(())
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct Pooled {
    /// Degrees of freedom, Σ ν.
    pub dof: f64,
    /// Σ ν s²/σ².
    pub sum: f64,
    /// What retests on other days are worth together, in degrees of freedom.
    pub session_dof: f64,
    /// The sum over them of that, times the variance from day to day over the assumed one. Below 0 where days agree better
    /// than the pulls of each let expect.
    pub session_sum: f64,
}

impl Pooled {
    /// What one test says of the scatter from pull to pull; nothing below two pulls that count, or where a stated force
    /// pulled.
    ///
    /// The variance of the rounding, d²/12 (JCGM 100:2008 § 4.3.7), is taken off.
    #[must_use]
    pub fn of(test: &PullTest) -> Self {
        let kept = Kept::of(test, Scatter::ASSUMED);
        let dof = f64::from(kept.count().saturating_sub(1));
        if dof < 1.0 || test.load().is_known() {
            return Self::default();
        }
        let own = f64::from((kept.squares / num::narrow(dof) - kept.rounding).max(0.0));
        let assumed = components::hand_variance(kept.stretch);
        let assumed = f64::from(variance_of_scale(assumed.value, assumed.dof));
        Self { dof, sum: dof * own / assumed, ..Self::default() }
    }

    /// Both together.
    #[must_use]
    pub fn and(self, other: Self) -> Self {
        Self {
            dof: self.dof + other.dof,
            sum: self.sum + other.sum,
            session_dof: self.session_dof + other.session_dof,
            session_sum: self.session_sum + other.session_sum,
        }
    }

    /// This one without what `other` said, which was part of it.
    #[must_use]
    pub fn without(self, other: Self) -> Self {
        Self {
            dof: (self.dof - other.dof).max(0.0),
            sum: (self.sum - other.sum).max(0.0),
            session_dof: (self.session_dof - other.session_dof).max(0.0),
            session_sum: self.session_sum - other.session_sum,
        }
    }

    /// The pooled repeatability; `None` below one degree of freedom of pulls.
    #[must_use]
    pub fn repeatability(self) -> Option<Repeatability> {
        if self.dof < 1.0 {
            return None;
        }
        let root = |sum: f64, dof: f64| if dof > 0.0 { num::sqrt(num::narrow(sum / dof)).min(100.0) } else { 1.0 };
        let own = Repeatability::new(root(self.sum, self.dof), num::narrow(self.dof))?;
        own.with_sessions(root(self.session_sum, self.session_dof), num::narrow(self.session_dof))
    }
}

/// What is believed of a person after their tests, each figure over the assumed one: the posterior of a scaled inverse
/// chi-square, where a level starts from the one above it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Believed {
    /// Variance from pull to pull.
    pub hand: f32,
    /// Variance from day to day.
    pub session: f32,
    /// The degrees of freedom of that. Those of the hand stay as assumed, because cloths differ besides.
    pub session_dof: f32,
}

/// Days that agree by luck do not make a hand steadier than this share of the assumed variance.
const LEAST_SESSION: f32 = 0.05;

impl Believed {
    /// The assumption.
    pub const ASSUMED: Self = Self { hand: 1.0, session: 1.0, session_dof: SESSION_DOF };

    /// This, after what `own` says.
    pub fn after(self, own: Pooled) -> Self {
        let [dof, sum, session_dof, session_sum] =
            [own.dof, own.sum, own.session_dof, own.session_sum].map(num::narrow);
        Self {
            hand: (PLACING_DOF * self.hand + sum) / (PLACING_DOF + dof),
            session: ((SESSION_DOF * self.session + session_sum) / (SESSION_DOF + session_dof)).max(LEAST_SESSION),
            session_dof: SESSION_DOF + session_dof,
        }
    }
}

/// What one person's tests say, for each construction apart.
///
/// ```
/// use tenter_core::{Construction, Grain, Length, PullTest, Scatter};
/// use tenter_core::repeatability::{ByConstruction, Pooled};
///
/// let mut own = ByConstruction::default();
/// own.add(Construction::Woven, Pooled { dof: 9.0, sum: 2.25, ..Pooled::default() });
/// assert_eq!(own.on(Construction::Woven).repeatability().unwrap().ratio(), 0.5);
/// assert_eq!(own.on(Construction::Knit).repeatability(), None);
///
/// // A hand that is steady on wovens is likely steadier than assumed on knits too.
/// let test = PullTest::new(Length::from_mm(100), Grain::Crosswise).unwrap();
/// let on_knits = own.scatter_for(Construction::Knit, &test);
/// assert!(on_knits.variance(10.0).u() < Scatter::ASSUMED.variance(10.0).u());
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
        let had = self.of(construction);
        *had = had.and(more);
    }

    const fn of(&mut self, construction: Construction) -> &mut Pooled {
        match construction {
            Construction::Woven => &mut self.woven,
            Construction::Knit => &mut self.knit,
            Construction::Other => &mut self.other,
        }
    }

    /// The same without what tests on a construction said, which were part of it.
    ///
    /// ```
    /// use tenter_core::Construction;
    /// use tenter_core::repeatability::{ByConstruction, Pooled};
    ///
    /// let (mut own, said) = (ByConstruction::default(), Pooled { dof: 9.0, sum: 2.25, ..Pooled::default() });
    /// own.add(Construction::Woven, said);
    /// assert_eq!(own.without(Construction::Woven, said), ByConstruction::default());
    /// ```
    #[must_use]
    pub fn without(mut self, construction: Construction, less: Pooled) -> Self {
        let had = self.of(construction);
        *had = had.without(less);
        self
    }

    /// Over all constructions, for a device that does not know the cloth.
    #[must_use]
    pub fn all(&self) -> Pooled {
        self.woven.and(self.knit).and(self.other)
    }
}
