//! Lines of text with a label, wrapped for a narrow terminal.

use std::fmt::Write as _;

/// Characters beside a label, so that a line fits 80 columns.
const WIDTH: usize = 66;

/// A label and its words, wrapped so that they fit a narrow terminal.
pub fn row(text: &mut String, label: &str, words: &str) {
    let mut label = label;
    let mut rest = words;
    while !rest.is_empty() {
        let end = wrap_at(rest, WIDTH);
        let (now, later) = rest.split_at_checked(end).unwrap_or((rest, ""));
        line(text, format_args!("  {label:<9} {}", now.trim_end()));
        label = "";
        rest = later.trim_start();
    }
}

/// The byte after the last word of `text` that still fits `width` characters; a longer word is left whole.
#[must_use]
pub fn wrap_at(text: &str, width: usize) -> usize {
    let end = text.char_indices().nth(width).map_or(text.len(), |(end, _)| end);
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
