//! Stretch, growth and recovery of a pull test, with what the readings are worth.

use crate::answer::confidence::Confidence;
use crate::number::num;
use crate::number::ratio::Ratio;
use crate::reading::pull_test::{PullTest, TestError};
use crate::reading::scale::Ends;
use crate::statistics::scatter::{ASSUMED_DOF, Scatter};
use crate::statistics::stats::Series;
use crate::statistics::student;
use crate::statistics::uncertainty::{self, Variance};

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
}

/// A figure from its exact ratio and the parts of its variance, which are in squares of a ratio.
fn figure(ratio: Option<Ratio>, parts: &[Variance]) -> Figure {
    let variance = uncertainty::sum(parts);
    Figure { ratio: ratio.unwrap_or(Ratio::ZERO), u: 100.0 * variance.u(), dof: variance.dof }
}
