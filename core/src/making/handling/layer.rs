//! What another layer does to a cloth.

use crate::answer::Figure;
use crate::answer::confidence::Confidence;
use crate::answer::source::Source;
use crate::answer::verdict::Answer;
use crate::number::ratio::Ratio;

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
