//! A connection with its prepared statements, and what goes on in it: one transaction at most.

use std::cell::{Cell, RefCell};
use std::collections::HashMap;

use postgres::types::ToSql;
use postgres::{Client, Error, Row, Statement};

use super::error::{self, explain};
use super::server::Server;
use crate::store::{Access, StoreError};

/// Rows fetched at a time of an answer that need not fit into memory.
const ROWS: u32 = 5000;

/// What a question is asked with.
pub type Params<'p> = &'p [&'p (dyn ToSql + Sync)];

struct Open {
    client: Client,
    statements: HashMap<String, Statement>,
}

/// A connection to a server. A question borrows it only as long as the server takes, so that what is done with each row of
/// an answer may ask further questions.
pub struct Connection {
    server: Server,
    open: RefCell<Open>,
    /// Whether a transaction that writes is open.
    writing: Cell<bool>,
    /// Whether the connection is gone.
    lost: Cell<bool>,
    /// How many answers are being read row by row.
    cursors: Cell<u32>,
}

impl std::fmt::Debug for Connection {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        self.server.fmt(f)
    }
}

impl Connection {
    /// Connects.
    ///
    /// # Errors
    ///
    /// As [`Server::connect`].
    pub fn new(server: &Server) -> Result<Self, StoreError> {
        let open = RefCell::new(Open { client: server.connect()?, statements: HashMap::new() });
        Ok(Self {
            server: server.clone(),
            open,
            writing: Cell::new(false),
            lost: Cell::new(false),
            cursors: Cell::new(0),
        })
    }

    /// Connects anew after the connection was lost.
    ///
    /// # Errors
    ///
    /// As [`Server::connect`].
    pub fn renew(&self) -> Result<(), StoreError> {
        let client = self.server.connect()?;
        let mut open = self.open.try_borrow_mut().map_err(|_| StoreError::Stopped)?;
        *open = Open { client, statements: HashMap::new() };
        self.writing.set(false);
        self.lost.set(false);
        Ok(())
    }

    /// What to call the log.
    pub fn name(&self) -> &str {
        self.server.name()
    }

    /// An error as what it means.
    fn wrong(&self, error: &Error) -> StoreError {
        let error = explain(self.name(), if self.writing.get() { Access::Write } else { Access::Read }, error);
        self.lost.set(self.lost.get() || matches!(error, StoreError::Lost { .. }));
        error
    }

    fn with<T>(&self, mut work: impl FnMut(&mut Open) -> Result<T, Error>) -> Result<T, StoreError> {
        let mut once = || {
            // Never borrowed twice: nothing that is called from here calls back.
            let mut open = self.open.try_borrow_mut().map_err(|_| StoreError::Stopped)?;
            work(&mut open).map_err(|error| self.wrong(&error))
        };
        match once() {
            // A question that stands alone is asked again; the server may have been restarted since the last one.
            Err(StoreError::Lost { .. }) if !self.writing.get() && self.cursors.get() == 0 => {
                self.renew()?;
                once()
            }
            done => done,
        }
    }

    /// Several statements without parameters.
    ///
    /// # Errors
    ///
    /// What the server says, here and below.
    pub fn run(&self, sql: &str) -> Result<(), StoreError> {
        self.with(|open| open.client.batch_execute(sql))
    }

    /// Rows that fit into memory.
    ///
    /// # Errors
    ///
    /// As above.
    pub fn rows(&self, sql: &str, params: Params<'_>) -> Result<Vec<Row>, StoreError> {
        self.with(|open| {
            let statement = open.prepared(sql)?;
            open.client.query(&statement, params)
        })
    }

    /// The one row, if there is one.
    ///
    /// # Errors
    ///
    /// As above.
    pub fn row(&self, sql: &str, params: Params<'_>) -> Result<Option<Row>, StoreError> {
        self.with(|open| {
            let statement = open.prepared(sql)?;
            open.client.query_opt(&statement, params)
        })
    }

