//! Two cloths in one seam.
//!
//! No numerical rule for joining two cloths was found in print, so the limits here are the tool's own and public.

mod advice;
mod seam;

pub use advice::{Advice, AdviceLine, AdviceReason, MOST_LINES};
pub use seam::{Run, SeamName, Shape};

use super::error::{MakingError, positive};
use super::scaled::{Round, scaled};
use super::stitch::Stitch;
use crate::answer::Figure;
use crate::answer::confidence::Confidence;
use crate::answer::verdict::Answer;
use crate::number::ratio::Ratio;
use crate::reading::length::Length;
use crate::statistics::student;
use crate::statistics::uncertainty::{self, Variance};

/// From this gap in stretch on, in points, two cloths want handling. The tool's own.
pub const HANDLE_FROM_POINTS: i64 = 10;

/// Above this gap in stretch, in points, one cloth is a band to the other. The tool's own.
pub const BAND_ABOVE_POINTS: i64 = 25;

/// From this share of the seam on, in percent, a difference in length shows. The tool's own, after the one that was
/// reported: 1/4 in in 24 in (*Which fabric on top*, 2017).
pub const MISMATCH_FROM_PERCENT: i64 = 1;

/// From this difference in length on it shows in a seam of any length, if it comes before the share. The tool's own.
pub const MISMATCH_FROM: Length = Length::from_mm(5);

/// What is known of one cloth along the seam.
///
/// ```
/// use tenter_core::{Figure, Ratio, making::pairing::Edge};
///
/// let rib = Edge { stretch: Figure::exact(Ratio::new(80, 100).unwrap()), growth: None, washing: None };
/// assert_eq!(rib.growth, None);
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct Edge {
    /// Its stretch along the seam.
    pub stretch: Figure,
    /// Its growth along the seam, where that was read.
    pub growth: Option<Figure>,
    /// Its change in washing along the seam, negative for shrinkage, where that was measured.
    pub washing: Option<Figure>,
}

/// One of the two cloths.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum Which {
    /// The cloth named first.
    First,
    /// The cloth named second.
    Second,
}

impl Which {
    /// The other one.
    #[must_use]
    pub const fn other(self) -> Self {
        match self {
            Self::First => Self::Second,
            Self::Second => Self::First,
        }
    }
}

/// What the seam stretches no further than.
///
/// ```
/// use tenter_core::making::pairing::{Least, Which};
///
/// assert_ne!(Least::Cloth(Which::First), Least::Stitch);
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum Least {
    /// One of the cloths.
    Cloth(Which),
    /// The stitch.
    Stitch,
}

/// How two cloths go together.
///
/// ```
/// use tenter_core::making::pairing::{Between, Match};
///
/// assert_ne!(Match::Handle, Match::Close(Between::HandleAndBand));
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum Match {
    /// The same stretch: no handling.
    Alike,
    /// A difference that handling takes up.
    Handle,
    /// One is put on the other as a band.
    BandToBody,
    /// Too close to call between two of these.
    Close(Between),
}

/// Between which two a pairing is too close to call.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum Between {
    /// Alike, or to be handled.
    AlikeAndHandle,
    /// To be handled, or band to body.
    HandleAndBand,
}

/// The chances that the true gap in stretch lies in each range; together 1.
///
/// ```
/// use tenter_core::making::pairing::Chances;
///
/// let sure = Chances { alike: 1.0, handle: 0.0, band: 0.0 };
/// assert_eq!(sure.alike + sure.handle + sure.band, 1.0);
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct Chances {
    /// Under [`HANDLE_FROM_POINTS`].
    pub alike: f32,
    /// From there to [`BAND_ABOVE_POINTS`].
    pub handle: f32,
    /// Above that.
    pub band: f32,
}

/// How much longer one cloth becomes than the other over the seam.
///
/// ```
/// use tenter_core::making::pairing::Mismatch;
/// use tenter_core::{Answer, Confidence, Figure, Length, Ratio};
///
/// // 24 in of seam, 1/4 in left over.
/// let [grown, firm] = [16, 0].map(|count| Figure::exact(Ratio::new(count, 24 * 64).unwrap()));
/// let mismatch = Mismatch::of(grown, firm, Length::from_inch_64ths(24 * 64), Confidence::default()).unwrap();
/// assert_eq!(mismatch.length, Length::from_inch_64ths(16));
/// assert_eq!(mismatch.share.ratio.percent(2).to_string(), "1.04");
/// assert_eq!(mismatch.answer, Answer::Over);
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct Mismatch {
    /// As a share of the seam, without sign.
    pub share: Figure,
    /// Over the whole seam, to the nearest step.
    pub length: Length,
    /// The share from which it shows: [`MISMATCH_FROM_PERCENT`] or [`MISMATCH_FROM`], whichever comes first.
    pub shows_from: Ratio,
    /// The cloth that becomes longer; none where both become equally long.
    pub longer: Option<Which>,
    /// *Meets* where it does not show, *over* where it does.
    pub answer: Answer,
    /// The chance that it does not show.
    pub chance: f32,
}

