//! One judgement of several tests of one grain of a cloth.

use heapless::Vec;

use crate::answer::figure::{Figure, SessionUncertainty};
use crate::number::num;
use crate::number::ratio::Ratio;
use crate::reading::length::Length;
use crate::reading::pull_test::{Held, PullTest};
use crate::statistics::mixture::{self, Mixture};
use crate::statistics::scatter::Scatter;
use crate::statistics::student;

/// The most tests that are judged together.
pub const MAX_SITTINGS: usize = 16;

/// Two days that differ by what happens this seldom contradict each other. The tool's own limit.
const CONTRADICTS: f32 = 0.05;

/// A test, and what is known of it besides its readings.
///
/// ```
/// use tenter_core::{Grain, Length, PullTest, Sitting};
///
/// let test = PullTest::new(Length::from_mm(100), Grain::Crosswise).unwrap();
/// assert!(!Sitting::new(&test).before_wash);
/// ```
#[derive(Clone, Copy, Debug)]
pub struct Sitting<'t> {
    /// The readings.
    pub test: &'t PullTest,
    /// What is known of the scatter of the person who pulled.
    pub scatter: Scatter,
    /// Whether the cloth was washed since, and tests from after the wash are judged too.
    pub before_wash: bool,
    /// The day on which it was pulled, counted from any one day; a test whose day is not known is a day of its own.
    pub day: Option<i32>,
    /// Who pulled: any number of one's own; 0 where nobody said, and then it is one and the same person.
    pub person: u64,
}

impl<'t> Sitting<'t> {
    /// A test of cloth as it is now, by a person of whom nothing is known.
    #[must_use]
    pub const fn new(test: &'t PullTest) -> Self {
        Self { test, scatter: Scatter::ASSUMED, before_wash: false, day: None, person: 0 }
    }

    /// Whether both are one session: one day of one hand, or one day under known loads. What the day does to a force is
    /// common to the tests of a session, and so does not average out between them.
    ///
    /// ```
    /// use tenter_core::{Grain, Length, Load, PullTest, Sitting};
    ///
    /// let by_hand = PullTest::new(Length::from_mm(100), Grain::Crosswise)?;
    /// let hung = by_hand.clone().with_load(Load::Force { millinewtons: 5_000 });
    /// let on = |test, day| Sitting { day: Some(day), ..Sitting::new(test) };
    /// assert!(on(&by_hand, 3).shares_session_of(&on(&by_hand, 3)));
    /// assert!(!on(&by_hand, 3).shares_session_of(&on(&by_hand, 4)));
    /// assert!(!on(&by_hand, 3).shares_session_of(&on(&hung, 3)));
    /// assert!(!on(&by_hand, 3).shares_session_of(&Sitting { person: 2, ..on(&by_hand, 3) }));
    /// assert!(!Sitting::new(&by_hand).shares_session_of(&Sitting::new(&by_hand)));
    /// # Ok::<(), tenter_core::TestError>(())
    /// ```
    #[must_use]
    pub fn shares_session_of(&self, other: &Self) -> bool {
        let (this, that) = (self.test.load().is_known(), other.test.load().is_known());
        let one_sitting = self.day.is_some() && self.day == other.day && self.person == other.person;
        one_sitting && this == that && self.before_wash == other.before_wash
    }
}

/// Why a test's figures are widened: it was done in a way that reads otherwise than a garment is worn. The amounts are the
/// tool's own.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum Widening {
    /// A single layer, which curls and reads high.
    SingleLayer,
    /// A cut strip, whose raw edges read high.
    RawEdge,
    /// Marks under 100 mm apart, which read high (Yanaka and Naruse 1991).
    ShortMarks,
    /// Pulled before a wash, which changes cloth.
    BeforeWash,
}

/// How many kinds of widening there are.
pub(crate) const WIDENINGS: usize = 4;

/// The shortest gauge length that does not read high.
pub(crate) const SHORT_MARKS: Length = Length::from_mm(100);

