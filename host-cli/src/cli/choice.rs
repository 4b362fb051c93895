//! Options that take one of a few words: the words of the core, each with what the help says of it.

use std::ffi::OsStr;

use clap::builder::{PossibleValue, PossibleValuesParser, TypedValueParser};
use clap::error::ErrorKind;
use clap::{Arg, Command};
use tenter_core::making::elastic::{Edging, Kind};
use tenter_core::making::garment::GarmentKind;
use tenter_core::making::hanging::Piece;
use tenter_core::making::stitch::Stitch;
use tenter_core::making::zip::ZipEnds;
use tenter_core::{Construction, Ends, Grain, Held, Unit};

/// One of a closed enum, in any case.
#[derive(Clone, Copy, Debug)]
pub struct OneOf<T: 'static> {
    all: &'static [T],
    word: fn(T) -> &'static str,
    /// What the words beside those that are shown mean.
    synonym: fn(&str) -> Option<T>,
    help: fn(T) -> &'static str,
}

impl<T: Copy> OneOf<T> {
    fn typed(&self, text: &str) -> Option<T> {
        let exact = self.all.iter().copied().find(|one| (self.word)(*one).eq_ignore_ascii_case(text.trim()));
        exact.or_else(|| (self.synonym)(text))
    }

    fn values(&self) -> Vec<PossibleValue> {
        self.all.iter().map(|one| PossibleValue::new((self.word)(*one)).help((self.help)(*one))).collect()
    }
}

impl<T: Copy + Send + Sync + 'static> TypedValueParser for OneOf<T> {
    type Value = T;

    fn parse_ref(&self, command: &Command, arg: Option<&Arg>, value: &OsStr) -> Result<T, clap::Error> {
        if let Some(one) = value.to_str().and_then(|text| self.typed(text)) {
            return Ok(one);
        }
        // Its complaint lists the words.
        PossibleValuesParser::new(self.values()).parse_ref(command, arg, value)?;
        Err(clap::Error::new(ErrorKind::InvalidValue).with_cmd(command))
    }

    fn possible_values(&self) -> Option<Box<dyn Iterator<Item = PossibleValue> + '_>> {
        Some(Box::new(self.values().into_iter()))
    }
}

const fn none<T>(_: &str) -> Option<T> {
    None
}

/// Grains.
pub const GRAIN: OneOf<Grain> = OneOf {
    all: &Grain::ALL,
    word: Grain::word,
    synonym: Grain::typed,
    help: |grain| match grain {
        Grain::Lengthwise => "Along warp or wales",
        Grain::Crosswise => "Along weft or courses",
        Grain::Bias => "At 45° to both",
    },
};

/// Constructions.
pub const CONSTRUCTION: OneOf<Construction> = OneOf {
    all: &Construction::ALL,
    word: Construction::word,
    synonym: Construction::typed,
    help: |construction| match construction {
        Construction::Woven => "Warp and weft",
        Construction::Knit => "Wales and courses",
        Construction::Other => "Felt, film, net; or not known",
    },
};

/// Ends that are read; their number does too.
pub const ENDS: OneOf<Ends> = OneOf {
    all: &Ends::ALL,
    word: Ends::word,
    synonym: |text| match text {
        "1" => Some(Ends::One),
        "2" => Some(Ends::Both),
        _ => None,
    },
    help: |ends| match ends {
        Ends::One => "One mark is held at zero",
        Ends::Both => "Both marks are read",
    },
};

/// Ways of holding.
pub const HELD: OneOf<Held> = OneOf {
    all: &Held::ALL,
    word: Held::word,
    synonym: none,
    help: |held| match held {
        Held::Flat => "One layer, away from edges",
        Held::Folded => "Folded along the pull",
        Held::Strip => "A cut strip",
        Held::Loop => "A sewn loop",
    },
};

/// Units of the text.
pub const UNIT: OneOf<Unit> = OneOf {
    all: &[Unit::Mm, Unit::Cm, Unit::Inch],
    word: Unit::symbol,
    synonym: none,
    help: |unit| match unit {
        Unit::Mm => "Millimetres",
        Unit::Cm => "Centimetres",
        Unit::Inch => "Inches",
    },
};

