//! Sizes: ease, reduction, and whether an opening passes over a body.
//!
//! A stretch is a share of the *cloth*, a reduction a share of the *body*: cloth that stretches by 50 % may be cut
//! 33.3 % smaller, not 50 %. The two have types of their own, so that one cannot be taken for the other.

mod cover;
mod wearable;

pub use cover::{HOME_TEST, mass_stretched};
pub use wearable::{LENGTHS_FROM_PERCENT, Wearable, wearable};

use super::error::{MakingError, positive};
use super::scaled::{Round, scaled};
use crate::answer::Figure;
use crate::answer::confidence::Confidence;
use crate::answer::source::Source;
use crate::answer::verdict::Answer;
use crate::number::ratio::Ratio;
use crate::reading::length::Length;

/// A stretch of cloth: the gain as a share of the relaxed length, not below zero.
///
/// ```
/// use tenter_core::{Ratio, making::sizing::Stretch};
///
/// let half = Stretch::new(Ratio::new(1, 2).unwrap()).unwrap();
/// assert_eq!(half.most_reduction().unwrap().ratio(), Ratio::new(1, 3).unwrap());
/// assert!(Stretch::new(Ratio::new(-1, 100).unwrap()).is_none());
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct Stretch(Ratio);

/// A reduction of a garment: what is taken off as a share of the body measure, from zero to below one.
///
/// ```
/// use tenter_core::{Ratio, making::sizing::Reduction};
///
/// let third = Reduction::new(Ratio::new(1, 3).unwrap()).unwrap();
/// assert_eq!(third.stretch_needed().unwrap().ratio(), Ratio::new(1, 2).unwrap());
/// assert!(Reduction::new(Ratio::new(1, 1).unwrap()).is_none());
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct Reduction(Ratio);

impl Stretch {
    /// A stretch; none below zero.
    ///
    /// ```
    /// use tenter_core::{Ratio, making::sizing::Stretch};
    ///
    /// assert!(Stretch::new(Ratio::new(0, 1).unwrap()).is_some());
    /// ```
    #[must_use]
    pub fn new(ratio: Ratio) -> Option<Self> {
        (ratio >= Ratio::ZERO).then_some(Self(ratio))
    }

    /// As a ratio.
    ///
    /// ```
    /// use tenter_core::{Ratio, making::sizing::Stretch};
    ///
    /// let fifth = Ratio::new(1, 5).unwrap();
    /// assert_eq!(Stretch::new(fifth).unwrap().ratio(), fifth);
    /// ```
    #[must_use]
    pub const fn ratio(self) -> Ratio {
        self.0
    }

    /// The stretch that a body of girth `body` asks of a garment of girth `garment`: body / garment − 1, or none of it
    /// where the garment is as wide.
    ///
    /// # Errors
    ///
    /// [`MakingError::Body`] or [`MakingError::Garment`] unless both are above zero.
    ///
    /// ```
    /// use tenter_core::{Length, making::sizing::Stretch};
    ///
    /// // A 104 cm hip in a 101 cm skirt.
    /// let needed = Stretch::needed(Length::from_mm(1040), Length::from_mm(1010)).unwrap();
    /// assert_eq!(needed.ratio().percent(1).to_string(), "3.0");
    /// ```
    pub fn needed(body: Length, garment: Length) -> Result<Self, MakingError> {
        let (body, garment) = (positive(body, MakingError::Body)?, positive(garment, MakingError::Garment)?);
        Ratio::new((body - garment).max(0), garment).map(Self).ok_or(MakingError::Garment)
    }

    /// The largest reduction, at which the cloth is just fully stretched: 1 − 1 / (1 + s). None where its terms do not
    /// fit. Of cloth that is wanted comfortable use a [part](Self::part) first.
    ///
    /// ```
    /// use tenter_core::{Ratio, making::sizing::Stretch};
    ///
    /// let quarter = Stretch::new(Ratio::new(25, 100).unwrap()).unwrap();
    /// assert_eq!(quarter.most_reduction().unwrap().ratio().percent(1).to_string(), "20.0");
    /// ```
    #[must_use]
    pub fn most_reduction(self) -> Option<Reduction> {
        let (num, den) = (self.0.numerator(), self.0.denominator());
        Ratio::new(num, num.checked_add(den)?).map(Reduction)
    }

    /// A part of it, such as the half that is used while the rest is left for comfort. None unless 0 ≤ part ≤ whole
    /// and 0 < whole.
    ///
    /// ```
    /// use tenter_core::{Ratio, making::sizing::Stretch};
    ///
    /// let all = Stretch::new(Ratio::new(50, 100).unwrap()).unwrap();
    /// let half = all.part(1, 2).unwrap();
    /// assert_eq!(half.most_reduction().unwrap().ratio().percent(1).to_string(), "20.0");
    /// ```
    #[must_use]
    pub fn part(self, part: u16, whole: u16) -> Option<Self> {
        if part > whole {
            return None;
        }
        let (part, whole) = (i64::from(part), i64::from(whole));
        Ratio::new(self.0.numerator().checked_mul(part)?, self.0.denominator().checked_mul(whole)?).map(Self)
    }

