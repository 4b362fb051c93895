//! Brings the tables of cloths, tests, patterns and roles up to date with their entries, many at a time.

use std::collections::{BTreeMap, BTreeSet, HashSet};

use serde_json::{Value, json};
use tenter_core::Unit;

use super::{CHUNK, Postgres, rows};
use crate::log::{Entry, Id, StoredTest, days, fold};
use crate::store::touched::Touched;
use crate::store::{Read as _, StoreError};

/// Identifiers as the server takes them.
fn texts<'i>(ids: impl IntoIterator<Item = &'i Id>) -> Vec<String> {
    ids.into_iter().map(ToString::to_string).collect()
}

/// Some identifiers at a time.
fn chunks(ids: &BTreeSet<Id>) -> Vec<Vec<Id>> {
    ids.iter().copied().collect::<Vec<_>>().chunks(CHUNK).map(<[Id]>::to_vec).collect()
}

/// Brings everything touched up to date.
///
/// # Errors
///
/// What the server says, here and below.
pub fn project(mut touched: Touched, store: &Postgres) -> Result<(), StoreError> {
    touched.settings.iter().try_for_each(|(entry, units)| store.set(*entry, *units))?;
    let mut changed = BTreeSet::new();
    for ids in chunks(&touched.fabrics) {
        let fabrics: Vec<_> = store.histories(&ids)?.into_values().filter_map(fold::fabric).collect();
        store.upsert("fabric", rows::FABRIC, fabrics.iter().map(rows::of_fabric).collect())?;
        adopt(&mut touched, store, fabrics.iter().map(|fabric| fabric.id))?;
        changed.extend(fabrics.iter().map(|fabric| fabric.id));
    }
    for ids in chunks(&touched.patterns) {
        let patterns: Vec<_> = store.histories(&ids)?.into_values().filter_map(fold::pattern).collect();
        store.upsert("pattern", rows::PATTERN, patterns.iter().map(rows::of_pattern).collect())?;
        adopt(&mut touched, store, patterns.iter().map(|pattern| pattern.id))?;
    }
    for ids in chunks(&touched.roles) {
        let roles: Vec<_> = store.histories(&ids)?.into_values().filter_map(fold::role).collect();
        let there = store.there("pattern", roles.iter().map(|role| role.pattern))?;
        let (known, waiting): (Vec<_>, Vec<_>) = roles.iter().partition(|role| there.contains(&role.pattern));
        store.wait(waiting.iter().map(|role| (role.id, role.pattern)))?;
        store.upsert("role", rows::ROLE, known.into_iter().map(rows::of_role).collect())?;
    }
    for ids in chunks(&touched.garments) {
        let garments: Vec<_> = store.histories(&ids)?.into_values().filter_map(fold::garment).collect();
        store.upsert("garment", rows::GARMENT, garments.iter().map(rows::of_garment).collect())?;
    }
    if !touched.people.is_empty() {
        touched.tests.extend(store.persons(&touched.people)?);
    }
    for ids in chunks(&touched.tests) {
        store.tests(&ids, &mut changed)?;
    }
    chunks(&changed).iter().try_for_each(|fabrics| store.hands(fabrics))
}

/// Lets in what waited for these.
fn adopt(touched: &mut Touched, store: &Postgres, ids: impl Iterator<Item = Id>) -> Result<(), StoreError> {
    let ids: Vec<Id> = ids.collect();
    if ids.is_empty() {
        return Ok(());
    }
    let sql = "DELETE FROM tenter.orphan WHERE log = $1 AND waits_for = ANY ($2) RETURNING subject";
    for row in store.connection.rows(sql, &[&store.log, &texts(&ids)])? {
        let subject = rows::id(&row, 0).map_err(|rows::Damaged| store.damaged())?;
        touched.note_waiting(subject);
    }
    Ok(())
}

