//! Where the log is kept.
//!
//! [`Store`] says what the rest of the program may ask of a place that keeps the log, in the log's own words. SQL is
//! spoken in `sqlite` and `postgres` and nowhere else; `memory` keeps a log without either.
//!
//! The traits can be used as `dyn`, so a closure that is handed to them can only say [`Stop`]. [`Change`] and [`caught`]
//! let it fail with an error of its own, and hand back a value.

#[cfg(feature = "postgres")]
mod draft_files;
mod error;
pub mod memory;
mod naming;
#[cfg(feature = "desk")]
mod place;
#[cfg(feature = "postgres")]
pub mod postgres;
#[cfg(feature = "desk")]
pub mod sqlite;
#[cfg(feature = "desk")]
mod touched;

#[cfg(feature = "desk")]
use std::path::{Path, PathBuf};

use tenter_core::Unit;

use crate::log::held::held;
use crate::log::{
    Desk, Entry, Fabric, Fact, FreeTags, Garment, Hands, HeldTags, Here, Id, Pattern, People, Photo, PhotoName,
    StoredTest, Subject,
};

pub use error::{Access, AddressFault, LogFault, Stop, StoreError};
#[cfg(feature = "desk")]
pub use place::LogPlace;

/// Which tests are wanted. Retired tests come only where it says so.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum WhichTests {
    /// Of one cloth, retired ones too, the oldest first.
    Of(Id),
    /// Those that belong to no cloth, the oldest first.
    Inbox,
    /// All of them, the oldest first.
    All,
}

/// What can be read. Within [`Store::write`] everything read belongs to one moment.
pub trait Read {
    /// All cloths, retired ones too, by tag; those that share one have [letters](Fabric::letter), here and below.
    ///
    /// # Errors
    ///
    /// A log that cannot be read.
    fn fabrics(&self) -> Result<Vec<Fabric>, StoreError>;

    /// The cloths under a tag, retired ones too: usually one, more after two logs were merged.
    ///
    /// # Errors
    ///
    /// A log that cannot be read.
    fn fabrics_tagged(&self, tag: u16) -> Result<Vec<Fabric>, StoreError>;

    /// The cloth with this identifier.
    ///
    /// # Errors
    ///
    /// A log that cannot be read.
    fn fabric(&self, id: Id) -> Result<Option<Fabric>, StoreError>;

    /// Tests, one by one, so that a large log need not fit into memory.
    ///
    /// # Errors
    ///
    /// A log that cannot be read, or [`StoreError::Stopped`] where `each` ended it.
    fn each_test(
        &self,
        which: WhichTests,
        each: &mut dyn FnMut(StoredTest) -> Result<(), Stop>,
    ) -> Result<(), StoreError>;

    /// The test with this identifier.
    ///
    /// # Errors
    ///
    /// A log that cannot be read.
    fn test(&self, id: Id) -> Result<Option<StoredTest>, StoreError>;

    /// All patterns with their roles, retired ones too, in the order they were added.
    ///
    /// # Errors
    ///
    /// A log that cannot be read.
    fn patterns(&self) -> Result<Vec<Pattern>, StoreError>;

    /// All garments, finished ones and those given up too, in the order they were begun.
    ///
    /// # Errors
    ///
    /// A log that cannot be read.
    fn garments(&self) -> Result<Vec<Garment>, StoreError>;

    /// The photograph of this name; none where it has not arrived yet.
    ///
    /// # Errors
    ///
    /// A log that cannot be read.
    fn photo(&self, name: PhotoName) -> Result<Option<Photo>, StoreError>;

    /// Every photograph, by name, one by one.
    ///
    /// # Errors
    ///
    /// A log that cannot be read, or [`StoreError::Stopped`] where `each` ended it.
    fn each_photo(&self, each: &mut dyn FnMut(Photo) -> Result<(), Stop>) -> Result<(), StoreError>;

    /// The place whose wall clock tells the days.
    fn here(&self) -> Here;

    /// Everybody who pulls. Tests hold who is meant by what was said, after who turned out to be whom.
    ///
    /// # Errors
    ///
    /// A log that cannot be read.
    fn people(&self) -> Result<People, StoreError>;

