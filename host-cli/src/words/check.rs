//! What one pull test says, in sentences.

use tenter_core::forecast::ForecastError;
use tenter_core::{Answer, Ask, Decimal, Load, Note, Part, Plan, Settle, Side, Unit};

use crate::finding::check::Next;
use crate::finding::cloth::TrustOrigin;
use crate::input::CheckInput;
use crate::log::Construction;
use crate::words::quantity;
use crate::words::terms::{duration, percent, whole};

/// Beside garments that lie close, where nobody read what was left after release.
pub const CLOSE_NOT_READ: &str = "it may still bag: read growth after release before you choose it for what lies close";

/// The side of a limit.
#[must_use]
pub const fn side(side: Side) -> &'static str {
    match side {
        Side::AtLeast => "at least",
        Side::AtMost => "at most",
    }
}

/// One thing that is asked, with the chance that the cloth conforms.
#[must_use]
pub fn part(part: &Part) -> String {
    let side = side(part.side);
    let chance = match (part.answer, part.chance) {
        (_, Some(chance)) => format!("chance {}", percent(chance)),
        (Answer::Unknown, None) => "not measured".to_owned(),
        (_, None) => "not known yet".to_owned(),
    };
    format!("{} {side} {}: {chance}", part.ask.word(), part.limit)
}

/// What to do next.
#[must_use]
pub fn next(next: Next, unit: Unit) -> String {
    match next {
        Next::Ask => "add --wants 5% to find out whether that is enough".to_owned(),
        Next::OtherGrain => "this grain is fine; pull the other too if the pattern asks for it".to_owned(),
        Next::ReadAgain => "do not trust this yet: lay the cloth flat and read it again".to_owned(),
        Next::Settle(plan) => settle(&plan, unit),
        Next::OnLimit { well_read: true } => {
            "the figure lies right on the limit: more pulls, or marks further apart, may decide it".to_owned()
        }
        Next::OnLimit { well_read: false } => ON_LIMIT.to_owned(),
        Next::JudgeByGrowth => "the cloth did not stretch, so recovery has no meaning: judge by growth".to_owned(),
        Next::ReadAfterRelease(seconds) => {
            let time = quantity::time_typed(seconds);
            format!("read the length {} after release and add it, such as --back 101mm@{time}", duration(seconds))
        }
        Next::SettleFirst => {
            "before you give up on it, make a settling pull and pull again: a knit's first pull reads low".to_owned()
        }
        Next::ComesBackPoorly => {
            "it gives what you ask, but it comes back poorly: take it for nothing close, or add --growth-at-most 3% to ask \
             that too"
                .to_owned()
        }
        Next::GivesOnly(ask, sure) if sure <= 0.0 => format!("not suitable: no {} is certain", ask.word()),
        Next::GivesOnly(Ask::Stretch, sure) => {
            format!("not suitable: only {} % of stretch is certain", Decimal::floor(sure, 1))
        }
        Next::GivesOnly(ask, sure) => {
            format!("not suitable: only {} % of {} is certain", Decimal::floor(sure, 1), ask.word())
        }
        Next::MayReach(ask, most) => {
            format!("not suitable: its {} may be as much as {} %", ask.word(), Decimal::ceil(most, 1))
        }
    }
}

/// What to do about a figure that lies on the limit and was not read well.
pub const ON_LIMIT: &str = "the figure lies right on the limit: make a settling pull, then pull three times";

/// What would settle an answer that is too close to call.
#[must_use]
pub fn settle(settle: &Settle, unit: Unit) -> String {
    if let Some(seconds) = settle.wait_until {
        return format!("read growth again {} after release, as it may still fall until then", duration(seconds));
    }
    let complete = settle.complete.map(|pulls| format!("make {pulls} pulls in all"));
    let marks = settle.marks.map(|marks| format!("set the marks {} apart", quantity::tape(marks, unit)));
    let first = [complete, marks].into_iter().flatten().collect::<Vec<_>>().join(", and ");
    let plan = settle.plan.as_ref().map(|plan| match plan.days {
        0 | 1 => format!("{} would settle it four times in five", planned(plan)),
        _ => format!("only a lot of work would settle it: {}", planned(plan).trim_end_matches(',')),
    });
    match (first.is_empty(), plan) {
        (true, Some(plan)) => plan,
        (false, Some(plan)) => format!("{first}; {plan}"),
        (true, None) => {
            "it lies too near the limit: no test of this kind would settle it four times in five".to_owned()
        }
        (false, None) => format!("{first}; that may not settle it, as it lies near the limit"),
    }
}

/// The work of a plan.
fn planned(plan: &Plan) -> String {
    let some = |count: u8, one: &str, many: &str| match count {
        0 => None,
        1 => Some(format!("1 {one}")),
        count => Some(format!("{count} {many}")),
    };
    let parts = [
        some(plan.pulls, "pull", "pulls"),
        some(plan.looks, "reading of the marks", "readings of the marks"),
        some(plan.rests, "reading after release", "readings after release"),
        plan.known_load.then(|| "a hung mass".to_owned()),
    ];
    let parts: Vec<String> = parts.into_iter().flatten().collect();
    let list = match parts.split_last() {
        Some((last, [])) => last.clone(),
        Some((last, before)) => format!("{} and {last}", before.join(", ")),
        None => String::new(),
    };
    match plan.days {
        0 => format!("{list} in all"),
        1 => format!("a new test on another day, with {list},"),
        days => format!("new tests on {days} other days, each with {list},"),
    }
}

