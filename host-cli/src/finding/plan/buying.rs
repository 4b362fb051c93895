//! What to buy, and the elastic that is cut from it.

use tenter_core::making::elastic::Care;
use tenter_core::making::garment::Stage;

use super::{Chosen, Made, Parts, PlanTopic, Step};
use crate::finding::fit::cloth::ClothAnswer;
use crate::finding::size::{Size, SizeLine};

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
    let zips = made.wanted.notions.lines.iter().filter(|line| line.is_zip());
    parts.add(PlanTopic::Buying, zips.cloned().map(Step::Size));
}

/// What is done to a zip before it is sewn in.
pub(super) fn zip_work(made: &Made<'_>) -> impl Iterator<Item = Step> {
    made.wanted.notions.lines.iter().filter(|line| line.is_zip_work()).cloned().map(Step::Size)
}

/// Elastic and its casing; that it is washed first stands with the wash.
pub(super) fn elastic(made: &Made<'_>, parts: &mut Parts) {
    let washed = parts.0.iter().flat_map(|part| &part.steps).any(|step| matches!(step, Step::WashNotions(..)));
    let is_said = |line: &SizeLine| {
        let is_wash = matches!(line.size, Size::Care(line) if line.care == Care::Preshrink);
        line.is_zip() || line.is_zip_work() || line.is_aside() || washed && is_wash
    };
    let lines = made.wanted.notions.lines.iter().filter(|line| !is_said(line));
    parts.add(PlanTopic::Stage(Stage::Casings), lines.cloned().map(Step::Size));
}
