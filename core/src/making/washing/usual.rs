//! What an unwashed cloth usually loses, and what published limits let pass.

use crate::answer::source::Source;
use crate::making::care::{Described, Fibre};
use crate::number::ratio::Ratio;
use crate::reading::construction::Construction;
use crate::reading::pull_test::Grain;

/// How much an unwashed cloth usually loses in its first washes: an allowance for one that nobody measured.
///
/// ```
/// use tenter_core::making::{care::Described, washing::Usual};
/// use tenter_core::{Construction, Grain};
///
/// let sateen = Described { fibre: "cotton, elastane", construction: Construction::Woven, ..Described::default() };
/// let along = Usual::of(&sateen, Grain::Lengthwise);
/// assert_eq!((along.cloth, along.least, along.most), ("woven cotton", 3_000, 6_000));
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct Usual {
    /// The cloth it is said of.
    pub cloth: &'static str,
    /// The grain.
    pub grain: Grain,
    /// The least loss, in thousandths of a percent.
    pub least: u32,
    /// The most that is usual, in thousandths of a percent.
    pub most: u32,
    /// Where it comes from.
    pub source: Source,
}

const TRADE: Source = Source::CommonPractice;
const JTIA: Source = Source::Published("Japan Textile Inspection Association, limits after JIS L 1096");

const fn row(cloth: &'static str, along: [u32; 2], across: [u32; 2], source: Source) -> [Usual; 2] {
    let [least, most] = along;
    let lengthwise = Usual { cloth, grain: Grain::Lengthwise, least: 1_000 * least, most: 1_000 * most, source };
    let [least, most] = across;
    [lengthwise, Usual { grain: Grain::Crosswise, least: 1_000 * least, most: 1_000 * most, ..lengthwise }]
}

/// Every row: along and across.
pub const USUAL: [[Usual; 2]; 20] = [
    row("raw denim", [7, 10], [1, 3], TRADE),
    row("preshrunk denim", [1, 3], [1, 3], TRADE),
    row("denim", [1, 10], [1, 3], TRADE),
    row("preshrunk cotton", [2, 5], [2, 5], TRADE),
    row("cotton poplin", [3, 10], [1, 3], TRADE),
    row("cotton flannel", [4, 8], [2, 5], TRADE),
    row("jersey with elastane", [3, 8], [3, 8], TRADE),
    row("cotton jersey", [5, 8], [3, 8], TRADE),
    row("woven cotton", [3, 6], [1, 3], TRADE),
    row("linen", [3, 8], [2, 4], TRADE),
    row("knit viscose", [1, 8], [1, 8], TRADE),
    row("woven viscose", [3, 8], [1, 4], TRADE),
    row("wool", [2, 4], [2, 4], TRADE),
    row("silk crepe", [4, 10], [1, 4], TRADE),
    row("silk", [1, 4], [1, 4], TRADE),
    row("polyester or nylon", [0, 2], [0, 2], TRADE),
    row("acrylic or acetate", [3, 4], [3, 4], TRADE),
    row("a woven of unknown fibre", [0, 3], [0, 3], JTIA),
    row("a knit of unknown fibre", [0, 6], [0, 6], JTIA),
    row("any cloth", [1, 3], [1, 3], TRADE),
];

impl Usual {
    /// The row for a cloth, by the fibre there is most of, how it is made, and words such as denim or poplin.
    #[must_use]
    pub fn of(cloth: &Described<'_>, grain: Grain) -> Self {
        let name = Self::row_of(cloth);
        let found = USUAL.iter().flatten().find(|row| row.cloth == name && row.grain == grain);
        let any = Self { cloth: "any cloth", grain, least: 1_000, most: 3_000, source: TRADE };
        found.copied().unwrap_or(any)
    }

