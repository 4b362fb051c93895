//! Seams.

use tenter_core::making::garment::SeamKind;

use super::Words;

/// Seams by the words of the trade.
pub const SEAM: Words<SeamKind> =
    Words { all: &SeamKind::ALL, word: SeamKind::word, others, unclear: &[("neck", NECK)] };

/// What is set onto a neck.
const NECK: &[SeamKind] = &[SeamKind::Neckband, SeamKind::CollarToNeck, SeamKind::HoodToNeck];

const fn others(seam: SeamKind) -> &'static [&'static str] {
    match seam {
        SeamKind::Panel => &["panel seam", "side panel"],
        SeamKind::Princess => &["princess seam", "princess line"],
        SeamKind::Yoke => &["yoke seam"],
        SeamKind::CentreBack => &["center back", "back seam"],
        SeamKind::Shoulder => &["shoulder seam"],
        SeamKind::HoodCentre => &["hood center", "hood seam"],
        SeamKind::HoodToNeck => &["hood"],
        SeamKind::CollarToNeck => &["collar"],
        SeamKind::Neckband => &["neck ribbing", "neck binding"],
        SeamKind::Armhole => &["armhole seam", "armscye", "sleeve head"],
        SeamKind::Raglan => &["raglan seam", "raglan sleeve"],
        SeamKind::Sleeve => &["sleeve seam", "underarm seam"],
        SeamKind::Side => &["side seam"],
        SeamKind::SleeveAndSide => &["underarm"],
        SeamKind::Waist => &["waist seam", "waistline"],
        SeamKind::Waistband => &[],
        SeamKind::Cuff => &["cuffs", "wrist", "ankle"],
        SeamKind::HemBand => &["hem", "hem facing"],
        SeamKind::OutsideLeg => &["outside leg seam", "outseam", "outer leg"],
        SeamKind::InsideLeg => &["inside leg seam", "inseam", "inner leg"],
        SeamKind::Crotch => &["crotch seam", "seat", "seat seam", "rise"],
        SeamKind::BackSeat => &[],
        SeamKind::Strap => &["straps"],
        SeamKind::FrontEdge => &["zip", "zip seam", "zipper", "zip front", "front"],
        SeamKind::LiningToFacing => &["lining"],
    }
}
