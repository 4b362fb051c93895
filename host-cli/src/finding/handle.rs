//! How to sew one cloth: what its figures call for.

use tenter_core::making::handling::{
    self, Cloth, Do, Layer, Layered, Needle, Place, PlaceLine, PracticeLine, SeamAllowance, SeamLine,
};
use tenter_core::making::source::Source;
use tenter_core::making::stitch::Stitch;
use tenter_core::{Answer, Confidence, Figure, Ratio};

/// What a line is about.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum HandleTopic {
    /// The needle.
    Needle,
    /// The stitch.
    Stitch,
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
        matches!(self, Self::Place | Self::Machine | Self::Allowance)
    }
}

/// What to do, with the data behind it.
#[derive(Debug, Clone, PartialEq)]
pub enum Handle {
    /// A needle.
    Needle(Needle),
    /// A stitch.
    Stitch(SeamLine),
    /// A straight stitch would crack: nothing to do.
    StraightCracks(SeamLine),
    /// The same at one place or several.
    Place {
        /// Where.
        places: Vec<Place>,
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
    /// How wide the seam allowance is.
    Allowance(SeamAllowance),
}

impl Handle {
    /// What the line is about.
    #[must_use]
    pub const fn topic(&self) -> HandleTopic {
        match self {
            Self::Needle(_) => HandleTopic::Needle,
            Self::Stitch(_) | Self::StraightCracks(_) => HandleTopic::Stitch,
            Self::Place { .. } => HandleTopic::Place,
            Self::Machine(_) => HandleTopic::Machine,
            Self::Layer(..) => HandleTopic::Layer,
            Self::Allowance(_) => HandleTopic::Allowance,
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
    /// What the figures of a cloth call for; `wants` is the stretch that the view wants along its seams.
    #[must_use]
    pub fn of(cloth: &Cloth, wants: Option<Ratio>, layers: &[(Layer, Layered)], confidence: Confidence) -> Self {
        let mut lines: Vec<Handle> = handling::needle(cloth).map(Handle::Needle).into_iter().collect();
        let seam = handling::seam(cloth, wants);
        lines.push(Handle::Stitch(seam));
        if seam.stitch != Stitch::Straight {
            lines.push(Handle::StraightCracks(seam));
        }
        let lined = layers.iter().any(|(layer, _)| *layer == Layer::Lining);
        lines.extend(places(cloth, lined));
        lines.extend(handling::practices(cloth).into_iter().map(Handle::Machine));
        lines.extend(layers.iter().map(|(layer, layered)| Handle::Layer(*layer, *layered)));
        lines.push(Handle::Allowance(handling::seam_allowance()));
        let answer = layers.iter().map(|(_, layered)| layered.answer).reduce(Answer::worse);
        Self { most: cloth.most_stretch().map(|figure| figure.ratio), lines, answer, confidence }
    }
}

/// What is done at the places of a garment; the same at several places is one line.
fn places(cloth: &Cloth, lined: bool) -> Vec<Handle> {
    let places = Place::ALL.into_iter().filter(|place| !(lined && *place == Place::RawSeams));
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
    matches!(line.place, Place::Eyelet | Place::RawSeams | Place::BiasHem)
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