    /// Which share of `self` a needed stretch takes up; none for cloth that does not stretch.
    ///
    /// ```
    /// use tenter_core::{Ratio, making::sizing::Stretch};
    ///
    /// let [needed, measured] = [3, 20].map(|percent| Stretch::new(Ratio::new(percent, 100).unwrap()).unwrap());
    /// assert_eq!(measured.used_by(needed).unwrap().percent(0).to_string(), "15");
    /// ```
    #[must_use]
    pub fn used_by(self, needed: Self) -> Option<Ratio> {
        let num = needed.0.numerator().checked_mul(self.0.denominator())?;
        Ratio::new(num, needed.0.denominator().checked_mul(self.0.numerator())?)
    }
}

impl Stretch {
    /// What is left of it beyond a stretch that is in use: (1 + self) / (1 + used) − 1. None where nothing is left, or where
    /// its terms do not fit.
    ///
    /// ```
    /// use tenter_core::{Ratio, making::sizing::Stretch};
    ///
    /// // A cloth that doubles, worn stretched by a quarter: another 60 % are left.
    /// let [all, used] = [100, 25].map(|percent| Stretch::new(Ratio::new(percent, 100).unwrap()).unwrap());
    /// assert_eq!(all.left_after(used).unwrap().percent(0).to_string(), "60");
    /// ```
    #[must_use]
    pub fn left_after(self, used: Self) -> Option<Ratio> {
        let whole = |ratio: Ratio| ratio.numerator().checked_add(ratio.denominator());
        let all = whole(self.0)?.checked_mul(used.0.denominator())?;
        let on = whole(used.0)?.checked_mul(self.0.denominator())?;
        Ratio::new(all.checked_sub(on)?, on).filter(|left| *left >= Ratio::ZERO)
    }
}

impl Reduction {
    /// A reduction; none below zero or from one on.
    ///
    /// ```
    /// use tenter_core::{Ratio, making::sizing::Reduction};
    ///
    /// assert!(Reduction::new(Ratio::new(-1, 10).unwrap()).is_none());
    /// ```
    #[must_use]
    pub fn new(ratio: Ratio) -> Option<Self> {
        (ratio >= Ratio::ZERO && ratio.numerator() < ratio.denominator()).then_some(Self(ratio))
    }

    /// As a ratio.
    ///
    /// ```
    /// use tenter_core::{Ratio, making::sizing::Reduction};
    ///
    /// let tenth = Ratio::new(1, 10).unwrap();
    /// assert_eq!(Reduction::new(tenth).unwrap().ratio(), tenth);
    /// ```
    #[must_use]
    pub const fn ratio(self) -> Ratio {
        self.0
    }

    /// The stretch that it asks of the cloth: 1 / (1 − r) − 1. None where its terms do not fit.
    ///
    /// ```
    /// use tenter_core::{Ratio, making::sizing::Reduction};
    ///
    /// let fifth = Reduction::new(Ratio::new(1, 5).unwrap()).unwrap();
    /// assert_eq!(fifth.stretch_needed().unwrap().ratio(), Ratio::new(1, 4).unwrap());
    /// ```
    #[must_use]
    pub fn stretch_needed(self) -> Option<Stretch> {
        let (num, den) = (self.0.numerator(), self.0.denominator());
        Ratio::new(num, den.checked_sub(num)?).map(Stretch)
    }

    /// The girth that is left of a body measure, up to the next step. None unless it fits.
    ///
    /// ```
    /// use tenter_core::{Length, Ratio, making::sizing::Reduction};
    ///
    /// let third = Reduction::new(Ratio::new(1, 3).unwrap()).unwrap();
    /// let (bust, garment) = (Length::from_inch_64ths(36 * 64), Length::from_inch_64ths(24 * 64));
    /// assert_eq!(third.of(bust), Some(garment));
    /// ```
    #[must_use]
    pub fn of(self, body: Length) -> Option<Length> {
        let (num, den) = (self.0.numerator(), self.0.denominator());
        scaled(body, den.checked_sub(num)?, den, Round::Up)
    }
}

/// What a garment measure leaves beyond the body: negative where it is smaller.
///
/// ```
/// use tenter_core::{Length, making::sizing::Ease};
///
/// let ease = Ease::of(Length::from_mm(1000), Length::from_mm(950)).unwrap();
/// assert_eq!(ease.length.steps(), -50 * 1600);
/// assert_eq!(ease.share.percent(1).to_string(), "-5.0");
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct Ease {
    /// Garment − body.
    pub length: Length,
    /// The same as a share of the body.
    pub share: Ratio,
}

