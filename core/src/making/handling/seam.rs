//! Everything about one seam, which agrees with itself.

use super::asked::SeamUse;
use super::cloth::Cloth;
use super::finish::{FinishLine, finish};
use super::sewing::{Sewing, sewing};
use super::stay::{StayLine, stay};
use super::trimming::{SeamAllowance, Trimming, allowance, trimming};

/// Everything about one seam of a cloth. Needle and thread are the [cloth's](super::needle).
///
/// ```
/// use tenter_core::Construction;
/// use tenter_core::making::{garment::GarmentKind, handling::{Cloth, Seam, SeamUse}};
///
/// let side = SeamUse { garment: Some(GarmentKind::UnlinedJacket), ..SeamUse::default() };
/// let seam = Seam::of(&Cloth::new(Construction::Woven), &side);
/// assert!(seam.finish.finish.is_bound() && seam.trimming.is_none()); // Nothing is trimmed before binding.
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct Seam {
    /// How it is sewn.
    pub sewing: Sewing,
    /// How its edges are finished.
    pub finish: FinishLine,
    /// What is cut beside it.
    pub allowance: SeamAllowance,
    /// What is trimmed after it.
    pub trimming: Option<Trimming>,
    /// What keeps its edge.
    pub stay: Option<StayLine>,
}

impl Seam {
    /// Works it out.
    ///
    /// ```
    /// use tenter_core::Construction;
    /// use tenter_core::making::{handling::{Cloth, Seam, SeamUse}, stitch::Stitch};
    ///
    /// let seam = Seam::of(&Cloth::new(Construction::Knit), &SeamUse::default());
    /// assert_eq!(seam.sewing.first.stitch, Stitch::Overlock);
    /// ```
    #[must_use]
    pub fn of(cloth: &Cloth, seam: &SeamUse) -> Self {
        Self {
            sewing: sewing(cloth, seam),
            finish: finish(cloth, seam),
            allowance: allowance(cloth, seam),
            trimming: trimming(cloth, seam),
            stay: stay(cloth, seam),
        }
    }
}
