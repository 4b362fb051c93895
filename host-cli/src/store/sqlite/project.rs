//! Brings the tables of cloths, tests, patterns and roles up to date with their entries.

use std::collections::BTreeSet;

use rusqlite::{Connection, OptionalExtension as _, params, params_from_iter};
use tenter_core::Unit;

use super::rows;
use crate::log::{Entry, Here, Id, People, StoredTest, days, fold};
use crate::store::touched::Touched;

/// Brings everything touched up to date.
///
/// # Errors
///
/// What SQLite says, here and below.
pub fn project(mut touched: Touched, connection: &Connection, here: Here) -> rusqlite::Result<()> {
    core::mem::take(&mut touched.settings).into_iter().try_for_each(|(id, units)| setting(connection, id, units))?;
    let mut fabrics = BTreeSet::new();
    for id in core::mem::take(&mut touched.fabrics) {
        if fabric(connection, id)? {
            fabrics.insert(id.to_string());
            adopt(&mut touched, connection, id)?;
        }
    }
    for id in core::mem::take(&mut touched.patterns) {
        if pattern(connection, id)? {
            adopt(&mut touched, connection, id)?;
        }
    }
    for id in core::mem::take(&mut touched.roles) {
        role(connection, id)?;
    }
    for id in core::mem::take(&mut touched.garments) {
        garment(connection, id)?;
    }
    if !touched.people.is_empty() {
        persons(&mut touched, connection)?;
    }
    if !touched.tests.is_empty() {
        let people = people(connection)?;
        touched.tests.iter().try_for_each(|id| test(connection, *id, &people, &mut fabrics))?;
    }
    fabrics.iter().try_for_each(|fabric| hand(connection, fabric, here))
}

/// Lets in what waited for `id`.
fn adopt(touched: &mut Touched, connection: &Connection, id: Id) -> rusqlite::Result<()> {
    let mut waiting = connection.prepare_cached("DELETE FROM orphan WHERE waits_for = ?1 RETURNING subject")?;
    let mut found = waiting.query(params![id.to_string()])?;
    while let Some(row) = found.next()? {
        let subject = rows::id(row, 0)?;
        touched.note_waiting(subject);
    }
    Ok(())
}

/// Remembers what an entry says of the log, unless another said so before: another's log that is merged changes nothing.
fn setting(connection: &Connection, entry: Id, units: Unit) -> rusqlite::Result<()> {
    connection
        .prepare_cached("INSERT OR IGNORE INTO setting (name, value, entry) VALUES ('units', ?1, ?2)")?
        .execute(params![units.symbol(), entry.to_string()])?;
    Ok(())
}

/// Every entry about one thing, in order.
pub fn history(connection: &Connection, id: Id) -> rusqlite::Result<Vec<Entry>> {
    let mut select = connection.prepare_cached("SELECT id, body FROM entry WHERE subject = ?1 ORDER BY id")?;
    select.query_map(params![id.to_string()], rows::entry)?.collect()
}

/// Folds every fabric again: a new schema may hold more of what its entries and tests say.
pub fn fabrics_again(connection: &Connection, here: Here) -> rusqlite::Result<()> {
    let mut select = connection.prepare("SELECT id FROM fabric")?;
    let ids: Vec<Id> = select.query_map([], |row| rows::id(row, 0))?.collect::<rusqlite::Result<_>>()?;
    ids.into_iter().try_for_each(|id| {
        fabric(connection, id)?;
        hand(connection, &id.to_string(), here)
    })
}

fn fabric(connection: &Connection, id: Id) -> rusqlite::Result<bool> {
    let Some(fabric) = fold::fabric(history(connection, id)?) else { return Ok(false) };
    let sql = format!(
        "INSERT INTO fabric ({}) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13, ?14, ?15, ?16, ?17) \
         ON CONFLICT (id) DO UPDATE SET tag = ?2, name = ?3, fibre = ?4, construction = ?5, width = ?6, length = ?7, \
         mg_per_m2 = ?8, place = ?9, note = ?10, washed = ?11, shop = ?12, washed_lengthwise = ?13, \
         washed_crosswise = ?14, dropped = ?15, last_washed = ?16, more = ?17",
        rows::FABRIC
    );
    connection.prepare_cached(&sql)?.execute(params_from_iter(rows::fabric_values(&fabric)?))?;
    Ok(true)
}

fn pattern(connection: &Connection, id: Id) -> rusqlite::Result<bool> {
    let Some(pattern) = fold::pattern(history(connection, id)?) else { return Ok(false) };
    connection
        .prepare_cached(
            "INSERT INTO pattern (id, name, note, dropped) VALUES (?1, ?2, ?3, ?4) \
             ON CONFLICT (id) DO UPDATE SET name = ?2, note = ?3, dropped = ?4",
        )?
        .execute(params![pattern.id.to_string(), pattern.name, pattern.note, pattern.dropped])?;
    Ok(true)
}

fn garment(connection: &Connection, id: Id) -> rusqlite::Result<()> {
    let Some(garment) = fold::garment(history(connection, id)?) else { return Ok(()) };
    connection
        .prepare_cached(
            "INSERT INTO garment (id, number, name, due, done, dropped, body) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7) \
             ON CONFLICT (id) DO UPDATE SET number = ?2, name = ?3, due = ?4, done = ?5, dropped = ?6, body = ?7",
        )?
        .execute(params_from_iter(rows::garment_values(&garment)?))?;
    Ok(())
}