    /// Everybody's repeatability, from pull to pull and from day to day.
    ///
    /// # Errors
    ///
    /// A log that cannot be read.
    fn repeatability(&self) -> Result<Hands, StoreError>;

    /// What is remembered of the desk at which this copy of the log is used.
    ///
    /// # Errors
    ///
    /// A log that cannot be read.
    fn desk(&self) -> Result<Desk, StoreError>;

    /// The unit that was chosen first, of bare numbers and of the texts; none where none was.
    ///
    /// # Errors
    ///
    /// A log that cannot be read.
    fn units(&self) -> Result<Option<Unit>, StoreError>;

    /// Every entry about one thing, in order.
    ///
    /// # Errors
    ///
    /// A log that cannot be read.
    fn history(&self, subject: Subject) -> Result<Vec<Entry>, StoreError>;

    /// Every entry in order, as JSON, one by one.
    ///
    /// # Errors
    ///
    /// A log that cannot be read, or [`StoreError::Stopped`] where `each` ended it.
    fn each_entry(&self, each: &mut dyn FnMut(&str) -> Result<(), Stop>) -> Result<(), StoreError>;

    /// The entries that arrived here after the first `after`, in the order of their arrival, as JSON with the number of
    /// each: 1, 2, 3 and so on, whatever their identifiers. Somebody who keeps the last number asks only for what is new.
    ///
    /// # Errors
    ///
    /// A log that cannot be read, or [`StoreError::Stopped`] where `each` ended it.
    fn each_arrival(&self, after: u64, each: &mut dyn FnMut(u64, &str) -> Result<(), Stop>) -> Result<(), StoreError>;

    /// How many entries there are: the number of the last arrival.
    ///
    /// # Errors
    ///
    /// A log that cannot be read.
    fn count(&self) -> Result<u64, StoreError>;

    /// Whether the log is whole, with one line for each fault.
    ///
    /// # Errors
    ///
    /// A log that cannot be read at all.
    fn faults(&self) -> Result<Vec<LogFault>, StoreError>;

    /// Which tags are whose, in the order in which they were taken.
    ///
    /// # Errors
    ///
    /// A log that cannot be read.
    fn held_tags(&self) -> Result<Vec<HeldTags>, StoreError> {
        Ok(held(&self.history(Subject::Tags)?))
    }

    /// The tags that may be given at this desk.
    ///
    /// # Errors
    ///
    /// A log that cannot be read.
    fn free_tags(&self) -> Result<FreeTags, StoreError> {
        let desk = self.desk()?;
        Ok(FreeTags::of(&self.held_tags()?, desk.copy, desk.tags))
    }

    /// The tests as a list.
    ///
    /// # Errors
    ///
    /// A log that cannot be read.
    fn tests(&self, which: WhichTests) -> Result<Vec<StoredTest>, StoreError> {
        let mut tests = Vec::new();
        self.each_test(which, &mut |test| {
            tests.push(test);
            Ok(())
        })?;
        Ok(tests)
    }
}

/// Says what to add, from what is there. It may be asked again, after a connection was lost: the last answer counts.
pub type Make<'m> = dyn FnMut(&dyn Read) -> Result<Vec<Fact>, Stop> + 'm;

/// What [`Store::write`] did.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Written {
    /// The entries were stored.
    New(Vec<Entry>),
    /// It was done before: the first of the entries that it stored then.
    Before(Box<Entry>),
}

