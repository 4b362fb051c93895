//! Two cloths in one seam.

use tenter_core::making::error::MakingError;
use tenter_core::making::garment::{Over, Seam};
use tenter_core::making::handling::{Runs, SeamUse, stay};
use tenter_core::making::pairing::{Edge, Joint, Pair, Which};
use tenter_core::making::stitch::Stitch;
use tenter_core::{Confidence, Construction, Grain, Length, Limit, Ratio};

use super::fit::known::{self, NotPulled};
use super::fit::{Stock, purpose};
use crate::log::{Fabric, Purpose};

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

/// A seam as it is asked about.
#[derive(Debug, Clone, Copy)]
pub struct Joined {
    /// Which seam it is; none where only its grains are known.
    pub name: Option<Seam>,
    /// The side that is the piece set on, where the seam has one: a band, a cuff, a hood.
    pub piece: Which,
    /// The grain of each side, where that was said.
    pub grains: Option<[Grain; 2]>,
    /// Its length.
    pub length: Length,
    /// The stitch, where it is chosen.
    pub stitch: Option<Stitch>,
}

impl Joined {
    /// A seam of which the second side is the piece.
    #[must_use]
    pub const fn of(name: Option<Seam>, length: Length) -> Self {
        Self { name, piece: Which::Second, grains: None, length, stitch: None }
    }

    /// The seam that two roles are joined in, by their names: `waistband`, `cuff`, `hood` … A seam of any other roles is
    /// taken for one that runs down the body.
    #[must_use]
    pub fn between_roles(roles: [&str; 2], length: Length) -> Self {
        let [first, second] = roles.map(piece);
        match (first, second) {
            (_, Some(name)) => Self::of(Some(name), length),
            (Some(name), None) => Self { piece: Which::First, ..Self::of(Some(name), length) },
            (None, None) => Self::of(Some(Seam::Side), length),
        }
    }

    /// What it is in cloths that are made so.
    fn seam(&self, made: [Construction; 2]) -> Laid {
        let [first, second] = made;
        let piece = match self.piece {
            Which::First => first,
            Which::Second => second,
        };
        let row = self.name.map(|name| if piece == Construction::Knit { name.in_knit() } else { name.row() });
        let runs = row.map_or([Runs::Lengthwise; 2], |row| row.runs);
        let [body, set_on] = runs;
        let runs = if self.piece == Which::First { [set_on, body] } else { runs };
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
            band: (passes && piece == Construction::Knit).then_some(self.piece),
        }
    }

    /// The grain of each side along it.
    #[must_use]
    pub fn grains(&self, fabrics: [&Fabric; 2]) -> [Grain; 2] {
        self.seam(fabrics.map(|fabric| fabric.construction)).sides.map(|side| side.runs.grain())
    }
}

/// A seam in its two cloths.
struct Laid {
    /// What it is asked on each side.
    sides: [SeamUse; 2],
    /// The side that is a band.
    band: Option<Which>,
}

/// The seam that a role is set on with, by its name.
fn piece(role: &str) -> Option<Seam> {
    let role = role.to_lowercase();
    let names = [
        ("waistband", Seam::Waistband),
        ("neckband", Seam::Neckband),
        ("neck ribbing", Seam::Neckband),
        ("cuff", Seam::Cuff),
        ("ribbing", Seam::Cuff),
        ("band", Seam::HemBand),
        ("hood", Seam::HoodToNeck),
        ("collar", Seam::CollarToNeck),
        ("yoke", Seam::Yoke),
        ("sleeve", Seam::Armhole),
    ];
    names.into_iter().find(|(word, _)| role.contains(word)).map(|(_, name)| name)
}

/// One side of a seam.
#[derive(Debug, Clone)]
pub struct SeamSide {
    /// The cloth.
    pub cloth: Named,
    /// Its grain along the seam.
    pub grain: Grain,
    /// What is known of it along the seam.
    pub edge: Edge,
}

/// Why two cloths cannot be judged in a seam.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Unjoined {
    /// A grain that was not pulled.
    NotPulled(NotPulled),
    /// Interfacing is fused or sewn onto a piece, and is no side of a seam.
    Interfacing(Named),
    /// A length that is none.
    Making(MakingError),
}

/// Two cloths in one seam, with what the core says of them.
#[derive(Debug, Clone)]
pub struct Pairing {
    /// The cloths.
    pub sides: [SeamSide; 2],
    /// The seam.
    pub joined: Joined,
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
        joined: Joined,
        asked: Option<Limit>,
        stock: &Stock,
        confidence: Confidence,
    ) -> Result<Self, Unjoined> {
        if joined.length <= Length::ZERO {
            return Err(Unjoined::Making(MakingError::Seam));
        }
        if let Some(layer) = fabrics.into_iter().find(|fabric| purpose::of_cloth(fabric) == Some(Purpose::Interfacing))
        {
            return Err(Unjoined::Interfacing(layer.into()));
        }
        let [first, second] = fabrics;
        let Laid { sides: [one, other], band } = joined.seam([first.construction, second.construction]);
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
        let joint = Joint { length: joined.length, stitch: joined.stitch, band, asked };
        let pair = Pair::of(&sides[0].edge, &sides[1].edge, &joint, confidence).map_err(Unjoined::Making)?;
        Ok(Self { sides, joined, pair, confidence })
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
    fn roles_say_which_seam_they_are_set_on_with() {
        let length = Length::from_mm(600);
        let seam = |roles| {
            let joined = Joined::between_roles(roles, length);
            (joined.name, joined.piece)
        };
        assert_eq!(seam(["main", "side panel"]), (Some(Seam::Side), Which::Second));
        assert_eq!(seam(["main", "Waistband"]), (Some(Seam::Waistband), Which::Second));
        assert_eq!(seam(["hood", "main"]), (Some(Seam::HoodToNeck), Which::First));
        let grains = |roles, made| {
            let laid = Joined::between_roles(roles, length).seam(made);
            (laid.sides.map(|side| side.runs.grain()), laid.band)
        };
        let knit = grains(["cuff", "main"], [Construction::Knit, Construction::Woven]);
        assert_eq!(knit, ([Grain::Crosswise; 2], Some(Which::First)));
        let woven = grains(["waistband", "main"], [Construction::Woven; 2]);
        assert_eq!(woven, ([Grain::Lengthwise, Grain::Crosswise], None));
    }
}
