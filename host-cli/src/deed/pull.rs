//! Storing a pull test, retiring one and returning it.

use jiff::Timestamp;
use tenter_core::Unit;

use super::people::{self, NamedPuller};
use super::{Done, Refused, find};
use crate::input::cloth::short;
use crate::input::row::{self, RowPart, TestRow};
use crate::input::synonym::GRAIN;
use crate::input::{
    CheckInput, ClothFacts, Field, TypedAsked, TypedCheck, TypedPull, TypedTest, TypedWants, Wrong, check, when,
};
use crate::log::{Entry, Fabric, Fact, Here, Id, Ids, Marks, StoredTest, Tested};
use crate::store::{Change as _, LogPiece, LogWithDrafts, Read, StoreError};

/// A pull test that was typed at once, read and dated.
#[derive(Debug)]
pub struct Typed {
    /// The readings and what is asked of them.
    pub input: CheckInput,
    pulled: Timestamp,
    note: String,
    by: Option<String>,
}

/// Reads a test whose readings were all typed.
///
/// # Errors
///
/// The first field that cannot be read.
pub fn typed(typed: &TypedPull, here: Here) -> Result<Typed, Wrong> {
    let input = check(&typed.check)?;
    let pulled = typed.at.as_deref().map_or_else(|| Ok(here.now()), |text| when::past(Field::Pulled, text, here))?;
    let note = short(Field::Note, typed.note.as_deref().unwrap_or_default())?;
    Ok(Typed { input, pulled, note, by: typed.by.clone() })
}

/// Reads the tests of a row, of which the first begins with its grain; none where there are no words.
///
/// # Errors
///
/// The first field that cannot be read.
pub fn typed_in_a_row(words: &[String], settling: bool, unit: Option<Unit>, here: Here) -> Result<Vec<Typed>, Wrong> {
    if words.is_empty() {
        return Ok(Vec::new());
    }
    let (first, further) = row::rows(None, words.iter().cloned().map(RowPart::Word).collect());
    let test = |row: &TestRow| {
        let wants = TypedWants { wants: row.wants.clone(), ..TypedWants::default() };
        let asked = TypedAsked { wants, unit, ..TypedAsked::default() };
        let check = TypedCheck {
            test: TypedTest { settling, ..row.test() },
            asked,
            scatter: None,
            construction: None,
            as_read: false,
        };
        typed(&TypedPull { check, at: None, note: None, by: None }, here)
    };
    core::iter::once(&first).chain(&further).map(test).collect()
}

/// Stores tests of a cloth that one person pulled; hands back the cloth and the person.
///
/// # Errors
///
/// No such cloth, more stretch than it gives, a name that cannot be one, or readings that should not be believed and that
/// nobody stands by.
pub fn store(read: &dyn Read, which: &str, tests: &mut [Typed]) -> Done<(Fabric, NamedPuller)> {
    let fabric = find::live_fabric(read, which)?;
    let known = ClothFacts { construction: Some(fabric.construction), width: fabric.width };
    let mut puller = people::puller(read, tests.iter().find_map(|typed| typed.by.as_deref()))?;
    let mut facts = core::mem::take(&mut puller.facts);
    for typed in tests {
        if let Some(doubted) = typed.input.believed(known)? {
            return Err(Refused::Doubted(Box::new(doubted)));
        }
        facts.push(Fact::TestStored(tested(Some(fabric.id), typed.pulled, puller.id, &typed.note, &typed.input)));
    }
    Ok((facts, (fabric, puller)))
}

fn tested(fabric: Option<Id>, pulled: Timestamp, pulled_by: Option<Id>, note: &str, input: &CheckInput) -> Tested {
    let (note, as_read, test) = (note.to_owned(), input.stood_by.clone(), input.test.clone());
    let (tag, device) = (None, None);
    Tested { fabric, tag, pulled, clock_unset: false, device, pulled_by, marks: Marks::default(), note, as_read, test }
}

