//! Texts from elsewhere, made safe to show: on one line, short, without controls, and turning no neighbour round.

use std::io;
use std::path::Path;

/// How many characters of a text are quoted back.
const QUOTED: usize = 40;

/// What was typed, short and without anything that would break the line.
///
/// ```
/// assert_eq!(tenter::plain::one_line("7\ncm"), "7\\ncm");
/// ```
#[must_use]
pub fn one_line(text: &str) -> String {
    let mut short: String = text.chars().take(QUOTED).flat_map(char::escape_debug).collect();
    if text.chars().nth(QUOTED).is_some() {
        short.push('…');
    }
    short.replace("\\'", "'").replace("\\\"", "\"")
}

/// A character as a terminal may be given it: for a control other than the end of a line and the tab, a separator of
/// lines, and what turns the direction of all that follows (Unicode UAX #9), a question mark.
///
/// ```
/// assert_eq!("a\u{1b}\u{202e}b".chars().map(tenter::plain::printable).collect::<String>(), "a??b");
/// ```
#[must_use]
pub const fn printable(c: char) -> char {
    match c {
        '\n' | '\t' => c,
        '\0'..='\u{1f}' | '\u{7f}'..='\u{9f}' | '\u{2028}' | '\u{2029}' | '\u{202a}'..='\u{202e}' => '?',
        '\u{2066}' | '\u{2067}' => '?',
        _ => c,
    }
}

/// A path for the reader, on one line.
#[must_use]
pub fn shown(path: &Path) -> String {
    let escaped =
        |c: char| if printable(c) == c && !c.is_control() { c.to_string() } else { c.escape_debug().to_string() };
    path.display().to_string().chars().map(escaped).collect()
}

/// What the system says, without its number.
#[must_use]
pub fn reason(error: &io::Error) -> String {
    let text = error.to_string();
    text.split_once(" (os error").map_or(text.as_str(), |(words, _)| words).to_lowercase()
}

/// Opens and closes an isolate, which neither turns its neighbours round nor is turned by them (Unicode UAX #9).
pub const OPEN: char = '\u{2068}';
/// Closes an isolate.
pub const CLOSE: char = '\u{2069}';

/// [`OPEN`] as a text.
pub const OPEN_TEXT: &str = "\u{2068}";

/// A text that runs from right to left, or turns the direction, in an isolate of its own; any other text as it is.
///
/// ```
/// use tenter::plain::isolated;
///
/// assert_eq!(isolated("Doorway rib"), "Doorway rib");
/// assert_eq!(isolated("قماش"), "\u{2068}قماش\u{2069}");
/// ```
#[must_use]
pub fn isolated(text: &str) -> String {
    if !text.chars().any(turns) {
        return text.to_owned();
    }
    let own = |c: &char| !matches!(c, '\u{2066}'..='\u{2069}');
    format!("{OPEN}{}{CLOSE}", text.chars().filter(own).collect::<String>())
}

/// Letters of scripts that run from right to left (UAX #9, blocks of classes R and AL), and marks of direction.
const fn turns(c: char) -> bool {
    matches!(
        c,
        '\u{590}'..='\u{8ff}'
            | '\u{fb1d}'..='\u{fdff}'
            | '\u{fe70}'..='\u{feff}'
            | '\u{10800}'..='\u{10fff}'
            | '\u{1e800}'..='\u{1efff}'
            | '\u{200f}'
            | '\u{202a}'..='\u{202e}'
            | '\u{2066}'..='\u{2069}'
    )
}

/// A text without its isolates.
#[must_use]
pub fn plain(text: &str) -> String {
    text.replace([OPEN, CLOSE], "")
}

/// Whether an isolate is still open at the end. A line's end closes it, so the next line has to open it anew.
#[must_use]
pub fn is_open(line: &str) -> bool {
    line.rfind(OPEN) > line.rfind(CLOSE)
}
