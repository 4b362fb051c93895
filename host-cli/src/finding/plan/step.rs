//! The lines of a plan.

use tenter_core::making::care::Care;
use tenter_core::making::caution::{Caution, Cord};
use tenter_core::making::garment::{
    Hem, Holds, Manner, Notion, PieceMark, SeamKind, Stage, StayedEdge, TaskReason, Work, Zone,
};
use tenter_core::making::handling::{FinishLine, SeamAllowance, Sewing, StayLine, Trimming};
use tenter_core::making::source::Source;
use tenter_core::{Grain, Ratio};

use crate::finding::amounts::ClothAmount;
use crate::finding::handle::Handle;
use crate::finding::pair::{NamedCloth, Pairing};
use crate::finding::size::SizeLine;
use crate::log::{Role, Tag};

/// What a part of a plan is about, in the order of the work.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum PlanTopic {
    /// What to buy.
    Buying,
    /// What to settle before anything is cut.
    Check,
    /// A stage of the work.
    Stage(Stage),
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

/// Seams that are sewn one after the other, all alike.
#[derive(Debug, Clone, PartialEq)]
pub struct SeamStep {
    /// The seams.
    pub seams: Vec<SeamKind>,
    /// How they are sewn beyond the stitch.
    pub manner: Manner,
    /// Their stitch, where it is another than the sample's.
    pub sewing: Option<Sewing>,
    /// Their finish, where it is another than that of the other seams.
    pub finish: Option<FinishLine>,
    /// What is trimmed.
    pub trimming: Option<Trimming>,
    /// What keeps them from stretching.
    pub stay: Option<StayLine>,
    /// Why.
    pub why: TaskReason,
    /// Where their place in the order comes from.
    pub source: Source,
}

/// One line of a plan.
#[derive(Debug, Clone)]
pub enum Step {
    /// The plan is general: nobody said what the garment is.
    General,
    /// Wash a cloth.
    Wash {
        /// The cloth.
        cloth: NamedCloth,
        /// Its fibre, as on the label.
        fibre: String,
        /// How it is made ready.
        care: Care,
    },
    /// Press and pin a cloth.
    Press {
        /// The cloth.
        cloth: NamedCloth,
        /// How it is pressed and pinned.
        care: Care,
    },
    /// Mark cloths before the wash: their washing change is not known.
    MarkBeforeWash(Vec<NamedCloth>),
    /// Wash notions with the cloth.
    WashNotions(Vec<Notion>, Source),
    /// Pull a cloth along a grain that a role asks about.
    Pull {
        /// The cloth.
        cloth: NamedCloth,
        /// The grain.
        grain: Grain,
        /// The role.
        role: String,
    },
    /// Nothing opens its waist.
    SayHowOpened,
    /// How a role is joined is not known.
    SayHowJoined {
        /// The role.
        role: String,
        /// The one that it may be joined to.
        to: String,
    },
    /// Both cloths of a seam must be pulled along it first.
    PullForSeam {
        /// The cloth that was not pulled.
        cloth: NamedCloth,
        /// Its grain along the seam.
        grain: Grain,
    },
    /// How the grain of roles lies.
    Grain {
        /// The roles, each with its stretch across and along.
        roles: Vec<(String, [Ratio; 2])>,
        /// The grain that goes round the body.
        round: Grain,
    },
    /// How wide the allowances are.
    Allowance {
        /// Those of most seams.
        most: SeamAllowance,
        /// Those of others.
        others: Vec<(Vec<SeamKind>, SeamAllowance)>,
        /// The cloths, by tag; empty where it is for all.
        tags: Vec<Tag>,
    },
    /// How to sew, as one cloth or several want it.
    Handle {
        /// What to do.
        handle: Handle,
        /// The most that the cloth stretches.
        most: Option<Ratio>,
        /// The tags of the cloths that it is for; empty where it is for all.
        tags: Vec<Tag>,
    },
    /// The stitch of the seams that nothing else is said of.
    Stitch {
        /// The stitch.
        sewing: Sewing,
        /// The cloths, by tag; empty where it is for all.
        tags: Vec<Tag>,
    },
    /// The finish of the seams that nothing else is said of.
    Finish {
        /// The finish.
        line: FinishLine,
        /// The cloths, by tag; empty where it is for all.
        tags: Vec<Tag>,
    },
    /// Interface zones.
    Interface {
        /// The zones.
        zones: Vec<Zone>,
        /// What it does to the give of the cloth; none where nothing is asked to give.
        holds: Option<Holds>,
        /// Where the rule comes from.
        source: Source,
    },
    /// Mark points.
    Mark(Vec<PieceMark>, Source),
    /// Stay-stitch edges.
    StayStitch(Vec<StayedEdge>, Source),
    /// Hem edges.
    Hem {
        /// The edges.
        hems: Vec<Hem>,
        /// The stitch, where the hem must give.
        sewing: Option<Sewing>,
        /// Why.
        why: TaskReason,
        /// Where the rule comes from.
        source: Source,
    },
    /// Any other work.
    Work {
        /// What.
        work: Work,
        /// The cloths, by tag; empty where it is for all.
        tags: Vec<Tag>,
        /// Why.
        why: TaskReason,
        /// Where the rule comes from.
        source: Source,
    },
    /// Sew seams.
    Sew(Box<SeamStep>),
    /// What two cloths in a seam ask for in this part.
    Pair {
        /// The seams; empty where one was asked for without a garment.
        seams: Vec<SeamKind>,
        /// The pairing.
        pairing: Box<Pairing>,
        /// The part.
        topic: PlanTopic,
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
