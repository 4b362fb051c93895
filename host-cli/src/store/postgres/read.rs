//! Questions to the log.

use std::collections::{BTreeSet, HashMap};

use postgres::Row;
use tenter_core::Unit;

use super::connection::Params;
use super::{Postgres, rows};
use crate::log::{
    Desk, Entry, Fabric, Garment, Hands, Here, Id, Pattern, People, Photo, PhotoName, Role, StoredTest, Subject,
};
use crate::store::{Drafts as _, LogFault, Read, Stop, StoreError, WhichTests};

impl Postgres {
    fn list<T>(
        &self,
        sql: &str,
        params: Params<'_>,
        of: impl FnMut(&Row) -> Result<T, rows::Damaged>,
    ) -> Result<Vec<T>, StoreError> {
        let found = self.connection.rows(sql, params)?;
        found.iter().map(of).collect::<Result<_, _>>().map_err(|rows::Damaged| self.damaged())
    }

    fn one<T>(
        &self,
        sql: &str,
        params: Params<'_>,
        of: impl FnOnce(&Row) -> Result<T, rows::Damaged>,
    ) -> Result<Option<T>, StoreError> {
        let found = self.connection.row(sql, params)?;
        found.as_ref().map(of).transpose().map_err(|rows::Damaged| self.damaged())
    }

    fn each<T>(
        &self,
        sql: &str,
        params: Params<'_>,
        of: impl Fn(&Row) -> Result<T, rows::Damaged>,
        each: &mut dyn FnMut(T) -> Result<(), Stop>,
    ) -> Result<(), StoreError> {
        let mut row = |row: &Row| Ok(each(of(row).map_err(|rows::Damaged| self.damaged())?)?);
        self.connection.each(sql, params, &mut row)
    }

    /// The identifier above all others so far, or of those below one.
    pub(super) fn newest(&self, below: Option<Id>) -> Result<Option<Id>, StoreError> {
        let below = below.map_or_else(|| "~".to_owned(), |below| below.to_string());
        let sql = "SELECT id FROM tenter.entry WHERE log = $1 AND id < $2 ORDER BY id DESC LIMIT 1";
        self.one(sql, &[&self.log, &below], |row| rows::id(row, 0))
    }

    /// The highest identifier of an entry about one thing.
    pub(super) fn last_about(&self, subject: Id) -> Result<Option<Id>, StoreError> {
        let sql = "SELECT id FROM tenter.entry WHERE log = $1 AND subject = $2 ORDER BY id DESC LIMIT 1";
        self.one(sql, &[&self.log, &subject.to_string()], |row| rows::id(row, 0))
    }

    /// The entry with the random bits of `once`, from an identifier on.
    pub(super) fn drawn(&self, once: Id, since: Id) -> Result<Option<Entry>, StoreError> {
        let sql = "SELECT id, body FROM tenter.entry \
            WHERE log = $1 AND id >= $2 AND substr(id, 11) = substr($3, 11) LIMIT 1";
        self.one(sql, &[&self.log, &since.to_string(), &once.to_string()], rows::entry)
    }

    /// Whether there is an entry with this identifier.
    pub(super) fn holds(&self, id: Id) -> Result<bool, StoreError> {
        let sql = "SELECT FROM tenter.entry WHERE log = $1 AND id = $2";
        Ok(self.connection.row(sql, &[&self.log, &id.to_string()])?.is_some())
    }

    /// What is said under those of some identifiers that are in the log.
    pub(super) fn bodies(&self, ids: impl Iterator<Item = Id>) -> Result<HashMap<Id, String>, StoreError> {
        let ids: Vec<String> = ids.map(|id| id.to_string()).collect();
        let sql = "SELECT id, body FROM tenter.entry WHERE log = $1 AND id = ANY ($2)";
        let found = self.list(sql, &[&self.log, &ids], |row| Ok((rows::id(row, 0)?, rows::text(row, 1)?)))?;
        Ok(found.into_iter().collect())
    }
}

impl Read for Postgres {
    fn fabrics(&self) -> Result<Vec<Fabric>, StoreError> {
        let sql = format!("SELECT {} FROM tenter.fabric WHERE log = $1 ORDER BY tag, id", rows::FABRIC);
        let mut fabrics = self.list(&sql, &[&self.log], rows::fabric)?;
        Fabric::letter(&mut fabrics);
        Ok(fabrics)
    }

