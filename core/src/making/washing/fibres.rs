//! What is printed about the shrinkage of fibres and cloths.

use crate::making::source::Source;
use crate::reading::pull_test::Grain;

/// The shrinkage that a source gives for a fibre or a cloth. For an estimate before the first wash only: two pieces of
/// one fibre differ more than these rows do.
///
/// ```
/// let linen = tenter_core::making::washing::FIBRES.iter().find(|row| row.cloth == "linen").unwrap();
/// assert_eq!((linen.least, linen.most), (5_000, 10_000));
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Fibre {
    /// The fibre or cloth.
    pub cloth: &'static str,
    /// The grain, where the source gives each its own.
    pub grain: Option<Grain>,
    /// The least shrinkage, in thousandths of a percent.
    pub least: u32,
    /// The most shrinkage, in thousandths of a percent.
    pub most: u32,
    /// Whether the source says "and more".
    pub more: bool,
    /// Who says so.
    pub source: Source,
}

const fn row(cloth: &'static str, least: u32, most: u32, source: &'static str) -> Fibre {
    Fibre { cloth, grain: None, least, most, more: false, source: Source::Published(source) }
}

const fn along(cloth: &'static str, grain: Grain, shrinkage: u32) -> Fibre {
    Fibre { grain: Some(grain), ..row(cloth, shrinkage, shrinkage, MAKER) }
}

const GUIDE: &str = "fabric shrinkage guide, undated";
const SUM: &str = "how do you calculate shrinkage, undated";
const MAKER: &str = "shrinkage rate of the general fabric, maker's page in translation, 2018";
const EXPECT: &str = "how much to expect your fabric to shrink, 2012: about nine tenths of it in the first wash";
const KNIT: &str = "does knit material shrink, undated; first wash";

/// Every row that was read.
///
/// ```
/// assert!(tenter_core::making::washing::FIBRES.iter().all(|row| row.least <= row.most));
/// ```
pub const FIBRES: &[Fibre] = &[
    row("any cloth", 1_000, 3_000, EXPECT),
    row("cotton, woven", 3_000, 5_000, GUIDE),
    row("cotton, preshrunk", 2_000, 5_000, SUM),
    row("cotton, not preshrunk", 0, 20_000, SUM),
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
    row("linen", 5_000, 10_000, GUIDE),
    row("linen", 4_000, 4_000, SUM),
    Fibre { more: true, ..row("viscose", 5_000, 10_000, GUIDE) },
    row("polyester", 0, 3_000, GUIDE),
    row("nylon, acrylic, acetate", 3_000, 4_000, SUM),
    row("knits", 1_000, 8_000, KNIT),
    row("cotton jersey", 2_000, 3_000, SUM),
    Fibre {
        grain: Some(Grain::Crosswise),
        ..row(
            "cotton, width",
            10_000,
            10_000,
            "sewing forum, one sewer's rule, undated; contradicts the guides, where wovens shrink more in length",
        )
    },
];

/// How often to wash a cloth before cutting, always as the garment will be washed.
///
/// ```
/// let denim = tenter_core::making::washing::PREWASHES.iter().find(|row| row.cloth == "denim").unwrap();
/// assert_eq!(denim.washes, 3);
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Prewash {
    /// The fibre or cloth.
    pub cloth: &'static str,
    /// How many washes.
    pub washes: u8,
    /// Who says so.
    pub source: Source,
}

const fn prewash(cloth: &'static str, washes: u8, source: &'static str) -> Prewash {
    Prewash { cloth, washes, source: Source::Published(source) }
}

/// Every row that was read; where a source says "more than once", two.
///
/// ```
/// assert!(tenter_core::making::washing::PREWASHES.iter().all(|row| row.washes > 0));
/// ```
pub const PREWASHES: &[Prewash] = &[
    prewash("any cloth", 1, "R. M. Tondl, Sewing with Knits, Nebraska Extension NF00-415, 2000"),
    prewash("cotton", 2, "R. M. Tondl, Sewing with Knits, Nebraska Extension NF00-415, 2000"),
    prewash("cotton and viscose knits", 2, "how much to expect your fabric to shrink, 2012"),
    prewash("denim", 3, "pant fabrics, fitting book, ch. 3, undated"),
];
