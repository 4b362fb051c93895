//! What the entries say, beside what the tables say; and the tables made anew.

use std::collections::BTreeMap;
use std::path::Path;

use rusqlite::backup::{Backup, StepResult};
use rusqlite::types::Value;
use rusqlite::{Connection, Row, params};

use super::{Sqlite, commit, project, rows};
use crate::log::{Entry, Here, Id};
use crate::plain::{reason, shown};
use crate::store::touched::Touched;
use crate::store::{Access, LogFault, Read as _, StoreError};

/// A row as what it means, so that one that an earlier version wrote in other words is the same.
type Meaning = fn(&Row<'_>) -> rusqlite::Result<String>;

/// What the entries make: each table, what is looked at of it, and what that means. Which pulls were made on one day is a matter
/// of the wall clock, so it is left out.
const MADE: [(&str, &str, Meaning); 9] = [
    ("fabric", rows::FABRIC, |row| rows::fabric(row).map(said)),
    ("test", rows::TEST, |row| rows::test(row).map(said)),
    ("pattern", rows::PATTERN, |row| rows::pattern(row).map(said)),
    ("role", rows::ROLE, |row| rows::role(row).map(said)),
    ("garment", "body", |row| rows::garment(row).map(said)),
    ("person", "id, name, same_as", |row| rows::person(row).map(said)),
    ("setting", "name, value, entry", cells),
    ("orphan", "subject, waits_for", cells),
    ("hand", "fabric, pulled_by, hand_dof, hand_sum", cells),
];

fn said(meaning: impl core::fmt::Debug) -> String {
    format!("{meaning:?}")
}

/// A row as it lies there.
fn cells(row: &Row<'_>) -> rusqlite::Result<String> {
    values(row).map(said)
}

fn values(row: &Row<'_>) -> rusqlite::Result<Vec<Value>> {
    (0..row.as_ref().column_count()).map(|column| row.get(column)).collect()
}

/// An entry as it lies there.
struct RawEntry {
    id: String,
    subject: String,
    body: String,
}

impl RawEntry {
    fn read(&self) -> Option<Entry> {
        let id: Id = self.id.parse().ok()?;
        Entry::of_body(id, &self.body).ok().filter(|entry| entry.subject().id().to_string() == self.subject)
    }
}

/// Every entry in the order of its arrival; those without a number last.
fn raw(connection: &Connection) -> rusqlite::Result<Vec<RawEntry>> {
    let all = |sql: &str| -> rusqlite::Result<Vec<RawEntry>> {
        let of = |row: &rusqlite::Row<'_>| Ok(RawEntry { id: row.get(0)?, subject: row.get(1)?, body: row.get(2)? });
        connection.prepare(sql)?.query_map([], of)?.collect()
    };
    let by_arrival = "SELECT id, subject, body FROM entry LEFT JOIN (SELECT entry, min(number) AS number FROM arrival \
        GROUP BY entry) ON entry = id ORDER BY number IS NULL, number, id";
    all(by_arrival).or_else(|_| all("SELECT id, subject, body FROM entry ORDER BY id"))
}

/// Puts entries into a log that holds none, and makes its tables.
fn make(into: &Connection, entries: &[RawEntry], here: Here) -> rusqlite::Result<()> {
    let mut touched = Touched::default();
    let mut insert = into.prepare("INSERT INTO entry (id, subject, body) VALUES (?1, ?2, ?3)")?;
    let mut put = |raw: &RawEntry| insert.execute(params![raw.id, raw.subject, raw.body]);
    let (readable, others): (Vec<_>, Vec<_>) =
        entries.iter().map(|raw| (raw, raw.read())).partition(|(_, read)| read.is_some());
    for (raw, entry) in readable {
        let Some(entry) = entry else { continue };
        put(raw)?;
        touched.note(&super::arriving(&entry)?);
    }
    project::project(touched, into, here)?;
    // What cannot be read makes nothing, and is kept.
    others.iter().try_for_each(|(raw, _)| put(raw).map(drop))?;
    let mut number = into.prepare("INSERT INTO arrival (entry) VALUES (?1)")?;
    entries.iter().try_for_each(|raw| number.execute(params![raw.id]).map(drop))
}

/// What differs between the tables and what the entries make.
pub fn differences(connection: &Connection, here: Here) -> Result<Vec<LogFault>, StoreError> {
    let place = Path::new(super::IN_MEMORY);
    let wrong = |error| super::explain(place, error);
    let entries = raw(connection).map_err(wrong)?;
    let mut faults = Vec::new();
    let unreadable = entries.iter().filter(|raw| raw.read().is_none()).count() as u64;
    faults.extend((unreadable > 0).then_some(LogFault::Unreadable { count: unreadable }));
    let fresh = Sqlite::in_memory(here)?;
    make(&fresh.connection, &entries, here).map_err(wrong)?;
    for (table, columns, meaning) in MADE {
        let sql = format!("SELECT {columns} FROM {table}");
        // What means nothing is unlike all else.
        let rows = |connection: &Connection| -> rusqlite::Result<BTreeMap<String, u64>> {
            let mut counts = BTreeMap::new();
            let mut select = connection.prepare(&sql)?;
            let mut found = select.query([])?;
            while let Some(row) = found.next()? {
                *counts.entry(meaning(row).unwrap_or_default()).or_default() += 1;
            }
            Ok(counts)
        };
        let (is, should) = (rows(connection).map_err(wrong)?, rows(&fresh.connection).map_err(wrong)?);
        let more = |one: &BTreeMap<String, u64>, other: &BTreeMap<String, u64>| -> u64 {
            one.iter().map(|(row, count)| count.saturating_sub(other.get(row).copied().unwrap_or_default())).sum()
        };
        let count = more(&is, &should).max(more(&should, &is));
        faults.extend((count > 0).then(|| LogFault::Differs { table: table.to_owned(), count }));
    }
    Ok(faults)
}

/// Every row of a table.
fn all(connection: &Connection, sql: &str) -> rusqlite::Result<Vec<Vec<Value>>> {
    connection.prepare(sql)?.query_map([], values)?.collect()
}

/// The log made anew from its entries, in one transaction: whatever happens, it is as it was or as it should be.
///
/// # Errors
///
/// Entries that cannot be read from the file, or a log that cannot be written.
pub fn rebuild(log: &mut Sqlite) -> Result<(), StoreError> {
    let here = log.here;
    if let Some(why) = &log.unwritable {
        return Err(why.clone());
    }
    let path = log.path.clone();
    let wrong = |error| super::explain(&path, error);
    let folder = path.parent().filter(|folder| !folder.as_os_str().is_empty()).unwrap_or(Path::new("."));
    let make_folder = || tempfile::Builder::new().prefix(".tenter-").suffix(".part").tempdir_in(folder);
    let (fresh, _beside) = if path == Path::new(super::IN_MEMORY) {
        (Sqlite::in_memory(here)?, None)
    } else {
        commit::checkpoint(&log.connection);
        let beside = make_folder().map_err(|error| StoreError::Denied {
            access: Access::Make,
            place: shown(folder),
            system: reason(&error),
        })?;
        (Sqlite::open(&beside.path().join("log"), here)?, Some(beside))
    };
    let transaction = fresh.begin()?;
    make(&transaction, &raw(&log.connection).map_err(wrong)?, here).map_err(wrong)?;
    let kept = |sql: &str| all(&log.connection, sql).map_err(wrong);
    for row in kept("SELECT name, text FROM draft")? {
        let sql = "INSERT OR REPLACE INTO draft (name, text) VALUES (?1, ?2)";
        transaction.execute(sql, rusqlite::params_from_iter(row)).map_err(wrong)?;
    }
    for row in kept("SELECT name, jpeg FROM photo")? {
        let sql = "INSERT INTO photo (name, jpeg) VALUES (?1, ?2)";
        transaction.execute(sql, rusqlite::params_from_iter(row)).map_err(wrong)?;
    }
    commit::put(&transaction, &commit::held(&log.connection).map_err(wrong)?).map_err(wrong)?;
    transaction.commit().map_err(wrong)?;
    let left: Vec<LogFault> = fresh.faults()?;
    if left.iter().any(|fault| !matches!(fault, LogFault::Unreadable { .. })) {
        return Err(StoreError::Damaged { place: shown(&path) });
    }
    log.connection.flush_prepared_statement_cache();
    match Backup::new(&fresh.connection, &mut log.connection).and_then(|copy| copy.step(-1)).map_err(wrong)? {
        StepResult::Done => {}
        _ => return Err(StoreError::Busy { place: shown(&path) }),
    }
    commit::checkpoint(&log.connection);
    Ok(())
}
