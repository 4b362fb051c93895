//! How much one reading differs from the next, before the readings of a test are looked at.

use crate::number::num;
use crate::reading::construction::Construction;
use crate::reading::pull_test::{Load, PullTest};
use crate::statistics::components::{
    self, PLACING, PLACING_DOF, PULL_PER_POINT_HAND, PULL_PER_POINT_LOAD, SESSION_DOF, SESSION_HAND, SESSION_LOAD,
};
use crate::statistics::repeatability::{Believed, ByConstruction, Pooled, Repeatability};
use crate::statistics::uncertainty::Variance;

/// What is known of the scatter of a hand and a cloth before the readings of this test are looked at.
///
/// ```
/// use tenter_core::Scatter;
///
/// let hand = Scatter::known(0.8, 24.0).unwrap();
/// assert_ne!(hand, Scatter::default());
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct Scatter(Kind);

#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
enum Kind {
    /// Variances over the assumed ones, and the degrees of freedom of the second.
    Believed {
        hand: f32,
        session: f32,
        session_dof: f32,
    },
    Known {
        points: f32,
        dof: f32,
    },
    ScaleOnly,
}

impl Default for Scatter {
    fn default() -> Self {
        Self::ASSUMED
    }
}

/// Squared scales in points², with their degrees of freedom; the scale's rounding comes on top of each.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Prior {
    /// Of a look at the unloaded length.
    pub placing: f32,
    pub placing_dof: f32,
    /// Of a pull: this, and so much more for each point of stretch squared.
    pub pull: f32,
    pub pull_per_point: f32,
    pub pull_dof: f32,
    /// Of the day, for each point of stretch squared.
    pub session: f32,
    pub session_dof: f32,
}

impl Scatter {
    /// Nothing but what [`components`](crate::components) assume.
    pub const ASSUMED: Self = Self::believed(Believed::ASSUMED);

    /// The scale's error alone: for a demonstration, or for cloth clamped in a frame that repeats itself.
    pub const SCALE_ONLY: Self = Self(Kind::ScaleOnly);

    const fn believed(Believed { hand, session, session_dof }: Believed) -> Self {
        Self(Kind::Believed { hand, session, session_dof })
    }

    /// A standard deviation from one's own earlier pulls, in points of stretch, with its degrees of freedom. How the
    /// cloth is laid and how days differ stay as assumed.
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
    pub fn with(own: Option<Repeatability>) -> Self {
        own.map_or(Self::ASSUMED, |own| Self::believed(Believed::ASSUMED.after(Pooled::from(own))))
    }

    /// Whether readings are taken to repeat exactly.
    #[must_use]
    pub const fn is_scale_only(self) -> bool {
        matches!(self.0, Kind::ScaleOnly)
    }

    /// Whether it rests on the assumption alone.
    #[must_use]
    pub fn is_assumed(self) -> bool {
        self == Self::ASSUMED
    }

    /// The squared scale of one pull by hand, in points², for cloth that stretches by `stretch` percent, and its degrees
    /// of freedom.
    ///
    /// ```
    /// let ten = tenter_core::Scatter::ASSUMED.variance(10.0).u();
    /// assert!((ten - 0.824).abs() < 0.001);
    /// ```
    #[must_use]
    pub fn variance(self, stretch: f32) -> Variance {
        match self.0 {
            Kind::Believed { hand, .. } => {
                let assumed = components::hand_variance(stretch);
                Variance { value: hand * assumed.value, ..assumed }
            }
            Kind::Known { points, dof } => Variance { value: points * points, dof },
            Kind::ScaleOnly => Variance::certain(0.0),
        }
    }

    /// What is known before a test under `load` is looked at; `None` where only the scale counts.
    pub(crate) fn prior(self, load: Load) -> Option<Prior> {
        let square = |x: f32| x * x;
        let (per_point, session) =
            if load.is_known() { (PULL_PER_POINT_LOAD, SESSION_LOAD) } else { (PULL_PER_POINT_HAND, SESSION_HAND) };
        let assumed = Prior {
            placing: square(PLACING),
            placing_dof: PLACING_DOF,
            pull: square(PLACING),
            pull_per_point: square(per_point),
            pull_dof: PLACING_DOF,
            session: square(session),
            session_dof: SESSION_DOF,
        };
        match self.0 {
            // What is known of a hand says nothing of a mass.
            Kind::Believed { .. } if load.is_known() => Some(assumed),
            Kind::Believed { hand, session, session_dof } => Some(Prior {
                pull: hand * assumed.pull,
                pull_per_point: hand * assumed.pull_per_point,
                session: session * assumed.session,
                session_dof,
                ..assumed
            }),
            Kind::Known { points, dof } => {
                Some(Prior { pull: square(points), pull_per_point: 0.0, pull_dof: dof, ..assumed })
            }
            Kind::ScaleOnly => None,
        }
    }
}

