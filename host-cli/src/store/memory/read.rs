//! Questions to the log in memory.

use jiff::Timestamp;
use tenter_core::Unit;

use super::{Memory, damaged};
use crate::log::{
    ByConstruction, Entry, Fabric, Garment, Here, Id, Pattern, Photo, PhotoName, Pooled, StoredTest, Subject, days,
};
use crate::store::{Read, Stop, StoreError, WhichTests, line_of};

pub(super) fn line(entry: &Entry) -> Result<String, StoreError> {
    Ok(line_of(entry.id, &serde_json::to_string(&entry.fact).map_err(damaged)?))
}

impl Memory {
    /// A test as every log shows it: without its cloth, as long as that has not arrived, and to the millisecond.
    fn shown(&self, test: &StoredTest) -> StoredTest {
        let mut shown = test.clone();
        shown.said.pulled = Timestamp::from_millisecond(test.said.pulled.as_millisecond()).unwrap_or_default();
        shown.said.fabric = self.fabric_of(test).map(|fabric| fabric.id);
        shown
    }
}

impl Read for Memory {
    fn fabrics(&self) -> Result<Vec<Fabric>, StoreError> {
        let mut fabrics: Vec<Fabric> = self.fabrics.values().cloned().collect();
        fabrics.sort_by_key(|fabric| (fabric.tag, fabric.id));
        Ok(fabrics)
    }

    fn fabrics_tagged(&self, tag: u16) -> Result<Vec<Fabric>, StoreError> {
        Ok(self.fabrics.values().filter(|fabric| fabric.tag == tag).cloned().collect())
    }

    fn fabric(&self, id: Id) -> Result<Option<Fabric>, StoreError> {
        Ok(self.fabrics.get(&id).cloned())
    }

    fn each_test(
        &self,
        which: WhichTests,
        each: &mut dyn FnMut(StoredTest) -> Result<(), Stop>,
    ) -> Result<(), StoreError> {
        let wanted = |test: &&StoredTest| match which {
            WhichTests::Of(id) => self.fabric_of(test).is_some_and(|fabric| fabric.id == id),
            WhichTests::Inbox => !test.dropped && self.fabric_of(test).is_none(),
            WhichTests::All => !test.dropped,
        };
        let mut tests: Vec<&StoredTest> = self.tests.values().filter(wanted).collect();
        tests.sort_by_key(|test| (test.said.pulled.as_millisecond(), test.id));
        tests.into_iter().try_for_each(|test| Ok(each(self.shown(test))?))
    }

    fn test(&self, id: Id) -> Result<Option<StoredTest>, StoreError> {
        Ok(self.tests.get(&id).map(|test| self.shown(test)))
    }

    fn patterns(&self) -> Result<Vec<Pattern>, StoreError> {
        let mut patterns: Vec<Pattern> = self.patterns.values().cloned().collect();
        for pattern in &mut patterns {
            pattern.roles = self.roles.values().filter(|role| role.pattern == pattern.id).cloned().collect();
        }
        Ok(patterns)
    }

    fn garments(&self) -> Result<Vec<Garment>, StoreError> {
        Ok(self.garments.values().cloned().collect())
    }

    fn photo(&self, name: PhotoName) -> Result<Option<Photo>, StoreError> {
        let photo = self.photos.get(&name);
        if photo.is_none() {
            self.wanted.borrow_mut().names.insert(name);
        }
        Ok(photo.cloned())
    }

    fn each_photo(&self, each: &mut dyn FnMut(Photo) -> Result<(), Stop>) -> Result<(), StoreError> {
        self.wanted.borrow_mut().all = true;
        self.photos.values().try_for_each(|photo| Ok(each(photo.clone())?))
    }

    fn here(&self) -> Here {
        self.here
    }

    fn repeatability(&self) -> Result<ByConstruction, StoreError> {
        let mut pooled = ByConstruction::default();
        for fabric in self.fabrics.values() {
            let tests = self.tests(WhichTests::Of(fabric.id))?;
            let live: Vec<&StoredTest> = tests.iter().filter(|test| !test.dropped).collect();
            let hand = live.iter().fold(Pooled::default(), |sum, test| sum.and(Pooled::of(&test.said.test)));
            let days = if live.len() > 1 { days::retests(fabric, live, self.here) } else { Pooled::default() };
            pooled.add(fabric.construction, hand.and(days));
        }
        Ok(pooled)
    }

    fn units(&self) -> Result<Option<Unit>, StoreError> {
        Ok(self.units)
    }

    fn history(&self, subject: Subject) -> Result<Vec<Entry>, StoreError> {
        Ok(self.history(subject.id()))
    }

    fn each_entry(&self, each: &mut dyn FnMut(&str) -> Result<(), Stop>) -> Result<(), StoreError> {
        self.entries.values().try_for_each(|entry| Ok(each(&line(entry)?)?))
    }

    fn each_arrival(&self, after: u64, each: &mut dyn FnMut(u64, &str) -> Result<(), Stop>) -> Result<(), StoreError> {
        let after = usize::try_from(after).unwrap_or(usize::MAX);
        for (number, id) in (1..).zip(&self.arrivals).skip(after) {
            if let Some(entry) = self.entries.get(id) {
                each(number, &line(entry)?)?;
            }
        }
        Ok(())
    }

    fn count(&self) -> Result<u64, StoreError> {
        Ok(self.arrivals.len() as u64)
    }

    fn faults(&self) -> Result<Vec<String>, StoreError> {
        let whole = self.arrivals.len() == self.entries.len();
        Ok(if whole { Vec::new() } else { vec!["the entries are not all numbered".to_owned()] })
    }
}
