//! Names for amounts of stretch, growth and recovery. The number always comes first: the sources disagree.

use crate::answer::source::Source;
use crate::number::ratio::Ratio;

/// One rung of a table of stretch classes.
///
/// ```
/// let first = &tenter_core::TABLES[0].classes[0];
/// assert_eq!((first.name, first.up_to), ("rigid", Some(2_000)));
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Class {
    /// Its name.
    pub name: &'static str,
    /// Its upper edge in thousandths of a percent; none for the last.
    pub up_to: Option<u32>,
    /// Whether the edge itself belongs to this class.
    pub with_edge: bool,
}

const fn below(name: &'static str, milli_percent: u32) -> Class {
    Class { name, up_to: Some(milli_percent), with_edge: false }
}

const fn up_to(name: &'static str, milli_percent: u32) -> Class {
    Class { name, up_to: Some(milli_percent), with_edge: true }
}

const fn above(name: &'static str) -> Class {
    Class { name, up_to: None, with_edge: false }
}

/// A table of stretch classes, from the least to the most, without gaps.
///
/// ```
/// use tenter_core::{Ratio, Table};
///
/// let five = Ratio::new(1, 20).unwrap();
/// assert_eq!(Table::named("own").unwrap().class(five).name, "slight");
/// assert_eq!(Table::named("utah-extension").unwrap().class(five).name, "stable");
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Table {
    /// The word that selects it.
    pub key: &'static str,
    /// Where its limits come from.
    pub source: Source,
    /// What was read, and what was done to close gaps.
    pub note: &'static str,
    /// The classes in rising order; the last has no upper edge.
    pub classes: &'static [Class],
}

/// The tool's own ladders, then each table whose limits could be read.
pub const TABLES: &[Table] = &[
    Table::OWN,
    OWN_WOVEN,
    Table {
        key: "utah-extension",
        source: Source::Published("Utah State University Extension, Considerations for Knit Fabrics"),
        note: "4 in to 4 3/4, 5 3/8, and from 5 1/2 on; what lies between 5 3/8 and 5 1/2 in counts as moderate here",
        classes: &[up_to("stable", 18_750), below("moderate", 37_500), above("stretchy")],
    },
    Table {
        key: "knit-leaflet",
        source: Source::CommonPractice,
        note: "a leaflet: gains on 4 in of 1/2 and about 1 1/4 in; the copy that was read ends there",
        classes: &[up_to("stable", 12_500), up_to("moderate", 31_250), above("above moderate")],
    },
    Table {
        key: "question-page",
        source: Source::CommonPractice,
        note: "a page of answers: 18-25, 25-30, to 50, 75-100 %; the gap from 50 to 75 % counts as stretchy here",
        classes: &[below("stable", 25_000), up_to("moderate", 30_000), below("stretchy", 75_000), above("super")],
    },
    Table {
        key: "drafting-lesson",
        source: Source::CommonPractice,
        note: "a lesson: stable to 25 %; the copy that was read ends there",
        classes: &[up_to("stable", 25_000), above("above stable")],
    },
    Table {
        key: "help-page",
        source: Source::CommonPractice,
        note: "a help page: 25 % is the least that counts",
        classes: &[
            below("not counted", 25_000),
            below("least", 50_000),
            below("fitted", 75_000),
            below("sport", 100_000),
            above("swim"),
        ],
    },
    Table {
        key: "armstrong",
        source: Source::Memory("H. J. Armstrong, Patternmaking for Fashion Design, 5th ed., 2010, ch. 27"),
        note: "each figure is taken as the upper end of its class",
        classes: &[
            up_to("stable", 18_000),
            up_to("moderate", 25_000),
            up_to("stretchy", 50_000),
            above("super or rib"),
        ],
    },
    Table {
        key: "richardson-2008",
        source: Source::Memory("K. Richardson, Designing and Patternmaking for Stretch Fabrics, 2008"),
        note: "steps such as 25 to 26 % are closed upwards",
        classes: &[
            below("under stable", 18_000),
            up_to("stable", 25_000),
            up_to("moderate", 50_000),
            up_to("stretchy", 75_000),
            up_to("super", 100_000),
            above("rib"),
        ],
    },
];

const OWN_WOVEN: Table = Table {
    key: "own-woven",
    source: Source::Own,
    note: "for wovens",
    classes: &[
        below("rigid", 2_000),
        below("slight", 12_000),
        below("comfort", 20_000),
        up_to("stretch woven", 30_000),
        above("as a knit"),
    ],
};

