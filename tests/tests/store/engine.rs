//! The engines, each with logs of its own.

use std::sync::OnceLock;
use std::sync::atomic::{AtomicU32, Ordering};

use tempfile::TempDir;
use tenter::log::Here;
use tenter::store::LogWithDrafts;
use tenter::store::memory::Memory;
use tenter::store::postgres::{Postgres, Server};
use tenter::store::sqlite::Sqlite;
use tenter_tests::cluster;

/// What keeps a log.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Engine {
    Sqlite,
    Postgres,
    Memory,
}

/// Runs every law against every engine, as a test of its own.
macro_rules! on_every_engine {
    ($($law:ident),* $(,)?) => {
        crate::engine::on_every_engine!(@ sqlite Sqlite $($law)*);
        crate::engine::on_every_engine!(@ postgres Postgres $($law)*);
        crate::engine::on_every_engine!(@ memory Memory $($law)*);
    };
    (@ $name:ident $engine:ident $($law:ident)*) => {
        mod $name {
            $(#[test]
            fn $law() {
                super::$law(crate::engine::Engine::$engine);
            })*
        }
    };
}
/// The same for those that many can open at once.
macro_rules! on_every_shared_engine {
    ($($law:ident),* $(,)?) => {
        crate::engine::on_every_engine!(@ sqlite Sqlite $($law)*);
        crate::engine::on_every_engine!(@ postgres Postgres $($law)*);
    };
}
pub(crate) use {on_every_engine, on_every_shared_engine};

/// A log that can be opened again and again, except in memory.
pub struct Home {
    engine: Engine,
    folder: TempDir,
    address: String,
}

impl Engine {
    /// An empty log.
    pub fn home(self) -> Home {
        static DATABASE: OnceLock<String> = OnceLock::new();
        static LOGS: AtomicU32 = AtomicU32::new(0);
        let folder = tempfile::tempdir().unwrap();
        let address = match self {
            Self::Sqlite | Self::Memory => folder.path().join("log.sqlite3").to_str().unwrap().to_owned(),
            // Logs of one database are apart from each other; that is a law too.
            Self::Postgres => {
                let database = DATABASE.get_or_init(|| cluster::shared().database());
                format!("{database}&log=log%20{}", LOGS.fetch_add(1, Ordering::Relaxed))
            }
        };
        Home { engine: self, folder, address }
    }

    /// An empty log that is opened once.
    pub fn log(self) -> Box<dyn LogWithDrafts> {
        match self {
            Self::Sqlite => Box::new(Sqlite::in_memory(Here::desk()).unwrap()),
            _ => self.home().open(),
        }
    }
}

impl Home {
    /// Opens it.
    pub fn open(&self) -> Box<dyn LogWithDrafts> {
        self.open_at(Here::desk())
    }

    /// Opens it on a machine of its own.
    pub fn open_at(&self, here: Here) -> Box<dyn LogWithDrafts> {
        let log: Box<dyn LogWithDrafts> = match self.engine {
            Engine::Sqlite => Box::new(Sqlite::open(self.address.as_ref(), here).unwrap()),
            Engine::Postgres => {
                let server = Server::parse(&self.address).unwrap();
                Box::new(Postgres::open(&server, &self.folder.path().join("drafts"), here).unwrap())
            }
            Engine::Memory => Box::new(Memory::new(here)),
        };
        assert_eq!(log.faults().unwrap(), Vec::new());
        log
    }

    /// What `--db` takes.
    pub fn address(&self) -> &str {
        &self.address
    }
}
