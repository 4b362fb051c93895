//! Commands by other names.

use super::is;

/// Other names of a command, as the words that were typed, with the command that is meant.
pub const COMMANDS: &[(&str, &str)] = &[
    ("add", "cloth add"),
    ("new", "cloth add"),
    ("list", "cloth list"),
    ("ls", "cloth list"),
    ("cloths", "cloth list"),
    ("show", "cloth show"),
    ("cut", "cloth cut"),
    ("cloth new", "cloth add"),
    ("cloth ls", "cloth list"),
    ("cloth change", "cloth edit"),
    ("cloth remove", "cloth retire"),
    ("cloth delete", "cloth retire"),
    ("cloth drop", "cloth retire"),
    ("cloth restore", "cloth return"),
    ("cloth undrop", "cloth return"),
    ("stash", "cloth"),
    ("fabric", "cloth"),
    ("patterns", "pattern list"),
    ("pattern new", "pattern add"),
    ("pattern ls", "pattern list"),
    ("pattern change", "pattern edit"),
    ("pattern remove", "pattern retire"),
    ("pattern delete", "pattern retire"),
    ("pattern drop", "pattern retire"),
    ("pattern restore", "pattern return"),
    ("pattern undrop", "pattern return"),
    ("match", "fit"),
    ("book", "report book"),
    ("cards", "report cards"),
    ("gauge", "report gauge"),
    ("sheet", "report sheet"),
    ("inbox", "device inbox"),
    ("assign", "device assign"),
];

/// The command that these words mean: `cloth ls`.
#[must_use]
pub fn command(words: &str) -> Option<&'static str> {
    COMMANDS.iter().find(|(name, _)| is(words, name)).map(|(_, command)| *command)
}
