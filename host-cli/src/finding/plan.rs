//! The plan of a view in chosen cloths, from cutting to finishing.

use tenter_core::making::care::Care;
use tenter_core::making::caution::{CORDS, Caution, Cord, Job, cautions};
use tenter_core::making::handling::{Layer, Layered};
use tenter_core::{Answer, Confidence, Grain, Length, Limit, Ratio};

use crate::finding::amounts::{Amounts, ClothAmount};
use crate::finding::fit::cloth::Needed;
use crate::finding::fit::known;
use crate::finding::fit::{Candidate, Stock};
use crate::finding::handle::{Handle, Handled, layered};
use crate::finding::pair::{Named, Pairing, SeamSide};
use crate::finding::size::{SizeLine, Sized};
use crate::finding::verdict::Verdict;
use crate::log::{Construction, Fabric, Pattern, Role};

/// A role with the cloth chosen for it.
#[derive(Debug)]
pub struct Chosen<'a> {
    /// The role.
    pub role: &'a Role,
    /// The cloth with its answer; none where nothing is there for it.
    pub candidate: Option<Candidate<'a>>,
}

impl<'a> Chosen<'a> {
    fn fabric(&self) -> Option<&'a Fabric> {
        self.candidate.as_ref().map(|candidate| candidate.fabric)
    }
}

/// A seam between two roles.
#[derive(Debug, Clone, Copy)]
pub struct Seam {
    /// The roles, by their place in the list.
    pub roles: [usize; 2],
    /// Its length.
    pub length: Length,
}

/// What a plan is made from.
#[derive(Debug)]
pub struct PlanWanted<'a> {
    /// The pattern.
    pub pattern: &'a Pattern,
    /// The view.
    pub view: &'a str,
    /// Roles and their cloths.
    pub chosen: Vec<Chosen<'a>>,
    /// Seams between them.
    pub seams: Vec<Seam>,
    /// Zips and elastic.
    pub notions: Sized,
    /// What kind of garment it is.
    pub job: Job,
    /// The stash.
    pub stock: &'a Stock,
    /// How sure an answer is.
    pub confidence: Confidence,
}

/// A plan.
#[derive(Debug, Clone)]
pub struct ViewPlan {
    /// The pattern.
    pub pattern: String,
    /// The view.
    pub view: String,
    /// Each role with what was chosen for it.
    pub roles: Vec<Planned>,
    /// What to do, part by part; no part is empty.
    pub parts: Vec<PlanPart>,
    /// The worst answer of the roles.
    pub answer: Option<Answer>,
    /// How sure an answer is.
    pub confidence: Confidence,
}

/// A role with what was chosen for it.
#[derive(Debug, Clone)]
pub struct Planned {
    /// The role.
    pub role: Role,
    /// The cloth; none where nothing is there for it.
    pub cloth: Option<Taken>,
}

/// A cloth that was chosen for a role.
#[derive(Debug, Clone)]
pub struct Taken {
    /// The cloth.
    pub cloth: Named,
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
}

impl From<&Candidate<'_>> for Taken {
    fn from(candidate: &Candidate<'_>) -> Self {
        Self {
            cloth: candidate.fabric.into(),
            verdict: candidate.verdict(),
            answer: candidate.answer,
            chance: candidate.chance,
            disagrees: candidate.disagrees(),
            needed: candidate.cloth.needed(),
            missing: candidate.missing(),
        }
    }
}

/// What a part of a plan is about.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum PlanTopic {
    /// What to do before cutting.
    Before,
    /// How to lay and cut.
    Cutting,
    /// The seam of two roles.
    Seam {
        /// The roles.
        roles: [String; 2],
        /// Its length.
        length: Length,
    },
    /// How to sew a cloth.
    Sewing(Named),
    /// What is stabilised and finished where the garment has it.
    Finishing,
    /// Zips and elastic.
    Notions,
    /// What to buy.
    Buying,
    /// Cautions, which are heeded and not ticked off.
    Care,
}

/// A part of a plan.
#[derive(Debug, Clone)]
pub struct PlanPart {
    /// What it is about.
    pub topic: PlanTopic,
    /// What to do.
    pub steps: Vec<Step>,
}

