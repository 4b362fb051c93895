//! What is known of one cloth.

use crate::answer::Figure;
use crate::answer::class::GrowthClass;
use crate::making::care::Finish;
use crate::number::ratio::Ratio;
use crate::reading::construction::Construction;
use crate::reading::pull_test::Grain;

/// How a woven is woven, as far as it decides needle, thread and stitch.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum Weave {
    /// Any other.
    #[default]
    Ordinary,
    /// Denim: a dense twill of hard yarn.
    Denim,
    /// Canvas or duck: dense and plain.
    Canvas,
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
    /// Its mass per area in g/m²; none where it was not weighed.
    pub mass: Option<u16>,
    /// How it is woven.
    pub weave: Weave,
    /// What was done to its surface.
    pub finish: Finish,
    /// Whether its label names elastane.
    pub elastane: bool,
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
        Self {
            construction,
            mass: None,
            weave: Weave::Ordinary,
            finish: Finish::Plain,
            elastane: false,
            lengthwise: None,
            crosswise: None,
            bias: None,
            growth: None,
        }
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

    /// Its mass per area in g/m², or the usual one of its kind where it was not weighed: 400 for denim and canvas, 200
    /// for any other (the tool's own).
    ///
    /// ```
    /// use tenter_core::{Construction, making::handling::Cloth};
    ///
    /// assert_eq!(Cloth { mass: Some(60), ..Cloth::new(Construction::Woven) }.mass_or_usual(), 60);
    /// ```
    #[must_use]
    pub const fn mass_or_usual(&self) -> u16 {
        match (self.mass, self.weave) {
            (Some(mass), _) => mass,
            (None, Weave::Ordinary) => 200,
            (None, Weave::Denim | Weave::Canvas) => 400,
        }
    }

    /// Whether its cut edges fray: a woven without a film. Knits, felt and laminates do not.
    ///
    /// ```
    /// use tenter_core::{Construction, making::handling::Cloth};
    ///
    /// assert!(Cloth::new(Construction::Woven).frays() && !Cloth::new(Construction::Knit).frays());
    /// ```
    #[must_use]
    pub const fn frays(&self) -> bool {
        let filmed = matches!(self.finish, Finish::Coated | Finish::Membrane | Finish::LeatherLike);
        matches!(self.construction, Construction::Woven) && !filmed
    }

    /// Whether it gives more than reading error along or across: from [`RIGID_UNDER_PERCENT`](super::RIGID_UNDER_PERCENT)
    /// on. A knit that was not measured is taken to give.
    #[must_use]
    pub fn gives(&self) -> bool {
        let most = self.most_stretch();
        if most.is_none() {
            self.construction == Construction::Knit
        } else {
            gives_from(most, super::RIGID_UNDER_PERCENT)
        }
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

/// Whether a stretch is known and reaches so many percent.
pub(super) fn gives_from(figure: Option<Figure>, percent: i64) -> bool {
    figure.zip(Ratio::new(percent, 100)).is_some_and(|(figure, edge)| figure.ratio >= edge)
}
