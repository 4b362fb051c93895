//! Two cloths in one seam.
//!
//! No numerical rule for joining two cloths was found in print, so the limits here are the tool's own and public.

mod advice;
mod mismatch;

pub use advice::{Advice, AdviceLine, AdviceReason, MOST_LINES};
pub use mismatch::Mismatch;

use super::error::{MakingError, positive};
use super::stitch::Stitch;
use crate::answer::Figure;
use crate::answer::class::GrowthClass;
use crate::answer::confidence::Confidence;
use crate::answer::verdict::Answer;
use crate::making::handling::StayLine;
use crate::number::ratio::Ratio;
use crate::reading::construction::Construction;
use crate::reading::length::Length;
use crate::reading::limit::Limit;
use mismatch::{beyond, gap, growth_in_seam};

/// From this gap in stretch on, in points, two cloths want handling. The tool's own.
pub const HANDLE_FROM_POINTS: i64 = 10;

/// Above this gap in stretch, in points, two cloths go together only as a band and a body. The tool's own.
pub const BAND_ABOVE_POINTS: i64 = 25;

/// From this share of the seam on, in percent, a difference in length shows. The tool's own, after the one that was
/// reported: 1/4 in in 24 in (*Which fabric on top*, 2017).
pub const MISMATCH_FROM_PERCENT: i64 = 1;

/// From this difference in length on it shows in a seam of any length, if it comes before the share. The tool's own.
pub const MISMATCH_FROM: Length = Length::from_mm(5);

/// From this multiple on, one of two uncertainties is the one to mend. The tool's own.
const CLEARLY_WORSE: f32 = 1.5;

/// What is known of one cloth along the seam.
///
/// ```
/// use tenter_core::{Figure, Ratio, making::pairing::SeamEdge};
///
/// let rib = SeamEdge::new(Figure::exact(Ratio::new(80, 100).unwrap()));
/// assert_eq!(rib.growth, None);
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct SeamEdge {
    /// How the cloth is made.
    pub construction: Construction,
    /// What keeps it before the seam, as [`stay`](crate::making::handling::stay) has it; none where nothing does.
    pub stay: Option<StayLine>,
    /// Its stretch along the seam.
    pub stretch: Figure,
    /// Its growth along the seam, where that was read.
    pub growth: Option<Figure>,
    /// Its change in washing along the seam, negative for shrinkage, where that was measured.
    pub washing: Option<Figure>,
}

impl SeamEdge {
    /// An edge of which only the stretch is known.
    ///
    /// ```
    /// use tenter_core::making::pairing::SeamEdge;
    /// use tenter_core::{Construction, Figure, Ratio};
    ///
    /// assert_eq!(SeamEdge::new(Figure::exact(Ratio::ZERO)).construction, Construction::Other);
    /// ```
    #[must_use]
    pub const fn new(stretch: Figure) -> Self {
        Self { construction: Construction::Other, stay: None, stretch, growth: None, washing: None }
    }
}

/// What joins two cloths.
///
/// ```
/// use tenter_core::Length;
/// use tenter_core::making::pairing::Joint;
///
/// assert_eq!(Joint::of(Length::from_mm(600)).asked, None);
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct Joint {
    /// Its length.
    pub length: Length,
    /// The stitch, where it is chosen.
    pub stitch: Option<Stitch>,
    /// The cloth that is a band, cut shorter and pulled to match; none in a seam without one.
    pub band: Option<Which>,
    /// The least stretch that is asked along it.
    pub asked: Option<Limit>,
}

impl Joint {
    /// A seam of which nothing else is known.
    ///
    /// ```
    /// use tenter_core::Length;
    /// use tenter_core::making::pairing::Joint;
    ///
    /// assert_eq!(Joint::of(Length::from_mm(600)).band, None);
    /// ```
    #[must_use]
    pub const fn of(length: Length) -> Self {
        Self { length, stitch: None, band: None, asked: None }
    }
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
/// assert_ne!(Match::Handle, Match::Close(Between::HandleAndUnlike));
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
    /// Too far apart for this seam, which has no band: one edge is taped, or another cloth is chosen.
    Unlike,
    /// The seam gives less than is asked along it.
    TooFirm,
    /// Too close to call between two of these.
    Close(Between),
}

/// Between which two a pairing is too close to call.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum Between {
    /// Alike, or to be handled.
    AlikeAndHandle,
    /// To be handled, or too far apart.
    HandleAndUnlike,
    /// It gives what is asked along it, or it does not.
    GivesAndTooFirm,
}

/// What an answer that is too close to call hangs on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum PairDoubt {
    /// How far the stretch of the two differs.
    Stretch,
    /// Which of them stays longer after release. Their stretch is sure.
    Growth,
    /// Which of them the wash shortens more. Their stretch is sure.
    Washing,
    /// Whether the seam gives what is asked along it.
    Give,
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

