//! Which cloths suit which role of a view.
//!
//! For each role every fabric of the stash is judged, none is left out: by what it is, by the pull tests of each grain that is
//! asked, and by the cloth that is on hand.

pub mod asked;
pub mod cloth;
mod judging;
pub mod known;
pub mod purpose;
pub mod stock;
pub mod together;

use tenter_core::{Answer, Ask, Confidence, Evaluation, Figures, Grain, Judgement, Length, Part, Side, Unit};

use super::kept::Kept;
use super::measured::{Asked, Measured};
use super::verdict::Verdict;
use crate::log::{Fabric, Here, MassPerArea, Pattern, Role, Tag};
use asked::Feature;
use cloth::ClothAnswer;
pub use stock::Stock;
pub use together::{amounts, roles};

/// Why a cloth got its answer.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Reason {
    /// It is of another kind than the role asks.
    OtherKind(Feature),
    /// Nobody said it of the cloth.
    NotSaid(Feature),
    /// It is lighter than this, which the role asks at least, or heavier than this, which it asks at most.
    Mass(Side, MassPerArea),
    /// This grain was not pulled.
    NotPulled(Grain),
    /// The tests of this grain disagree.
    Disagree(Grain),
    /// The only tests of this grain are doubtful.
    Doubted(Grain),
    /// This grain was pulled, but what is asked of it was not read: growth or recovery after release.
    NotRead(Grain, Ask),
    /// The part that decides, along this grain.
    Part(Grain, Part),
    /// It is all that is asked of it, which is nothing that is measured.
    AsAsked,
    /// Nothing is asked.
    NothingAsked,
}

/// A grain that was asked about and pulled.
#[derive(Clone, Debug)]
pub struct Along<'a> {
    /// The grain.
    pub grain: Grain,
    /// What was asked of it.
    pub asked: Asked,
    /// Whether its tests answer any part of that.
    pub is_answered: bool,
    /// The tests that count.
    pub measured: &'a Measured,
}

impl Along<'_> {
    /// What its tests say of that: worked out anew, for a cloth that is shown, so that the many need not be held.
    #[must_use]
    pub fn judged(&self, confidence: Confidence) -> Option<Judgement> {
        self.measured.judge_each(&[self.asked], confidence).ok()?.pop()
    }

    /// The same with what would settle it: dear, so only for a cloth that is shown.
    #[must_use]
    pub fn in_full(&self, confidence: Confidence) -> Option<Evaluation> {
        self.measured.judge(&self.asked.demand, self.asked.put, confidence).ok()
    }
}

/// A view with the cloths for each of its roles.
#[derive(Debug)]
pub struct Fitted<'a> {
    /// The pattern.
    pub pattern: &'a Pattern,
    /// The view.
    pub view: &'a str,
    /// Its roles.
    pub roles: &'a [RoleFit<'a>],
    /// The stash.
    pub stock: &'a Stock,
    /// How sure an answer is.
    pub confidence: Confidence,
    /// The unit of the text.
    pub unit: Unit,
    /// Where the reader is.
    pub here: Here,
    /// List every cloth.
    pub all: bool,
}

/// A cloth judged for a role.
#[derive(Clone, Debug)]
pub struct Candidate<'a> {
    /// The cloth.
    pub fabric: &'a Fabric,
    /// The answer about its stretch, growth and recovery.
    pub answer: Answer,
    /// The chance that it meets every part: the product of the parts' chances, which counts them as independent of
    /// each other (the tool's own simplification). None where a part was not measured.
    pub chance: Option<f32>,
    /// Why.
    pub reason: Reason,
    /// What each grain says that is asked about and was pulled.
    pub grains: Vec<Along<'a>>,
    /// When growth and recovery are asked, in seconds after release.
    pub rest_seconds: u32,
    /// What open garments keep of it.
    pub kept: Vec<Kept>,
    /// Whether there is enough of it beside that.
    pub cloth: ClothAnswer,
    /// What the cloth is, as far as the role asks that and it is so.
    pub asked: Vec<Feature>,
    /// The figures of the grain that comes back poorly, where one does and the cloth is not refused.
    pub poorly: Option<Box<Figures>>,
    /// Whether it is made for what the role wants, where that is not the outside: an interfacing for an interfacing.
    pub made_for_it: bool,
}

