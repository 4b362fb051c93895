//! The last gate before a terminal: whatever a name, a file or a handheld holds, the terminal is not told to do anything
//! but to colour a text.

use std::io::{self, Write};

use crate::plain::printable;

const ESCAPE: char = '\u{1b}';

/// Passes on what can be printed, and colours (ECMA-48, SGR); for anything else that a terminal would obey it writes `?`.
///
/// ```
/// use std::io::Write as _;
/// use tenter::text::filter::Filter;
///
/// let mut out = Vec::new();
/// write!(Filter::new(&mut out), "\u{1b}[1mbold\u{1b}[0m \u{1b}]0;title\u{7}\u{202e}").unwrap();
/// assert_eq!(String::from_utf8(out).unwrap(), "\u{1b}[1mbold\u{1b}[0m ?]0;title??");
/// ```
#[derive(Debug)]
pub struct Filter<W> {
    inner: W,
    /// The beginning of a character whose other bytes come with the next write.
    begun: Vec<u8>,
    /// What may become a colour.
    colour: String,
}

impl<W: Write> Filter<W> {
    /// A gate before `inner`.
    pub const fn new(inner: W) -> Self {
        Self { inner, begun: Vec::new(), colour: String::new() }
    }

    fn text(&mut self, text: &str) -> String {
        let mut out = String::with_capacity(text.len());
        for c in text.chars() {
            match (self.colour.len(), c) {
                (0, ESCAPE) | (1, '[') => self.colour.push(c),
                (2.., '0'..='9' | ';') => self.colour.push(c),
                (2.., 'm') => {
                    out.push_str(&self.colour);
                    out.push(c);
                    self.colour.clear();
                }
                _ => {
                    out.extend(self.colour.drain(..).map(printable));
                    match c {
                        ESCAPE => self.colour.push(c),
                        _ => out.push(printable(c)),
                    }
                }
            }
        }
        out
    }
}

impl<W: Write> Write for Filter<W> {
    fn write(&mut self, bytes: &[u8]) -> io::Result<usize> {
        let mut all = core::mem::take(&mut self.begun);
        all.extend_from_slice(bytes);
        let mut out = String::new();
        let mut rest = all.as_slice();
        loop {
            match core::str::from_utf8(rest) {
                Ok(text) => {
                    out.push_str(&self.text(text));
                    break;
                }
                Err(error) => {
                    let (whole, other) = rest.split_at_checked(error.valid_up_to()).unwrap_or_default();
                    out.push_str(&self.text(core::str::from_utf8(whole).unwrap_or_default()));
                    let Some(wrong) = error.error_len() else {
                        self.begun = other.to_vec();
                        break;
                    };
                    out.push('?');
                    rest = other.get(wrong..).unwrap_or_default();
                }
            }
        }
        self.inner.write_all(out.as_bytes())?;
        Ok(bytes.len())
    }

    fn flush(&mut self) -> io::Result<()> {
        self.inner.flush()
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    fn filtered(pieces: &[&[u8]]) -> Vec<u8> {
        let mut out = Vec::new();
        let mut filter = Filter::new(&mut out);
        pieces.iter().for_each(|piece| filter.write_all(piece).unwrap());
        out
    }

    proptest! {
        /// ECMA-48 and Unicode: nothing that moves, clears, titles, answers or turns gets through, in whatever pieces it
        /// comes; what can be printed does.
        #[test]
        fn nothing_but_colours_and_what_can_be_printed(text in ".*|[\u{0}-\u{9f}\u{2020}-\u{2070}\\[;m0-9]*", at in 0usize..40) {
            let bytes = text.as_bytes();
            let at = at.min(bytes.len());
            let out = filtered(&[&bytes[..at], &bytes[at..]]);
            prop_assert_eq!(&out, &filtered(&[bytes]));
            let out = String::from_utf8(out).unwrap();
            let without = anstream::adapter::strip_str(&out).to_string();
            let obeyed = |c: char| c.is_control() && !matches!(c, '\n' | '\t');
            prop_assert!(!without.contains(obeyed), "{without:?}");
            prop_assert!(!out.contains(['\u{202a}', '\u{202e}', '\u{2028}', '\u{9b}', '\r']), "{out:?}");
            let plain: String = text.chars().filter(|c| !c.is_control()).collect();
            prop_assert!(text.chars().any(|c| printable(c) != c) || out == plain || text.contains(['\n', '\t']), "{out:?}");
        }

        #[test]
        fn any_bytes_make_text(bytes in prop::collection::vec(any::<u8>(), 0..60)) {
            prop_assert!(String::from_utf8(filtered(&[&bytes])).is_ok());
        }
    }
}
