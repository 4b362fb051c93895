//! Commands that may be meant by a word of another program, or of daily life.

use crate::input::synonym::is;

/// Words that may mean one command or another, with what to type for each.
const UNCLEAR: &[(&str, &str)] = &[
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

/// What to type instead of words that may mean one command or another.
#[must_use]
pub fn instead(words: &str) -> Option<&'static str> {
    UNCLEAR.iter().find(|(name, _)| is(words, name)).map(|(_, instead)| *instead)
}
