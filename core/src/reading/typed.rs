//! Words of the trade, as people type them.

use crate::reading::construction::Construction;
use crate::reading::pull_test::Grain;

/// Whether a text is a word or one of its synonyms.
fn is_one_of(text: &str, word: &str, synonyms: &[&str]) -> bool {
    let letters = |text: &str| text.trim().bytes().filter(|c| !matches!(c, b' ' | b'-' | b'_')).collect::<Letters>();
    let typed = letters(text);
    typed == letters(word) || synonyms.iter().any(|word| typed == letters(word))
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
    /// Other words for it that the trade has: warp, wale and selvedge lie lengthwise, weft and course crosswise (common
    /// practice, no source).
    ///
    /// ```
    /// assert!(tenter_core::Grain::Crosswise.synonyms().contains(&"weft"));
    /// ```
    #[must_use]
    pub const fn synonyms(self) -> &'static [&'static str] {
        match self {
            Self::Lengthwise => &[
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
            ],
            Self::Crosswise => &[
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
            ],
            Self::Bias => &["true bias", "on the bias", "diagonal", "45", "45°"],
        }
    }

    /// The grain that a person means: the word for it or one of its [`synonyms`](Self::synonyms), in any case, with
    /// hyphens, spaces or nothing between.
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
        Self::ALL.into_iter().find(|grain| is_one_of(text, grain.word(), grain.synonyms()))
    }
}

impl Construction {
    /// Other words for it: names of weaves and of knits (common practice, no source).
    ///
    /// ```
    /// assert!(tenter_core::Construction::Knit.synonyms().contains(&"jersey"));
    /// ```
    #[must_use]
    pub const fn synonyms(self) -> &'static [&'static str] {
        match self {
            Self::Woven => &[
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
            ],
            Self::Knit => &[
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
            ],
            Self::Other => &["unknown", "felt", "film", "net", "leather", "nonwoven", "neither", "lace", "none"],
        }
    }

    /// The construction that a person means: the word for it or one of its [`synonyms`](Self::synonyms), in any case,
    /// with hyphens, spaces or nothing between.
    ///
    /// ```
    /// use tenter_core::Construction;
    ///
    /// assert_eq!(Construction::typed("Jersey"), Some(Construction::Knit));
    /// assert_eq!(Construction::typed("velvet"), None); // Woven or knitted.
    /// ```
    #[must_use]
    pub fn typed(text: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|one| is_one_of(text, one.word(), one.synonyms()))
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
