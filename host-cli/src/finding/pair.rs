//! Two cloths in one seam.

use tenter_core::making::error::MakingError;
use tenter_core::making::pairing::{Edge, Match, Pair, Which};
use tenter_core::making::stitch::Stitch;
use tenter_core::{Answer, Confidence, Grain, Length, Ratio};

use crate::log::Fabric;

/// A cloth by what a reader knows it by.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Named {
    /// The tag that is pinned to it.
    pub tag: u16,
    /// Its name.
    pub name: String,
}

impl From<&Fabric> for Named {
    fn from(fabric: &Fabric) -> Self {
        Self { tag: fabric.tag, name: fabric.name.clone() }
    }
}

/// One side of a seam.
#[derive(Debug, Clone)]
pub struct SeamSide {
    /// The cloth.
    pub cloth: Named,
    /// Its grain along the seam.
    pub grain: Grain,
    /// What is known of it there.
    pub edge: Edge,
}

/// What an answer that is too close to call hangs on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum PairDoubt {
    /// How far the stretch of the two differs.
    Stretch,
    /// Which of them stays longer after release; the stretch is sure.
    Growth,
    /// Which of them the wash shortens more; the stretch is sure.
    Washing,
}

/// Two cloths in one seam, with what the core says of them.
#[derive(Debug, Clone)]
pub struct Pairing {
    /// The cloths.
    pub sides: [SeamSide; 2],
    /// The length of the seam.
    pub seam: Length,
    /// What the core says; where one side is a band, what it says of a band.
    pub pair: Pair,
    /// One side is a band by its name: it is cut shorter whatever the stretch.
    pub is_band: bool,
    /// How sure an answer is.
    pub confidence: Confidence,
}

impl Pairing {
    /// Judges a seam.
    ///
    /// # Errors
    ///
    /// A seam that is not longer than zero, or figures that are too large.
    pub fn of(
        sides: [SeamSide; 2],
        seam: Length,
        stitch: Option<Stitch>,
        confidence: Confidence,
    ) -> Result<Self, MakingError> {
        let pair = Pair::of(&sides[0].edge, &sides[1].edge, seam, stitch, confidence)?;
        Ok(Self { sides, seam, pair, is_band: false, confidence })
    }

    /// The same seam, where the roles of its sides say whether one is a band: a band is cut shorter and pulled to match,
    /// whatever the gap in stretch. Stay-stitched it would not pass head or hand. Common practice, no source.
    #[must_use]
    pub fn between_roles(self, roles: [&str; 2]) -> Self {
        let stretchier = self.pair.stretchier.map(|which| match (which, roles) {
            (Which::First, [role, _]) | (Which::Second, [_, role]) => role,
        });
        if !stretchier.is_some_and(is_band) {
            return self;
        }
        Self { pair: Pair { answer: Match::BandToBody, ..self.pair }, is_band: true, ..self }
    }

    /// A side.
    #[must_use]
    pub const fn side(&self, which: Which) -> &SeamSide {
        let [first, second] = &self.sides;
        match which {
            Which::First => first,
            Which::Second => second,
        }
    }

    /// What the answer hangs on, where it is too close to call.
    #[must_use]
    pub fn doubt(&self) -> Option<PairDoubt> {
        let Match::Close(_) = self.pair.answer else { return None };
        let chances = self.pair.chances;
        let sure = [chances.alike, chances.handle, chances.band].iter().any(|one| *one >= self.confidence.chance());
        let is_close = |mismatch: tenter_core::making::pairing::Mismatch| mismatch.answer == Answer::Close;
        Some(match sure {
            false => PairDoubt::Stretch,
            true if self.pair.growth.is_some_and(is_close) => PairDoubt::Growth,
            true => PairDoubt::Washing,
        })
    }

    /// The stretch of the side that gives less: what a stitch must follow.
    #[must_use]
    pub fn lesser_stretch(&self) -> Ratio {
        let [first, second] = &self.sides;
        first.edge.stretch.ratio.min(second.edge.stretch.ratio)
    }
}

/// Whether a role is a band, by its name.
fn is_band(role: &str) -> bool {
    let role = role.to_lowercase();
    ["band", "cuff", "ribbing"].iter().any(|word| role.contains(word))
}
