//! What is printed about the shrinkage of fibres and cloths.

use crate::answer::source::Source;
use crate::making::care::{Described, Fibre};
use crate::number::words;
use crate::reading::construction::Construction;
use crate::reading::pull_test::Grain;

/// The shrinkage that is told of a fibre or a cloth. For an estimate before the first wash only: two pieces of one fibre
/// differ more than these rows do, and the rows come from guides that contradict each other.
///
/// ```
/// let linen = tenter_core::making::washing::FIBRES.iter().find(|row| row.cloth == "linen").unwrap();
/// assert_eq!((linen.least, linen.most), (5_000, 10_000));
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct FibreShrinkage {
    /// The fibre or cloth.
    pub cloth: &'static str,
    /// The grain, where each has its own.
    pub grain: Option<Grain>,
    /// The least shrinkage, in thousandths of a percent.
    pub least: u32,
    /// The most shrinkage, in thousandths of a percent.
    pub most: u32,
    /// Whether the source says "and more".
    pub more: bool,
    /// Where it comes from.
    pub source: Source,
}

const fn row(cloth: &'static str, least: u32, most: u32) -> FibreShrinkage {
    FibreShrinkage { cloth, grain: None, least, most, more: false, source: Source::CommonPractice }
}

const fn along(cloth: &'static str, grain: Grain, shrinkage: u32) -> FibreShrinkage {
    FibreShrinkage { grain: Some(grain), ..row(cloth, shrinkage, shrinkage) }
}

/// Every row that was read.
pub const FIBRES: &[FibreShrinkage] = &[
    row("any cloth", 1_000, 3_000),
    row("cotton, woven", 3_000, 5_000),
    row("cotton, preshrunk", 2_000, 5_000),
    row("cotton, not preshrunk", 0, 20_000),
    along("cotton, plain", Grain::Lengthwise, 6_000),
    along("cotton, plain", Grain::Crosswise, 2_500),
    along("cotton, twill", Grain::Lengthwise, 4_000),
    along("cotton, twill", Grain::Crosswise, 3_000),
    along("cotton, mercerised", Grain::Lengthwise, 3_500),
    along("cotton, mercerised", Grain::Crosswise, 3_500),
    along("wool, worsted", Grain::Lengthwise, 4_000),
    along("wool, worsted", Grain::Crosswise, 3_500),
    along("silk, name lost in translation", Grain::Lengthwise, 10_000),
    along("silk, name lost in translation", Grain::Crosswise, 3_000),
    row("linen", 5_000, 10_000),
    row("linen", 4_000, 4_000),
    FibreShrinkage { more: true, ..row("viscose", 5_000, 10_000) },
    row("polyester", 0, 3_000),
    row("nylon, acrylic, acetate", 3_000, 4_000),
    row("knits", 1_000, 8_000),
    row("cotton jersey", 2_000, 3_000),
    FibreShrinkage { grain: Some(Grain::Crosswise), ..row("cotton, width", 10_000, 10_000) },
];

/// Cloths that are washed differently often before they are cut.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum PrewashCloth {
    /// Cloth that has no row of its own.
    Any,
    /// Cotton, woven.
    Cotton,
    /// A knit of cotton, viscose or rayon.
    CottonOrViscoseKnit,
    /// Denim.
    Denim,
}

words!(PrewashCloth {
    Any => "any",
    Cotton => "cotton",
    CottonOrViscoseKnit => "cotton-or-viscose-knit",
    Denim => "denim",
});

/// How often to wash a cloth before cutting, always as the garment will be washed.
///
/// ```
/// use tenter_core::making::washing::{Prewash, PrewashCloth};
///
/// assert_eq!(Prewash::of(PrewashCloth::Denim).washes, 3);
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Prewash {
    /// How many washes.
    pub washes: u8,
    /// Where it comes from.
    pub source: Source,
}

const TONDL: Source = Source::Published("R. M. Tondl, Sewing with Knits, Nebraska Extension NF00-415, 2000");

impl Prewash {
    /// Which of them a cloth is, by the words of its label and its name.
    ///
    /// ```
    /// use tenter_core::Construction;
    /// use tenter_core::making::{care::Described, washing::{Prewash, PrewashCloth}};
    ///
    /// let rib = Described { fibre: "95 cotton 5 elastane", construction: Construction::Knit, ..Described::default() };
    /// assert_eq!(Prewash::cloth(&rib), PrewashCloth::CottonOrViscoseKnit);
    /// ```
    #[must_use]
    pub fn cloth(said: &Described<'_>) -> PrewashCloth {
        let (fibres, knit) = (said.fibres(), said.construction == Construction::Knit);
        if said.says("denim") {
            PrewashCloth::Denim
        } else if knit && (fibres.has(Fibre::Cotton) || fibres.has(Fibre::Viscose)) {
            PrewashCloth::CottonOrViscoseKnit
        } else if fibres.has(Fibre::Cotton) {
            PrewashCloth::Cotton
        } else {
            PrewashCloth::Any
        }
    }

    /// What was read of a cloth; where a source says "more than once", two.
    #[must_use]
    pub const fn of(cloth: PrewashCloth) -> Self {
        match cloth {
            PrewashCloth::Any => Self { washes: 1, source: TONDL },
            PrewashCloth::Cotton => Self { washes: 2, source: TONDL },
            PrewashCloth::CottonOrViscoseKnit => Self { washes: 2, source: Source::CommonPractice },
            PrewashCloth::Denim => Self { washes: 3, source: Source::CommonPractice },
        }
    }
}