/// A place that keeps the log. What it has reported as stored survives a crash of the program or of the machine.
pub trait Store: Read {
    /// Adds what `make` says, all or none: what `make` reads is true until its facts are stored, whoever else writes.
    /// Hands back the entries. Callers use [`Change::change`].
    ///
    /// A deed that may be sent twice, such as a form on a page, brings an identifier `once` that was made before: the
    /// first entry takes over its random bits, and within a day the same deed is done only once.
    ///
    /// An entry gets an identifier above all those of its time, and above every one about the same thing. Entries that
    /// came from a clock more than a day ahead do not drag others along.
    ///
    /// # Errors
    ///
    /// [`StoreError::Stopped`] where `make` said so, and then nothing is stored; [`StoreError::Lost`] where it is not
    /// known whether something was; or a log that cannot be written.
    fn write(&mut self, once: Option<Id>, make: &mut Make<'_>) -> Result<Written, StoreError>;

    /// Adds entries from elsewhere under the identifiers they have, and photographs under their names, in any order, all
    /// or none; those that are here already are left as they are. All are taken in before others are kept from writing,
    /// however slowly they come.
    ///
    /// # Errors
    ///
    /// [`StoreError::Stopped`] where a piece said so, and then nothing is stored; or a log that cannot be written.
    fn take(&mut self, pieces: &mut dyn Iterator<Item = Result<LogPiece, Stop>>) -> Result<Merged, StoreError>;

    /// As [`Store::take`], of entries alone.
    ///
    /// # Errors
    ///
    /// As [`Store::take`].
    fn merge(&mut self, entries: &mut dyn Iterator<Item = Result<Entry, Stop>>) -> Result<Merged, StoreError> {
        self.take(&mut entries.map(|entry| entry.map(LogPiece::from)))
    }

    /// Takes the name of a person, or of the one for whom a garment is made, out of every entry about them, for good: with
    /// the [bytes of photographs](Self::forget_photos) the one thing that is ever taken out of a log.
    ///
    /// # Errors
    ///
    /// A log that cannot be written.
    fn forget_names(&mut self, of: Subject) -> Result<(), StoreError>;

    /// Takes the bytes of photographs out of the log, for good; how many were there. What entries say of them stays.
    ///
    /// # Errors
    ///
    /// A log that cannot be written.
    fn forget_photos(&mut self, names: &[PhotoName]) -> Result<u64, StoreError>;

    /// Who says what is written from here on, in place of the one who is remembered at this [desk](Read::desk).
    fn speak_as(&mut self, who: Id);
}

/// A piece of a log.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum LogPiece {
    /// What was said.
    Entry(Box<Entry>),
    /// A photograph that an entry names.
    Photo(Photo),
}

impl From<Entry> for LogPiece {
    fn from(entry: Entry) -> Self {
        Self::Entry(Box::new(entry))
    }
}

impl From<Photo> for LogPiece {
    fn from(photo: Photo) -> Self {
        Self::Photo(photo)
    }
}

/// Where something begun and not finished is kept, under a name outside the log: personal, on the desk of whoever began
/// it, and never exchanged.
pub trait Drafts {
    /// What is kept under a name.
    ///
    /// # Errors
    ///
    /// A log that cannot be read.
    fn draft(&self, name: &str) -> Result<Option<String>, StoreError>;

    /// What is kept under names that begin with `name` and a slash, in the order of those names.
    ///
    /// # Errors
    ///
    /// A log that cannot be read.
    fn drafts_under(&self, name: &str) -> Result<Vec<(String, String)>, StoreError>;

    /// Keeps a text under a name, or forgets it.
    ///
    /// # Errors
    ///
    /// A log that cannot be written.
    fn set_draft(&mut self, name: &str, text: Option<&str>) -> Result<(), StoreError>;

    /// Remembers something of this desk.
    ///
    /// # Errors
    ///
    /// A log that cannot be written.
    fn set_desk(&mut self, desk: &Desk) -> Result<(), StoreError> {
        let text = (*desk != Desk::default()).then(|| desk.text());
        self.set_draft(Desk::NAME, text.as_deref())
    }
}

/// A log with what the person at this desk has begun.
pub trait LogWithDrafts: Store + Drafts {}

impl<S: Store + Drafts> LogWithDrafts for S {}

/// A closure's own error, kept while a [`Store`] only knows that the closure said [`Stop`].
#[derive(Debug)]
pub struct Own<E>(Option<E>);

impl<E> Own<E> {
    /// The value, or [`Stop`] with the error kept.
    ///
    /// # Errors
    ///
    /// [`Stop`] where `result` is an error.
    pub fn keep<T>(&mut self, result: Result<T, E>) -> Result<T, Stop> {
        result.map_err(|error| {
            self.0 = Some(error);
            Stop
        })
    }
}