impl Postgres {
    /// Every entry about each of these, in order.
    fn histories(&self, ids: &[Id]) -> Result<BTreeMap<Id, Vec<Entry>>, StoreError> {
        let sql = "SELECT id, body FROM tenter.entry WHERE log = $1 AND subject = ANY ($2) ORDER BY id";
        let mut histories: BTreeMap<Id, Vec<Entry>> = BTreeMap::new();
        for row in self.connection.rows(sql, &[&self.log, &texts(ids)])? {
            let entry = rows::entry(&row).map_err(|rows::Damaged| self.damaged())?;
            histories.entry(entry.subject().id()).or_default().push(entry);
        }
        Ok(histories)
    }

    /// Adds rows to a table, or replaces what their columns hold.
    fn upsert(&self, table: &str, columns: &str, rows: Vec<Value>) -> Result<(), StoreError> {
        if rows.is_empty() {
            return Ok(());
        }
        let excluded: Vec<String> = columns.split(", ").map(|column| format!("excluded.{column}")).collect();
        let sql = format!(
            "INSERT INTO tenter.{table} (log, {columns}) \
             SELECT $1, {columns} FROM json_populate_recordset(NULL::tenter.{table}, $2::text::json) \
             ON CONFLICT (log, id) DO UPDATE SET ({columns}) = ROW ({})",
            excluded.join(", ")
        );
        self.connection.execute(&sql, &[&self.log, &Value::Array(rows).to_string()])?;
        Ok(())
    }

    /// Which of these are in a table.
    fn there(&self, table: &str, ids: impl Iterator<Item = Id>) -> Result<HashSet<Id>, StoreError> {
        let ids: BTreeSet<Id> = ids.collect();
        if ids.is_empty() {
            return Ok(HashSet::new());
        }
        let sql = format!("SELECT id FROM tenter.{table} WHERE log = $1 AND id = ANY ($2)");
        let found = self.connection.rows(&sql, &[&self.log, &texts(&ids)])?;
        found.iter().map(|row| rows::id(row, 0)).collect::<Result<_, _>>().map_err(|rows::Damaged| self.damaged())
    }

    /// Notes what waits for something that has not arrived.
    fn wait(&self, waiting: impl Iterator<Item = (Id, Id)>) -> Result<(), StoreError> {
        let sql = "INSERT INTO tenter.orphan (log, subject, waits_for) VALUES ($1, $2, $3) \
            ON CONFLICT (log, subject) DO UPDATE SET waits_for = excluded.waits_for";
        for (subject, waits_for) in waiting {
            self.connection.execute(sql, &[&self.log, &subject.to_string(), &waits_for.to_string()])?;
        }
        Ok(())
    }

    /// Brings people up to date; the tests of those who turned out to be others.
    fn persons(&self, ids: &BTreeSet<Id>) -> Result<Vec<Id>, StoreError> {
        let before = self.people()?;
        for ids in chunks(ids) {
            let people = self.histories(&ids)?.into_values().filter_map(fold::person);
            let rows = people.map(|person| json!({ "id": person.id, "name": person.name, "same_as": person.same_as }));
            self.upsert("person", "id, name, same_as", rows.collect())?;
        }
        let others = before.no_longer_meant(&self.people()?);
        if others.is_empty() {
            return Ok(Vec::new());
        }
        let sql = "SELECT id FROM tenter.test WHERE log = $1 AND pulled_by = ANY ($2)";
        let found = self.connection.rows(sql, &[&self.log, &texts(&others)])?;
        found.iter().map(|row| rows::id(row, 0)).collect::<Result<_, _>>().map_err(|rows::Damaged| self.damaged())
    }