impl Widening {
    /// Those of a test.
    pub(crate) fn of(sitting: &Sitting<'_>) -> impl Iterator<Item = Self> {
        let held = sitting.test.held();
        let found = [
            (Self::SingleLayer, held == Held::Flat),
            (Self::RawEdge, held == Held::Strip),
            (Self::ShortMarks, sitting.test.gauge() < SHORT_MARKS),
            (Self::BeforeWash, sitting.before_wash),
        ];
        found.into_iter().filter_map(|(widening, holds)| holds.then_some(widening))
    }

    /// The standard deviation it adds, as a share of the figure.
    #[must_use]
    pub const fn share(self) -> f32 {
        match self {
            Self::SingleLayer | Self::RawEdge => 0.2,
            Self::ShortMarks => 0.1,
            Self::BeforeWash => 0.3,
        }
    }

    /// The figure with that added.
    pub(crate) fn widen(self, figure: Figure) -> Figure {
        let (share, value) = (self.share() * self.share(), figure.percent().max(0.0));
        Figure {
            u: num::sqrt(figure.u * figure.u + share * value * value),
            slope: figure.slope + 2.0 * share * value,
            curve: figure.curve + share,
            even: None,
            ..figure
        }
    }
}

/// One figure of several.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Combined {
    pub figure: Figure,
    /// The place in the list of one that the others contradict.
    pub contradicts: Option<usize>,
}

/// The figure that several amount to, each weighted with its variance: a common scale is learnt from how far they
/// agree, starting from their own worth (a Birge ratio with a prior), so that a few that agree by luck do not look too
/// sure. `None` of none.
pub(crate) fn combine(figures: &[Figure]) -> Option<Combined> {
    let (first, others) = figures.split_first()?;
    if others.is_empty() {
        return Some(Combined { figure: *first, contradicts: None });
    }
    let count = num::float(num::count(figures.len()));
    let middle = figures.iter().map(Figure::percent).sum::<f32>() / count;
    let variance = |figure: &Figure| figure.variance_above(middle - figure.percent());
    let total: f32 = figures.iter().map(|figure| 1.0 / variance(figure)).sum();
    let weight = |figure: &Figure| 1.0 / variance(figure) / total;
    let value: f32 = figures.iter().map(|figure| weight(figure) * figure.percent()).sum();
    let apart: f32 = figures.iter().map(|figure| square(figure.percent() - value) / variance(figure)).sum();
    let least_dof = figures.iter().map(|figure| figure.dof).fold(f32::INFINITY, f32::min);
    let dof = least_dof + count - 1.0;
    let scale = if least_dof.is_finite() { (least_dof + apart) / dof } else { 1.0 };
    let (mut u2, mut here2, mut slope, mut curve) = (0.0, 0.0, 0.0, 0.0);
    for figure in figures {
        let (share, off) = (scale * square(weight(figure)), value - figure.percent());
        u2 += share * figure.variance_above(off);
        here2 += share * square(figure.here.u);
        slope += share * (figure.slope + 2.0 * figure.curve * off);
        curve += share * figure.curve;
    }
    let here_dof = figures.iter().map(|figure| figure.here.dof).fold(f32::INFINITY, f32::min) + count - 1.0;
    let figure = Figure {
        shift: 0.0,
        u: num::sqrt(u2),
        dof,
        here: SessionUncertainty { u: num::sqrt(here2), dof: here_dof },
        slope,
        curve,
        ..Figure::exact(to_ratio(value))
    };
    Some(Combined { figure, contradicts: contradicting(figures, least_dof) })
}

/// A figure of one day without that day, and the day added: its variance for each squared point, and the degrees of
/// freedom of that.
pub(crate) fn with_day(figure: Figure, (per_point, dof): (f32, f32)) -> Figure {
    if per_point == 0.0 {
        return figure;
    }
    let value = figure.percent().max(0.0);
    // The variance at p percent is a + b p + c p²; about the value b stands for its slope there.
    let up = |part: f32| mixture::variance_of_scale(part, figure.dof);
    let (here, slope, curve) = (up(figure.u * figure.u), up(figure.slope), up(figure.curve));
    let mut parts = Mixture::default();
    parts.add(here, figure.dof);
    parts.add(per_point * value * value, dof);
    let narrowing = parts.narrowing();
    Figure {
        u: num::sqrt(narrowing * (here + per_point * value * value)),
        dof: parts.dof(),
        slope: narrowing * (slope + 2.0 * per_point * value),
        curve: narrowing * (curve + per_point),
        even: None,
        ..figure
    }
}

