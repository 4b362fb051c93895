//! Kinds of garments that a demand is taken from, by other names.

use tenter_core::making::garment::GarmentKind;

use super::{Words, is};

/// Kinds of garment of a view.
pub const KIND: Words<GarmentKind> =
    Words { all: &GarmentKind::ALL, word: GarmentKind::word, others, unclear: UNCLEAR };

/// A jacket may be lined or not, and a child's.
const UNCLEAR: &[(&str, &[GarmentKind])] = &[
    ("jacket", &[GarmentKind::UnlinedJacket, GarmentKind::LinedCoat, GarmentKind::ChildsOuterwear]),
    ("coat", &[GarmentKind::LinedCoat, GarmentKind::ChildsOuterwear]),
];

const fn others(kind: GarmentKind) -> &'static [&'static str] {
    match kind {
        GarmentKind::UnlinedJacket => &["jacket without lining"],
        GarmentKind::LinedCoat => &["lined jacket", "coat with lining"],
        GarmentKind::HoodedPullover => &["hoodie", "hooded sweatshirt", "hooded jumper"],
        GarmentKind::Skirt => &["skirts"],
        GarmentKind::Trousers => &["pants", "slacks"],
        GarmentKind::Jeans => &["denim trousers"],
        GarmentKind::Shirt => &["blouse"],
        GarmentKind::Dress => &["frock"],
        GarmentKind::TShirt => &["tee", "tee shirt", "knit top"],
        GarmentKind::Leggings => &["tights", "running tights", "yoga pants"],
        GarmentKind::Swimwear => &["swimsuit", "bathing suit", "leotard", "bra top"],
        GarmentKind::ChildsOuterwear => &["children's outerwear", "child's coat", "child's jacket", "anorak"],
    }
}

/// Other names, each with the kinds that it may be.
pub const GARMENTS: &[(&str, &[&str])] = &[
    ("tights", &["leggings"]),
    ("yoga pants", &["leggings for sport"]),
    ("running tights", &["leggings for sport"]),
    ("t-shirt", &["loose tee"]),
    ("tee-shirt", &["loose tee"]),
    ("tee", &["loose tee"]),
    ("sweater", &["sweatshirt"]),
    ("hoodie", &["sweatshirt"]),
    ("hooded pullover", &["sweatshirt"]),
    ("pullover", &["sweatshirt"]),
    ("jumper", &["sweatshirt"]),
    ("swimming costume", &["swimsuit or leotard"]),
    ("swimwear", &["swimsuit or leotard", "swimsuit with full stretch"]),
    ("bathing suit", &["swimsuit or leotard"]),
    ("bodysuit", &["swimsuit or leotard"]),
    ("baby", &["close garment for an infant, at least 5 % elastane"]),
    ("jacket", &["trousers, skirt or coat with slight stretch", "tailored wear"]),
    ("coat", &["trousers, skirt or coat with slight stretch", "tailored wear"]),
    ("blazer", &["tailored wear"]),
    ("waistcoat", &["tailored wear"]),
    ("trousers", &["trousers, skirt or coat with slight stretch", "fitted trousers in stretch woven"]),
    ("pants", &["trousers, skirt or coat with slight stretch", "fitted trousers in stretch woven"]),
    ("skirt", &["trousers, skirt or coat with slight stretch", "fitted top, dress or skirt"]),
    ("dress", &["fitted top, dress or skirt"]),
    ("top", &["everyday knit top", "fitted top, dress or skirt"]),
];

/// The kinds that another name may mean; none where it is not known.
#[must_use]
pub fn garments(text: &str) -> Option<&'static [&'static str]> {
    GARMENTS.iter().find(|(name, _)| is(text, name)).map(|(_, kinds)| *kinds)
}

#[cfg(test)]
mod tests {
    use tenter_core::SUITS;

    use super::*;

    #[test]
    fn every_kind_is_there() {
        for (name, kinds) in GARMENTS {
            assert!(!kinds.is_empty(), "{name}");
            for kind in *kinds {
                assert!(SUITS.iter().any(|suit| suit.garment == *kind), "{name}: {kind}");
            }
            assert_eq!(garments(&name.to_uppercase()), Some(*kinds));
        }
    }
}
