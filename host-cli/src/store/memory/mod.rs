//! A log in memory, without a file or a server: for a trial, and for a page that keeps the entries itself.
//!
//! Whoever keeps it hands the pieces in with [`Store::take`] at the start, and after each change takes out what is to be
//! kept with [`Memory::unkept`].

mod read;
mod unkept;

use std::cell::RefCell;
use std::collections::{BTreeMap, BTreeSet};
use std::convert::Infallible;

use tenter_core::Unit;

use super::naming::{self, Naming};
use super::{Drafts, LogPiece, LogWithDrafts, Make, Merged, Stop, Store, StoreError, Written};
use crate::log::{
    Desk, Entry, Fabric, Fact, Garment, Here, Id, Pattern, People, Person, Photo, PhotoName, Pooled, Role, StoredTest,
    Subject, fold,
};

pub use unkept::{KeptDraft, KeptEntry, Unkept, Wanted};

/// What it is called in an error.
const PLACE: &str = "memory";

/// What one cloth's tests say of each who pulled them.
type PooledByPerson = Vec<(Option<Id>, Pooled)>;

/// A log in memory.
#[derive(Debug)]
pub struct Memory {
    here: Here,
    entries: BTreeMap<Id, Entry>,
    /// Identifiers in the order in which they came.
    arrivals: Vec<Id>,
    /// The entries about each thing.
    about: BTreeMap<Id, BTreeSet<Id>>,
    fabrics: BTreeMap<Id, Fabric>,
    tests: BTreeMap<Id, StoredTest>,
    /// The tests that are said to be of each cloth, arrived or not.
    tests_of: BTreeMap<Id, BTreeSet<Id>>,
    patterns: BTreeMap<Id, Pattern>,
    roles: BTreeMap<Id, Role>,
    garments: BTreeMap<Id, Garment>,
    people: BTreeMap<Id, Person>,
    photos: BTreeMap<PhotoName, Photo>,
    units: Option<Unit>,
    drafts: BTreeMap<String, String>,
    who: Option<Id>,
    /// What the tests of each cloth say of everybody who pulled them, as far as that was asked since they changed.
    hands: RefCell<BTreeMap<Id, PooledByPerson>>,
    /// What has changed since it was last taken out.
    changed: unkept::Changed,
    /// Which photographs were asked for that are not here.
    wanted: RefCell<Wanted>,
}

impl Memory {
    /// An empty log.
    #[must_use]
    pub fn new(here: Here) -> Self {
        Self {
            here,
            entries: BTreeMap::new(),
            arrivals: Vec::new(),
            about: BTreeMap::new(),
            fabrics: BTreeMap::new(),
            tests: BTreeMap::new(),
            tests_of: BTreeMap::new(),
            patterns: BTreeMap::new(),
            roles: BTreeMap::new(),
            garments: BTreeMap::new(),
            people: BTreeMap::new(),
            photos: BTreeMap::new(),
            units: None,
            drafts: BTreeMap::new(),
            who: None,
            hands: RefCell::default(),
            changed: unkept::Changed::default(),
            wanted: RefCell::default(),
        }
    }

    /// Takes an entry in, unless it is here; what it is about is folded again by [`Self::fold`].
    fn insert(&mut self, entry: Entry) -> Option<Subject> {
        let (id, subject) = (entry.id, entry.subject());
        if self.entries.contains_key(&id) {
            return None;
        }
        if let Fact::UnitsSet { units } = entry.fact {
            // What was said first holds; another's log that is merged changes nothing.
            self.units.get_or_insert(units);
        }
        self.entries.insert(id, entry);
        self.changed.entries.insert(id);
        self.arrivals.push(id);
        self.about.entry(subject.id()).or_default().insert(id);
        Some(subject)
    }

    fn history(&self, id: Id) -> Vec<Entry> {
        let ids = self.about.get(&id).into_iter().flatten();
        ids.filter_map(|id| self.entries.get(id).cloned()).collect()
    }

    /// Brings what entries were about up to date.
    fn fold(&mut self, touched: BTreeSet<Subject>) {
        for subject in touched {
            let (id, history) = (subject.id(), self.history(subject.id()));
            let hands = self.hands.get_mut();
            match subject {
                Subject::Fabric(_) => {
                    hands.remove(&id);
                    drop(fold::fabric(history).map(|fabric| self.fabrics.insert(id, fabric)));
                }
                Subject::Test(_) => {
                    let Some(test) = fold::test(history) else { continue };
                    let now = test.said.fabric;
                    let before = self.tests.insert(id, test).and_then(|test| test.said.fabric);
                    for fabric in [before, now].into_iter().flatten() {
                        hands.remove(&fabric);
                    }
                    if let Some(tests) = before.and_then(|fabric| self.tests_of.get_mut(&fabric)) {
                        tests.remove(&id);
                    }
                    if let Some(fabric) = now {
                        self.tests_of.entry(fabric).or_default().insert(id);
                    }
                }
                Subject::Pattern(_) => drop(fold::pattern(history).map(|pattern| self.patterns.insert(id, pattern))),
                Subject::Role(_) => drop(fold::role(history).map(|role| self.roles.insert(id, role))),
                Subject::Garment(_) => drop(fold::garment(history).map(|garment| self.garments.insert(id, garment))),
                Subject::Person(_) => {
                    hands.clear();
                    drop(fold::person(history).map(|person| self.people.insert(id, person)));
                }
                Subject::Log(_) | Subject::Tags => {}
            }
        }
    }

