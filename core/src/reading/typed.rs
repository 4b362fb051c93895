//! Words of the trade, as people type them.

use crate::reading::construction::Construction;
use crate::reading::pull_test::Grain;

/// Whether a text is one of `words`: in any case, a hyphen for a space or nothing between.
fn is_one_of(text: &str, words: &[&str]) -> bool {
    let letters = |text: &str| text.trim().bytes().filter(|c| !matches!(c, b' ' | b'-' | b'_')).collect::<Letters>();
    let typed = letters(text);
    words.iter().any(|word| typed == letters(word))
}

/// The letters of a word in lower case; what is longer is no word that is known here.
#[derive(PartialEq)]
struct Letters(heapless::Vec<u8, 24>);

impl FromIterator<u8> for Letters {
    fn from_iter<T: IntoIterator<Item = u8>>(letters: T) -> Self {
        let mut word = heapless::Vec::new();
        for letter in letters {
            if word.push(letter.to_ascii_lowercase()).is_err() {
                word.clear();
                break;
            }
        }
        Self(word)
    }
}

impl Grain {
    /// The grain that a person means: the word for it, or another that the trade has for the same. Warp, wale and
    /// selvedge lie lengthwise, weft and course crosswise (common practice, no source).
    ///
    /// ```
    /// use tenter_core::Grain;
    ///
    /// assert_eq!(Grain::typed("Weft"), Some(Grain::Crosswise));
    /// assert_eq!(Grain::typed("straight grain"), Some(Grain::Lengthwise));
    /// assert_eq!(Grain::typed("up"), None);
    /// ```
    #[must_use]
    pub fn typed(text: &str) -> Option<Self> {
        const LENGTHWISE: [&str; 19] = [
            "lengthwise",
            "lengthways",
            "length",
            "lengthwise grain",
            "along",
            "down",
            "warp",
            "warpwise",
            "warp way",
            "wale",
            "wales",
            "walewise",
            "straight",
            "straight grain",
            "straight of grain",
            "selvedge",
            "selvage",
            "along selvedge",
            "along selvage",
        ];
        const CROSSWISE: [&str; 16] = [
            "crosswise",
            "crossways",
            "crosswise grain",
            "cross",
            "crossgrain",
            "across",
            "across the grain",
            "width",
            "widthwise",
            "weft",
            "weftwise",
            "weft way",
            "filling",
            "course",
            "courses",
            "coursewise",
        ];
        const BIAS: [&str; 6] = ["bias", "true bias", "on the bias", "diagonal", "45", "45°"];
        if is_one_of(text, &LENGTHWISE) {
            Some(Self::Lengthwise)
        } else if is_one_of(text, &CROSSWISE) {
            Some(Self::Crosswise)
        } else if is_one_of(text, &BIAS) {
            Some(Self::Bias)
        } else {
            None
        }
    }
}

impl Construction {
    /// The construction that a person means: the word for it, or the name of a weave or a knit (common practice, no
    /// source).
    ///
    /// ```
    /// use tenter_core::Construction;
    ///
    /// assert_eq!(Construction::typed("Jersey"), Some(Construction::Knit));
    /// assert_eq!(Construction::typed("twill"), Some(Construction::Woven));
    /// assert_eq!(Construction::typed("velvet"), None); // Woven or knitted.
    /// ```
    #[must_use]
    pub fn typed(text: &str) -> Option<Self> {
        const WOVEN: [&str; 16] = [
            "woven",
            "wovens",
            "weave",
            "woven fabric",
            "woven cloth",
            "plain weave",
            "twill",
            "canvas",
            "denim",
            "gabardine",
            "gaberdine",
            "poplin",
            "corduroy",
            "seersucker",
            "voile",
            "chambray",
        ];
        const KNIT: [&str; 18] = [
            "knit",
            "knits",
            "knitted",
            "knitted fabric",
            "knitted cloth",
            "knit fabric",
            "jersey",
            "single jersey",
            "double jersey",
            "double knit",
            "weft knit",
            "warp knit",
            "rib",
            "ribbing",
            "rib knit",
            "interlock",
            "tricot",
            "ponte",
        ];
        const OTHER: [&str; 10] =
            ["other", "unknown", "felt", "film", "net", "leather", "nonwoven", "neither", "lace", "none"];
        if is_one_of(text, &WOVEN) {
            Some(Self::Woven)
        } else if is_one_of(text, &KNIT) {
            Some(Self::Knit)
        } else if is_one_of(text, &OTHER) {
            Some(Self::Other)
        } else {
            None
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_word_means_itself() {
        for grain in Grain::ALL {
            assert_eq!(Grain::typed(grain.word()), Some(grain));
        }
        for construction in Construction::ALL {
            assert_eq!(Construction::typed(construction.word()), Some(construction));
        }
    }

    #[test]
    fn words_of_the_trade() {
        for word in ["warp", "WALE", "along", "straight", "selvage", "Selvedge", "length-wise", " Lengthwise "] {
            assert_eq!(Grain::typed(word), Some(Grain::Lengthwise), "{word}");
        }
        for word in ["weft", "course", "Across", "cross", "crossgrain", "cross-grain", "Crosswise"] {
            assert_eq!(Grain::typed(word), Some(Grain::Crosswise), "{word}");
        }
        for word in ["BIAS", "diagonal", "45°"] {
            assert_eq!(Grain::typed(word), Some(Grain::Bias), "{word}");
        }
        for word in ["", " ", "grain", "length wise and much more than that", "ß"] {
            assert_eq!(Grain::typed(word), None, "{word}");
        }
        assert_eq!(Construction::typed("Knit"), Some(Construction::Knit));
        assert_eq!(Construction::typed("non-woven"), Some(Construction::Other));
        assert_eq!(Construction::typed(""), None);
    }
}