/// Brings people up to date, and notes the tests of those who turned out to be others.
fn persons(touched: &mut Touched, connection: &Connection) -> rusqlite::Result<()> {
    let before = people(connection)?;
    core::mem::take(&mut touched.people).into_iter().try_for_each(|id| person(connection, id))?;
    let mut theirs = connection.prepare_cached("SELECT id FROM test WHERE pulled_by = ?1")?;
    for id in before.no_longer_meant(&people(connection)?) {
        let ids = theirs.query_map(params![id.to_string()], |row| rows::id(row, 0))?;
        touched.tests.extend(ids.collect::<rusqlite::Result<Vec<Id>>>()?);
    }
    Ok(())
}

fn person(connection: &Connection, id: Id) -> rusqlite::Result<()> {
    let Some(person) = fold::person(history(connection, id)?) else { return Ok(()) };
    let same_as = person.same_as.map(|same_as| same_as.to_string());
    connection
        .prepare_cached(
            "INSERT INTO person (id, name, same_as) VALUES (?1, ?2, ?3) \
             ON CONFLICT (id) DO UPDATE SET name = ?2, same_as = ?3",
        )?
        .execute(params![id.to_string(), person.name, same_as])?;
    Ok(())
}

/// Everybody.
pub fn people(connection: &Connection) -> rusqlite::Result<People> {
    let mut select = connection.prepare_cached("SELECT id, name, same_as FROM person ORDER BY id")?;
    Ok(People::new(select.query_map([], rows::person)?.collect::<rusqlite::Result<_>>()?))
}

fn exists(connection: &Connection, table: &str, id: Id) -> rusqlite::Result<bool> {
    connection.prepare_cached(&format!("SELECT 1 FROM {table} WHERE id = ?1"))?.exists(params![id.to_string()])
}

fn wait(connection: &Connection, subject: Id, waits_for: Id) -> rusqlite::Result<()> {
    connection
        .prepare_cached("INSERT OR REPLACE INTO orphan (subject, waits_for) VALUES (?1, ?2)")?
        .execute(params![subject.to_string(), waits_for.to_string()])?;
    Ok(())
}

fn role(connection: &Connection, id: Id) -> rusqlite::Result<()> {
    let Some(role) = fold::role(history(connection, id)?) else { return Ok(()) };
    if !exists(connection, "pattern", role.pattern)? {
        return wait(connection, id, role.pattern);
    }
    let sql = format!(
        "INSERT INTO role ({}) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7) \
         ON CONFLICT (id) DO UPDATE SET pattern = ?2, view = ?3, name = ?4, asks = ?5, note = ?6, dropped = ?7",
        rows::ROLE
    );
    connection.prepare_cached(&sql)?.execute(params_from_iter(rows::role_values(&role)?))?;
    Ok(())
}

/// Brings a test up to date and notes the fabrics whose tests have changed.
fn test(connection: &Connection, id: Id, people: &People, fabrics: &mut BTreeSet<String>) -> rusqlite::Result<()> {
    let Some(mut test) = fold::test(history(connection, id)?) else { return Ok(()) };
    test.said.pulled_by = test.said.pulled_by.map(|person| people.resolve(person));
    let before: Option<Option<String>> = connection
        .prepare_cached("SELECT fabric FROM test WHERE id = ?1")?
        .query_row(params![id.to_string()], |row| row.get(0))
        .optional()?;
    let fabric = match test.said.fabric {
        Some(fabric) if !exists(connection, "fabric", fabric)? => {
            wait(connection, id, fabric)?;
            None
        }
        fabric => fabric,
    };
    let sql = format!(
        "INSERT INTO test ({}, grain, stretch_percent, growth_percent, hand_dof, hand_sum) \
         VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13, ?14, ?15, ?16, ?17) \
         ON CONFLICT (id) DO UPDATE SET fabric = ?2, tag = ?3, pulled = ?4, clock_unset = ?5, device = ?6, \
         number = ?7, note = ?8, record = ?9, dropped = ?10, as_read = ?11, pulled_by = ?12, grain = ?13",
        rows::TEST
    );
    connection.prepare_cached(&sql)?.execute(params_from_iter(rows::test_values(&test, fabric)?))?;
    fabrics.extend(before.flatten());
    fabrics.extend(fabric.map(|fabric| fabric.to_string()));
    Ok(())
}

/// Sums up what the tests of a cloth say of everybody who pulled it.
fn hand(connection: &Connection, fabric: &str, here: Here) -> rusqlite::Result<()> {
    let live = format!("SELECT {} FROM test WHERE fabric = ?1 AND dropped = 0 ORDER BY pulled, id", rows::TEST);
    let tests: Vec<StoredTest> =
        connection.prepare_cached(&live)?.query_map(params![fabric], rows::test)?.collect::<rusqlite::Result<_>>()?;
    connection.prepare_cached("DELETE FROM hand WHERE fabric = ?1")?.execute(params![fabric])?;
    if tests.is_empty() {
        return Ok(());
    }
    let cloth = format!("SELECT {} FROM fabric WHERE id = ?1", rows::FABRIC);
    let cloth = connection.prepare_cached(&cloth)?.query_row(params![fabric], rows::fabric)?;
    let mut insert = connection.prepare_cached("INSERT INTO hand VALUES (?1, ?2, ?3, ?4, ?5, ?6)")?;
    for (person, said) in days::hands(&cloth, &tests, here) {
        let person = person.map(|person| person.to_string()).unwrap_or_default();
        insert.execute(params![fabric, person, said.dof, said.sum, said.session_dof, said.session_sum])?;
    }
    Ok(())
}
