//! Which part of a garment a role is, by its purpose and by the words of its name.

use tenter_core::making::garment::GarmentPart;

use crate::log::{Purpose, Role};

/// The words by which a role is known, the more particular first.
const WORDS: [(GarmentPart, &[&str]); 18] = [
    (GarmentPart::Elastic, &["elastic"]),
    (GarmentPart::PocketBag, &["pocket bag", "pocket bags", "pocketing", "bags"]),
    (GarmentPart::Interfacing, &["interfacing", "fusible", "canvas"]),
    (GarmentPart::Waistband, &["waistband", "waist band"]),
    (GarmentPart::Neckband, &["neckband", "neck band"]),
    (GarmentPart::HemBand, &["hem band", "hemband"]),
    (GarmentPart::Lining, &["lining", "linings"]),
    (GarmentPart::Facing, &["facing", "facings"]),
    (GarmentPart::Hood, &["hood"]),
    (GarmentPart::Collar, &["collar"]),
    (GarmentPart::Cuff, &["cuff", "cuffs"]),
    (GarmentPart::Rib, &["rib", "ribbing", "bands"]),
    (GarmentPart::Sleeve, &["sleeve", "sleeves"]),
    (GarmentPart::Yoke, &["yoke"]),
    (GarmentPart::Panel, &["panel", "panels", "gusset"]),
    (GarmentPart::Pocket, &["pocket", "pockets"]),
    (GarmentPart::Skirt, &["skirt"]),
    (GarmentPart::Main, &["main", "bodice", "body", "outer", "shell", "fashion"]),
];

/// The part; none where neither its purpose nor its name says it. What lines a hood is a lining.
#[must_use]
pub fn part(role: &Role) -> Option<GarmentPart> {
    let name: Vec<String> = role
        .name
        .split(|c: char| !c.is_alphanumeric())
        .map(str::to_lowercase)
        .filter(|word| !word.is_empty())
        .collect();
    let name = format!(" {} ", name.join(" "));
    let says = |words: &&[&str]| words.iter().any(|word| name.contains(&format!(" {word} ")));
    let named = WORDS.iter().find(|(_, words)| says(words)).map(|(part, _)| *part);
    let by_purpose = match role.purpose {
        Some(Purpose::Lining) => Some(GarmentPart::Lining),
        Some(Purpose::Interfacing) => Some(GarmentPart::Interfacing),
        Some(Purpose::Pocketing) => Some(GarmentPart::PocketBag),
        Some(Purpose::Rib) => named.filter(|part| GarmentPart::Rib.serves(*part)).or(Some(GarmentPart::Rib)),
        Some(Purpose::Outer) | None => None,
    };
    let layered = [GarmentPart::Lining, GarmentPart::Interfacing].into_iter().find(|layer| {
        let words = WORDS.iter().find(|(part, _)| part == layer).map(|(_, words)| words);
        words.is_some_and(says)
    });
    by_purpose.or(layered).or(named)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::log::Id;

    #[test]
    fn a_role_is_known_by_its_purpose_or_its_name() {
        let id = || Id::of(jiff::Timestamp::UNIX_EPOCH, 0);
        let named = |name: &str| part(&Role::named(id(), id(), name));
        for (name, part) in [
            ("main", Some(GarmentPart::Main)),
            ("Pocket bags", Some(GarmentPart::PocketBag)),
            ("patch pockets", Some(GarmentPart::Pocket)),
            ("hood lining", Some(GarmentPart::Lining)),
            ("fusible interfacing", Some(GarmentPart::Interfacing)),
            ("cuff ribbing", Some(GarmentPart::Cuff)),
            ("neck-band", Some(GarmentPart::Neckband)),
            ("bodice", Some(GarmentPart::Main)),
            ("skirt", Some(GarmentPart::Skirt)),
            ("skirt lining", Some(GarmentPart::Lining)),
            ("contrast", None),
            ("striped", None),
        ] {
            assert_eq!(named(name), part, "{name}");
        }
        let rib = Role { purpose: Some(Purpose::Rib), ..Role::named(id(), id(), "bottom") };
        assert_eq!(part(&rib), Some(GarmentPart::Rib));
    }
}
