//! The lines of a plan.

use tenter_core::making::care::Care;
use tenter_core::making::caution::{Caution, Cord};
use tenter_core::making::elastic::Tunnel;
use tenter_core::making::garment::{
    GarmentKind, GarmentPart, Hem, Holds, Manner, Notion, PieceMark, SeamKind, Stage, StayedEdge, TaskReason, Work,
    Zone,
};
use tenter_core::making::handling::{FinishLine, SeamAllowance, Sewing, StayLine, Trimming};
use tenter_core::making::sizing::Wearable;
use tenter_core::making::source::Source;
use tenter_core::{Figure, Grain, Length, Ratio, Settle, Unit};

use super::waist::WaistEdge;
use crate::finding::amounts::ClothAmount;
use crate::finding::fit::Reason;
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

impl PlanTopic {
    /// The stage of the work that it is, if it is one that is ticked off.
    #[must_use]
    pub const fn stage(self) -> Option<Stage> {
        match self {
            Self::Buying => Some(Stage::Buy),
            Self::Stage(stage) => Some(stage),
            Self::Check | Self::Care => None,
        }
    }
}

impl From<Stage> for PlanTopic {
    fn from(stage: Stage) -> Self {
        if stage == Stage::Buy { Self::Buying } else { Self::Stage(stage) }
    }
}

/// A length in the unit that it was measured in.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct SizedLength {
    /// The length.
    pub length: Length,
    /// The unit.
    pub unit: Unit,
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
    /// Cloths that are not washed, since the garment never will be.
    LeaveUnwashed(Vec<NamedCloth>),
    /// Wash notions with the cloth.
    WashNotions(Vec<Notion>, Source),
    /// Get a notion.
    Notion {
        /// What.
        notion: Notion,
        /// How much of it at least, where that is known.
        lengths: Vec<SizedLength>,
        /// Why.
        why: TaskReason,
        /// Where the rule comes from.
        source: Source,
    },
    /// Get a tape that does not stretch.
    Tape {
        /// For these seams.
        seams: Vec<SeamKind>,
        /// For the mouths of pockets.
        mouths: bool,
        /// Where the rule comes from.
        source: Source,
    },
    /// Turn a casing and draw in what runs in it, as wide as that asks.
    Casing {
        /// The work.
        work: Work,
        /// The casing.
        tunnel: Tunnel,
        /// The width of what runs in it.
        width: Length,
        /// The unit of its lengths.
        unit: Unit,
    },
    /// Leave the waist edge wide enough for the hips.
    WaistEdge(WaistEdge),
    /// Look for a cloth for a part of which the view has no role.
    SeekPart(GarmentPart),
    /// A role whose cloth is in doubt, and what would settle it.
    Settle {
        /// The cloth.
        cloth: NamedCloth,
        /// The role.
        role: String,
        /// What decided.
        reason: Reason,
        /// The figure that lies at a limit.
        figure: Option<Figure>,
        /// What would settle it.
        settle: Option<Settle>,
        /// When growth is read, in seconds after release.
        rest_seconds: u32,
    },
    /// An interfacing melts at a heat that the cloth of the body does not take.
    FusibleOnNoHeat {
        /// The interfacing.
        interfacing: NamedCloth,
        /// The cloth.
        cloth: NamedCloth,
    },
    /// A fusible must melt at the little heat that the cloth of the body takes.
    FuseCool(NamedCloth),
    /// How far the cloth is stretched to see whether it shows through.
    Opacity {
        /// How far the view asks it to stretch across and along.
        by: [Ratio; 2],
        /// Its mass per area in g/m², relaxed and there; none where it was not weighed.
        mass: Option<(u16, u16)>,
        /// Whether it is tried wet as well.
        wet: bool,
        /// Where the rule comes from.
        source: Source,
    },
    /// What the cloth still gives where it is stretched as far as the view asks.
    Reach {
        /// Along which grain.
        grain: Grain,
        /// How far that is.
        by: Ratio,
        /// How far it gives from there.
        left: Ratio,
    },
    /// How much smaller than the body it is usually cut.
    Ease(Wearable),
    /// Stay-stitch the edges of seams.
    StaySeams(Vec<SeamKind>, Source),
    /// Pull a cloth along a grain that a role asks about.
    Pull {
        /// The cloth.
        cloth: NamedCloth,
        /// The grain.
        grain: Grain,
        /// The role.
        role: String,
    },
    /// Nothing opens it for who puts it on.
    SayHowOpened(GarmentKind),
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
