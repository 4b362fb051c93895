//! How wide a seam allowance is, and to what it is trimmed.

use super::asked::{Runs, SeamUse};
use super::cloth::Cloth;
use super::finish::{SeamFinish, finish};
use crate::answer::source::Source;
use crate::making::printed::Printed;
use crate::reading::construction::Construction;
use crate::reading::length::Length;

/// How wide a seam allowance is.
///
/// ```
/// use tenter_core::making::handling::{Cloth, SeamUse, allowance};
/// use tenter_core::{Construction, Length};
///
/// let usual = allowance(&Cloth::new(Construction::Woven), &SeamUse::default());
/// assert_eq!(usual.width.inch, Length::from_inch_64ths(40)); // 5/8 in; 15 mm on a metric pattern.
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct SeamAllowance {
    /// Its width.
    pub width: Printed,
    /// Where it comes from.
    pub source: Source,
}

const STANDARD: Source = Source::Published("Oregon 4-H 320-19, 2014: 15 mm (5/8 in), less for some knits");
const KNIT: Source = Source::Published(
    "New Mexico State University C-210: knit patterns 3 to 15 mm, cut to 6 or 10 at neck and armhole",
);

/// The seam allowance to cut, all that the [finish] needs.
///
/// ```
/// use tenter_core::making::handling::{Cloth, SeamUse, allowance};
/// use tenter_core::{Construction, Length};
///
/// assert_eq!(allowance(&Cloth::new(Construction::Knit), &SeamUse::default()).width.metric, Length::from_mm(10));
/// ```
#[must_use]
pub fn allowance(cloth: &Cloth, seam: &SeamUse) -> SeamAllowance {
    let of = |mm, eighths, source| SeamAllowance { width: Printed::new(mm, eighths), source };
    match cloth.construction {
        // A zip needs the whole width, and a knit is no exception.
        Construction::Knit if seam.opens => of(15, 5, STANDARD),
        Construction::Knit if seam.passes => of(6, 2, KNIT),
        Construction::Knit => of(10, 3, KNIT),
        Construction::Woven | Construction::Other => of(15, 5, STANDARD),
    }
}

/// What is cut away after the seam is sewn.
///
/// ```
/// use tenter_core::making::handling::{Cloth, SeamUse, trimming};
/// use tenter_core::Construction;
///
/// let faced = SeamUse { enclosed: true, curved: true, ..SeamUse::default() };
/// assert!(trimming(&Cloth::new(Construction::Woven), &faced).unwrap().clip);
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct Trimming {
    /// What is left.
    pub to: Printed,
    /// Each layer to another width, the widest towards the outside.
    pub grade: bool,
    /// Inward curves clipped and outward ones notched, every 6 to 13 mm.
    pub clip: bool,
    /// Where it comes from.
    pub source: Source,
}

const TRIM: Source = Source::Published(
    "Apparel Design, Textiles and Construction, school text, 2012, p. 451: enclosed seams 3 to 6 mm, underarm and seat \
     curve 6 mm",
);

/// What is trimmed after a seam is sewn; none where the [finish] needs the width: before binding nothing is trimmed or
/// graded, a French or felled seam cuts its own edges, and an overlocker's knife does it.
///
/// ```
/// use tenter_core::making::handling::{Cloth, SeamUse, trimming};
/// use tenter_core::Construction;
///
/// assert_eq!(trimming(&Cloth::new(Construction::Woven), &SeamUse::default()), None);
/// ```
#[must_use]
pub fn trimming(cloth: &Cloth, seam: &SeamUse) -> Option<Trimming> {
    let bends = seam.curved || seam.runs == Runs::Around;
    let trim = match finish(cloth, seam).finish {
        SeamFinish::Nothing => seam.enclosed || (bends && seam.strained),
        SeamFinish::OverlockedTogether | SeamFinish::ZigzaggedTogether => true,
        SeamFinish::ByTheStitch
        | SeamFinish::OverlockedSingly
        | SeamFinish::ZigzaggedSingly
        | SeamFinish::French
        | SeamFinish::Felled
        | SeamFinish::BoundSingly
        | SeamFinish::BoundTogether => false,
    };
    let narrow = Length::from_mm(6) >= allowance(cloth, seam).width.metric;
    (trim && !narrow).then(|| Trimming {
        to: Printed::new(6, 2),
        grade: seam.enclosed && cloth.mass_or_usual() > 100,
        clip: seam.enclosed && bends,
        source: TRIM,
    })
}
