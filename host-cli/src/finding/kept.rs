//! What open garments keep of the cloths chosen for them: one length is not promised twice.

use std::borrow::Cow;

use tenter_core::{Confidence, Length};

use super::fit::cloth::{Need, answer};
use crate::log::{CutFor, Fabric, Garment, Id, Pattern, Role};

/// A length that a garment keeps.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Kept {
    /// The garment.
    pub garment: Garment,
    /// The role.
    pub role: Id,
    /// The cloth.
    pub fabric: Id,
    /// How much: what the role takes of the cloth as it lies.
    pub length: Length,
}

/// The role of a view, retired or not.
#[must_use]
pub fn role_of(patterns: &[Pattern], role: Id) -> Option<&Role> {
    patterns.iter().flat_map(|pattern| &pattern.roles).find(|known| known.id == role)
}

/// What was cut of a cloth for a role of a garment.
#[must_use]
pub fn cut_of(fabric: &Fabric, garment: Id, role: Id) -> Option<&CutFor> {
    fabric.cuts.iter().find(|cut| cut.garment == garment && cut.role == role)
}

/// What a role takes of a cloth as it lies; none where the pattern does not say.
#[must_use]
pub fn takes(fabric: &Fabric, role: &Role) -> Option<Length> {
    answer(fabric, Need::of(role), Length::ZERO, Confidence::default()).needed().map(|needed| needed.length)
}

/// Every length that is kept: for each role of each open garment that was not cut yet.
#[must_use]
pub fn kept(fabrics: &[Fabric], garments: &[Garment], patterns: &[Pattern]) -> Vec<Kept> {
    let mut all = Vec::new();
    for garment in garments.iter().filter(|garment| garment.is_open()) {
        for one in &garment.uses {
            let Some(fabric) = fabrics.iter().find(|fabric| fabric.id == one.fabric) else { continue };
            if fabric.is_seen() || cut_of(fabric, garment.id, one.role).is_some() {
                continue;
            }
            if let Some(length) = role_of(patterns, one.role).and_then(|role| takes(fabric, role)) {
                all.push(Kept { garment: garment.clone(), role: one.role, fabric: fabric.id, length });
            }
        }
    }
    all
}

/// A cloth with what is left of it beside what is kept of it.
#[must_use]
pub fn free<'f>(fabric: &'f Fabric, kept: &[Kept]) -> Cow<'f, Fabric> {
    match (fabric.length, sum(kept.iter())) {
        (Some(had), kept) if kept > Length::ZERO => {
            let left = Length::from_steps(had.steps().saturating_sub(kept.steps()).max(0));
            Cow::Owned(Fabric { length: Some(left), ..fabric.clone() })
        }
        _ => Cow::Borrowed(fabric),
    }
}

/// The sum of lengths.
#[must_use]
pub fn sum<'k>(kept: impl Iterator<Item = &'k Kept>) -> Length {
    Length::from_steps(kept.fold(0_i32, |sum, kept| sum.saturating_add(kept.length.steps())))
}
