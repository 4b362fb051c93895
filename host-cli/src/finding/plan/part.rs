//! Which part of a garment a role is, by its purpose and by the words of its name.

use tenter_core::making::garment::Part;

use crate::log::{Purpose, Role};

/// The words by which a role is known, the more particular first.
const WORDS: [(Part, &[&str]); 17] = [
    (Part::Elastic, &["elastic"]),
    (Part::PocketBag, &["pocket bag", "pocket bags", "pocketing", "bags"]),
    (Part::Interfacing, &["interfacing", "fusible", "canvas"]),
    (Part::Waistband, &["waistband", "waist band"]),
    (Part::Neckband, &["neckband", "neck band"]),
    (Part::HemBand, &["hem band", "hemband"]),
    (Part::Lining, &["lining", "linings"]),
    (Part::Facing, &["facing", "facings"]),
    (Part::Hood, &["hood"]),
    (Part::Collar, &["collar"]),
    (Part::Cuff, &["cuff", "cuffs"]),
    (Part::Rib, &["rib", "ribbing", "bands"]),
    (Part::Sleeve, &["sleeve", "sleeves"]),
    (Part::Yoke, &["yoke"]),
    (Part::Panel, &["panel", "panels", "gusset"]),
    (Part::Pocket, &["pocket", "pockets"]),
    (Part::Main, &["main", "body", "outer", "shell", "fashion"]),
];

/// The part; none where neither its purpose nor its name says it. What lines a hood is a lining.
#[must_use]
pub fn part(role: &Role) -> Option<Part> {
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
        Some(Purpose::Lining) => Some(Part::Lining),
        Some(Purpose::Interfacing) => Some(Part::Interfacing),
        Some(Purpose::Pocketing) => Some(Part::PocketBag),
        Some(Purpose::Rib) => named.filter(|part| Part::Rib.serves(*part)).or(Some(Part::Rib)),
        Some(Purpose::Outer) | None => None,
    };
    let layered = [Part::Lining, Part::Interfacing].into_iter().find(|layer| {
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
            ("main", Some(Part::Main)),
            ("Pocket bags", Some(Part::PocketBag)),
            ("patch pockets", Some(Part::Pocket)),
            ("hood lining", Some(Part::Lining)),
            ("fusible interfacing", Some(Part::Interfacing)),
            ("cuff ribbing", Some(Part::Cuff)),
            ("neck-band", Some(Part::Neckband)),
            ("contrast", None),
            ("striped", None),
        ] {
            assert_eq!(named(name), part, "{name}");
        }
        let rib = Role { purpose: Some(Purpose::Rib), ..Role::named(id(), id(), "bottom") };
        assert_eq!(part(&rib), Some(Part::Rib));
    }
}
