//! Logs that cannot be used.

use crate::plain::one_line;
use crate::store::{Access, AddressFault, LogFault, StoreError};

/// What is wrong with a log, and what to do.
#[must_use]
pub fn store(error: &StoreError) -> String {
    match error {
        StoreError::NotALog { place } => {
            format!("{place} is not a tenter log; pass another file with --db, or move this one away")
        }
        StoreError::Newer { place, found, known } => {
            format!("{place} was written by a newer tenter (schema {found}, this one knows {known}); use that version")
        }
        StoreError::Damaged { place } => format!(
            "{place} is damaged; nothing was changed: type tenter log check --db {place}, which says what to do"
        ),
        StoreError::Denied { access, place, system } => {
            format!("may not {} {place}: {system}; pass a file of your own with --db", tried(*access))
        }
        StoreError::Full { place } => {
            format!("the disk that holds {place} is full; nothing was changed: make room and type it again")
        }
        StoreError::Busy { place } => format!("{place} is in use by another tenter; try again when it has finished"),
        StoreError::Encoding { place, encoding } => {
            format!("cannot use {place}: its texts are in {encoding}; make the database with ENCODING 'UTF8'")
        }
        StoreError::Clock { shows } => {
            format!("the clock shows {}; set it, then type this again", shows.strftime("%-d %B %Y"))
        }
        StoreError::Unsure { place, system } => {
            format!("{place} failed ({system}); look whether it is there before you type it again")
        }
        StoreError::LeftOver { place } => format!(
            "{place} was replaced, and {place}-wal belongs to the file before; delete {place}-wal and {place}-shm, then type \
             this again"
        ),
        StoreError::Other { place, system } => format!("cannot use {place}: {system}"),
        StoreError::Address(fault) => address(fault),
        StoreError::Unreachable { place, system } => {
            format!("cannot reach {place}: {system}; check the address, and that the server is running")
        }
        StoreError::NotLetIn { place, system } => format!(
            "{place} does not let you in: {system}; check the user in the address, and put the password into ~/.pgpass or \
             the environment variable PGPASSWORD"
        ),
        StoreError::NoRight { access, place } => {
            format!("you may not {} {place}; ask whoever keeps it for the right (tenter log roles)", tried(*access))
        }
        StoreError::Lost { place, perhaps: false } => {
            format!("the connection to {place} was lost; nothing was changed: type it again")
        }
        StoreError::Lost { place, perhaps: true } => format!(
            "the connection to {place} was lost while it was storing this; look whether it is there before you type it again"
        ),
        StoreError::Stopped => "the log was not written; type it again".to_owned(),
    }
}

pub(super) const fn tried(access: Access) -> &'static str {
    match access {
        Access::Make => "make",
        Access::Open => "open",
        Access::Read => "read",
        Access::Write => "write",
    }
}

/// What is not as it should be in a log.
#[must_use]
pub fn log_fault(fault: &LogFault) -> String {
    match fault {
        LogFault::Dangling { table } => format!("a row of {table} names something that is not there"),
        LogFault::Unnumbered => "the entries are not all numbered".to_owned(),
        LogFault::Unfolded { count } => format!("{count} things that were added are in no table"),
        LogFault::Differs { table, count: 1 } => format!("1 row of {table} is not what the entries say"),
        LogFault::Differs { table, count } => format!("{count} rows of {table} are not what the entries say"),
        LogFault::Unreadable { count: 1 } => "1 entry cannot be read".to_owned(),
        LogFault::Unreadable { count } => format!("{count} entries cannot be read"),
        LogFault::Engine(said) => said.clone(),
    }
}

/// What is wrong with an address, and what to type instead.
fn address(fault: &AddressFault) -> String {
    match fault {
        AddressFault::Password => {
            "leave the password out of the address, where others can read it; put it into ~/.pgpass or \
                                   the environment variable PGPASSWORD"
                .to_owned()
        }
        AddressFault::SslMode(mode) => {
            format!("sslmode={} is unknown; type disable, prefer, require or verify-full", one_line(mode))
        }
        AddressFault::Unreadable(why) => {
            format!("cannot read the address of the log: {}; type postgres://USER@HOST/DATABASE", one_line(why))
        }
        AddressFault::Certificates { file, system } => {
            format!("cannot read certificates from {file}: {system}; pass another file with sslrootcert=FILE")
        }
        AddressFault::NoHome => "no home folder; set the environment variable HOME".to_owned(),
        AddressFault::NoCertificate { file } => {
            format!("cannot read certificates from {file}: it holds none; pass another file with sslrootcert=FILE")
        }
        AddressFault::NotBuilt => {
            "this tenter was built without PostgreSQL; build it with --features postgres".to_owned()
        }
    }
}
