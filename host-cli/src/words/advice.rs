//! A line of advice that can be traced: with `--why` the numbers, the rule and its source stand under it.

use serde::Serialize;
use tenter_core::making::source::Source;

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
    /// Whether it is something to know, with nothing to do and to tick off.
    #[serde(skip)]
    pub is_note: bool,
}

impl Spoken {
    /// A line with its reason and its source.
    #[must_use]
    pub fn new(about: &'static str, text: impl Into<String>, why: impl Into<String>, source: Source) -> Self {
        Self { about, text: text.into(), why: why.into(), source: source.to_string(), is_note: false }
    }

    /// A line with nothing to do.
    #[must_use]
    pub fn note(about: &'static str, text: impl Into<String>, why: impl Into<String>, source: Source) -> Self {
        Self { is_note: true, ..Self::new(about, text, why, source) }
    }
}
