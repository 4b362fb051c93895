//! How sure an answer must be, and a chance turned into an answer.

use crate::answer::verdict::Answer;
use crate::number::Decimal;

/// How sure an answer must be, one-sided: a chance from 50.1 to 99.9 %, by default 95 %.
///
/// ```
/// use tenter_core::{Answer, Confidence};
///
/// let sure = Confidence::default();
/// assert_eq!(sure.judge(0.96, Answer::Short), Answer::Meets);
/// assert_eq!(sure.judge(0.04, Answer::Short), Answer::Short);
/// assert_eq!(sure.judge(0.50, Answer::Short), Answer::Close);
/// assert!(sure.is_sure(0.95) && !sure.is_sure(f32::NAN));
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
    /// A confidence in tenths of a percent; `None` unless it lies from 50.1 to 99.9 %.
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

    /// In percent, with one decimal.
    #[must_use]
    pub fn percent(self) -> Decimal {
        Decimal::new(self.per_mille.into(), 1)
    }

    /// As a chance from 0 to 1.
    #[must_use]
    pub fn chance(self) -> f32 {
        f32::from(self.per_mille) / 1000.0
    }

    /// Whether a chance, 0 to 1, is sure enough. An undefined chance never is.
    #[must_use]
    pub fn is_sure(self, chance: f32) -> bool {
        chance >= self.chance()
    }

    /// The answer that a chance of conforming, 0 to 1, amounts to: [`Answer::Meets`] where it is sure, `no` where the
    /// opposite is, else [`Answer::Close`]. The decision rule is that of JCGM 106:2012 § 8.3, guarded on both sides.
    #[must_use]
    pub fn judge(self, chance: f32, no: Answer) -> Answer {
        self.judge_with(1.0, chance, no)
    }

    /// The same, where the answer may take only a share of the risk of being wrong.
    pub(crate) fn judge_with(self, share: f32, chance: f32, no: Answer) -> Answer {
        let sure = if share < 1.0 { 1.0 - share * (1.0 - self.chance()) } else { self.chance() };
        if chance >= sure {
            Answer::Meets
        } else if 1.0 - chance >= sure {
            no
        } else {
            Answer::Close
        }
    }
}
