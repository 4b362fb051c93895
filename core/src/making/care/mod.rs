//! Finish, drape and purpose of a cloth; and what finish and fibre forbid in washing, pressing and pinning.

mod label;
mod rules;

pub use label::{Described, Fibre, Fibres};
pub use rules::{Because, Before, Care, Dots, Pins, Press, Steam, Told};

use serde::{Deserialize, Serialize};

use crate::number::words;

/// What was done to the surface of a cloth, or what was laid on it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum Finish {
    /// Nothing that needs care of its own.
    Plain,
    /// Brushed or napped: flannel, fleece.
    Brushed,
    /// A closed film on one side.
    Coated,
    /// Laminated with a membrane that lets vapour through.
    Membrane,
    /// Waxed or oiled.
    Waxed,
    /// A pile: velvet, velveteen, corduroy, fur fabric.
    Pile,
    /// An adhesive that melts: fusible interfacing.
    Fusible,
    /// Made to look like leather or suede.
    LeatherLike,
}

words!(Finish {
    Plain => "plain",
    Brushed => "brushed",
    Coated => "coated",
    Membrane => "membrane",
    Waxed => "waxed",
    Pile => "pile",
    Fusible => "fusible",
    LeatherLike => "leather-like",
});

impl Finish {
    /// Whether it takes the heat that melts a fusible: a wax melts as well, and a film or an imitation of leather may.
    ///
    /// ```
    /// use tenter_core::making::care::Finish;
    ///
    /// assert!(Finish::Brushed.takes_fusible() && !Finish::Membrane.takes_fusible());
    /// ```
    #[must_use]
    pub const fn takes_fusible(self) -> bool {
        !matches!(self, Self::Waxed | Self::Coated | Self::Membrane | Self::LeatherLike)
    }

    /// Whether an iron may touch it at all; a wax melts and bleeds under the coolest. How hot it may be, [`Care`] tells.
    ///
    /// ```
    /// use tenter_core::making::care::Finish;
    ///
    /// assert!(Finish::Membrane.takes_iron() && !Finish::Waxed.takes_iron());
    /// ```
    #[must_use]
    pub const fn takes_iron(self) -> bool {
        !matches!(self, Self::Waxed)
    }

    /// Whether the hole of a pin or a needle stays in it.
    ///
    /// ```
    /// use tenter_core::making::care::Finish;
    ///
    /// assert!(Finish::Waxed.keeps_holes() && !Finish::Plain.keeps_holes());
    /// ```
    #[must_use]
    pub const fn keeps_holes(self) -> bool {
        matches!(self, Self::Waxed | Self::Membrane | Self::LeatherLike)
    }
}

/// How a cloth falls, by hand.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum Drape {
    /// It pours over the hand: chiffon, viscose crepe.
    Fluid,
    /// It folds softly: jersey, lawn.
    Soft,
    /// It keeps a fold: poplin, gaberdine.
    Crisp,
    /// It stands by itself: canvas, heavy denim.
    Stiff,
}

words!(Drape { Fluid => "fluid", Soft => "soft", Crisp => "crisp", Stiff => "stiff" });

/// What a cloth is made for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum Purpose {
    /// The outside of a garment.
    Outer,
    /// Its lining.
    Lining,
    /// A layer that stiffens.
    Interfacing,
    /// Bands, cuffs and collars of a knit.
    Rib,
    /// Pocket bags.
    Pocketing,
}

words!(Purpose {
    Outer => "outer",
    Lining => "lining",
    Interfacing => "interfacing",
    Rib => "rib",
    Pocketing => "pocketing",
});
