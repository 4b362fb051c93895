//! Stretch, growth and recovery of a pull test, with what the readings are worth.

use crate::number::num;
use crate::number::ratio::Ratio;
use crate::reading::pull_test::{PullTest, TestError};
use crate::reading::scale::Ends;
use crate::statistics::scatter::{ASSUMED_DOF, Scatter};
use crate::statistics::stats::Series;
use crate::statistics::student;
use crate::statistics::uncertainty::{self, Variance};

/// How sure an answer must be: a chance between ½ and 1.
///
/// ```
/// assert_eq!(tenter_core::Confidence::default().percent().to_string(), "95.0");
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct Confidence {
    /// Tenths of a percent.
    per_mille: u16,
}

impl Default for Confidence {
    fn default() -> Self {
        Self { per_mille: 950 }
    }
}

impl Confidence {
    /// A confidence in tenths of a percent; none unless it lies from 50.1 to 99.9 %.
    ///
    /// ```
    /// use tenter_core::Confidence;
    ///
    /// assert_eq!(Confidence::per_mille(950), Some(Confidence::default()));
    /// assert_eq!(Confidence::per_mille(500), None);
    /// ```
    #[must_use]
    pub const fn per_mille(tenths_of_percent: u16) -> Option<Self> {
        if tenths_of_percent > 500 && tenths_of_percent < 1000 {
            Some(Self { per_mille: tenths_of_percent })
        } else {
            None
        }
    }

    /// In percent.
    ///
    /// ```
    /// assert_eq!(tenter_core::Confidence::per_mille(999).unwrap().percent().to_string(), "99.9");
    /// ```
    #[must_use]
    pub fn percent(self) -> crate::number::Decimal {
        crate::number::Decimal::new(self.per_mille.into(), 1)
    }

    /// As a chance from 0 to 1.
    ///
    /// ```
    /// assert_eq!(tenter_core::Confidence::default().chance(), 0.95);
    /// ```
    #[must_use]
    pub fn chance(self) -> f32 {
        f32::from(self.per_mille) / 1000.0
    }
}

/// A percentage with its standard uncertainty.
///
/// ```
/// use tenter_core::{Figures, Grain, Length, PullTest, Scatter};
///
/// let mut test = PullTest::new(Length::from_mm(100), Grain::Crosswise)?;
/// test.add_pull(Length::from_mm(105))?;
/// let stretch = Figures::of(&test, Scatter::SCALE_ONLY)?.stretch;
/// assert_eq!(stretch.ratio.percent(1).to_string(), "5.0");
/// assert!((stretch.u - 0.4186).abs() < 1e-4);
/// # Ok::<(), tenter_core::TestError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct Figure {
    /// The value, exact in the readings.
    pub ratio: Ratio,
    /// Its standard uncertainty, in points (1 point = 1 %).
    pub u: f32,
    /// The effective degrees of freedom of `u`.
    pub dof: f32,
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
        Self { ratio, u: 0.0, dof: f32::INFINITY }
    }

    /// The chance, 0 to 1, that the true figure reaches `limit`: by Student's t, or plainly 0 or 1 for a figure without
    /// uncertainty, compared exactly.
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
        if self.u == 0.0 {
            return if self.ratio >= limit { 1.0 } else { 0.0 };
        }
        student::upper_tail(limit.points_above(self.ratio) / self.u, self.dof)
    }

    /// Half the width of the two-sided interval at `confidence`, in points.
    ///
    /// ```
    /// use tenter_core::{Confidence, Figure, Ratio};
    ///
    /// let figure = Figure { ratio: Ratio::new(1, 20).unwrap(), u: 0.5, dof: f32::INFINITY };
    /// assert!((figure.half_width(Confidence::default()) - 0.98).abs() < 1e-3);
    /// ```
    #[must_use]
    pub fn half_width(&self, confidence: Confidence) -> f32 {
        self.u * student::quantile(0.5 * (1.0 - confidence.chance()), self.dof)
    }

    /// The percentage that the true figure reaches at least, sure to `confidence`.
    ///
    /// ```
    /// use tenter_core::{Confidence, Figure, Ratio};
    ///
    /// let figure = Figure { ratio: Ratio::new(1, 20).unwrap(), u: 0.5, dof: f32::INFINITY };
    /// assert!((figure.at_least(Confidence::default()) - 4.178).abs() < 1e-3);
    /// ```
    #[must_use]
    pub fn at_least(&self, confidence: Confidence) -> f32 {
        self.ratio.percent_f32() - self.u * student::quantile(1.0 - confidence.chance(), self.dof)
    }

    /// The percentage that the true figure reaches at most, sure to `confidence`.
    ///
    /// ```
    /// use tenter_core::{Confidence, Figure, Ratio};
    ///
    /// let figure = Figure { ratio: Ratio::new(1, 20).unwrap(), u: 0.5, dof: f32::INFINITY };
    /// assert!((figure.at_most(Confidence::default()) - 5.822).abs() < 1e-3);
    /// ```
    #[must_use]
    pub fn at_most(&self, confidence: Confidence) -> f32 {
        self.ratio.percent_f32() + self.u * student::quantile(1.0 - confidence.chance(), self.dof)
    }

    /// The ends of the two-sided interval at `confidence`, in percent.
    ///
    /// ```
    /// use tenter_core::{Confidence, Figure, Ratio};
    ///
    /// let figure = Figure { ratio: Ratio::new(1, 20).unwrap(), u: 0.5, dof: f32::INFINITY };
    /// let (low, high) = figure.interval(Confidence::default());
    /// assert!((low - 4.02).abs() < 1e-3 && (high - 5.98).abs() < 1e-3);
    /// ```
    #[must_use]
    pub fn interval(&self, confidence: Confidence) -> (f32, f32) {
        let (middle, half) = (self.ratio.percent_f32(), self.half_width(confidence));
        (middle - half, middle + half)
    }
}

