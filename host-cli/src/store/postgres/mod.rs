//! A log that many share, on a PostgreSQL server.
//!
//! Writers of one log take turns: each takes one lock at the beginning of its transaction, so what it reads is true until
//! it is stored, identifiers rise, and an arrival's number is the order in which it was stored. Readers are never held up.

mod connection;
mod error;
mod migrate;
mod password;
mod project;
mod read;
mod rows;
mod server;

use std::collections::BTreeMap;
use std::path::Path;
use std::time::Duration;

use jiff::Timestamp;

use super::draft_files::DraftFiles;
use super::naming::{self, Naming};
use super::touched::Touched;
use super::{
    Access, Arriving, Drafts, LogPiece, LogWithDrafts, Make, Merged, Read as _, Stop, Store, StoreError, Taken, Written,
};
use crate::log::{Entry, Fact, Here, Id, Photo, PhotoName, Subject};
use connection::Connection;
use migrate::FoundDatabase;

pub use migrate::{FIRST, MIGRATIONS, NEWEST};
pub use server::Server;

/// The rights to a shared log, as SQL for whoever keeps it.
pub const ROLES: &str = include_str!("roles.sql");

/// Marks our locks among those of others in the same database (`tntr` in ASCII).
const LOCK: i32 = 0x746e_7472;
/// How long to wait for the server to come back.
const PATIENCE: Duration = Duration::from_secs(20);
/// Entries that are looked up or added by one statement.
const CHUNK: usize = 2000;

/// A log on a server.
#[derive(Debug)]
pub struct Postgres {
    connection: Connection,
    /// The log's number in its database.
    log: i32,
    here: Here,
    who: Option<Id>,
    drafts: DraftFiles,
}

/// The beginning of a transaction that writes to a log, or, for 0, to the tables themselves: one at a time, and none that
/// waits or lies idle for ever. What it stores outlasts a crash of the server, whatever its default.
fn begin(log: i32) -> String {
    format!(
        "BEGIN ISOLATION LEVEL READ COMMITTED READ WRITE; \
         SET LOCAL lock_timeout = '60s'; SET LOCAL idle_in_transaction_session_timeout = '60s'; \
         SELECT set_config('synchronous_commit', 'on', true) WHERE current_setting('synchronous_commit') = 'off'; \
         SELECT pg_advisory_xact_lock({LOCK}, {log})"
    )
}

impl Postgres {
    /// Opens the log, and begins one where there is none. What is begun at this desk is kept in a folder `drafts`.
    ///
    /// # Errors
    ///
    /// [`StoreError`]; what the server holds is then as it was.
    pub fn open(server: &Server, drafts: &Path, here: Here) -> Result<Self, StoreError> {
        let connection = Connection::new(server)?;
        settle(&connection)?;
        let log = number_of(&connection, server.log())?;
        Ok(Self { connection, log, here, who: None, drafts: DraftFiles::new(drafts) })
    }

    /// The time on the server's clock, by which all who share the log are named, in whole milliseconds.
    fn now(&self) -> Result<Timestamp, StoreError> {
        let sql = "SELECT floor(extract(epoch FROM clock_timestamp()) * 1000)::bigint";
        let ms = self.connection.row(sql, &[])?.map_or(0, |row| row.get(0));
        Ok(Timestamp::from_millisecond(ms).unwrap_or_default())
    }

    fn damaged(&self) -> StoreError {
        StoreError::Damaged { place: self.connection.name().to_owned() }
    }

    fn arriving(&self, entry: &Entry) -> Result<Arriving, StoreError> {
        Arriving::of(entry).map_err(|_| self.damaged())
    }

    /// Adds entries that are known to be new.
    fn insert(&self, entries: &[&Arriving]) -> Result<(), StoreError> {
        let sql = "INSERT INTO tenter.entry (log, id, subject, arrival, body) \
            SELECT $1, new.id, new.subject, last.arrival + new.place, new.body::json \
            FROM unnest($2::text[], $3::text[], $4::text[]) WITH ORDINALITY AS new (id, subject, body, place), \
            (SELECT coalesce(max(arrival), 0) AS arrival FROM tenter.entry WHERE log = $1) AS last";
        for chunk in entries.chunks(CHUNK) {
            let of = |text: fn(&Arriving) -> String| chunk.iter().map(|entry| text(entry)).collect::<Vec<String>>();
            let (ids, subjects) = (of(|entry| entry.id.to_string()), of(|entry| entry.subject.id().to_string()));
            let bodies: Vec<&str> = chunk.iter().map(|entry| entry.body.as_str()).collect();
            self.connection.execute(sql, &[&self.log, &ids, &subjects, &bodies])?;
        }
        Ok(())
    }

