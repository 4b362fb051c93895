//! Kinds of elastic, and where it goes.

use tenter_core::making::elastic::{Edging, Kind};

use super::Words;

/// Kinds of elastic.
pub const ELASTIC: Words<Kind> = Words { all: &Kind::ALL, word: Kind::word, others: kinds, unclear: &[] };

/// Where elastic goes. The end of a sleeve is drawn in as a wrist is; the leg of a swimsuit has two halves.
pub const EDGING: Words<Edging> = Words {
    all: &Edging::ALL,
    word: Edging::word,
    others: places,
    unclear: &[
        ("swim leg", &[Edging::SwimLegFront, Edging::SwimLegBack]),
        ("leg opening", &[Edging::Leg, Edging::SwimLegFront, Edging::SwimLegBack]),
    ],
};

const fn kinds(kind: Kind) -> &'static [&'static str] {
    match kind {
        Kind::Firm => &["woven", "woven elastic", "firm elastic", "non roll"],
        Kind::Soft => &["knit", "knitted", "knitted elastic", "soft elastic"],
        Kind::Braided => &["braid", "braided elastic"],
        Kind::Ribbing => &["rib", "ribbed", "rib knit", "cuffing"],
    }
}

const fn places(place: Edging) -> &'static [&'static str] {
    match place {
        Edging::Waist => &["waistline", "waistband"],
        Edging::SnugWaist => &["tight waist", "close waist"],
        Edging::Edge => &["hem", "lower edge", "bottom edge", "any edge"],
        Edging::SwimLegFront => &["front swim leg", "front leg"],
        Edging::SwimLegBack => &["back swim leg", "back leg"],
        Edging::Wrist => &["wrists", "sleeve", "sleeves", "sleeve hem", "sleeve end", "cuff", "cuffs"],
        Edging::Leg => &["ankle", "ankles", "trouser hem", "leg hem"],
        Edging::Opening => &["neck", "neckline", "neck opening", "neckband", "armhole"],
    }
}
