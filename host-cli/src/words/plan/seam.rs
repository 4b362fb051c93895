//! The seams of a garment, in words.

use tenter_core::Unit;
use tenter_core::making::garment::{Manner, SeamKind};
use tenter_core::making::handling::{SeamFinish, Stay};

use super::work::{list, measured};
use crate::finding::plan::SeamStep;
use crate::words::handle;

/// A seam as what is sewn.
const fn object(seam: SeamKind) -> &'static str {
    match seam {
        SeamKind::Panel => "the panel seams",
        SeamKind::Princess => "the princess seams",
        SeamKind::Yoke => "the yoke seam",
        SeamKind::CentreBack => "the centre back",
        SeamKind::Shoulder => "the shoulder seams",
        SeamKind::HoodCentre => "the centre seam of the hood",
        SeamKind::HoodToNeck => "the hood to the neck",
        SeamKind::CollarToNeck => "the collar to the neck",
        SeamKind::Neckband => "the band to the neck",
        SeamKind::Armhole => "the sleeves into the armholes",
        SeamKind::Raglan => "the raglan seams",
        SeamKind::Sleeve => "the sleeve seams",
        SeamKind::Side => "the side seams",
        SeamKind::SleeveAndSide => "the sleeve and side seams",
        SeamKind::Waist => "the bodice to the skirt",
        SeamKind::Waistband => "the waistband to the waist",
        SeamKind::Cuff => "the cuffs to the sleeves",
        SeamKind::HemBand => "the band to the lower edge",
        SeamKind::OutsideLeg => "the outside leg seams",
        SeamKind::InsideLeg => "the inside leg seams",
        SeamKind::Crotch => "the crotch seam",
        SeamKind::BackSeat => "the back seat seam",
        SeamKind::Strap => "the straps",
        SeamKind::FrontEdge => "the front edges",
        SeamKind::LiningToFacing => "the lining to the facings",
    }
}

/// A seam as a place.
const fn place(seam: SeamKind) -> &'static str {
    match seam {
        SeamKind::Panel => "panels",
        SeamKind::Princess => "princess seams",
        SeamKind::Yoke => "yoke",
        SeamKind::CentreBack => "centre back",
        SeamKind::Shoulder => "shoulders",
        SeamKind::HoodCentre => "hood",
        SeamKind::HoodToNeck | SeamKind::CollarToNeck => "neck",
        SeamKind::Neckband => "neckband",
        SeamKind::Armhole => "armholes",
        SeamKind::Raglan => "raglan seams",
        SeamKind::Sleeve => "sleeves",
        SeamKind::Side => "sides",
        SeamKind::SleeveAndSide => "sleeves and sides",
        SeamKind::Waist => "waist",
        SeamKind::Waistband => "waistband",
        SeamKind::Cuff => "cuffs",
        SeamKind::HemBand => "lower band",
        SeamKind::OutsideLeg => "outside legs",
        SeamKind::InsideLeg => "inside legs",
        SeamKind::Crotch => "crotch",
        SeamKind::BackSeat => "back seat",
        SeamKind::Strap => "straps",
        SeamKind::FrontEdge => "front edges",
        SeamKind::LiningToFacing => "lining",
    }
}

/// A seam that a tape is bought for.
pub(super) const fn taped(seam: SeamKind) -> &'static str {
    match seam {
        SeamKind::Waist => "the waist seam",
        _ => "the shoulder seams",
    }
}

/// Several seams as places.
#[must_use]
pub(super) fn places(seams: &[SeamKind]) -> String {
    list(&seams.iter().map(|seam| place(*seam)).collect::<Vec<_>>())
}

const fn manner(manner: Manner) -> &'static str {
    match manner {
        Manner::Plain => "",
        Manner::Flat => ", while sleeve and side are open",
        Manner::Eased => {
            ", the fullness of the cap eased in, the underarm sewn twice and trimmed there to {6 mm|1/4 in}"
        }
        Manner::LegInLeg => ", one leg inside the other",
        Manner::Pulled => ", closed to a ring and folded, the band on top, pulled to match mark to mark",
        Manner::InOne => ", in one from the lower edge",
        Manner::Felled => ", flat-felled",
        Manner::Enclosed => ", the inner edge turned under over the allowances",
    }
}

/// What is sewn, and how beyond the usual.
#[must_use]
pub(super) fn sewn(step: &SeamStep, unit: Unit) -> String {
    let mut text = step.seams.iter().map(|seam| object(*seam)).collect::<Vec<_>>().join(", then ");
    text.push_str(&measured(manner(step.manner), unit));
    let mut more = Vec::new();
    more.extend(step.sewing.as_ref().map(handle::sewn));
    more.extend(step.stay.map(|line| match line.stay {
        Stay::Tape => "with a tape that does not stretch sewn in".to_owned(),
        Stay::ClearElastic => "with clear elastic sewn in".to_owned(),
        stay => handle::stay(stay, unit),
    }));
    more.extend(step.trimming.as_ref().map(|line| handle::trim(line, unit)));
    more.extend(step.finish.as_ref().map(|line| match line.finish {
        SeamFinish::Nothing => "the edges stay as they are".to_owned(),
        _ => handle::finish(line, unit),
    }));
    if !more.is_empty() {
        text.push_str(": ");
        text.push_str(&more.join("; "));
    }
    text
}
