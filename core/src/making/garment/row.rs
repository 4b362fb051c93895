//! A row of work, and when it applies.

use super::place::Manner;
use super::work::{Stage, Work};
use super::{Detail, Details, SeamKind};
use crate::answer::source::Source;

/// What a row asks of the cloth of the body.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum ClothCondition {
    /// Nothing.
    Anything,
    /// It is a woven.
    Woven,
    /// It is a knit.
    Knit,
    /// It gives more than a reading can miss: from 2 % on.
    Gives,
    /// It stretches: from 12 % on.
    Stretches,
    /// It has a nap, a pile or a direction, or it is a knit.
    OneWay,
    /// It takes the heat of a fusible.
    Fusible,
    /// It takes no fusible.
    NoFusible,
    /// It takes an iron and has no pile.
    Iron,
    /// It has a pile.
    Pile,
    /// It takes no iron.
    NoIron,
    /// Pin holes stay in it.
    HolesStay,
}

/// A row of work of a kind.
///
/// ```
/// use tenter_core::making::garment::{GarmentKind, Work};
///
/// // A dress has a back seam with a zip before its shoulders are sewn.
/// let place = |work| GarmentKind::Dress.rows().position(|row| row.work == work).unwrap();
/// assert!(place(Work::SetClosedZip) < place(Work::SewFacing));
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub struct WorkRow {
    /// When it is done.
    pub stage: Stage,
    /// What is done.
    pub work: Work,
    /// The details that the garment must have.
    pub with: Details,
    /// The details of which it must have one, if there are any.
    pub any: Details,
    /// The details of which it must have none.
    pub without: Details,
    /// What it asks of the cloth of the body.
    pub asks: ClothCondition,
    /// Where the rule comes from.
    pub source: Source,
}

/// A row that always applies, by common practice.
pub(super) const fn row(stage: Stage, work: Work) -> WorkRow {
    let none = Details::NONE;
    WorkRow {
        stage,
        work,
        with: none,
        any: none,
        without: none,
        asks: ClothCondition::Anything,
        source: Source::CommonPractice,
    }
}

pub(super) const fn seam(seam: SeamKind) -> WorkRow {
    row(Stage::Seams, Work::Seam(seam, Manner::Plain))
}

pub(super) const fn sewn(seam: SeamKind, manner: Manner) -> WorkRow {
    row(Stage::Seams, Work::Seam(seam, manner))
}

impl WorkRow {
    pub(super) const fn with(self, details: &[Detail]) -> Self {
        Self { with: Details::of(details), ..self }
    }

    pub(super) const fn any(self, details: &[Detail]) -> Self {
        Self { any: Details::of(details), ..self }
    }

    pub(super) const fn without(self, details: &[Detail]) -> Self {
        Self { without: Details::of(details), ..self }
    }

    pub(super) const fn asks(self, asks: ClothCondition) -> Self {
        Self { asks, ..self }
    }

    pub(super) const fn after(self, publication: &'static str) -> Self {
        Self { source: Source::Published(publication), ..self }
    }

    pub(super) const fn own(self, reason: &'static str) -> Self {
        Self { source: Source::Derived(reason), ..self }
    }
}
