//! The seams of a garment, in words.

use tenter_core::Unit;
use tenter_core::making::garment::{Manner, Seam};
use tenter_core::making::handling::{SeamFinish, Stay};

use super::work::{list, measured};
use crate::finding::plan::SeamStep;
use crate::words::handle;

/// A seam as what is sewn.
const fn object(seam: Seam) -> &'static str {
    match seam {
        Seam::Panel => "the panel seams",
        Seam::Princess => "the princess seams",
        Seam::Yoke => "the yoke seam",
        Seam::CentreBack => "the centre back",
        Seam::Shoulder => "the shoulder seams",
        Seam::HoodCentre => "the centre seam of the hood",
        Seam::HoodToNeck => "the hood to the neck",
        Seam::CollarToNeck => "the collar to the neck",
        Seam::Neckband => "the band to the neck",
        Seam::Armhole => "the sleeves into the armholes",
        Seam::Raglan => "the raglan seams",
        Seam::Sleeve => "the sleeve seams",
        Seam::Side => "the side seams",
        Seam::SleeveAndSide => "the sleeve and side seams",
        Seam::Waist => "the bodice to the skirt",
        Seam::Waistband => "the waistband to the waist",
        Seam::Cuff => "the cuffs to the sleeves",
        Seam::HemBand => "the band to the lower edge",
        Seam::OutsideLeg => "the outside leg seams",
        Seam::InsideLeg => "the inside leg seams",
        Seam::Crotch => "the crotch seam",
        Seam::BackSeat => "the back seat seam",
        Seam::Strap => "the straps",
        Seam::FrontEdge => "the front edges",
        Seam::LiningToFacing => "the lining to the facings",
    }
}

/// A seam as a place.
const fn place(seam: Seam) -> &'static str {
    match seam {
        Seam::Panel => "panels",
        Seam::Princess => "princess seams",
        Seam::Yoke => "yoke",
        Seam::CentreBack => "centre back",
        Seam::Shoulder => "shoulders",
        Seam::HoodCentre => "hood",
        Seam::HoodToNeck | Seam::CollarToNeck => "neck",
        Seam::Neckband => "neckband",
        Seam::Armhole => "armholes",
        Seam::Raglan => "raglan seams",
        Seam::Sleeve => "sleeves",
        Seam::Side => "sides",
        Seam::SleeveAndSide => "sleeves and sides",
        Seam::Waist => "waist",
        Seam::Waistband => "waistband",
        Seam::Cuff => "cuffs",
        Seam::HemBand => "lower band",
        Seam::OutsideLeg => "outside legs",
        Seam::InsideLeg => "inside legs",
        Seam::Crotch => "crotch",
        Seam::BackSeat => "back seat",
        Seam::Strap => "straps",
        Seam::FrontEdge => "front edges",
        Seam::LiningToFacing => "lining",
    }
}

/// Several seams as places.
#[must_use]
pub(super) fn places(seams: &[Seam]) -> String {
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
