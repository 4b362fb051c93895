//! What a class wrote on its sheet: a name, a cloth and the readings a row. Cloths that the log does not know are added,
//! people too.
//!
//! Needs the columns `name`, `cloth` and `readings`; takes `marks`, `grain`, `settling`, `held`, `division`, `ends`, `load`,
//! `planned`, `pulled`, `construction`, `fibre` and `note`. Where no marks stand in a column of their own, they are the first
//! of the readings. A bare number is in centimetres. Without `pulled` it was today.

use std::collections::HashMap;

use jiff::Timestamp;
use tenter_core::PullTest;

use super::people::Pullers;
use super::read::{believe, typed, when};
use super::{as_typed, made};
use crate::exchange::{ImportError, RowFault, TableError};
use crate::input::cloth::{TypedCloth, added};
use crate::input::doubt::ClothFacts;
use crate::input::synonym::{CONSTRUCTION, is};
use crate::input::{BARE, Field, TypedTest, Why, Wrong, cloth, pull_test, row};
use crate::log::{Entry, Fact, FreeTags, Here, Id, Ids, Marks, StoredTest, Subject, Tag, Tested};
use crate::store::{Read, WhichTests};

/// The columns that must be there.
const NEEDED: [&str; 3] = ["name", "cloth", "readings"];
/// The others.
const TAKEN: [&str; 12] = [
    "marks",
    "grain",
    "settling",
    "held",
    "division",
    "ends",
    "load",
    "planned",
    "pulled",
    "construction",
    "fibre",
    "note",
];

/// Whether these are the heads of what a class wrote.
pub fn are_heads(heads: &[String]) -> bool {
    ["cloth", "readings"].into_iter().all(|head| heads.iter().any(|one| one == head))
}

/// Refuses heads that are not known, or one that is missing.
///
/// # Errors
///
/// The first of them.
pub fn check_heads(heads: &[String]) -> Result<(), TableError> {
    let known = || NEEDED.into_iter().chain(TAKEN);
    if let Some(head) = NEEDED.into_iter().find(|head| !heads.iter().any(|one| one == head)) {
        return Err(TableError::NoColumn { head, known: known().collect() });
    }
    match heads.iter().find(|head| !head.is_empty() && !known().any(|known| known == *head)) {
        Some(head) => Err(TableError::UnknownColumn(head.clone())),
        None => Ok(()),
    }
}

/// A cloth that a row can mean.
struct Cloth {
    name: String,
    tag: Tag,
    id: Id,
    facts: ClothFacts,
}

/// What rows are read against.
pub struct ClassRows<'r> {
    read: &'r dyn Read,
    here: Here,
    /// The time of all rows that state none.
    now: Timestamp,
    as_read: bool,
    pullers: Pullers,
    cloths: Vec<Cloth>,
    given: Vec<u16>,
    tags: FreeTags,
    ids: Ids,
    /// Rows that said the same so far.
    seen: HashMap<String, usize>,
}

impl<'r> ClassRows<'r> {
    /// Against what the log holds.
    ///
    /// # Errors
    ///
    /// A log that cannot be read.
    pub fn of(read: &'r dyn Read, as_read: bool, here: Here) -> Result<Self, ImportError> {
        let fabrics = read.fabrics()?;
        let given = fabrics.iter().map(|fabric| fabric.tag.number()).collect();
        let newest = fabrics.iter().map(|fabric| fabric.id).max();
        let live = fabrics.into_iter().filter(|fabric| !fabric.dropped);
        let cloths = live.map(|fabric| {
            let facts = ClothFacts { construction: Some(fabric.construction), width: fabric.width };
            Cloth { name: fabric.name, tag: fabric.tag, id: fabric.id, facts }
        });
        Ok(Self {
            read,
            here,
            now: here.now(),
            as_read,
            pullers: Pullers::of(read, here)?,
            cloths: cloths.collect(),
            given,
            tags: read.free_tags()?,
            ids: Ids::after(here, newest),
            seen: HashMap::new(),
        })
    }

