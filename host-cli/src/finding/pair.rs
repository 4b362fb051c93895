//! Two cloths in one seam.

use tenter_core::making::error::MakingError;
use tenter_core::making::garment::{Over, SeamKind};
use tenter_core::making::handling::{Runs, SeamUse, stay};
use tenter_core::making::pairing::{Joint, Pair, SeamEdge, Which};
use tenter_core::making::stitch::Stitch;
use tenter_core::{Confidence, Construction, Grain, Length, Limit, Ratio};

use super::fit::known::{self, NotPulled};
use super::fit::{Stock, purpose};
use crate::log::{Fabric, Purpose, Tag};

/// A cloth by what a reader knows it by.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct NamedCloth {
    /// The tag that is pinned to it.
    pub tag: Tag,
    /// Its name.
    pub name: String,
}

impl From<&Fabric> for NamedCloth {
    fn from(fabric: &Fabric) -> Self {
        Self { tag: fabric.tag, name: fabric.name.clone() }
    }
}

/// A seam as it is asked about. Its second side is the piece that is set on, where it has one: a band, a cuff, a hood.
#[derive(Debug, Clone, Copy)]
pub struct SeamAsked {
    /// Which seam it is; none where only its grains are known.
    pub name: Option<SeamKind>,
    /// The grain of each side, where that was said.
    pub grains: Option<[Grain; 2]>,
    /// Its length.
    pub length: Length,
    /// The stitch, where it is chosen.
    pub stitch: Option<Stitch>,
}

impl SeamAsked {
    /// A seam by its name.
    #[must_use]
    pub const fn of(name: Option<SeamKind>, length: Length) -> Self {
        Self { name, grains: None, length, stitch: None }
    }

    /// What it is in cloths that are made so.
    fn laid(&self, made: [Construction; 2]) -> Laid {
        let [_, piece] = made;
        let row = self.name.map(|name| if piece == Construction::Knit { name.in_knit() } else { name.row() });
        let runs = row.map_or([Runs::Lengthwise; 2], |row| row.runs);
        let passes = row.is_some_and(|row| row.over != Over::Nothing);
        let each = |runs| SeamUse {
            runs,
            curved: row.is_some_and(|row| row.curved),
            strained: row.is_some_and(|row| row.strained),
            held: row.is_some_and(|row| row.held),
            enclosed: row.is_some_and(|row| row.enclosed),
            passes,
            ..SeamUse::default()
        };
        Laid {
            sides: self.grains.map_or(runs, |grains| grains.map(Runs::along)).map(each),
            // A woven band does not give: it is cut to length.
            band: (passes && piece == Construction::Knit).then_some(Which::Second),
        }
    }

    /// The grain of each side along it.
    #[must_use]
    pub fn grains(&self, fabrics: [&Fabric; 2]) -> [Grain; 2] {
        self.laid(fabrics.map(|fabric| fabric.construction)).sides.map(|side| side.runs.grain())
    }
}

/// A seam in its two cloths.
struct Laid {
    /// What it is asked on each side.
    sides: [SeamUse; 2],
    /// The side that is a band.
    band: Option<Which>,
}

/// One side of a seam.
#[derive(Debug, Clone)]
pub struct SeamSide {
    /// The cloth.
    pub cloth: NamedCloth,
    /// Its grain along the seam.
    pub grain: Grain,
    /// What is known of it along the seam.
    pub edge: SeamEdge,
}

/// Why two cloths cannot be judged in a seam.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Unjoined {
    /// A grain that was not pulled.
    NotPulled(NotPulled),
    /// Interfacing is fused or sewn onto a piece, and is no side of a seam.
    Interfacing(NamedCloth),
    /// A length that is none.
    Making(MakingError),
}

/// Two cloths in one seam, with what the core says of them.
#[derive(Debug, Clone)]
pub struct Pairing {
    /// The cloths.
    pub sides: [SeamSide; 2],
    /// The seam.
    pub seam: SeamAsked,
    /// What the core says.
    pub pair: Pair,
    /// How sure an answer is.
    pub confidence: Confidence,
}

impl Pairing {
    /// Judges a seam; `asked` is the least stretch that is wanted along it.
    ///
    /// # Errors
    ///
    /// A grain that was not pulled, interfacing, a seam that is not longer than zero, or figures that are too large.
    pub fn of(
        fabrics: [&Fabric; 2],
        seam: SeamAsked,
        asked: Option<Limit>,
        stock: &Stock,
        confidence: Confidence,
    ) -> Result<Self, Unjoined> {
        if seam.length <= Length::ZERO {
            return Err(Unjoined::Making(MakingError::Seam));
        }
        if let Some(layer) = fabrics.into_iter().find(|fabric| purpose::of_cloth(fabric) == Some(Purpose::Interfacing))
        {
            return Err(Unjoined::Interfacing(layer.into()));
        }
        let [first, second] = fabrics;
        let Laid { sides: [one, other], band } = seam.laid([first.construction, second.construction]);
        let side = |fabric: &Fabric, seam: &SeamUse| {
            let grain = seam.runs.grain();
            let mut edge = known::edge(fabric, grain, stock).map_err(Unjoined::NotPulled)?;
            let seam = SeamUse { asked: asked.map(Limit::ratio).filter(|_| !seam.held), ..*seam };
            edge.stay = stay(&known::cloth(fabric, stock), &seam);
            Ok(SeamSide { cloth: fabric.into(), grain, edge })
        };
        let sides = [side(first, &one)?, side(second, &other)?];
        // What keeps its length gives nothing, whatever the view asks.
        let asked = asked.filter(|_| !one.held);
        let joint = Joint { length: seam.length, stitch: seam.stitch, band, asked };
        let pair = Pair::of(&sides[0].edge, &sides[1].edge, &joint, confidence).map_err(Unjoined::Making)?;
        Ok(Self { sides, seam, pair, confidence })
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

    /// The stretch of the side that gives less: what a stitch must follow.
    #[must_use]
    pub fn lesser_stretch(&self) -> Ratio {
        let [first, second] = &self.sides;
        first.edge.stretch.ratio.min(second.edge.stretch.ratio)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_a_knit_band_is_pulled_to_match() {
        let seam = |name, grains, made| {
            let asked = SeamAsked { grains, ..SeamAsked::of(name, Length::from_mm(600)) };
            let laid = asked.laid(made);
            (laid.sides.map(|side| side.runs.grain()), laid.band)
        };
        let knit = [Construction::Woven, Construction::Knit];
        assert_eq!(seam(Some(SeamKind::Cuff), None, knit), ([Grain::Crosswise; 2], Some(Which::Second)));
        let woven = [Grain::Crosswise, Grain::Lengthwise];
        assert_eq!(seam(Some(SeamKind::Waistband), None, [Construction::Woven; 2]), (woven, None));
        assert_eq!(seam(None, None, knit), ([Grain::Lengthwise; 2], None));
        assert_eq!(seam(Some(SeamKind::Side), Some(woven), knit), (woven, None));
    }
}