/// How the errors of the figures hang together, because they share lengths: correlation coefficients, −1 to 1.
///
/// ```
/// use tenter_core::{Correlation, Grain, Length, PullTest, Scatter};
///
/// let mut test = PullTest::new(Length::from_mm(100), Grain::Crosswise)?;
/// test.add_pull(Length::from_mm(105))?;
/// test.add_rest(60, Length::from_mm(101))?;
/// let correlation = Correlation::of(&test, Scatter::SCALE_ONLY)?.unwrap();
/// assert!((correlation.growth_recovery.unwrap() + 0.9814).abs() < 1e-3);
/// # Ok::<(), tenter_core::TestError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct Correlation {
    /// Of stretch and growth.
    pub stretch_growth: f32,
    /// Of stretch and recovery; none without an extension.
    pub stretch_recovery: Option<f32>,
    /// Of growth and recovery; none without an extension.
    pub growth_recovery: Option<f32>,
}

impl Correlation {
    /// Of the figures of a test at its longest rest; none without a reading after release.
    ///
    /// # Errors
    ///
    /// [`TestError::NoPull`] without a pull.
    ///
    /// ```
    /// use tenter_core::{Correlation, Grain, Length, PullTest, Scatter};
    ///
    /// let mut test = PullTest::new(Length::from_mm(100), Grain::Crosswise)?;
    /// test.add_pull(Length::from_mm(105))?;
    /// assert_eq!(Correlation::of(&test, Scatter::ASSUMED)?, None);
    /// # Ok::<(), tenter_core::TestError>(())
    /// ```
    pub fn of(test: &PullTest, scatter: Scatter) -> Result<Option<Self>, TestError> {
        let readings = Readings::of(test, scatter)?;
        Ok(readings.rest.map(|rest| rest.correlation(&readings)))
    }
}

/// What the readings at the longest rest give.
///
/// ```
/// use tenter_core::{Figures, Grain, Length, PullTest, Scatter};
///
/// let mut test = PullTest::new(Length::from_mm(100), Grain::Crosswise)?;
/// test.add_pull(Length::from_mm(150))?;
/// test.add_rest(60, Length::from_mm(105))?;
/// let rest = Figures::of(&test, Scatter::ASSUMED)?.rest.unwrap();
/// assert_eq!(rest.growth.ratio.percent(1).to_string(), "5.0");
/// assert_eq!(rest.recovery.unwrap().ratio.percent(1).to_string(), "90.0");
/// # Ok::<(), tenter_core::TestError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct RestFigures {
    /// The rest, in seconds.
    pub seconds: u32,
    /// How many pulls were read at that rest.
    pub readings: u32,
    /// Growth: (recovered − gauge) / gauge.
    pub growth: Figure,
    /// Recovery: (extended − recovered) / (extended − gauge), the share of the extension given back. Over several
    /// pulls it is that of the mean lengths. None where nothing was extended.
    pub recovery: Option<Figure>,
}