    /// The entries of a row: a person and a cloth where they are new, and a test; the entry that is there where the log
    /// knows it.
    ///
    /// # Errors
    ///
    /// The first cell that cannot be read, or readings that should not be believed.
    pub fn entries(&mut self, cells: &HashMap<&str, &str>) -> Result<Vec<Entry>, RowFault> {
        let cell = |head: &str| as_typed(cells.get(head).copied().unwrap_or_default());
        if cell("name").is_empty() {
            return Err(Wrong::new(Field::Name, "", Why::Missing).into());
        }
        let (pulled_by, person) = self.pullers.named(cell("name"))?;
        let mut entries: Vec<Entry> = person.into_iter().collect();
        let at = self.cloth(&cell, &mut entries)?;
        // Where the marks have no column, they come first.
        let words = row::words(cell("readings"));
        let (marks, readings) = match (cell("marks"), words.split_first()) {
            ("", Some((first, others))) => (first.clone(), others.join(" ")),
            (marks, _) => (marks.to_owned(), words.join(" ")),
        };
        let with_marks = |head: &str| match head {
            "gauge" => marks.as_str(),
            "readings" => readings.as_str(),
            other => cell(other),
        };
        let test = pull_test(&typed(&with_marks)?, BARE)?;
        let note = cloth::short(Field::Note, cell("note"))?;
        let pulled = match cell("pulled") {
            "" => self.now,
            text => when(text, self.here)?.0,
        };
        if pulled > self.now {
            return Err(Wrong::new(Field::Pulled, cell("pulled"), Why::Ahead).into());
        }
        let Some(cloth) = self.cloths.get(at) else { return Ok(entries) };
        let as_read = believe(&test, &marks, cloth.facts, (BARE, self.as_read))?;
        if let Some(known) = self.known(at, pulled_by, &test, &note)? {
            entries.push(known);
            return Ok(entries);
        }
        let Some(cloth) = self.cloths.get(at) else { return Ok(entries) };
        let (fabric, tag, device) = (Some(cloth.id), None, None);
        let said = Tested {
            fabric,
            tag,
            pulled,
            clock_unset: false,
            device,
            pulled_by,
            marks: Marks::default(),
            note,
            as_read,
            test,
        };
        entries.push(Entry::new(self.ids.next(), Fact::TestStored(said)));
        Ok(entries)
    }

    /// The place of the cloth that a row means; a new name is a new cloth.
    fn cloth<'c>(&mut self, cell: &impl Fn(&str) -> &'c str, entries: &mut Vec<Entry>) -> Result<usize, RowFault> {
        let text = cell("cloth");
        if let Some(place) = self.cloths.iter().position(|cloth| is(&cloth.name, text)) {
            return Ok(place);
        }
        if let Some(tag) = Tag::parse(text) {
            let place = self.cloths.iter().position(|cloth| cloth.tag == tag);
            return place.ok_or_else(|| Wrong::new(Field::Tag, text, Why::OnNoCloth).into());
        }
        let construction = match cell("construction") {
            "" => None,
            text => Some(CONSTRUCTION.read(Field::Construction, text)?),
        };
        let said = |head: &str| Some(cell(head)).filter(|text| !text.is_empty()).map(str::to_owned);
        let mut change = added(&TypedCloth {
            name: Some(text.to_owned()),
            fibre: said("fibre"),
            construction,
            ..TypedCloth::default()
        })?;
        let tag = self.tags.next(&self.given);
        let tag = tag.ok_or_else(|| Wrong::new(Field::Tag, text, Why::NoTagLeft(self.tags.range)))?;
        change.tag = Some(tag);
        self.given.push(tag);
        let id = self.ids.next();
        let name = change.name.clone().unwrap_or_default();
        entries.push(Entry::new(id, Fact::FabricAdded(change)));
        let facts = ClothFacts { construction, width: None };
        self.cloths.push(Cloth { name, tag: tag.into(), id, facts });
        Ok(self.cloths.len().saturating_sub(1))
    }

    /// The entry of a test that the log holds already: of two rows that say the same the first is the first that is
    /// there, and the second the second.
    fn known(&mut self, at: usize, by: Option<Id>, test: &PullTest, note: &str) -> Result<Option<Entry>, RowFault> {
        let Some(cloth) = self.cloths.get(at) else { return Ok(None) };
        let says = [&made(&TypedTest::of(test)).join("\0"), note, &cloth.id.to_string(), &format!("{by:?}")].join("\0");
        let nth = self.seen.entry(says).or_default();
        let same = |stored: &StoredTest| {
            let said = &stored.said;
            (said.pulled_by, &said.test, said.note.as_str()) == (by, test, note)
        };
        let found = self.read.tests(WhichTests::Of(cloth.id))?.into_iter().filter(same).nth(*nth);
        *nth += 1;
        match found {
            Some(found) => Ok(self.read.history(Subject::Test(found.id))?.into_iter().next()),
            None => Ok(None),
        }
    }
}
