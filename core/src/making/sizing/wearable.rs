//! How much smaller than the body a garment is worn, not how much smaller its cloth would let it be.

use super::{Reduction, Stretch};
use crate::answer::source::Source;
use crate::making::garment::GarmentKind;
use crate::number::ratio::Ratio;
use crate::reading::construction::Construction;

/// How much smaller than the body girths are usually cut, from the least to the most.
///
/// ```
/// use tenter_core::Construction;
/// use tenter_core::making::sizing::{Reduction, wearable};
/// use tenter_core::Ratio;
///
/// let woven = wearable(Construction::Woven, false, None, Ratio::new(23, 100).unwrap());
/// assert!(woven.is_none()); // A woven is cut with ease, whatever it gives.
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct Wearable {
    /// The least.
    pub least: Reduction,
    /// The most, never more than half of the stretch allows.
    pub most: Reduction,
    /// Lengths as well, by at most so much: where the cloth gives both ways and the garment is close.
    pub lengths: Option<Reduction>,
    /// Where it comes from.
    pub source: Source,
}

impl Wearable {
    /// Whether the garment is cut as wide as the body.
    ///
    /// ```
    /// use tenter_core::{Construction, Ratio, making::sizing::wearable};
    ///
    /// assert!(wearable(Construction::Knit, false, None, Ratio::new(15, 100).unwrap()).unwrap().is_zero());
    /// ```
    #[must_use]
    pub fn is_zero(&self) -> bool {
        self.most.ratio() <= Ratio::ZERO
    }
}

/// The rows for knits: from which stretch on in percent, and the least and the most that is taken off.
const KNITS: [(i64, i64, i64); 5] = [(101, 5, 10), (76, 3, 5), (51, 2, 3), (26, 0, 2), (0, 0, 0)];
const KNIT_SOURCE: Source = Source::Memory(
    "K. Richardson, Designing and Patternmaking for Stretch Fabrics, 2008: stable 0, moderate 2, stretchy 3, super-stretch 5, \
     rib, which is what stretches over 100 %, 10 %",
);
/// Close garments of elastane knits: 12 % where a cotton knit takes 2 %.
const CLOSE: (i64, i64) = (5, 15);
const CLOSE_SOURCE: Source = Source::CommonPractice;

/// From this lengthwise stretch on, in percent, a close garment is cut shorter as well (the tool's own).
pub const LENGTHS_FROM_PERCENT: i64 = 25;

/// How much smaller than the body girths are usually cut, from the stretch that goes round it; none for a woven, and for
/// cloth that does not give. Lengths are reduced [apart](Wearable::with_lengths).
///
/// ```
/// use tenter_core::Construction;
/// use tenter_core::making::{garment::GarmentKind, sizing::wearable};
/// use tenter_core::Ratio;
///
/// let tights = wearable(Construction::Knit, true, Some(GarmentKind::Leggings), Ratio::new(79, 100).unwrap()).unwrap();
/// assert_eq!(tights.most.ratio(), Ratio::new(15, 100).unwrap());
/// ```
#[must_use]
pub fn wearable(
    construction: Construction,
    elastane: bool,
    garment: Option<GarmentKind>,
    stretch: Ratio,
) -> Option<Wearable> {
    if construction != Construction::Knit {
        return None;
    }
    let is_close = matches!(garment, Some(GarmentKind::Leggings | GarmentKind::Swimwear));
    let (least, most, source) = if is_close && elastane {
        (CLOSE.0, CLOSE.1, CLOSE_SOURCE)
    } else {
        let row = KNITS.iter().find(|(from, ..)| Ratio::new(*from, 100).is_some_and(|from| stretch >= from))?;
        (row.1, row.2, KNIT_SOURCE)
    };
    let half = Stretch::new(stretch)?.part(1, 2)?.most_reduction()?;
    let percent = |percent| Ratio::new(percent, 100).and_then(Reduction::new);
    let most = percent(most)?.min(half);
    Some(Wearable { least: percent(least)?.min(most), most, lengths: None, source })
}

impl Wearable {
    /// Lengths as well: in leggings and swimwear of cloth that gives both ways, which shortens as it goes round, at most half
    /// as much as girths (the tool's own figure; that four-way cloth has a reduction of its own for lengths is said in the
    /// same book).
    ///
    /// ```
    /// use tenter_core::Construction;
    /// use tenter_core::making::{garment::GarmentKind, sizing::wearable};
    /// use tenter_core::Ratio;
    ///
    /// let percent = |percent| Ratio::new(percent, 100).unwrap();
    /// let garment = Some(GarmentKind::Swimwear);
    /// let swim = wearable(Construction::Knit, true, garment, percent(80)).unwrap();
    /// assert!(swim.with_lengths(garment, Some(percent(60))).lengths.is_some());
    /// assert!(swim.with_lengths(garment, Some(percent(10))).lengths.is_none());
    /// ```
    #[must_use]
    pub fn with_lengths(self, garment: Option<GarmentKind>, along: Option<Ratio>) -> Self {
        let is_close = matches!(garment, Some(GarmentKind::Leggings | GarmentKind::Swimwear));
        let gives = along.zip(Ratio::new(LENGTHS_FROM_PERCENT, 100)).is_some_and(|(along, from)| along >= from);
        let most = self.most.ratio();
        let half = most.denominator().checked_mul(2).and_then(|den| Ratio::new(most.numerator(), den));
        Self { lengths: half.and_then(Reduction::new).filter(|_| is_close && gives), ..self }
    }
}
