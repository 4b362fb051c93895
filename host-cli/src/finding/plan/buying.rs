//! What to buy, and the elastic that is cut from it.

use tenter_core::making::care::Finish;
use tenter_core::making::elastic::{ElasticCare, Kind};
use tenter_core::making::garment::{Detail, GarmentPart, Notion, SeamKind, Stage, TaskReason, Work};
use tenter_core::making::handling::{self, Stay};
use tenter_core::making::source::Source;

use super::before::each;
use super::step::SizedLength;
use super::{Parts, PlanTopic, PlannedGarment, Step};
use crate::finding::amounts::{Amounts, ClothAmount};
use crate::finding::handle::Handle;
use crate::finding::size::Size;

/// Cloth, zips and thread.
pub(super) fn buy(made: &PlannedGarment<'_>, parts: &mut Parts) {
    let without = made.wanted.chosen.iter().filter(|chosen| chosen.candidate.is_none());
    parts.add(PlanTopic::Buying, without.map(|chosen| Step::Seek(Box::new(chosen.role.clone()))));
    parts.add(PlanTopic::Buying, without_role(made).map(Step::SeekPart));
    let chosen = made.wanted.chosen.iter().filter_map(|chosen| Some((chosen.role, chosen.candidate.as_ref()?)));
    let bought =
        Amounts::of(chosen).cut_as(made.wanted.stock.shop_cut).cloths.into_iter().filter(ClothAmount::is_bought);
    parts.add(PlanTopic::Buying, bought.map(|amount| Step::Buy(Box::new(amount))));
    let zips = made.wanted.notions.lines.iter().filter(|line| is_zip(&line.size));
    // The neck and the hem of a fly or a back seam take nothing.
    let zips =
        zips.filter(|line| !matches!(line.size, Size::EdgeAsFinished) || made.details().has(Detail::SeparatingZip));
    parts.add(PlanTopic::Buying, zips.cloned().map(Step::Size));
    parts.add(PlanTopic::Buying, each(made, &|one| vec![Handle::Thread(handling::thread(&one.cloth))]));
}

/// The parts that the garment has, that want a cloth of their own, and of which the view has no role.
fn without_role(made: &PlannedGarment<'_>) -> impl Iterator<Item = GarmentPart> {
    let has = |part: GarmentPart| {
        let parts = made.wanted.chosen.iter().filter_map(|chosen| super::part::part(chosen.role));
        parts.into_iter().any(|own| own == part || own.serves(part))
    };
    let wants = [(Detail::Lining, GarmentPart::Lining), (Detail::RibBands, GarmentPart::HemBand)];
    let details = made.details();
    let open = wants.map(|(detail, part)| (details.has(detail) && !has(part)).then_some(part));
    open.into_iter().flatten()
}

/// Whether a notion must be got: it was not sized and does not lie in the stash.
pub(super) fn is_needed(made: &PlannedGarment<'_>, notion: Notion) -> bool {
    let lies_there = |part| made.of_part(part).is_some();
    match notion {
        Notion::Zip => !made.wanted.notions.lines.iter().any(|line| matches!(line.size, Size::Zip { .. })),
        Notion::Elastic => !lies_there(GarmentPart::Elastic),
        Notion::Fusible => !lies_there(GarmentPart::Interfacing),
        // A fusible does not do in its place.
        Notion::SewInInterfacing => {
            made.of_part(GarmentPart::Interfacing).is_none_or(|one| one.cloth.finish == Finish::Fusible)
        }
        Notion::PocketBags => !lies_there(GarmentPart::PocketBag),
        _ => true,
    }
}

/// How much of a notion there must be, as far as it was sized.
pub(super) fn lengths(made: &PlannedGarment<'_>, notion: Notion) -> Vec<SizedLength> {
    match notion {
        Notion::Elastic => {
            let cut = made.wanted.notions.lines.iter().filter_map(|line| match &line.size {
                Size::Elastic { kind, recommended, .. } if *kind != Kind::Ribbing => {
                    Some(SizedLength { length: recommended.cut, unit: line.unit })
                }
                _ => None,
            });
            cut.collect()
        }
        Notion::Cord if !made.details().has(Detail::Child) => {
            let cord = made.wanted.cord.iter();
            cord.map(|cord| SizedLength { length: cord.cord.cut, unit: cord.unit }).collect()
        }
        _ => Vec::new(),
    }
}

