//! Questions to the log.

use std::collections::BTreeSet;

use rusqlite::{Connection, OptionalExtension as _, Params, Row, params};

use tenter_core::Unit;

use super::{Sqlite, project, rebuild, rows};
use crate::log::{
    Desk, Entry, Fabric, Garment, Hands, Here, Id, Pattern, People, Photo, PhotoName, Role, StoredTest, Subject,
};
use crate::store::{Drafts as _, LogFault, Read, Stop, StoreError, WhichTests};

/// The identifier above all others so far, or of those below one.
pub fn newest(connection: &Connection, below: Option<Id>) -> rusqlite::Result<Option<Id>> {
    let below = below.map_or_else(|| "~".to_owned(), |below| below.to_string());
    let mut newest = connection.prepare_cached("SELECT id FROM entry WHERE id < ?1 ORDER BY id DESC LIMIT 1")?;
    newest.query_row(params![below], |row| rows::id(row, 0)).optional()
}

/// The highest identifier of an entry about one thing.
pub fn last_about(connection: &Connection, subject: Id) -> rusqlite::Result<Option<Id>> {
    let mut last = connection.prepare_cached("SELECT id FROM entry WHERE subject = ?1 ORDER BY id DESC LIMIT 1")?;
    last.query_row(params![subject.to_string()], |row| rows::id(row, 0)).optional()
}

/// The entry with the random bits of `once`, from an identifier on.
pub fn drawn(connection: &Connection, once: Id, since: Id) -> rusqlite::Result<Option<Entry>> {
    let mut select = connection
        .prepare_cached("SELECT id, body FROM entry WHERE id >= ?1 AND substr(id, 11) = substr(?2, 11) LIMIT 1")?;
    select.query_row(params![since.to_string(), once.to_string()], rows::entry).optional()
}

/// What SQLite's own checks and the links between the tables say, one line for each fault.
pub fn faults(connection: &Connection) -> rusqlite::Result<Vec<LogFault>> {
    let mut faults = Vec::new();
    connection.pragma_query(None, "integrity_check", |row| {
        let line: String = row.get(0)?;
        faults.extend((line != "ok").then_some(LogFault::Engine(line)));
        Ok(())
    })?;
    connection.pragma_query(None, "foreign_key_check", |row| {
        faults.push(LogFault::Dangling { table: row.get(0)? });
        Ok(())
    })?;
    let sql = "SELECT count(*) = (SELECT count(*) FROM arrival) \
        AND count(*) = (SELECT coalesce(max(number), 0) FROM arrival) FROM entry";
    if !connection.query_row(sql, [], |row| row.get(0))? {
        faults.push(LogFault::Unnumbered);
    }
    Ok(faults)
}

