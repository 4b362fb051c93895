//! How to sew one cloth: what its make, its mass and its figures call for.

use tenter_core::making::garment::GarmentKind;
use tenter_core::making::handling::{
    self, Basis, Cloth, Do, FinishLine, GarmentPlace, Layer, Layered, Needle, PlaceLine, PracticeLine, Runs,
    SeamAllowance, SeamUse, Sewing, StayLine, Thread, Trimming,
};
use tenter_core::making::source::Source;
use tenter_core::{Answer, Confidence, Construction, Figure, Grain, Ratio};

use crate::finding::memory::LastTime;
use crate::log::{Fabric, Finish, Purpose};

/// What a line is about.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum HandleTopic {
    /// Whether the garment is made of such cloth.
    Make,
    /// What worked the last time.
    Memory,
    /// The needle and the thread.
    Needle,
    /// The stitch.
    Stitch,
    /// The finish of the raw edges.
    Finish,
    /// What keeps an edge from stretching.
    Stay,
    /// A place of the garment.
    Place,
    /// The machine, and how the cloth lies.
    Machine,
    /// A lining or a facing.
    Layer,
    /// The seam allowance.
    Allowance,
}

impl HandleTopic {
    /// Whether several cloths may want the same, so that it is said of all of them at once.
    #[must_use]
    pub const fn is_shared(self) -> bool {
        matches!(self, Self::Place | Self::Machine | Self::Allowance | Self::Finish | Self::Stay)
    }
}

/// The seams that nearly every garment has, by what they are asked.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum SeamAt {
    /// Straight, along a grain.
    Along(Grain),
    /// The crotch.
    Crotch,
    /// The underarm.
    Underarm,
    /// The shoulder.
    Shoulder,
    /// The neck, and the armhole of a garment without sleeves.
    Neck,
    /// A hem.
    Hem,
}

impl SeamAt {
    /// What it is asked in a cloth, as far as a view asks `wants` along its seams.
    fn asked(self, cloth: &Cloth, wanted: &HandleWanted<'_>) -> SeamUse {
        let straight = SeamUse {
            asked: wanted.wants,
            lined: wanted.layers.iter().any(|(layer, _)| *layer == Layer::Lining),
            garment: wanted.garment,
            ..SeamUse::default()
        };
        let is_knit = cloth.construction == Construction::Knit;
        match self {
            Self::Along(grain) => SeamUse { runs: Runs::along(grain), ..straight },
            Self::Crotch | Self::Underarm => SeamUse { runs: Runs::Around, curved: true, strained: true, ..straight },
            Self::Shoulder => SeamUse { runs: Runs::Slanting, held: true, asked: None, ..straight },
            Self::Neck => SeamUse { runs: Runs::Around, curved: true, passes: is_knit, enclosed: !is_knit, ..straight },
            Self::Hem => SeamUse { runs: Runs::Crosswise, ..straight },
        }
    }
}

/// Why a cloth has no seams of its own.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum NoSeams {
    /// It is an interfacing, and is sewn with the cloth that it lies behind.
    Interfacing,
    /// It is elastic, and is drawn in or sewn on.
    Elastic,
}

impl NoSeams {
    /// Of a cloth: an interfacing as it was said or by its words, or elastic by its words; none of any other.
    #[must_use]
    pub fn of(fabric: &Fabric) -> Option<Self> {
        let described = fabric.described();
        let by_words =
            fabric.purpose.is_none() && (described.says("interfacing") || described.finish() == Finish::Fusible);
        if fabric.purpose == Some(Purpose::Interfacing) || by_words {
            return Some(Self::Interfacing);
        }
        (fabric.construction == Construction::Other && described.says("elastic")).then_some(Self::Elastic)
    }
}

/// What is asked about a cloth.
#[derive(Debug, Clone, Copy, Default)]
pub struct HandleWanted<'a> {
    /// The stretch that the view wants along its seams.
    pub wants: Option<Ratio>,
    /// The grain along the seam; none for both straight grains.
    pub grain: Option<Grain>,
    /// The garment.
    pub garment: Option<GarmentKind>,
    /// Why the cloth has no seams of its own, if it has none.
    pub no_seams: Option<NoSeams>,
    /// What is fixed to the cloth.
    pub layers: &'a [(Layer, Layered)],
    /// How sure an answer is.
    pub confidence: Confidence,
}

/// What to do, with the data behind it.
#[derive(Debug, Clone, PartialEq)]
pub enum Handle {
    /// A needle.
    Needle(Needle),
    /// A thread.
    Thread(Thread),
    /// A stitch.
    Stitch(Vec<SeamAt>, Sewing),
    /// A finish.
    Finish(Vec<SeamAt>, FinishLine),
    /// How wide the seam allowance is.
    Allowance(Vec<SeamAt>, SeamAllowance),
    /// What is trimmed.
    Trimming(Vec<SeamAt>, Trimming),
    /// What keeps an edge from stretching.
    Stay(Vec<SeamAt>, StayLine),
    /// The same at one place or several.
    Place {
        /// Where.
        places: Vec<GarmentPlace>,
        /// What.
        what: Do,
        /// Whether it is done to every cloth, whatever it gives.
        always: bool,
        /// Where the rule comes from.
        source: Source,
    },
    /// How the machine is set and the cloth laid.
    Machine(PracticeLine),
    /// A layer on the cloth.
    Layer(Layer, Layered),
    /// What worked the last time, and how it wore.
    LastTime(Box<LastTime>),
    /// It has no seams of its own.
    NoSeams(NoSeams),
    /// It is woven, and the garment is made of knits.
    WantsKnit(GarmentKind),
}

