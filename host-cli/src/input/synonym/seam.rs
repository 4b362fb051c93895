//! Seams.

use tenter_core::making::garment::Seam;

use super::Words;

/// Seams by the words of the trade.
pub const SEAM: Words<Seam> = Words { all: &Seam::ALL, word: Seam::word, others, unclear: &[("neck", NECK)] };

/// What is set onto a neck.
const NECK: &[Seam] = &[Seam::Neckband, Seam::CollarToNeck, Seam::HoodToNeck];

const fn others(seam: Seam) -> &'static [&'static str] {
    match seam {
        Seam::Panel => &["panel seam", "side panel"],
        Seam::Princess => &["princess seam", "princess line"],
        Seam::Yoke => &["yoke seam"],
        Seam::CentreBack => &["center back", "back seam"],
        Seam::Shoulder => &["shoulder seam"],
        Seam::HoodCentre => &["hood center", "hood seam"],
        Seam::HoodToNeck => &["hood"],
        Seam::CollarToNeck => &["collar"],
        Seam::Neckband => &["neck ribbing", "neck binding"],
        Seam::Armhole => &["armhole seam", "armscye", "sleeve head"],
        Seam::Raglan => &["raglan seam", "raglan sleeve"],
        Seam::Sleeve => &["sleeve seam", "underarm seam"],
        Seam::Side => &["side seam"],
        Seam::SleeveAndSide => &["underarm"],
        Seam::Waist => &["waist seam", "waistline"],
        Seam::Waistband => &[],
        Seam::Cuff => &["cuffs", "wrist", "ankle"],
        Seam::HemBand => &["hem", "hem facing"],
        Seam::OutsideLeg => &["outside leg seam", "outseam", "outer leg"],
        Seam::InsideLeg => &["inside leg seam", "inseam", "inner leg"],
        Seam::Crotch => &["crotch seam", "seat", "seat seam", "rise"],
        Seam::BackSeat => &[],
        Seam::Strap => &["straps"],
        Seam::FrontEdge => &["zip", "zip seam", "zipper", "zip front", "front"],
        Seam::LiningToFacing => &["lining"],
    }
}
