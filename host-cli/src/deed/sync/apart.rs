//! What two logs said differently of the same thing while they were apart.

use std::collections::BTreeMap;

use serde_json::{Map, Value};

use crate::log::{Entry, Fact, Subject};
use crate::store::{Read, StoreError};

/// Something that was changed in two logs before they were joined. Nothing of it is lost: its history holds both.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ChangedApart {
    /// What was changed.
    pub subject: Subject,
    /// Which field of it, as entries call it.
    pub field: String,
    /// The last that one's own log said of it.
    pub mine: Entry,
    /// The last that the other log said of it.
    pub theirs: Entry,
}

impl ChangedApart {
    /// The one of the two that counts: the later one.
    #[must_use]
    pub fn counts(&self) -> &Entry {
        if self.mine.id > self.theirs.id { &self.mine } else { &self.theirs }
    }
}

/// The fields to which an entry gives a new value in place of the one before. What is added beside others, such as a cut, a
/// test or a photograph, takes no other's place.
fn replaced(fact: &Fact) -> Map<String, Value> {
    let retired = |retired| Map::from_iter([("retired".to_owned(), Value::Bool(retired))]);
    match fact {
        Fact::FabricDropped { .. }
        | Fact::TestDropped { .. }
        | Fact::PatternDropped { .. }
        | Fact::RoleDropped { .. }
        | Fact::GarmentDropped { .. } => retired(true),
        Fact::FabricRestored { .. }
        | Fact::TestRestored { .. }
        | Fact::PatternRestored { .. }
        | Fact::RoleRestored { .. }
        | Fact::GarmentRestored { .. } => retired(false),
        Fact::FabricChanged { .. }
        | Fact::TestAssigned { .. }
        | Fact::TestRegrained { .. }
        | Fact::TestPulledBy { .. }
        | Fact::PatternChanged { .. }
        | Fact::RoleChanged { .. }
        | Fact::GarmentChanged { .. }
        | Fact::PersonNamed { .. }
        | Fact::PersonMerged { .. } => {
            let Ok(Value::Object(mut fields)) = serde_json::to_value(fact) else { return Map::new() };
            let own = match fact {
                Fact::FabricChanged { .. } => "fabric",
                Fact::PatternChanged { .. } => "pattern",
                Fact::RoleChanged { .. } => "role",
                Fact::GarmentChanged { .. } => "garment",
                Fact::PersonNamed { .. } | Fact::PersonMerged { .. } => "person",
                _ => "test",
            };
            fields.retain(|name, _| name != "kind" && name != own);
            fields
        }
        _ => Map::new(),
    }
}

type Said = BTreeMap<(Subject, String), (Value, Entry)>;

/// The last value of each field.
fn said<'e>(entries: impl Iterator<Item = &'e Entry>) -> Said {
    let mut said = Said::new();
    for entry in entries {
        for (field, value) in replaced(&entry.fact) {
            said.insert((entry.subject(), field), (value, entry.clone()));
        }
    }
    said
}

/// Of entries that only the one log has, and of those that only the other has, each in order: what both changed, and not to the
/// same.
pub(super) fn both<'e>(
    mine: impl Iterator<Item = &'e Entry>,
    theirs: impl Iterator<Item = &'e Entry>,
) -> Vec<ChangedApart> {
    let mut theirs = said(theirs);
    let both = said(mine).into_iter().filter_map(|((subject, field), (value, mine))| {
        let key = (subject, field);
        let (other, theirs) = theirs.remove(&key)?;
        (other != value).then(|| ChangedApart { subject: key.0, field: key.1, mine, theirs })
    });
    both.collect()
}

/// What a thing is called now: a cloth by its tag and name, and so on; none of a thing without a name.
///
/// # Errors
///
/// A log that cannot be read.
pub fn called(read: &dyn Read, subject: Subject) -> Result<Option<String>, StoreError> {
    let name = match subject {
        Subject::Fabric(id) => read.fabric(id)?.map(|fabric| format!("{} {}", fabric.tag, fabric.name)),
        Subject::Pattern(id) => {
            read.patterns()?.into_iter().find(|pattern| pattern.id == id).map(|pattern| pattern.name)
        }
        Subject::Role(id) => {
            let roles = read.patterns()?.into_iter().flat_map(|pattern| pattern.roles);
            roles.into_iter().find(|role| role.id == id).map(|role| role.name)
        }
        Subject::Garment(id) => {
            read.garments()?.into_iter().find(|garment| garment.id == id).map(|garment| garment.name)
        }
        Subject::Person(id) => read.people()?.name(Some(id)).map(str::to_owned),
        Subject::Test(_) | Subject::Log(_) | Subject::Tags => None,
    };
    Ok(name)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::log::{FabricChange, Id};

    fn entry(ms: i64, fact: Fact) -> Entry {
        Entry::new(Id::of(jiff::Timestamp::from_millisecond(ms).unwrap(), 0), fact)
    }

    #[test]
    fn only_what_both_say_differently_is_told() {
        let fabric = Id::of(jiff::Timestamp::UNIX_EPOCH, 7);
        let changed = |name: &str, place: &str| {
            let text = |text: &str| Some(text.to_owned()).filter(|text| !text.is_empty());
            let change = FabricChange { name: text(name), place: text(place), ..FabricChange::default() };
            Fact::FabricChanged { fabric, change }
        };
        let mine = [entry(1, changed("twill", "")), entry(4, changed("", "loft")), entry(5, changed("drill", "shelf"))];
        let theirs = [
            entry(2, changed("", "shelf")),
            entry(7, changed("rib", "")),
            entry(8, Fact::FabricDropped { fabric, note: String::new() }),
        ];
        let apart = both(mine.iter(), theirs.iter());
        let told: Vec<_> = apart.iter().map(|one| (one.field.as_str(), one.mine.id, one.theirs.id)).collect();
        assert_eq!(told, [("name", mine[2].id, theirs[1].id)], "they agree on the place");
        assert_eq!(apart[0].counts(), &theirs[1]);
        let other = [entry(9, Fact::FabricRestored { fabric })];
        assert_eq!(both(other.iter(), theirs.iter())[0].field, "retired");
    }
}
