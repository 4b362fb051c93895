//! Seams.

use tenter_core::making::pairing::SeamName;

use super::Words;

/// Seams by the words of the trade.
pub const SEAM: Words<SeamName> = Words { all: &SeamName::ALL, word: SeamName::word, others, unclear: &[] };

const fn others(seam: SeamName) -> &'static [&'static str] {
    match seam {
        SeamName::Side => &["side seam"],
        SeamName::Panel => &["panel seam", "side panel"],
        SeamName::Princess => &["princess seam", "princess line"],
        SeamName::Sleeve => &["sleeve seam", "underarm seam", "underarm"],
        SeamName::Zip => &["zip seam", "zipper", "zip front", "front edge"],
        SeamName::OutsideLeg => &["outside leg seam", "outseam", "outer leg"],
        SeamName::InsideLeg => &["inside leg seam", "inseam", "inner leg"],
        SeamName::Shoulder => &["shoulder seam"],
        SeamName::Raglan => &["raglan seam", "raglan sleeve"],
        SeamName::Armhole => &["armhole seam", "armscye", "sleeve head"],
        SeamName::Yoke => &["yoke seam"],
        SeamName::Waist => &["waist seam", "waistline"],
        SeamName::Hem => &["hem seam", "hem facing"],
        SeamName::Seat => &["seat seam", "crotch", "crotch seam", "rise"],
        SeamName::Neck => &["neck seam", "neckline", "neck edge", "hood", "collar"],
        SeamName::Neckband => &["neck ribbing"],
        SeamName::Cuff => &["cuffs", "wrist", "ankle"],
        SeamName::Waistband => &[],
    }
}
