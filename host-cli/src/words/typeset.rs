//! Our words as a page or a picture prints them: a true minus, and no number parted from its unit.

/// What stands behind a number.
const UNITS: [&str; 12] = ["%", "mm", "cm", "m", "in", "yd", "g", "N", "s", "min", "h", "points"];

fn is_unit(word: &str) -> bool {
    let word = word.trim_end_matches([',', ';', ':', '.', ')', ']']);
    UNITS.contains(&word.split('/').next().unwrap_or_default())
}

fn is_number(word: &str) -> bool {
    word.ends_with(|c: char| c.is_ascii_digit())
}

/// A text of ours in which no number is parted from its unit, nor from what it is worth, at the end of a line, and
/// numbers below zero have a true minus.
///
/// ```
/// use tenter::words::typeset::set;
///
/// assert_eq!(set("lengthwise -2.0 % ± 0.3"), "lengthwise −2.0\u{a0}%\u{a0}±\u{a0}0.3");
/// assert_eq!(set("view -3 of 7"), "view -3 of 7");
/// ```
#[must_use]
pub fn set(text: &str) -> String {
    let words: Vec<&str> = text.split(' ').collect();
    let mut set = String::with_capacity(text.len());
    let mut before = "";
    for (at, word) in words.iter().enumerate() {
        if at > 0 {
            let together = is_number(before) && is_unit(word)
                || *word == "±" && !before.is_empty()
                || before == "±" && word.starts_with(|c: char| c.is_ascii_digit());
            set.push(if together { '\u{a0}' } else { ' ' });
        }
        let measured = words.get(at.saturating_add(1)).is_some_and(|next| is_unit(next));
        set.push_str(&if measured { minus(word) } else { (*word).to_owned() });
        before = word;
    }
    set
}

/// A number with a true minus, if it is below zero.
#[must_use]
pub fn minus(number: &str) -> String {
    let below_zero = |rest: &str| rest.starts_with(|c: char| c.is_ascii_digit());
    let (open, number) = number.strip_prefix('(').map_or(("", number), |number| ("(", number));
    match number.strip_prefix('-').filter(|rest| below_zero(rest)) {
        Some(rest) => format!("{open}−{rest}"),
        None => format!("{open}{number}"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_stay_with_their_units() {
        for (text, want) in [
            ("crosswise 8.5 % ± 0.8, slight", "crosswise 8.5\u{a0}%\u{a0}±\u{a0}0.8, slight"),
            ("392 g/m², 1.20 m of 150 cm", "392\u{a0}g/m², 1.20\u{a0}m of 150\u{a0}cm"),
            ("after 60 s (-3 cm)", "after 60\u{a0}s (−3\u{a0}cm)"),
            ("7 in all", "7\u{a0}in all"),
            ("± and black strip", "± and black strip"),
            ("", ""),
        ] {
            assert_eq!(set(text), want);
        }
    }
}
