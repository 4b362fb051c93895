//! The work on a garment, in words: a verb, and what it is done to.

use tenter_core::Unit;
use tenter_core::making::garment::{
    ClothCondition, CordAt, Detail, Details, GarmentKind, Hem, Notion, PieceMark, Stage, StayedEdge, TaskReason, Work,
    Zone,
};

/// A verb and its object.
pub(super) type Told = (&'static str, &'static str);

/// Any work that is told in one sentence.
#[must_use]
pub(super) const fn told(work: Work) -> Told {
    match work {
        Work::LayOneWay => ("lay", "all pieces one way up"),
        Work::LayFlat => ("keep", "the cloth from hanging off the table while you cut and sew"),
        Work::Clip => ("use", "clips and no pins: their holes would stay"),
        Work::TryOpacity => (
            "stretch",
            "the cloth as far as it will be worn, over black paper laid on white: if you see the edge, it shows through",
        ),
        Work::TryOpacityWet => (
            "stretch",
            "the cloth as far as it will be worn, dry and wet, over black paper laid on white: if you see the edge, it \
             shows through",
        ),
        Work::ChildSlider => ("take", "a zip whose slider cannot pass the top stop: it is for a child"),
        Work::FuseSample => ("fuse", "a sample first; the interfacing is no heavier than the cloth"),
        Work::TrimFusible => ("cut", "fusible interfacing {5 mm|3/16 in} smaller all round than its piece"),
        Work::SewInInterfacing => {
            ("sew in", "the interfacing {10 mm|3/8 in} from the edge and trim it to the stitches; do not fuse it")
        }
        Work::PressSeams => ("press", "each seam before another crosses it"),
        Work::SteamSeams => ("steam", "each seam open from the wrong side, over a towel, before another crosses it"),
        Work::FlattenSeams => {
            ("flatten", "each seam and dart with your fingers and a roller or a clapper before another crosses it")
        }
        Work::ZipStrip => ("fuse", "a strip of {25 mm|1 in} that does not stretch along the zip seam"),
        Work::SewDarts => ("sew", "the darts, from the wide end to the point"),
        Work::PressDarts => ("press", "the darts, upright ones towards the centre, flat ones down"),
        Work::MakeCollar => ("sew", "the collar round its outer edges, trim the allowances in steps and turn it"),
        Work::MakeCuffs => ("sew", "the ends of the cuffs, trim them and turn the cuffs"),
        Work::SewWelts => {
            ("sew", "the welts and turn them, then sew each below its line, face down, and the bag above the line")
        }
        Work::CutWelts => {
            ("cut", "between the rows to {3 mm|1/8 in} from the ends, then into the corners, and turn the bag in")
        }
        Work::FastenWelts => {
            ("stitch", "the ends of the welts at the edge and {6 mm|1/4 in} in, bar-tack them, close the bags")
        }
        Work::FoldPatches => ("fold", "in the edges of the patch pockets, mitre the corners, hem the top"),
        Work::SewPatches => {
            ("sew", "the patch pockets on, from the bottom centre up each side, with a bar tack at the top")
        }
        Work::TapePocketMouths => ("tape", "the mouths of the side pockets"),
        Work::SewSideBags => ("sew", "the pocket bags to front and back, and tack the ends of the mouths"),
        Work::FaceHipMouths => ("tape", "and face the mouths of the front pockets, turn and topstitch them"),
        Work::CloseHipBags => ("sew", "the bags of the front pockets and baste them to waist and side"),
        Work::HemFrontPocket => ("hem", "the slanting openings of the front pocket over a tape"),
        Work::SewFrontPocket => ("sew", "the front pocket on, level with the lower edge"),
        Work::SetEyelets(at) => ("set", eyelets(at)),
        Work::CutCord(_) => {
            ("cut", "the cord as long as the edge and {15 cm|6 in} more at each end, and seal the ends")
        }
        Work::CutChildCord => {
            ("cut", "the cord as long as the edge laid open, its ends as short as the rules below ask, and seal them")
        }
        Work::NoHoodCord => ("leave", "the hood without a cord: it is for a child"),
        Work::SewFlyCrotch => ("sew", "the front crotch up to the mark of the fly"),
        Work::SetFlyZip => ("face", "the fly and set its zip"),
        Work::TopstitchFly => ("topstitch", "the fly from the right side and bar-tack its foot"),
        Work::SewZipSeam => ("sew", "the seam below the zip, baste the rest of it and open its allowances"),
        Work::SetClosedZip => ("set", "the zip behind the basted seam, its stop at the mark, and take out the basting"),
        Work::FoldFronts => ("fold", "the button bands of the fronts and stitch them"),
        Work::BasteLining => ("baste", "the lining to its pieces, wrong sides together"),
        Work::LineHood => ("sew", "hood and hood lining together round the face, turn and topstitch"),
        Work::SewPlackets => ("sew", "the plackets of the sleeves"),
        Work::SewLoops => ("sew", "the belt loops and baste them to the waist"),
        Work::FinishFacings => ("finish", "the free edges of the facings: they will be seen"),
        Work::BasteZip => ("baste", "the zip to both fronts; neck, pockets and lower edge lie level"),
        Work::FaceZip => ("sew", "the facing over the zip, right sides together, then trim and turn"),
        Work::TopstitchZip => ("topstitch", "{6 mm|1/4 in} beside the zip and take out the basting"),
        Work::GuardZip => ("sew", "a guard behind the top of the zip, so that it cannot catch the chin"),
        Work::SewFacing => ("sew", "the facing on, right sides together"),
        Work::GradeFacing => ("trim", "its allowances in steps, the widest outside, clip the curves and turn"),
        Work::Understitch => ("understitch", "the facing {2 to 3 mm|1/8 in} from its seam, through the allowances"),
        Work::SewLining => ("sew", "the lining together, with a pleat of ease at the centre back"),
        Work::SetLining => ("set", "the lining in along the facings, after all stitching that is seen outside"),
        Work::HangLining => ("sew", "the lining together and baste it to the waist, wrong sides together"),
        Work::LiningToZip => ("sew", "the lining to the tape of the zip by hand"),
        Work::Buttonholes => ("work", "the buttonholes on a scrap first, then on the garment, and sew the buttons on"),
        Work::HookAndEye => ("sew", "a hook and eye above the zip"),
        Work::FastenBand => ("sew", "a buttonhole and button, or a hook and bar, on the waistband above the zip"),
        Work::WristCasing => (
            "turn",
            "{6 mm|1/4 in} under at the wrists, fold a casing {3 mm|1/8 in} wider than the elastic and stitch it, but for \
             {5 cm|2 in} underarm; draw the elastic in, lap its ends and close the casing",
        ),
        Work::WaistCasing => (
            "turn",
            "{6 mm|1/4 in} under at the waist, fold a casing {3 mm|1/8 in} wider than the elastic and stitch it, but for \
             {5 cm|2 in}; draw the elastic in, lap its ends and close the casing",
        ),
        Work::WaistElasticKnit => {
            ("lap", "the elastic to a ring, sew it to the waist, quarter to quarter, stretched; turn it in and stitch")
        }
        Work::ElasticInBand => ("draw", "the elastic into the waistband, try it on, then lap and close it"),
        Work::EdgeElastic => ("sew", "the elastic to legs, arms and neck, quarter to quarter, turn it in and stitch"),
        Work::CordCasing(at) => ("turn", casing(at)),
        Work::DrawCord => ("draw", "the cord in and bar-tack it at the middle"),
        Work::StopCord => {
            ("put", "a stop on each end of the cord, and a knot {10 to 16 mm|3/8 to 5/8 in} from the end")
        }
        Work::ChildCord => {
            ("leave", "the ends of the cord without knot, toggle or stop, as short as the rules below ask")
        }
        Work::HemSleevesFirst => ("hem", "the sleeves before they are set in"),
        Work::TryNeckband => ("try", "the neckband, pinned to a ring, over the head before you sew it on"),
        Work::SewVent => (
            "sew",
            "the centre back down to the vent, clip the under layer to the corner, fold the vent to one side and stitch \
             across its top",
        ),
        Work::SewSleeveHeads => ("sew", "a sleeve head into each cap, along the allowances"),
        Work::SewSlits => ("fold", "back the edges of the slits, topstitch them, and bar-tack their tops"),
        Work::HangHem => ("let", "it hang for a day if it is cut on the bias or in a circle, then level it"),
        Work::TryOn => ("try", "it on and mark the hem"),
        Work::HemLined => {
            ("hem", "the lower edge and the sleeves, then their lining {2 cm|3/4 in} shorter, with a fold of ease")
        }
        Work::HemFree => ("hem", "the outside, then the lining {2 cm|3/4 in} shorter: it hangs free"),
        Work::HemLining => ("hem", "the lining {2 cm|3/4 in} shorter than the outside, with a fold of ease"),
        Work::LastPress => ("press", "it a last time from the wrong side"),
        Work::PressPile => ("press", "it face down on a towel, with steam and no weight"),
        Work::NoIron => ("use", "no iron at the end either: hang it up, and rub out finger marks with a soft cloth"),
        // Told with their objects.
        Work::Get(_)
        | Work::WashNotion(_)
        | Work::Interface(_)
        | Work::Mark(_)
        | Work::StayStitch(_)
        | Work::Hem(_)
        | Work::Seam(..) => ("do", ""),
    }
}