impl Table {
    /// The tool's own ladder.
    pub const OWN: Self = Self {
        key: "own",
        source: Source::Own,
        note: "2 % is within reading error, 12 % is where the US method for stretch wovens begins (ASTM D3107), 18.75, \
               25, 50, 75 and 100 % are the landmarks most tables share",
        classes: &[
            below("rigid", 2_000),
            below("slight", 12_000),
            below("comfort", 18_750),
            below("easy", 25_000),
            below("moderate", 50_000),
            below("ample", 75_000),
            below("sport", 100_000),
            above("extreme"),
        ],
    };

    /// The table that `key` selects.
    ///
    /// ```
    /// assert!(tenter_core::Table::named("nobody").is_none());
    /// ```
    #[must_use]
    pub fn named(key: &str) -> Option<&'static Self> {
        TABLES.iter().find(|table| table.key == key)
    }

    /// The class of an amount of stretch, compared exactly.
    ///
    /// ```
    /// use tenter_core::{Ratio, Table};
    ///
    /// // 4 in to 5 3/8 in, printed as 35 %.
    /// let printed = Ratio::new(11, 32).unwrap();
    /// assert_eq!(Table::named("own").unwrap().class(printed).name, "moderate");
    /// ```
    #[must_use]
    pub fn class(&self, stretch: Ratio) -> &'static Class {
        let holds = |class: &&Class| {
            let Some(edge) = class.up_to.and_then(|milli| Ratio::new(milli.into(), 100_000)) else {
                return true;
            };
            stretch < edge || class.with_edge && stretch == edge
        };
        self.classes.iter().find(holds).unwrap_or(&NO_CLASS)
    }
}

/// What an empty table would say.
const NO_CLASS: Class = above("unnamed");

/// Grades of growth. The tool's own: no published limit was found. Growth of tailored cloth is wanted at or below 2 %,
/// of denim at about 3 %, of loose knits at 5 to 6 % (common practice, no source).
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum GrowthClass {
    /// Up to 1 %: on a 10 cm gauge hardly to be read.
    HardlyAny,
    /// Up to 3 %.
    Good,
    /// Up to 6 %: for loose garments only.
    Watch,
    /// Above 6 %.
    Poor,
}

impl GrowthClass {
    /// The grade of an amount of growth, compared exactly.
    ///
    /// ```
    /// use tenter_core::{GrowthClass, Ratio};
    ///
    /// assert_eq!(GrowthClass::of(Ratio::new(61, 1000).unwrap()), GrowthClass::Poor);
    /// ```
    #[must_use]
    pub fn of(growth: Ratio) -> Self {
        let up_to = |percent| Ratio::new(percent, 100).is_some_and(|edge| growth <= edge);
        if up_to(1) {
            Self::HardlyAny
        } else if up_to(3) {
            Self::Good
        } else if up_to(6) {
            Self::Watch
        } else {
            Self::Poor
        }
    }

    /// The words for it.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::HardlyAny => "hardly any",
            Self::Good => "good",
            Self::Watch => "watch",
            Self::Poor => "poor",
        }
    }

    pub(crate) const fn rank(self) -> u8 {
        self as u8
    }
}

/// Grades of recovery: 95, 90 and 80 % (common practice, no source).
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum RecoveryClass {
    /// 95 % or more.
    Excellent,
    /// 90 % or more.
    Good,
    /// 80 % or more.
    Fair,
    /// Below 80 %.
    Poor,
}

impl RecoveryClass {
    /// The grade of an amount of recovery, compared exactly.
    ///
    /// ```
    /// use tenter_core::{Ratio, RecoveryClass};
    ///
    /// assert_eq!(RecoveryClass::of(Ratio::new(5, 9).unwrap()), RecoveryClass::Poor);
    /// ```
    #[must_use]
    pub fn of(recovery: Ratio) -> Self {
        let at_least = |percent| Ratio::new(percent, 100).is_some_and(|edge| recovery >= edge);
        if at_least(95) {
            Self::Excellent
        } else if at_least(90) {
            Self::Good
        } else if at_least(80) {
            Self::Fair
        } else {
            Self::Poor
        }
    }

    /// The word for it.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Excellent => "excellent",
            Self::Good => "good",
            Self::Fair => "fair",
            Self::Poor => "poor",
        }
    }

    pub(crate) const fn rank(self) -> u8 {
        self as u8
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn tables_rise_without_gaps() {
        for table in TABLES {
            let (last, others) = table.classes.split_last().unwrap();
            assert_eq!(last.up_to, None, "{}", table.key);
            assert!(others.iter().all(|class| class.up_to.is_some()), "{}", table.key);
            assert!(others.windows(2).all(|pair| pair[0].up_to < pair[1].up_to), "{}", table.key);
            assert_eq!(TABLES.iter().filter(|other| other.key == table.key).count(), 1);
        }
    }
}
