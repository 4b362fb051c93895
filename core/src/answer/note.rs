//! What to know about a set of readings. Data only: the words are the front ends'.

use heapless::Vec;

use crate::answer::Rules;
use crate::answer::class::{GrowthClass, RecoveryClass};
use crate::answer::confidence::Confidence;
use crate::answer::figure::Figure;
use crate::answer::figures::Figures;
use crate::answer::joint::SHORT_MARKS;
use crate::answer::rebound::{RECOVERY_FROM_PERCENT, Rebound, ReboundGrade};
use crate::number::list::list;
use crate::number::num;
use crate::number::ratio::Ratio;
use crate::reading::pull_test::PullTest;

/// How many kinds of note there are.
pub(crate) const COUNT: usize = 10;

/// A recovery figure is readable while its two-sided interval reaches no further than this many points either way:
/// the grades of recovery are five to ten points wide. The tool's own limit.
pub const RECOVERY_READABLE_POINTS: f32 = 10.0;

/// Growth read sooner than this many seconds after release is still on its way.
pub const EARLY_REST_SECONDS: u32 = 30;

/// Something to know about these readings.
///
/// ```
/// use tenter_core::{Demand, Evaluation, Grain, Length, Note, PullTest, Rules};
///
/// let mut test = PullTest::new(Length::from_mm(50), Grain::Crosswise)?;
/// test.add_pull(Length::from_mm(55))?;
/// let notes = Evaluation::of(&test, &Demand::default(), &Rules::default())?.notes;
/// assert!(notes.contains(&Note::OnePull) && notes.contains(&Note::ShortGauge));
/// # Ok::<(), tenter_core::TestError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum Note {
    /// One pull: its scatter is assumed, not seen.
    OnePull,
    /// One pull and no settling pull before it: a first pull of a knit reads up to 5 points low.
    NoSettlingPull,
    /// No settling pull was made before, so that the first of these pulls settled the cloth and does not count.
    FirstPullSettled,
    /// The marks are under 100 mm apart, which reads high.
    ShortGauge,
    /// A length lies between two lines of the stated scale.
    BetweenLines,
    /// Growth was read under [`EARLY_REST_SECONDS`] after release and may still fall.
    EarlyRest,
    /// The recovery figure is too uncertain to grade; judge by growth.
    RecoveryNotReadable,
    /// Growth and recovery would grade this cloth two or more steps apart. Only from 12 % of stretch on: cloth that
    /// stretches less is judged by growth.
    GradesDisagree,
    /// The cloth comes back poorly, as [`Rebound`](crate::Rebound) has it: it bags where it lies close.
    ComesBackPoorly,
    /// The cloth reads shorter after the pull than before it, by more than the readings can be wrong: a mark slipped, or
    /// the cloth lay under tension before.
    ShorterThanBefore,
}

/// Whether a recovery figure can be graded.
///
/// ```
/// use tenter_core::{Confidence, Figures, Grain, Length, PullTest, Scatter, recovery_is_readable};
///
/// let mut test = PullTest::new(Length::from_mm(100), Grain::Crosswise)?;
/// test.add_pull(Length::from_mm(105))?;
/// test.add_rest(60, Length::from_mm(101))?;
/// let recovery = Figures::of(&test, Scatter::ASSUMED)?.rest.unwrap().recovery.unwrap();
/// assert!(!recovery_is_readable(&recovery, Confidence::default()));
/// # Ok::<(), tenter_core::TestError>(())
/// ```
#[must_use]
pub fn recovery_is_readable(recovery: &Figure, confidence: Confidence) -> bool {
    recovery.half_width(confidence) <= RECOVERY_READABLE_POINTS
}

#[inline(never)]
pub(crate) fn notes(test: &PullTest, figures: &Figures, rules: &Rules) -> Vec<Note, COUNT> {
    let scale = test.scale();
    let mut lengths =
        test.pulls().iter().copied().chain(test.rests().iter().map(|rest| rest.recovered)).chain([test.gauge()]);
    let recovery = figures.rest.and_then(|rest| rest.recovery);
    let unreadable = recovery.is_some_and(|recovery| !recovery_is_readable(&recovery, rules.confidence));
    let apart = figures.rest.zip(recovery).is_some_and(|(rest, recovery)| {
        let growth = GrowthClass::of(rest.growth.ratio).rank();
        let stretches = Ratio::new(RECOVERY_FROM_PERCENT, 100).is_some_and(|from| figures.stretch.ratio >= from);
        stretches && !unreadable && growth.abs_diff(RecoveryClass::of(recovery.ratio).rank()) > 1
    });
    let poorly = Rebound::of(figures, rules.confidence).is_some_and(|rebound| rebound.grade == ReboundGrade::Poor);
    let found = [
        // What is at stake before how it was read: a small display shows two or three.
        (Note::ComesBackPoorly, poorly),
        (Note::OnePull, num::count(test.pulls().len()) == 1 && !rules.scatter.is_scale_only()),
        (Note::NoSettlingPull, !test.settled() && test.settling_pull().is_none()),
        (Note::FirstPullSettled, test.settling_pull().is_some()),
        (Note::ShortGauge, test.gauge() < SHORT_MARKS),
        (Note::BetweenLines, lengths.any(|length| !scale.has_line_at(length))),
        (Note::EarlyRest, figures.rest.is_some_and(|rest| rest.seconds < EARLY_REST_SECONDS)),
        (Note::RecoveryNotReadable, unreadable),
        (Note::GradesDisagree, apart),
        (
            Note::ShorterThanBefore,
            figures
                .rest
                .is_some_and(|rest| rest.growth.percent() < 0.0 && rest.growth.interval(rules.confidence).1 < 0.0),
        ),
    ];
    list(found.into_iter().filter_map(|(note, holds)| holds.then_some(note)))
}