    fn row_of(cloth: &Described<'_>) -> &'static str {
        let fibres = cloth.fibres();
        let knit = cloth.construction == Construction::Knit;
        let says = |words: &[&str]| words.iter().any(|word| cloth.says(word));
        let preshrunk = says(&["preshrunk", "prewashed", "stonewashed"]);
        if cloth.says("denim") {
            return match () {
                () if preshrunk => "preshrunk denim",
                () if says(&["raw", "unwashed", "rigid"]) => "raw denim",
                () => "denim",
            };
        }
        match fibres.main() {
            Some(Fibre::Cotton) if preshrunk => "preshrunk cotton",
            Some(Fibre::Cotton | Fibre::Viscose) if knit && fibres.has(Fibre::Elastane) => "jersey with elastane",
            Some(Fibre::Cotton) if knit => "cotton jersey",
            Some(Fibre::Cotton) if cloth.says("poplin") => "cotton poplin",
            Some(Fibre::Cotton) if says(&["flannel", "flannelette"]) => "cotton flannel",
            Some(Fibre::Cotton) => "woven cotton",
            Some(Fibre::Linen) => "linen",
            Some(Fibre::Viscose) if knit => "knit viscose",
            Some(Fibre::Viscose) => "woven viscose",
            Some(Fibre::Wool) => "wool",
            Some(Fibre::Silk) if says(&["crepe", "crêpe"]) => "silk crepe",
            Some(Fibre::Silk) => "silk",
            Some(Fibre::Polyester | Fibre::Polyamide) => "polyester or nylon",
            Some(Fibre::Acrylic | Fibre::Acetate) => "acrylic or acetate",
            Some(Fibre::Elastane) | None => match cloth.construction {
                Construction::Woven => "a woven of unknown fibre",
                Construction::Knit => "a knit of unknown fibre",
                Construction::Other => "any cloth",
            },
        }
    }

    /// The change to allow for: the most that is usual, below zero.
    #[must_use]
    pub fn change(self) -> Ratio {
        Ratio::new(-i64::from(self.most), 100_000).unwrap_or(Ratio::ZERO)
    }
}

/// A published limit on the change of cloth in washing or dry-cleaning.
///
/// ```
/// use tenter_core::making::washing::LIMITS;
///
/// assert!(LIMITS.iter().all(|limit| limit.along[0] <= limit.along[1]));
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct WashLimit {
    /// The cloth.
    pub cloth: &'static str,
    /// The least and the most change along, in tenths of a percent; below zero for a loss.
    pub along: [i16; 2],
    /// The same across.
    pub across: [i16; 2],
    /// Where it comes from.
    pub source: Source,
}

const fn limit(cloth: &'static str, along: [i16; 2], across: [i16; 2], source: &'static str) -> WashLimit {
    WashLimit { cloth, along, across, source: Source::Published(source) }
}

const WASHED: &str = "Japan Textile Inspection Association, JIS L 1096";

/// Published limits. They bind suppliers; no cloth must keep them.
pub const LIMITS: [WashLimit; 11] = [
    limit("woven, machine wash", [-30, 10], [-30, 10], WASHED),
    limit("knit, machine wash", [-60, 20], [-60, 20], WASHED),
    limit("knit, soaked and dried flat", [-50, 30], [-50, 30], WASHED),
    limit("woven, dry-cleaned", [-30, 10], [-30, 10], WASHED),
    limit("knit, dry-cleaned", [-30, 10], [-50, 10], WASHED),
    limit("woven face cloth of outerwear", [-30, 30], [-30, 30], "JIS L 4107, quoted by NCAC, 2023"),
    limit("65/35 polyester-cotton twill", [-30, 0], [-30, 0], "Pennsylvania item description, 2015"),
    limit("durable-press cloth", [-20, 0], [-20, 0], "US A-A-55281"),
    limit("55/45 polyester-wool trousering", [-25, 0], [-25, 0], "South Carolina Highway Patrol specification"),
    limit("wool uniform cloth", [-65, 0], [-40, 0], "US MIL-DTL-3738L, Table I"),
    limit("flame-resistant garment", [-50, 0], [-50, 0], "ASTM F1506, 2018"),
];

#[cfg(test)]
mod tests {
    use super::*;

    fn usual(fibre: &str, name: &str, construction: Construction) -> &'static str {
        Usual::of(&Described { fibre, name, construction, finish: None }, Grain::Lengthwise).cloth
    }

    #[test]
    fn the_row_goes_by_fibre_construction_and_words() {
        use Construction::{Knit, Other, Woven};
        for (fibre, name, construction, row) in [
            ("97 cotton 3 elastane", "twill", Woven, "woven cotton"),
            ("cotton", "Loft denim", Woven, "denim"),
            ("cotton, raw denim", "", Woven, "raw denim"),
            ("cotton", "Shutter poplin", Woven, "cotton poplin"),
            ("95 cotton 5 elastane", "rib", Knit, "jersey with elastane"),
            ("cotton", "rib", Knit, "cotton jersey"),
            ("78 polyamide 22 elastane", "", Knit, "polyester or nylon"),
            ("silk crêpe", "", Woven, "silk crepe"),
            ("", "", Woven, "a woven of unknown fibre"),
            ("", "", Knit, "a knit of unknown fibre"),
            ("felt", "", Other, "any cloth"),
        ] {
            assert_eq!(usual(fibre, name, construction), row, "{fibre} {name}");
        }
    }

    #[test]
    fn every_row_is_reached_by_its_name_and_sound() {
        for [along, across] in USUAL {
            assert_eq!((along.cloth, along.grain, across.grain), (across.cloth, Grain::Lengthwise, Grain::Crosswise));
            assert!(along.least <= along.most && across.least <= across.most && along.most <= 20_000);
        }
    }
}
