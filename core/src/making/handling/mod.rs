//! How to handle one cloth: only what its measured figures call for.

mod cloth;
mod place;
mod practice;

pub use cloth::{Cloth, Weight};
pub use place::{Do, Place, PlaceLine, SeamAllowance, at, seam_allowance};
pub use practice::{Practice, PracticeLine, practices};

use super::stitch::Stitch;
use crate::answer::Figure;
use crate::answer::confidence::Confidence;
use crate::answer::source::Source;
use crate::answer::verdict::Answer;
use crate::number::ratio::Ratio;
use crate::reading::construction::Construction;

/// Under this stretch, in percent, cloth counts as rigid: the edge of the tool's own ladder, within reading error.
pub const RIGID_UNDER_PERCENT: i64 = 2;

/// From this stretch on, in percent, a woven is handled as a stretch woven, other cloth as stretching: where the US
/// method for stretch wovens begins (ASTM D3107, scope).
pub const STRETCHES_FROM_PERCENT: i64 = 12;

/// A kind of needle point.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum NeedlePoint {
    /// The usual point.
    Universal,
    /// Rounded, for knits.
    Ballpoint,
    /// Rounded and shaped for elastane.
    Stretch,
}

/// A needle: its point and its size as a metric number, 75 for 75/11, from the finest to the thickest.
///
/// ```
/// use tenter_core::Construction;
/// use tenter_core::making::handling::{Cloth, NeedlePoint, needle};
///
/// assert_eq!(needle(&Cloth::new(Construction::Knit)).unwrap().point, NeedlePoint::Ballpoint);
/// assert_eq!(needle(&Cloth::new(Construction::Woven)), None); // Nothing calls for another than is in the machine.
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
    /// Where it comes from.
    pub source: Source,
}

/// The needle that a cloth calls for; none where nothing does.
///
/// ```
/// use tenter_core::Construction;
/// use tenter_core::making::handling::{Cloth, NeedlePoint, Weight, needle};
/// use tenter_core::{Figure, Ratio};
///
/// let denim = Cloth {
///     crosswise: Some(Figure::exact(Ratio::new(20, 100).unwrap())),
///     weight: Weight::Heavy,
///     ..Cloth::new(Construction::Woven)
/// };
/// assert_eq!(needle(&denim).unwrap().finest, 90);
/// ```
#[must_use]
pub fn needle(cloth: &Cloth) -> Option<Needle> {
    const STRETCH_TYPE: Source = Source::CommonPractice;
    const BALLPOINT: Source = Source::CommonPractice;
    const WOVEN: Source = Source::CommonPractice;
    let both_ways = [cloth.lengthwise, cloth.crosswise].into_iter().flatten().filter(stretches).count() == 2;
    let (point, finest, thickest, source) = match (cloth.construction, cloth.weight) {
        (Construction::Woven, _) if !cloth.most_stretch().is_some_and(|figure| stretches(&figure)) => return None,
        (Construction::Woven, Weight::Heavy) => (NeedlePoint::Universal, 90, 90, WOVEN),
        (Construction::Woven, _) => (NeedlePoint::Universal, 70, 75, WOVEN),
        (Construction::Knit, Weight::Heavy) if both_ways => (NeedlePoint::Stretch, 90, 90, STRETCH_TYPE),
        (Construction::Knit, _) if both_ways => (NeedlePoint::Stretch, 75, 75, STRETCH_TYPE),
        (Construction::Knit, Weight::Heavy) => (NeedlePoint::Ballpoint, 90, 90, BALLPOINT),
        (Construction::Knit, Weight::Light) => (NeedlePoint::Ballpoint, 70, 70, BALLPOINT),
        (Construction::Knit, Weight::Medium) => (NeedlePoint::Ballpoint, 70, 90, BALLPOINT),
        (Construction::Other, _) => return None,
    };
    Some(Needle { point, finest, thickest, source })
}

fn stretches(figure: &Figure) -> bool {
    Ratio::new(STRETCHES_FROM_PERCENT, 100).is_some_and(|edge| figure.ratio >= edge)
}

/// A stitch for a seam, and whether it gives as far as the seam is wanted to.
///
/// ```
/// use tenter_core::Construction;
/// use tenter_core::making::{handling::{Cloth, seam}, stitch::Stitch};
///
/// let plain = seam(&Cloth::new(Construction::Woven), None);
/// assert_eq!((plain.stitch, plain.length_tenths), (Stitch::Straight, Some((20, 25))));
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct SeamLine {
    /// The simplest stitch that gives enough.
    pub stitch: Stitch,
    /// How far the seam is wanted to give.
    pub wanted: Ratio,
    /// Its length in tenths of a millimetre, from the shortest to the longest, where a source has one.
    pub length_tenths: Option<(u8, u8)>,
    /// Who gives the length, or the give where there is none.
    pub source: Source,
}

