//! How the raw edges of a seam are finished.

use super::asked::{Runs, SeamUse};
use super::cloth::Cloth;
use super::sewing::sewing;
use crate::answer::source::Source;
use crate::making::garment::GarmentKind;
use crate::making::stitch::Stitch;
use crate::reading::construction::Construction;

/// A seam finish.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum SeamFinish {
    /// Nothing.
    Nothing,
    /// The overlock that joins the seam neatens it as well.
    ByTheStitch,
    /// Each edge overlocked, the seam opened.
    OverlockedSingly,
    /// Both edges overlocked together, to one side.
    OverlockedTogether,
    /// Each edge zigzagged, the seam opened.
    ZigzaggedSingly,
    /// Both edges zigzagged together, to one side.
    ZigzaggedTogether,
    /// A French seam: sewn wrong sides together 10 mm (3/8 in) from the edge, trimmed to 3 mm (1/8 in), turned, sewn again
    /// at 6 mm (1/4 in).
    French,
    /// A flat-felled seam: to one side, the under edge cut to 6 mm (1/4 in), the upper folded over it and stitched.
    Felled,
    /// Each edge bound with tape, the seam opened first.
    BoundSingly,
    /// Both edges bound with one tape, to one side.
    BoundTogether,
}

impl SeamFinish {
    /// Whether its edges are bound with tape.
    #[must_use]
    pub const fn is_bound(self) -> bool {
        matches!(self, Self::BoundSingly | Self::BoundTogether)
    }

    /// Whether it folds the edges in, so that they need the whole allowance and no other finish.
    #[must_use]
    pub const fn folds_in(self) -> bool {
        matches!(self, Self::French | Self::Felled)
    }
}

/// Why a seam is finished so.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum FinishReason {
    /// A lining or another layer covers it.
    Covered,
    /// It does not fray.
    DoesNotFray,
    /// It shows through.
    Sheer,
    /// The garment is worn and washed hard, and has such seams.
    Hardwearing,
    /// The inside of the garment is seen.
    InsideSeen,
    /// It frays.
    Frays,
}

/// How a seam is finished.
///
/// ```
/// use tenter_core::Construction;
/// use tenter_core::making::handling::{Cloth, SeamFinish, SeamUse, finish};
///
/// let voile = Cloth { mass: Some(60), ..Cloth::new(Construction::Woven) };
/// assert_eq!(finish(&voile, &SeamUse::default()).finish, SeamFinish::French);
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct FinishLine {
    /// The finish.
    pub finish: SeamFinish,
    /// What to take without an overlocker, or where the cloth frays after all.
    pub instead: Option<SeamFinish>,
    /// Whether a seam that is opened is opened with the fingers and a roller: an iron would harm the finish.
    pub by_hand: bool,
    /// Why.
    pub reason: FinishReason,
    /// Where it comes from.
    pub source: Source,
}

const FRENCH: Source =
    Source::Published("Oklahoma 4-H 810: French seam for sheer and light cloth, straight or slightly curved");
const FELLED: Source =
    Source::Published("Koester, Complex Seams: flat-felled for light to heavy wovens, sport, children, shirts");
const OPEN: Source =
    Source::Published("Oklahoma 4-H 810: overlocked singly where it is bulky or the fit unsure, pressed open");
/// No finish for a knit that does not fray, for fleece, for a laminate, under a full lining.
const NOT_FRAYING: Source = Source::CommonPractice;

/// Up to this mass per area, in g/m², a woven is sheer or light enough for a French seam: voile and lawn (the tool's own).
const FRENCH_TO: u16 = 100;
/// From this mass per area on a fold too many is too thick to fell (the tool's own; denim of 14 oz is 475).
const FELLED_UNDER: u16 = 475;

/// How to finish a seam of a cloth. It fits the [stitch](sewing): a French or felled seam is sewn straight.
///
/// ```
/// use tenter_core::Construction;
/// use tenter_core::making::handling::{Cloth, SeamFinish, SeamUse, finish};
/// use tenter_core::making::garment::GarmentKind;
///
/// let leggings = SeamUse { garment: Some(GarmentKind::Leggings), ..SeamUse::default() };
/// assert_eq!(finish(&Cloth::new(Construction::Knit), &leggings).finish, SeamFinish::ByTheStitch);
/// ```
#[must_use]
pub fn finish(cloth: &Cloth, seam: &SeamUse) -> FinishLine {
    let by_hand = !cloth.finish.takes_iron();
    let line = |finish, instead, reason, source| FinishLine { finish, instead, by_hand, reason, source };
    let stitch = sewing(cloth, seam).first.stitch;
    if stitch == Stitch::Overlock {
        let instead = Some(SeamFinish::ZigzaggedTogether);
        return line(SeamFinish::ByTheStitch, instead, FinishReason::DoesNotFray, NOT_FRAYING);
    }
    let covered = seam.lined && seam.garment.is_none_or(GarmentKind::lining_closes);
    if covered || seam.enclosed {
        return line(SeamFinish::Nothing, None, FinishReason::Covered, NOT_FRAYING);
    }
    if !cloth.frays() {
        let if_it_frays = (cloth.construction == Construction::Other).then_some(SeamFinish::OverlockedSingly);
        return line(SeamFinish::Nothing, if_it_frays, FinishReason::DoesNotFray, NOT_FRAYING);
    }
    let bends = seam.curved || seam.runs == Runs::Around;
    let folds = !bends && !seam.opens && !seam.strained && stitch == Stitch::Straight;
    let mass = cloth.mass_or_usual();
    if folds && mass <= FRENCH_TO && !seam.held && !seam.garment.is_some_and(GarmentKind::is_outerwear) {
        return line(SeamFinish::French, None, FinishReason::Sheer, FRENCH);
    }
    if folds && mass > FRENCH_TO && mass < FELLED_UNDER && is_felled(seam.garment) {
        let instead = Some(SeamFinish::OverlockedTogether);
        return line(SeamFinish::Felled, instead, FinishReason::Hardwearing, FELLED);
    }
    if seam.garment.is_some_and(GarmentKind::is_outerwear) {
        let bound = if bends { SeamFinish::BoundTogether } else { SeamFinish::BoundSingly };
        return line(bound, None, FinishReason::InsideSeen, Source::CommonPractice);
    }
    let (finish, instead) = if bends || mass <= FRENCH_TO {
        (SeamFinish::OverlockedTogether, SeamFinish::ZigzaggedTogether)
    } else {
        (SeamFinish::OverlockedSingly, SeamFinish::ZigzaggedSingly)
    };
    line(finish, Some(instead), FinishReason::Frays, OPEN)
}

/// Garments whose straight seams are felled.
const fn is_felled(garment: Option<GarmentKind>) -> bool {
    matches!(garment, Some(GarmentKind::Shirt | GarmentKind::Jeans))
}
