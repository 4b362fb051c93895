//! Questions to the log in memory.

use jiff::Timestamp;
use tenter_core::Unit;

use super::{Memory, damaged};
use crate::log::{
    Desk, Entry, Fabric, Garment, Hands, Here, Id, Pattern, People, Photo, PhotoName, StoredTest, Subject, days,
};
use crate::store::{LogFault, Read, Stop, StoreError, WhichTests, line_of};

pub(super) fn line(entry: &Entry) -> Result<String, StoreError> {
    Ok(line_of(entry.id, &entry.body().map_err(damaged)?))
}

impl Memory {
    /// A test as every log shows it: without its cloth, as long as that has not arrived, and to the millisecond; with
    /// who is meant by the one who pulled it.
    fn shown(&self, test: &StoredTest, people: &People) -> StoredTest {
        let mut shown = test.clone();
        shown.said.pulled = Timestamp::from_millisecond(test.said.pulled.as_millisecond()).unwrap_or_default();
        shown.said.fabric = self.fabric_of(test).map(|fabric| fabric.id);
        shown.said.pulled_by = test.said.pulled_by.map(|person| people.resolve(person));
        shown
    }
}

impl Read for Memory {
    fn fabrics(&self) -> Result<Vec<Fabric>, StoreError> {
        let mut fabrics: Vec<Fabric> = self.fabrics.values().cloned().collect();
        fabrics.sort_by_key(|fabric| (fabric.tag, fabric.id));
        Fabric::letter(&mut fabrics);
        Ok(fabrics)
    }

    fn fabrics_tagged(&self, tag: u16) -> Result<Vec<Fabric>, StoreError> {
        let mut fabrics: Vec<Fabric> =
            self.fabrics.values().filter(|fabric| fabric.tag.number() == tag).cloned().collect();
        Fabric::letter(&mut fabrics);
        Ok(fabrics)
    }

    fn fabric(&self, id: Id) -> Result<Option<Fabric>, StoreError> {
        let Some(fabric) = self.fabrics.get(&id) else { return Ok(None) };
        Ok(self.fabrics_tagged(fabric.tag.number())?.into_iter().find(|fabric| fabric.id == id))
    }

    fn each_test(
        &self,
        which: WhichTests,
        each: &mut dyn FnMut(StoredTest) -> Result<(), Stop>,
    ) -> Result<(), StoreError> {
        let mut tests: Vec<&StoredTest> = match which {
            WhichTests::Of(id) => {
                let of = self.tests_of.get(&id).filter(|_| self.fabrics.contains_key(&id));
                of.into_iter().flatten().filter_map(|test| self.tests.get(test)).collect()
            }
            WhichTests::Inbox => {
                let is_loose = |test: &&StoredTest| !test.dropped && self.fabric_of(test).is_none();
                self.tests.values().filter(is_loose).collect()
            }
            WhichTests::ByCloth => {
                let of_cloth = |test: &&StoredTest| !test.dropped && self.fabric_of(test).is_some();
                self.tests.values().filter(of_cloth).collect()
            }
            WhichTests::All => self.tests.values().filter(|test| !test.dropped).collect(),
        };
        let by_cloth = |test: &StoredTest| {
            let of = || (self.fabric_of(test).map(|fabric| fabric.id), test.said.test.grain().word());
            (which == WhichTests::ByCloth).then(of)
        };
        tests.sort_by_cached_key(|test| (by_cloth(test), test.said.pulled.as_millisecond(), test.id));
        let people = self.everybody();
        tests.into_iter().try_for_each(|test| Ok(each(self.shown(test, &people))?))
    }

    fn test(&self, id: Id) -> Result<Option<StoredTest>, StoreError> {
        Ok(self.tests.get(&id).map(|test| self.shown(test, &self.everybody())))
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

    fn people(&self) -> Result<People, StoreError> {
        Ok(self.everybody())
    }

    fn repeatability(&self) -> Result<Hands, StoreError> {
        let mut hands = Hands::default();
        for fabric in self.fabrics.values() {
            for (person, said) in days::hands(fabric, &self.tests(WhichTests::Of(fabric.id))?, self.here) {
                hands.add(person, fabric.construction, said);
            }
        }
        Ok(hands)
    }

    fn desk(&self) -> Result<Desk, StoreError> {
        Ok(self.kept_desk())
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

    fn faults(&self) -> Result<Vec<LogFault>, StoreError> {
        let whole = self.arrivals.len() == self.entries.len();
        Ok(if whole { Vec::new() } else { vec![LogFault::Unnumbered] })
    }
}
