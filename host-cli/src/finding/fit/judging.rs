//! A cloth judged for a role.

use tenter_core::{Answer, Confidence, Demand, Figures, Grain, Judgement, Length, Rebound, ReboundGrade, Side};

use super::asked::{self, Feature, Stands};
use super::cloth::{Laid, Need};
use super::{Along, Candidate, Reason, Stock, purpose};
use crate::finding::kept::{Kept, free};
use crate::finding::measured::Asked;
use crate::log::{Fabric, Purpose, Role};

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

    fn parts(&mut self, grain: Grain, judged: &Judgement) {
        for part in &judged.parts {
            let (answer, reason) = match part.answer {
                Answer::Unknown => (Answer::Unknown, Reason::NotRead(grain, part.ask)),
                _ if judged.contradicts.is_some() => (Answer::Close, Reason::Disagree(grain)),
                Answer::Close if !judged.doubts.is_empty() => (Answer::Close, Reason::Doubted(grain)),
                answer => (answer, Reason::Part(grain, *part)),
            };
            self.note(answer, part.chance, reason);
        }
    }
}

/// The grains in the order in which they are judged.
const GRAINS: [Grain; 3] = [Grain::Crosswise, Grain::Lengthwise, Grain::Bias];

/// A role with what is asked of every cloth alike.
struct Asking<'r> {
    role: &'r Role,
    demand: Demand,
    wanted: Option<Purpose>,
    need: Option<Need>,
    stretch: bool,
    rebound: bool,
}

impl<'r> Asking<'r> {
    fn of(role: &'r Role) -> Self {
        let demand = asked::demand(role);
        let rebound = demand.growth_at_most.is_some() || demand.recovery_at_least.is_some();
        let (wanted, need, stretch) = (purpose::of_role(role), Need::of(role), role.grains().next().is_some());
        Self { role, demand, wanted, need, stretch, rebound }
    }

    /// Whether anything is asked of a grain that was pulled. Growth and recovery are asked of the grains whose stretch is
    /// asked; where none is, of every grain that was pulled.
    fn asks_of(&self, grain: Grain) -> bool {
        !self.demand.stretch(grain).is_empty() || (self.rebound && !self.stretch)
    }

    fn put(&self) -> Asked {
        Asked { demand: self.demand, put: Some(self.role.id.at()) }
    }
}

/// Judges every cloth for each of the roles, in the order of the stock. The tests of a grain are gone through once for
/// all of them, and only for the roles whose kind of cloth it is.
pub fn candidates<'a>(roles: &[&'a Role], stock: &'a Stock, confidence: Confidence) -> Vec<Vec<Candidate<'a>>> {
    let asking: Vec<Asking<'a>> = roles.iter().map(|role| Asking::of(role)).collect();
    let mut all: Vec<Vec<Candidate<'a>>> = asking.iter().map(|_| Vec::with_capacity(stock.fabrics.len())).collect();
    for fabric in &stock.fabrics {
        let one = OneCloth::of(fabric, stock, confidence);
        all.iter_mut().zip(one.judged(&asking)).for_each(|(role, candidate)| role.push(candidate));
    }
    all
}

/// A cloth with what is the same of it for every role.
struct OneCloth<'a> {
    fabric: &'a Fabric,
    made_for: Option<Purpose>,
    kept: Vec<Kept>,
    laid: Laid,
    stock: &'a Stock,
    confidence: Confidence,
}

impl<'a> OneCloth<'a> {
    fn of(fabric: &'a Fabric, stock: &'a Stock, confidence: Confidence) -> Self {
        let kept: Vec<Kept> = stock.kept_of(fabric).cloned().collect();
        let laid = Laid::of(&free(fabric, &kept));
        Self { fabric, made_for: purpose::of_cloth(fabric), kept, laid, stock, confidence }
    }