/// What a note means and what to do about it; none where that is said already, or where it does not hold of cloth that is made
/// so.
#[must_use]
pub const fn note(note: Note, answer: Option<Answer>, made: Construction) -> Option<&'static str> {
    Some(match (note, answer) {
        // The figure's own row says the first, what it suits the second.
        (Note::RecoveryNotReadable | Note::ComesBackPoorly, _) => return None,
        (Note::NoSettlingPull, _) if matches!(made, Construction::Woven) => return None,
        (Note::OnePull, Some(Answer::Meets | Answer::Close)) => {
            "only one pull, so the ± is an estimate from published data"
        }
        (Note::OnePull, _) => "only one pull, so the ± is an estimate; make two more",
        (Note::NoSettlingPull, Some(Answer::Meets)) => "no settling pull: a knit's first pull reads low",
        (Note::NoSettlingPull, _) => {
            "a knit's first pull reads low, the more so the more it stretches: make a settling pull first, then add \
             --settling"
        }
        (Note::FirstPullSettled, _) => {
            "the first pull settled the cloth and is left out: add --settling if you made one before it"
        }
        (Note::ShortGauge, _) => "marks less than 10 cm apart read high: mark 10 cm or more",
        (Note::BetweenLines, _) => {
            "a reading lies between two lines of the scale: if your scale is finer, add --division"
        }
        (Note::EarlyRest, _) => "you read less than 30 s after release, and growth may still fall: read again at 60 s",
        (Note::ShorterThanBefore, _) => {
            "the cloth came out shorter than before the pull, so a mark slipped or was misread: read it again"
        }
        (Note::GradesDisagree, _) => "growth and recovery disagree, so the worse one counts",
    })
}

/// Why there is no forecast yet.
#[must_use]
pub fn no_forecast(error: ForecastError) -> String {
    format!("none yet: {error}")
}

/// How many kinds of garment are not named.
#[must_use]
pub fn more_garments(more: usize) -> String {
    format!("and {more} more that need less (--json lists them)")
}

/// So many pulls.
#[must_use]
pub fn pulls(pulls: usize) -> String {
    if pulls == 1 { "1 pull".to_owned() } else { format!("{pulls} pulls") }
}

/// How the test was made.
#[must_use]
pub fn how(input: &CheckInput) -> String {
    let test = &input.test;
    let load = match test.load() {
        Load::Hand => "by hand".to_owned(),
        Load::Force { millinewtons } => format!("with {} N", Decimal::new(millinewtons.into(), 3)),
    };
    let (pulls, scale) = (pulls(test.pulls().len()), test.scale().division().show(input.unit));
    let (gauge, confidence) = (test.gauge().show(input.unit), whole(input.rules.confidence.percent()));
    let (grain, held) = (test.grain().word(), test.held().word());
    format!("{grain}, {held}, {pulls} {load}, marks {gauge}, scale {scale}, ± at {confidence} %")
}

/// How the ± was found.
#[must_use]
pub fn repeatability(repeatability: &TrustOrigin) -> String {
    let TrustOrigin { construction, own, others, ratio, retests } = *repeatability;
    let cloth = match construction {
        Construction::Woven => "wovens",
        Construction::Knit => "knits",
        Construction::Other => "other cloth",
    };
    // Under half a percent nothing can be said.
    let days = match Decimal::round(100.0 * retests, 0) {
        share if share.scaled() > 0 => {
            format!("; {share} % of what another day adds to it comes from your own tests on several days")
        }
        _ => String::new(),
    };
    let told = |share: f32| Some(Decimal::round(100.0 * share, 0)).filter(|share| share.scaled() > 0);
    if let (true, Some(share)) = (own <= 0.0, told(others)) {
        let assumed = Decimal::round(100.0 * (1.0 - others), 0);
        return format!(
            "{share} % of the ± comes from the tests of others in this log, {assumed} % from published data; pull your \
             {cloth} three times each to use your own repeatability{days}"
        );
    }
    if own <= 0.0 {
        return format!(
            "the ± is from published data; pull your {cloth} three times each to use your own repeatability{days}"
        );
    }
    let (percent, assumed) = (Decimal::round(100.0 * own, 0), Decimal::round(100.0 * (1.0 - own - others), 0));
    let others = told(others).map(|share| format!("{share} % from those of others, ")).unwrap_or_default();
    let ratio = Decimal::round(ratio, 2);
    format!(
        "{percent} % of the ± comes from your own tests of {cloth}, {others}{assumed} % from published data; your pulls vary \
         {ratio} times as much as that data{days}"
    )
}
