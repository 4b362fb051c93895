//! What keeps an edge from stretching before and in its seam.

use super::asked::{Runs, SeamUse};
use super::cloth::{Cloth, gives_from};
use super::{STRETCHES_FROM_PERCENT, sewing::sewing};
use crate::answer::source::Source;
use crate::making::stitch::Stitch;
use crate::number::ratio::Ratio;
use crate::reading::construction::Construction;

/// What keeps an edge. There is one for an edge, so that a tape replaces stay-stitching.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum Stay {
    /// Stay-stitched as soon as it is cut: one layer, normal stitch, within 3 mm (1/8 in) of the seam line; with the grain,
    /// from wide to narrow, a neck from each shoulder to its centre.
    StayStitch,
    /// A tape that does not stretch, caught in the seam.
    Tape,
    /// Clear elastic caught in the seam, where it must come back.
    ClearElastic,
    /// Nothing that would stop it from giving: handled little, held by its band or hem.
    LeftFree,
    /// Hung a day and levelled: a long bias edge, which stay-stitching would distort for good.
    Hung,
}

/// What keeps an edge, and why.
///
/// ```
/// use tenter_core::Construction;
/// use tenter_core::making::handling::{Cloth, Runs, SeamUse, Stay, stay};
///
/// let neck = SeamUse { curved: true, runs: Runs::Around, enclosed: true, ..SeamUse::default() };
/// assert_eq!(stay(&Cloth::new(Construction::Woven), &neck).unwrap().stay, Stay::StayStitch);
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct StayLine {
    /// What keeps it.
    pub stay: Stay,
    /// Where it comes from.
    pub source: Source,
}

const CURVED: Source = Source::Published(
    "ICAR e-course, Clothing Construction: stay-stitch curved and slanting edges as soon as they are cut",
);
const LONG_BIAS: Source = Source::Published(
    "ICAR e-course, Clothing Construction: long bias edges are not stay-stitched, they distort for good",
);
const KNITS: Source = Source::Published(
    "Successful Sewing, school text, 2013, p. 288: tape for shoulders of knits, clear elastic where give must stay",
);
const COATS: Source = Source::Published("Smith, USDA Farmers' Bulletin 1894, 1956: tape armhole, neck, shoulder, bias");

/// What keeps an edge of a cloth; none where nothing is called for. A straight row is never sewn where a head must pass or a
/// knit must give.
///
/// ```
/// use tenter_core::Construction;
/// use tenter_core::making::handling::{Cloth, Runs, SeamUse, Stay, stay};
///
/// let knit = Cloth::new(Construction::Knit);
/// let neck = SeamUse { curved: true, passes: true, runs: Runs::Around, ..SeamUse::default() };
/// assert_eq!(stay(&knit, &neck).unwrap().stay, Stay::LeftFree);
/// let shoulder = SeamUse { held: true, runs: Runs::Slanting, ..SeamUse::default() };
/// assert_eq!(stay(&knit, &shoulder).unwrap().stay, Stay::Tape);
/// // What is held and still passes over shoulders comes back by itself.
/// let waist = SeamUse { held: true, passes: true, runs: Runs::Crosswise, ..SeamUse::default() };
/// assert_eq!(stay(&knit, &waist).unwrap().stay, Stay::ClearElastic);
/// assert_eq!(stay(&Cloth::new(Construction::Woven), &SeamUse::default()), None); // Straight and lengthwise.
/// ```
#[must_use]
pub fn stay(cloth: &Cloth, seam: &SeamUse) -> Option<StayLine> {
    let line = |stay, source| Some(StayLine { stay, source });
    let bends = seam.curved || matches!(seam.runs, Runs::Around | Runs::Slanting);
    let is_knit = cloth.construction == Construction::Knit;
    let is_wide = |ratio: Ratio| ratio > Ratio::ZERO;
    if seam.held && (is_knit || cloth.gives() || cloth.grows()) {
        return match seam.runs {
            _ if is_knit && (seam.passes || seam.asked.is_some_and(is_wide)) => line(Stay::ClearElastic, KNITS),
            _ if is_knit => line(Stay::Tape, KNITS),
            // The bulletin names no edge across.
            Runs::Crosswise => line(Stay::Tape, Source::CommonPractice),
            _ => line(Stay::Tape, COATS),
        };
    }
    if is_knit {
        return if seam.passes && bends { line(Stay::LeftFree, Source::CommonPractice) } else { None };
    }
    if seam.passes || sewing(cloth, seam).wanted > Stitch::Straight.gives().unwrap_or(Ratio::ZERO) {
        return None;
    }
    match seam.runs {
        _ if cloth.construction != Construction::Woven => None, // Felt, film and leather keep their edges.
        Runs::Bias if !seam.curved => line(Stay::Hung, LONG_BIAS),
        _ if bends => line(Stay::StayStitch, CURVED),
        // The stretchier pieces of unlined outerwear, across: common practice.
        Runs::Crosswise if gives_from(cloth.crosswise, STRETCHES_FROM_PERCENT) || cloth.grows() => {
            line(Stay::StayStitch, Source::CommonPractice)
        }
        _ => None,
    }
}
