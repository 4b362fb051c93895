//! What can be wrong with what was typed, as data. Each front end says it in its own words.

use jiff::civil::Date;
use tenter_core::making::error::MakingError;
use tenter_core::{Construction, Length, LengthError, LimitError, Slip, TestError, Unit};

use crate::log::TagRange;

/// A field that cannot be read.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Wrong {
    /// What was being typed.
    pub field: Field,
    /// The text, as typed; empty where there is none.
    pub text: String,
    /// What is wrong with it, and with what it can be mended.
    pub why: Why,
}

impl Wrong {
    /// A field that cannot be read.
    #[must_use]
    pub fn new(field: Field, text: &str, why: Why) -> Self {
        Self { field, text: text.to_owned(), why }
    }

    /// What was probably meant, where another unit explains it.
    #[must_use]
    pub fn likely(&self) -> Option<Slip> {
        match &self.why {
            Why::Reading(error) => error.likely(),
            Why::MoreThanCloth { likely, .. } => *likely,
            _ => None,
        }
    }
}

/// What was being typed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Field {
    /// The distance between the marks.
    Marks,
    /// How many pulls were planned.
    Planned,
    /// A length read while pulling.
    To,
    /// A length read after release, and when.
    Back,
    /// Between two lines of the scale.
    Division,
    /// What pulled.
    Load,
    /// Whether a settling pull was made.
    Settling,
    /// The grain that was pulled.
    Grain,
    /// Ends that were read.
    Ends,
    /// How the swatch was held.
    Held,
    /// The day on which it was pulled.
    Pulled,
    /// A remark.
    Note,
    /// The scatter of the user's own pulls.
    Scatter,
    /// How sure an answer must be.
    Confidence,
    /// The table of stretch classes.
    Table,
    /// The stretch that is wanted.
    Wants,
    /// The most growth that will do.
    GrowthAtMost,
    /// The least recovery that will do.
    RecoveryAtLeast,
    /// The stretch wanted across.
    Crosswise,
    /// The stretch wanted along.
    Lengthwise,
    /// The stretch wanted at 45°.
    Bias,
    /// The name of a cloth that is added.
    Name,
    /// A new name for what is there.
    NewName,
    /// The number pinned to a cloth.
    Tag,
    /// What a cloth is made of.
    Fibre,
    /// Usable width.
    Width,
    /// Length on hand.
    Length,
    /// Mass per area.
    Mass,
    /// What was done to its surface.
    Finish,
    /// How it falls.
    Drape,
    /// What it is made for.
    Purpose,
    /// How it is made.
    Construction,
    /// Its colour.
    Colour,
    /// Whether all pieces must lie one way up.
    OneWay,
    /// Whether it was washed.
    Washed,
    /// Where a cloth lies.
    Place,
    /// The shop in which it was seen.
    Seen,
    /// The price there.
    Price,
    /// The length that was bought.
    Bought,
    /// The length that was cut off.
    Cut,
    /// The least length on hand that is looked for.
    AtLeast,
    /// The stretch that is looked for, or taken as known.
    Stretch,
    /// The name of a pattern.
    Pattern,
    /// The name of a view.
    View,
    /// The name of a role.
    Role,
    /// A kind of garment that asks.
    Garment,
    /// The garment that a view is.
    Kind,
    /// A movement of the body that asks.
    Movement,
    /// The grain that goes round the body.
    Around,
    /// How much cloth a role takes.
    Cloth,
    /// Marks along the length before and after a wash.
    WashedLengthwise,
    /// Marks across the width before and after a wash.
    WashedCrosswise,
    /// The length needed after a wash.
    Need,
    /// The length of a seam between two cloths.
    Along,
    /// A length of elastic, with what it is for.
    Elastic,
    /// The length that elastic goes round.
    Measure,
    /// The stretch that elastic gives.
    Gives,
    /// The stretch that a facing gives.
    FacingGives,
    /// A body measure with a finished one.
    Girth,
    /// An opening that must pass over the body.
    Opening,
    /// A seam with its length.
    Seam,
    /// The widest place that elastic must pass.
    Widest,
    /// The width of elastic.
    ElasticWidth,
    /// The edge that a zip closes.
    Zip,
    /// What the hem takes of that edge.
    ZipHem,
    /// What the neck takes of that edge.
    ZipNeck,
    /// The edge that a drawcord draws in.
    Cord,
    /// The width of a drawcord.
    CordWidth,
    /// The identifier of a test.
    Id,
    /// The test that is retired.
    Retire,
    /// The test that is returned.
    Return,
    /// The test whose grain is put right.
    Regrain,
    /// All readings of a test in one text.
    Readings,
    /// The number of a handheld.
    DeviceName,
    /// How much smaller than the body a garment is to be cut.
    Reduce,
    /// The force on each centimetre of width.
    Tension,
    /// The published test whose tension is wanted.
    Method,
    /// The mass that hangs.
    HungMass,
    /// The cloth chosen for a role.
    Use,
    /// The needle that worked.
    Needle,
    /// The stitch that worked.
    Stitch,
    /// The length of that stitch.
    StitchLength,
    /// The pressure of the foot.
    Pressure,
    /// The tension of the thread.
    ThreadTension,
    /// The thread.
    Thread,
    /// How a cloth wore.
    Wore,
    /// The file of a photograph.
    Photo,
    /// The person who pulled.
    PulledBy,
    /// A person, by name.
    Person,
    /// The tags that are given at a desk.
    Tags,
    /// The person for whom a garment is made.
    Whom,
    /// The class in which a garment is made.
    Class,
    /// The day on which a garment is wanted.
    By,
    /// The number of a garment.
    Number,
    /// A word that describes a cloth, or what is asked of one.
    Word,
}

