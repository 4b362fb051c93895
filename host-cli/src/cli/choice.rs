//! Options that take one of a few words: the words of the core, each with what the help says of it.

use std::ffi::OsStr;

use clap::builder::{PossibleValue, PossibleValuesParser, TypedValueParser};
use clap::error::ErrorKind;
use clap::{Arg, Command};
use tenter_core::making::elastic::{Edging, Kind};
use tenter_core::making::garment::{GarmentKind, SeamKind, Stage};
use tenter_core::making::hanging::Specimen;
use tenter_core::making::stitch::Stitch;
use tenter_core::making::yardage::ShopCut;
use tenter_core::making::zip::ZipEnds;
use tenter_core::{Construction, Ends, Grain, Held, Unit};

use crate::input::synonym::{self, Words};

/// One of a closed list, by any of its words.
#[derive(Clone, Copy, Debug)]
pub struct OneOf<T: 'static> {
    words: Words<T>,
    help: fn(T) -> &'static str,
}

impl<T: Copy> OneOf<T> {
    fn values(&self, of: &[T]) -> Vec<PossibleValue> {
        of.iter().map(|one| PossibleValue::new((self.words.word)(*one)).help((self.help)(*one))).collect()
    }
}

impl<T: Copy + Send + Sync + 'static> TypedValueParser for OneOf<T> {
    type Value = T;

    fn parse_ref(&self, command: &Command, arg: Option<&Arg>, value: &OsStr) -> Result<T, clap::Error> {
        let text = value.to_string_lossy();
        if let Some(one) = self.words.typed(&text) {
            return Ok(one);
        }
        // Its complaint lists the words.
        PossibleValuesParser::new(self.values(self.words.choice(&text))).parse_ref(command, arg, value)?;
        Err(clap::Error::new(ErrorKind::InvalidValue).with_cmd(command))
    }

    fn possible_values(&self) -> Option<Box<dyn Iterator<Item = PossibleValue> + '_>> {
        Some(Box::new(self.values(self.words.all).into_iter()))
    }
}

/// Grains.
pub const GRAIN: OneOf<Grain> = OneOf {
    words: synonym::GRAIN,
    help: |grain| match grain {
        Grain::Lengthwise => "Along warp or wales",
        Grain::Crosswise => "Along weft or courses",
        Grain::Bias => "At 45° to both",
    },
};

/// Stages of the work on a garment.
pub const STAGE: OneOf<Stage> = OneOf {
    words: synonym::STAGE,
    help: |stage| match stage {
        Stage::Buy => "What is bought",
        Stage::Prewash => "The wash before cutting",
        Stage::Sample => "The sample seam",
        Stage::Cut => "Laying out and cutting",
        Stage::Fuse => "Interfacing",
        Stage::Mark => "Marking and stay-stitching",
        Stage::Flat => "Darts, fly or zip, collar and cuffs",
        Stage::Pockets => "Pockets",
        Stage::Eyelets => "Eyelets and cord",
        Stage::Seams => "The seams",
        Stage::Zip => "A separating zip",
        Stage::Facing => "Facing, lining, buttonholes or fastening",
        Stage::Casings => "Casings and elastic",
        Stage::Hems => "Hems",
        Stage::Press => "The last press",
    },
};

/// Constructions.
pub const CONSTRUCTION: OneOf<Construction> = OneOf {
    words: synonym::CONSTRUCTION,
    help: |construction| match construction {
        Construction::Woven => "Warp and weft",
        Construction::Knit => "Wales and courses",
        Construction::Other => "Felt, film, net; or not known",
    },
};

/// Ends that are read.
pub const ENDS: OneOf<Ends> = OneOf {
    words: synonym::ENDS,
    help: |ends| match ends {
        Ends::One => "One mark is held at zero",
        Ends::Both => "Both marks are read",
    },
};

