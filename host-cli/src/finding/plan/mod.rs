//! The plan of a view in chosen cloths, from cutting to finishing, in the order of the work.

mod before;
mod buying;
mod garment;
pub mod kind;
mod overall;
pub mod part;
mod seams;
mod step;
mod waist;
mod wanted;
mod work;

pub use garment::PlannedGarment;
pub use overall::{InDoubt, Overall};
pub use seams::part_of;
pub use step::{PlanPart, PlanTopic, SeamStep, SizedLength, Step};
pub use waist::WaistEdge;
pub use wanted::{PlanWanted, PlannedCord, RoleChoice, SeamWanted, USUAL_CORD, WantedKind};

use tenter_core::making::caution::{CORDS, Caution, CordPlace, Job, cautions};
use tenter_core::making::garment::{Detail, Details, GarmentKind, Stage};
use tenter_core::{Answer, Confidence, Figures, Length};

use crate::finding::fit::Candidate;
use crate::finding::fit::cloth::Needed;
use crate::finding::pair::NamedCloth;
use crate::finding::verdict::Verdict;
use crate::log::{Fabric, Role};

/// A plan.
#[derive(Debug, Clone)]
pub struct ViewPlan {
    /// The pattern.
    pub pattern: String,
    /// The view.
    pub view: String,
    /// The garment and what it has; none where nobody said what it is, and the plan is general.
    pub garment: Option<(GarmentKind, Details)>,
    /// Each role with what was chosen for it.
    pub roles: Vec<PlannedRole>,
    /// What to do, part by part; no part is empty.
    pub parts: Vec<PlanPart>,
    /// The answer, all in all.
    pub overall: Overall,
    /// The stages that are done.
    pub done: Vec<Stage>,
    /// How sure an answer is.
    pub confidence: Confidence,
}

/// A role with what was chosen for it.
#[derive(Debug, Clone)]
pub struct PlannedRole {
    /// The role.
    pub role: Role,
    /// The cloth; none where nothing is there for it.
    pub cloth: Option<ChosenCloth>,
}

/// A cloth that was chosen for a role.
#[derive(Debug, Clone)]
pub struct ChosenCloth {
    /// The cloth.
    pub cloth: NamedCloth,
    /// The answer, all in all.
    pub verdict: Verdict,
    /// The answer about its stretch, growth and recovery.
    pub answer: Answer,
    /// The chance that it meets every part; none where a part was not measured.
    pub chance: Option<f32>,
    /// Whether tests of it disagree, so that no chance means anything.
    pub disagrees: bool,
    /// What the role takes of it; none where the pattern does not say.
    pub needed: Option<Needed>,
    /// What is missing of it at home.
    pub missing: Option<Length>,
    /// The figures of a grain that comes back poorly.
    pub poorly: Option<Figures>,
}

impl From<&Candidate<'_>> for ChosenCloth {
    fn from(candidate: &Candidate<'_>) -> Self {
        Self {
            cloth: candidate.fabric.into(),
            verdict: candidate.verdict(),
            answer: candidate.answer,
            chance: candidate.chance,
            disagrees: candidate.disagrees(),
            needed: candidate.cloth.needed(),
            missing: candidate.missing(),
            poorly: candidate.poorly,
        }
    }
}

impl ViewPlan {
    /// Works out a plan.
    #[must_use]
    pub fn of(wanted: &PlanWanted<'_>) -> Self {
        let made = PlannedGarment::of(wanted);
        let mut parts = Parts::default();
        buying::buy(&made, &mut parts);
        before::check(&made, &mut parts);
        before::wash(&made, &mut parts);
        before::sample(&made, &mut parts);
        before::cut(&made, &mut parts);
        seams::pairs(&made, &mut parts);
        work::add(&made, &mut parts);
        seams::rest(&made, &mut parts);
        buying::tapes(&made, &mut parts);
        buying::elastic(&made, &mut parts);
        care(&made, &mut parts);
        let planned = |chosen: &RoleChoice<'_>| PlannedRole {
            role: chosen.role.clone(),
            cloth: chosen.candidate.as_ref().map(ChosenCloth::from),
        };
        let roles: Vec<PlannedRole> = wanted.chosen.iter().map(planned).collect();
        let overall = Overall::of(&roles, &made, &parts);
        Self {
            pattern: wanted.pattern.name.clone(),
            view: wanted.view.to_owned(),
            garment: wanted.kind.map(|kind| (kind.kind, kind.details)),
            overall,
            done: Vec::new(),
            roles,
            parts: parts.0,
            confidence: wanted.confidence,
        }
    }
}

/// The parts so far, in the order of the work.
#[derive(Debug, Default)]
struct Parts(Vec<PlanPart>);

impl Parts {
    /// Puts steps before all that comes later: into the last part of the same topic, else into one of their own.
    fn add(&mut self, topic: PlanTopic, steps: impl IntoIterator<Item = Step>) {
        let steps: Vec<Step> = steps.into_iter().collect();
        if steps.is_empty() {
            return;
        }
        if let Some(part) = self.0.iter_mut().rfind(|part| part.topic == topic) {
            part.steps.extend(steps);
            return;
        }
        let place = self.0.iter().position(|part| part.topic > topic).unwrap_or(self.0.len());
        self.0.insert(place, PlanPart { topic, steps });
    }

    /// Puts steps before those of the first part of a topic.
    fn begin(&mut self, topic: PlanTopic, steps: Vec<Step>) {
        match self.0.iter_mut().find(|part| part.topic == topic) {
            Some(part) => {
                part.steps.splice(0..0, steps);
            }
            None => self.add(topic, steps),
        }
    }

    /// Appends a step to the last part, or to a new one where that is of another topic: the work of a kind comes in its
    /// own order.
    fn follow(&mut self, topic: PlanTopic, step: Step) {
        match self.0.last_mut().filter(|part| part.topic == topic) {
            Some(part) => part.steps.push(step),
            None => self.0.push(PlanPart { topic, steps: vec![step] }),
        }
    }
}

/// The cloths, each once.
fn fabrics<'a>(chosen: &[RoleChoice<'a>]) -> Vec<&'a Fabric> {
    let mut fabrics: Vec<&'a Fabric> = Vec::new();
    for fabric in chosen.iter().filter_map(RoleChoice::fabric) {
        if !fabrics.iter().any(|known| known.id == fabric.id) {
            fabrics.push(fabric);
        }
    }
    fabrics
}

fn care(made: &PlannedGarment<'_>, parts: &mut Parts) {
    let wanted = made.wanted;
    let has = |detail| wanted.kind.is_some_and(|kind| kind.details.has(detail));
    let job = Job {
        for_child: wanted.job.for_child || has(Detail::Child),
        has_cord: wanted.job.has_cord || has(Detail::Cord),
        ..wanted.job
    };
    let mut steps: Vec<Step> = cautions(job).iter().copied().map(Step::Caution).collect();
    if job.for_child && job.has_cord {
        // Where the garment is known, so is the place of its cord: never a child's hood.
        let applies = |place| match wanted.kind {
            None => true,
            Some(_) => matches!(place, CordPlace::WaistOrHem | CordPlace::WaistOrHemDrawnIn | CordPlace::Back),
        };
        steps.extend(CORDS.iter().filter(|cord| applies(cord.place)).map(Step::Cord));
    }
    steps.push(Step::Caution(Caution::PinsBladesIrons));
    steps.into_iter().for_each(|step| parts.follow(PlanTopic::Care, step));
}