/// Stitches.
pub const STITCH: OneOf<Stitch> = OneOf {
    all: &Stitch::ALL,
    word: Stitch::word,
    synonym: none,
    help: |stitch| match stitch {
        Stitch::Straight => "Lockstitch, straight",
        Stitch::NarrowZigzag => "Zigzag 0.5 to 1 mm wide",
        Stitch::Triple => "Straight triple stitch",
        Stitch::WideZigzag => "Zigzag 3 mm wide and more",
        Stitch::Overlock => "Overlock",
        Stitch::TwinNeedle => "Twin needle",
        Stitch::Coverstitch => "Coverstitch",
    },
};

/// Layers of what hangs.
pub const PIECE: OneOf<Piece> = OneOf {
    all: &Piece::ALL,
    word: Piece::word,
    synonym: none,
    help: |piece| match piece {
        Piece::Strip => "One layer",
        Piece::Loop => "Two layers",
    },
};

/// Kinds of elastic.
pub const ELASTIC: OneOf<Kind> = OneOf {
    all: &Kind::ALL,
    word: Kind::word,
    synonym: none,
    help: |kind| match kind {
        Kind::Firm => "Woven, or one that does not roll",
        Kind::Soft => "Knitted",
        Kind::Braided => "Braided",
        Kind::Ribbing => "Ribbing used as a band",
    },
};

/// Where elastic goes.
pub const EDGING: OneOf<Edging> = OneOf {
    all: &Edging::ALL,
    word: Edging::word,
    synonym: none,
    help: |edging| match edging {
        Edging::Waist => "Round the waist",
        Edging::SnugWaist => "Round the waist, snug",
        Edging::Edge => "Along an edge",
        Edging::SwimLegFront => "Along the front of a swim leg",
        Edging::SwimLegBack => "Along the back of a swim leg",
        Edging::Wrist => "Round a wrist",
        Edging::Leg => "Round an ankle, or the leg of trousers or briefs",
        Edging::Opening => "Round a neck or cuff opening",
    },
};

/// Kinds of garment.
pub const GARMENT_KIND: OneOf<GarmentKind> = OneOf {
    all: &GarmentKind::ALL,
    word: GarmentKind::word,
    synonym: none,
    help: |kind| match kind {
        GarmentKind::UnlinedJacket => "A woven jacket without a lining",
        GarmentKind::LinedCoat => "A lined coat",
        GarmentKind::HoodedPullover => "A knit pullover with a hood",
        GarmentKind::Skirt => "A skirt",
        GarmentKind::Trousers => "Trousers other than jeans",
        GarmentKind::Jeans => "Jeans",
        GarmentKind::Shirt => "A woven shirt or blouse",
        GarmentKind::Dress => "A dress",
        GarmentKind::TShirt => "A knit top with a neckband",
        GarmentKind::Leggings => "Leggings or tights",
        GarmentKind::Swimwear => "Swimwear, a leotard, a bra top",
        GarmentKind::ChildsOuterwear => "A child's jacket, coat or anorak",
    },
};

/// Ends of a zip.
pub const ZIP_ENDS: OneOf<ZipEnds> = OneOf {
    all: &ZipEnds::ALL,
    word: ZipEnds::word,
    synonym: none,
    help: |ends| match ends {
        ZipEnds::Closed => "Closed at the bottom",
        ZipEnds::Open => "Parts at the bottom",
    },
};

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_trade_s_words_are_taken_in_any_case() {
        for (text, grain) in
            [("crosswise", Grain::Crosswise), ("WEFT", Grain::Crosswise), ("cross-grain", Grain::Crosswise)]
        {
            assert_eq!(GRAIN.typed(text), Some(grain), "{text}");
        }
        assert_eq!(CONSTRUCTION.typed("Jersey"), Some(Construction::Knit));
        assert_eq!(ENDS.typed("2"), Some(Ends::Both));
        assert_eq!(UNIT.typed("In"), Some(Unit::Inch));
        assert_eq!(EDGING.typed("snug-waist"), Some(Edging::SnugWaist));
        assert_eq!(GRAIN.typed("up"), None);
    }
}