impl Mismatch {
    /// Compares the changes in length of two cloths over a seam.
    ///
    /// # Errors
    ///
    /// [`MakingError::Seam`] unless the seam is longer than zero, [`MakingError::TooLarge`].
    ///
    /// ```
    /// use tenter_core::making::{error::MakingError, pairing::Mismatch};
    /// use tenter_core::{Confidence, Figure, Length, Ratio};
    ///
    /// let none = Figure::exact(Ratio::new(0, 1).unwrap());
    /// assert_eq!(Mismatch::of(none, none, Length::ZERO, Confidence::default()), Err(MakingError::Seam));
    /// ```
    pub fn of(first: Figure, second: Figure, seam: Length, confidence: Confidence) -> Result<Self, MakingError> {
        let steps = positive(seam, MakingError::Seam)?;
        let (share, longer) = gap(first, second).ok_or(MakingError::TooLarge)?;
        let by_share = Ratio::new(MISMATCH_FROM_PERCENT, 100).unwrap_or(Ratio::ZERO);
        let by_length = Ratio::new(MISMATCH_FROM.steps().into(), steps).unwrap_or(Ratio::ZERO);
        let shows_from = by_share.min(by_length);
        let length = scaled(seam, share.ratio.numerator(), share.ratio.denominator(), Round::Nearest);
        let chance = 1.0 - beyond(share, shows_from);
        Ok(Self {
            share,
            length: length.ok_or(MakingError::TooLarge)?,
            shows_from,
            longer,
            answer: confidence.judge(chance, Answer::Over),
            chance,
        })
    }

    /// Half the width of the two-sided interval around [`Mismatch::length`] over the same seam, in millimetres.
    ///
    /// ```
    /// use tenter_core::making::pairing::Mismatch;
    /// use tenter_core::{Confidence, Figure, Length, Ratio};
    ///
    /// let [grown, firm] = [3, 0].map(|percent| Figure { u: 0.5, ..Figure::exact(Ratio::new(percent, 100).unwrap()) });
    /// let seam = Length::from_mm(500);
    /// let mismatch = Mismatch::of(grown, firm, seam, Confidence::default()).unwrap();
    /// // 1.96 · √2 · 0.5 % of half a metre.
    /// assert!((mismatch.half_width_mm(seam, Confidence::default()) - 6.93).abs() < 0.01);
    /// ```
    #[must_use]
    pub fn half_width_mm(&self, seam: Length, confidence: Confidence) -> f32 {
        self.share.half_width(confidence) / 100.0 * seam.mm()
    }
}

/// What two cloths do in one seam.
///
/// ```
/// use tenter_core::making::pairing::{Edge, Match, Pair};
/// use tenter_core::{Confidence, Figure, Length, Ratio};
///
/// let edge = |percent| Edge { stretch: Figure::exact(Ratio::new(percent, 100).unwrap()), growth: None, washing: None };
/// let pair = Pair::of(&edge(5), &edge(20), Length::from_mm(600), None, Confidence::default()).unwrap();
/// assert_eq!(pair.answer, Match::Handle);
/// assert_eq!(pair.stretch.ratio.percent(0).to_string(), "5");
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct Pair {
    /// The stretch of the seam: the least of the two cloths and the stitch.
    pub stretch: Figure,
    /// Which of them that is.
    pub least: Least,
    /// The gap in stretch, without sign.
    pub gap: Figure,
    /// The cloth that stretches more; none where both read the same.
    pub stretchier: Option<Which>,
    /// The chances of the gap.
    pub chances: Chances,
    /// The difference in growth over the seam; none where either was not read.
    pub growth: Option<Mismatch>,
    /// The difference in washing over the seam; none where either was not measured.
    pub washing: Option<Mismatch>,
    /// How they go together, at the asked confidence: by the gap, and no less than *handle* where a difference shows.
    pub answer: Match,
    /// The chance of what decides the answer: the gap, or a difference in length that shows. None where it is too close to
    /// call.
    ///
    /// ```
    /// use tenter_core::making::pairing::{Edge, Match, Pair};
    /// use tenter_core::{Confidence, Figure, Length, Ratio};
    ///
    /// let percent = |percent| Figure::exact(Ratio::new(percent, 100).unwrap());
    /// let edge = |grown| Edge { stretch: percent(20), growth: Some(percent(grown)), washing: None };
    /// let pair = Pair::of(&edge(1), &edge(5), Length::from_mm(600), None, Confidence::default()).unwrap();
    /// // Not for the gap, of which there is none.
    /// assert_eq!((pair.answer, pair.chances.handle, pair.chance), (Match::Handle, 0.0, Some(1.0)));
    /// ```
    pub chance: Option<f32>,
}

