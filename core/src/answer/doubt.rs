//! Reasons not to believe a set of readings. Data only: the words are the front ends'.

use heapless::Vec;

use crate::number::list::list;
use crate::number::ratio::Ratio;
use crate::reading::construction::Construction;
use crate::reading::length::Length;
use crate::reading::limit::{Demand, Limit};
use crate::reading::pull_test::{Grain, PullTest, Rest};
use crate::reading::slip::{Reading, Slip, likely_slip};

/// The most doubts that one set of readings is given; the first ones, where there are more.
pub const MAX_DOUBTS: usize = 6;

/// A stretch that is asked should move the marks by at least so many divisions of the scale; under them the scale
/// cannot show it. The tool's own limit.
const LEAST_DIVISIONS: i64 = 2;

/// Marks that were moved by so many divisions were moved by far more than [`LEAST_DIVISIONS`]. The tool's own limit.
const FAR_DIVISIONS: i64 = 8;

/// Marks that are proposed let the asked stretch move them by so many divisions.
const ENOUGH_DIVISIONS: i64 = 5;

/// Marks farther apart than this are not pulled by two hands: 75 cm. The tool's own limit, and only for lengths that
/// were typed without a unit.
const LONGEST_BARE: Length = Length::from_mm(750);

/// A reason not to believe a set of readings. A doubted set never gets a plain *meets*, *short* or *over*; see
/// [`Answer::doubted`](crate::Answer::doubted).
///
/// ```
/// use tenter_core::Doubt;
///
/// assert_eq!(Doubt::OddPull { pull: 2 }.word(), "odd-pull");
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum Doubt {
    /// A reading was probably typed in another unit.
    SlipOfUnit(Slip),
    /// The stretch is more than such cloth usually gives, and no other unit explains it.
    UnusualStretch,
    /// The demand was probably typed as the ratio of the lengths: 160 % where 60 % is meant.
    RatioForStretch {
        /// The limit that was probably meant.
        likely: Limit,
    },
    /// The marks are too close together: the scale cannot show the stretch that is asked.
    ShortMarks {
        /// Marks so far apart would do.
        enough: Length,
    },
    /// The marks are farther apart across the cloth than the cloth is wide.
    WiderThanCloth,
    /// After release the marks are as far apart as while held.
    NotReleased {
        /// Which reading after release, counted from 0 in the order of [`PullTest::rests`].
        rest: u8,
    },
    /// A later reading after the same release is longer than an earlier one, by more than the scale can explain.
    GrowthRises {
        /// The later reading, counted from 0 in the order of [`PullTest::rests`].
        rest: u8,
    },
    /// One pull lies far from the others.
    OddPull {
        /// Which pull, counted from 0.
        pull: u8,
    },
    /// Two looks at the marks before the pull differ by more than laying and reading them explains.
    OddLook,
    /// A recovered length lies far from the others.
    OddRecovered,
    /// The pulls rise one after the other: creep, curl or slipping marks.
    Rising,
    /// The pulls fall one after the other: a tiring hand.
    Falling,
}

impl Doubt {
    /// Every word that [`word`](Self::word) gives, in the order of the variants.
    pub const WORDS: [&str; 12] = [
        "slip-of-unit",
        "unusual-stretch",
        "ratio-for-stretch",
        "short-marks",
        "wider-than-cloth",
        "not-released",
        "growth-rises",
        "odd-pull",
        "odd-look",
        "odd-recovered",
        "rising",
        "falling",
    ];

    /// The word for it, in lower case with hyphens; stored and shown alike.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::SlipOfUnit(_) => "slip-of-unit",
            Self::UnusualStretch => "unusual-stretch",
            Self::RatioForStretch { .. } => "ratio-for-stretch",
            Self::ShortMarks { .. } => "short-marks",
            Self::WiderThanCloth => "wider-than-cloth",
            Self::NotReleased { .. } => "not-released",
            Self::GrowthRises { .. } => "growth-rises",
            Self::OddPull { .. } => "odd-pull",
            Self::OddLook => "odd-look",
            Self::OddRecovered => "odd-recovered",
            Self::Rising => "rising",
            Self::Falling => "falling",
        }
    }

    /// Whether it is about what is asked and not about the readings: such a doubt is no reason not to store them.
    #[must_use]
    pub const fn is_about_demand(self) -> bool {
        matches!(self, Self::RatioForStretch { .. } | Self::ShortMarks { .. })
    }
}