    /// Keeps photographs; how many were new.
    fn keep(&self, photos: &[Photo]) -> Result<u64, StoreError> {
        let sql = "INSERT INTO tenter.photo (log, name, jpeg) VALUES ($1, $2, $3) ON CONFLICT DO NOTHING";
        photos.iter().try_fold(0, |new, photo| {
            Ok(new + self.connection.execute(sql, &[&self.log, &photo.name().to_string(), &photo.jpeg()])?)
        })
    }

    /// Names and stores what was said, within a transaction.
    fn store(&self, now: Timestamp, once: Option<Id>, facts: Vec<Fact>) -> Result<Vec<Entry>, StoreError> {
        let who = self.who.or(self.desk()?.who);
        let mut naming = Naming::begin(now, self.here.random, once, |below| self.newest(below))?.by(who);
        let mut touched = Touched::default();
        let mut entries: Vec<Entry> = Vec::with_capacity(facts.len());
        for fact in facts {
            let named_now = |subject: Id| entries.iter().rev().find(|entry| entry.subject().id() == subject);
            let last_about =
                |subject| Ok::<_, StoreError>(named_now(subject).map(|entry| entry.id).max(self.last_about(subject)?));
            let entry = naming.name(fact, last_about)?;
            entries.push(entry);
        }
        let arriving = entries.iter().map(|entry| self.arriving(entry)).collect::<Result<Vec<_>, _>>()?;
        arriving.iter().for_each(|entry| touched.note(entry));
        self.insert(&arriving.iter().collect::<Vec<_>>())?;
        project::project(touched, self)?;
        Ok(entries)
    }

    /// Runs `work` in a transaction, and again if the connection was lost and the server is back. Before the second time
    /// `stored` tells whether the first was stored after all.
    fn again<T: Clone>(
        &self,
        work: &mut dyn FnMut() -> Result<T, StoreError>,
        stored: &mut dyn FnMut(&T) -> Result<bool, StoreError>,
    ) -> Result<T, StoreError> {
        let mut ready = None;
        let mut once = || {
            self.connection.writing(&begin(self.log), || {
                // The lock is held: what went before is stored by now, or never will be.
                if let Some(value) = &ready
                    && stored(value)?
                {
                    return Ok(ready.clone());
                }
                ready = Some(work()?);
                Ok(ready.clone())
            })
        };
        let done = match once() {
            Err(StoreError::Lost { place, perhaps }) => match self.connection.renew_patiently(PATIENCE) {
                Ok(()) => once(),
                Err(_) => Err(StoreError::Lost { place, perhaps }),
            },
            done => done,
        };
        done?.ok_or(StoreError::Stopped)
    }
}

/// Makes the tables where there are none, and brings old ones up to date.
fn settle(connection: &Connection) -> Result<(), StoreError> {
    let place = || connection.name().to_owned();
    let checked = |found| match found {
        FoundDatabase::Foreign => Err(StoreError::NotALog { place: place() }),
        FoundDatabase::Schema(found) if found > NEWEST => {
            Err(StoreError::Newer { place: place(), found: found.into(), known: NEWEST.into() })
        }
        found => Ok(found),
    };
    if checked(migrate::look(connection)?)? == FoundDatabase::Schema(NEWEST) {
        return Ok(());
    }
    let encoding = connection.row("SELECT current_setting('server_encoding')", &[])?;
    let encoding: String = encoding.map(|row| row.get(0)).unwrap_or_default();
    if encoding != "UTF8" {
        return Err(StoreError::Encoding { place: place(), encoding });
    }
    let made = connection.writing(&begin(0), || {
        // Somebody else may have done it while we waited.
        match checked(migrate::look(connection)?)? {
            FoundDatabase::Schema(NEWEST) => Ok(()),
            found => migrate::migrate(connection, found),
        }
    });
    made.map_err(|error| match error {
        StoreError::NoRight { place, .. } => StoreError::NoRight { access: Access::Make, place },
        error => error,
    })
}

/// The number of a log in its database; it is given one when it is opened for the first time.
fn number_of(connection: &Connection, name: &str) -> Result<i32, StoreError> {
    let find = || connection.row("SELECT number FROM tenter.log WHERE name = $1", &[&name]);
    if let Some(row) = find()? {
        return Ok(row.get(0));
    }
    connection.writing(&begin(0), || {
        connection.execute("INSERT INTO tenter.log (name) VALUES ($1) ON CONFLICT DO NOTHING", &[&name])
    })?;
    Ok(find()?.map(|row| row.get(0)).unwrap_or_default())
}

impl Store for Postgres {
    fn write(&mut self, once: Option<Id>, make: &mut Make<'_>) -> Result<Written, StoreError> {
        let this = &*self;
        let mut work = || {
            let now = this.now()?;
            if let Some(once) = once
                && let Some(entry) = this.drawn(once, naming::since(once, now))?
            {
                return Ok(Written::Before(Box::new(entry)));
            }
            let facts = make(this)?;
            naming::possible(now)?;
            this.store(now, once, facts).map(Written::New)
        };
        let mut stored = |written: &Written| match written {
            Written::New(entries) => entries.first().map_or(Ok(true), |entry| this.holds(entry.id)),
            Written::Before(_) => Ok(true),
        };
        this.again(&mut work, &mut stored)
    }