/// Runs something whose closures fail with an error of their own.
///
/// # Errors
///
/// The closure's error where it kept one, else the store's.
pub fn caught<T, E: From<StoreError>>(run: impl FnOnce(&mut Own<E>) -> Result<T, StoreError>) -> Result<T, E> {
    let mut own = Own(None);
    match (run(&mut own), own.0) {
        (Err(StoreError::Stopped), Some(error)) => Err(error),
        // What the closure said before it was asked again does not count.
        (done, _) => Ok(done?),
    }
}

/// What every [`Store`] can do besides.
pub trait Change: Store {
    /// As [`Store::write`], with a value from the closure, which may fail with an error of its own.
    ///
    /// # Errors
    ///
    /// What `make` says, and then nothing is stored; or a log that cannot be written.
    fn change<T, E: From<StoreError>>(
        &mut self,
        mut make: impl FnMut(&dyn Read) -> Result<(Vec<Fact>, T), E>,
    ) -> Result<(Vec<Entry>, T), E> {
        match changed(self, None, &mut make)? {
            Once::Now(entries, value) => Ok((entries, value)),
            // Without an identifier nothing can have been done before.
            Once::Before(_) => Err(StoreError::Stopped.into()),
        }
    }

    /// As [`Change::change`], done once however often it is sent; see [`Store::write`].
    ///
    /// # Errors
    ///
    /// As there.
    fn change_once<T, E: From<StoreError>>(
        &mut self,
        once: Id,
        mut make: impl FnMut(&dyn Read) -> Result<(Vec<Fact>, T), E>,
    ) -> Result<Once<T>, E> {
        changed(self, Some(once), &mut make)
    }

    /// Adds facts that need nothing read.
    ///
    /// # Errors
    ///
    /// A log that cannot be written.
    fn add(&mut self, facts: &[Fact]) -> Result<Vec<Entry>, StoreError> {
        Ok(self.change(|_| Ok::<_, StoreError>((facts.to_vec(), ())))?.0)
    }

    /// As [`Store::take`], of pieces that may fail with an error of their own.
    ///
    /// # Errors
    ///
    /// The first error among the pieces, and then nothing is stored; or a log that cannot be written.
    fn merge_all<P: Into<LogPiece>, E: From<StoreError>>(
        &mut self,
        pieces: impl Iterator<Item = Result<P, E>>,
    ) -> Result<Merged, E> {
        caught(|own| self.take(&mut pieces.map(|piece| own.keep(piece).map(Into::into))))
    }
}

impl<S: Store + ?Sized> Change for S {}

/// What became of a deed that may be sent twice.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Once<T> {
    /// It was done now: its entries, and the value of the closure.
    Now(Vec<Entry>, T),
    /// It was done before: the first of its entries.
    Before(Box<Entry>),
}

#[allow(clippy::type_complexity)] // As `change` takes it.
fn changed<T, E: From<StoreError>>(
    store: &mut (impl Store + ?Sized),
    once: Option<Id>,
    make: &mut dyn FnMut(&dyn Read) -> Result<(Vec<Fact>, T), E>,
) -> Result<Once<T>, E> {
    let mut value = None;
    let written = caught(|own| {
        store.write(once, &mut |read| {
            let (facts, made) = own.keep(make(read))?;
            value = Some(made);
            Ok(facts)
        })
    })?;
    match (written, value) {
        (Written::Before(entry), _) => Ok(Once::Before(entry)),
        (Written::New(entries), Some(value)) => Ok(Once::Now(entries, value)),
        // A store that does not ask what to add breaks its promise.
        (Written::New(_), None) => Err(StoreError::Stopped.into()),
    }
}

/// An entry on its way into a log, ready to be stored.
#[cfg(feature = "desk")]
#[derive(Clone, Debug)]
struct Arriving {
    id: Id,
    subject: Subject,
    /// [What it says](Entry::body).
    body: String,
    /// The unit, where it sets that.
    units: Option<Unit>,
}

#[cfg(feature = "desk")]
impl Arriving {
    fn of(entry: &Entry) -> Result<Self, serde_json::Error> {
        let units = match entry.fact {
            Fact::UnitsSet { units } => Some(units),
            _ => None,
        };
        Ok(Self { id: entry.id, subject: entry.subject(), body: entry.body()?, units })
    }