/// What is known besides the readings when they are looked at for doubts.
///
/// ```
/// assert_eq!(tenter_core::Context::default().construction, None);
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct Context<'d> {
    /// How the cloth is made, where it is known.
    pub construction: Option<Construction>,
    /// How wide the cloth is, where it is known.
    pub cloth_width: Option<Length>,
    /// What is asked, where anything is.
    pub demand: Option<&'d Demand>,
    /// Whether the marks were typed without a unit.
    pub bare: bool,
}

/// What cannot well be true of these readings: doubts from what cloth can do and from what is asked. Doubts that need
/// statistics, such as one pull far from the others, are found by the evaluation.
///
/// ```
/// use tenter_core::{Construction, Context, Doubt, Grain, Length, PullTest, implausible};
///
/// let mut test = PullTest::new(Length::from_mm(100), Grain::Crosswise)?;
/// test.add_pull(Length::from_mm(180))?;
/// let woven = Context { construction: Some(Construction::Woven), ..Context::default() };
/// assert_eq!(implausible(&test, &woven)[..], [Doubt::UnusualStretch]);
/// assert!(implausible(&test, &Context::default()).is_empty());
/// # Ok::<(), tenter_core::TestError>(())
/// ```
#[must_use]
pub fn implausible(test: &PullTest, context: &Context) -> Vec<Doubt, MAX_DOUBTS> {
    let wide = context.cloth_width.filter(|width| test.grain() == Grain::Crosswise && test.gauge() > *width);
    let found = [
        unit(test, context),
        context.demand.and_then(|demand| ratio_for_stretch(test, demand)),
        context.demand.and_then(|demand| short_marks(test, demand)),
        wide.map(|_| Doubt::WiderThanCloth),
    ];
    list(found.into_iter().flatten().chain(after_release(test)))
}

/// What to say of a test from a log that holds more stretch than any cloth gives.
pub(crate) fn impossible(test: &PullTest) -> Option<Doubt> {
    test.possible_for(Construction::Other).err()?;
    unit(test, &Context::default())
}

/// A slip of unit, or more stretch than is usual.
fn unit(test: &PullTest, context: &Context) -> Option<Doubt> {
    let gauge = test.gauge();
    if context.bare && gauge > LONGEST_BARE {
        // Millimetres typed where centimetres are read: the ratio is right, the trust in it is not.
        let likely = Length::from_steps(gauge.steps() / 10);
        return Some(Doubt::SlipOfUnit(Slip { reading: Reading::Gauge, likely }));
    }
    let construction = context.construction.unwrap_or_default();
    let (index, longest) = (0u8..).zip(test.pulls()).max_by_key(|(_, extended)| **extended)?;
    let stretch = stretch(test, *longest)?;
    let slip = || likely_slip(gauge, *longest, index, construction);
    if stretch > construction.usual_stretch() {
        return Some(slip().map_or(Doubt::UnusualStretch, Doubt::SlipOfUnit));
    }
    // 10 cm to 10.5 in is no impossible stretch, but nothing near the 5 % that are asked, which 10.5 cm is.
    let asked = context.demand?.stretch(test.grain());
    let most = asked.at_most.or(asked.at_least).and_then(|limit| times(limit.ratio(), 4))?;
    if asked.at_least.is_some() && stretch > one() && stretch > most { slip().map(Doubt::SlipOfUnit) } else { None }
}

fn ratio_for_stretch(test: &PullTest, demand: &Demand) -> Option<Doubt> {
    let asked = demand.stretch(test.grain());
    let longest = test.pulls().iter().max().and_then(|longest| stretch(test, *longest))?;
    // Only where the two meanings give different answers.
    let of_stretch = [asked.at_least, asked.at_most].into_iter().flatten().find_map(|limit| {
        let meant = less_one(limit.ratio())?;
        let doubled = times(longest, 2)?;
        let differ = doubled >= meant && doubled <= limit.ratio();
        differ.then(|| without_one(limit)).flatten()
    });
    let of_growth = demand.growth_at_most.and_then(without_one);
    of_stretch.or(of_growth).map(|likely| Doubt::RatioForStretch { likely })
}

