//! Numbered schemas: each migration leads from one to the next. Their numbers are those of the schemas of a file.

use super::connection::Connection;
use crate::store::StoreError;

/// The schema that the first migration makes.
pub const FIRST: i32 = 3;

/// The migrations: the first makes schema [`FIRST`] where there is none, and so on.
pub const MIGRATIONS: [&str; 2] = [include_str!("migrations/0003.sql"), include_str!("migrations/0004.sql")];

/// The newest schema.
#[allow(clippy::cast_possible_truncation, clippy::cast_possible_wrap)] // A handful.
pub const NEWEST: i32 = FIRST + MIGRATIONS.len() as i32 - 1;

/// What a database holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FoundDatabase {
    /// No log yet.
    Nothing,
    /// Logs of this schema.
    Schema(i32),
    /// Somebody else's tables under our name.
    Foreign,
}

/// Looks without changing anything.
///
/// # Errors
///
/// What the server says.
pub fn look(connection: &Connection) -> Result<FoundDatabase, StoreError> {
    let sql = "SELECT EXISTS (SELECT FROM pg_catalog.pg_namespace WHERE nspname = 'tenter'), \
        EXISTS (SELECT FROM pg_catalog.pg_tables WHERE schemaname = 'tenter' AND tablename = 'about')";
    let found = connection.row(sql, &[])?.map(|row| (row.get(0), row.get(1)));
    match found {
        Some((true, true)) => {
            let schema = connection.row("SELECT schema FROM tenter.about", &[])?;
            Ok(schema.map_or(FoundDatabase::Foreign, |row| FoundDatabase::Schema(row.get(0))))
        }
        Some((true, false)) => Ok(FoundDatabase::Foreign),
        _ => Ok(FoundDatabase::Nothing),
    }
}

/// Brings a database from what it holds to the newest schema, within a transaction.
///
/// # Errors
///
/// What the server says.
pub fn migrate(connection: &Connection, found: FoundDatabase) -> Result<(), StoreError> {
    let have = match found {
        FoundDatabase::Schema(schema) => usize::try_from(schema - FIRST + 1).unwrap_or_default(),
        FoundDatabase::Nothing | FoundDatabase::Foreign => 0,
    };
    for migration in MIGRATIONS.iter().skip(have) {
        connection.run(migration)?;
    }
    connection.run("DELETE FROM tenter.about")?;
    connection.execute("INSERT INTO tenter.about (application, schema) VALUES ('tenter', $1)", &[&NEWEST])?;
    Ok(())
}
