//! The one answer of a plan: what of it is in doubt, and how much there is to settle.

use tenter_core::Answer;
use tenter_core::making::garment::SeamKind;

use super::waist::over_hips;
use super::{Parts, PlanTopic, PlannedGarment, PlannedRole};
use crate::finding::handle::Handle;
use crate::finding::pair::NamedCloth;
use crate::finding::verdict::Verdict;

/// What the answer of a plan hangs on.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum InDoubt {
    /// Nothing: every cloth does what is asked.
    Nothing,
    /// The choice of the cloths, of which nothing is asked.
    Choice,
    /// A role and its cloth; none where nothing is there for it.
    Role(String, Option<NamedCloth>),
    /// Seams that may not give what the view asks along them.
    Seams(Vec<SeamKind>),
    /// What the lining leaves of the give.
    Lining,
    /// Whether the elastic of the waist passes the hips.
    Loop,
}

/// The answer of a plan, all in all.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Overall {
    /// The worst answer of roles, seams, lining and elastic.
    pub verdict: Verdict,
    /// What has it.
    pub about: InDoubt,
    /// How many lines there are to settle before anything is cut.
    pub settle: usize,
}

/// Verdicts, the worst first. A cloth of which nothing is asked takes nothing from what the others do.
const WORST: [Verdict; 8] = [
    Verdict::OtherKind,
    Verdict::Short,
    Verdict::Over,
    Verdict::Unknown,
    Verdict::Close,
    Verdict::TooLittle,
    Verdict::Meets,
    Verdict::Choose,
];

impl Overall {
    pub(super) fn of(roles: &[PlannedRole], made: &PlannedGarment<'_>, parts: &Parts) -> Self {
        let role = |planned: &PlannedRole| {
            let verdict = planned.cloth.as_ref().map_or(Verdict::Short, |taken| taken.verdict);
            // Named by the reader it is chosen.
            let is_named = planned.cloth.as_ref().is_some_and(|taken| taken.answer == Answer::Meets);
            let verdict = if verdict == Verdict::Choose && is_named { Verdict::Meets } else { verdict };
            (verdict, InDoubt::Role(planned.role.name.clone(), planned.cloth.as_ref().map(|taken| taken.cloth.clone())))
        };
        let seams = made.joined.iter().filter_map(|joined| {
            let answer = joined.gives()?;
            Some((Verdict::from(answer), InDoubt::Seams(joined.seams.clone())))
        });
        let lining = made.lining_gives().and_then(|handle| match handle {
            Handle::Layer(_, layered) => Some((Verdict::from(layered.answer), InDoubt::Lining)),
            _ => None,
        });
        let looped = over_hips(made).and_then(|(passes, _)| Some((Verdict::from(passes.judged?.1), InDoubt::Loop)));
        let all: Vec<(Verdict, InDoubt)> = roles.iter().map(role).chain(seams).chain(lining).chain(looped).collect();
        let worst = WORST.iter().find_map(|verdict| all.iter().find(|(one, _)| one == verdict));
        let settle = parts.0.iter().filter(|part| part.topic == PlanTopic::Check).map(|part| part.steps.len()).sum();
        match worst {
            Some((Verdict::Choose, _)) => Self { verdict: Verdict::Choose, about: InDoubt::Choice, settle },
            Some((verdict, about)) if *verdict != Verdict::Meets => {
                Self { verdict: *verdict, about: about.clone(), settle }
            }
            _ => Self { verdict: Verdict::Meets, about: InDoubt::Nothing, settle },
        }
    }

    /// The answer as the exit code has it; too little cloth is short.
    #[must_use]
    pub const fn answer(&self) -> Answer {
        match self.verdict {
            Verdict::Meets => Answer::Meets,
            Verdict::Close => Answer::Close,
            Verdict::Unknown | Verdict::Choose => Answer::Unknown,
            Verdict::Over => Answer::Over,
            Verdict::TooLittle | Verdict::Short | Verdict::OtherKind => Answer::Short,
        }
    }
}
