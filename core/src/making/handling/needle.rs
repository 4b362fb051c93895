//! Needle and thread, by construction, mass, finish and give.

use super::STRETCHES_FROM_PERCENT;
use super::cloth::{Cloth, Weave, gives_from};
use crate::answer::source::Source;
use crate::making::care::Finish;
use crate::reading::construction::Construction;

/// A kind of needle point.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum NeedlePoint {
    /// Slim and acute, for fine and for film-faced cloth.
    Sharp,
    /// The usual point.
    Universal,
    /// Strong and acute, for denim and canvas.
    Jeans,
    /// Rounded, for knits.
    Ballpoint,
    /// Rounded and shaped for elastane.
    Stretch,
}

/// A needle: its point and its size in hundredths of a millimetre, 75 for 75/11, from the finest to the thickest.
///
/// ```
/// use tenter_core::Construction;
/// use tenter_core::making::handling::{Cloth, NeedlePoint, needle};
///
/// assert_eq!(needle(&Cloth::new(Construction::Knit)).point, NeedlePoint::Ballpoint);
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct Needle {
    /// The point.
    pub point: NeedlePoint,
    /// The finest size.
    pub finest: u8,
    /// The thickest size.
    pub thickest: u8,
    /// The point to try where stitches are skipped.
    pub if_it_skips: Option<NeedlePoint>,
    /// Where it comes from.
    pub source: Source,
}

impl Needle {
    /// The older number of a size, as makers print it behind the stroke: 11 for 75. None for a size that is not made.
    ///
    /// ```
    /// use tenter_core::making::handling::Needle;
    ///
    /// assert_eq!(Needle::older_number(75), Some(11));
    /// ```
    #[must_use]
    pub const fn older_number(size: u8) -> Option<u8> {
        Some(match size {
            60 => 8,
            65 => 9,
            70 => 10,
            75 => 11,
            80 => 12,
            90 => 14,
            100 => 16,
            110 => 18,
            _ => return None,
        })
    }
}

const TABLE: Source = Source::CommonPractice;
/// The sources of stretch needles are pages that name no author: 75/11 for medium two-way knits, 90/14 for heavier.
const STRETCH_TYPE: Source = Source::CommonPractice;

/// The needle for a cloth. There is always one: its construction, not its mass, chooses the point.
///
/// ```
/// use tenter_core::Construction;
/// use tenter_core::making::handling::{Cloth, NeedlePoint, Weave, needle};
///
/// let denim = Cloth { weave: Weave::Denim, mass: Some(440), ..Cloth::new(Construction::Woven) };
/// let needle = needle(&denim);
/// assert_eq!((needle.point, needle.finest, needle.thickest), (NeedlePoint::Jeans, 100, 100));
/// ```
#[must_use]
pub fn needle(cloth: &Cloth) -> Needle {
    use NeedlePoint::{Ballpoint, Jeans, Sharp, Stretch, Universal};
    let mass = cloth.mass_or_usual();
    let filmed = matches!(cloth.finish, Finish::Membrane | Finish::Coated | Finish::LeatherLike | Finish::Waxed);
    let (point, finest, thickest) = match (cloth.construction, cloth.weave) {
        _ if filmed && (cloth.weave == Weave::Ordinary && mass < 350) => (Sharp, 80, 90),
        (Construction::Knit, _) if is_elastic(cloth) => match mass {
            ..200 => (Stretch, 65, 75),
            200..300 => (Stretch, 75, 75),
            300.. => (Stretch, 90, 90),
        },
        (Construction::Knit, _) => match mass {
            ..130 => (Ballpoint, 65, 75),
            130..200 => (Ballpoint, 70, 80),
            200..260 => (Ballpoint, 75, 80),
            260..350 => (Ballpoint, 80, 90),
            350.. => (Ballpoint, 90, 90),
        },
        (Construction::Woven, Weave::Denim) => match mass {
            ..340 => (Jeans, 90, 90),
            340..475 => (Jeans, 100, 100),
            475.. => (Jeans, 110, 110),
        },
        (Construction::Woven, Weave::Canvas) => (Jeans, 100, 110),
        (Construction::Woven | Construction::Other, _) => match mass {
            ..80 => (Sharp, 60, 70),
            80..100 => (Sharp, 65, 70),
            100..150 => (Universal, 70, 80),
            150..250 => (Universal, 80, 80),
            250..330 => (Universal, 80, 90),
            330.. => (Universal, 90, 100),
        },
    };
    let gives = cloth.elastane || gives_from(cloth.most_stretch(), STRETCHES_FROM_PERCENT);
    let if_it_skips = (gives && point != Stretch).then_some(Stretch);
    Needle { point, finest, thickest, if_it_skips, source: if point == Stretch { STRETCH_TYPE } else { TABLE } }
}

/// Elastane, or a knit that gives a quarter both ways as only elastane does (the tool's own limit).
fn is_elastic(cloth: &Cloth) -> bool {
    const BOTH_WAYS_FROM_PERCENT: i64 = 25;
    cloth.elastane
        || [cloth.lengthwise, cloth.crosswise].into_iter().all(|figure| gives_from(figure, BOTH_WAYS_FROM_PERCENT))
}

/// What a thread is spun of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum ThreadFibre {
    /// Polyester, which gives a little with the seam.
    Polyester,
    /// Fine cotton or polyester, which leaves a sheer seam soft.
    FineCottonOrPolyester,
}

/// A sewing thread: its fibre and its mass in tex, grams per kilometre, from the finest to the thickest.
///
/// ```
/// use tenter_core::Construction;
/// use tenter_core::making::handling::{Cloth, thread};
///
/// assert!(thread(&Cloth::new(Construction::Woven)).top.is_none());
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct Thread {
    /// What it is spun of.
    pub fibre: ThreadFibre,
    /// For the seams.
    pub tex: (u8, u8),
    /// For topstitching that is meant to be seen, where the cloth usually has it.
    pub top: Option<(u8, u8)>,
    /// Where it comes from.
    pub source: Source,
}

/// The thread for a cloth.
///
/// ```
/// use tenter_core::Construction;
/// use tenter_core::making::handling::{Cloth, Weave, thread};
///
/// let denim = Cloth { weave: Weave::Denim, mass: Some(440), ..Cloth::new(Construction::Woven) };
/// assert_eq!((thread(&denim).tex, thread(&denim).top), ((40, 40), Some((60, 80))));
/// ```
#[must_use]
pub fn thread(cloth: &Cloth) -> Thread {
    let mass = cloth.mass_or_usual();
    let (tex, top) = match (cloth.construction, cloth.weave) {
        (Construction::Knit, _) => ((24, 30), None),
        (Construction::Woven, Weave::Denim) => match mass {
            ..340 => ((30, 40), Some((60, 80))),
            340..475 => ((40, 40), Some((60, 80))),
            475.. => ((40, 60), Some((60, 80))),
        },
        (Construction::Woven, Weave::Canvas) => ((40, 60), Some((60, 80))),
        (Construction::Woven | Construction::Other, _) => match mass {
            ..80 => ((18, 21), None),
            80..100 => ((18, 24), None),
            100..150 => ((24, 30), None),
            150..200 => ((27, 30), None),
            200..330 => ((30, 30), None),
            330.. => ((30, 40), None),
        },
    };
    let fine = cloth.construction == Construction::Woven && mass < 100;
    let fibre = if fine { ThreadFibre::FineCottonOrPolyester } else { ThreadFibre::Polyester };
    Thread { fibre, tex, top, source: TABLE }
}
