//! Our words as a page or a picture prints them: a true minus, and no number parted from its unit.

use crate::words::tied::tied;

/// A text of ours in which no line ends within a figure, and numbers below zero have a true minus.
///
/// ```
/// use tenter::words::typeset::set;
///
/// assert_eq!(set("lengthwise -2.0 % ± 0.3"), "lengthwise −2.0\u{a0}%\u{a0}±\u{a0}0.3");
/// assert_eq!(set("view -3 of 7"), "view -3 of 7");
/// ```
#[must_use]
pub fn set(text: &str) -> String {
    let set = |figure: &str| if figure.contains('\u{a0}') { minus(figure) } else { figure.to_owned() };
    tied(text).split(' ').map(set).collect::<Vec<_>>().join(" ")
}

/// A number with a true minus, if it is below zero.
#[must_use]
pub fn minus(number: &str) -> String {
    let (open, number) = number.strip_prefix('(').map_or(("", number), |number| ("(", number));
    match number.strip_prefix('-').filter(|rest| rest.starts_with(|c: char| c.is_ascii_digit())) {
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
            ("after 60 s (-3 cm)", "after 60\u{a0}s (−3\u{a0}cm)"),
            ("± and black strip", "± and black strip"),
            ("", ""),
        ] {
            assert_eq!(set(text), want);
        }
    }
}