const fn eyelets(at: CordAt) -> &'static str {
    match at {
        CordAt::Hood => "eyelets at the face of the hood, in one backed layer; the hole is smaller than the barrel",
        CordAt::LowerEdge => "eyelets in the lower edge, in one backed layer; the hole is smaller than the barrel",
        CordAt::Waist => "eyelets at the waist, in one backed layer; the hole is smaller than the barrel",
    }
}

const fn casing(at: CordAt) -> &'static str {
    match at {
        CordAt::Hood => {
            "{6 mm|1/4 in} under at the face of the hood, fold a casing {6 mm|1/4 in} wider than the cord over the eyelets and stitch it"
        }
        CordAt::LowerEdge => {
            "{6 mm|1/4 in} under at the lower edge, baste the allowances down, fold a casing {6 mm|1/4 in} wider than the cord and stitch it"
        }
        CordAt::Waist => {
            "{6 mm|1/4 in} under at the waist, baste the allowances down, fold a casing {6 mm|1/4 in} wider than the cord and stitch it"
        }
    }
}

/// A text with its measures, each written as `{6 mm|1/4 in}`, in the reader's unit.
#[must_use]
pub(super) fn measured(text: &str, unit: Unit) -> String {
    let mut pieces = text.split('{');
    let mut said = pieces.next().unwrap_or_default().to_owned();
    for piece in pieces {
        let (measure, rest) = piece.split_once('}').unwrap_or((piece, ""));
        let (metric, inch) = measure.split_once('|').unwrap_or((measure, measure));
        said.push_str(if unit == Unit::Inch { inch } else { metric });
        said.push_str(rest);
    }
    said
}