/// Whether a seam gives what is asked along it.
///
/// ```
/// use tenter_core::making::pairing::{SeamEdge, Match, Joint, Pair};
/// use tenter_core::{Answer, Confidence, Figure, Length, Limit, Ratio};
///
/// let edge = |per_mille| SeamEdge::new(Figure::exact(Ratio::new(per_mille, 1000).unwrap()));
/// let seam = Joint { asked: Limit::milli_percent(5_000).ok(), ..Joint::of(Length::from_mm(600)) };
/// let pair = Pair::of(&edge(61), &edge(4), &seam, Confidence::default()).unwrap();
/// assert_eq!((pair.answer, pair.give.unwrap().answer), (Match::TooFirm, Answer::Short));
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct Give {
    /// What is asked.
    pub asked: Limit,
    /// *Meets*, *short* or *close*.
    pub answer: Answer,
    /// The chance that it gives as much.
    pub chance: f32,
}

/// What two cloths do in one seam.
///
/// ```
/// use tenter_core::making::pairing::{SeamEdge, Match, Joint, Pair};
/// use tenter_core::{Confidence, Figure, Length, Ratio};
///
/// let edge = |percent| SeamEdge::new(Figure::exact(Ratio::new(percent, 100).unwrap()));
/// let pair = Pair::of(&edge(5), &edge(20), &Joint::of(Length::from_mm(600)), Confidence::default()).unwrap();
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
    /// The difference in growth over the seam, of each cloth as much as the seam lets it stretch; none where either was
    /// not read.
    pub growth: Option<Mismatch>,
    /// The difference in washing over the seam; none where either was not measured.
    pub washing: Option<Mismatch>,
    /// Whether the seam gives what is asked along it; none where nothing is.
    pub give: Option<Give>,
    /// How they go together, at the asked confidence: by the gap, no less than *handle* where a difference shows, and
    /// *too firm* where the seam gives less than is asked.
    pub answer: Match,
    /// What the answer hangs on, where it is too close to call.
    pub open: Option<PairDoubt>,
    /// The chance of what decides the answer: the gap, a difference in length that shows, or what the seam gives. None
    /// where it is too close to call, and of a band, which is one whatever the gap.
    ///
    /// ```
    /// use tenter_core::making::pairing::{SeamEdge, Match, Joint, Pair};
    /// use tenter_core::{Confidence, Figure, Length, Ratio};
    ///
    /// let percent = |percent| Figure::exact(Ratio::new(percent, 100).unwrap());
    /// let edge = |grown| SeamEdge { growth: Some(percent(grown)), ..SeamEdge::new(percent(20)) };
    /// let seam = Joint::of(Length::from_mm(600));
    /// let pair = Pair::of(&edge(1), &edge(5), &seam, Confidence::default()).unwrap();
    /// // Not for the gap, of which there is none.
    /// assert_eq!((pair.answer, pair.chances.handle, pair.chance), (Match::Handle, 0.0, Some(1.0)));
    /// ```
    pub chance: Option<f32>,
    /// How each side is made, what keeps its edge, and whether it grows so much that it will bag.
    sides: [(Construction, Option<StayLine>, bool); 2],
    /// Whose stretch and whose growth is known clearly less well.
    vaguer: [Option<Which>; 2],
}

impl Pair {
    /// Judges two cloths in a seam.
    ///
    /// # Errors
    ///
    /// [`MakingError::Seam`] unless the seam is longer than zero, [`MakingError::TooLarge`].
    ///
    /// ```
    /// use tenter_core::making::pairing::{SeamEdge, Least, Joint, Pair};
    /// use tenter_core::making::stitch::Stitch;
    /// use tenter_core::{Confidence, Figure, Length, Ratio};
    ///
    /// let knit = SeamEdge::new(Figure::exact(Ratio::new(60, 100).unwrap()));
    /// let seam = Joint { stitch: Some(Stitch::Straight), ..Joint::of(Length::from_mm(400)) };
    /// let pair = Pair::of(&knit, &knit, &seam, Confidence::default()).unwrap();
    /// assert_eq!(pair.least, Least::Stitch); // Whatever the knit gives, a straight stitch pops first.
    /// ```
    pub fn of(first: &SeamEdge, second: &SeamEdge, seam: &Joint, confidence: Confidence) -> Result<Self, MakingError> {
        positive(seam.length, MakingError::Seam)?;
        let (gap, stretchier) = gap(first.stretch, second.stretch).ok_or(MakingError::TooLarge)?;
        let mismatch = |one: Option<Figure>, other: Option<Figure>| {
            one.zip(other).map(|(one, other)| Mismatch::of(one, other, seam.length, confidence)).transpose()
        };
        let (stretch, least) = least(first, second, seam.stitch);
        let grown = [first, second].map(|edge| growth_in_seam(edge, stretch));
        let growth = mismatch(grown[0], grown[1])?.map(|growth| growth.within(stretch, confidence));
        let washing = mismatch(first.washing, second.washing)?;
        let give = seam.asked.map(|asked| {
            let chance = stretch.chance_at_least(asked.ratio());
            Give { asked, answer: confidence.judge(chance, Answer::Short), chance }
        });
        let chances = chances(gap);
        let band = seam.band.filter(|band| Some(*band) == stretchier);
        let judged = by_gap(chances, band.is_some(), confidence);
        let judged = with_mismatch(judged, growth.as_ref(), PairDoubt::Growth);
        let judged = with_mismatch(judged, washing.as_ref(), PairDoubt::Washing);
        let Judged { answer, open, chance } = with_give(judged, give.as_ref());
        let grows =
            |edge: &SeamEdge| edge.growth.is_some_and(|growth| GrowthClass::of(growth.ratio) == GrowthClass::Poor);
        Ok(Self {
            stretch,
            least,
            gap,
            stretchier,
            chances,
            growth,
            washing,
            give,
            answer,
            open,
            chance,
            sides: [first, second].map(|edge| (edge.construction, edge.stay, grows(edge))),
            vaguer: [vaguer(Some(first.stretch), Some(second.stretch)), vaguer(grown[0], grown[1])],
        })
    }
}