    /// Whether this says something else than the body stored under its identifier.
    fn differs(&self, stored: &str) -> Result<bool, serde_json::Error> {
        let fact = |body: &str| Ok::<_, serde_json::Error>(Entry::of_body(self.id, body)?.fact);
        Ok(self.body != stored && !fact(stored)?.agrees_with(&fact(&self.body)?))
    }
}

/// Pieces of a log, taken in before others are kept from writing.
#[cfg(feature = "desk")]
#[derive(Debug, Default)]
struct Taken {
    entries: Vec<Arriving>,
    photos: Vec<Photo>,
}

#[cfg(feature = "desk")]
impl Taken {
    /// Takes them in; `unwritable` tells of one that cannot be written as JSON.
    fn all(
        pieces: &mut dyn Iterator<Item = Result<LogPiece, Stop>>,
        unwritable: impl Fn(serde_json::Error) -> StoreError,
    ) -> Result<Self, StoreError> {
        let mut taken = Self::default();
        for piece in pieces {
            match piece? {
                LogPiece::Entry(entry) => taken.entries.push(Arriving::of(&entry).map_err(&unwritable)?),
                LogPiece::Photo(photo) => taken.photos.push(photo),
            }
        }
        Ok(taken)
    }
}

/// What a merge did.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Merged {
    /// Entries that were new.
    pub new: u64,
    /// Entries that were here already.
    pub known: u64,
    /// Of those, entries that say something else here than there.
    pub differ: u64,
    /// Photographs that were new.
    pub photos: u64,
}

/// The log's file in the user's data folder, after the XDG base directory specification.
#[cfg(feature = "desk")]
#[must_use]
pub fn default_path() -> Option<PathBuf> {
    use etcetera::BaseStrategy as _;

    etcetera::base_strategy::Xdg::new().ok().map(|folders| folders.data_dir().join("tenter").join("log.sqlite3"))
}

/// Opens the log, and begins one where there is none.
///
/// # Errors
///
/// [`StoreError`].
#[cfg(feature = "desk")]
pub fn open(path: &Path, here: Here) -> Result<sqlite::Sqlite, StoreError> {
    sqlite::Sqlite::open(path, here)
}

#[cfg(test)]
#[cfg(feature = "desk")]
mod tests {
    use super::*;
    use crate::log::FabricChange;

    #[derive(Debug, PartialEq, Eq)]
    enum Own {
        Store(StoreError),
        Mine,
    }

    impl From<StoreError> for Own {
        fn from(error: StoreError) -> Self {
            Self::Store(error)
        }
    }

    fn added(tag: u16) -> Fact {
        Fact::FabricAdded(FabricChange {
            tag: Some(tag),
            name: Some("Slate rib".to_owned()),
            ..FabricChange::default()
        })
    }

    /// On a machine whose time stands still and whose chance repeats itself, identifiers are known beforehand.
    fn log() -> sqlite::Sqlite {
        let now = || "2026-03-01T12:00:00Z".parse().unwrap();
        sqlite::Sqlite::in_memory(Here { now, random: || 7, ..Here::desk() }).unwrap()
    }

    #[test]
    fn a_change_hands_back_its_value_or_its_own_error() {
        let mut log = log();
        let (entries, value) = log.change(|_| Ok::<_, Own>((vec![added(1), added(2)], "two"))).unwrap();
        assert_eq!((value, log.count()), ("two", Ok(2)));
        let ids: Vec<String> = entries.iter().map(|entry| entry.id.to_string()).collect();
        // 2026-03-01 12:00 UTC is 1 772 366 400 000 ms, base 32 01KJMMA2G0 (ULID specification).
        assert_eq!(ids, ["01KJMMA2G00000000000000007", "01KJMMA2G10000000000000007"]);
        let refused =
            log.change(|read| if read.fabrics()?.len() == 2 { Err(Own::Mine) } else { Ok((vec![added(3)], ())) });
        assert_eq!((refused, log.count()), (Err(Own::Mine), Ok(2)), "nothing was stored");
        let entries = [Ok(entries[0].clone()), Err(Own::Mine)].into_iter();
        assert_eq!(log.merge_all(entries), Err(Own::Mine));
    }
}