/// The figures of a pull test.
///
/// Stretch is that of the mean extended length over all pulls. Growth and recovery are taken at the longest rest
/// that was read, over the pulls that were read then. The reading error of the shared gauge length is common to all
/// pulls and does not average out; the scatter of the pulls does. No open data tell how much growth scatters from
/// pull to pull, so one reading of it carries the scale's error alone, and several also their own scatter.
///
/// ```
/// use tenter_core::{Figures, Grain, Length, PullTest, Scatter};
///
/// let mut test = PullTest::new(Length::from_mm(100), Grain::Crosswise)?;
/// for extended in [105, 106, 105, 104, 106] {
///     test.add_pull(Length::from_mm(extended))?;
/// }
/// let figures = Figures::of(&test, Scatter::ASSUMED)?;
/// assert_eq!(figures.stretch.ratio.percent(1).to_string(), "5.2");
/// # Ok::<(), tenter_core::TestError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct Figures {
    /// Stretch: (extended − gauge) / gauge.
    pub stretch: Figure,
    /// Growth and recovery; none without a reading after release.
    pub rest: Option<RestFigures>,
}

impl Figures {
    /// Computes the figures.
    ///
    /// # Errors
    ///
    /// [`TestError::NoPull`] without a pull.
    ///
    /// ```
    /// use tenter_core::{Figures, Grain, Length, PullTest, Scatter, TestError};
    ///
    /// let test = PullTest::new(Length::from_mm(100), Grain::Crosswise)?;
    /// assert_eq!(Figures::of(&test, Scatter::ASSUMED), Err(TestError::NoPull));
    /// # Ok::<(), TestError>(())
    /// ```
    pub fn of(test: &PullTest, scatter: Scatter) -> Result<Self, TestError> {
        Readings::of(test, scatter).map(|readings| readings.figures())
    }
}

/// The sums and variances from which figures and chances are computed, in steps.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Readings {
    pub gauge: i64,
    /// Sum and number of all extended lengths.
    pub extended_sum: i64,
    pub pulls: i64,
    /// Variance of one reading of the gauge length.
    pub gauge_variance: Variance,
    /// Variance of one pull, scale and scatter together.
    pub pull_variance: Variance,
    /// Whether each length is read at one end only.
    pub one_end: bool,
    /// Whether anything but the scale counts.
    pub scatter_counts: bool,
    pub rest: Option<RestReadings>,
}

/// The same for the longest rest.
#[derive(Clone, Copy, Debug)]
pub(crate) struct RestReadings {
    pub seconds: u32,
    pub readings: i64,
    /// Sum of the extended lengths of the pulls that were read at this rest.
    pub extended_sum: i64,
    pub recovered_sum: i64,
    /// Variance of one reading of the recovered length.
    pub variance: Variance,
}

impl Readings {
    pub fn of(test: &PullTest, scatter: Scatter) -> Result<Self, TestError> {
        let steps = |length: &crate::reading::Length| i64::from(length.steps());
        let pulls: Series = test.pulls().iter().map(steps).collect();
        let gauge = steps(&test.gauge());
        let count = i64::from(pulls.count());
        let extension = Ratio::new(pulls.sum() - count * gauge, count * gauge).ok_or(TestError::NoPull)?;
        let reading = Variance::certain(test.scale().variance());
        // One point of stretch is a hundredth of the gauge length.
        let one_point = num::float(gauge) / 100.0;
        let between_pulls = scatter.variance(extension.percent_f32()).times(one_point);
        Ok(Self {
            gauge,
            extended_sum: pulls.sum(),
            pulls: count,
            gauge_variance: reading,
            pull_variance: uncertainty::pooled(&pulls, uncertainty::sum(&[reading, between_pulls])).at_least(reading),
            one_end: test.scale().ends() == Ends::One,
            scatter_counts: !scatter.is_scale_only(),
            rest: RestReadings::of(test, scatter, reading),
        })
    }

    /// Mean extended length.
    pub fn extended(&self) -> f32 {
        num::float(self.extended_sum) / num::float(self.pulls)
    }

    pub fn figures(&self) -> Figures {
        let gauge = num::float(self.gauge);
        let by_gauge = -self.extended() / (gauge * gauge);
        let by_pull = 1.0 / gauge;
        let all = self.pulls * self.gauge;
        let stretch = figure(
            Ratio::new(self.extended_sum - all, all),
            &[self.gauge_variance.times(by_gauge), self.pull_variance.over(self.pulls).times(by_pull)],
        );
        Figures { stretch, rest: self.rest.map(|rest| rest.figures(self)) }
    }
}

impl RestReadings {
    fn of(test: &PullTest, scatter: Scatter, reading: Variance) -> Option<Self> {
        let seconds = test.rests().iter().map(|rest| rest.seconds).max()?;
        let mut recovered = Series::default();
        let mut extended_sum = 0;
        for rest in test.rests().iter().filter(|rest| rest.seconds == seconds) {
            recovered.push(rest.recovered.steps().into());
            extended_sum += i64::from(test.pulls().get(usize::from(rest.after_pull))?.steps());
        }
        let assumed = Variance { dof: ASSUMED_DOF, ..reading };
        let variance = if scatter.is_scale_only() || recovered.count() < 2 {
            reading
        } else {
            uncertainty::pooled(&recovered, assumed).at_least(reading)
        };
        Some(Self {
            seconds,
            readings: recovered.count().into(),
            extended_sum,
            recovered_sum: recovered.sum(),
            variance,
        })
    }