    fn fabrics_tagged(&self, tag: u16) -> Result<Vec<Fabric>, StoreError> {
        let sql = format!("SELECT {} FROM tenter.fabric WHERE log = $1 AND tag = $2 ORDER BY id", rows::FABRIC);
        let mut fabrics = self.list(&sql, &[&self.log, &i32::from(tag)], rows::fabric)?;
        Fabric::letter(&mut fabrics);
        Ok(fabrics)
    }

    fn fabric(&self, id: Id) -> Result<Option<Fabric>, StoreError> {
        let sql = "SELECT tag FROM tenter.fabric WHERE log = $1 AND id = $2";
        let tag = self.one(sql, &[&self.log, &id.to_string()], |row| rows::required(rows::tag(row, 0)?))?;
        let Some(tag) = tag else { return Ok(None) };
        Ok(self.fabrics_tagged(tag)?.into_iter().find(|fabric| fabric.id == id))
    }

    fn each_test(
        &self,
        which: WhichTests,
        each: &mut dyn FnMut(StoredTest) -> Result<(), Stop>,
    ) -> Result<(), StoreError> {
        let ordered = |condition: &str, order: &str| {
            format!("SELECT {} FROM tenter.test WHERE log = $1 {condition} ORDER BY {order}", rows::TEST)
        };
        let select = |condition: &str| ordered(condition, "pulled, id");
        match which {
            WhichTests::Of(id) => {
                let id = id.to_string();
                self.each(&select("AND fabric = $2"), &[&self.log, &id], rows::test, each)
            }
            WhichTests::Inbox => {
                self.each(&select("AND fabric IS NULL AND NOT dropped"), &[&self.log], rows::test, each)
            }
            WhichTests::ByCloth => {
                let sql = ordered("AND fabric IS NOT NULL AND NOT dropped", "fabric, grain, pulled, id");
                self.each(&sql, &[&self.log], rows::test, each)
            }
            WhichTests::All => self.each(&select("AND NOT dropped"), &[&self.log], rows::test, each),
        }
    }

    fn test(&self, id: Id) -> Result<Option<StoredTest>, StoreError> {
        let sql = format!("SELECT {} FROM tenter.test WHERE log = $1 AND id = $2", rows::TEST);
        self.one(&sql, &[&self.log, &id.to_string()], rows::test)
    }

    fn patterns(&self) -> Result<Vec<Pattern>, StoreError> {
        let sql = format!("SELECT {} FROM tenter.pattern WHERE log = $1 ORDER BY id", rows::PATTERN);
        let mut patterns: Vec<Pattern> = self.list(&sql, &[&self.log], rows::pattern)?;
        let sql = format!("SELECT {} FROM tenter.role WHERE log = $1 ORDER BY id", rows::ROLE);
        let mut roles: HashMap<Id, Vec<Role>> = HashMap::new();
        for role in self.list(&sql, &[&self.log], rows::role)? {
            roles.entry(role.pattern).or_default().push(role);
        }
        for pattern in &mut patterns {
            pattern.roles = roles.remove(&pattern.id).unwrap_or_default();
        }
        Ok(patterns)
    }

    fn garments(&self) -> Result<Vec<Garment>, StoreError> {
        self.list("SELECT body FROM tenter.garment WHERE log = $1 ORDER BY id", &[&self.log], rows::garment)
    }

    fn photo(&self, name: PhotoName) -> Result<Option<Photo>, StoreError> {
        let sql = "SELECT jpeg FROM tenter.photo WHERE log = $1 AND name = $2";
        self.one(sql, &[&self.log, &name.to_string()], rows::photo)
    }

    fn each_photo(&self, each: &mut dyn FnMut(Photo) -> Result<(), Stop>) -> Result<(), StoreError> {
        // A few at a time: each is large.
        let mut last = String::new();
        loop {
            let sql = "SELECT jpeg FROM tenter.photo WHERE log = $1 AND name > $2 ORDER BY name LIMIT 16";
            let photos = self.list(sql, &[&self.log, &last], rows::photo)?;
            let Some(photo) = photos.last() else { return Ok(()) };
            last = photo.name().to_string();
            photos.into_iter().try_for_each(&mut *each)?;
        }
    }

    fn photo_names(&self) -> Result<BTreeSet<PhotoName>, StoreError> {
        let sql = "SELECT name FROM tenter.photo WHERE log = $1";
        Ok(self.list(sql, &[&self.log], rows::photo_name)?.into_iter().collect())
    }

    fn here(&self) -> Here {
        self.here
    }

    fn people(&self) -> Result<People, StoreError> {
        let sql = "SELECT id, name, same_as FROM tenter.person WHERE log = $1 ORDER BY id";
        self.list(sql, &[&self.log], rows::person).map(People::new)
    }

