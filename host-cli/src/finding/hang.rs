//! Which mass to hang for a wanted tension, and back.

use tenter_core::making::caution::{Caution, Job, MOST_GRAMS, cautions};
use tenter_core::making::error::MakingError;
use tenter_core::making::hanging::{self, Specimen, Tension};
use tenter_core::making::source::Source;
use tenter_core::{Length, Unit};

/// A piece of cloth that hangs.
#[derive(Debug, Clone, Copy)]
pub struct Hung {
    /// Its width, a loop laid flat.
    pub width: Length,
    /// One layer, or two.
    pub piece: Specimen,
    /// The unit that its width was typed in.
    pub unit: Unit,
}

/// What was found.
#[derive(Debug, Clone, Copy)]
pub enum Hang {
    /// The tensions of published tests.
    Methods(Unit),
    /// The mass for a tension.
    Mass {
        /// The piece.
        hung: Hung,
        /// The tension.
        tension: Tension,
        /// Where the tension comes from.
        source: Source,
        /// The mass, in grams.
        grams: u32,
        /// The widest piece that a mass that is not too heavy serves; none where the mass is not too heavy.
        widest: Option<Length>,
    },
    /// The tension that a mass makes.
    Tension {
        /// The piece.
        hung: Hung,
        /// The mass, in grams.
        grams: u32,
        /// What it makes.
        tension: Tension,
        /// Whether it is too heavy to hang at home.
        too_heavy: bool,
    },
}

impl Hang {
    /// The mass for a tension.
    ///
    /// # Errors
    ///
    /// A width that is not longer than zero, or a mass that is too large.
    pub fn mass(hung: Hung, (tension, source): (Tension, Source)) -> Result<Self, MakingError> {
        let mass = hanging::mass(tension, hung.width, hung.piece)?;
        let widest = mass.too_heavy.then(|| hanging::widest(tension, hung.piece));
        Ok(Self::Mass { hung, tension, source, grams: mass.grams, widest })
    }

    /// The tension that a mass makes.
    ///
    /// # Errors
    ///
    /// A width that is not longer than zero, or a tension that is too large.
    pub fn tension(hung: Hung, grams: u32) -> Result<Self, MakingError> {
        let tension = hanging::tension(grams, hung.width, hung.piece)?;
        Ok(Self::Tension { hung, grams, tension, too_heavy: grams > MOST_GRAMS })
    }

    /// The mass that hangs, in grams.
    #[must_use]
    pub const fn grams(&self) -> Option<u32> {
        match self {
            Self::Methods(_) => None,
            Self::Mass { grams, .. } | Self::Tension { grams, .. } => Some(*grams),
        }
    }

    /// The cautions that apply.
    #[must_use]
    pub fn cautions(&self) -> Vec<Caution> {
        cautions(Job { hangs_mass: true, ..Job::default() }).into_iter().collect()
    }
}
