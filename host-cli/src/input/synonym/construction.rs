//! Constructions: names of weaves and of knits.

use tenter_core::Construction;

use super::Words;

/// Cloths that are woven or knitted alike, such as velvet, satin and crepe, are in neither list.
pub const CONSTRUCTION: Words<Construction> =
    Words { all: &Construction::ALL, word: Construction::word, others, unclear: &[] };

const fn others(construction: Construction) -> &'static [&'static str] {
    match construction {
        Construction::Woven => &[
            "wovens",
            "weave",
            "woven fabric",
            "woven cloth",
            "stretch woven",
            "plain weave",
            "twill",
            "twill weave",
            "canvas",
            "denim",
            "stretch denim",
            "drill",
            "gabardine",
            "gaberdine",
            "poplin",
            "lawn",
            "batiste",
            "corduroy",
            "cord",
            "seersucker",
            "voile",
            "chambray",
            "calico",
            "organza",
            "chiffon",
            "tweed",
            "sateen",
            "ripstop",
        ],
        Construction::Knit => &[
            "knits",
            "knitted",
            "knitted fabric",
            "knitted cloth",
            "knit fabric",
            "stretch knit",
            "jersey",
            "jersey knit",
            "single jersey",
            "double jersey",
            "double knit",
            "sweater knit",
            "weft knit",
            "warp knit",
            "rib",
            "ribbed",
            "ribbing",
            "rib knit",
            "interlock",
            "interlock knit",
            "tricot",
            "ponte",
            "sweatshirting",
            "french terry",
            "loopback",
        ],
        Construction::Other => &["unknown", "felt", "film", "net", "leather", "nonwoven", "neither", "lace", "none"],
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn weaves_and_knits() {
        for word in ["Knit", "KNITTED", "jersey", "Interlock", "rib", "double-knit"] {
            assert_eq!(CONSTRUCTION.typed(word), Some(Construction::Knit), "{word}");
        }
        for word in ["Woven", "twill", "Canvas", "stretch woven"] {
            assert_eq!(CONSTRUCTION.typed(word), Some(Construction::Woven), "{word}");
        }
        assert_eq!(CONSTRUCTION.typed("non-woven"), Some(Construction::Other));
        for word in ["velvet", "satin", "crepe", "softshell"] {
            assert_eq!(CONSTRUCTION.typed(word), None, "{word}");
        }
    }
}
