//! What to do at the machine with cloth that stretches.

use heapless::Vec;

use super::STRETCHES_FROM_PERCENT;
use super::cloth::{Cloth, gives_from};
use crate::answer::source::Source;
use crate::making::garment::GarmentKind;
use crate::reading::construction::Construction;

/// What to do at the machine.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum Practice {
    /// A walking foot, or less pressure on the foot, so that the upper layer is not pushed longer.
    WalkingFoot,
    /// Sew a sample and stretch it hard; if a thread breaks, loosen the upper tension and sew it again.
    StretchSample,
    /// Sew each seam from its centre outwards, in two halves, so that both ends share what one layer gains.
    CentreOutwards,
    /// Let no cloth hang off the table, and pin within the allowances.
    LieFlat,
}

/// One line of practice.
///
/// ```
/// use tenter_core::Construction;
/// use tenter_core::making::handling::{Cloth, practices};
///
/// assert!(practices(&Cloth::new(Construction::Woven), None).is_empty());
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct PracticeLine {
    /// What to do.
    pub practice: Practice,
    /// Where it comes from.
    pub source: Source,
}

/// What a cloth calls for at the machine: nothing under [`STRETCHES_FROM_PERCENT`], but that the seams of woven outerwear that
/// gives at all are sewn from the centre outwards.
///
/// ```
/// use tenter_core::Construction;
/// use tenter_core::making::handling::{Cloth, Practice, practices};
/// use tenter_core::{Figure, Ratio};
///
/// let jersey = Cloth { crosswise: Some(Figure::exact(Ratio::new(50, 100).unwrap())), ..Cloth::new(Construction::Knit) };
/// assert_eq!(practices(&jersey, None)[0].practice, Practice::WalkingFoot);
/// ```
#[must_use]
pub fn practices(cloth: &Cloth, garment: Option<GarmentKind>) -> Vec<PracticeLine, 4> {
    let stretches = gives_from(cloth.most_stretch(), STRETCHES_FROM_PERCENT);
    let outwards =
        garment.is_some_and(GarmentKind::is_outerwear) && cloth.construction == Construction::Woven && cloth.gives();
    let apply = [
        (stretches, Practice::WalkingFoot),
        (stretches, Practice::StretchSample),
        (outwards, Practice::CentreOutwards),
        (stretches, Practice::LieFlat),
    ];
    let mut lines = Vec::new();
    for (_, practice) in apply.into_iter().filter(|(applies, _)| *applies) {
        let _ = lines.push(PracticeLine { practice, source: Source::CommonPractice }); // Room for all.
    }
    lines
}
