//! Two logs take from each other what each lacks.
//!
//! Each step takes all of its entries or none, and leaves alone what is there already. So a work that was cut off is done
//! again from the start, and then goes on where it ended.

mod apart;
#[cfg(feature = "serve")]
pub mod pages;

use std::collections::{BTreeMap, BTreeSet};
use std::hash::{DefaultHasher, Hash as _, Hasher as _};

use crate::exchange::{BadLine, Fault, ImportError, jsonl};
use crate::finding::memory::retired_photos;
use crate::log::{Entry, Id, Photo, PhotoName};
use crate::store::{LogPiece, Merged, Read, Store, StoreError, caught};

pub use apart::{ChangedApart, called};

/// The other side of an exchange, near or far.
pub trait OtherLog {
    /// Every entry in order, as a line.
    ///
    /// # Errors
    ///
    /// What `each` says, or a log that cannot be read.
    fn lines(&mut self, each: &mut dyn FnMut(&str) -> Result<(), ImportError>) -> Result<(), ImportError>;

    /// The names of its photographs.
    ///
    /// # Errors
    ///
    /// A log that cannot be read.
    fn photo_names(&mut self) -> Result<BTreeSet<PhotoName>, ImportError>;

    /// A photograph of it.
    ///
    /// # Errors
    ///
    /// A log that cannot be read, or bytes that are not that photograph.
    fn photo(&mut self, name: PhotoName) -> Result<Option<Photo>, ImportError>;

    /// Takes pieces, each time some of them or none.
    ///
    /// # Errors
    ///
    /// A log that cannot be written.
    fn take(&mut self, pieces: Vec<LogPiece>) -> Result<Merged, ImportError>;
}

/// A log that this program opened itself.
impl OtherLog for &mut dyn Store {
    fn lines(&mut self, each: &mut dyn FnMut(&str) -> Result<(), ImportError>) -> Result<(), ImportError> {
        caught(|own| self.each_entry(&mut |line| own.keep(each(line))))
    }

    fn photo_names(&mut self) -> Result<BTreeSet<PhotoName>, ImportError> {
        Ok(Read::photo_names(&**self)?)
    }

    fn photo(&mut self, name: PhotoName) -> Result<Option<Photo>, ImportError> {
        Ok(Read::photo(&**self, name)?)
    }

    fn take(&mut self, pieces: Vec<LogPiece>) -> Result<Merged, ImportError> {
        Ok(taken(&mut **self, pieces)?)
    }
}

/// What went from one log to the other.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Passed {
    /// Entries that were new there.
    pub entries: u64,
    /// Photographs that were new there.
    pub photos: u64,
}

impl Passed {
    fn count(&mut self, merged: Merged) {
        self.entries += merged.new;
        self.photos += merged.photos;
    }
}

/// What an exchange did.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct SyncedLogs {
    /// What came from the other log.
    pub taken: Passed,
    /// What went to the other log.
    pub given: Passed,
    /// The entries that both logs have, and that say something else there.
    pub differ: Vec<Id>,
    /// What was changed in both.
    pub apart: Vec<ChangedApart>,
}

/// Takes what `mine` lacks from `theirs`, and gives it what it lacks, with `step` after each entry that was looked at.
/// `names` are what to call both. Photographs that nothing shows any more stay where they are, so that none comes back to where its
/// bytes were taken out.
///
/// # Errors
///
/// An entry that this program would not have written, and then nothing is stored; or a log that cannot be read or written.
pub fn exchange(
    mine: &mut dyn Store,
    theirs: &mut dyn OtherLog,
    names: [&str; 2],
    step: &mut dyn FnMut(),
) -> Result<SyncedLogs, ImportError> {
    let Compared { to_mine, mut to_theirs, differ } = entries(mine, theirs, names, step)?;
    let apart = apart::both(to_theirs.iter().filter_map(entry_of), to_mine.iter().filter_map(entry_of));
    let mut synced = SyncedLogs { differ, apart, ..SyncedLogs::default() };
    // A photograph is judged by what both say of it.
    synced.taken.count(taken(mine, to_mine)?);
    let (to_mine, photos) = photos(mine, theirs)?;
    synced.taken.count(taken(mine, to_mine)?);
    to_theirs.extend(photos);
    if !to_theirs.is_empty() {
        synced.given.count(theirs.take(to_theirs)?);
    }
    Ok(synced)
}

