//! How steadily she pulls: the pull-to-pull scatter of her own tests, per construction.

use tenter_core::scatter::Hand;
use tenter_core::stats::Series;
use tenter_core::{Load, PullTest, Scatter};

use super::fabric::Construction;

/// What tests say about a hand: degrees of freedom, and the sum of ν (s/σ)² with the assumed σ at each test's stretch.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Share {
    /// Degrees of freedom.
    pub dof: f64,
    /// The sum.
    pub sum: f64,
}

impl Share {
    /// What one test says; nothing below two pulls, or where a stated force pulled.
    ///
    /// Readings rounded to a line of the scale cannot show a scatter below that of the rounding, d/√12, so no test
    /// counts for less.
    #[must_use]
    pub fn of(test: &PullTest) -> Self {
        let series: Series = test.pulls().iter().map(|pull| i64::from(pull.steps())).collect();
        let (Some(steps), Some(mean), Load::Hand) = (series.standard_deviation(), series.mean(), test.load()) else {
            return Self::default();
        };
        let gauge = f64::from(test.gauge().steps());
        let division = f64::from(test.scale().division().steps());
        let points = 100.0 * f64::from(steps).max(division / 12f64.sqrt()) / gauge;
        let mean = f64::from(mean.percent_f32()) / 100.0;
        #[allow(clippy::cast_possible_truncation)] // A float to a shorter one, for a table lookup.
        let stretch = (100.0 * (mean - gauge) / gauge) as f32;
        let assumed = f64::from(Scatter::ASSUMED.variance(stretch).value);
        let dof = f64::from(series.count() - 1);
        Self { dof, sum: dof * points * points / assumed }
    }

    /// Both together.
    #[must_use]
    pub fn and(self, other: Self) -> Self {
        Self { dof: self.dof + other.dof, sum: self.sum + other.sum }
    }

    /// This one without what `other` said.
    #[must_use]
    pub fn without(self, other: Self) -> Self {
        Self { dof: (self.dof - other.dof).max(0.0), sum: (self.sum - other.sum).max(0.0) }
    }

    /// The hand; none where nothing is known of it.
    #[must_use]
    pub fn hand(self) -> Option<Hand> {
        if self.dof < 1.0 {
            return None;
        }
        #[allow(clippy::cast_possible_truncation)] // Floats to shorter ones.
        Hand::new((self.sum / self.dof).sqrt() as f32, self.dof as f32)
    }

    /// The scatter to reckon with: hers beside the assumed one, or the assumed one alone.
    #[must_use]
    pub fn scatter(self) -> Scatter {
        self.hand().map_or(Scatter::ASSUMED, Scatter::hand)
    }
}

/// Her hand per construction.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Hands {
    /// On wovens.
    pub woven: Share,
    /// On knits.
    pub knit: Share,
    /// On other cloth.
    pub other: Share,
}

impl Hands {
    /// The hand on a construction.
    #[must_use]
    pub const fn on(&self, construction: Construction) -> Share {
        match construction {
            Construction::Woven => self.woven,
            Construction::Knit => self.knit,
            Construction::Other => self.other,
        }
    }

    /// Adds what tests on a construction say.
    pub fn add(&mut self, construction: Construction, share: Share) {
        let hand = match construction {
            Construction::Woven => &mut self.woven,
            Construction::Knit => &mut self.knit,
            Construction::Other => &mut self.other,
        };
        *hand = hand.and(share);
    }

    /// The scatter for a test on cloth of this construction, its own pulls left out: the core counts those itself.
    #[must_use]
    pub fn scatter_for(&self, construction: Construction, test: &PullTest) -> Scatter {
        self.on(construction).without(Share::of(test)).scatter()
    }

    /// The hand over all constructions, as the handheld gets it, which does not know the cloth.
    #[must_use]
    pub fn all(&self) -> Share {
        self.woven.and(self.knit).and(self.other)
    }
}