impl Ease {
    /// The ease of a garment of girth `garment` on a body of girth `body`.
    ///
    /// # Errors
    ///
    /// [`MakingError::Body`] or [`MakingError::Garment`] unless both are above zero.
    ///
    /// ```
    /// use tenter_core::{Length, making::{error::MakingError, sizing::Ease}};
    ///
    /// assert_eq!(Ease::of(Length::ZERO, Length::from_mm(950)), Err(MakingError::Body));
    /// ```
    pub fn of(body: Length, garment: Length) -> Result<Self, MakingError> {
        let (body_steps, steps) = (positive(body, MakingError::Body)?, positive(garment, MakingError::Garment)?);
        let share = Ratio::new(steps - body_steps, body_steps).ok_or(MakingError::Body)?;
        Ok(Self { length: Length::from_steps(garment.steps().saturating_sub(body.steps())), share })
    }
}

/// How much of its stretch a cloth is asked for in wear.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum Usage {
    /// None: the garment is as wide as the body.
    Nothing,
    /// Up to a half.
    Half,
    /// More than a half: for a garment that is meant to be tight.
    NearlyAll,
    /// More than the cloth gives.
    TooMuch,
}

impl Usage {
    /// The half as a limit is the tool's own; that only a part should be used is said in print, without a figure.
    pub const SOURCE: Source = Source::CommonPractice;

    /// Grades a needed stretch against a measured one, compared exactly.
    ///
    /// ```
    /// use tenter_core::{Ratio, making::sizing::{Stretch, Usage}};
    ///
    /// let [ten, twenty] = [10, 20].map(|percent| Stretch::new(Ratio::new(percent, 100).unwrap()).unwrap());
    /// assert_eq!(Usage::of(ten, twenty), Usage::Half);
    /// assert_eq!(Usage::of(twenty, ten), Usage::TooMuch);
    /// ```
    #[must_use]
    pub fn of(needed: Stretch, measured: Stretch) -> Self {
        if needed.0 <= Ratio::ZERO {
            Self::Nothing
        } else if needed > measured {
            Self::TooMuch
        } else if measured.part(1, 2).is_some_and(|half| needed <= half) {
            Self::Half
        } else {
            Self::NearlyAll
        }
    }
}

/// Whether cloth of a measured stretch reaches round a body: a garment worn, or an opening passed over hip, head or
/// hand.
///
/// ```
/// use tenter_core::making::sizing::{Reach, Usage};
/// use tenter_core::{Answer, Confidence, Figure, Length, Ratio};
///
/// let measured = Figure { u: 1.0, ..Figure::exact(Ratio::new(20, 100).unwrap()) };
/// let reach = Reach::of(Length::from_mm(1040), Length::from_mm(1010), measured, Confidence::default()).unwrap();
/// assert_eq!((reach.answer, reach.usage), (Answer::Meets, Usage::Half));
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct Reach {
    /// The ease, negative where the cloth must stretch.
    pub ease: Ease,
    /// The stretch that is needed.
    pub needed: Stretch,
    /// The share of the measured stretch that this takes up; none for cloth that does not stretch.
    pub used: Option<Ratio>,
    /// The same as a grade.
    pub usage: Usage,
    /// *Meets* or *short* at the asked confidence, else *close*.
    pub answer: Answer,
    /// The chance that it reaches.
    pub chance: f32,
    /// The stretch that is left for moving once it is on: (1 + measured) / (1 + needed) − 1; none where it does not reach, or
    /// where the terms do not fit.
    pub left: Option<Ratio>,
}

impl Reach {
    /// Asks whether cloth of girth `garment` reaches round `body`. A negative measured stretch counts as none.
    ///
    /// # Errors
    ///
    /// [`MakingError::Body`] or [`MakingError::Garment`] unless both are above zero.
    ///
    /// ```
    /// use tenter_core::making::sizing::Reach;
    /// use tenter_core::{Answer, Confidence, Figure, Length, Ratio};
    ///
    /// // A neck opening of 40 cm over a head of 57 cm asks for 42.5 %.
    /// let (head, neck) = (Length::from_mm(570), Length::from_mm(400));
    /// let rib = Figure { u: 2.0, ..Figure::exact(Ratio::new(43, 100).unwrap()) };
    /// assert_eq!(Reach::of(head, neck, rib, Confidence::default()).unwrap().answer, Answer::Close);
    /// ```
    pub fn of(body: Length, garment: Length, stretch: Figure, confidence: Confidence) -> Result<Self, MakingError> {
        let ease = Ease::of(body, garment)?;
        let needed = Stretch::needed(body, garment)?;
        let measured = Stretch(stretch.ratio.max(Ratio::ZERO));
        let usage = Usage::of(needed, measured);
        // Without a need nothing hangs on the cloth.
        let chance = if usage == Usage::Nothing { 1.0 } else { stretch.chance_at_least(needed.0) };
        let answer = confidence.judge(chance, Answer::Short);
        Ok(Self {
            ease,
            needed,
            used: measured.used_by(needed),
            usage,
            answer,
            chance,
            left: measured.left_after(needed),
        })
    }
}

/// Take nothing off lengths: in bending and twisting girths change little, lengths much.
pub const LENGTH_UNREDUCED: Source = Source::CommonPractice;
