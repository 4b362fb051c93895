//! Where a rule comes from.

use core::fmt;

/// Where a rule, a limit or a row of a table comes from. Everything that advises carries one.
///
/// ```
/// use tenter_core::Source;
///
/// assert_eq!(Source::CommonPractice.to_string(), "common practice, no source");
/// assert_eq!(Source::Memory("a handbook, 1990").to_string(), "a handbook, 1990, from memory");
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum Source {
    /// Read in a publication that anybody can find: a standard, a regulation, a journal, a book, an extension leaflet.
    Published(&'static str),
    /// Recalled from a publication that was not read again: author or standard, title, year.
    Memory(&'static str),
    /// Worked out, from what is said here.
    Derived(&'static str),
    /// The trade does it so, or says so on pages that name no author; nothing was found that can be cited.
    CommonPractice,
    /// The tool's own, by judgement.
    Own,
}

impl fmt::Display for Source {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Published(text) => f.write_str(text),
            Self::Memory(text) => write!(f, "{text}, from memory"),
            Self::Derived(text) => write!(f, "derived: {text}"),
            Self::CommonPractice => f.write_str("common practice, no source"),
            Self::Own => f.write_str("the tool's own"),
        }
    }
}
