//! Which kinds of garment ask for as much as a cloth gives.

use crate::answer::evaluation::{Ask, Rules};
use crate::answer::judgement::{Judged, One};
use crate::answer::rebound::{Rebound, ReboundGrade};
use crate::answer::source::Source;
use crate::answer::verdict::Answer;
use crate::number::ratio::Ratio;
use crate::reading::construction::Construction;
use crate::reading::limit::Demand;
use crate::reading::pull_test::{PullTest, TestError};

/// A kind of garment and what a source says it asks.
///
/// ```
/// let tee = tenter_core::SUITS.iter().find(|row| row.garment == "loose tee").unwrap();
/// assert_eq!(tee.at_least, 20_000);
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Suit {
    /// The garment.
    pub garment: &'static str,
    /// The construction that its source speaks of.
    pub construction: Construction,
    /// Least stretch, in thousandths of a percent.
    pub at_least: u32,
    /// Most stretch, in thousandths of a percent.
    pub at_most: Option<u32>,
    /// Least stretch along the other grain, in thousandths of a percent; 0 where some is wanted but no figure given.
    pub other_grain: Option<u32>,
    /// Worn close to the body, so that growth shows.
    pub close: bool,
    /// Where the figure comes from.
    pub source: Source,
}

impl Suit {
    /// Whether it is made of cloth of that construction, which comes back like that. A construction that is not known
    /// speaks against nothing. Cloth that comes back fairly leaves only loose garments, cloth that comes back poorly
    /// none.
    ///
    /// ```
    /// use tenter_core::{Construction, Rebound, ReboundGrade, SUITS};
    ///
    /// let leggings = SUITS.iter().find(|row| row.garment == "leggings").unwrap();
    /// assert!(leggings.serves(Construction::Knit, None) && !leggings.serves(Construction::Woven, None));
    /// assert!(!leggings.serves(Construction::Knit, Some(ReboundGrade::Fair)));
    /// ```
    #[must_use]
    pub fn serves(&self, construction: Construction, rebound: Option<ReboundGrade>) -> bool {
        let made = construction == Construction::Other || construction == self.construction;
        made && match rebound {
            Some(ReboundGrade::Poor) => false,
            Some(ReboundGrade::Fair) => !self.close,
            Some(ReboundGrade::Excellent | ReboundGrade::Good) | None => true,
        }
    }
}

/// Every row, from the least stretch to the most.
pub const SUITS: &[Suit] = &[
    Suit {
        garment: "trousers, skirt or coat with slight stretch",
        construction: Construction::Woven,
        at_least: 5_000,
        at_most: Some(12_000),
        other_grain: None,
        close: false,
        source: Source::CommonPractice,
    },
    Suit {
        garment: "sweatshirt",
        construction: Construction::Knit,
        at_least: 10_000,
        at_most: Some(20_000),
        other_grain: None,
        close: false,
        source: Source::CommonPractice,
    },
    Suit {
        garment: "self-drafted leggings",
        construction: Construction::Knit,
        at_least: 10_000,
        at_most: None,
        other_grain: None,
        close: true,
        source: Source::CommonPractice,
    },
    Suit {
        garment: "tailored wear",
        construction: Construction::Woven,
        at_least: 15_000,
        at_most: Some(25_000),
        other_grain: None,
        close: true,
        source: Source::CommonPractice,
    },
    Suit {
        garment: "loose tee",
        construction: Construction::Knit,
        at_least: 20_000,
        at_most: None,
        other_grain: None,
        close: false,
        source: Source::CommonPractice,
    },
    Suit {
        garment: "fitted trousers in stretch woven",
        construction: Construction::Woven,
        at_least: 20_000,
        at_most: None,
        other_grain: None,
        close: true,
        source: Source::CommonPractice,
    },
    Suit {
        garment: "jeans in stretch denim",
        construction: Construction::Woven,
        at_least: 20_000,
        at_most: Some(25_000),
        other_grain: None,
        close: true,
        source: Source::CommonPractice,
    },
    Suit {
        garment: "everyday knit top",
        construction: Construction::Knit,
        at_least: 30_000,
        at_most: Some(40_000),
        other_grain: None,
        close: false,
        source: Source::CommonPractice,
    },
    Suit {
        garment: "maternity wear",
        construction: Construction::Knit,
        at_least: 40_000,
        at_most: None,
        other_grain: None,
        close: true,
        source: Source::CommonPractice,
    },
    Suit {
        garment: "leggings",
        construction: Construction::Knit,
        at_least: 40_000,
        at_most: None,
        other_grain: Some(0),
        close: true,
        source: Source::CommonPractice,
    },
    Suit {
        garment: "fitted top, dress or skirt",
        construction: Construction::Knit,
        at_least: 50_000,
        at_most: None,
        other_grain: None,
        close: true,
        source: Source::CommonPractice,
    },
    Suit {
        garment: "close garment for an infant, at least 5 % elastane",
        construction: Construction::Knit,
        at_least: 50_000,
        at_most: Some(75_000),
        other_grain: Some(50_000),
        close: true,
        source: Source::CommonPractice,
    },
    Suit {
        garment: "leggings for sport",
        construction: Construction::Knit,
        at_least: 75_000,
        at_most: None,
        other_grain: Some(75_000),
        close: true,
        source: Source::CommonPractice,
    },
    Suit {
        garment: "swimsuit or leotard",
        construction: Construction::Knit,
        at_least: 75_000,
        at_most: None,
        other_grain: Some(50_000),
        close: true,
        source: Source::CommonPractice,
    },
    Suit {
        garment: "swimsuit with full stretch",
        construction: Construction::Knit,
        at_least: 100_000,
        at_most: None,
        other_grain: Some(0),
        close: true,
        source: Source::CommonPractice,
    },
];

/// The rows whose limits the measured grain meets at the confidence of `rules`, as [`Suit::serves`] has it of their
/// construction and of how the cloth comes back. What a row asks of the other grain is for the caller to say.
///
/// # Errors
///
/// [`TestError::NoPull`] without a pull.
///
/// ```
/// use tenter_core::{Grain, Length, PullTest, Rules, suits};
///
/// let mut test = PullTest::new(Length::from_mm(250), Grain::Crosswise)?.with_settling_pull(true);
/// for extended in [271, 270, 271] {
///     test.add_pull(Length::from_mm(extended))?;
/// }
/// let garments: Vec<_> = suits(&test, &Rules::default())?.map(|row| row.garment).collect();
/// assert_eq!(garments, ["trousers, skirt or coat with slight stretch"]);
/// # Ok::<(), tenter_core::TestError>(())
/// ```
pub fn suits(test: &PullTest, rules: &Rules) -> Result<impl Iterator<Item = &'static Suit>, TestError> {
    let one = One::alone(test.pulled()?, &Demand::default(), rules);
    let judged = Judged::alone(&one);
    let rebound = Rebound::of(&judged.figures, rules.confidence).map(|rebound| rebound.grade);
    let construction = rules.construction;
    let (stretch, share) = (judged.figures.stretch, judged.share_of_risk(Ask::Stretch, rules));
    let (confidence, believed) = (rules.confidence, judged.doubts().is_empty());
    let reaches = move |milli: u32| {
        let limit = Ratio::new(milli.into(), 100_000).unwrap_or(Ratio::ZERO);
        confidence.judge_with(share, stretch.chance_at_least(limit), Answer::Short)
    };
    Ok(SUITS.iter().filter(move |row| {
        believed
            && row.serves(construction, rebound)
            && reaches(row.at_least) == Answer::Meets
            && row.at_most.is_none_or(|most| reaches(most) == Answer::Short)
    }))
}