    /// Brings tests up to date and notes the fabrics whose tests have changed.
    fn tests(&self, ids: &[Id], fabrics: &mut BTreeSet<Id>) -> Result<(), StoreError> {
        let people = self.people()?;
        let mut tests: Vec<_> = self.histories(ids)?.into_values().filter_map(fold::test).collect();
        for test in &mut tests {
            test.said.pulled_by = test.said.pulled_by.map(|person| people.resolve(person));
        }
        let there = self.there("fabric", tests.iter().filter_map(|test| test.said.fabric))?;
        let waits = |test: &StoredTest| test.said.fabric.filter(|fabric| !there.contains(fabric));
        self.wait(tests.iter().filter_map(|test| Some((test.id, waits(test)?))))?;
        let sql = "SELECT DISTINCT fabric FROM tenter.test WHERE log = $1 AND id = ANY ($2) AND fabric IS NOT NULL";
        for row in self.connection.rows(sql, &[&self.log, &texts(ids)])? {
            fabrics.insert(rows::id(&row, 0).map_err(|rows::Damaged| self.damaged())?);
        }
        let known = |test: &StoredTest| test.said.fabric.filter(|fabric| there.contains(fabric));
        fabrics.extend(tests.iter().filter_map(known));
        let rows: Result<Vec<Value>, _> = tests.iter().map(|test| rows::of_test(test, known(test))).collect();
        let columns = format!("{}, {}", rows::TEST, rows::TEST_FIGURES);
        self.upsert("test", &columns, rows.map_err(|rows::Damaged| self.damaged())?)
    }

    /// Remembers a unit, unless another was said before: another's log that is merged changes nothing.
    fn set(&self, entry: Id, units: Unit) -> Result<(), StoreError> {
        let sql =
            "INSERT INTO tenter.setting (log, name, value, entry) VALUES ($1, 'units', $2, $3) ON CONFLICT DO NOTHING";
        self.connection.execute(sql, &[&self.log, &units.symbol(), &entry.to_string()])?;
        Ok(())
    }

    /// Sums up what the tests of cloths say of everybody who pulled them.
    fn hands(&self, ids: &[Id]) -> Result<(), StoreError> {
        let damaged = |rows::Damaged| self.damaged();
        let texts = texts(ids);
        let sql = format!("SELECT {} FROM tenter.fabric WHERE log = $1 AND id = ANY ($2)", rows::FABRIC);
        let fabrics = self.connection.rows(&sql, &[&self.log, &texts])?;
        let fabrics: Vec<_> = fabrics.iter().map(rows::fabric).collect::<Result<_, _>>().map_err(damaged)?;
        let sql = format!(
            "SELECT {} FROM tenter.test WHERE log = $1 AND fabric = ANY ($2) AND NOT dropped ORDER BY pulled, id",
            rows::TEST
        );
        let mut tests: BTreeMap<Option<Id>, Vec<StoredTest>> = BTreeMap::new();
        for row in self.connection.rows(&sql, &[&self.log, &texts])? {
            let test = rows::test(&row).map_err(damaged)?;
            tests.entry(test.said.fabric).or_default().push(test);
        }
        let (mut names, mut people, mut sums) = (Vec::new(), Vec::new(), [const { Vec::new() }; 4]);
        for fabric in &fabrics {
            let tests = tests.get(&Some(fabric.id)).map_or(&[][..], Vec::as_slice);
            for (person, said) in days::hands(fabric, tests, self.here) {
                names.push(fabric.id.to_string());
                people.push(person.map(|person| person.to_string()).unwrap_or_default());
                let four = [said.dof, said.sum, said.session_dof, said.session_sum];
                sums.iter_mut().zip(four).for_each(|(column, one)| column.push(one));
            }
        }
        let [dof, sum, session_dof, session_sum] = &sums;
        self.connection
            .execute("DELETE FROM tenter.hand WHERE log = $1 AND fabric = ANY ($2)", &[&self.log, &texts])?;
        let sql = "INSERT INTO tenter.hand (log, fabric, pulled_by, hand_dof, hand_sum, session_dof, session_sum) \
            SELECT $1, new.* FROM unnest($2::text[], $3::text[], $4::float8[], $5::float8[], $6::float8[], $7::float8[]) \
                AS new";
        self.connection.execute(sql, &[&self.log, &names, &people, dof, sum, session_dof, session_sum])?;
        Ok(())
    }
}