impl Handle {
    /// What the line is about.
    #[must_use]
    pub const fn topic(&self) -> HandleTopic {
        match self {
            Self::WantsKnit(_) => HandleTopic::Make,
            Self::Needle(_) | Self::Thread(_) => HandleTopic::Needle,
            Self::Stitch(..) | Self::NoSeams(_) => HandleTopic::Stitch,
            Self::Finish(..) => HandleTopic::Finish,
            Self::Stay(..) => HandleTopic::Stay,
            Self::Place { .. } => HandleTopic::Place,
            Self::Machine(_) => HandleTopic::Machine,
            Self::Layer(..) => HandleTopic::Layer,
            Self::LastTime(_) => HandleTopic::Memory,
            Self::Allowance(..) | Self::Trimming(..) => HandleTopic::Allowance,
        }
    }
}

/// How to sew one cloth.
#[derive(Debug, Clone)]
pub struct Handled {
    /// The most that it stretches along any grain; none where it was not pulled.
    pub most: Option<Ratio>,
    /// What to do, in the order of the work.
    pub lines: Vec<Handle>,
    /// Whether its layers let it stretch as far as is wanted; none without layers.
    pub answer: Option<Answer>,
    /// How sure an answer is.
    pub confidence: Confidence,
}

impl Handled {
    /// What a cloth calls for, at the seams that nearly every garment has.
    #[must_use]
    pub fn of(cloth: &Cloth, wanted: &HandleWanted<'_>) -> Self {
        let most = cloth.most_stretch().map(|figure| figure.ratio);
        if let Some(why) = wanted.no_seams {
            return Self { most, lines: vec![Handle::NoSeams(why)], answer: None, confidence: wanted.confidence };
        }
        let straight: Vec<SeamAt> = match wanted.grain {
            Some(grain) => vec![SeamAt::Along(grain)],
            None => vec![SeamAt::Along(Grain::Lengthwise), SeamAt::Along(Grain::Crosswise)],
        };
        let above = if has_shoulders(wanted.garment) { [SeamAt::Shoulder, SeamAt::Neck].as_slice() } else { &[] };
        let seams = |more: &[SeamAt]| [straight.as_slice(), strained(wanted.garment), more].concat();
        let asked = |at: SeamAt| at.asked(cloth, wanted);
        let wants_knit =
            |kind: &GarmentKind| kind.construction() == Construction::Knit && cloth.construction == Construction::Woven;
        let mut lines: Vec<Handle> = wanted.garment.filter(wants_knit).map(Handle::WantsKnit).into_iter().collect();
        lines.extend([Handle::Needle(handling::needle(cloth)), Handle::Thread(handling::thread(cloth))]);
        let sewn = |at| Some(handling::sewing(cloth, &asked(at)));
        lines.extend(alike(&seams(&[]), sewn, is_sewn_alike).into_iter().map(|(at, one)| Handle::Stitch(at, one)));
        lines.push(Handle::Stitch(vec![SeamAt::Hem], handling::hem(cloth, &asked(SeamAt::Hem))));
        let finish = |at| Some(handling::finish(cloth, &asked(at)));
        lines.extend(same(&seams(&[]), finish).into_iter().map(|(at, one)| Handle::Finish(at, one)));
        let allowance = |at| Some(handling::allowance(cloth, &asked(at)));
        lines.extend(same(&seams(above), allowance).into_iter().map(|(at, one)| Handle::Allowance(at, one)));
        let trimming = |at| handling::trimming(cloth, &asked(at));
        lines.extend(same(&seams(above), trimming).into_iter().map(|(at, one)| Handle::Trimming(at, one)));
        let stay = |at| handling::stay(cloth, &asked(at));
        lines.extend(same(&seams(above), stay).into_iter().map(|(at, one)| Handle::Stay(at, one)));
        lines.extend(places(cloth, wanted.garment));
        lines.extend(handling::practices(cloth, wanted.garment).into_iter().map(Handle::Machine));
        lines.extend(wanted.layers.iter().map(|(layer, layered)| Handle::Layer(*layer, *layered)));
        let answer = wanted.layers.iter().map(|(_, layered)| layered.answer).reduce(Answer::worse);
        Self { most, lines, answer, confidence: wanted.confidence }
    }
}