impl Sqlite {
    fn list<T>(
        &self,
        sql: &str,
        params: impl Params,
        of: impl FnMut(&Row<'_>) -> rusqlite::Result<T>,
    ) -> Result<Vec<T>, StoreError> {
        let list =
            || -> rusqlite::Result<Vec<T>> { self.connection.prepare_cached(sql)?.query_map(params, of)?.collect() };
        list().map_err(|error| self.wrong(error))
    }

    pub(super) fn one<T>(
        &self,
        sql: &str,
        params: impl Params,
        of: impl FnOnce(&Row<'_>) -> rusqlite::Result<T>,
    ) -> Result<Option<T>, StoreError> {
        let one = || self.connection.prepare_cached(sql)?.query_row(params, of).optional();
        one().map_err(|error| self.wrong(error))
    }

    /// Row by row, so that a large answer need not fit into memory.
    fn each<T>(
        &self,
        sql: &str,
        params: impl Params,
        of: impl Fn(&Row<'_>) -> rusqlite::Result<T>,
        each: &mut dyn FnMut(T) -> Result<(), Stop>,
    ) -> Result<(), StoreError> {
        let wrong = |error| self.wrong(error);
        let mut select = self.connection.prepare_cached(sql).map_err(wrong)?;
        let mut found = select.query(params).map_err(wrong)?;
        while let Some(row) = found.next().map_err(wrong)? {
            each(of(row).map_err(wrong)?)?;
        }
        Ok(())
    }
}

impl Read for Sqlite {
    fn fabrics(&self) -> Result<Vec<Fabric>, StoreError> {
        let mut fabrics =
            self.list(&format!("SELECT {} FROM fabric ORDER BY tag, id", rows::FABRIC), [], rows::fabric)?;
        Fabric::letter(&mut fabrics);
        Ok(fabrics)
    }

    fn fabrics_tagged(&self, tag: u16) -> Result<Vec<Fabric>, StoreError> {
        let sql = format!("SELECT {} FROM fabric WHERE tag = ?1 ORDER BY id", rows::FABRIC);
        let mut fabrics = self.list(&sql, params![tag], rows::fabric)?;
        Fabric::letter(&mut fabrics);
        Ok(fabrics)
    }

    fn fabric(&self, id: Id) -> Result<Option<Fabric>, StoreError> {
        let tag: Option<u16> =
            self.one("SELECT tag FROM fabric WHERE id = ?1", params![id.to_string()], |row| row.get(0))?;
        let Some(tag) = tag else { return Ok(None) };
        Ok(self.fabrics_tagged(tag)?.into_iter().find(|fabric| fabric.id == id))
    }

    fn each_test(
        &self,
        which: WhichTests,
        each: &mut dyn FnMut(StoredTest) -> Result<(), Stop>,
    ) -> Result<(), StoreError> {
        let select = |condition: &str| format!("SELECT {} FROM test {condition}", rows::TEST);
        match which {
            WhichTests::Of(id) => {
                let sql = select("WHERE fabric = ?1 ORDER BY pulled, id");
                self.each(&sql, params![id.to_string()], rows::test, each)
            }
            WhichTests::Inbox => {
                self.each(&select("WHERE fabric IS NULL AND dropped = 0 ORDER BY pulled, id"), [], rows::test, each)
            }
            WhichTests::ByCloth => {
                let sql = select("WHERE fabric IS NOT NULL AND dropped = 0 ORDER BY fabric, grain, pulled, id");
                self.each(&sql, [], rows::test, each)
            }
            WhichTests::All => self.each(&select("WHERE dropped = 0 ORDER BY pulled, id"), [], rows::test, each),
        }
    }

    fn test(&self, id: Id) -> Result<Option<StoredTest>, StoreError> {
        let sql = format!("SELECT {} FROM test WHERE id = ?1", rows::TEST);
        self.one(&sql, params![id.to_string()], rows::test)
    }

    fn patterns(&self) -> Result<Vec<Pattern>, StoreError> {
        let sql = format!("SELECT {} FROM pattern ORDER BY id", rows::PATTERN);
        let mut patterns: Vec<Pattern> = self.list(&sql, [], rows::pattern)?;
        let sql = format!("SELECT {} FROM role WHERE pattern = ?1 ORDER BY id", rows::ROLE);
        for pattern in &mut patterns {
            let roles: Vec<Role> = self.list(&sql, params![pattern.id.to_string()], rows::role)?;
            pattern.roles = roles;
        }
        Ok(patterns)
    }

    fn garments(&self) -> Result<Vec<Garment>, StoreError> {
        self.list("SELECT body FROM garment ORDER BY id", [], rows::garment)
    }

    fn photo(&self, name: PhotoName) -> Result<Option<Photo>, StoreError> {
        self.one("SELECT jpeg FROM photo WHERE name = ?1", params![name.to_string()], rows::photo)
    }

    fn each_photo(&self, each: &mut dyn FnMut(Photo) -> Result<(), Stop>) -> Result<(), StoreError> {
        self.each("SELECT jpeg FROM photo ORDER BY name", [], rows::photo, each)
    }

    fn photo_names(&self) -> Result<BTreeSet<PhotoName>, StoreError> {
        Ok(self.list("SELECT name FROM photo", [], rows::photo_name)?.into_iter().collect())
    }

    fn here(&self) -> Here {
        self.here
    }

    fn people(&self) -> Result<People, StoreError> {
        project::people(&self.connection).map_err(|error| self.wrong(error))
    }

    fn repeatability(&self) -> Result<Hands, StoreError> {
        let sql = "SELECT construction, pulled_by, sum(hand_dof), sum(hand_sum), sum(session_dof), sum(session_sum) \
             FROM hand JOIN fabric ON id = fabric WHERE hand_dof > 0 OR session_dof > 0 \
             GROUP BY construction, pulled_by";
        let mut hands = Hands::default();
        self.each(sql, [], rows::said, &mut |(person, construction, said)| {
            hands.add(person, construction, said);
            Ok(())
        })?;
        Ok(hands)
    }

    fn desk(&self) -> Result<Desk, StoreError> {
        Ok(Desk::read(self.draft(Desk::NAME)?.as_deref()))
    }

    fn units(&self) -> Result<Option<Unit>, StoreError> {
        let symbol: Option<String> =
            self.one("SELECT value FROM setting WHERE name = 'units'", [], |row| row.get(0))?;
        Ok(symbol.and_then(|symbol| Unit::from_symbol(&symbol)))
    }

    fn history(&self, subject: Subject) -> Result<Vec<Entry>, StoreError> {
        project::history(&self.connection, subject.id()).map_err(|error| self.wrong(error))
    }

    fn each_entry(&self, each: &mut dyn FnMut(&str) -> Result<(), Stop>) -> Result<(), StoreError> {
        self.each("SELECT id, body FROM entry ORDER BY id", [], rows::entry_line, &mut |line: String| each(&line))
    }

    fn each_arrival(&self, after: u64, each: &mut dyn FnMut(u64, &str) -> Result<(), Stop>) -> Result<(), StoreError> {
        let sql = "SELECT id, body, number FROM arrival JOIN entry ON id = entry WHERE number > ?1 ORDER BY number";
        let row = |row: &Row<'_>| Ok((row.get::<_, i64>(2)?.unsigned_abs(), rows::entry_line(row)?));
        let after = i64::try_from(after).unwrap_or(i64::MAX);
        self.each(sql, params![after], row, &mut |(number, line): (u64, String)| each(number, &line))
    }

    fn count(&self) -> Result<u64, StoreError> {
        let count: Option<i64> = self.one("SELECT count(*) FROM entry", [], |row| row.get(0))?;
        Ok(count.and_then(|count| u64::try_from(count).ok()).unwrap_or_default())
    }

    fn faults(&self) -> Result<Vec<LogFault>, StoreError> {
        let faults = faults(&self.connection).map_err(|error| self.wrong(error))?;
        // What the engine cannot read cannot be laid side by side.
        if !faults.is_empty() {
            return Ok(faults);
        }
        rebuild::differences(&self.connection, self.here)
    }
}