/// Ways of holding.
pub const HELD: OneOf<Held> = OneOf {
    words: synonym::HELD,
    help: |held| match held {
        Held::Flat => "One layer, away from edges",
        Held::Folded => "Folded along the pull",
        Held::Strip => "A cut strip",
        Held::Loop => "A sewn loop",
    },
};

/// Units of the text.
pub const UNIT: OneOf<Unit> = OneOf {
    words: synonym::UNIT,
    help: |unit| match unit {
        Unit::Mm => "Millimetres",
        Unit::Cm => "Centimetres",
        Unit::Inch => "Inches",
    },
};

/// What shops cut cloth to.
pub const SHOP_CUT: OneOf<ShopCut> = OneOf {
    words: synonym::SHOP_CUT,
    help: |cut| match cut {
        ShopCut::TenCentimetres => "Every ten centimetres",
        ShopCut::FiveCentimetres => "Every five centimetres",
        ShopCut::EighthYard => "Every eighth of a yard",
    },
};

/// Stitches.
pub const STITCH: OneOf<Stitch> = OneOf {
    words: synonym::STITCH,
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

/// Seams.
pub const SEAM: OneOf<SeamKind> = OneOf {
    words: synonym::SEAM,
    help: |seam| match seam {
        SeamKind::Panel => "Between panels with straight edges; lengthwise",
        SeamKind::Princess => "Between panels that shape the body; lengthwise, curved",
        SeamKind::Yoke => "Across back, front or hip; crosswise",
        SeamKind::CentreBack => "Down the back; lengthwise",
        SeamKind::Shoulder => "Over the shoulder; slanting",
        SeamKind::HoodCentre => "Over the head; curved",
        SeamKind::HoodToNeck => "A hood on the neck",
        SeamKind::CollarToNeck => "A collar on the neck",
        SeamKind::Neckband => "A band round the neck of a knit",
        SeamKind::Armhole => "A sleeve in the armhole; curved",
        SeamKind::Raglan => "A raglan sleeve to front and back; slanting",
        SeamKind::Sleeve => "Along the underside of a sleeve; lengthwise",
        SeamKind::Side => "Down the side of the body; lengthwise",
        SeamKind::SleeveAndSide => "Sleeve and side in one; lengthwise",
        SeamKind::Waist => "Bodice to skirt; crosswise",
        SeamKind::Waistband => "A waistband on the waist",
        SeamKind::Cuff => "A cuff on a sleeve or a leg",
        SeamKind::HemBand => "A band on the lower edge; crosswise",
        SeamKind::OutsideLeg => "Down the outside of a leg; lengthwise",
        SeamKind::InsideLeg => "Up the inside of a leg; slanting",
        SeamKind::Crotch => "From front to back; curved",
        SeamKind::BackSeat => "The back half of the crotch; curved",
        SeamKind::Strap => "A shoulder strap; lengthwise",
        SeamKind::FrontEdge => "The front edge with its zip; lengthwise, held firm",
        SeamKind::LiningToFacing => "The lining on the facings; lengthwise",
    },
};

/// Layers of what hangs.
pub const PIECE: OneOf<Specimen> = OneOf {
    words: synonym::PIECE,
    help: |piece| match piece {
        Specimen::Strip => "One layer",
        Specimen::Loop => "Two layers",
    },
};

/// Kinds of elastic.
pub const ELASTIC: OneOf<Kind> = OneOf {
    words: synonym::ELASTIC,
    help: |kind| match kind {
        Kind::Firm => "Woven, or one that does not roll",
        Kind::Soft => "Knitted",
        Kind::Braided => "Braided",
        Kind::Ribbing => "Ribbing used as a band",
    },
};

/// Where elastic goes.
pub const EDGING: OneOf<Edging> = OneOf {
    words: synonym::EDGING,
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
    words: synonym::KIND,
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
    words: synonym::ZIP_ENDS,
    help: |ends| match ends {
        ZipEnds::Closed => "Closed at the bottom",
        ZipEnds::Open => "Parts at the bottom",
    },
};
