//! What is known of one cloth.

use crate::answer::Figure;
use crate::answer::class::GrowthClass;
use crate::number::ratio::Ratio;
use crate::reading::construction::Construction;
use crate::reading::pull_test::Grain;

/// How heavy a cloth is, by the hand.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum Weight {
    /// As for a blouse or a lining.
    Light,
    /// Between.
    #[default]
    Medium,
    /// As for denim or a sweatshirt.
    Heavy,
}

/// What is known of one cloth.
///
/// ```
/// use tenter_core::{Construction, making::handling::Cloth};
///
/// assert!(!Cloth::new(Construction::Woven).gives());
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct Cloth {
    /// How it is made.
    pub construction: Construction,
    /// How heavy it is.
    pub weight: Weight,
    /// Its stretch along the warp or the wales.
    pub lengthwise: Option<Figure>,
    /// Its stretch along the weft or the courses.
    pub crosswise: Option<Figure>,
    /// Its stretch at 45° to both.
    pub bias: Option<Figure>,
    /// Its growth, the larger of those that were read.
    pub growth: Option<Ratio>,
}

impl Cloth {
    /// A cloth of which nothing was measured.
    ///
    /// ```
    /// use tenter_core::{Construction, making::handling::Cloth};
    ///
    /// assert_eq!(Cloth::new(Construction::Knit).crosswise, None);
    /// ```
    #[must_use]
    pub const fn new(construction: Construction) -> Self {
        Self { construction, weight: Weight::Medium, lengthwise: None, crosswise: None, bias: None, growth: None }
    }

    /// Its stretch along a grain.
    ///
    /// ```
    /// use tenter_core::{Construction, Grain, making::handling::Cloth};
    ///
    /// assert_eq!(Cloth::new(Construction::Knit).along(Grain::Bias), None);
    /// ```
    #[must_use]
    pub const fn along(&self, grain: Grain) -> Option<Figure> {
        match grain {
            Grain::Lengthwise => self.lengthwise,
            Grain::Crosswise => self.crosswise,
            Grain::Bias => self.bias,
        }
    }

    /// The larger of the lengthwise and the crosswise stretch; none where neither was measured. The bias is left out,
    /// along which every woven gives.
    ///
    /// ```
    /// use tenter_core::{Construction, Figure, Ratio, making::handling::Cloth};
    ///
    /// let five = Some(Figure::exact(Ratio::new(5, 100).unwrap()));
    /// assert_eq!(Cloth { lengthwise: five, ..Cloth::new(Construction::Woven) }.most_stretch(), five);
    /// ```
    #[must_use]
    pub fn most_stretch(&self) -> Option<Figure> {
        match (self.lengthwise, self.crosswise) {
            (Some(one), Some(other)) => Some(if one.ratio >= other.ratio { one } else { other }),
            (one, other) => one.or(other),
        }
    }

    /// Whether it gives more than reading error along or across: from [`RIGID_UNDER_PERCENT`](super::RIGID_UNDER_PERCENT)
    /// on. A knit that was not measured is taken to give.
    #[must_use]
    pub fn gives(&self) -> bool {
        self.most_stretch().map_or(self.construction == Construction::Knit, |figure| gives(&figure))
    }

    /// Whether its growth is more than a close garment takes: above 3 %.
    ///
    /// ```
    /// use tenter_core::{Construction, Ratio, making::handling::Cloth};
    ///
    /// let loose = Cloth { growth: Ratio::new(4, 100), ..Cloth::new(Construction::Knit) };
    /// assert!(loose.grows());
    /// ```
    #[must_use]
    pub fn grows(&self) -> bool {
        self.growth.is_some_and(|growth| GrowthClass::of(growth) >= GrowthClass::Watch)
    }
}

pub(crate) fn gives(figure: &Figure) -> bool {
    Ratio::new(super::RIGID_UNDER_PERCENT, 100).is_some_and(|edge| figure.ratio >= edge)
}