    fn repeatability(&self) -> Result<Hands, StoreError> {
        let sql = "SELECT construction, pulled_by, sum(hand_dof ORDER BY fabric), sum(hand_sum ORDER BY fabric), \
            sum(session_dof ORDER BY fabric), sum(session_sum ORDER BY fabric) \
            FROM tenter.hand AS hand JOIN tenter.fabric AS cloth ON cloth.log = $1 AND cloth.id = hand.fabric \
            WHERE hand.log = $1 AND (hand_dof > 0 OR session_dof > 0) \
            GROUP BY construction, pulled_by ORDER BY construction, pulled_by";
        let mut hands = Hands::default();
        for (person, construction, said) in self.list(sql, &[&self.log], rows::said)? {
            hands.add(person, construction, said);
        }
        Ok(hands)
    }

    fn desk(&self) -> Result<Desk, StoreError> {
        Ok(Desk::read(self.draft(Desk::NAME)?.as_deref()))
    }

    fn units(&self) -> Result<Option<Unit>, StoreError> {
        let sql = "SELECT value FROM tenter.setting WHERE log = $1 AND name = 'units'";
        let symbol: Option<String> = self.one(sql, &[&self.log], |row| Ok(row.try_get(0)?))?;
        Ok(symbol.and_then(|symbol| Unit::from_symbol(&symbol)))
    }

    fn history(&self, subject: Subject) -> Result<Vec<Entry>, StoreError> {
        let sql = "SELECT id, body FROM tenter.entry WHERE log = $1 AND subject = $2 ORDER BY id";
        self.list(sql, &[&self.log, &subject.id().to_string()], rows::entry)
    }

    fn each_entry(&self, each: &mut dyn FnMut(&str) -> Result<(), Stop>) -> Result<(), StoreError> {
        let sql = "SELECT id, body FROM tenter.entry WHERE log = $1 ORDER BY id";
        self.each(sql, &[&self.log], rows::entry_line, &mut |line: String| each(&line))
    }

    fn each_arrival(&self, after: u64, each: &mut dyn FnMut(u64, &str) -> Result<(), Stop>) -> Result<(), StoreError> {
        let sql = "SELECT id, body, arrival FROM tenter.entry WHERE log = $1 AND arrival > $2 ORDER BY arrival";
        let after = i64::try_from(after).unwrap_or(i64::MAX);
        let row = |row: &Row| {
            let number: i64 = row.try_get(2)?;
            Ok((number.unsigned_abs(), rows::entry_line(row)?))
        };
        self.each(sql, &[&self.log, &after], row, &mut |(number, line): (u64, String)| each(number, &line))
    }

    fn count(&self) -> Result<u64, StoreError> {
        let sql = "SELECT coalesce(max(arrival), 0) FROM tenter.entry WHERE log = $1";
        let count = self.one(sql, &[&self.log], |row| Ok(row.try_get::<_, i64>(0)?))?;
        Ok(count.unwrap_or_default().unsigned_abs())
    }

    /// The links between the tables are held by the server; here is what it does not know.
    fn faults(&self) -> Result<Vec<LogFault>, StoreError> {
        let mut faults = Vec::new();
        let sql = "SELECT count(*) = coalesce(max(arrival), 0) FROM tenter.entry WHERE log = $1";
        if self.one(sql, &[&self.log], |row| Ok(row.try_get(0)?))? != Some(true) {
            faults.push(LogFault::Unnumbered);
        }
        let sql = "SELECT count(*) FROM tenter.entry AS entry WHERE log = $1 AND id = subject \
            AND NOT EXISTS (SELECT FROM tenter.fabric WHERE log = $1 AND id = entry.id) \
            AND NOT EXISTS (SELECT FROM tenter.test WHERE log = $1 AND id = entry.id) \
            AND NOT EXISTS (SELECT FROM tenter.pattern WHERE log = $1 AND id = entry.id) \
            AND NOT EXISTS (SELECT FROM tenter.role WHERE log = $1 AND id = entry.id) \
            AND NOT EXISTS (SELECT FROM tenter.garment WHERE log = $1 AND id = entry.id) \
            AND body ->> 'kind' <> 'units-set' \
            AND NOT EXISTS (SELECT FROM tenter.orphan WHERE log = $1 AND subject = entry.id)";
        let missing = self.one(sql, &[&self.log], |row| Ok(row.try_get::<_, i64>(0)?))?.unwrap_or_default();
        if missing > 0 {
            faults.push(LogFault::Unfolded { count: missing.unsigned_abs() });
        }
        Ok(faults)
    }
}
