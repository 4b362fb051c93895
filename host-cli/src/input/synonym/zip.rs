//! Ends of a zip.

use tenter_core::making::zip::ZipEnds;

use super::Words;

/// A zip whose two halves come apart is open-ended, or separating.
pub const ZIP_ENDS: Words<ZipEnds> = Words { all: &ZipEnds::ALL, word: ZipEnds::word, others, unclear: &[] };

const fn others(ends: ZipEnds) -> &'static [&'static str] {
    match ends {
        ZipEnds::Closed => &["closed end", "closed ended", "not separating", "non separating"],
        ZipEnds::Open => &["open end", "open ended", "separating", "separates", "parting", "two parts"],
    }
}