/// A test under an identifier fixed before it was made.
#[derive(Clone, Copy, Debug)]
pub struct NewTest<'m> {
    /// The identifier.
    pub id: Id,
    /// When it was pulled.
    pub pulled: Timestamp,
    /// Who pulled it.
    pub by: Option<Id>,
    /// A remark.
    pub note: &'m str,
    /// The readings.
    pub input: &'m CheckInput,
}

/// Stores a test under the identifier fixed before it was made, so that it is never stored twice, with its cloth or, where
/// there is none, with those that are to be given one later, and forgets the draft from which it was made; hands back the
/// identifier it has.
///
/// # Errors
///
/// A log that cannot be written; then the draft is there still.
pub fn store_once(
    store: &mut dyn LogWithDrafts,
    fabric: Option<&Fabric>,
    made: NewTest<'_>,
    draft: &str,
) -> Result<Id, Refused> {
    let NewTest { id, pulled, by, note, input } = made;
    let fact = Fact::TestStored(tested(fabric.map(|fabric| fabric.id), pulled, by, note, input));
    // Two windows went on with one draft, and the other was quicker: these are other readings.
    let other = |store: &dyn LogWithDrafts| {
        let stored = store.test(id)?;
        Ok::<_, StoreError>(stored.is_some_and(|stored| stored.said.test != input.test))
    };
    let named = if other(store)? { Ids::after(store.here(), Some(id)).next() } else { id };
    let entry = LogPiece::from(Entry::new(named, fact.clone()));
    let merged = store.take_finished(&mut core::iter::once(Ok(entry)), draft)?;
    if merged.new == 1 || !other(store)? {
        return Ok(named);
    }
    Ok(store.add(&[fact])?.first().map_or(id, |entry| entry.id))
}

/// Puts the grain of a stored test right; hands back its cloth and the test with its new grain.
///
/// # Errors
///
/// No such cloth or test, a word that is no grain, or the grain that it has.
pub fn regrain(read: &dyn Read, which: &str, text: &str, grain: &str) -> Done<(Fabric, StoredTest)> {
    let grain = GRAIN.read(Field::Grain, grain)?;
    let fabric = find::fabric(read, which)?;
    let mut test = find::test_of(read, &fabric, text, Field::Regrain)?;
    if test.said.test.grain() == grain {
        return Err(Refused::SameGrain { text: text.to_owned(), grain });
    }
    test.said.test = test.said.test.with_grain(grain);
    Ok((vec![Fact::TestRegrained { test: test.id, grain }], (fabric, test)))
}

/// Puts right who pulled a stored test; hands back its cloth and the test with that person.
///
/// # Errors
///
/// No such cloth or test, a text that is no name, or the person who is taken to have pulled it.
pub fn give(read: &dyn Read, which: &str, text: &str, name: &str) -> Done<(Fabric, StoredTest)> {
    let fabric = find::fabric(read, which)?;
    let mut test = find::test_of(read, &fabric, text, Field::Regrain)?;
    let NamedPuller { mut facts, id, .. } = people::puller(read, Some(name))?;
    if test.said.pulled_by == id {
        return Err(Refused::SamePerson { text: text.to_owned(), name: name.trim().to_owned() });
    }
    test.said.pulled_by = id;
    facts.push(Fact::TestPulledBy { test: test.id, pulled_by: id });
    Ok((facts, (fabric, test)))
}

/// Takes a stored test out of account, or back; hands back its cloth and itself.
///
/// # Errors
///
/// No such cloth or test, or one that is so already.
pub fn set_retired(read: &dyn Read, which: &str, text: &str, retire: bool, note: &str) -> Done<(Fabric, StoredTest)> {
    let note = short(Field::Note, note)?;
    let fabric = find::fabric(read, which)?;
    let test = find::test_of(read, &fabric, text, if retire { Field::Retire } else { Field::Return })?;
    if test.dropped == retire {
        return Err(Refused::Already { text: text.to_owned(), retire });
    }
    let fact = match retire {
        true => Fact::TestDropped { test: test.id, note },
        false => Fact::TestRestored { test: test.id },
    };
    Ok((vec![fact], (fabric, test)))
}
