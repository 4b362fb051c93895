//! The one answer of a plan, in words.

use crate::finding::plan::{InDoubt, ViewPlan};
use crate::finding::verdict::Verdict;
use crate::plain::isolated;
use crate::words::answer;
use crate::words::pair::named;
use crate::words::quantity::counted;

/// The answer as a head, and what it hangs on.
#[must_use]
pub fn overall(plan: &ViewPlan) -> (&'static str, String) {
    let overall = &plan.overall;
    let settle = match (overall.settle, overall.verdict) {
        (0, _) => String::new(),
        (_, Verdict::Meets) => "; first settle what stands before you begin".to_owned(),
        (count, _) => {
            let count = i64::try_from(count).unwrap_or(i64::MAX);
            format!("; {} to settle before you begin", counted(count, "thing"))
        }
    };
    let text = match &overall.about {
        InDoubt::Nothing => "each cloth does what the view asks".to_owned(),
        InDoubt::Choice => "the view asks nothing of its cloths".to_owned(),
        InDoubt::Role(role, None) => format!("nothing in the stash for {}", isolated(role)),
        InDoubt::Role(role, Some(cloth)) => {
            let role = isolated(role);
            match overall.verdict {
                Verdict::TooLittle => format!("there is not enough of {} for {role}", named(cloth)),
                verdict => format!("{} is {} for {role}", named(cloth), answer::phrase(verdict)),
            }
        }
        InDoubt::Seams(seams) => {
            let seams = super::seam::places(seams);
            let at = if seams.is_empty() { "a seam".to_owned() } else { format!("the seam at {seams}") };
            match overall.verdict {
                Verdict::Short => format!("{at} takes away the give that the view asks"),
                _ => format!("{at} may take away the give that the view asks"),
            }
        }
        InDoubt::Loop => match overall.verdict {
            Verdict::Short => "the closed elastic does not pass the hips".to_owned(),
            _ => "the closed elastic may not pass the hips".to_owned(),
        },
        InDoubt::Lining => match overall.verdict {
            Verdict::Short => "the lining takes away the give that the view asks".to_owned(),
            _ => "the lining may take away the give that the view asks".to_owned(),
        },
    };
    (answer::headline(overall.verdict), format!("{text}{settle}"))
}
