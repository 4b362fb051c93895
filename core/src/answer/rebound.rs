//! How well a cloth comes back after a pull, in one grade.

use crate::answer::class::{GrowthClass, RecoveryClass};
use crate::answer::confidence::Confidence;
use crate::answer::evaluation::Ask;
use crate::answer::figures::Figures;
use crate::answer::note::recovery_is_readable;
use crate::number::ratio::Ratio;
use crate::number::words;

/// From this stretch on, in percent, recovery tells as much as growth: where the US method for stretch wovens begins (ASTM
/// D3107). Of cloth that stretches less, recovery is a quotient of two small lengths.
pub const RECOVERY_FROM_PERCENT: i64 = 12;

/// How well a cloth comes back, from the best to the worst.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum ReboundGrade {
    /// Hardly any growth, and a recovery of 95 % or more.
    Excellent,
    /// Growth up to 3 %, and a recovery of 90 % or more.
    Good,
    /// Growth up to 6 %, and a recovery of 80 % or more: for loose garments.
    Fair,
    /// More growth, or less recovery: it bags.
    Poor,
}

words!(ReboundGrade { Excellent => "excellent", Good => "good", Fair => "fair", Poor => "poor" });

/// How well a cloth comes back, and which figure says so: the worse one of growth and recovery.
///
/// ```
/// use tenter_core::{Ask, Confidence, Figures, Grain, Length, PullTest, Rebound, ReboundGrade, Scatter};
///
/// // 50 % of stretch, 12 % of it left: growth poor, recovery 76 %.
/// let mut test = PullTest::new(Length::from_mm(100), Grain::Crosswise)?.with_settling_pull(true);
/// test.add_pull(Length::from_mm(150))?;
/// test.add_rest(1800, Length::from_mm(112))?;
/// let figures = Figures::of(&test, Scatter::ASSUMED)?;
/// let rebound = Rebound::of(&figures, Confidence::default()).unwrap();
/// assert_eq!((rebound.grade, rebound.by), (ReboundGrade::Poor, Ask::Growth));
/// # Ok::<(), tenter_core::TestError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct Rebound {
    /// The grade.
    pub grade: ReboundGrade,
    /// The figure that decides: growth, or recovery where that is the worse one.
    pub by: Ask,
}

impl Rebound {
    /// Of the figures of a cloth; none where nothing was read after release. Recovery counts where it can be read, and
    /// from [`RECOVERY_FROM_PERCENT`] of stretch on.
    ///
    /// ```
    /// use tenter_core::{Confidence, Figures, Grain, Length, PullTest, Rebound, Scatter};
    ///
    /// let mut test = PullTest::new(Length::from_mm(100), Grain::Crosswise)?;
    /// test.add_pull(Length::from_mm(150))?;
    /// assert_eq!(Rebound::of(&Figures::of(&test, Scatter::ASSUMED)?, Confidence::default()), None);
    /// # Ok::<(), tenter_core::TestError>(())
    /// ```
    #[must_use]
    pub fn of(figures: &Figures, confidence: Confidence) -> Option<Self> {
        let rest = figures.rest?;
        let growth = match GrowthClass::of(rest.growth.ratio) {
            GrowthClass::HardlyAny => ReboundGrade::Excellent,
            GrowthClass::Good => ReboundGrade::Good,
            GrowthClass::Watch => ReboundGrade::Fair,
            GrowthClass::Poor => ReboundGrade::Poor,
        };
        let stretches = Ratio::new(RECOVERY_FROM_PERCENT, 100).is_some_and(|from| figures.stretch.ratio >= from);
        let recovery = rest.recovery.filter(|recovery| stretches && recovery_is_readable(recovery, confidence));
        let recovery = recovery.map(|recovery| match RecoveryClass::of(recovery.ratio) {
            RecoveryClass::Excellent => ReboundGrade::Excellent,
            RecoveryClass::Good => ReboundGrade::Good,
            RecoveryClass::Fair => ReboundGrade::Fair,
            RecoveryClass::Poor => ReboundGrade::Poor,
        });
        Some(match recovery.filter(|recovery| *recovery > growth) {
            Some(grade) => Self { grade, by: Ask::Recovery },
            None => Self { grade: growth, by: Ask::Growth },
        })
    }
}
