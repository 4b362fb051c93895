//! Lines of text with a label, wrapped for a narrow terminal.

use std::fmt::Write as _;

use unicode_width::UnicodeWidthChar as _;

/// Columns of a label, and of the margin on the right.
const AROUND: usize = 14;
/// Longer lines are tiring to read.
const WIDEST: usize = 86;

/// A text that grows line by line, for a terminal of so many columns.
#[derive(Debug)]
pub struct Lines {
    /// What is written so far.
    pub text: String,
    /// Columns of the terminal.
    pub columns: usize,
}

impl Lines {
    /// A label and its words, wrapped.
    pub fn row(&mut self, label: &str, words: &str) {
        row_within(&mut self.text, self.columns, label, words);
    }

    /// One line, as it is.
    pub fn line(&mut self, words: std::fmt::Arguments<'_>) {
        line(&mut self.text, words);
    }
}

/// A label and its words, wrapped so that they fit 80 columns.
pub fn row(text: &mut String, label: &str, words: &str) {
    row_within(text, 80, label, words);
}

fn row_within(text: &mut String, columns: usize, label: &str, words: &str) {
    let width = columns.saturating_sub(AROUND).clamp(20, WIDEST);
    let mut label = label;
    let mut rest = words;
    while !rest.is_empty() {
        let end = wrap_at(rest, width);
        let (now, later) = rest.split_at_checked(end).unwrap_or((rest, ""));
        line(text, format_args!("  {label:<9} {}", now.trim_end()));
        label = "";
        rest = later.trim_start();
    }
}

/// The byte after the last word of `text` that still fits `width` columns; a longer word is left whole.
#[must_use]
pub fn wrap_at(text: &str, width: usize) -> usize {
    let mut columns = 0;
    let fits = |(_, c): &(usize, char)| {
        columns += c.width().unwrap_or(0);
        columns > width
    };
    let end = text.char_indices().find(fits).map_or(text.len(), |(end, _)| end);
    if end == text.len() {
        return end;
    }
    // A word may end right at the edge.
    let edge = text.get(end..).is_some_and(|rest| rest.starts_with(' ')).then_some(end);
    let fits = edge.or_else(|| text.get(..end).unwrap_or(text).rfind(' '));
    fits.or_else(|| text.find(' ')).unwrap_or(text.len())
}

/// One line.
pub fn line(text: &mut String, words: std::fmt::Arguments<'_>) {
    // Writing into a string cannot fail.
    let _ = writeln!(text, "{words}");
}