/// One line of a plan.
#[derive(Debug, Clone)]
pub enum Step {
    /// Wash a cloth.
    Wash {
        /// The cloth.
        cloth: Named,
        /// Its fibre, as on the label.
        fibre: String,
        /// How it is made ready, and pressed after it.
        care: Care,
    },
    /// Mark a cloth before the wash: its washing change is not known.
    MarkBeforeWash(Named),
    /// Pull a cloth along a grain that a role asks about.
    Pull {
        /// The cloth.
        cloth: Named,
        /// The grain.
        grain: Grain,
        /// The role.
        role: String,
    },
    /// How the grain of a role lies.
    Grain {
        /// The role.
        role: String,
        /// The grain that goes round the body.
        round: Grain,
        /// Stretch across and along.
        stretch: [Ratio; 2],
    },
    /// All pieces of a role lie one way up.
    OneWay(String),
    /// The same cloth lies on both sides of a seam.
    SameCloth,
    /// Both cloths of a seam must be pulled crosswise first.
    PullForSeam([Named; 2]),
    /// Two cloths in a seam.
    Pair(Box<Pairing>),
    /// How to sew.
    Handle {
        /// What to do.
        handle: Handle,
        /// The most that the cloth stretches.
        most: Option<Ratio>,
        /// The tags of the cloths that it is for; empty where it is for all.
        tags: Vec<u16>,
    },
    /// A zip or elastic.
    Size(SizeLine),
    /// Look for a cloth for a role.
    Seek(Box<Role>),
    /// Buy a cloth that was seen, or more of one at home: for all roles that take of it.
    Buy(Box<ClothAmount>),
    /// A caution.
    Caution(Caution),
    /// A rule about cords.
    Cord(&'static Cord),
}

impl ViewPlan {
    /// Works out a plan.
    #[must_use]
    pub fn of(wanted: &PlanWanted<'_>) -> Self {
        let part = |topic, steps| PlanPart { topic, steps };
        let mut parts = vec![part(PlanTopic::Before, before(wanted)), part(PlanTopic::Cutting, cutting(wanted))];
        parts.extend(wanted.seams.iter().map(|seam| joined(wanted, *seam)));
        parts.extend(sewing(wanted));
        parts.push(part(PlanTopic::Notions, wanted.notions.lines.iter().cloned().map(Step::Size).collect()));
        parts.push(part(PlanTopic::Buying, buying(wanted)));
        parts.push(part(PlanTopic::Care, care(wanted.job)));
        parts.retain(|part| !part.steps.is_empty());
        let planned = |chosen: &Chosen<'_>| Planned {
            role: chosen.role.clone(),
            cloth: chosen.candidate.as_ref().map(Taken::from),
        };
        let roles: Vec<Planned> = wanted.chosen.iter().map(planned).collect();
        let answers = roles.iter().map(|role| role.cloth.as_ref().map_or(Answer::Short, |cloth| cloth.answer));
        Self {
            pattern: wanted.pattern.name.clone(),
            view: wanted.view.to_owned(),
            answer: answers.reduce(Answer::worse),
            roles,
            parts,
            confidence: wanted.confidence,
        }
    }
}

/// The cloths, each once.
fn fabrics<'a>(wanted: &PlanWanted<'a>) -> Vec<&'a Fabric> {
    let mut fabrics: Vec<&'a Fabric> = Vec::new();
    for fabric in wanted.chosen.iter().filter_map(Chosen::fabric) {
        if !fabrics.iter().any(|known| known.id == fabric.id) {
            fabrics.push(fabric);
        }
    }
    fabrics
}

fn before(wanted: &PlanWanted<'_>) -> Vec<Step> {
    let mut steps = Vec::new();
    for fabric in fabrics(wanted).into_iter().filter(|fabric| !fabric.washed) {
        let care = Care::of(&fabric.described());
        steps.push(Step::Wash { cloth: fabric.into(), fibre: fabric.fibre.clone(), care });
        if care.before.rule.wets() && fabric.washed_lengthwise.is_none() {
            steps.push(Step::MarkBeforeWash(fabric.into()));
        }
    }
    for chosen in &wanted.chosen {
        let Some(fabric) = chosen.fabric() else { continue };
        for grain in chosen.role.grains().filter(|grain| wanted.stock.measured(fabric, *grain).is_none()) {
            steps.push(Step::Pull { cloth: fabric.into(), grain, role: chosen.role.name.clone() });
        }
    }
    steps
}

fn cutting(wanted: &PlanWanted<'_>) -> Vec<Step> {
    let mut steps = Vec::new();
    for chosen in &wanted.chosen {
        let Some(fabric) = chosen.fabric() else { continue };
        let stretch = |grain| known::stretch(fabric, grain, wanted.stock).ok().map(|figure| figure.ratio);
        let role = &chosen.role.name;
        if let (Some(across), Some(along)) = (stretch(Grain::Crosswise), stretch(Grain::Lengthwise)) {
            let round = if along > across { Grain::Lengthwise } else { Grain::Crosswise };
            steps.push(Step::Grain { role: role.clone(), round, stretch: [across, along] });
        }
        if fabric.construction == Construction::Knit {
            steps.push(Step::OneWay(role.clone()));
        }
    }
    steps
}