/// The tapes that the seams take, once the seams are known.
pub(super) fn tapes(made: &PlannedGarment<'_>, parts: &mut Parts) {
    let treated: Vec<_> =
        made.seams().into_iter().filter_map(|(seam, _)| Some((seam, made.treated(seam)?.2))).collect();
    let stayed = |wanted: Stay| {
        let held = treated.iter().filter(|(seam, _)| matches!(seam, SeamKind::Shoulder | SeamKind::Waist));
        held.filter_map(move |(seam, treated)| Some((*seam, treated.stay.filter(|line| line.stay == wanted)?.source)))
    };
    let taped: Vec<_> = stayed(Stay::Tape).collect();
    let clear = stayed(Stay::ClearElastic).next();
    let details = made.details();
    let mouths = [Detail::SidePockets, Detail::HipPockets].into_iter().any(|detail| details.has(detail));
    let bound = treated.iter().find(|(_, treated)| treated.finish.finish.is_bound());
    let notion = |notion, source| Step::Notion { notion, lengths: Vec::new(), why: TaskReason::Kind, source };
    let source = taped.first().map_or(Source::CommonPractice, |(_, source)| *source);
    let is_taped = mouths || !taped.is_empty();
    let tape = Step::Tape { seams: taped.into_iter().map(|(seam, _)| seam).collect(), mouths, source };
    parts.add(PlanTopic::Buying, is_taped.then_some(tape));
    parts.add(PlanTopic::Buying, clear.map(|(_, source)| notion(Notion::ClearElastic, source)));
    parts.add(PlanTopic::Buying, bound.map(|(_, treated)| notion(Notion::BindingTape, treated.finish.source)));
}

/// Elastic and its casing; that it is washed first stands with the wash. A band of rib is cut with the cloth.
pub(super) fn elastic(made: &PlannedGarment<'_>, parts: &mut Parts) {
    let is_washed = |step: &Step| matches!(step, Step::WashNotions(..));
    let washed =
        made.of_part(GarmentPart::Elastic).is_some() || parts.0.iter().flat_map(|part| &part.steps).any(is_washed);
    let tried = parts.0.iter().flat_map(|part| &part.steps);
    let tried = tried.into_iter().any(|step| matches!(step, Step::Work { work: Work::TryNeckband, .. }));
    let is_said = |size: &Size| match size {
        Size::Care(line) if line.care == ElasticCare::Preshrink => washed,
        // The casing is told where it is turned.
        Size::Casing { .. } => true,
        Size::Care(line) if line.care == ElasticCare::TryPinnedLoop => tried,
        _ => false,
    };
    let lines = made.wanted.notions.lines.iter().filter(|line| !line.is_aside());
    let lines = lines.filter(|line| !is_zip(&line.size) && !is_said(&line.size));
    let is_band = |size: &Size| match size {
        Size::Elastic { kind, .. } => *kind == Kind::Ribbing,
        Size::Care(line) => line.care == ElasticCare::TryPinnedLoop,
        _ => false,
    };
    let (bands, drawn): (Vec<_>, Vec<_>) = lines.cloned().partition(|line| is_band(&line.size));
    parts.add(PlanTopic::Stage(Stage::Cut), bands.into_iter().map(Step::Size));
    parts.begin(PlanTopic::Stage(Stage::Casings), drawn.into_iter().map(Step::Size).collect());
}

/// What is said of a zip; how it is shortened is known before it is bought.
const fn is_zip(size: &Size) -> bool {
    matches!(size, Size::Zip { .. } | Size::Chain(_) | Size::Shortened(_) | Size::EdgeAsFinished | Size::EdgeGrows(_))
}
