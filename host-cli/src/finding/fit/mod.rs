//! Which fabrics suit which role of a view.
//!
//! For each role every fabric of the stash is judged, none is left out: by its construction, by the newest pull test of
//! each grain that is asked, and by the cloth that is on hand.

pub mod cloth;
pub mod known;
pub mod stock;

use tenter_core::{Answer, Ask, Confidence, Evaluation, Grain, Length, Part, Rules, judge};

use crate::log::{Fabric, Role};
use cloth::{ClothAnswer, Need};
pub use stock::{Measured, Stock};

/// Why a fabric got its answer.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Reason {
    /// The role does not take its construction.
    Construction,
    /// This grain was not pulled.
    NotPulled(Grain),
    /// This grain was pulled, but what is asked of it was not read: growth or recovery after release.
    NotRead(Grain, Ask),
    /// The part that decides, along this grain.
    Part(Grain, Part),
    /// Nothing is asked.
    NothingAsked,
}

/// A fabric judged for a role.
#[derive(Clone, Debug)]
pub struct Candidate<'a> {
    /// The fabric.
    pub fabric: &'a Fabric,
    /// The answer about its stretch, growth and recovery.
    pub answer: Answer,
    /// The chance that it meets every part: the product of the parts' chances, which counts them as independent of
    /// each other (the tool's own simplification). None where a part was not measured.
    pub chance: Option<f32>,
    /// Why.
    pub reason: Reason,
    /// Whether there is enough of it.
    pub cloth: ClothAnswer,
}

impl Candidate<'_> {
    /// Whether it meets everything and there is enough of it, or the bolt still lies in the shop.
    #[must_use]
    pub fn will_do(&self) -> bool {
        self.answer == Answer::Meets && self.missing().is_none()
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
    fn order(&self) -> (u8, bool, core::cmp::Reverse<u32>, u16) {
        let rank = if self.reason == Reason::Construction { 4 } else { self.answer.rank() };
        // A chance in millionths, so that the order is total and ties go by the tag.
        #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // Within 0 and 10⁶.
        let chance = (self.chance.unwrap_or(0.0).clamp(0.0, 1.0) * 1e6) as u32;
        (rank, rank < 3 && self.cloth.is_short(), core::cmp::Reverse(chance), self.fabric.tag)
    }
}

/// A role with all fabrics, the best first.
#[derive(Debug)]
pub struct RoleFit<'a> {
    /// The role.
    pub role: &'a Role,
    /// Every fabric, the best first.
    pub candidates: Vec<Candidate<'a>>,
}

impl RoleFit<'_> {
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

/// Judges every fabric for a role.
#[must_use]
pub fn role<'a>(role: &'a Role, stock: &'a Stock, confidence: Confidence) -> RoleFit<'a> {
    let need = role.cloth.map(Need::from);
    let judged = |fabric: &'a Fabric| {
        let (answer, chance, reason) = answer(role, fabric, stock, confidence);
        Candidate { fabric, answer, chance, reason, cloth: cloth::answer(fabric, need, confidence) }
    };
    let mut candidates: Vec<Candidate<'a>> = stock.fabrics.iter().map(judged).collect();
    candidates.sort_by_cached_key(Candidate::order);
    RoleFit { role, candidates }
}

fn answer(role: &Role, fabric: &Fabric, stock: &Stock, confidence: Confidence) -> (Answer, Option<f32>, Reason) {
    if !role.takes(fabric.construction) {
        return (Answer::Short, None, Reason::Construction);
    }
    let mut worst: Option<(Answer, Option<f32>, Reason)> = None;
    let mut chance = Some(1.0);
    let mut note = |answer: Answer, part: Option<f32>, reason: Reason| {
        chance = chance.zip(part).map(|(so_far, part)| so_far * part);
        if worst.is_none_or(|(had, its_chance, _)| answer.outweighs(part, (had, its_chance))) {
            worst = Some((answer, part, reason));
        }
    };
    let growth_or_recovery = role.demand.growth_at_most.is_some() || role.demand.recovery_at_least.is_some();
    // Growth and recovery are asked of the grains whose stretch is asked; where none is, of every grain that was pulled.
    let stretch_asked = role.grains().next().is_some();
    let mut pulled = false;
    for grain in [Grain::Crosswise, Grain::Lengthwise, Grain::Bias] {
        let asked = !role.demand.stretch(grain).is_empty();
        let Some(measured) = stock.measured(fabric, grain) else {
            if asked {
                note(Answer::Unknown, None, Reason::NotPulled(grain));
            }
            continue;
        };
        if !asked && (stretch_asked || !growth_or_recovery) {
            continue;
        }
        pulled = true;
        let rules = Rules { confidence, scatter: measured.scatter, ..Rules::default() };
        for part in judge(&measured.test.said.test, &role.demand, &rules).into_iter().flatten() {
            let reason = match part.answer {
                Answer::Unknown => Reason::NotRead(grain, part.ask),
                _ => Reason::Part(grain, part),
            };
            note(part.answer, part.chance, reason);
        }
    }
    if growth_or_recovery && !stretch_asked && !pulled {
        note(Answer::Unknown, None, Reason::NotPulled(Grain::Crosswise));
    }
    worst.map_or((Answer::Meets, Some(1.0), Reason::NothingAsked), |(answer, _, reason)| (answer, chance, reason))
}

/// The whole evaluation of a fabric along a grain, for those that are shown.
#[must_use]
pub fn evaluation(role: &Role, measured: &Measured, confidence: Confidence) -> Option<Evaluation> {
    let rules = Rules { confidence, scatter: measured.scatter, ..Rules::default() };
    Evaluation::of(&measured.test.said.test, &role.demand, &rules).ok()
}
