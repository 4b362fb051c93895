//! Why a deed cannot be done, as data. Each front end says it in its own words.

use tenter_core::making::garment::{Detail, GarmentKind, Stage};
use tenter_core::{Length, Unit};

use crate::input::{Doubted, Field, Wrong};
use crate::log::{HeldTags, Id, Tag, TagRange};
use crate::store::StoreError;

/// Why a deed cannot be done; then nothing was.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum Refused {
    /// A field cannot be read.
    #[error("wrong field")]
    Wrong(Wrong),
    /// Readings that should not be believed, and that nobody stands by.
    #[error("doubted readings")]
    Doubted(Box<Doubted>),
    /// The log cannot be read or written.
    #[error(transparent)]
    Store(#[from] StoreError),
    /// No cloth has this tag, name or identifier.
    #[error("no such cloth")]
    NoCloth(String),
    /// More than one cloth has a name with these words.
    #[error("several cloths")]
    SeveralCloths {
        /// What was typed.
        text: String,
        /// Their tags and names.
        found: Vec<(Tag, String)>,
    },
    /// More than one cloth has this tag.
    #[error("shared tag")]
    SharedTag {
        /// The number.
        tag: u16,
        /// Who has it: their tags with a letter, and their names.
        on: Vec<(Tag, String)>,
    },
    /// The cloth is retired.
    #[error("retired cloth")]
    Retired(Tag),
    /// The cloth is not retired.
    #[error("cloth not retired")]
    NotRetired(Tag),
    /// Another cloth has this tag.
    #[error("tag taken")]
    TagTaken {
        /// The tag.
        tag: u16,
        /// The name of the cloth that has it.
        by: String,
        /// A tag that is free.
        free: u16,
    },
    /// There is no tag left, of all or of those of this desk.
    #[error("no tag left")]
    NoTagLeft(Option<TagRange>),
    /// A range of tags that meets one that somebody else holds.
    #[error("tags held")]
    TagsHeld {
        /// The range that was wanted.
        range: TagRange,
        /// Who holds what.
        held: Box<HeldTags>,
        /// The name of who took it, where that is known.
        who: Option<String>,
        /// A range as long that nobody holds; none where there is none behind it.
        free: Option<TagRange>,
    },
    /// A range of tags that nobody holds.
    #[error("tags not held")]
    TagsNotHeld(TagRange),
    /// Nothing was said that would change anything.
    #[error("nothing changed")]
    NothingChanged(Thing),
    /// A seam with a role that is not on the sheet.
    #[error("role not on the sheet")]
    NotOnSheet(String),
    /// A cloth that is interfacing, which is no side of a seam.
    #[error("interfacing in a seam")]
    Interfacing(Tag),
    /// A garment of this kind never has this.
    #[error("no such detail")]
    NeverHas(GarmentKind, Detail),
    /// What a garment has was given, but not what it is.
    #[error("no garment kind")]
    NoGarmentKind(Detail),
    /// No role of the view asks for stretch.
    #[error("no stretch asked")]
    NoStretchAsked,
    /// The length on hand is not known.
    #[error("length not known")]
    LengthNotKnown(Tag),
    /// The cloth lies in a shop.
    #[error("cloth in a shop")]
    InShop(Tag),
    /// More than there is.
    #[error("not so much on hand")]
    NotSoMuch {
        /// The tag of the cloth.
        tag: Tag,
        /// What was typed.
        text: String,
        /// What is on hand.
        had: Length,
        /// The unit it was typed in.
        unit: Unit,
    },
    /// The cloth was not bought, or lay in no shop before.
    #[error("not bought")]
    NotBought(Tag),
    /// Something was cut off since it was bought.
    #[error("cut since")]
    CutSince(Tag),
    /// Nothing was cut off that could be put right.
    #[error("nothing cut")]
    NothingCut(Tag),
    /// No washing marks that could be taken back.
    #[error("no washing marks")]
    NothingWashed(Tag),
    /// The test has this grain already.
    #[error("same grain")]
    SameGrain {
        /// What was typed.
        text: String,
        /// The grain.
        grain: tenter_core::Grain,
    },
    /// The test was pulled by that person already.
    #[error("same person")]
    SamePerson {
        /// What was typed.
        text: String,
        /// The name.
        name: String,
    },
    /// Nobody has this name.
    #[error("no such person")]
    NoPerson {
        /// What was typed.
        text: String,
        /// The names there are.
        known: Vec<String>,
    },
    /// Several people have this name.
    #[error("several people")]
    SeveralPeople {
        /// The name.
        name: String,
        /// Their identifiers.
        ids: Vec<Id>,
    },
    /// Two names mean one person.
    #[error("one person")]
    OnePerson(String),
    /// Fewer than two persons pulled the cloth, or nobody twice.
    #[error("nobody to compare")]
    NobodyToCompare(Tag),
    /// No two cloths share a tag.
    #[error("no shared tags")]
    NothingShared,
    /// No test has this identifier.
    #[error("no such test")]
    NoTest(String),
    /// The identifiers of several tests end so.
    #[error("several tests")]
    SeveralTests {
        /// What was typed.
        text: String,
        /// Their identifiers.
        ids: Vec<Id>,
    },
    /// No test of a cloth ends so, or more than one does.
    #[error("no such test of the cloth")]
    TestOf {
        /// The tag of the cloth.
        tag: Tag,
        /// What was typed.
        text: String,
        /// What it was typed for.
        field: Field,
        /// The tests that end so.
        ids: Vec<Id>,
    },
    /// The test is retired, or counts, already.
    #[error("nothing to change")]
    Already {
        /// What was typed.
        text: String,
        /// Whether it was to be retired, else returned.
        retire: bool,
    },
    /// Nothing has this name.
    #[error("no such name")]
    NoneNamed {
        /// What was looked for.
        thing: Thing,
        /// What was typed.
        text: String,
        /// The names there are.
        known: Vec<String>,
        /// The pattern it was looked for in; empty where it was looked for among all.
        pattern: String,
    },
    /// Several names have these words.
    #[error("several names")]
    SeveralNamed {
        /// What was typed.
        text: String,
        /// The names that have them.
        found: Vec<String>,
    },
    /// Several patterns have the same name.
    #[error("several patterns of one name")]
    SameName {
        /// The name.
        name: String,
        /// Their identifiers.
        ids: Vec<Id>,
    },
    /// A pattern with several views, of which none was named.
    #[error("no view named")]
    WhichView(Vec<String>),
    /// A view that already has a role of this name.
    #[error("role exists")]
    RoleExists {
        /// The view.
        view: String,
        /// The role.
        role: String,
    },
    /// A pattern of this name is there.
    #[error("pattern exists")]
    PatternExists(String),
    /// The new name belongs to another thing of the same kind.
    #[error("name taken")]
    NameTaken {
        /// What has it.
        thing: Thing,
        /// The name.
        name: String,
    },
    /// The name of a retired pattern belongs to another one by now.
    #[error("name taken meanwhile")]
    NameTakenMeanwhile(String),
    /// What is asked belongs to a role, and none was named.
    #[error("no role named")]
    WithoutRole {
        /// Whether a pattern was to be added, else changed.
        adding: bool,
    },
    /// Nothing of that was retired.
    #[error("nothing retired")]
    NothingRetired(String),
    /// A view that asks nothing.
    #[error("nothing asked")]
    AsksNothing {
        /// The pattern.
        pattern: String,
        /// The view.
        view: String,
    },
    /// The cloth has this photograph already.
    #[error("photograph there")]
    PhotoThere {
        /// The tag of the cloth.
        tag: Tag,
        /// The number of the photograph.
        number: usize,
    },
    /// No photograph of the cloth has this number.
    #[error("no such photograph")]
    NoPhoto {
        /// The tag of the cloth.
        tag: Tag,
        /// What was typed.
        text: String,
        /// How many there are.
        count: usize,
    },
    /// A photograph of which the bytes have not arrived.
    #[error("photograph missing")]
    PhotoMissing(Tag),
    /// Nothing was said about what was learned.
    #[error("nothing learned")]
    NothingLearned,
    /// Nothing that was learned of the cloth has this number.
    #[error("no such lesson")]
    NoLesson {
        /// The tag of the cloth.
        tag: Tag,
        /// What was typed.
        text: String,
        /// How many there are.
        count: usize,
    },
    /// It is retired, or there, already.
    #[error("nothing to change")]
    AlreadySo {
        /// What was typed.
        text: String,
        /// Whether it was to be retired, else returned.
        retire: bool,
    },
    /// No garment was begun yet.
    #[error("no garment yet")]
    NoGarmentYet,
    /// No garment has this number or name.
    #[error("no such garment")]
    NoGarment(String),
    /// Several garments are meant.
    #[error("several garments")]
    SeveralGarments {
        /// What was typed.
        text: String,
        /// Which, with their numbers and names.
        on: Vec<(Id, u16, String)>,
    },
    /// The garment was given up.
    #[error("garment given up")]
    GivenUp(u16),
    /// The garment was not given up.
    #[error("garment not given up")]
    GarmentThere(u16),
    /// The garment is finished already.
    #[error("garment done")]
    DoneAlready(u16),
    /// The garment is not finished.
    #[error("garment not done")]
    NotDone(u16),
    /// Another garment has this number.
    #[error("number taken")]
    NumberTaken {
        /// The number.
        number: u16,
        /// The name of the garment that has it.
        by: String,
        /// A number that is free.
        free: u16,
    },
    /// There is no number left.
    #[error("no number left")]
    NoNumberLeft,
    /// No cloth was chosen for the garment.
    #[error("no cloth chosen")]
    NoClothChosen(u16),
    /// The cloth of the role is cut already.
    #[error("cut already")]
    CutAlready {
        /// The number of the garment.
        number: u16,
        /// The role.
        role: String,
        /// The tag of the cloth.
        tag: Tag,
    },
    /// Everything is cut.
    #[error("nothing to cut")]
    NothingToCut(u16),
    /// A garment that has no such stage of work.
    #[error("the garment has no such stage")]
    NoStage {
        /// The number of the garment.
        number: u16,
        /// The stage.
        stage: Stage,
        /// Those that it has.
        known: Vec<Stage>,
    },
    /// Nothing was cut.
    #[error("nothing cut")]
    NothingCutFor(u16),
    /// The pattern does not say how much a role takes.
    #[error("length of role not known")]
    CutHowMuch {
        /// The number of the garment.
        number: u16,
        /// The role.
        role: String,
    },
    /// There is less of the cloth than the role takes.
    #[error("too little to cut")]
    TooLittleToCut {
        /// The tag of the cloth.
        tag: Tag,
        /// The number of the garment.
        number: u16,
        /// The roles.
        roles: Vec<String>,
        /// What they take together.
        asked: Length,
        /// What is on hand.
        had: Length,
        /// The unit in which to say it.
        unit: Unit,
    },
    /// No marks before and after a wash were typed.
    #[error("no marks")]
    NoWashMarks,
    /// A handheld that has a number keeps it.
    #[error("handheld named already")]
    Named {
        /// The number it has.
        has: u32,
        /// The number it was to get.
        wanted: u32,
    },
    /// A draft that cannot be read.
    #[error("damaged draft")]
    DamagedDraft(Tag),
    /// Several unfinished tests, of which none was named.
    #[error("several drafts")]
    SeveralDrafts {
        /// The tag of the cloth.
        tag: Tag,
        /// How many there are.
        count: usize,
    },
    /// A cloth without a draft that could be resumed.
    #[error("no draft")]
    NoDraft {
        /// The tag of the cloth.
        tag: Tag,
        /// Whether it was to be forgotten, else resumed.
        forget: bool,
    },
}

/// What a refusal is about.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Thing {
    /// A cloth.
    Cloth,
    /// A pattern.
    Pattern,
    /// A view of a pattern.
    View,
    /// A role of a view.
    Role,
    /// A garment.
    Garment,
}

impl From<Wrong> for Refused {
    fn from(wrong: Wrong) -> Self {
        Self::Wrong(wrong)
    }
}
