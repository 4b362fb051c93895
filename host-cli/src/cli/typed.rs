//! What the flags say, in the plain words of `input` and of the core.

use super::check::CheckArgs;
use super::cloth::{AddClothArgs, EditClothArgs, FabricFlags, YesNo};
use super::fit::ChoiceArgs;
use super::make::GarmentFlags;
use super::making::WashArgs;
use super::pattern::RoleFlags;
use super::pull::PullArgs;
use super::reading::{ConfidenceArg, ShowArgs, TableArg, TestFlags, WantsArgs};
use super::remember::LearnedFlags;
use super::size::SizeArgs;
use crate::deed::wash::TypedWash;
use crate::input::cloth::TypedCloth;
use crate::input::garment::TypedGarment;
use crate::input::learned::TypedLearned;
use crate::input::pattern::TypedRole;
use crate::input::row::TestRow;
use crate::input::size::TypedSize;
use crate::input::{TypedAsked, TypedCheck, TypedPull, TypedTest, TypedWants};
use crate::log::Choices;
use tenter_core::making::garment::Detail;

/// The test of a row.
fn test(flags: &TestFlags, row: &TestRow) -> TypedTest {
    let TestFlags { planned, settling, grain, division, ends, held, load, .. } = flags.clone();
    let (load, grain) = (Some(load), row.grain.unwrap_or(grain));
    TypedTest { settling, planned, grain, division, ends, held, load, ..row.test() }
}

fn asked(wants: &WantsArgs, confidence: &ConfidenceArg, table: &TableArg, show: &ShowArgs) -> TypedAsked {
    let WantsArgs { wants, growth_at_most, recovery_at_least } = wants.clone();
    TypedAsked {
        wants: TypedWants { wants, growth_at_most, recovery_at_least },
        confidence: confidence.confidence.clone(),
        table: table.table.clone(),
        unit: show.units,
    }
}

impl From<&CheckArgs> for TypedCheck {
    fn from(args: &CheckArgs) -> Self {
        let mut asked = asked(&args.wants, &args.confidence, &args.table, &args.show);
        asked.wants.wants = args.test.row.wants.clone().or(asked.wants.wants);
        let (scatter, construction, as_read) = (args.scatter.clone(), args.construction, args.test.flags.as_read);
        Self { test: test(&args.test.flags, &args.test.row), asked, scatter, construction, as_read }
    }
}

impl From<&PullArgs> for TypedPull {
    fn from(args: &PullArgs) -> Self {
        args.test(&args.test.row)
    }
}

impl PullArgs {
    /// The tests along further grains.
    #[must_use]
    pub fn further(&self) -> Vec<TypedPull> {
        self.test.further.iter().map(|row| self.test(row)).collect()
    }

    fn test(&self, row: &TestRow) -> TypedPull {
        let mut asked = asked(&self.wants, &self.confidence, &self.table, &self.show);
        asked.wants.wants = row.wants.clone().or(asked.wants.wants);
        let (test, as_read) = (test(&self.test.flags, row), self.test.flags.as_read);
        let check = TypedCheck { test, asked, scatter: None, construction: None, as_read };
        let by = self.by.name();
        TypedPull { check, at: self.at.clone(), note: self.note.clone(), by }
    }

    /// The cloth: its tag, or its name without quotes around it.
    #[must_use]
    pub fn cloth(&self) -> String {
        [core::slice::from_ref(&self.fabric), &self.test.name].concat().join(" ")
    }
}

impl From<&FabricFlags> for TypedCloth {
    fn from(flags: &FabricFlags) -> Self {
        let FabricFlags { fibre, construction, width, length, mass, finish, drape, purpose, .. } = flags.clone();
        let FabricFlags { one_way, colour, place, note, seen, price, .. } = flags.clone();
        let one_way = one_way.map(|one_way| one_way == YesNo::Yes);
        let known = Self { fibre, construction, width, length, mass, finish, drape, purpose, ..Self::default() };
        Self { one_way, colour, place, note, seen, price, ..known }
    }
}

impl From<&AddClothArgs> for TypedCloth {
    fn from(args: &AddClothArgs) -> Self {
        let (name, tag, washed) = (Some(args.name.clone()), args.tag.clone(), args.washed.then_some(true));
        Self { name, tag, washed, ..(&args.flags).into() }
    }
}

impl From<&EditClothArgs> for TypedCloth {
    fn from(args: &EditClothArgs) -> Self {
        let washed = args.washed.map(|washed| washed == YesNo::Yes);
        let (name, tag, bought) = (args.name.clone(), args.tag.clone(), args.bought.clone());
        Self { name, tag, bought, washed, ..(&args.flags).into() }
    }
}

impl From<&RoleFlags> for TypedRole {
    fn from(flags: &RoleFlags) -> Self {
        let RoleFlags { crosswise, lengthwise, bias, growth_at_most, recovery_at_least, .. } = flags.clone();
        let RoleFlags { construction, cloth, garment, movement, around, note, .. } = flags.clone();
        let RoleFlags { mass, drape, finish, purpose, kind, .. } = flags.clone();
        Self {
            crosswise,
            lengthwise,
            bias,
            growth_at_most,
            recovery_at_least,
            constructions: construction,
            mass,
            drapes: drape,
            finishes: finish,
            purpose,
            kind,
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
        let unit = args.advice.show.units;
        Self { lengthwise, crosswise, division, need, unit }
    }
}

impl From<&SizeArgs> for TypedSize {
    fn from(args: &SizeArgs) -> Self {
        let args = args.clone();
        Self {
            girth: args.girth,
            opening: args.opening,
            reduce: args.reduce,
            elastic: args.elastic,
            place: args.place,
            measure: args.measure,
            widest: args.widest,
            gives: args.gives,
            elastic_width: args.elastic_width,
            stitched: args.stitched,
            zip: args.zip,
            zip_neck: args.zip_neck,
            zip_hem: args.zip_hem,
            zip_ends: args.zip_ends,
            cord: args.cord,
            cord_width: args.cord_width,
            cord_tied: args.cord_tied,
            child: args.child,
            kind: args.kind,
            shown: args.advice.show.units,
        }
    }
}

impl From<&LearnedFlags> for TypedLearned {
    fn from(flags: &LearnedFlags) -> Self {
        let LearnedFlags { needle, stitch, length, pressure, tension, thread, wore, note } = flags.clone();
        Self { needle, stitch, length, pressure, tension, thread, wore, note }
    }
}

impl From<&GarmentFlags> for TypedGarment {
    fn from(flags: &GarmentFlags) -> Self {
        let GarmentFlags { r#use: uses, whom, class, by, name, number, note, choices } = flags.clone();
        Self { name, number, whom, class, by, note, uses, choices: (&choices).into(), all_choices: None }
    }
}

impl From<&ChoiceArgs> for Choices {
    fn from(args: &ChoiceArgs) -> Self {
        let words = |details: &[Detail]| details.iter().map(|detail| detail.word().to_owned()).collect();
        let ChoiceArgs { kind, seam, zip, zip_neck, zip_hem, elastic, cord, child, sleepwear, tight, .. } =
            args.clone();
        Self {
            kind,
            with: words(&args.with),
            without: words(&args.without),
            seam,
            zip,
            zip_neck,
            zip_hem,
            zip_ends: args.zip_ends.map(|ends| ends.word().to_owned()),
            elastic,
            cord,
            child,
            sleepwear,
            tight,
        }
    }
}