/// A list as it is said: `a, b and c`.
#[must_use]
pub(super) fn list(names: &[&str]) -> String {
    match names {
        [] => String::new(),
        [one] => (*one).to_owned(),
        [all @ .., last] => format!("{} and {last}", all.join(", ")),
    }
}

pub(super) const fn zone(zone: Zone, garment: Option<GarmentKind>) -> &'static str {
    match zone {
        Zone::FrontEdge if matches!(garment, Some(GarmentKind::Shirt)) => "the button bands",
        Zone::FrontEdge => "the front edges and their facings",
        Zone::Neck => "the neck and its facing",
        Zone::Collar => "the collar",
        Zone::Fly => "the fly",
        Zone::Cuff => "the cuffs",
        Zone::Waistband => "the waistband",
        Zone::PocketOpening => "the pocket openings ({25 mm|1 in} larger each way)",
        Zone::Hem => "the hem",
        Zone::Eyelets => "the places of the eyelets",
        Zone::Vent => "the vent",
    }
}

pub(super) const fn point(point: PieceMark) -> &'static str {
    match point {
        PieceMark::Notches => "notches",
        PieceMark::Centres => "centre lines",
        PieceMark::Darts => "darts",
        PieceMark::Pockets => "pockets",
        PieceMark::Eyelets => "eyelets",
        PieceMark::ZipFoot => "foot of the zip",
        PieceMark::Buttonholes => "buttonholes",
        PieceMark::Quarters => "quarters of bands or elastic and of the edges they go to",
        PieceMark::Vents => "where vent or slits end",
    }
}