/// The seam for a cloth of which a view wants so much stretch; without a demand, for all the stretch it has.
///
/// ```
/// use tenter_core::Construction;
/// use tenter_core::making::{handling::{Cloth, seam}, stitch::Stitch};
/// use tenter_core::{Figure, Ratio};
///
/// let jersey = Cloth { crosswise: Some(Figure::exact(Ratio::new(60, 100).unwrap())), ..Cloth::new(Construction::Knit) };
/// assert_eq!(seam(&jersey, None).stitch, Stitch::Triple);
/// assert_eq!(seam(&jersey, Ratio::new(30, 100)).stitch, Stitch::NarrowZigzag);
/// ```
#[must_use]
pub fn seam(cloth: &Cloth, wanted: Option<Ratio>) -> SeamLine {
    const WOVEN: Source = Source::CommonPractice;
    const KNIT: Source = Source::CommonPractice;
    const TRIPLE: Source = Source::CommonPractice;
    let measured = cloth.most_stretch().map_or(Ratio::ZERO, |figure| figure.ratio);
    let wanted = wanted.unwrap_or(measured).max(Ratio::ZERO);
    let stitch = Stitch::that_gives(wanted);
    let (length_tenths, source) = match (stitch, cloth.construction) {
        (Stitch::Straight, Construction::Knit) => (Some((25, 30)), KNIT),
        (Stitch::Straight, _) => (Some((20, 25)), WOVEN),
        (Stitch::NarrowZigzag, _) => (Some((25, 30)), KNIT),
        (Stitch::Triple, _) => (Some((25, 25)), TRIPLE),
        (Stitch::WideZigzag | Stitch::Overlock, _) => (None, Stitch::GIVE_SOURCE),
    };
    SeamLine { stitch, wanted, length_tenths, source }
}

/// What another layer fixed to the cloth, an interfacing, a facing or a lining, leaves of its stretch.
///
/// ```
/// use tenter_core::making::handling::{Layer, Layered};
/// use tenter_core::{Answer, Confidence, Figure, Ratio};
///
/// let percent = |percent| Figure::exact(Ratio::new(percent, 100).unwrap());
/// // A plain lining in four-way suiting.
/// let lined = Layered::of(percent(25), Layer::Lining, percent(0), percent(10).ratio, Confidence::default());
/// assert_eq!((lined.answer, lined.loses), (Answer::Short, true));
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct Layered {
    /// The stretch that is left: the lesser of the two.
    pub stretch: Figure,
    /// Whether the layer stretches less than the cloth.
    pub loses: bool,
    /// Whether what is left is what is wanted.
    pub answer: Answer,
    /// The chance of it.
    pub chance: f32,
    /// What to take instead where it falls short, the simplest first.
    pub instead: &'static [Instead],
    /// Where it comes from.
    pub source: Source,
}

/// A layer fixed to the cloth.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum Layer {
    /// Fused or sewn-in interfacing, also that of a facing.
    Interfacing,
    /// A lining.
    Lining,
}

/// What to take instead of a layer that cannot follow.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum Instead {
    /// One that gives as the cloth gives.
    ThatGives,
    /// The same, cut on the bias; an interfacing sewn in then, not fused.
    Bias,
    /// The same, cut wider with a pleat.
    Pleat,
}

impl Layered {
    /// A cloth and a layer fixed to it, against the stretch that is wanted.
    ///
    /// ```
    /// use tenter_core::making::handling::{Layer, Layered};
    /// use tenter_core::{Answer, Confidence, Figure, Ratio};
    ///
    /// let percent = |percent| Figure::exact(Ratio::new(percent, 100).unwrap());
    /// let knit = Layered::of(percent(20), Layer::Interfacing, percent(25), percent(20).ratio, Confidence::default());
    /// assert_eq!((knit.answer, knit.loses), (Answer::Meets, false));
    /// ```
    #[must_use]
    pub fn of(cloth: Figure, layer: Layer, layer_stretch: Figure, wanted: Ratio, confidence: Confidence) -> Self {
        let loses = layer_stretch.ratio < cloth.ratio;
        let stretch = if loses { layer_stretch } else { cloth };
        let chance = stretch.chance_at_least(wanted);
        let answer = confidence.judge(chance, Answer::Short);
        let (instead, source): (&[Instead], _) = match layer {
            _ if answer == Answer::Meets || !loses => (&[], Source::Derived("two layers stretch as far as the lesser")),
            Layer::Interfacing => (&[Instead::ThatGives, Instead::Bias], Source::CommonPractice),
            Layer::Lining => (&[Instead::ThatGives, Instead::Bias, Instead::Pleat], Source::CommonPractice),
        };
        Self { stretch, loses, answer, chance, instead, source }
    }
}