fn short_marks(test: &PullTest, demand: &Demand) -> Option<Doubt> {
    let asked = demand.stretch(test.grain());
    let least = asked.at_least.or(asked.at_most)?.ratio();
    let division = i64::from(test.scale().division().steps());
    // In whole steps: travel = gauge × limit. A limit of nothing asks for no travel.
    let marks_for = |divisions: i64| {
        let travel = division.checked_mul(divisions)?.checked_mul(least.denominator())?;
        travel.checked_div(least.numerator())
    };
    if i64::from(test.gauge().steps()) >= marks_for(LEAST_DIVISIONS)? {
        return None;
    }
    // Marks that moved by far more than that are read well enough.
    let moved =
        test.pulls().iter().max().map_or(0, |longest| i64::from(longest.steps()) - i64::from(test.gauge().steps()));
    if moved >= division.checked_mul(FAR_DIVISIONS)? {
        return None;
    }
    let enough = marks_for(ENOUGH_DIVISIONS).and_then(|steps| i32::try_from(steps).ok())?;
    Some(Doubt::ShortMarks { enough: Length::from_steps(enough) })
}

/// Doubts about each reading after release.
fn after_release(test: &PullTest) -> impl Iterator<Item = Doubt> + '_ {
    let apart = i64::from(test.scale().division().steps()) * LEAST_DIVISIONS;
    let mut before: Option<Rest> = None;
    (0u8..).zip(test.rests()).filter_map(move |(rest, reading)| {
        let extended = *test.pulls().get(usize::from(reading.after_pull))?;
        let steps = |length: Length| i64::from(length.steps());
        let rose = before.is_some_and(|earlier| {
            earlier.after_pull == reading.after_pull && steps(reading.recovered) - steps(earlier.recovered) > apart
        });
        before = Some(*reading);
        let travel = steps(extended) - steps(test.gauge());
        let back = steps(extended) - steps(reading.recovered);
        // Under five divisions of travel a tenth of it cannot be read.
        if travel >= apart / LEAST_DIVISIONS * ENOUGH_DIVISIONS && back * 10 < travel {
            Some(Doubt::NotReleased { rest })
        } else if rose {
            Some(Doubt::GrowthRises { rest })
        } else {
            None
        }
    })
}

fn stretch(test: &PullTest, extended: Length) -> Option<Ratio> {
    let (gauge, extended) = (i64::from(test.gauge().steps()), i64::from(extended.steps()));
    Ratio::new(extended - gauge, gauge)
}

fn one() -> Ratio {
    Ratio::new(1, 1).unwrap_or(Ratio::ZERO)
}

fn times(ratio: Ratio, factor: i64) -> Option<Ratio> {
    Ratio::new(ratio.numerator().checked_mul(factor)?, ratio.denominator())
}

/// The ratio less 1, where something is left.
fn less_one(ratio: Ratio) -> Option<Ratio> {
    ratio.minus(one()).filter(|left| *left > Ratio::ZERO)
}

