//! Which of some names a text means: all of it, or a part that only one has.

use super::synonym::is;

/// Which names a text means, by their places.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum NameMatch {
    /// None.
    None,
    /// This one.
    One(usize),
    /// Any of these.
    Several(Vec<usize>),
}

/// The names that are equal to a text, whatever its capitals and spaces; else those of which some word begins with each
/// word of it; else those that hold each.
///
/// ```
/// use tenter::input::named::{NameMatch, named};
///
/// let names = ["Slate rib", "Moor canvas", "Doorway rib"];
/// assert_eq!(named("moor", &names), NameMatch::One(1));
/// assert_eq!(named("RIB door", &names), NameMatch::One(2));
/// assert_eq!(named("rib", &names), NameMatch::Several(vec![0, 2]));
/// ```
#[must_use]
pub fn named(text: &str, names: &[impl AsRef<str>]) -> NameMatch {
    let words: Vec<String> = text.split_whitespace().map(str::to_lowercase).collect();
    if words.is_empty() {
        return NameMatch::None;
    }
    let begun = |name: &str| {
        let own: Vec<String> = name.split(|c: char| !c.is_alphanumeric()).map(str::to_lowercase).collect();
        words.iter().all(|word| own.iter().any(|own| own.starts_with(word.as_str())))
    };
    let held = |name: &str| {
        let name = name.to_lowercase();
        words.iter().all(|word| name.contains(word.as_str()))
    };
    let equal = |name: &str| is(text, name);
    let rules: [&dyn Fn(&str) -> bool; 3] = [&equal, &begun, &held];
    for rule in rules {
        let found: Vec<usize> =
            names.iter().enumerate().filter(|(_, name)| rule(name.as_ref())).map(|(place, _)| place).collect();
        match found.as_slice() {
            [] => {}
            [one] => return NameMatch::One(*one),
            _ => return NameMatch::Several(found),
        }
    }
    NameMatch::None
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    #[test]
    fn all_of_a_name_or_a_part_that_one_has() {
        let names = ["Slate rib", "Moor canvas", "Doorway rib", "Rib"];
        assert_eq!(named("SLATE  rib", &names), NameMatch::One(0));
        assert_eq!(named("rib", &names), NameMatch::One(3), "all of it");
        assert_eq!(named("ri", &names), NameMatch::Several(vec![0, 2, 3]));
        assert_eq!(named("oorway", &names), NameMatch::One(2), "inside a word");
        assert_eq!(named("canvas moor", &names), NameMatch::One(1), "in any order");
        for text in ["", "  ", "felt", "slate canvas"] {
            assert_eq!(named(text, &names), NameMatch::None, "{text}");
        }
        assert_eq!(named("moor", &["Moor", "MOOR"]), NameMatch::Several(vec![0, 1]));
    }

    proptest! {
        /// A name means itself, in any capitals; whatever is typed, the places are those of names.
        #[test]
        fn a_name_means_itself(names in prop::collection::vec("[A-Za-zß€ ]{0,6}[a-z]", 1..6), text in "\\PC{0,6}") {
            for (place, name) in names.iter().enumerate() {
                match named(&name.to_uppercase().to_lowercase(), &names) {
                    NameMatch::One(one) => prop_assert!(one == place || is(&names[one], &name.to_uppercase().to_lowercase())),
                    NameMatch::Several(several) => prop_assert!(several.iter().all(|one| *one < names.len())),
                    // A capital sharp s comes back as two letters.
                    NameMatch::None => prop_assert!(name.contains('ß')),
                }
            }
            let _ = named(&text, &names);
        }
    }
}
