//! What a line's end in a terminal must not part.

use crate::plain;
use crate::words::typeset;

/// Where no line ends though there is no space.
const JOINER: char = '\u{2060}';

/// A text of ours, set with its figures whole, in which no line may end behind a slash or within an isolate's mark.
///
/// ```
/// use tenter::words::tied::tied;
///
/// assert_eq!(tied("3.5 N/cm"), "3.5\u{a0}N/\u{2060}cm");
/// ```
#[must_use]
pub fn tied(text: &str) -> String {
    let mut tied = String::with_capacity(text.len());
    for sign in typeset::set(text).chars() {
        match sign {
            '/' | plain::OPEN => tied.extend([sign, JOINER]),
            plain::CLOSE => tied.extend([JOINER, sign]),
            _ => tied.push(sign),
        }
    }
    tied
}

/// The same with plain spaces, as a terminal shows it.
#[must_use]
pub fn untied(text: &str) -> String {
    text.replace('\u{a0}', " ").replace(JOINER, "")
}
