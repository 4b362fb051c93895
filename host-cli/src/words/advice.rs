//! Lines of advice, each of which can be traced: with `--why` the numbers, the rule and its source stand under it.

use serde::Serialize;
use tenter_core::making::source::Source;

use crate::text::lines::Lines;

/// A line of advice.
#[derive(Debug, Clone, Serialize)]
pub struct Spoken {
    /// What it is about, in a word.
    pub about: &'static str,
    /// What to do, or what was found.
    pub text: String,
    /// The numbers and the rule behind it.
    pub why: String,
    /// Where the rule comes from.
    pub source: String,
}

impl Spoken {
    /// A line with its reason and its source.
    #[must_use]
    pub fn new(about: &'static str, text: impl Into<String>, why: impl Into<String>, source: Source) -> Self {
        Self { about, text: text.into(), why: why.into(), source: source.to_string() }
    }
}

/// Writes the lines.
pub fn write(text: &mut Lines, lines: &[Spoken], why: bool) {
    let mut last = "";
    for line in lines {
        text.row(if line.about == last { "" } else { line.about }, &line.text);
        last = line.about;
        if why {
            text.row("", &format!("  why: {} [{}]", line.why, line.source));
        }
    }
}