impl From<Repeatability> for Pooled {
    fn from(own: Repeatability) -> Self {
        let part = |ratio: f32, dof: f32| (f64::from(dof), f64::from(dof) * f64::from(ratio) * f64::from(ratio));
        let (dof, sum) = part(own.ratio(), own.dof());
        let (session_dof, session_sum) = part(own.session_ratio(), own.session_dof());
        Self { dof, sum, session_dof, session_sum }
    }
}

impl Pooled {
    /// The scatter to judge by: this repeatability beside the assumption, or the assumption alone.
    #[must_use]
    pub fn scatter(self) -> Scatter {
        Scatter::believed(Believed::ASSUMED.after(self))
    }
}

impl ByConstruction {
    /// The scatter to judge a test by on cloth of this construction: the assumption, after this person's tests on other
    /// constructions, after those on this one. The test's own pulls are left out, because an evaluation counts those
    /// itself.
    #[must_use]
    pub fn scatter_for(&self, construction: Construction, test: &PullTest) -> Scatter {
        self.scatter_among(&Self::default(), construction, test)
    }

    /// The same where `everyone` is known too, this person among them: theirs comes first.
    ///
    /// ```
    /// use tenter_core::repeatability::ByConstruction;
    /// use tenter_core::{Construction, Grain, Length, PullTest};
    ///
    /// let mut steady = PullTest::new(Length::from_mm(200), Grain::Crosswise)?.with_settling_pull(true);
    /// for _ in 0..10 {
    ///     steady.add_pull(Length::from_mm(230))?;
    /// }
    /// let mut everyone = ByConstruction::default();
    /// everyone.add(Construction::Woven, tenter_core::repeatability::Pooled::of(&steady));
    ///
    /// // A newcomer is first taken to repeat as the others do.
    /// let newcomer = ByConstruction::default();
    /// let test = PullTest::new(Length::from_mm(200), Grain::Crosswise)?;
    /// let among = newcomer.scatter_among(&everyone, Construction::Woven, &test);
    /// assert!(among.variance(10.0).u() < newcomer.scatter_for(Construction::Woven, &test).variance(10.0).u());
    /// # Ok::<(), tenter_core::TestError>(())
    /// ```
    #[must_use]
    pub fn scatter_among(&self, everyone: &Self, construction: Construction, test: &PullTest) -> Scatter {
        let (here, mine) = (self.on(construction), self.all());
        let person = Believed::ASSUMED.after(everyone.all().without(mine)).after(mine.without(here));
        Scatter::believed(person.after(here.without(Pooled::of(test))))
    }

    /// How much of [`Self::scatter_among`] rests on the tests of others, 0 to 1: what is left of their share of the level
    /// above after what this person's tests on other constructions say, and those on this one.
    ///
    /// ```
    /// use tenter_core::repeatability::{ByConstruction, Pooled};
    /// use tenter_core::{Construction, Grain, Length, PullTest};
    ///
    /// let (mut mine, mut everyone) = (ByConstruction::default(), ByConstruction::default());
    /// let said = |dof| Pooled { dof, sum: dof, ..Pooled::default() };
    /// mine.add(Construction::Woven, said(7.0));
    /// everyone.add(Construction::Woven, said(7.0 + 7.0));
    /// let test = PullTest::new(Length::from_mm(200), Grain::Crosswise)?;
    /// // Half is mine, and of the other half they say one half, the assumption the other.
    /// assert_eq!(mine.share_of_others(&everyone, Construction::Woven, &test), 0.25);
    /// # Ok::<(), tenter_core::TestError>(())
    /// ```
    #[must_use]
    pub fn share_of_others(&self, everyone: &Self, construction: Construction, test: &PullTest) -> f32 {
        let (here, mine) = (self.on(construction), self.all());
        let kept = |dof: f64| PLACING_DOF / (PLACING_DOF + num::narrow(dof.max(0.0)));
        let others = 1.0 - kept(everyone.all().without(mine).dof);
        others * kept(mine.without(here).dof) * kept(here.without(Pooled::of(test)).dof)
    }
}