/// The figure farthest from the mean of the others, where that is too far.
fn contradicting(figures: &[Figure], dof: f32) -> Option<usize> {
    let mut worst = (0, 0.0f32);
    for (index, figure) in figures.iter().enumerate() {
        let others = || figures.iter().enumerate().filter(|(other, _)| *other != index).map(|(_, other)| other);
        let total: f32 = others().map(|other| 1.0 / own_variance(other)).sum();
        let mean = others().map(|other| other.percent() / own_variance(other)).sum::<f32>() / total;
        let t = (figure.percent() - mean).abs() / num::sqrt(own_variance(figure) + 1.0 / total);
        if t >= worst.1 {
            worst = (index, t);
        }
    }
    // Of two either may be the one.
    let places = if figures.len() == 2 { 1.0 } else { num::float(num::count(figures.len())) };
    (2.0 * places * student::upper_tail(worst.1, dof) < CONTRADICTS).then_some(worst.0)
}

fn own_variance(figure: &Figure) -> f32 {
    figure.variance_above(0.0)
}

/// A percentage to a thousand-millionth of a percent; far finer than what it rests on.
fn to_ratio(percent: f32) -> Ratio {
    Ratio::new(num::round(percent * 1e6), 100_000_000).unwrap_or(Ratio::ZERO)
}

fn square(x: f32) -> f32 {
    x * x
}

/// The widenings of several tests, each once.
pub(crate) fn widenings<'s>(sittings: impl Iterator<Item = &'s Sitting<'s>>) -> Vec<Widening, WIDENINGS> {
    let mut all = Vec::new();
    for widening in sittings.flat_map(|sitting| Widening::of(sitting)) {
        if !all.contains(&widening) {
            let _ = all.push(widening); // Room for every kind.
        }
    }
    all
}

#[cfg(test)]
mod tests {
    use super::*;

    fn figures(values: &[f32], u: &[f32], dof: f32) -> std::vec::Vec<Figure> {
        let figure = |(value, u): (&f32, &f32)| Figure { u: *u, dof, ..Figure::exact(to_ratio(*value)) };
        values.iter().zip(u).map(figure).collect()
    }

    /// The log risk ratios of thirteen trials of the BCG vaccine and their standard errors, from the counts with and without
    /// tuberculosis, vaccinated and not (G. A. Colditz and others, JAMA 271, 1994, as `dat.bcg` of the R package metadat; the
    /// counts from memory, held by the published Q, mean and standard error of the fixed effect).
    fn bcg() -> (std::vec::Vec<f32>, std::vec::Vec<f32>) {
        let trials: [[f64; 4]; 13] = [
            [4.0, 119.0, 11.0, 128.0],
            [6.0, 300.0, 29.0, 274.0],
            [3.0, 228.0, 11.0, 209.0],
            [62.0, 13_536.0, 248.0, 12_619.0],
            [33.0, 5_036.0, 47.0, 5_761.0],
            [180.0, 1_361.0, 372.0, 1_079.0],
            [8.0, 2_537.0, 10.0, 619.0],
            [505.0, 87_886.0, 499.0, 87_892.0],
            [29.0, 7_470.0, 45.0, 7_232.0],
            [17.0, 1_699.0, 65.0, 1_600.0],
            [186.0, 50_448.0, 141.0, 27_197.0],
            [5.0, 2_493.0, 3.0, 2_338.0],
            [27.0, 16_886.0, 29.0, 17_825.0],
        ];
        #[allow(clippy::cast_possible_truncation)] // As the core takes them.
        let of = |[a, b, c, d]: [f64; 4]| {
            let (risk, other) = (a / (a + b), c / (c + d));
            let variance = 1.0 / a - 1.0 / (a + b) + 1.0 / c - 1.0 / (c + d);
            ((risk / other).ln() as f32, variance.sqrt() as f32)
        };
        trials.map(of).into_iter().unzip()
    }

