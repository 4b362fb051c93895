//! Entries: what was said, once and for ever.

use jiff::Timestamp;
use serde::{Deserialize, Serialize};
use tenter_core::{Grain, Length, Unit};

use super::fabric::{FabricChange, WashMarks};
use super::garment::GarmentChange;
use super::held::TagHolder;
use super::id::Id;
use super::json::{mm, unit};
use super::learned::Learned;
use super::pattern::{PatternChange, RoleChange};
use super::photo::PhotoSaid;
use super::tag::TagRange;
use super::tested::Tested;

/// One thing that was said.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Entry {
    /// Its identifier; that of what it adds, if it adds something.
    pub id: Id,
    /// When it was said, for the reader: the identifier holds the same.
    #[serde(default)]
    pub at: Timestamp,
    /// The person who said it, where that is known.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub who: Option<Id>,
    /// What was said.
    #[serde(flatten)]
    pub fact: Fact,
}

/// Who said an entry, as it stands first in its [body](Entry::body).
#[derive(Deserialize)]
struct Said {
    who: Id,
}

/// How a body begins that tells who said it.
const TELLS_WHO: &str = "{\"who\":\"";

impl Entry {
    /// What `fact` says, under an identifier.
    #[must_use]
    pub fn new(id: Id, fact: Fact) -> Self {
        Self { id, at: id.at(), who: None, fact }
    }

    /// The same, said by a person.
    #[must_use]
    pub fn by(self, who: Option<Id>) -> Self {
        Self { who, ..self }
    }

    /// What it says without its identifier and time, as JSON: how a log keeps it.
    ///
    /// # Errors
    ///
    /// What cannot be written as JSON.
    pub fn body(&self) -> Result<String, serde_json::Error> {
        let fact = serde_json::to_string(&self.fact)?;
        Ok(match (self.who, fact.strip_prefix('{')) {
            (Some(who), Some(fact)) => format!("{TELLS_WHO}{who}\",{fact}"),
            _ => fact,
        })
    }

    /// The entry of an identifier and a [body](Self::body).
    ///
    /// # Errors
    ///
    /// A text that is no body.
    pub fn of_body(id: Id, body: &str) -> Result<Self, serde_json::Error> {
        let fact: Fact = serde_json::from_str(body)?;
        let who = body.starts_with(TELLS_WHO).then(|| serde_json::from_str::<Said>(body)).transpose()?;
        Ok(Self::new(id, fact).by(who.map(|said| said.who)))
    }

    /// What the entry is about.
    #[must_use]
    pub const fn subject(&self) -> Subject {
        match &self.fact {
            Fact::FabricAdded(_) => Subject::Fabric(self.id),
            Fact::FabricChanged { fabric, .. }
            | Fact::FabricCut { fabric, .. }
            | Fact::FabricWashed { fabric, .. }
            | Fact::FabricRetracted { fabric, .. }
            | Fact::FabricDropped { fabric, .. }
            | Fact::FabricRestored { fabric }
            | Fact::FabricCutFor { fabric, .. }
            | Fact::FabricLearned { fabric, .. }
            | Fact::LessonDropped { fabric, .. }
            | Fact::LessonRestored { fabric, .. }
            | Fact::PhotoAdded { fabric, .. }
            | Fact::PhotoFirst { fabric, .. }
            | Fact::PhotoDropped { fabric, .. }
            | Fact::PhotoRestored { fabric, .. } => Subject::Fabric(*fabric),
            Fact::TestStored(_) => Subject::Test(self.id),
            Fact::TestAssigned { test, .. }
            | Fact::TestRegrained { test, .. }
            | Fact::TestPulledBy { test, .. }
            | Fact::TestDropped { test, .. }
            | Fact::TestRestored { test } => Subject::Test(*test),
            Fact::UnitsSet { .. } => Subject::Log(self.id),
            Fact::TagsTaken { .. } => Subject::Tags,
            Fact::PersonNamed { person, .. } | Fact::PersonMerged { person, .. } => Subject::Person(*person),
            Fact::PatternAdded(_) => Subject::Pattern(self.id),
            Fact::PatternChanged { pattern, .. }
            | Fact::PatternDropped { pattern }
            | Fact::PatternRestored { pattern } => Subject::Pattern(*pattern),
            Fact::RoleAdded { .. } => Subject::Role(self.id),
            Fact::RoleChanged { role, .. } | Fact::RoleDropped { role } | Fact::RoleRestored { role } => {
                Subject::Role(*role)
            }
            Fact::GarmentBegun(_) => Subject::Garment(self.id),
            Fact::GarmentChanged { garment, .. }
            | Fact::GarmentDone { garment }
            | Fact::GarmentReopened { garment }
            | Fact::GarmentDropped { garment, .. }
            | Fact::GarmentRestored { garment } => Subject::Garment(*garment),
        }
    }
}

