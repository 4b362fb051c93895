//! Sizes, openings, elastic, cords and zips.

mod notions;
mod wear;

pub use notions::{CordWanted, ElasticWanted, Passes, ZipWanted};
pub use wear::SizedCloth;

use tenter_core::making::caution::Cord;
use tenter_core::making::elastic::{
    CareLine, Casing, CordTaskLine, Drawcord, Edging, Kind, Recommended, Rule, Span, Tunnel,
};
use tenter_core::making::sizing::{Reach, Reduction, Stretch, Wearable};
use tenter_core::making::zip::{Chain, Ready, ZipEnds};
use tenter_core::{Answer, GrowthClass, Length, Ratio, Unit};

use crate::input::size::Girth;

/// One thing that was found, in the unit of the measure it was found for.
#[derive(Debug, Clone)]
pub enum Size {
    /// A girth of the body in the garment.
    Girth {
        /// The measures.
        girth: Girth,
        /// Whether it must pass over, and not stay around.
        opening: bool,
        /// The stretch that it needs.
        needed: Stretch,
        /// What the cloth does; none where its stretch is not known.
        reach: Option<Reach>,
    },
    /// More than half of the stretch is used where the garment is worn.
    NearlyAll {
        /// The name of the girth.
        name: String,
    },
    /// It goes round, and the cloth does not come back.
    WillBag {
        /// The name of the girth.
        name: String,
        /// The growth that was read.
        growth: Ratio,
        /// Its grade.
        class: GrowthClass,
    },
    /// How thin the cloth becomes where it is stretched most.
    Opacity {
        /// The name of the girth.
        name: String,
        /// How far it is stretched there.
        needed: Stretch,
        /// Its mass per area in g/m², relaxed and there; none where it was not weighed.
        mass: Option<(u16, u16)>,
    },
    /// How much smaller than the body it is usually cut.
    Wearable {
        /// The stretch round the body.
        stretch: Stretch,
        /// How much.
        wearable: Wearable,
        /// Whether the construction is known; else it is said of a knit.
        known: bool,
    },
    /// It is cut with ease, as any woven.
    WithEase,
    /// How much smaller a stretch would let a garment be cut, which is more than anybody wears.
    MostReduction {
        /// The stretch.
        stretch: Stretch,
        /// With all of it.
        most: Reduction,
        /// With half of it.
        half: Option<Reduction>,
    },
    /// Lengths are not reduced.
    LengthsStay,
    /// Lengths are reduced as well, by at most so much.
    LengthsToo(Reduction),
    /// A reduction that is wanted.
    Reduce {
        /// The reduction.
        reduction: Reduction,
        /// The stretch that it needs.
        needed: Stretch,
        /// Whether the cloth has it, and the chance of that; none where its stretch is not known.
        judged: Option<(Answer, f32)>,
    },
    /// The elastic to cut.
    Elastic {
        /// Its kind.
        kind: Kind,
        /// How much.
        recommended: Recommended,
        /// What it is cut for.
        measure: Length,
        /// Whether it passes, where that was asked.
        passes: Option<Passes>,
    },
    /// Another rule for the elastic.
    ElasticRule {
        /// The rule.
        rule: &'static Rule,
        /// What it takes.
        cut: Span,
    },
    /// No rule was found for an elastic.
    NoElasticRule,
    /// Nobody asked whether the closed loop passes over the widest part.
    LoopNotChecked {
        /// Where it goes.
        place: Edging,
        /// The loop when it is closed.
        closed: Length,
    },
    /// The casing to make.
    Casing {
        /// The casing.
        tunnel: Tunnel,
        /// The width of what runs in it.
        width: Length,
    },
    /// Another rule for the casing.
    CasingRule {
        /// The rule.
        casing: &'static Casing,
        /// How deep the tunnel is.
        depth: Span,
    },
    /// How to treat the elastic.
    Care(CareLine),
    /// A drawcord.
    Cord {
        /// The cord.
        cord: Drawcord,
        /// The edge that it draws in.
        edge: Length,
    },
    /// What to do for a drawcord.
    CordTask(CordTaskLine),
    /// A rule about cords on children's clothes.
    CordRule(&'static Cord),
    /// A zip.
    Zip {
        /// The finished edge that it goes into.
        edge: Length,
        /// How it ends.
        ends: ZipEnds,
        /// The zip.
        ready: Ready,
        /// Whether it is the best of those that are sold.
        best: bool,
    },
    /// How strong the zip is.
    Chain(Chain),
    /// How a zip is shortened.
    Shortened(ZipEnds),
    /// The edge was taken as finished.
    EdgeAsFinished,
    /// The edge grows by so much beside the zip.
    EdgeGrows(Length),
}

/// A thing that was found, in the unit that the reader measured in.
#[derive(Debug, Clone)]
pub struct SizeLine {
    /// What was found.
    pub size: Size,
    /// The unit of its lengths.
    pub unit: Unit,
}

impl SizeLine {
    /// Whether it stands beside the recommendation, for who asks why.
    #[must_use]
    pub const fn is_aside(&self) -> bool {
        matches!(self.size, Size::ElasticRule { .. } | Size::CasingRule { .. } | Size::MostReduction { .. })
    }
}

/// What was found and the answers behind it.
#[derive(Debug, Default)]
pub struct Sized {
    /// What was found.
    pub lines: Vec<SizeLine>,
    /// The worst of the answers; none where nothing was judged.
    pub answer: Option<Answer>,
    /// Whether a girth goes round in cloth that does not come back.
    pub bags: bool,
}

impl Sized {
    fn push(&mut self, size: Size, unit: Unit) {
        self.lines.push(SizeLine { size, unit });
    }

    fn judge(&mut self, answer: Answer) {
        self.answer = Some(self.answer.map_or(answer, |before| before.worse(answer)));
    }
}
