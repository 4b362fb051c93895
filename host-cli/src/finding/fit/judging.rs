//! A cloth judged for a role.

use tenter_core::{Answer, Confidence, Evaluation, Figures, Grain, Length, Part, Rebound, ReboundGrade, Side};

use super::asked::{self, Feature, Stands};
use super::cloth::{self, Need};
use super::{Along, Candidate, Reason, Stock};
use crate::finding::kept::{Kept, free};
use crate::log::{Fabric, Role};

/// The part that decides so far.
struct Judging {
    decides: Option<(Answer, Option<f32>, Reason)>,
    chance: Option<f32>,
}

impl Judging {
    fn note(&mut self, answer: Answer, part: Option<f32>, reason: Reason) {
        self.chance = self.chance.zip(part).map(|(so_far, part)| so_far * part);
        if self.decides.is_none_or(|(had, its_chance, _)| answer.outweighs(part, (had, its_chance))) {
            self.decides = Some((answer, part, reason));
        }
    }

    fn feature(&mut self, feature: Feature, stands: Stands) {
        match stands {
            Stands::AsAsked => self.note(Answer::Meets, Some(1.0), Reason::AsAsked),
            Stands::NotSaid => self.note(Answer::Unknown, None, Reason::NotSaid(feature)),
            Stands::Off(side, limit) => {
                let answer = if side == Side::AtLeast { Answer::Short } else { Answer::Over };
                self.note(answer, Some(0.0), Reason::Mass(side, limit));
            }
            // Such a cloth is not judged at all.
            Stands::Other => {}
        }
    }

    fn parts(&mut self, grain: Grain, evaluation: &Evaluation) {
        for part in &evaluation.parts {
            let (answer, reason) = match part.answer {
                Answer::Unknown => (Answer::Unknown, Reason::NotRead(grain, part.ask)),
                _ if evaluation.contradicts.is_some() => (Answer::Close, Reason::Disagree(grain)),
                Answer::Close if !evaluation.doubts.is_empty() => (Answer::Close, Reason::Doubted(grain)),
                answer => (answer, Reason::Part(grain, *part)),
            };
            self.note(answer, part.chance, reason);
        }
    }
}

impl<'a> Candidate<'a> {
    /// Judges a cloth for a role.
    #[must_use]
    pub fn of(fabric: &'a Fabric, role: &Role, stock: &'a Stock, confidence: Confidence) -> Self {
        let demand = asked::demand(role);
        let kept: Vec<Kept> = stock.kept_of(fabric).cloned().collect();
        let mut candidate = Self {
            fabric,
            answer: Answer::Short,
            chance: None,
            reason: Reason::NothingAsked,
            grains: Vec::new(),
            rest_seconds: demand.rest_seconds,
            cloth: cloth::answer(&free(fabric, &kept), Need::of(role), Length::ZERO, confidence),
            kept,
            asked: Vec::new(),
            poorly: None,
        };
        let features: Vec<(Feature, Stands)> = asked::features(fabric, role).collect();
        if let Some((feature, _)) = features.iter().find(|(_, stands)| *stands == Stands::Other) {
            candidate.reason = Reason::OtherKind(*feature);
            return candidate;
        }
        let mut judging = Judging { decides: None, chance: Some(1.0) };
        let as_asked = features.iter().filter(|(_, stands)| *stands == Stands::AsAsked);
        candidate.asked = as_asked.map(|(feature, _)| *feature).collect();
        features.into_iter().for_each(|(feature, stands)| judging.feature(feature, stands));
        let growth_or_recovery = demand.growth_at_most.is_some() || demand.recovery_at_least.is_some();
        // Growth and recovery are asked of the grains whose stretch is asked; where none is, of every grain that was
        // pulled.
        let stretch_asked = role.grains().next().is_some();
        for grain in [Grain::Crosswise, Grain::Lengthwise, Grain::Bias] {
            let asked = !demand.stretch(grain).is_empty();
            let Some(measured) = stock.measured(fabric, grain) else {
                if asked {
                    judging.note(Answer::Unknown, None, Reason::NotPulled(grain));
                }
                continue;
            };
            if !asked && (stretch_asked || !growth_or_recovery) {
                continue;
            }
            let Ok(evaluation) = measured.judge(&demand, Some(role.id.at()), confidence) else { continue };
            judging.parts(grain, &evaluation);
            candidate.grains.push(Along { grain, evaluation, measured });
        }
        if growth_or_recovery && !stretch_asked && candidate.grains.is_empty() {
            judging.note(Answer::Unknown, None, Reason::NotPulled(Grain::Crosswise));
        }
        // Nothing is asked: that is no yes.
        candidate.answer = Answer::Unknown;
        if let Some((answer, _, reason)) = judging.decides {
            // What is said of a cloth is no chance.
            let is_measured = candidate.grains.iter().any(|along| !along.evaluation.parts.is_empty());
            (candidate.answer, candidate.reason) = (answer, reason);
            candidate.chance = judging.chance.filter(|_| is_measured);
        }
        if !candidate.verdict().is_refused() {
            candidate.poorly = comes_back_poorly(&candidate, stock, confidence);
        }
        candidate
    }

    /// The parts of what is asked that were measured.
    pub fn parts(&self) -> impl Iterator<Item = &Part> {
        self.grains.iter().flat_map(|along| along.evaluation.parts.iter())
    }
}

/// The figures of a grain that comes back poorly, whether or not it is asked.
fn comes_back_poorly(candidate: &Candidate<'_>, stock: &Stock, confidence: Confidence) -> Option<Figures> {
    let figures = |grain| match candidate.along(grain) {
        Some(along) => Some(along.evaluation.figures),
        None => stock.measured(candidate.fabric, grain)?.figures(),
    };
    let is_poor =
        |figures: &Figures| Rebound::of(figures, confidence).is_some_and(|rebound| rebound.grade == ReboundGrade::Poor);
    [Grain::Crosswise, Grain::Lengthwise, Grain::Bias].into_iter().filter_map(figures).find(is_poor)
}
