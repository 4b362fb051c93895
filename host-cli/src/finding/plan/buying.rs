//! What to buy, and the elastic that is cut from it.

use tenter_core::making::elastic::ElasticCare;
use tenter_core::making::garment::{Detail, Stage};

use super::{Parts, PlanTopic, PlannedGarment, Step};
use crate::finding::amounts::{Amounts, ClothAmount};
use crate::finding::size::Size;

/// Cloth and zips.
pub(super) fn buy(made: &PlannedGarment<'_>, parts: &mut Parts) {
    let without = made.wanted.chosen.iter().filter(|chosen| chosen.candidate.is_none());
    parts.add(PlanTopic::Buying, without.map(|chosen| Step::Seek(Box::new(chosen.role.clone()))));
    let chosen = made.wanted.chosen.iter().filter_map(|chosen| Some((chosen.role, chosen.candidate.as_ref()?)));
    let bought =
        Amounts::of(chosen).cut_as(made.wanted.stock.shop_cut).cloths.into_iter().filter(ClothAmount::is_bought);
    parts.add(PlanTopic::Buying, bought.map(|amount| Step::Buy(Box::new(amount))));
    let zips = made.wanted.notions.lines.iter().filter(|line| is_zip(&line.size));
    // The neck and the hem of a fly or a back seam take nothing.
    let zips =
        zips.filter(|line| !matches!(line.size, Size::EdgeAsFinished) || made.details().has(Detail::SeparatingZip));
    parts.add(PlanTopic::Buying, zips.cloned().map(Step::Size));
}

/// Elastic and its casing; that it is washed first stands with the wash.
pub(super) fn elastic(made: &PlannedGarment<'_>, parts: &mut Parts) {
    let washed = parts.0.iter().flat_map(|part| &part.steps).any(|step| matches!(step, Step::WashNotions(..)));
    let is_said = |size: &Size| washed && matches!(size, Size::Care(line) if line.care == ElasticCare::Preshrink);
    let lines = made.wanted.notions.lines.iter().filter(|line| !line.is_aside());
    let lines = lines.filter(|line| !is_zip(&line.size) && !is_said(&line.size));
    parts.add(PlanTopic::Stage(Stage::Casings), lines.cloned().map(Step::Size));
}

/// What is said of a zip; how it is shortened is known before it is bought.
const fn is_zip(size: &Size) -> bool {
    matches!(size, Size::Zip { .. } | Size::Chain(_) | Size::Shortened(_) | Size::EdgeAsFinished | Size::EdgeGrows(_))
}