/// The figure that is known clearly less well than the other.
fn vaguer(first: Option<Figure>, second: Option<Figure>) -> Option<Which> {
    let (first, second) = (first?.u, second?.u);
    if first > CLEARLY_WORSE * second {
        Some(Which::First)
    } else if second > CLEARLY_WORSE * first {
        Some(Which::Second)
    } else {
        None
    }
}

fn chances(gap: Figure) -> Chances {
    let points = |points| Ratio::new(points, 100).unwrap_or(Ratio::ZERO);
    let not_alike = beyond(gap, points(HANDLE_FROM_POINTS));
    let top = points(BAND_ABOVE_POINTS);
    // On the upper limit itself handling still does.
    let band = if gap.u == 0.0 && gap.ratio == top { 0.0 } else { beyond(gap, top) };
    Chances { alike: 1.0 - not_alike, handle: (not_alike - band).max(0.0), band }
}

/// An answer, what it hangs on, and the chance of what decides it.
#[derive(Clone, Copy)]
struct Judged {
    answer: Match,
    open: Option<PairDoubt>,
    chance: Option<f32>,
}

impl Judged {
    const fn sure(answer: Match, chance: f32) -> Self {
        Self { answer, open: None, chance: Some(chance) }
    }

    const fn close(between: Between, open: PairDoubt) -> Self {
        Self { answer: Match::Close(between), open: Some(open), chance: None }
    }
}

fn by_gap(chances: Chances, is_band: bool, confidence: Confidence) -> Judged {
    if is_band {
        // A band is cut shorter whatever the gap.
        return Judged { answer: Match::BandToBody, open: None, chance: None };
    }
    let Chances { alike, handle, band } = chances;
    let sure = [(Match::Alike, alike), (Match::Handle, handle), (Match::Unlike, band)];
    match sure.into_iter().find(|(_, chance)| confidence.is_sure(*chance)) {
        Some((answer, chance)) => Judged::sure(answer, chance),
        None if alike >= band => Judged::close(Between::AlikeAndHandle, PairDoubt::Stretch),
        None => Judged::close(Between::HandleAndUnlike, PairDoubt::Stretch),
    }
}

fn with_mismatch(so_far: Judged, mismatch: Option<&Mismatch>, open: PairDoubt) -> Judged {
    let Some(mismatch) = mismatch else { return so_far };
    match (mismatch.answer, so_far.answer) {
        (Answer::Over, Match::Alike | Match::Close(Between::AlikeAndHandle)) => {
            Judged::sure(Match::Handle, 1.0 - mismatch.chance)
        }
        (Answer::Close, Match::Alike) => Judged::close(Between::AlikeAndHandle, open),
        _ => so_far,
    }
}

/// A seam that takes away what a view asks for is no good, however alike the cloths.
fn with_give(so_far: Judged, give: Option<&Give>) -> Judged {
    let Some(give) = give else { return so_far };
    match (give.answer, so_far.answer) {
        (_, Match::Unlike) => so_far,
        (Answer::Short, _) => Judged::sure(Match::TooFirm, 1.0 - give.chance),
        (Answer::Close, Match::Alike | Match::Handle | Match::BandToBody) => {
            Judged::close(Between::GivesAndTooFirm, PairDoubt::Give)
        }
        _ => so_far,
    }
}

fn least(first: &SeamEdge, second: &SeamEdge, stitch: Option<Stitch>) -> (Figure, Least) {
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
