//! What a page that keeps a log in memory must keep elsewhere, and what it may be asked to bring from there.

use std::collections::BTreeSet;

use super::Memory;
use super::read::line;
use crate::log::{Fact, Id, Photo, PhotoName};
use crate::store::StoreError;

/// What has changed, by name.
#[derive(Debug, Default, PartialEq, Eq)]
pub struct Changed {
    pub entries: BTreeSet<Id>,
    /// Those that are not new.
    pub rewritten: BTreeSet<Id>,
    pub photos: BTreeSet<PhotoName>,
    pub drafts: BTreeSet<String>,
}

/// An entry as it is to be kept.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct KeptEntry {
    /// Its identifier.
    pub id: Id,
    /// Whether it stands for one that was kept under the same identifier before: a person in it was forgotten.
    pub replaces: bool,
    /// The entry, as a line of an exported log holds it.
    pub line: String,
    /// Whether it stores a pull test.
    pub is_test: bool,
}

/// A draft as it is to be kept.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct KeptDraft {
    /// Its name.
    pub name: String,
    /// Its text; none where it is to be forgotten.
    pub text: Option<String>,
}

/// What is to be kept elsewhere.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Unkept {
    /// Entries that are new, in the order of their arrival, and those in which a person was forgotten.
    pub entries: Vec<KeptEntry>,
    /// Photographs that are new.
    pub photos: Vec<Photo>,
    /// Drafts that are not what they were.
    pub drafts: Vec<KeptDraft>,
}

impl Unkept {
    /// Whether there is nothing to keep.
    #[must_use]
    pub const fn is_empty(&self) -> bool {
        self.entries.is_empty() && self.photos.is_empty() && self.drafts.is_empty()
    }
}

/// Photographs that were asked for and are not in memory: whoever keeps them elsewhere brings them and asks again.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Wanted {
    /// Their names.
    pub names: BTreeSet<PhotoName>,
    /// Whether every photograph was asked for.
    pub all: bool,
}

impl Memory {
    /// What has changed since it was last asked for.
    ///
    /// # Errors
    ///
    /// [`StoreError::Damaged`] where an entry cannot be written.
    pub fn unkept(&mut self) -> Result<Unkept, StoreError> {
        let changed = core::mem::take(&mut self.changed);
        if changed == Changed::default() {
            return Ok(Unkept::default());
        }
        let is_changed = |id: &&Id| changed.entries.contains(id) || changed.rewritten.contains(id);
        let arrivals = self.arrivals.iter().filter(is_changed);
        let entries = arrivals.filter_map(|id| self.entries.get(id)).map(|entry| {
            let is_test = matches!(entry.fact, Fact::TestStored(_));
            let replaces = !changed.entries.contains(&entry.id);
            Ok(KeptEntry { id: entry.id, replaces, line: line(entry)?, is_test })
        });
        let draft = |name: String| KeptDraft { text: self.drafts.get(&name).cloned(), name };
        Ok(Unkept {
            entries: entries.collect::<Result<_, StoreError>>()?,
            photos: changed.photos.iter().filter_map(|name| self.photos.get(name).cloned()).collect(),
            drafts: changed.drafts.into_iter().map(draft).collect(),
        })
    }

    /// Which photographs were asked for and not found since it was last asked.
    #[must_use]
    pub fn wanted(&mut self) -> Wanted {
        core::mem::take(self.wanted.get_mut())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::log::{FabricChange, GarmentChange, Here, Subject};
    use crate::store::{Change as _, Drafts as _, Read as _, Store as _};

    fn here() -> Here {
        let offset = |_| jiff::tz::Offset::UTC;
        Here { now: || "2026-03-01T12:00:00Z".parse().unwrap(), random: || 7, offset }
    }

    #[test]
    fn what_changed_is_handed_out_once_in_the_order_in_which_it_came() {
        let mut log = Memory::new(here());
        let added = Fact::FabricAdded(FabricChange { tag: Some(1), name: Some("x".into()), ..FabricChange::default() });
        log.add(&[added.clone(), added]).unwrap();
        log.set_draft("pull", Some("begun")).unwrap();
        log.set_draft("gone", None).unwrap();
        let unkept = log.unkept().unwrap();
        let mut lines = Vec::new();
        log.each_entry(&mut |line| {
            lines.push(line.to_owned());
            Ok(())
        })
        .unwrap();
        assert_eq!(unkept.entries.iter().map(|entry| entry.line.clone()).collect::<Vec<_>>(), lines);
        let drafts: Vec<(&str, Option<&str>)> =
            unkept.drafts.iter().map(|draft| (draft.name.as_str(), draft.text.as_deref())).collect();
        assert_eq!(drafts, [("gone", None), ("pull", Some("begun"))]);
        assert!(log.unkept().unwrap().is_empty());
    }

    #[test]
    fn an_entry_in_which_a_person_is_forgotten_is_kept_anew() {
        let mut log = Memory::new(here());
        let begun = GarmentChange {
            number: Some(1),
            name: Some("coat".into()),
            whom: Some("Somebody".into()),
            ..GarmentChange::default()
        };
        let entries = log.add(&[Fact::GarmentBegun(begun)]).unwrap();
        assert!(log.unkept().unwrap().entries[0].line.contains("Somebody"));
        log.forget_names(Subject::Garment(entries[0].id)).unwrap();
        let again = log.unkept().unwrap();
        assert_eq!(again.entries.iter().map(|entry| entry.replaces).collect::<Vec<_>>(), [true]);
        assert!(!again.entries[0].line.contains("Somebody"));
    }

    #[test]
    fn a_photograph_that_is_kept_elsewhere_is_asked_for() {
        let mut log = Memory::new(here());
        let name = PhotoName::of(b"elsewhere");
        assert_eq!(log.photo(name).unwrap(), None);
        assert_eq!(log.wanted(), Wanted { names: BTreeSet::from([name]), all: false });
        assert_eq!(log.wanted(), Wanted::default());
        log.each_photo(&mut |_| Ok(())).unwrap();
        assert!(log.wanted().all);
    }
}