pub(super) const fn edge(edge: StayedEdge) -> &'static str {
    match edge {
        StayedEdge::Neck => "the neck, in two halves from the shoulder to the centre",
        StayedEdge::Waist => "the curved waist",
        StayedEdge::PocketMouth => "the slanting pocket mouths",
        StayedEdge::Raglan => "the raglan edges",
    }
}

pub(super) const fn hem(hem: Hem) -> &'static str {
    match hem {
        Hem::HoodFace => "the face of the hood",
        Hem::Sleeves => "the sleeves",
        Hem::Legs => "the legs",
        Hem::LowerEdge => "the lower edge",
    }
}

pub(super) const fn notion(notion: Notion) -> &'static str {
    match notion {
        Notion::Zip => "the zip",
        Notion::Elastic => "the elastic",
        Notion::Cord => "the cord",
        Notion::Eyelets => "the eyelets",
        Notion::CordStops => "the cord stops",
        Notion::Buttons => "the buttons",
        Notion::BandClosing => "the button, or hook and bar",
        Notion::HookAndEye => "the hook and eye",
        Notion::Fusible | Notion::SewInInterfacing => "the interfacing",
        Notion::PocketBags => "the pocket bags",
        Notion::SleeveHeads => "the sleeve heads",
        Notion::ClearElastic => "the clear elastic",
        Notion::BindingTape => "the binding tape",
    }
}

/// A notion as it is bought.
#[must_use]
pub(super) fn bought(notion: Notion, details: Details) -> &'static str {
    match notion {
        Notion::Zip if details.has(Detail::SeparatingZip) => {
            "a separating zip as long as its edge; pass --zip 62cm with that edge for the size to buy"
        }
        Notion::Zip => "a closed zip as long as its edge; pass --zip 18cm with that edge for the size to buy",
        Notion::Elastic if details.has(Detail::ElasticWaist) => {
            "elastic for the waist; pass --elastic 'soft waist 76cm over 100cm' for its length"
        }
        Notion::Elastic if details.has(Detail::ElasticCuffs) => {
            "elastic for the wrists; pass --elastic 'soft wrist 17cm' for its length"
        }
        Notion::Elastic => "elastic for the edges; measure them with the pieces",
        Notion::Cord if details.has(Detail::Child) => "cord, as long as the edge and its short ends",
        Notion::Cord => "cord, as long as the edge and {30 cm|12 in} more",
        Notion::Eyelets => "two eyelets",
        Notion::CordStops => "two cord stops",
        Notion::Buttons => "buttons: how many and how wide, the pattern says",
        Notion::BandClosing => "a button, or a hook and bar, for the waistband",
        Notion::HookAndEye => "a hook and eye",
        Notion::Fusible => "fusible interfacing, no heavier than the cloth",
        Notion::SewInInterfacing => "interfacing to sew in, no heavier than the cloth: a fusible needs heat",
        Notion::PocketBags if details.has(Detail::Lining) => "cloth for the pocket bags; lining will do",
        Notion::PocketBags => "cloth for the pocket bags",
        Notion::SleeveHeads => "a pair of sleeve heads",
        Notion::ClearElastic => "clear elastic for the seams that it is sewn into",
        Notion::BindingTape => "tape to bind the raw edges of the seams",
    }
}

