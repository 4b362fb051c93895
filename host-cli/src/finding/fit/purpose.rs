//! What a cloth is made for, and what a role wants it for: as it was said, or else as the name has it.

use tenter_core::making::care::Finish;

use crate::log::{Fabric, Purpose, Role};

/// What a cloth is made for: as it was said, else as its finish or its name has it; none where nothing tells.
#[must_use]
pub fn of_cloth(fabric: &Fabric) -> Option<Purpose> {
    let fusible = (fabric.finish == Some(Finish::Fusible)).then_some(Purpose::Interfacing);
    fabric.purpose.or(fusible).or_else(|| named(&fabric.name))
}

/// What a role wants a cloth for: as it was said, else as its name has it, else the outside; none for what is no layer of
/// the garment, such as elastic.
#[must_use]
pub fn of_role(role: &Role) -> Option<Purpose> {
    let notions = ["elastic", "cord", "drawstring", "tape", "binding"];
    let is_notion = words(&role.name).any(|word| notions.contains(&word.as_str()));
    role.purpose.or_else(|| named(&role.name)).or((!is_notion).then_some(Purpose::Outer))
}

/// Whether a cloth made for one thing may serve for the other. Ribbing is seen on the outside as well.
#[must_use]
pub fn serves(made_for: Purpose, wanted: Purpose) -> bool {
    match (made_for, wanted) {
        (Purpose::Rib, Purpose::Outer) | (Purpose::Outer, Purpose::Rib) => true,
        // Pocket bags are cut from lining as well.
        (Purpose::Lining | Purpose::Outer, Purpose::Pocketing) => true,
        _ => made_for == wanted,
    }
}

fn named(name: &str) -> Option<Purpose> {
    let mut pockets = false;
    for word in words(name) {
        match word.as_str() {
            "lining" | "linings" => return Some(Purpose::Lining),
            "interfacing" | "interlining" | "fusing" => return Some(Purpose::Interfacing),
            "pocketing" => return Some(Purpose::Pocketing),
            "rib" | "ribbing" => return Some(Purpose::Rib),
            "bag" | "bags" if pockets => return Some(Purpose::Pocketing),
            word => pockets = matches!(word, "pocket" | "pockets"),
        }
    }
    None
}

fn words(name: &str) -> impl Iterator<Item = String> {
    name.split(|c: char| !c.is_alphanumeric()).filter(|word| !word.is_empty()).map(str::to_lowercase)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::log::Ids;

    #[test]
    fn a_name_tells_where_nothing_was_said() {
        let mut ids = Ids::default();
        let mut cloth = Fabric::named(ids.next(), 1, "Wings lining");
        assert_eq!(of_cloth(&cloth), Some(Purpose::Lining));
        cloth.purpose = Some(Purpose::Outer);
        assert_eq!(of_cloth(&cloth), Some(Purpose::Outer));
        let fused = Fabric { finish: Some(Finish::Fusible), ..Fabric::named(ids.next(), 2, "thin web") };
        assert_eq!(of_cloth(&fused), Some(Purpose::Interfacing));
        assert_eq!(of_cloth(&Fabric::named(ids.next(), 3, "Unlined ribbon linen")), None);
    }

    #[test]
    fn a_role_wants_an_outer_cloth_unless_it_is_called_otherwise() {
        let mut ids = Ids::default();
        for (name, want) in [
            ("main", Some(Purpose::Outer)),
            ("Sleeve lining", Some(Purpose::Lining)),
            ("waistband interfacing", Some(Purpose::Interfacing)),
            ("pocket bags", Some(Purpose::Pocketing)),
            ("patch pockets", Some(Purpose::Outer)),
            ("ribbing", Some(Purpose::Rib)),
            ("elastic", None),
        ] {
            let role = Role::named(ids.next(), ids.next(), name);
            assert_eq!(of_role(&role), want, "{name}");
        }
        assert!(!serves(Purpose::Lining, Purpose::Outer) && !serves(Purpose::Outer, Purpose::Lining));
        assert!(serves(Purpose::Rib, Purpose::Outer) && serves(Purpose::Lining, Purpose::Pocketing));
    }
}