    fn take_in(&mut self, pieces: Vec<LogPiece>) -> Merged {
        let mut merged = Merged::default();
        let mut touched = BTreeSet::new();
        for piece in pieces {
            match piece {
                LogPiece::Photo(photo) => {
                    self.changed.photos.insert(photo.name());
                    merged.photos += u64::from(self.photos.insert(photo.name(), photo).is_none());
                }
                LogPiece::Entry(entry) => {
                    if let Some(known) = self.entries.get(&entry.id) {
                        merged.known += 1;
                        merged.differ += u64::from(!known.fact.agrees_with(&entry.fact));
                    } else {
                        merged.new += 1;
                        touched.extend(self.insert(*entry));
                    }
                }
            }
        }
        self.fold(touched);
        merged
    }

    /// Takes in what was kept of this log before, in the order of its arrival. It need not be kept again.
    pub fn bring(&mut self, pieces: Vec<LogPiece>) {
        self.take_in(pieces);
        self.changed = unkept::Changed::default();
    }

    /// The tags that cloths wear, retired ones too.
    #[must_use]
    pub fn given_tags(&self) -> Vec<u16> {
        self.fabrics.values().map(|fabric| fabric.tag.number()).collect()
    }

    fn kept_desk(&self) -> Desk {
        Desk::read(self.drafts.get(Desk::NAME).map(String::as_str))
    }

    fn everybody(&self) -> People {
        People::new(self.people.values().cloned().collect())
    }

    /// The cloth of a test, where it has arrived.
    fn fabric_of(&self, test: &StoredTest) -> Option<&Fabric> {
        test.said.fabric.and_then(|fabric| self.fabrics.get(&fabric))
    }
}

/// The value of what cannot fail.
fn sure<T>(result: Result<T, Infallible>) -> T {
    match result {
        Ok(value) => value,
        Err(never) => match never {},
    }
}

fn damaged(_: serde_json::Error) -> StoreError {
    StoreError::Damaged { place: PLACE.to_owned() }
}

impl Store for Memory {
    fn write(&mut self, once: Option<Id>, make: &mut Make<'_>) -> Result<Written, StoreError> {
        let now = self.here.now();
        if let Some(once) = once {
            let since = naming::since(once, now);
            if let Some((_, entry)) = self.entries.range(since..).find(|(id, _)| id.drawn() == once.drawn()) {
                return Ok(Written::Before(Box::new(entry.clone())));
            }
        }
        let facts = make(&*self)?;
        naming::possible(now)?;
        // Nothing below can fail, so all of it is stored or, above, nothing.
        let newest = |below: Option<Id>| {
            Ok(match below {
                Some(below) => self.entries.range(..below).next_back(),
                None => self.entries.last_key_value(),
            }
            .map(|(id, _)| *id))
        };
        let who = self.who.or(self.kept_desk().who);
        let mut naming = sure(Naming::begin(now, self.here.random, once, newest)).by(who);
        let (mut entries, mut touched) = (Vec::with_capacity(facts.len()), BTreeSet::new());
        for fact in facts {
            let last_about = |subject| Ok(self.about.get(&subject).and_then(|ids| ids.last().copied()));
            let entry = sure(naming.name(fact, last_about));
            touched.extend(self.insert(entry.clone()));
            entries.push(entry);
        }
        self.fold(touched);
        Ok(Written::New(entries))
    }

    fn take(&mut self, pieces: &mut dyn Iterator<Item = Result<LogPiece, Stop>>) -> Result<Merged, StoreError> {
        let pieces: Vec<LogPiece> = pieces.collect::<Result<_, Stop>>()?;
        // One that cannot be written as JSON could not be read again.
        for piece in &pieces {
            if let LogPiece::Entry(entry) = piece {
                entry.body().map_err(damaged)?;
            }
        }
        Ok(self.take_in(pieces))
    }

    fn forget_names(&mut self, of: Subject) -> Result<(), StoreError> {
        for id in self.about.get(&of.id()).into_iter().flatten() {
            if let Some(entry) = self.entries.get_mut(id) {
                entry.fact.forget_names();
                self.changed.rewritten.insert(*id);
            }
        }
        self.fold(BTreeSet::from([of]));
        Ok(())
    }

    fn forget_photos(&mut self, names: &[PhotoName]) -> Result<u64, StoreError> {
        let had = self.photos.len();
        self.photos.retain(|name, _| !names.contains(name));
        Ok(had.abs_diff(self.photos.len()) as u64)
    }

    fn rebuild(&mut self) -> Result<(), StoreError> {
        self.fold(self.entries.values().map(Entry::subject).collect());
        Ok(())
    }

    fn speak_as(&mut self, who: Id) {
        self.who = Some(who);
    }
}

impl Drafts for Memory {
    fn draft(&self, name: &str) -> Result<Option<String>, StoreError> {
        Ok(self.drafts.get(name).cloned())
    }

    fn drafts_under(&self, name: &str) -> Result<Vec<(String, String)>, StoreError> {
        let name = format!("{name}/");
        let under = self.drafts.range(name.clone()..).take_while(|(other, _)| other.starts_with(&name));
        Ok(under.map(|(name, text)| (name.clone(), text.clone())).collect())
    }

    fn set_draft(&mut self, name: &str, text: Option<&str>) -> Result<(), StoreError> {
        self.changed.drafts.insert(name.to_owned());
        match text {
            Some(text) => drop(self.drafts.insert(name.to_owned(), text.to_owned())),
            None => drop(self.drafts.remove(name)),
        }
        Ok(())
    }
}

impl LogWithDrafts for Memory {
    fn take_finished(
        &mut self,
        pieces: &mut dyn Iterator<Item = Result<LogPiece, Stop>>,
        draft: &str,
    ) -> Result<Merged, StoreError> {
        let merged = self.take(pieces)?;
        self.set_draft(draft, None)?;
        Ok(merged)
    }
}