fn joined(wanted: &PlanWanted<'_>, seam: Seam) -> PlanPart {
    let chosen = seam.roles.map(|role| wanted.chosen.get(role));
    let roles = chosen.map(|chosen| chosen.map(|chosen| chosen.role.name.clone()).unwrap_or_default());
    let steps = match chosen.map(|chosen| chosen.and_then(Chosen::fabric)) {
        [Some(first), Some(second)] if first.id == second.id => vec![Step::SameCloth],
        [Some(first), Some(second)] => {
            let side = |fabric: &Fabric| {
                let edge = known::edge(fabric, Grain::Crosswise, wanted.stock).ok()?;
                Some(SeamSide { cloth: fabric.into(), grain: Grain::Crosswise, edge })
            };
            match (side(first), side(second)) {
                (Some(one), Some(other)) => {
                    let pairing = Pairing::of([one, other], seam.length, None, wanted.confidence);
                    let pairing = pairing.map(|pairing| pairing.between_roles([&roles[0], &roles[1]]));
                    pairing.map(|pairing| Step::Pair(Box::new(pairing))).into_iter().collect()
                }
                _ => vec![Step::PullForSeam([first.into(), second.into()])],
            }
        }
        _ => Vec::new(),
    };
    PlanPart { topic: PlanTopic::Seam { roles, length: seam.length }, steps }
}

/// What each cloth wants for itself, and what several want alike, each line once with the tags it is for.
fn sewing(wanted: &PlanWanted<'_>) -> Vec<PlanPart> {
    let fabrics = fabrics(wanted);
    let mut shared: Vec<(Handle, Option<Ratio>, Vec<u16>)> = Vec::new();
    let mut parts = Vec::new();
    for fabric in &fabrics {
        let layers: Vec<(Layer, Layered)> = lining(wanted, fabric).into_iter().collect();
        let handled = Handled::of(&known::cloth(fabric, wanted.stock), None, &layers, wanted.confidence);
        let (alike, own): (Vec<Handle>, _) = handled.lines.into_iter().partition(|line| line.topic().is_shared());
        for handle in alike {
            match shared.iter_mut().find(|(known, ..)| *known == handle) {
                Some((.., tags)) => tags.push(fabric.tag),
                None => shared.push((handle, handled.most, vec![fabric.tag])),
            }
        }
        let steps = own.into_iter().map(|handle| Step::Handle { handle, most: handled.most, tags: Vec::new() });
        parts.push(PlanPart { topic: PlanTopic::Sewing((*fabric).into()), steps: steps.collect() });
    }
    shared.sort_by_key(|(handle, ..)| handle.topic());
    let steps = shared.into_iter().map(|(handle, most, tags)| {
        let tags = if tags.len() == fabrics.len() { Vec::new() } else { tags };
        Step::Handle { handle, most, tags }
    });
    parts.push(PlanPart { topic: PlanTopic::Finishing, steps: steps.collect() });
    parts
}

/// What the view's lining does to a cloth that it is sewn to.
fn lining(wanted: &PlanWanted<'_>, fabric: &Fabric) -> Option<(Layer, Layered)> {
    let is_lining = |chosen: &Chosen<'_>| chosen.role.name.to_lowercase().contains("lining");
    let gives = |fabric| known::stretch(fabric, Grain::Crosswise, wanted.stock).ok();
    let (outer, under) = wanted.seams.iter().find_map(|seam| {
        let [one, other] = seam.roles.map(|role| wanted.chosen.get(role));
        let (one, other) = (one?, other?);
        let (outer, lining) = if is_lining(other) { (one, other) } else { (other, one) };
        let is_lined = is_lining(one) != is_lining(other);
        let (over, under) = (outer.fabric()?, lining.fabric()?);
        (is_lined && over.id == fabric.id && under.id != fabric.id).then_some((outer, under))
    })?;
    let wants = outer.role.demand.crosswise.at_least.map(Limit::ratio);
    Some(layered(gives(fabric)?, Layer::Lining, gives(under)?, wants, wanted.confidence))
}

fn buying(wanted: &PlanWanted<'_>) -> Vec<Step> {
    let without = wanted.chosen.iter().filter(|chosen| chosen.candidate.is_none());
    let seek = without.map(|chosen| Step::Seek(Box::new(chosen.role.clone())));
    let chosen = wanted.chosen.iter().filter_map(|chosen| Some((chosen.role, chosen.candidate.as_ref()?)));
    let bought = Amounts::of(chosen).cloths.into_iter().filter(ClothAmount::is_bought);
    seek.chain(bought.map(|amount| Step::Buy(Box::new(amount)))).collect()
}

fn care(job: Job) -> Vec<Step> {
    let mut steps: Vec<Step> = cautions(job).iter().copied().map(Step::Caution).collect();
    if job.for_child && job.has_cord {
        steps.extend(CORDS.iter().map(Step::Cord));
    }
    steps.push(Step::Caution(Caution::PinsBladesIrons));
    steps
}
