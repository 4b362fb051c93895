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

/// Words that may mean one command or another, with what to type for each.
pub const UNCLEAR: &[(&str, &str)] = &[
    ("test", "type tenter check 25 26.5 26.6 26.5 5% to judge a test, tenter pull 7 25 26.5 26.6 26.5 to store it"),
    ("measure", "type tenter check 25 26.5 26.6 26.5 5% to judge a test, tenter pull 7 25 26.5 26.6 26.5 to store it"),
    ("delete", REMOVE),
    ("remove", REMOVE),
    ("drop", REMOVE),
    ("retire", REMOVE),
    ("undo", UNDO),
    ("restore", BACK),
    ("return", BACK),
    ("edit", EDIT),
    ("change", EDIT),
    ("buy", "type tenter cloth edit 6 --bought 2m, or tenter cloth add NAME --length 2m"),
    ("bought", "type tenter cloth edit 6 --bought 2m, or tenter cloth add NAME --length 2m"),
    ("cloth buy", "type tenter cloth edit 6 --bought 2m"),
    ("cloth undo", UNDO),
];

const REMOVE: &str = "type tenter pull 7 --retire TEST for a test, tenter cloth retire 7 for a cloth, tenter pattern retire NAME for a pattern";
const UNDO: &str =
    "type tenter pull 7 --retire TEST for a test, tenter cloth cut 7 --undo for a cut, tenter wash 7 --undo for a wash";
const BACK: &str = "type tenter pull 7 --return TEST for a test, tenter cloth return 7 for a cloth, tenter pattern return NAME for a pattern";
const EDIT: &str = "type tenter cloth edit 7, or tenter pattern edit NAME VIEW ROLE";

/// The command that these words mean: `cloth ls`.
#[must_use]
pub fn command(words: &str) -> Option<&'static str> {
    COMMANDS.iter().find(|(name, _)| is(words, name)).map(|(_, command)| *command)
}

/// What to type instead of words that may mean one command or another.
#[must_use]
pub fn instead(words: &str) -> Option<&'static str> {
    UNCLEAR.iter().find(|(name, _)| is(words, name)).map(|(_, instead)| *instead)
}