/// The seams of a garment at which the body pulls.
const fn strained(garment: Option<GarmentKind>) -> &'static [SeamAt] {
    match garment {
        Some(GarmentKind::Skirt) => &[],
        Some(GarmentKind::Trousers | GarmentKind::Jeans | GarmentKind::Leggings) => &[SeamAt::Crotch],
        Some(GarmentKind::Swimwear) | None => &[SeamAt::Crotch, SeamAt::Underarm],
        Some(_) => &[SeamAt::Underarm],
    }
}

/// The places that a kind of garment may have, beside its seams.
const fn usual_places(garment: GarmentKind) -> &'static [GarmentPlace] {
    use GarmentPlace::{BiasHem, Buttonhole, Eyelet, Facing, FrontFacing, Gathers, Pocket, Zip};
    match garment {
        GarmentKind::UnlinedJacket | GarmentKind::LinedCoat | GarmentKind::ChildsOuterwear => {
            &[Pocket, Buttonhole, Eyelet, FrontFacing, Facing]
        }
        GarmentKind::HoodedPullover => &[Pocket, Eyelet],
        GarmentKind::Skirt => &[Pocket, Gathers, Buttonhole, Zip, BiasHem],
        GarmentKind::Trousers | GarmentKind::Jeans => &[Pocket, Buttonhole, Zip],
        GarmentKind::Shirt => &[Pocket, Gathers, Buttonhole, FrontFacing],
        GarmentKind::Dress => &[Pocket, Gathers, Buttonhole, Zip, Facing, BiasHem],
        GarmentKind::TShirt | GarmentKind::Leggings | GarmentKind::Swimwear => &[],
    }
}

/// Whether a garment has shoulders and a neck: any but what hangs from the waist.
const fn has_shoulders(garment: Option<GarmentKind>) -> bool {
    !matches!(garment, Some(GarmentKind::Skirt | GarmentKind::Trousers | GarmentKind::Jeans | GarmentKind::Leggings))
}

/// The seams that are treated alike, each group with its treatment.
fn alike<T: Copy>(
    seams: &[SeamAt],
    of: impl Fn(SeamAt) -> Option<T>,
    is_alike: impl Fn(&T, &T) -> bool,
) -> Vec<(Vec<SeamAt>, T)> {
    let mut groups: Vec<(Vec<SeamAt>, T)> = Vec::new();
    for (at, one) in seams.iter().filter_map(|at| Some((*at, of(*at)?))) {
        match groups.iter_mut().find(|(_, known)| is_alike(known, &one)) {
            Some((all, _)) => all.push(at),
            None => groups.push((vec![at], one)),
        }
    }
    groups
}

fn same<T: Copy + PartialEq>(seams: &[SeamAt], of: impl Fn(SeamAt) -> Option<T>) -> Vec<(Vec<SeamAt>, T)> {
    alike(seams, of, |one, other| one == other)
}

/// Whether two seams are sewn alike, for reasons that may be told in one line.
fn is_sewn_alike(one: &Sewing, other: &Sewing) -> bool {
    let settings = |sewn: &Sewing| (sewn.first, sewn.instead, sewn.second, sewn.topstitch);
    let unknown = |sewn: &Sewing| sewn.basis == Basis::NotMeasured;
    settings(one) == settings(other) && unknown(one) == unknown(other)
}

/// What is done at the places of a garment; the same at several places is one line.
fn places(cloth: &Cloth, garment: Option<GarmentKind>) -> Vec<Handle> {
    let places = GarmentPlace::ALL
        .into_iter()
        .filter(|place| garment.is_none_or(|garment| usual_places(garment).contains(place)));
    let places: Vec<PlaceLine> = places.filter_map(|place| handling::at(cloth, place)).collect();
    let same = |one: &PlaceLine, next: &PlaceLine| {
        (one.what, one.source, is_for_any(one)) == (next.what, next.source, is_for_any(next))
    };
    let line = |alike: &[PlaceLine]| {
        let first = alike.first()?;
        let places = alike.iter().map(|line| line.place).collect();
        Some(Handle::Place { places, what: first.what, always: is_for_any(first), source: first.source })
    };
    places.chunk_by(same).filter_map(line).collect()
}

/// Whether it is done to every cloth, whatever it gives.
fn is_for_any(line: &PlaceLine) -> bool {
    matches!(line.place, GarmentPlace::Eyelet | GarmentPlace::BiasHem)
        || line.what == Do::Interface { that_gives: false }
}

/// A layer on a cloth that gives `own`, against what is wanted; where nothing is, against holding the cloth back.
#[must_use]
pub fn layered(
    own: Figure,
    layer: Layer,
    gives: Figure,
    wants: Option<Ratio>,
    confidence: Confidence,
) -> (Layer, Layered) {
    let layered = Layered::of(own, layer, gives, wants.unwrap_or(own.ratio), confidence);
    // Against itself a cloth would be a coin toss.
    let follows = wants.is_none() && !layered.loses;
    let follows = follows.then_some(Layered { answer: Answer::Meets, chance: 1.0, instead: &[], ..layered });
    (layer, follows.unwrap_or(layered))
}