/// The limit less 100 %, to 0.001 %, where something is left.
fn without_one(limit: Limit) -> Option<Limit> {
    let milli = less_one(limit.ratio())?.percent(3).scaled();
    u32::try_from(milli).ok().and_then(|milli| Limit::milli_percent(milli).ok())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::reading::Unit;
    use crate::reading::limit::Range;

    fn length(text: &str) -> Length {
        Length::parse(text, Unit::Cm).unwrap()
    }

    fn test(gauge: &str, pulls: &[&str]) -> PullTest {
        let mut test = PullTest::new(length(gauge), Grain::Crosswise).unwrap();
        for pull in pulls {
            test.add_pull(length(pull)).unwrap();
        }
        test
    }

    fn wants(text: &str) -> Demand {
        Demand::for_grain(Grain::Crosswise, Range::parse(text, Unit::Cm).unwrap())
    }

    fn doubts(test: &PullTest, context: &Context) -> std::vec::Vec<Doubt> {
        implausible(test, context).iter().copied().collect()
    }

    fn asked<'d>(demand: &'d Demand) -> Context<'d> {
        Context { demand: Some(demand), ..Context::default() }
    }

    #[test]
    fn every_doubt_has_a_word_of_its_own() {
        let mut words = Doubt::WORDS.to_vec();
        words.sort_unstable();
        words.dedup();
        assert_eq!(words.len(), Doubt::WORDS.len());
        assert!(Doubt::WORDS.contains(&Doubt::GrowthRises { rest: 0 }.word()));
    }

    #[test]
    fn an_everyday_reading_is_not_doubted() {
        let demand = wants("5%");
        let mut everyday = test("25cm", &["26.5cm", "26.6cm", "26.5cm"]);
        everyday.add_rest(60, length("25.2cm")).unwrap();
        everyday.add_rest(1800, length("25.1cm")).unwrap();
        let width = Some(length("140cm"));
        for construction in Construction::ALL.map(Some) {
            let context = Context { construction, cloth_width: width, demand: Some(&demand), bare: true };
            assert_eq!(doubts(&everyday, &context), []);
        }
    }

    #[test]
    fn inches_for_centimetres_are_seen_by_what_is_asked() {
        let (demand, slipped) = (wants("5%"), test("10cm", &["10.5in"]));
        let slip = Slip { reading: Reading::Extended { pull: 0 }, likely: length("10.5cm") };
        assert_eq!(doubts(&slipped, &asked(&demand)), [Doubt::SlipOfUnit(slip)]);
        assert_eq!(doubts(&slipped, &Context::default()), []);
        let rib = wants("150%");
        assert!(!doubts(&slipped, &asked(&rib)).contains(&Doubt::SlipOfUnit(slip)));
    }

    #[test]
    fn bare_millimetres_are_seen_by_their_size() {
        let (bare, meant) = (test("100", &["105"]), test("100cm", &["105cm"]));
        let context = Context { bare: true, ..Context::default() };
        let slip = Slip { reading: Reading::Gauge, likely: length("100mm") };
        assert_eq!(doubts(&bare, &context), [Doubt::SlipOfUnit(slip)]);
        assert_eq!(doubts(&meant, &Context::default()), []);
    }

    #[test]
    fn a_ratio_is_doubted_where_it_changes_the_answer() {
        let likely = |text| Doubt::RatioForStretch { likely: Limit::parse(text, Unit::Cm).unwrap() };
        let (to_160, to_105) = (wants("160%"), wants("105%"));
        assert_eq!(doubts(&test("10cm", &["16cm"]), &asked(&to_160)), [likely("60%")]);
        assert_eq!(doubts(&test("10cm", &["10.5cm"]), &asked(&to_105)), [likely("5%")]);
        assert_eq!(doubts(&test("10cm", &["11cm"]), &asked(&to_160)), []); // Short either way.
        assert_eq!(doubts(&test("10cm", &["25.5cm"]), &asked(&to_160)), []); // Near the 160 %.
        let most = Demand { growth_at_most: Limit::parse("103%", Unit::Cm).ok(), ..Demand::default() };
        assert_eq!(doubts(&test("10cm", &["11cm"]), &asked(&most)), [likely("3%")]);
    }

    #[test]
    fn marks_may_be_too_short_or_too_long_for_the_cloth() {
        let demand = wants("5%");
        let short = test("2cm", &["2.1cm"]);
        assert_eq!(doubts(&short, &asked(&demand)), [Doubt::ShortMarks { enough: length("10cm") }]);
        assert_eq!(doubts(&test("4cm", &["4.2cm"]), &asked(&demand)), []);
        // Eight divisions are no two, whatever the scale.
        assert_eq!(doubts(&test("2cm", &["2.8cm"]), &asked(&demand)), []);
        let narrow = Context { cloth_width: Some(length("20cm")), ..Context::default() };
        assert_eq!(doubts(&test("25cm", &["26cm"]), &narrow), [Doubt::WiderThanCloth]);
    }

    /// Earlier programs stored such slips.
    #[test]
    fn a_stored_slip_never_gets_a_plain_answer() {
        let mut stored = PullTest::new(length("10cm"), Grain::Crosswise).unwrap();
        stored.add_stored_pull(length("105cm")).unwrap();
        let (demand, rules) = (wants("5%"), crate::answer::evaluation::Rules::default());
        let evaluation = crate::answer::evaluation::Evaluation::of(&stored, &demand, &rules).unwrap();
        assert_eq!(evaluation.answer, Some(crate::answer::verdict::Answer::Close));
        assert_eq!(evaluation.doubts[0].word(), "slip-of-unit");
        assert_eq!(crate::answer::evaluation::judge(&stored, &demand, &rules).unwrap(), evaluation.parts);
    }

    #[test]
    fn growth_goes_with_the_stretch_and_with_time() {
        let mut held = test("25cm", &["30cm"]);
        held.add_rest(60, length("29.8cm")).unwrap();
        assert_eq!(doubts(&held, &Context::default()), [Doubt::NotReleased { rest: 0 }]);
        let mut rises = test("25cm", &["30cm"]);
        rises.add_rest(60, length("25.5cm")).unwrap();
        rises.add_rest(1800, length("25.8cm")).unwrap();
        assert_eq!(doubts(&rises, &Context::default()), [Doubt::GrowthRises { rest: 1 }]);
    }
}
