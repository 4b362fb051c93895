//! Growth to come: what will be left at 30 minutes and at an hour.

use core::fmt;
use heapless::Vec;

use crate::answer::confidence::Confidence;
use crate::answer::figures::Figures;
use crate::number::list::list;
use crate::number::num;
use crate::reading::pull_test::{MAX_RESTS, PullTest, Rest};
use crate::statistics::line::{FittedLine, WeightedPoint};
use crate::statistics::scatter::Scatter;

/// Seconds after release below which a reading is left out of the slope.
pub const FIRST_READING_SECONDS: u32 = 30;

/// Seconds after release that the last reading must have reached for any forecast: 10 minutes. From 5 minutes the
/// intervals would hold 92 to 94 % of the worst kind of simulated cloth.
pub const ROUGH_FROM_SECONDS: u32 = 600;

/// Seconds after release from which on the forecast is no longer called rough: 15 minutes.
pub const FAIR_FROM_SECONDS: u32 = 900;

/// Growth expected at a later time.
///
/// ```
/// use tenter_core::{Grain, Length, PullTest, forecast::forecast};
///
/// let mut test = PullTest::new(Length::from_mm(250), Grain::Crosswise).unwrap();
/// test.add_pull(Length::from_mm(300)).unwrap();
/// test.add_rest(60, Length::from_mm(256)).unwrap();
/// test.add_rest(900, Length::from_mm(254)).unwrap();
/// let hour = forecast(&test, 3600).unwrap();
/// assert!(hour.percent > 1.2 && hour.percent < 1.6 && !hour.rough);
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct Forecast {
    /// Growth, in percent of the gauge length.
    pub percent: f32,
    /// Half the width of the interval that held 95 % and more of the simulated cloths, in points.
    pub half_width: f32,
    /// Whether the last reading came so early that the figure is rough.
    pub rough: bool,
}

/// Why there is no forecast.
///
/// ```
/// use tenter_core::{Grain, Length, PullTest, forecast::{ForecastError, forecast}};
///
/// let test = PullTest::new(Length::from_mm(100), Grain::Crosswise).unwrap();
/// assert_eq!(forecast(&test, 3600), Err(ForecastError::TooFew));
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum ForecastError {
    /// Fewer than two readings from [`FIRST_READING_SECONDS`] on after the newest pull.
    TooFew,
    /// The last reading came before [`ROUGH_FROM_SECONDS`].
    TooEarly,
    /// The last reading came less than five times as late as the first.
    TooClose,
    /// A reading at that time or later is there already.
    AlreadyRead,
}

impl fmt::Display for ForecastError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::TooFew => "read twice after release, such as at 60 s and at 15 min",
            Self::TooEarly => "read once more at 10 min or later, better at 15 min",
            Self::TooClose => "read once more, at least five times as late as the first reading",
            Self::AlreadyRead => "growth at that time was read",
        })
    }
}

impl core::error::Error for ForecastError {}

/// Growth at `seconds` after release, from the readings after the newest pull that has any.
///
/// A power of time, g ∝ (t + 10 s)⁻ⁿ with 0 ≤ n ≤ 0.6, anchored on the last reading, never above it. n comes from
/// the line through the logarithms, weighted by √(t + 10 s). The half-width is 0.6 scale divisions + 0.2 mm + the change
/// still to come + 0.08 of today's growth for each e-fold of time, and in quadrature what the readings themselves are
/// worth. In a simulation of six kinds of cloth it holds 95.6 % of the worst kind; `tenter-tests` simulates it again. No open
/// time series of fabrics was found to check it against, so a forecast supports and never decides.
///
/// # Errors
///
/// A [`ForecastError`] when the readings are too few or too early.
///
/// ```
/// use tenter_core::{Grain, Length, PullTest, forecast::{ForecastError, forecast}};
///
/// let mut test = PullTest::new(Length::from_mm(100), Grain::Crosswise).unwrap();
/// test.add_pull(Length::from_mm(120)).unwrap();
/// test.add_rest(30, Length::from_mm(104)).unwrap();
/// test.add_rest(120, Length::from_mm(103)).unwrap();
/// assert_eq!(forecast(&test, 3600), Err(ForecastError::TooEarly));
/// ```
pub fn forecast(test: &PullTest, seconds: u32) -> Result<Forecast, ForecastError> {
    let newest = test.rests().last().map(|rest| rest.after_pull);
    let counts = |rest: &&Rest| Some(rest.after_pull) == newest && rest.seconds >= FIRST_READING_SECONDS;
    let readings: Vec<&Rest, MAX_RESTS> = list(test.rests().iter().filter(counts));
    let (Some(first), Some(last)) = (readings.first(), readings.last()) else {
        return Err(ForecastError::TooFew);
    };
    if readings.len() < 2 {
        return Err(ForecastError::TooFew);
    }
    if last.seconds >= seconds {
        return Err(ForecastError::AlreadyRead);
    }
    if last.seconds < ROUGH_FROM_SECONDS {
        return Err(ForecastError::TooEarly);
    }
    if last.seconds < first.seconds.saturating_mul(5) {
        return Err(ForecastError::TooClose);
    }
    let growth = |rest: &Rest| rest.recovered.mm() - test.gauge().mm();
    let now = growth(last).max(0.0);
    let to_come = if now > 0.0 {
        now - now * num::rough_exp(-exponent(&readings, growth) * ln_later(last, seconds))
    } else {
        0.0
    };
    let from_model = 0.6 * test.scale().division().mm() + 0.2 + to_come + 0.08 * now * ln_later(last, seconds);
    let percent_per_mm = 100.0 / test.gauge().mm();
    let worth = Figures::of(test, Scatter::ASSUMED).ok().and_then(|figures| figures.rest);
    let from_readings = worth.map_or(0.0, |rest| rest.growth.here.half_width(Confidence::default()));
    let from_model = from_model * percent_per_mm;
    Ok(Forecast {
        percent: (now - to_come) * percent_per_mm,
        half_width: num::sqrt(from_model * from_model + from_readings * from_readings),
        rough: last.seconds < FAIR_FROM_SECONDS,
    })
}

/// ln((later + 10 s) / (then + 10 s)).
fn ln_later(then: &Rest, later: u32) -> f32 {
    num::rough_ln((num::float(later.into()) + 10.0) / (num::float(then.seconds.into()) + 10.0))
}

/// The power n with which growth falls, 0 to 0.6.
fn exponent(readings: &[&Rest], growth: impl Fn(&Rest) -> f32) -> f32 {
    let Some(last) = readings.last() else { return 0.0 };
    let points: Vec<WeightedPoint, MAX_RESTS> = list(readings.iter().map(|rest| WeightedPoint {
        x: ln_later(rest, last.seconds),
        // A reading below the last one counts as equal: no fall is seen there.
        y: num::rough_ln(growth(rest) / growth(last)),
        weight: num::sqrt(num::float(rest.seconds.into()) + 10.0),
    }));
    FittedLine::through(&points).map_or(0.0, |line| line.slope.clamp(0.0, 0.6))
}