/// A garment as it is called.
#[must_use]
pub const fn kind(kind: GarmentKind) -> &'static str {
    match kind {
        GarmentKind::UnlinedJacket => "an unlined jacket",
        GarmentKind::LinedCoat => "a lined coat",
        GarmentKind::HoodedPullover => "a hooded pullover",
        GarmentKind::Skirt => "a skirt",
        GarmentKind::Trousers => "trousers",
        GarmentKind::Jeans => "jeans",
        GarmentKind::Shirt => "a shirt",
        GarmentKind::Dress => "a dress",
        GarmentKind::TShirt => "a T-shirt",
        GarmentKind::Leggings => "leggings",
        GarmentKind::Swimwear => "swimwear",
        GarmentKind::ChildsOuterwear => "child's outerwear",
    }
}

/// A detail as it is called.
#[must_use]
pub const fn detail(kind: GarmentKind, detail: Detail) -> &'static str {
    match detail {
        Detail::PatchPockets if matches!(kind, GarmentKind::HoodedPullover) => "front pocket",
        Detail::Child => "for a child",
        Detail::Lining => "lining",
        Detail::Hood => "hood",
        Detail::Collar => "collar",
        Detail::Sleeves => "sleeves",
        Detail::Darts => "darts",
        Detail::Panels => "panels",
        Detail::Yoke => "yoke",
        Detail::SeparatingZip => "separating zip",
        Detail::ClosedZip => "closed zip",
        Detail::Fly => "fly",
        Detail::Buttons => "buttons",
        Detail::WeltPockets => "welt pockets",
        Detail::PatchPockets => "patch pockets",
        Detail::SidePockets => "side pockets",
        Detail::HipPockets => "hip pockets",
        Detail::Waistband => "waistband",
        Detail::ElasticWaist => "elastic waist",
        Detail::Cuffs => "cuffs",
        Detail::ElasticCuffs => "elastic cuffs",
        Detail::RibBands => "rib bands",
        Detail::Cord => "cord",
        Detail::Raglan => "raglan sleeves",
        Detail::SleeveHeads => "sleeve heads",
        Detail::Vent => "vent",
        Detail::Slits => "slits",
        Detail::WaistSeam => "waist seam",
    }
}

/// The head of a stage.
#[must_use]
pub const fn stage(stage: Stage) -> &'static str {
    match stage {
        Stage::Buy => "to buy",
        Stage::Prewash => "wash first",
        Stage::Sample => "sew a sample",
        Stage::Cut => "lay out and cut",
        Stage::Fuse => "interface",
        Stage::Mark => "mark and stay-stitch",
        Stage::Flat => "while the pieces lie flat",
        Stage::Pockets => "pockets",
        Stage::Eyelets => "eyelets and cord",
        Stage::Seams => "seams",
        Stage::Zip => "zip",
        Stage::Facing => "facing",
        Stage::Casings => "casings",
        Stage::Hems => "hems",
        Stage::Press => "last press",
    }
}

/// Why a line stands on the plan.
#[must_use]
pub(super) fn why(why: TaskReason, garment: Option<GarmentKind>) -> String {
    match why {
        TaskReason::Kind => format!("the usual work for {}", garment.map_or("a garment", kind)),
        TaskReason::Has(Detail::Child) => "it is for a child".to_owned(),
        TaskReason::Has(has) => format!("because of its {}", detail(garment.unwrap_or(GarmentKind::Dress), has)),
        TaskReason::Cloth(asks) => match asks {
            ClothCondition::Anything => "for any cloth",
            ClothCondition::Woven => "it is a woven",
            ClothCondition::Knit => "it is a knit",
            ClothCondition::Gives => "it gives by 2 % or more",
            ClothCondition::Stretches => "it stretches by 12 % or more",
            ClothCondition::OneWay => "it is a knit, or has a nap or a direction",
            ClothCondition::Fusible | ClothCondition::Iron => "it takes an iron",
            ClothCondition::Pile => "it has a pile",
            ClothCondition::NoFusible | ClothCondition::NoIron => "its finish takes no heat",
            ClothCondition::HolesStay => "its finish keeps every hole",
        }
        .to_owned(),
    }
}
