//! The password of a user, from the environment or from the file in which PostgreSQL's own programs look for it.
//!
//! The file's form is that of the PostgreSQL documentation, § 34.16 "The Password File": a line for each server,
//! `host:port:database:user:password`, `*` for any, `\` before a colon or backslash.

use std::env;
use std::fs;
use std::path::{Path, PathBuf};

/// Who wants in, and where.
#[derive(Clone, Copy, Debug)]
pub struct Login<'a> {
    /// The server's name, `localhost` for a socket.
    pub host: &'a str,
    /// Its port.
    pub port: u16,
    /// The database.
    pub database: &'a str,
    /// The user.
    pub user: &'a str,
}

/// The password: that of `PGPASSWORD`, else that of the file.
#[must_use]
pub fn password(asked: Login<'_>) -> Option<String> {
    if let Ok(password) = env::var("PGPASSWORD") {
        return Some(password);
    }
    let own = || Some(PathBuf::from(env::var_os("HOME")?).join(".pgpass"));
    let file = env::var_os("PGPASSFILE").map(PathBuf::from).or_else(own)?;
    if !is_private(&file) {
        return None;
    }
    find(&fs::read_to_string(file).ok()?, asked)
}

/// A file that others may read is not used, as PostgreSQL's own programs do not.
#[cfg(unix)]
fn is_private(file: &Path) -> bool {
    use std::os::unix::fs::PermissionsExt as _;
    fs::metadata(file).is_ok_and(|file| file.is_file() && file.permissions().mode() & 0o077 == 0)
}

#[cfg(not(unix))]
fn is_private(file: &Path) -> bool {
    file.is_file()
}

/// The password on the first line that fits.
fn find(text: &str, asked: Login<'_>) -> Option<String> {
    let port = asked.port.to_string();
    let wanted = [asked.host, &port, asked.database, asked.user];
    text.lines().filter(|line| !line.starts_with('#')).find_map(|line| {
        let fields = fields(line);
        let (password, names) = fields.split_last().filter(|(_, names)| names.len() == wanted.len())?;
        names.iter().zip(wanted).all(|(name, wanted)| name == "*" || name == wanted).then(|| password.clone())
    })
}

/// The fields between colons.
fn fields(line: &str) -> Vec<String> {
    let mut fields = vec![String::new()];
    let mut letters = line.chars();
    while let Some(letter) = letters.next() {
        let letter = match letter {
            // All after the fourth colon is the password.
            ':' if fields.len() < 5 => {
                fields.push(String::new());
                continue;
            }
            '\\' => letters.next().unwrap_or('\\'),
            letter => letter,
        };
        if let Some(field) = fields.last_mut() {
            field.push(letter);
        }
    }
    fields
}

#[cfg(test)]
mod tests {
    use super::*;

    /// After the documentation named above: the first line that fits, wildcards, and what a backslash protects.
    #[test]
    fn the_first_line_that_fits() {
        let text = "# host:port:database:user:password\nother:5432:*:*:no\nguild:5432:stash:an\\:na:a\\:b:c\\\\d\n\
                    guild:*:stash:*:second\nshort:1:2:3\n*:*:*:*:any";
        let asked = |host, user| Login { host, port: 5432, database: "stash", user };
        assert_eq!(find(text, asked("guild", "an:na")).as_deref(), Some("a:b:c\\d"));
        assert_eq!(find(text, asked("guild", "berta")).as_deref(), Some("second"));
        assert_eq!(find(text, asked("localhost", "berta")).as_deref(), Some("any"));
        assert_eq!(find("guild:5433:stash:*:no", asked("guild", "berta")), None);
    }

    #[cfg(unix)]
    #[test]
    fn a_file_that_others_may_read_is_not_used() {
        use std::os::unix::fs::PermissionsExt as _;
        let file = tempfile::NamedTempFile::new().unwrap();
        for (mode, private) in [(0o600, true), (0o640, false), (0o604, false)] {
            fs::set_permissions(file.path(), fs::Permissions::from_mode(mode)).unwrap();
            assert_eq!(is_private(file.path()), private, "{mode:o}");
        }
    }
}