    /// A change; how many rows it was.
    ///
    /// # Errors
    ///
    /// As above.
    pub fn execute(&self, sql: &str, params: Params<'_>) -> Result<u64, StoreError> {
        self.with(|open| {
            let statement = open.prepared(sql)?;
            open.client.execute(&statement, params)
        })
    }

    /// Row by row, all of one moment, so that a large answer need not fit into memory; `each` may ask further questions.
    ///
    /// # Errors
    ///
    /// As above, and [`StoreError::Stopped`] where `each` ended it.
    pub fn each(
        &self,
        sql: &str,
        params: Params<'_>,
        each: &mut dyn FnMut(&Row) -> Result<(), StoreError>,
    ) -> Result<(), StoreError> {
        let alone = !self.writing.get() && self.cursors.get() == 0;
        if alone {
            self.run("BEGIN ISOLATION LEVEL REPEATABLE READ READ ONLY")?;
        }
        let cursor = format!("answer_{}", self.cursors.get());
        self.cursors.set(self.cursors.get().saturating_add(1));
        let done = self.through(&cursor, sql, params, each);
        self.cursors.set(self.cursors.get().saturating_sub(1));
        let ended = match (alone, &done) {
            (true, _) => self.run("COMMIT"),
            // After an error of the server the transaction is over anyway.
            (false, Ok(()) | Err(StoreError::Stopped)) => self.run(&format!("CLOSE {cursor}")),
            (false, Err(_)) => Ok(()),
        };
        done.and(ended)
    }

    fn through(
        &self,
        cursor: &str,
        sql: &str,
        params: Params<'_>,
        each: &mut dyn FnMut(&Row) -> Result<(), StoreError>,
    ) -> Result<(), StoreError> {
        self.execute(&format!("DECLARE {cursor} NO SCROLL CURSOR FOR {sql}"), params)?;
        // Not kept prepared: each cursor of this name has columns of its own.
        let fetch = format!("FETCH {ROWS} FROM {cursor}");
        loop {
            let rows = self.with(|open| open.client.query(&fetch, &[]))?;
            rows.iter().try_for_each(&mut *each)?;
            if rows.len() < ROWS as usize {
                return Ok(());
            }
        }
    }

    /// Runs `work` in a transaction that writes, begun with `begin`; all of it is stored or nothing.
    ///
    /// # Errors
    ///
    /// That of `work`; [`StoreError::Lost`] tells whether the connection was lost while the server was storing.
    pub fn writing<T>(&self, begin: &str, work: impl FnOnce() -> Result<T, StoreError>) -> Result<T, StoreError> {
        self.writing.set(true);
        self.lost.set(false);
        let done = self.run(begin).and_then(|()| work());
        let done = match done {
            Ok(value) => self.commit().map(|()| value),
            Err(error) => {
                if self.lost.get() {
                    // Whatever was made of it on the way: this is why.
                    Err(StoreError::Lost { place: self.name().to_owned(), perhaps: false })
                } else {
                    self.run("ROLLBACK").and(Err(error))
                }
            }
        };
        self.writing.set(false);
        done
    }

    fn commit(&self) -> Result<(), StoreError> {
        self.run("COMMIT").map_err(|error| match error {
            StoreError::Lost { place, .. } => StoreError::Lost { place, perhaps: true },
            error => error,
        })
    }

    /// Connects anew, with patience while the server is starting.
    ///
    /// # Errors
    ///
    /// As [`Server::connect`].
    pub fn renew_patiently(&self, patience: std::time::Duration) -> Result<(), StoreError> {
        let begun = std::time::Instant::now();
        loop {
            match self.renew() {
                Err(error) if error::is_starting(&error) && begun.elapsed() < patience => {
                    std::thread::sleep(std::time::Duration::from_millis(50));
                }
                done => return done,
            }
        }
    }
}

impl Open {
    fn prepared(&mut self, sql: &str) -> Result<Statement, Error> {
        if let Some(statement) = self.statements.get(sql) {
            return Ok(statement.clone());
        }
        let statement = self.client.prepare(sql)?;
        self.statements.insert(sql.to_owned(), statement.clone());
        Ok(statement)
    }
}
