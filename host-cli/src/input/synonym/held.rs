//! How a swatch is held and read.

use tenter_core::making::hanging::Specimen;
use tenter_core::{Ends, Held};

use super::Words;

/// Ways of holding.
pub const HELD: Words<Held> = Words { all: &Held::ALL, word: Held::word, others: held, unclear: &[] };

/// Ends that are read; their number does too.
pub const ENDS: Words<Ends> = Words { all: &Ends::ALL, word: Ends::word, others: ends, unclear: &[] };

/// Layers of what hangs.
pub const PIECE: Words<Specimen> = Words { all: &Specimen::ALL, word: Specimen::word, others: piece, unclear: &[] };

const fn held(held: Held) -> &'static [&'static str] {
    match held {
        Held::Flat => &["single", "single layer", "one layer", "1 layer", "unfolded", "not folded"],
        Held::Folded => &["fold", "double", "doubled", "double layer", "two layers", "2 layers", "in half"],
        Held::Strip => &["cut strip", "strips"],
        Held::Loop => &["sewn loop", "tube", "ring"],
    }
}

const fn ends(ends: Ends) -> &'static [&'static str] {
    match ends {
        Ends::One => &["1", "one end"],
        Ends::Both => &["2", "two", "both ends", "two ends"],
    }
}

const fn piece(piece: Specimen) -> &'static [&'static str] {
    match piece {
        Specimen::Strip => &["flat", "single layer", "one layer", "1 layer"],
        Specimen::Loop => &["tube", "ring", "two layers", "2 layers", "folded"],
    }
}