    /// Mean extended length of the pulls read at this rest.
    pub fn extended(&self) -> f32 {
        num::float(self.extended_sum) / num::float(self.readings)
    }

    /// Mean recovered length.
    pub fn recovered(&self) -> f32 {
        num::float(self.recovered_sum) / num::float(self.readings)
    }

    /// How much growth changes with the gauge length and with the mean recovered length.
    fn growth_by(&self, all: &Readings) -> [f32; 2] {
        let gauge = num::float(all.gauge);
        [-self.recovered() / (gauge * gauge), 1.0 / gauge]
    }

    /// The extension; none where there was none.
    fn extension(&self, all: &Readings) -> Option<i64> {
        Some(self.extended_sum - self.readings * all.gauge).filter(|extension| *extension > 0)
    }

    /// How much recovery changes with the gauge length, the mean extended and the mean recovered length.
    fn recovery_by(&self, all: &Readings, extension: i64) -> [f32; 3] {
        let gauge = num::float(all.gauge);
        let (extended, recovered) = (self.extended(), self.recovered());
        let span = num::float(extension) / num::float(self.readings);
        [(extended - recovered) / (span * span), (recovered - gauge) / (span * span), -1.0 / span]
    }

    fn figures(&self, all: &Readings) -> RestFigures {
        let recovered_variance = self.variance.over(self.readings);
        let reading = all.gauge_variance;
        let gauges = self.readings * all.gauge;
        let [by_gauge, by_recovered] = self.growth_by(all);
        let growth = figure(
            Ratio::new(self.recovered_sum - gauges, gauges),
            &[reading.times(by_gauge), recovered_variance.times(by_recovered)],
        );
        let recovery = self.extension(all).map(|extension| {
            let [by_gauge, by_extended, by_recovered] = self.recovery_by(all, extension);
            // The extension that was reached is what was read: its scatter from pull to pull is no error here.
            let extended_variance = reading.over(self.readings);
            figure(
                Ratio::new(self.extended_sum - self.recovered_sum, extension),
                &[
                    reading.times(by_gauge),
                    extended_variance.times(by_extended),
                    recovered_variance.times(by_recovered),
                ],
            )
        });
        let readings = u32::try_from(self.readings).unwrap_or(u32::MAX);
        RestFigures { seconds: self.seconds, readings, growth, recovery }
    }

    fn correlation(&self, all: &Readings) -> Correlation {
        let gauge = num::float(all.gauge);
        let reading = all.gauge_variance.value;
        let figures = all.figures();
        let (stretch_u, rest) = (figures.stretch.u / 100.0, self.figures(all));
        let growth_u = rest.growth.u / 100.0;
        let stretch_by_gauge = -all.extended() / (gauge * gauge);
        let [growth_by_gauge, growth_by_recovered] = self.growth_by(all);
        let with_recovery = self.extension(all).zip(rest.recovery).map(|(extension, recovery)| {
            let recovery_u = recovery.u / 100.0;
            let [by_gauge, by_extended, by_recovered] = self.recovery_by(all, extension);
            let shared = stretch_by_gauge * by_gauge + by_extended / gauge / num::float(all.pulls);
            let covariance = growth_by_gauge * by_gauge * reading
                + growth_by_recovered * by_recovered * self.variance.over(self.readings).value;
            (correlation(shared * reading, stretch_u, recovery_u), correlation(covariance, growth_u, recovery_u))
        });
        Correlation {
            stretch_growth: correlation(stretch_by_gauge * growth_by_gauge * reading, stretch_u, growth_u),
            stretch_recovery: with_recovery.map(|(with_stretch, _)| with_stretch),
            growth_recovery: with_recovery.map(|(_, with_growth)| with_growth),
        }
    }
}

/// A figure from its exact ratio and the parts of its variance, which are in squares of a ratio.
fn figure(ratio: Option<Ratio>, parts: &[Variance]) -> Figure {
    let variance = uncertainty::sum(parts);
    Figure { ratio: ratio.unwrap_or(Ratio::ZERO), u: 100.0 * variance.u(), dof: variance.dof }
}

fn correlation(covariance: f32, u1: f32, u2: f32) -> f32 {
    let product = u1 * u2;
    if product > 0.0 { (covariance / product).clamp(-1.0, 1.0) } else { 0.0 }
}