impl Pair {
    /// Judges two cloths in a seam of the given length, sewn with `stitch` if that is known.
    ///
    /// # Errors
    ///
    /// [`MakingError::Seam`] unless the seam is longer than zero, [`MakingError::TooLarge`].
    ///
    /// ```
    /// use tenter_core::making::pairing::{Edge, Least, Pair};
    /// use tenter_core::making::stitch::Stitch;
    /// use tenter_core::{Confidence, Figure, Length, Ratio};
    ///
    /// let knit = Edge { stretch: Figure::exact(Ratio::new(60, 100).unwrap()), growth: None, washing: None };
    /// let seam = Length::from_mm(400);
    /// let pair = Pair::of(&knit, &knit, seam, Some(Stitch::Straight), Confidence::default()).unwrap();
    /// assert_eq!(pair.least, Least::Stitch); // Whatever the knit gives, a straight stitch pops first.
    /// ```
    pub fn of(
        first: &Edge,
        second: &Edge,
        seam: Length,
        stitch: Option<Stitch>,
        confidence: Confidence,
    ) -> Result<Self, MakingError> {
        positive(seam, MakingError::Seam)?;
        let (gap, stretchier) = gap(first.stretch, second.stretch).ok_or(MakingError::TooLarge)?;
        let mismatch = |one: Option<Figure>, other: Option<Figure>| {
            one.zip(other).map(|(one, other)| Mismatch::of(one, other, seam, confidence)).transpose()
        };
        let (growth, washing) = (mismatch(first.growth, second.growth)?, mismatch(first.washing, second.washing)?);
        let (stretch, least) = least(first, second, stitch);
        let chances = chances(gap);
        let (answer, chance) = [growth, washing].iter().flatten().fold(by_gap(chances, confidence), with_mismatch);
        Ok(Self { stretch, least, gap, stretchier, chances, growth, washing, answer, chance })
    }
}

/// The difference of two independent figures without its sign, and which is the larger.
fn gap(first: Figure, second: Figure) -> Option<(Figure, Option<Which>)> {
    let signed = first.ratio.minus(second.ratio)?;
    let larger = match signed.cmp(&Ratio::ZERO) {
        core::cmp::Ordering::Greater => Some(Which::First),
        core::cmp::Ordering::Less => Some(Which::Second),
        core::cmp::Ordering::Equal => None,
    };
    let [first, second] = [first, second].map(|figure| Variance { value: figure.u * figure.u, dof: figure.dof });
    let both = uncertainty::sum(&[first, second]);
    Some((Figure { u: both.u(), dof: both.dof, ..Figure::exact(signed.abs()) }, larger))
}

/// The chance that a difference, of which the sign is not asked, reaches `limit`.
fn beyond(gap: Figure, limit: Ratio) -> f32 {
    if gap.u == 0.0 {
        return if gap.ratio >= limit { 1.0 } else { 0.0 };
    }
    let other_side = student::upper_tail((gap.ratio.percent_f32() + limit.percent_f32()) / gap.u, gap.dof);
    (gap.chance_at_least(limit) + other_side).min(1.0)
}

fn chances(gap: Figure) -> Chances {
    let points = |points| Ratio::new(points, 100).unwrap_or(Ratio::ZERO);
    let not_alike = beyond(gap, points(HANDLE_FROM_POINTS));
    let top = points(BAND_ABOVE_POINTS);
    // On the upper limit itself handling still does.
    let band = if gap.u == 0.0 && gap.ratio == top { 0.0 } else { beyond(gap, top) };
    Chances { alike: 1.0 - not_alike, handle: (not_alike - band).max(0.0), band }
}

/// An answer, and the chance of what decides it.
type Judged = (Match, Option<f32>);

fn by_gap(chances: Chances, confidence: Confidence) -> Judged {
    let Chances { alike, handle, band } = chances;
    let sure = [(Match::Alike, alike), (Match::Handle, handle), (Match::BandToBody, band)];
    match sure.into_iter().find(|(_, chance)| confidence.is_sure(*chance)) {
        Some((answer, chance)) => (answer, Some(chance)),
        None if alike >= band => (Match::Close(Between::AlikeAndHandle), None),
        None => (Match::Close(Between::HandleAndBand), None),
    }
}

fn with_mismatch(by_gap: Judged, mismatch: &Mismatch) -> Judged {
    match (mismatch.answer, by_gap.0) {
        (Answer::Over, Match::Alike | Match::Close(Between::AlikeAndHandle)) => {
            (Match::Handle, Some(1.0 - mismatch.chance))
        }
        (Answer::Close, Match::Alike) => (Match::Close(Between::AlikeAndHandle), None),
        _ => by_gap,
    }
}

fn least(first: &Edge, second: &Edge, stitch: Option<Stitch>) -> (Figure, Least) {
    let (mut stretch, mut least) = if first.stretch.ratio <= second.stretch.ratio {
        (first.stretch, Least::Cloth(Which::First))
    } else {
        (second.stretch, Least::Cloth(Which::Second))
    };
    if let Some(gives) = stitch.and_then(Stitch::gives).filter(|gives| *gives < stretch.ratio) {
        (stretch, least) = (Figure::exact(gives), Least::Stitch);
    }
    (stretch, least)
}
