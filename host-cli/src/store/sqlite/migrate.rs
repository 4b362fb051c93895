//! Numbered schemas: each migration leads from one to the next.

use rusqlite::{Connection, Transaction};

/// Marks the file as a log of this program, in the header of the database (`tntr` in ASCII).
pub const APPLICATION_ID: i64 = 0x746e_7472;

/// The migrations: the first makes schema 1 of an empty file, and so on.
pub const MIGRATIONS: [&str; 4] = [
    include_str!("migrations/0001.sql"),
    include_str!("migrations/0002.sql"),
    include_str!("migrations/0003.sql"),
    include_str!("migrations/0004.sql"),
];

/// The newest schema.
#[allow(clippy::cast_possible_wrap)] // A handful.
pub const NEWEST: i64 = MIGRATIONS.len() as i64;

/// What a file is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FoundFile {
    /// Nothing yet.
    Empty,
    /// A log of this schema.
    Schema(i64),
    /// Somebody else's database.
    Foreign,
}

/// Looks at a file without changing it.
///
/// # Errors
///
/// What SQLite says.
pub fn look(connection: &Connection) -> rusqlite::Result<FoundFile> {
    // All of it at one moment: another program may be making the log just now.
    let _moment = connection.is_autocommit().then(|| connection.unchecked_transaction()).transpose()?;
    let number = |pragma: &str| connection.pragma_query_value(None, pragma, |row| row.get::<_, i64>(0));
    let tables: i64 = connection.query_row("SELECT count(*) FROM sqlite_schema", [], |row| row.get(0))?;
    Ok(match (number("application_id")?, number("user_version")?, tables) {
        (APPLICATION_ID, schema, _) => FoundFile::Schema(schema),
        (0, 0, 0) => FoundFile::Empty,
        _ => FoundFile::Foreign,
    })
}

/// Brings a log from schema `from` to `to`, within the transaction.
///
/// # Errors
///
/// What SQLite says.
pub fn migrate(transaction: &Transaction<'_>, from: i64, to: i64) -> rusqlite::Result<()> {
    let from = usize::try_from(from).unwrap_or_default();
    let steps = usize::try_from(to).unwrap_or_default().saturating_sub(from);
    for migration in MIGRATIONS.iter().skip(from).take(steps) {
        transaction.execute_batch(migration)?;
    }
    transaction.pragma_update(None, "application_id", APPLICATION_ID)?;
    transaction.pragma_update(None, "user_version", to)
}
