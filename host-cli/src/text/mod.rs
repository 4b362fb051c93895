//! Findings as text for a terminal: pure functions, no decisions.

pub mod advice;
pub mod check;
pub mod class;
pub mod cloth;
pub mod device;
pub mod doubt;
pub mod figures;
pub mod filter;
pub mod fit;
pub mod gauge;
pub mod handle;
pub mod hang;
pub mod import;
pub mod lines;
pub mod make;
pub mod memory;
pub mod pair;
pub mod pattern;
pub mod people;
pub mod plan;
pub mod pull;
pub mod size;
pub mod sync;
pub mod table;
pub mod wash;

use std::io::{self, Write};

use crate::log::Here;

/// Where a result goes, how wide it is, and where its reader is.
pub struct TextOutput<'a> {
    /// Where it is written.
    pub out: &'a mut dyn Write,
    /// Columns.
    pub width: usize,
    /// Whether more than ASCII can be shown.
    pub unicode: bool,
    /// The reader's time, chance and wall clock.
    pub here: Here,
}

impl TextOutput<'_> {
    /// Says something in a line of its own, wrapped where that is too narrow.
    ///
    /// # Errors
    ///
    /// An output that cannot be written.
    pub fn say(&mut self, words: &str) -> io::Result<()> {
        let mut text = lines::Lines::new(self.width);
        text.words(words);
        self.out.write_all(text.finish().as_bytes())
    }
}

impl core::fmt::Debug for TextOutput<'_> {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        f.debug_struct("Screen").field("width", &self.width).finish_non_exhaustive()
    }
}

/// Columns of the terminal: `COLUMNS` where it says so, then the window's own, 80 in a pipe; never below 40.
#[cfg(feature = "desk")]
#[must_use]
pub fn terminal_width() -> usize {
    let stated = std::env::var("COLUMNS").ok().and_then(|text| text.parse().ok()).filter(|columns| *columns > 0);
    let window = || terminal_size::terminal_size_of(std::io::stdout()).map(|(width, _)| usize::from(width.0));
    stated.or_else(window).unwrap_or(80).max(40)
}

/// Whether the terminal shows more than ASCII: not where its locale names another character set than UTF-8. A pipe gets
/// UTF-8.
#[cfg(feature = "desk")]
#[must_use]
pub fn terminal_is_unicode() -> bool {
    let of = |name| std::env::var(name).ok().filter(|text| !text.is_empty());
    let locale = of("LC_ALL").or_else(|| of("LC_CTYPE")).or_else(|| of("LANG")).unwrap_or_default().to_uppercase();
    !io::IsTerminal::is_terminal(&io::stdout())
        || locale.is_empty()
        || locale.contains("UTF-8")
        || locale.contains("UTF8")
}
