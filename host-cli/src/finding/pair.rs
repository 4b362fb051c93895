//! Two cloths in one seam.

use tenter_core::making::error::MakingError;
use tenter_core::making::pairing::{Edge, Pair, Run, Seam, SeamName, Shape, Which};
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
    pub name: Option<SeamName>,
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
    pub const fn of(name: Option<SeamName>, length: Length) -> Self {
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
            (None, None) => Self::of(Some(SeamName::Side), length),
        }
    }

    /// How it runs where its sides are made so.
    fn run(&self, made: [Construction; 2]) -> ([Grain; 2], Shape, Option<Which>) {
        let [first, second] = made;
        let (piece, turned) = match self.piece {
            Which::First => (first, true),
            Which::Second => (second, false),
        };
        let run = self.name.map(|name| Run::of(name, piece));
        let grains = run.map_or([Grain::Lengthwise; 2], |run| run.grains);
        let [body, set_on] = grains;
        let grains = self.grains.unwrap_or(if turned { [set_on, body] } else { grains });
        let band = run.is_some_and(|run| run.is_band).then_some(self.piece);
        (grains, run.map_or(Shape::Straight, |run| run.shape), band)
    }

    /// The grain of each side along it.
    #[must_use]
    pub fn grains(&self, fabrics: [&Fabric; 2]) -> [Grain; 2] {
        self.run(fabrics.map(|fabric| fabric.construction)).0
    }
}

/// The seam that a role is set on with, by its name.
fn piece(role: &str) -> Option<SeamName> {
    let role = role.to_lowercase();
    let names = [
        ("waistband", SeamName::Waistband),
        ("neckband", SeamName::Neckband),
        ("neck ribbing", SeamName::Neckband),
        ("cuff", SeamName::Cuff),
        ("ribbing", SeamName::Cuff),
        ("band", SeamName::Hem),
        ("hood", SeamName::Neck),
        ("collar", SeamName::Neck),
        ("yoke", SeamName::Yoke),
        ("sleeve", SeamName::Armhole),
    ];
    names.into_iter().find(|(word, _)| role.contains(word)).map(|(_, name)| name)
}

/// One side of a seam.
#[derive(Debug, Clone)]
pub struct SeamSide {
    /// The cloth.
    pub cloth: Named,
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
        let ([one, other], shape, band) = joined.run([first.construction, second.construction]);
        let side = |fabric: &Fabric, grain| {
            let edge = known::edge(fabric, grain, stock).map_err(Unjoined::NotPulled)?;
            Ok(SeamSide { cloth: fabric.into(), edge })
        };
        let sides = [side(first, one)?, side(second, other)?];
        let seam = Seam { length: joined.length, stitch: joined.stitch, shape, band, asked };
        let pair = Pair::of(&sides[0].edge, &sides[1].edge, &seam, confidence).map_err(Unjoined::Making)?;
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
        assert_eq!(seam(["main", "side panel"]), (Some(SeamName::Side), Which::Second));
        assert_eq!(seam(["main", "Waistband"]), (Some(SeamName::Waistband), Which::Second));
        assert_eq!(seam(["hood", "main"]), (Some(SeamName::Neck), Which::First));
        let knit_band = Joined::between_roles(["cuff", "main"], length).run([Construction::Knit, Construction::Woven]);
        assert_eq!(knit_band, ([Grain::Crosswise; 2], Shape::Straight, Some(Which::First)));
        let woven_band = Joined::between_roles(["waistband", "main"], length).run([Construction::Woven; 2]);
        assert_eq!(woven_band.0, [Grain::Lengthwise, Grain::Crosswise]);
    }
}