const fn entry_of(piece: &LogPiece) -> Option<&Entry> {
    match piece {
        LogPiece::Entry(entry) => Some(entry),
        LogPiece::Photo(_) => None,
    }
}

/// Adds pieces. A log that lacks nothing is not written to, which its reader may have no right to do.
fn taken(log: &mut dyn Store, pieces: Vec<LogPiece>) -> Result<Merged, StoreError> {
    if pieces.is_empty() { Ok(Merged::default()) } else { log.take(&mut pieces.into_iter().map(Ok)) }
}

/// What two logs hold, side by side.
struct Compared {
    to_mine: Vec<LogPiece>,
    to_theirs: Vec<LogPiece>,
    differ: Vec<Id>,
}

/// A line in few bytes, so that a large log need not fit into memory.
fn fingerprint(line: &str) -> u64 {
    let mut hasher = DefaultHasher::new();
    line.hash(&mut hasher);
    hasher.finish()
}

fn entries(
    mine: &dyn Read,
    theirs: &mut dyn OtherLog,
    [own, other]: [&str; 2],
    step: &mut dyn FnMut(),
) -> Result<Compared, ImportError> {
    // What is left of them in the end is what the other lacks.
    let mut lacking: BTreeMap<Id, u64> = BTreeMap::new();
    each_entry(mine, own, &mut |line, entry| {
        lacking.insert(entry.id, fingerprint(line));
        step();
        Ok(())
    })?;
    let (mut to_mine, mut unlike) = (Vec::new(), BTreeMap::new());
    let mut number = 0;
    theirs.lines(&mut |line| {
        step();
        number += 1;
        let wrong = |fault| ImportError::Line(BadLine { file: other.to_owned(), line: number, fault });
        let entry = jsonl::kept_entry(line).map_err(wrong)?;
        match lacking.remove(&entry.id) {
            None => to_mine.push(LogPiece::from(jsonl::entry_of_line(line, mine.here().latest()).map_err(wrong)?)),
            Some(known) if known == fingerprint(line) => {}
            Some(_) => {
                unlike.insert(entry.id, entry);
            }
        }
        Ok(())
    })?;
    let (mut to_theirs, mut differ) = (Vec::new(), Vec::new());
    each_entry(mine, own, &mut |_, entry| {
        if unlike.get(&entry.id).is_some_and(|other| !other.fact.agrees_with(&entry.fact)) {
            differ.push(entry.id);
        }
        if lacking.contains_key(&entry.id) {
            to_theirs.push(LogPiece::from(entry));
        }
        Ok(())
    })?;
    Ok(Compared { to_mine, to_theirs, differ })
}

/// Every entry of the log that is called `name`, with its line.
fn each_entry(
    log: &dyn Read,
    name: &str,
    each: &mut dyn FnMut(&str, Entry) -> Result<(), Fault>,
) -> Result<(), ImportError> {
    let mut number = 0;
    caught(|own| {
        log.each_entry(&mut |line| {
            number += 1;
            let done = jsonl::kept_entry(line).and_then(|entry| each(line, entry));
            let wrong = |fault| ImportError::Line(BadLine { file: name.to_owned(), line: number, fault });
            own.keep(done.map_err(wrong))
        })
    })
}

/// The photographs that each lacks and that something shows: those for `mine`, and those for `theirs`.
fn photos(mine: &dyn Read, theirs: &mut dyn OtherLog) -> Result<(Vec<LogPiece>, Vec<LogPiece>), ImportError> {
    let retired: BTreeSet<PhotoName> = retired_photos(&mine.fabrics()?).into_iter().collect();
    let (own, others) = (mine.photo_names()?, theirs.photo_names()?);
    let (mut to_mine, mut to_theirs) = (Vec::new(), Vec::new());
    for name in others.difference(&own).filter(|name| !retired.contains(name)) {
        to_mine.extend(theirs.photo(*name)?.map(LogPiece::from));
    }
    for name in own.difference(&others).filter(|name| !retired.contains(name)) {
        to_theirs.extend(mine.photo(*name)?.map(LogPiece::from));
    }
    Ok((to_mine, to_theirs))
}
