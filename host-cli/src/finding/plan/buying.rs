//! What to buy, and the elastic that is cut from it.

use tenter_core::making::elastic::Care;
use tenter_core::making::garment::Stage;

use super::{Chosen, Made, Parts, PlanTopic, Step};
use crate::finding::fit::cloth::ClothAnswer;
use crate::finding::size::Size;

/// Cloth and zips.
pub(super) fn buy(made: &Made<'_>, parts: &mut Parts) {
    let step = |chosen: &Chosen<'_>| {
        let role = chosen.role.name.clone();
        let Some(candidate) = &chosen.candidate else { return Some(Step::Seek(Box::new(chosen.role.clone()))) };
        let cloth = candidate.fabric.into();
        match (&candidate.fabric.shop, candidate.cloth.needed(), candidate.cloth) {
            (Some(shop), Some(needed), _) => Some(Step::Buy { cloth, length: needed.length, shop: shop.clone(), role }),
            (_, _, ClothAnswer::Short { missing, .. }) => Some(Step::More { cloth, missing, role }),
            _ => None,
        }
    };
    parts.add(PlanTopic::Buying, made.wanted.chosen.iter().filter_map(step));
    let zips = made.wanted.notions.lines.iter().filter(|line| matches!(line.size, Size::Zip { .. }));
    parts.add(PlanTopic::Buying, zips.cloned().map(Step::Size));
}

/// Elastic and its casing; that it is washed first stands with the wash.
pub(super) fn elastic(made: &Made<'_>, parts: &mut Parts) {
    let washed = parts.0.iter().flat_map(|part| &part.steps).any(|step| matches!(step, Step::WashNotions(..)));
    let is_said = |size: &Size| {
        matches!(size, Size::Zip { .. }) || washed && matches!(size, Size::Care(line) if line.care == Care::Preshrink)
    };
    let lines = made.wanted.notions.lines.iter().filter(|line| !is_said(&line.size));
    parts.add(PlanTopic::Stage(Stage::Casings), lines.cloned().map(Step::Size));
}