    fn judged(&self, asking: &[Asking<'_>]) -> Vec<Candidate<'a>> {
        let mut all: Vec<Candidate<'a>> = asking.iter().map(|asking| self.candidate(asking)).collect();
        let mut said: Vec<Vec<(Grain, Judgement)>> = asking.iter().map(|_| Vec::new()).collect();
        let mut poor = Poor::default();
        for grain in GRAINS {
            let Some(measured) = self.stock.measured(self.fabric, grain) else { continue };
            let is_asked = |((asking, candidate), _): &((&Asking<'_>, &mut Candidate<'a>), &mut Vec<_>)| {
                asking.asks_of(grain) && !matches!(candidate.reason, Reason::OtherKind(_))
            };
            let wanted: Vec<_> = asking.iter().zip(&mut all).zip(&mut said).filter(is_asked).collect();
            let put: Vec<Asked> = wanted.iter().map(|((asking, _), _)| asking.put()).collect();
            let judged = measured.judge_each(&put, self.confidence).unwrap_or_default();
            for (((_, candidate), said), (asked, judged)) in wanted.into_iter().zip(put.into_iter().zip(judged)) {
                candidate.grains.push(Along { grain, asked, is_answered: !judged.parts.is_empty(), measured });
                said.push((grain, judged));
            }
        }
        for ((asking, candidate), said) in asking.iter().zip(&mut all).zip(&said) {
            candidate.grains.shrink_to_fit();
            self.decide(asking, candidate, said);
            if !candidate.verdict().is_refused() {
                candidate.poorly = poor.of(candidate.fabric, said, self.stock, self.confidence).map(Box::new);
            }
        }
        all
    }

    /// Before its tests are judged.
    fn candidate(&self, asking: &Asking<'_>) -> Candidate<'a> {
        let mut features = asked::features(self.fabric, self.made_for, asking.role, asking.wanted);
        let other = features.find(|(_, stands)| *stands == Stands::Other);
        Candidate {
            fabric: self.fabric,
            answer: Answer::Short,
            chance: None,
            reason: other.map_or(Reason::NothingAsked, |(feature, _)| Reason::OtherKind(feature)),
            grains: Vec::new(),
            rest_seconds: asking.demand.rest_seconds,
            cloth: self.laid.answer(asking.need, Length::ZERO, self.confidence),
            kept: self.kept.clone(),
            asked: Vec::new(),
            poorly: None,
            made_for_it: asking.wanted.is_some_and(|wanted| wanted != Purpose::Outer && self.made_for == Some(wanted)),
        }
    }

    /// Puts together what it is and what its tests say.
    fn decide(&self, asking: &Asking<'_>, candidate: &mut Candidate<'a>, said: &[(Grain, Judgement)]) {
        if matches!(candidate.reason, Reason::OtherKind(_)) {
            return;
        }
        let mut judging = Judging { decides: None, chance: Some(1.0) };
        for (feature, stands) in asked::features(self.fabric, self.made_for, asking.role, asking.wanted) {
            if stands == Stands::AsAsked {
                candidate.asked.push(feature);
            }
            judging.feature(feature, stands);
        }
        for grain in GRAINS {
            match said.iter().find(|(one, _)| *one == grain) {
                Some((_, judged)) => judging.parts(grain, judged),
                None if asking.demand.stretch(grain).is_empty() => {}
                None => judging.note(Answer::Unknown, None, Reason::NotPulled(grain)),
            }
        }
        if asking.rebound && !asking.stretch && candidate.grains.is_empty() {
            judging.note(Answer::Unknown, None, Reason::NotPulled(Grain::Crosswise));
        }
        // Nothing is asked: that is no yes.
        candidate.answer = Answer::Unknown;
        if let Some((answer, _, reason)) = judging.decides {
            // What is said of a cloth is no chance.
            let is_measured = candidate.grains.iter().any(|along| along.is_answered);
            (candidate.answer, candidate.reason) = (answer, reason);
            candidate.chance = judging.chance.filter(|_| is_measured);
        }
    }
}

/// The figures of one cloth, each graded once.
#[derive(Default)]
struct Poor {
    graded: Vec<(Figures, bool)>,
}

impl Poor {
    /// The figures of a grain that comes back poorly, whether or not it is asked.
    fn of(
        &mut self,
        fabric: &Fabric,
        said: &[(Grain, Judgement)],
        stock: &Stock,
        confidence: Confidence,
    ) -> Option<Figures> {
        let figures = |grain| match said.iter().find(|(one, _)| *one == grain) {
            Some((_, judged)) => Some(judged.figures),
            None => stock.measured(fabric, grain)?.figures(),
        };
        GRAINS.into_iter().filter_map(figures).find(|figures| self.is_poor(figures, confidence))
    }

    fn is_poor(&mut self, figures: &Figures, confidence: Confidence) -> bool {
        if let Some((_, poor)) = self.graded.iter().find(|(known, _)| known == figures) {
            return *poor;
        }
        let poor = Rebound::of(figures, confidence).is_some_and(|rebound| rebound.grade == ReboundGrade::Poor);
        self.graded.push((*figures, poor));
        poor
    }
}
