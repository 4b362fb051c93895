//! How much longer one of two cloths becomes than the other over their seam.

use super::{MISMATCH_FROM, MISMATCH_FROM_PERCENT, SeamEdge, Which};
use crate::answer::Figure;
use crate::answer::confidence::Confidence;
use crate::answer::verdict::Answer;
use crate::making::error::{MakingError, positive};
use crate::making::scaled::{Round, scaled};
use crate::number::decimal::Decimal;
use crate::number::ratio::Ratio;
use crate::reading::length::Length;
use crate::statistics::student;
use crate::statistics::uncertainty::{self, Variance};

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
        Ok(Self {
            length: length.ok_or(MakingError::TooLarge)?,
            longer,
            ..Self::judged(1.0 - beyond(share, shows_from), share, shows_from, confidence)
        })
    }

    /// The answer to a chance that it does not show.
    fn judged(chance: f32, share: Figure, shows_from: Ratio, confidence: Confidence) -> Self {
        let answer = confidence.judge(chance, Answer::Over);
        Self { share, length: Length::ZERO, shows_from, longer: None, answer, chance }
    }

    /// The same in a seam that gives no more than this: a cloth stays longer by no more than it was stretched, so that a
    /// difference shows at most as likely as the seam gives as much.
    pub(super) fn within(self, gives: Figure, confidence: Confidence) -> Self {
        let chance = self.chance.max(1.0 - gives.chance_at_least(self.shows_from));
        Self { answer: confidence.judge(chance, Answer::Over), chance, ..self }
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

/// The growth of a cloth in a seam that gives less than it was pulled to: in proportion, as the seam never pulls it
/// farther. Counted from what the cloth itself gave, by which its growth was read; never more than was read.
///
/// Proportion is the tool's own: growth rises with the extension, and no law for it was found in print.
pub(super) fn growth_in_seam(edge: &SeamEdge, seam: Figure) -> Option<Figure> {
    let growth = edge.growth?;
    let (own, gives) = (edge.stretch.ratio.percent_f32(), seam.ratio.percent_f32().max(0.0));
    if seam.ratio >= edge.stretch.ratio || own <= 0.0 {
        return Some(growth);
    }
    let (share, grown) = (gives / own, growth.ratio.percent_f32());
    let variance = |figure: Figure| Variance { value: figure.u * figure.u, dof: figure.dof };
    let parts = [
        variance(growth).times(share),
        variance(seam).times(grown / own),
        variance(edge.stretch).times(grown * share / own),
    ];
    let all = uncertainty::sum(&parts);
    let ratio = Ratio::new(Decimal::round(grown * share, 3).scaled(), 100_000)?;
    Some(Figure { u: all.u(), dof: all.dof, ..Figure::exact(ratio) })
}

/// The difference of two independent figures without its sign, and which is the larger.
pub(super) fn gap(first: Figure, second: Figure) -> Option<(Figure, Option<Which>)> {
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
pub(super) fn beyond(gap: Figure, limit: Ratio) -> f32 {
    if gap.u == 0.0 {
        return if gap.ratio >= limit { 1.0 } else { 0.0 };
    }
    let other_side = student::upper_tail((gap.ratio.percent_f32() + limit.percent_f32()) / gap.u, gap.dof);
    (gap.chance_at_least(limit) + other_side).min(1.0)
}