    fn take(&mut self, pieces: &mut dyn Iterator<Item = Result<LogPiece, Stop>>) -> Result<Merged, StoreError> {
        let Taken { entries, photos } = Taken::all(pieces, |_| self.damaged())?;
        let this = &*self;
        let mut work = || {
            let mut merged = Merged { photos: this.keep(&photos)?, ..Merged::default() };
            let mut new: BTreeMap<Id, &Arriving> = BTreeMap::new();
            let mut order = Vec::new();
            for chunk in entries.chunks(CHUNK) {
                let known = this.bodies(chunk.iter().map(|entry| entry.id))?;
                for entry in chunk {
                    let before = known.get(&entry.id).or_else(|| new.get(&entry.id).map(|new| &new.body));
                    if let Some(body) = before {
                        merged.known += 1;
                        merged.differ += u64::from(entry.differs(body).map_err(|_| this.damaged())?);
                    } else {
                        new.insert(entry.id, entry);
                        order.push(entry);
                    }
                }
            }
            merged.new = order.len() as u64;
            this.insert(&order)?;
            let mut touched = Touched::default();
            order.iter().for_each(|entry| touched.note(entry));
            project::project(touched, this)?;
            Ok((merged, order.first().map(|entry| entry.id)))
        };
        // Photographs alone are stored under their own names, so that a second time does no harm.
        let mut stored = |(_, first): &(Merged, Option<Id>)| first.map_or(Ok(false), |first| this.holds(first));
        Ok(this.again(&mut work, &mut stored)?.0)
    }

    fn forget_names(&mut self, of: Subject) -> Result<(), StoreError> {
        let this = &*self;
        let mut work = || {
            let sql = "UPDATE tenter.entry SET body = $3::text::json WHERE log = $1 AND id = $2";
            for mut entry in this.history(of)? {
                if entry.fact.forget_names() {
                    let body = this.arriving(&entry)?.body;
                    this.connection.execute(sql, &[&this.log, &entry.id.to_string(), &body])?;
                }
            }
            let mut touched = Touched::default();
            touched.note_subject(of);
            project::project(touched, this)
        };
        this.again(&mut work, &mut |()| Ok(false))?;
        // The server deletes the old rows for good when it next clears up (VACUUM), which is for whoever keeps it.
        Ok(())
    }

    fn forget_photos(&mut self, names: &[PhotoName]) -> Result<u64, StoreError> {
        let this = &*self;
        let sql = "DELETE FROM tenter.photo WHERE log = $1 AND name = $2";
        let mut work = || {
            names
                .iter()
                .try_fold(0, |gone, name| Ok(gone + this.connection.execute(sql, &[&this.log, &name.to_string()])?))
        };
        this.again(&mut work, &mut |_| Ok(false))
    }

    fn rebuild(&mut self) -> Result<(), StoreError> {
        let this = &*self;
        let mut work = || {
            let mut touched = Touched::default();
            this.each_arrival(0, &mut |_, line| {
                let Ok(entry) = serde_json::from_str::<Entry>(line) else { return Err(Stop) };
                touched.note(&this.arriving(&entry).map_err(|_| Stop)?);
                Ok(())
            })
            .map_err(|_| this.damaged())?;
            // What points to another comes before it.
            for table in ["hand", "test", "role", "orphan", "setting", "garment", "person", "fabric", "pattern"] {
                this.connection.execute(&format!("DELETE FROM tenter.{table} WHERE log = $1"), &[&this.log])?;
            }
            project::project(touched, this)
        };
        this.again(&mut work, &mut |()| Ok(false))
    }

    fn speak_as(&mut self, who: Id) {
        self.who = Some(who);
    }
}

impl Drafts for Postgres {
    fn draft(&self, name: &str) -> Result<Option<String>, StoreError> {
        self.drafts.draft(name)
    }

    fn drafts_under(&self, name: &str) -> Result<Vec<(String, String)>, StoreError> {
        self.drafts.drafts_under(name)
    }

    fn set_draft(&mut self, name: &str, text: Option<&str>) -> Result<(), StoreError> {
        self.drafts.set_draft(name, text)
    }
}

impl LogWithDrafts for Postgres {
    fn take_finished(
        &mut self,
        pieces: &mut dyn Iterator<Item = Result<LogPiece, Stop>>,
        draft: &str,
    ) -> Result<Merged, StoreError> {
        let merged = self.take(pieces)?;
        // It is stored: whoever looks at the draft next sees that, and forgets it.
        let _ = self.drafts.set_draft(draft, None);
        Ok(merged)
    }
}