    /// How far sets disagree, Q = Σ w (y − μ)² with w = 1/u² (W. G. Cochran, Biometrics 10, 1954, from memory), by the R
    /// package metafor 3.8: PCB 28 (six laboratories; the data stand in the R code of NIST's decision tree for key
    /// comparisons), three sessions that hardly agree, four that do; and the BCG trials, Q = 152.233 008 08 and a fixed effect of
    /// −0.430 285 16 ± 0.040 498 75.
    ///
    /// With certain uncertainties the result is the fixed effect: 5.259 510 09 ± 0.227 756 89 for the four. With nothing but
    /// the values' own disagreement, √(Q/(k−1)) is Birge's ratio, and the same four come to ± 0.056 098 90, which is what
    /// Hartung, Knapp, Sidik and Jonkman give where no variance between sets is found: four that agree by luck look four times
    /// as sure. Between those two this rule starts from the figures' own degrees of freedom.
    #[test]
    fn disagreement_against_metafor() {
        let sets: [(&[f32], &[f32], f64); 3] = [
            (&[34.3, 32.9, 34.53, 32.42, 31.9, 35.8], &[1.03, 0.69, 0.83, 0.29, 0.4, 0.38], 68.215_398_03),
            (&[5.2, 6.1, 4.0], &[0.4, 0.5, 0.6], 7.234_541_58),
            (&[5.2, 5.4, 5.1, 5.3], &[0.4, 0.5, 0.6, 0.4], 0.182_006_48),
        ];
        for (values, u, q) in sets {
            let others = f64::from(u32::try_from(values.len()).unwrap()) - 1.0;
            let weights: f64 = u.iter().map(|u| 1.0 / f64::from(u * u)).sum();
            for dof in [1.0, 8.0, 40.0] {
                let all = combine(&figures(values, u, dof)).unwrap().figure;
                let scale = f64::from(all.u * all.u) * weights;
                let found = scale * (f64::from(dof) + others) - f64::from(dof);
                assert!((found - q).abs() < 1e-4 * (q + f64::from(dof)), "{values:?}: Q {found}, want {q}");
                assert!((f64::from(all.dof) - f64::from(dof) - others).abs() < 1e-5);
            }
        }
        let (values, u) = bcg();
        let all = combine(&figures(&values, &u, 40.0)).unwrap().figure;
        let weights: f64 = u.iter().map(|u| 1.0 / f64::from(u * u)).sum();
        let q = f64::from(all.u * all.u) * weights * 52.0 - 40.0;
        assert!((q - 152.233_008_08).abs() < 0.05, "BCG: Q {q}");
        let certain = combine(&figures(&values, &u, f32::INFINITY)).unwrap().figure;
        assert!(
            (certain.percent() + 0.430_285_16).abs() < 2e-5 && (certain.u - 0.040_498_75).abs() < 1e-6,
            "{certain:?}"
        );
        let (values, u, _) = sets[2];
        let certain = combine(&figures(values, u, f32::INFINITY)).unwrap().figure;
        assert!((certain.percent() - 5.259_51).abs() < 1e-5 && (certain.u - 0.227_756_9).abs() < 1e-6, "{certain:?}");
        let ours = combine(&figures(values, u, 8.0)).unwrap().figure.u;
        assert!(ours > 0.8 * certain.u && ours < certain.u && ours > 0.056_098_9, "{ours}");
        // The three sessions disagree somewhat, and are wider than the fixed effect; of the laboratories one is named.
        let (values, u, _) = sets[1];
        let certain = combine(&figures(values, u, f32::INFINITY)).unwrap();
        assert!(
            combine(&figures(values, u, 8.0)).unwrap().figure.u > 1.2 * certain.figure.u
                && certain.contradicts.is_none()
        );
        let (values, u, _) = sets[0];
        assert!(combine(&figures(values, u, f32::INFINITY)).unwrap().contradicts.is_some());
    }
}