/// What a table of stretch classes has for a class, in thousandths of a percent.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct ClassFigures {
    /// The table.
    pub table: &'static str,
    /// Its lower edge.
    pub from: u32,
    /// Its upper edge; none for the last.
    pub up_to: Option<u32>,
}

/// What is wrong with a text.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Why {
    /// It must be there.
    Missing,
    /// A word that says nothing here, or says again what was said.
    Unexpected,
    /// It is no length.
    Length(LengthError),
    /// It is no limit or range.
    Limit(LimitError),
    /// It names a class of stretch, for which tables have different figures.
    Class(Vec<ClassFigures>),
    /// It is read, and is no reading that can be.
    Reading(TestError),
    /// It is read, and gives more stretch than such cloth does.
    MoreThanCloth {
        /// The distance between the marks.
        gauge: Length,
        /// The distance while pulled.
        extended: Length,
        /// How the cloth is made, where it is known.
        construction: Option<Construction>,
        /// What was probably meant.
        likely: Option<Slip>,
        /// The unit in which to say it.
        unit: Unit,
    },
    /// A length after a wash that no wash leaves.
    Washed {
        /// What was probably meant.
        likely: Option<Length>,
        /// The unit in which to say it.
        unit: Unit,
    },
    /// It is read, and cannot be worked with.
    Making(MakingError),
    /// Nothing was typed; a value is, or the word `unknown`.
    Blank,
    /// Nothing was typed where a word is needed.
    NoWords,
    /// A length of cloth without a unit.
    NoUnit,
    /// A length below zero.
    Negative,
    /// A length of nothing.
    Zero,
    /// A text that is too long.
    TooLong {
        /// The most characters that are kept.
        most: usize,
    },
    /// A text with characters that cannot be printed.
    NotPlain,
    /// Not one of the words that are known.
    NotOneOf(Vec<String>),
    /// Not a whole number from 1 to `most`.
    NotANumber {
        /// The highest number taken.
        most: u32,
    },
    /// Neither a mass per area in metric units nor in ounces.
    NotAMass,
    /// Not a price per length.
    NotAPrice,
    /// A price of a cloth that was not seen in a shop.
    PriceWithoutShop,
    /// A price of a cloth that lies at home.
    PriceAtHome,
    /// A cloth that lies at home cannot be bought.
    AtHome,
    /// A shop that is none.
    NotAShop,
    /// A recovered length without the time.
    NoTime,
    /// Growth and recovery asked at two times.
    TwoTimes,
    /// Not a time since release.
    NotATime,
    /// Not a mass, a force or a hand.
    NotALoad,
    /// A force in a unit that is not known.
    ForceUnit,
    /// A force that nobody pulls with.
    ForceRange,
    /// Not points of stretch from 0 to 100.
    NotPoints,
    /// Not a percentage of confidence.
    NotAConfidence,
    /// A recovery above 100 %.
    AboveWhole,
    /// A scale without divisions.
    NoDivision,
    /// Not two lengths, before and after.
    NotMarks,
    /// Not a name with two measures.
    NotAGirth,
    /// Not a length of a width.
    NotACloth,
    /// A movement whose source does not say along which line.
    NoLine {
        /// The movement.
        name: &'static str,
    },
    /// It belongs to a garment or a movement.
    WithoutBody,
    /// Not a day.
    NotADay,
    /// A day that may be either of two.
    TwoDays {
        /// The day stands first.
        one: Date,
        /// The month stands first.
        other: Date,
    },
    /// A day to come.
    Ahead,
    /// Neither yes nor no.
    NotYesOrNo,
    /// No length read while pulling.
    NoReadings,
    /// Not an identifier that this program gives.
    NotAnId,
    /// No cloth has this tag.
    OnNoCloth,
    /// A cloth has this tag.
    OnACloth {
        /// Its name.
        by: String,
    },
    /// More than one cloth has this tag.
    OnTwoCloths,
    /// More than one person has this name.
    SeveralPeople,
    /// The tags of this desk have run out.
    NoTagLeft(TagRange),
    /// No range of tags.
    NotTags,
    /// A reduction that leaves nothing of the body.
    NothingLeft,
    /// Not a force on each centimetre.
    NotATension,
    /// Not a mass that can hang.
    NotAHungMass,
    /// Two published tests have these words.
    Ambiguous {
        /// One of them.
        one: &'static str,
        /// The other.
        other: &'static str,
    },
    /// Not a kind of elastic with its place and a length.
    NotAnElastic,
    /// Not two roles with a length.
    NotASeam,
    /// Not two masses per area with two dots between.
    NotAMassRange,
    /// Not a role with a tag.
    NotAUse,
    /// It is taken off the edge of a zip, and there is none.
    NoZip,
    /// A shrinkage is needed to say how much to buy.
    NeedsShrinkage,
    /// A stretch that every cloth has.
    EveryClothHasIt,
    /// A stretch for which no gauge fits on paper.
    TooLongForPaper,
    /// A photograph that cannot be taken.
    Photo(PhotoFault),
    /// Two cloths for one role.
    RoleTwice,
    /// A length that belongs to one role, for several.
    OfOneRole,
}

/// Why a photograph cannot be taken.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PhotoFault {
    /// The file is larger than 32 MiB.
    FileTooLarge,
    /// It is no JPEG, PNG or WebP.
    UnknownFormat,
    /// It has more than 50 million pixels, or a side of more than 20 000.
    TooManyPixels,
    /// Nothing can be seen on it.
    TooFewPixels,
    /// It is damaged or cut off.
    Damaged,
}
