//! Grains.

use tenter_core::Grain;

use super::Words;

/// Warp, wale and selvedge lie lengthwise, weft and course crosswise.
pub const GRAIN: Words<Grain> = Words { all: &Grain::ALL, word: Grain::word, others, unclear: &[] };

const fn others(grain: Grain) -> &'static [&'static str] {
    match grain {
        Grain::Lengthwise => &[
            "lengthways",
            "longways",
            "length",
            "lengthwise grain",
            "along",
            "along the grain",
            "with the grain",
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
            "on the straight grain",
            "selvedge",
            "selvage",
            "along selvedge",
            "along selvage",
            "along the selvedge",
            "along the selvage",
        ],
        Grain::Crosswise => &[
            "crossways",
            "crosswise grain",
            "cross",
            "crossgrain",
            "on the crossgrain",
            "across",
            "across the grain",
            "width",
            "widthwise",
            "widthways",
            "weft",
            "weftwise",
            "weft way",
            "fill",
            "filling",
            "fillingwise",
            "course",
            "courses",
            "coursewise",
            "selvedge to selvedge",
            "selvage to selvage",
        ],
        Grain::Bias => &["true bias", "on the bias", "bias grain", "diagonal", "45", "45°"],
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_trade_s_words() {
        for word in ["warp", "WALE", "along", "straight", "selvage", "Selvedge", "length-wise", " Lengthwise "] {
            assert_eq!(GRAIN.typed(word), Some(Grain::Lengthwise), "{word}");
        }
        for word in ["weft", "fill", "course", "Across", "cross", "crossgrain", "cross-grain", "Crosswise"] {
            assert_eq!(GRAIN.typed(word), Some(Grain::Crosswise), "{word}");
        }
        for word in ["BIAS", "True bias", "diagonal", "45°"] {
            assert_eq!(GRAIN.typed(word), Some(Grain::Bias), "{word}");
        }
        // The bias to some, the crosswise grain to others.
        for word in ["on the cross", "grain", "ß", "length wise and much more than that"] {
            assert_eq!(GRAIN.typed(word), None, "{word}");
        }
    }
}