/// What an entry is about.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Subject {
    /// A cloth.
    Fabric(Id),
    /// A pull test.
    Test(Id),
    /// A pattern.
    Pattern(Id),
    /// A role of a view of a pattern.
    Role(Id),
    /// A garment.
    Garment(Id),
    /// Somebody who pulls.
    Person(Id),
    /// The log itself, as the entry with this identifier says.
    Log(Id),
    /// Which tags are whose.
    Tags,
}

impl Subject {
    /// Its identifier.
    #[must_use]
    pub const fn id(self) -> Id {
        match self {
            Self::Fabric(id)
            | Self::Test(id)
            | Self::Pattern(id)
            | Self::Role(id)
            | Self::Garment(id)
            | Self::Person(id)
            | Self::Log(id) => id,
            Self::Tags => Id::TAGS,
        }
    }
}

/// What can be said.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(tag = "kind", rename_all = "kebab-case")]
pub enum Fact {
    /// A cloth was added.
    FabricAdded(FabricChange),
    /// Something about a cloth changed.
    FabricChanged {
        /// The cloth.
        fabric: Id,
        /// What changed.
        #[serde(flatten)]
        change: FabricChange,
    },
    /// A length was cut off.
    FabricCut {
        /// The cloth.
        fabric: Id,
        /// How much.
        #[serde(rename = "length_mm", with = "mm")]
        length: Length,
        /// What for.
        #[serde(default, skip_serializing_if = "String::is_empty")]
        note: String,
    },
    /// Marks were measured before and after a wash.
    FabricWashed {
        /// The cloth.
        fabric: Id,
        /// The grain along which the marks lie.
        grain: Grain,
        /// The marks.
        #[serde(flatten)]
        marks: WashMarks,
        /// How it was washed.
        #[serde(default, skip_serializing_if = "String::is_empty")]
        note: String,
    },
    /// A cut or washing marks were stored by mistake: that entry counts no more.
    FabricRetracted {
        /// The cloth.
        fabric: Id,
        /// The entry that is taken back.
        entry: Id,
    },
    /// A cloth left the stash.
    FabricDropped {
        /// The cloth.
        fabric: Id,
        /// Why.
        #[serde(default, skip_serializing_if = "String::is_empty")]
        note: String,
    },
    /// A retired cloth came back.
    FabricRestored {
        /// The cloth.
        fabric: Id,
    },
    /// A pull test was stored.
    TestStored(Tested),
    /// A test was given to a cloth.
    TestAssigned {
        /// The test.
        test: Id,
        /// The cloth.
        fabric: Id,
    },
    /// A test was pulled along another grain than it says.
    TestRegrained {
        /// The test.
        test: Id,
        /// The grain.
        grain: Grain,
    },
    /// A test was pulled by another person than it says.
    TestPulledBy {
        /// The test.
        test: Id,
        /// The person; none where nobody knows.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        pulled_by: Option<Id>,
    },
    /// A test was taken out of account.
    TestDropped {
        /// The test.
        test: Id,
        /// Why.
        #[serde(default, skip_serializing_if = "String::is_empty")]
        note: String,
    },
    /// A dropped test counts again.
    TestRestored {
        /// The test.
        test: Id,
    },
    /// A pattern was added.
    PatternAdded(PatternChange),
    /// Something about a pattern changed.
    PatternChanged {
        /// The pattern.
        pattern: Id,
        /// What changed.
        #[serde(flatten)]
        change: PatternChange,
    },
    /// A pattern was dropped.
    PatternDropped {
        /// The pattern.
        pattern: Id,
    },
    /// A dropped pattern came back.
    PatternRestored {
        /// The pattern.
        pattern: Id,
    },
    /// A role was added to a view.
    RoleAdded {
        /// The pattern.
        pattern: Id,
        /// What it asks.
        #[serde(flatten)]
        change: RoleChange,
    },
    /// Something about a role changed.
    RoleChanged {
        /// The role.
        role: Id,
        /// What changed.
        #[serde(flatten)]
        change: RoleChange,
    },
    /// A role was dropped.
    RoleDropped {
        /// The role.
        role: Id,
    },
    /// A dropped role came back.
    RoleRestored {
        /// The role.
        role: Id,
    },
    /// A length was cut off for a garment.
    FabricCutFor {
        /// The cloth.
        fabric: Id,
        /// How much.
        #[serde(rename = "length_mm", with = "mm")]
        length: Length,
        /// The garment.
        garment: Id,
        /// The role of its view.
        role: Id,
    },
    /// Something was learned of a cloth while it was sewn or worn.
    FabricLearned {
        /// The cloth.
        fabric: Id,
        /// What.
        #[serde(flatten)]
        learned: Learned,
    },
    /// What was learned does not hold.
    LessonDropped {
        /// The cloth.
        fabric: Id,
        /// The entry that told it.
        lesson: Id,
    },
    /// What was learned holds after all.
    LessonRestored {
        /// The cloth.
        fabric: Id,
        /// The entry that told it.
        lesson: Id,
    },
    /// A photograph was kept with a cloth.
    PhotoAdded {
        /// The cloth.
        fabric: Id,
        /// What it is.
        #[serde(flatten)]
        said: PhotoSaid,
    },
    /// A photograph is to be shown before the others.
    PhotoFirst {
        /// The cloth.
        fabric: Id,
        /// The entry that added it.
        of: Id,
    },
    /// A photograph is not to be shown any more.
    PhotoDropped {
        /// The cloth.
        fabric: Id,
        /// The entry that added it.
        of: Id,
    },
    /// A retired photograph is shown again.
    PhotoRestored {
        /// The cloth.
        fabric: Id,
        /// The entry that added it.
        of: Id,
    },
    /// A garment was begun.
    GarmentBegun(GarmentChange),
    /// Something about a garment changed.
    GarmentChanged {
        /// The garment.
        garment: Id,
        /// What changed.
        #[serde(flatten)]
        change: GarmentChange,
    },
    /// A garment was finished.
    GarmentDone {
        /// The garment.
        garment: Id,
    },
    /// A finished garment is worked on again.
    GarmentReopened {
        /// The garment.
        garment: Id,
    },
    /// A garment was given up.
    GarmentDropped {
        /// The garment.
        garment: Id,
        /// Why.
        #[serde(default, skip_serializing_if = "String::is_empty")]
        note: String,
    },
    /// A garment that was given up is taken up again.
    GarmentRestored {
        /// The garment.
        garment: Id,
    },
    /// Somebody who pulls was named, or is now called something else. The only place of a person's name, but for the one
    /// for whom a garment is made: it can be taken out again for good.
    PersonNamed {
        /// The person.
        person: Id,
        /// The name.
        #[serde(default, skip_serializing_if = "String::is_empty")]
        name: String,
    },
    /// Two persons turned out to be one.
    PersonMerged {
        /// The one who was taken for another.
        person: Id,
        /// Who it is.
        same_as: Id,
    },
    /// Somebody took tags to give them, so that nobody else gives them; or gave them back.
    TagsTaken {
        /// Who: a copy of the log, or a handheld.
        holder: Id,
        /// What kind of thing it is.
        by: TagHolder,
        /// Which; none where they are given back.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        tags: Option<TagRange>,
    },
    /// The person chose a unit, of bare numbers and of the texts. The first in a log counts, so that what a bare number
    /// means there never changes.
    UnitsSet {
        /// The unit.
        #[serde(with = "unit")]
        units: Unit,
    },
}

impl Fact {
    /// Takes the names of persons out; whether there was one.
    pub fn forget_names(&mut self) -> bool {
        match self {
            Self::GarmentBegun(change) | Self::GarmentChanged { change, .. } => change.whom.take().is_some(),
            Self::PersonNamed { name, .. } => !core::mem::take(name).is_empty(),
            _ => false,
        }
    }

    /// Whether both say the same; a name that was taken out of one of them is no difference.
    #[must_use]
    pub fn agrees_with(&self, other: &Self) -> bool {
        let (mut one, mut two) = (self.clone(), other.clone());
        *self == *other || (one.forget_names() != two.forget_names() && one == two)
    }
}
