//! What the flags say, in the plain words of `input` and of the core.

use tenter_core::making::stitch::Stitch;
use tenter_core::making::{elastic, zip};
use tenter_core::{Ends, Grain, Held, Unit};

use super::check::CheckArgs;
use super::cloth::{AddArgs, ConstructionArg, EditArgs, FabricFlags, YesNo};
use super::making::{StitchArg, WashArgs};
use super::pattern::RoleFlags;
use super::pull::PullArgs;
use super::reading::{
    ConfidenceArg, EndsArg, GrainArg, HeldArg, ShowArgs, TableArg, TestArgs, TestFlags, UnitArg, WantsArgs,
};
use super::size::{ElasticArg, PlaceArg, ZipEnds};
use crate::deed::wash::TypedWash;
use crate::input::cloth::TypedCloth;
use crate::input::pattern::TypedRole;
use crate::input::{TypedAsked, TypedCheck, TypedPull, TypedTest, TypedWants};
use crate::log::Construction;

/// The same words, of the command line and of what they stand for.
macro_rules! same {
    ($($from:ident => $to:path { $($word:ident),+ })+) => {$(
        impl From<$from> for $to {
            fn from(arg: $from) -> Self {
                match arg {
                    $($from::$word => Self::$word,)+
                }
            }
        }
    )+};
}

same! {
    GrainArg => Grain { Lengthwise, Crosswise, Bias }
    EndsArg => Ends { One, Both }
    HeldArg => Held { Flat, Folded, Strip, Loop }
    ConstructionArg => Construction { Woven, Knit, Other }
    StitchArg => Stitch { Straight, NarrowZigzag, Triple, WideZigzag, Overlock }
    ElasticArg => elastic::Kind { Firm, Soft, Braided, Ribbing }
    PlaceArg => elastic::Edging { Waist, SnugWaist, Edge, SwimLegFront, SwimLegBack, Wrist, Opening }
    ZipEnds => zip::ZipEnds { Closed, Open }
}

impl From<UnitArg> for Unit {
    fn from(arg: UnitArg) -> Self {
        match arg {
            UnitArg::Mm => Self::Mm,
            UnitArg::Cm => Self::Cm,
            UnitArg::In => Self::Inch,
        }
    }
}

impl From<&TestArgs> for TypedTest {
    fn from(args: &TestArgs) -> Self {
        // `lengths`, `to`, `back` and the later `marks` stand in `readings`, in the order in which they were typed.
        let flags = args.flags.clone();
        let TestFlags { marks, planned, settling, grain, division, ends, held, load, .. } = flags;
        let readings = args.readings.clone();
        let (grain, ends, held, load) = (grain.into(), ends.into(), held.into(), Some(load));
        let (marks, marks_before_settling) = (marks.into_iter().next(), false);
        Self { marks, readings, settling, marks_before_settling, planned, grain, division, ends, held, load }
    }
}

fn asked(wants: &WantsArgs, confidence: &ConfidenceArg, table: &TableArg, show: &ShowArgs) -> TypedAsked {
    let WantsArgs { wants, growth_at_most, recovery_at_least } = wants.clone();
    TypedAsked {
        wants: TypedWants { wants, growth_at_most, recovery_at_least },
        confidence: confidence.confidence.clone(),
        table: table.table.clone(),
        unit: show.units.map(Unit::from),
    }
}

impl From<&CheckArgs> for TypedCheck {
    fn from(args: &CheckArgs) -> Self {
        let asked = asked(&args.wants, &args.confidence, &args.table, &args.show);
        let construction = args.construction.map(Construction::from);
        Self {
            test: (&args.test).into(),
            asked,
            scatter: args.scatter.clone(),
            construction,
            as_read: args.test.flags.as_read,
        }
    }
}

impl From<&PullArgs> for TypedPull {
    fn from(args: &PullArgs) -> Self {
        let asked = asked(&args.wants, &args.confidence, &args.table, &args.show);
        let as_read = args.test.flags.as_read;
        let check = TypedCheck { test: (&args.test).into(), asked, scatter: None, construction: None, as_read };
        Self { check, at: args.at.clone(), note: args.note.clone() }
    }
}

impl From<&FabricFlags> for TypedCloth {
    fn from(flags: &FabricFlags) -> Self {
        let FabricFlags { fibre, construction, width, length, mass, place, note, seen, price } = flags.clone();
        let construction = construction.map(Construction::from);
        Self { fibre, construction, width, length, mass, place, note, seen, price, ..Self::default() }
    }
}

impl From<&AddArgs> for TypedCloth {
    fn from(args: &AddArgs) -> Self {
        let (name, tag, washed) = (Some(args.name.clone()), args.tag.clone(), args.washed.then_some(true));
        Self { name, tag, washed, ..(&args.flags).into() }
    }
}

impl From<&EditArgs> for TypedCloth {
    fn from(args: &EditArgs) -> Self {
        let washed = args.washed.map(|washed| washed == YesNo::Yes);
        let (name, tag, bought) = (args.name.clone(), args.tag.clone(), args.bought.clone());
        Self { name, tag, bought, washed, ..(&args.flags).into() }
    }
}

impl From<&RoleFlags> for TypedRole {
    fn from(flags: &RoleFlags) -> Self {
        let RoleFlags { crosswise, lengthwise, bias, growth_at_most, recovery_at_least, .. } = flags.clone();
        let RoleFlags { construction, cloth, garment, movement, around, note, .. } = flags.clone();
        let constructions = construction.into_iter().map(Construction::from).collect();
        let around = around.map(Grain::from);
        Self {
            crosswise,
            lengthwise,
            bias,
            growth_at_most,
            recovery_at_least,
            constructions,
            cloth,
            garment,
            movement,
            around,
            note,
        }
    }
}

impl From<&WashArgs> for TypedWash {
    fn from(args: &WashArgs) -> Self {
        let WashArgs { lengthwise, crosswise, division, need, .. } = args.clone();
        let unit = args.advice.show.units.map(Unit::from);
        Self { lengthwise, crosswise, division, need, unit }
    }
}
