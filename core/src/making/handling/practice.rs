//! What to do at the machine with cloth that stretches.

use heapless::Vec;

use super::STRETCHES_FROM_PERCENT;
use super::cloth::{Cloth, gives_from};
use crate::answer::source::Source;

/// What to do at the machine.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum Practice {
    /// A walking foot, or less pressure on the foot, so that the upper layer is not pushed longer.
    WalkingFoot,
    /// Sew a sample and stretch it hard; if a thread breaks, loosen the upper tension and sew it again.
    StretchSample,
    /// Let no cloth hang off the table, and pin within the allowances.
    LieFlat,
}

/// One line of practice.
///
/// ```
/// use tenter_core::Construction;
/// use tenter_core::making::handling::{Cloth, practices};
///
/// assert!(practices(&Cloth::new(Construction::Woven)).is_empty());
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct PracticeLine {
    /// What to do.
    pub practice: Practice,
    /// Where it comes from.
    pub source: Source,
}

/// What a cloth calls for at the machine: nothing under [`STRETCHES_FROM_PERCENT`].
///
/// ```
/// use tenter_core::Construction;
/// use tenter_core::making::handling::{Cloth, Practice, practices};
/// use tenter_core::{Figure, Ratio};
///
/// let jersey = Cloth { crosswise: Some(Figure::exact(Ratio::new(50, 100).unwrap())), ..Cloth::new(Construction::Knit) };
/// assert_eq!(practices(&jersey)[0].practice, Practice::WalkingFoot);
/// ```
#[must_use]
pub fn practices(cloth: &Cloth) -> Vec<PracticeLine, 3> {
    let mut lines = Vec::new();
    if !gives_from(cloth.most_stretch(), STRETCHES_FROM_PERCENT) {
        return lines;
    }
    for practice in [Practice::WalkingFoot, Practice::StretchSample, Practice::LieFlat] {
        let _ = lines.push(PracticeLine { practice, source: Source::CommonPractice }); // Room for all.
    }
    lines
}