impl Candidate<'_> {
    /// The answer, all in all.
    #[must_use]
    pub fn verdict(&self) -> Verdict {
        match self.answer {
            _ if matches!(self.reason, Reason::OtherKind(_)) => Verdict::OtherKind,
            _ if self.reason == Reason::NothingAsked => Verdict::Choose,
            Answer::Meets if self.missing().is_some() => Verdict::TooLittle,
            answer => answer.into(),
        }
    }

    /// The same, named by the reader: where nothing is asked, that settles it.
    #[must_use]
    pub fn chosen(self) -> Self {
        if self.reason == Reason::NothingAsked { Self { answer: Answer::Meets, ..self } } else { self }
    }

    /// Whether tests of it disagree, so that no chance means anything.
    #[must_use]
    pub const fn disagrees(&self) -> bool {
        matches!(self.reason, Reason::Disagree(_))
    }

    /// Whether it meets everything and there is enough of it, or the bolt still lies in the shop.
    #[must_use]
    pub fn will_do(&self) -> bool {
        self.verdict() == Verdict::Meets
    }

    /// Whether an allowance for the wash is in the length: it was not washed, and nobody measured what washing does to it.
    #[must_use]
    pub fn may_shrink(&self) -> bool {
        matches!(self.answer, Answer::Meets | Answer::Close)
            && self.cloth.needed().is_some_and(|needed| !needed.washing.is_known())
    }

    /// What the tests of a grain say.
    #[must_use]
    pub fn along(&self, grain: Grain) -> Option<&Along<'_>> {
        self.grains.iter().find(|along| along.grain == grain)
    }

    /// What is missing of a cloth at home; of a bolt in the shop as much is cut as is needed.
    #[must_use]
    pub const fn missing(&self) -> Option<Length> {
        match self.cloth {
            ClothAnswer::Short { missing, .. } if !self.fabric.is_seen() => Some(missing),
            _ => None,
        }
    }

    /// The order in which candidates are shown: the best first.
    fn order(&self) -> (usize, bool, bool, core::cmp::Reverse<u32>, Tag) {
        let verdict = self.verdict();
        let place = Verdict::ALL.iter().position(|one| *one == verdict).unwrap_or(Verdict::ALL.len());
        // A chance in millionths, so that the order is total and ties go by the tag.
        #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // Within 0 and 10⁶.
        let chance = (self.chance.unwrap_or(0.0).clamp(0.0, 1.0) * 1e6) as u32;
        let short = !verdict.is_refused() && self.cloth.is_short();
        (place, !self.made_for_it, short, core::cmp::Reverse(chance), self.fabric.tag)
    }
}

/// A role with all cloths, the best first.
#[derive(Debug)]
pub struct RoleFit<'a> {
    /// The role.
    pub role: &'a Role,
    /// Every cloth, the best first.
    pub candidates: Vec<Candidate<'a>>,
}

impl RoleFit<'_> {
    /// How many cloths may still do, once more is known.
    #[must_use]
    pub fn open(&self) -> usize {
        self.candidates.iter().filter(|candidate| candidate.verdict().is_open()).count()
    }

    /// Whether nothing is asked of the cloth, so that the choice is the reader's.
    #[must_use]
    pub fn is_free(&self) -> bool {
        asked::nothing(self.role)
    }

    /// The best answer: meets with enough cloth, else close or unknown, else short; `None` where nothing can do.
    #[must_use]
    pub fn outcome(&self) -> Answer {
        if self.candidates.iter().any(Candidate::will_do) {
            return Answer::Meets;
        }
        let open = |candidate: &&Candidate<'_>| matches!(candidate.answer, Answer::Close | Answer::Unknown);
        self.candidates.iter().find(open).map_or(Answer::Short, |candidate| candidate.answer)
    }
}

/// Judges every cloth for a role.
#[must_use]
pub fn role<'a>(role: &'a Role, stock: &'a Stock, confidence: Confidence) -> RoleFit<'a> {
    let mut candidates = judging::candidates(&[role], stock, confidence).pop().unwrap_or_default();
    candidates.sort_by_cached_key(Candidate::order);
    RoleFit { role, candidates }
}
