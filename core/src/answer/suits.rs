//! Which kinds of garment ask for as much as a cloth gives.

use crate::answer::class::GrowthClass;
use crate::answer::evaluation::{Ask, Rules};
use crate::answer::joint::Sitting;
use crate::answer::judgement::{Judged, Ones};
use crate::answer::source::Source;
use crate::answer::verdict::Answer;
use crate::number::ratio::Ratio;
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

/// Every row, from the least stretch to the most.
pub const SUITS: &[Suit] = &[
    Suit {
        garment: "trousers, skirt or coat with slight stretch",
        at_least: 5_000,
        at_most: Some(12_000),
        other_grain: None,
        close: false,
        source: Source::CommonPractice,
    },
    Suit {
        garment: "sweatshirt",
        at_least: 10_000,
        at_most: Some(20_000),
        other_grain: None,
        close: false,
        source: Source::CommonPractice,
    },
    Suit {
        garment: "self-drafted leggings",
        at_least: 10_000,
        at_most: None,
        other_grain: None,
        close: true,
        source: Source::CommonPractice,
    },
    Suit {
        garment: "tailored wear",
        at_least: 15_000,
        at_most: Some(25_000),
        other_grain: None,
        close: true,
        source: Source::CommonPractice,
    },
    Suit {
        garment: "loose tee",
        at_least: 20_000,
        at_most: None,
        other_grain: None,
        close: false,
        source: Source::CommonPractice,
    },
    Suit {
        garment: "fitted trousers in stretch woven",
        at_least: 20_000,
        at_most: None,
        other_grain: None,
        close: true,
        source: Source::CommonPractice,
    },
    Suit {
        garment: "jeans in stretch denim",
        at_least: 20_000,
        at_most: Some(25_000),
        other_grain: None,
        close: true,
        source: Source::CommonPractice,
    },
    Suit {
        garment: "everyday knit top",
        at_least: 30_000,
        at_most: Some(40_000),
        other_grain: None,
        close: false,
        source: Source::CommonPractice,
    },
    Suit {
        garment: "maternity wear",
        at_least: 40_000,
        at_most: None,
        other_grain: None,
        close: true,
        source: Source::CommonPractice,
    },
    Suit {
        garment: "leggings",
        at_least: 40_000,
        at_most: None,
        other_grain: Some(0),
        close: true,
        source: Source::CommonPractice,
    },
    Suit {
        garment: "fitted top, dress or skirt",
        at_least: 50_000,
        at_most: None,
        other_grain: None,
        close: true,
        source: Source::CommonPractice,
    },
    Suit {
        garment: "close garment for an infant, at least 5 % elastane",
        at_least: 50_000,
        at_most: Some(75_000),
        other_grain: Some(50_000),
        close: true,
        source: Source::CommonPractice,
    },
    Suit {
        garment: "leggings for sport",
        at_least: 75_000,
        at_most: None,
        other_grain: Some(75_000),
        close: true,
        source: Source::CommonPractice,
    },
    Suit {
        garment: "swimsuit or leotard",
        at_least: 75_000,
        at_most: None,
        other_grain: Some(50_000),
        close: true,
        source: Source::CommonPractice,
    },
    Suit {
        garment: "swimsuit with full stretch",
        at_least: 100_000,
        at_most: None,
        other_grain: Some(0),
        close: true,
        source: Source::CommonPractice,
    },
];

/// The rows whose limits the measured grain meets at the confidence of `rules`. Growth above 3 % leaves only loose
/// garments, growth above 6 % none. What a row asks of the other grain is for the caller to say.
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
    let sitting = Sitting { scatter: rules.scatter, ..Sitting::new(test) };
    let mut ones = Ones::new();
    let judged = Judged::of(&[sitting], &Demand::default(), rules, &mut ones)?;
    let growth = judged.figures.rest.map(|rest| GrowthClass::of(rest.growth.ratio));
    let (stretch, share) = (judged.figures.stretch, judged.share_of_risk(Ask::Stretch, rules));
    let (confidence, believed) = (rules.confidence, judged.doubts().is_empty());
    let reaches = move |milli: u32| {
        let limit = Ratio::new(milli.into(), 100_000).unwrap_or(Ratio::ZERO);
        confidence.judge_with(share, stretch.chance_at_least(limit), Answer::Short)
    };
    Ok(SUITS.iter().filter(move |row| {
        let grows_too_much = match growth {
            Some(GrowthClass::Poor) => true,
            Some(GrowthClass::Watch) => row.close,
            _ => false,
        };
        believed
            && !grows_too_much
            && reaches(row.at_least) == Answer::Meets
            && row.at_most.is_none_or(|most| reaches(most) == Answer::Short)
    }))
}
