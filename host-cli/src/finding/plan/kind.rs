//! What a garment is and has: what its kind usually has, what its roles and the choices for it show, and what was asked for.

use tenter_core::making::garment::{Detail, Details, GarmentKind, GarmentPart, Stage};
use tenter_core::making::zip::ZipEnds;

use super::WantedKind;
use super::part::part;
use crate::input::Field;
use crate::input::amount::cloth;
use crate::log::{Choices, Role};

/// The word for a zip that parts at its lower end.
const OPEN: &str = "open";
/// The word for one that does not.
const CLOSED: &str = "closed";

/// The kind that was said: of the garment, or else of one of its roles.
#[must_use]
pub fn said<'r>(choices: &Choices, roles: impl IntoIterator<Item = &'r Role>) -> Option<GarmentKind> {
    choices.kind.or_else(|| roles.into_iter().find_map(|role| role.kind))
}

/// The details that were asked for by their words, or excluded: those that the kind knows by another name as that.
pub fn details<'w>(kind: GarmentKind, words: &'w [String]) -> impl Iterator<Item = Detail> + 'w {
    words.iter().filter_map(|word| Detail::from_word(word)).map(move |detail| kind.meant(detail))
}

/// The garment; none where nobody said what it is.
#[must_use]
pub fn kind(choices: &Choices, roles: &[&Role]) -> Option<WantedKind> {
    let kind = said(choices, roles.iter().copied())?;
    let by_role = roles.iter().filter_map(|role| match part(role)? {
        GarmentPart::Lining => Some(Detail::Lining),
        GarmentPart::Hood => Some(Detail::Hood),
        GarmentPart::Collar => Some(Detail::Collar),
        GarmentPart::Yoke => Some(Detail::Yoke),
        GarmentPart::Panel => Some(Detail::Panels),
        GarmentPart::Skirt => Some(Detail::WaistSeam),
        GarmentPart::Waistband => Some(Detail::Waistband),
        // The rib of a T-shirt is its neckband.
        GarmentPart::Rib if !matches!(kind, GarmentKind::TShirt | GarmentKind::Dress) => Some(Detail::RibBands),
        GarmentPart::HemBand => Some(Detail::RibBands),
        GarmentPart::Elastic if is_below_the_waist(kind) => Some(Detail::ElasticWaist),
        _ => None,
    });
    let ends = |word: &str| choices.zip_ends.as_deref() == Some(word);
    let by_option = [
        (choices.child, Detail::Child),
        (choices.cord.is_some(), Detail::Cord),
        (ends(OPEN), Detail::SeparatingZip),
        (ends(CLOSED) && !kind.usual().has(Detail::Fly), Detail::ClosedZip),
    ];
    let by_option = by_option.into_iter().filter(|(is, _)| *is).map(|(_, detail)| detail).chain(by_zip(choices, kind));
    let by_elastic = choices.elastic.iter().filter_map(|text| match text.split_whitespace().nth(1)? {
        place if place.to_lowercase().contains("waist") => Some(Detail::ElasticWaist),
        "wrist" => Some(Detail::ElasticCuffs),
        _ => None,
    });
    // A waistband that is there is there, whatever is drawn into it.
    let (drawn, by_role): (Vec<_>, Vec<_>) = by_role.partition(|detail| *detail == Detail::ElasticWaist);
    let shown = drawn.into_iter().chain(by_option).chain(by_elastic).chain(by_role).filter(|detail| kind.has(*detail));
    let all = shown.chain(details(kind, &choices.with)).fold(kind.usual(), Details::with);
    let all = details(kind, &choices.without).fold(all, Details::less);
    Some(WantedKind { kind, details: kind.allowed(all) })
}

/// A zip that was chosen without a word on its ends closes a garment that usually has another closing.
fn by_zip(choices: &Choices, kind: GarmentKind) -> Option<Detail> {
    let usual = kind.usual();
    if choices.zip_ends.is_some()
        || [Detail::SeparatingZip, Detail::ClosedZip, Detail::Fly].iter().any(|zip| usual.has(*zip))
    {
        return None;
    }
    let edge = cloth(Field::Zip, choices.zip.as_deref()?).ok()?;
    let closes = match ZipEnds::usual(None, edge) {
        ZipEnds::Open => [Detail::SeparatingZip, Detail::ClosedZip],
        ZipEnds::Closed => [Detail::ClosedZip, Detail::SeparatingZip],
    };
    closes.into_iter().find(|detail| kind.has(*detail))
}

/// Whether a garment hangs from the waist.
const fn is_below_the_waist(kind: GarmentKind) -> bool {
    matches!(kind, GarmentKind::Skirt | GarmentKind::Trousers | GarmentKind::Jeans | GarmentKind::Leggings)
}

/// The stages of its work that are ticked off, in their order. Without a kind there are those that any garment has.
#[must_use]
pub fn stages(wanted: Option<WantedKind>) -> Vec<Stage> {
    use tenter_core::making::garment::GarmentPlan;
    let mut stages = vec![Stage::Buy, Stage::Prewash, Stage::Sample, Stage::Cut];
    if let Some(WantedKind { kind, details }) = wanted {
        GarmentPlan { kind, details, cloths: &[] }.each(|task| {
            if !stages.contains(&task.stage) {
                stages.push(task.stage);
            }
        });
    }
    stages
}
