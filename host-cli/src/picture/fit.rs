//! How much room a text takes, and how a long one is made to fit. The font that a reader has is not known, so widths
//! are generous estimates; nothing may depend on them but where a line breaks.

use unicode_segmentation::UnicodeSegmentation as _;
use unicode_width::{UnicodeWidthChar as _, UnicodeWidthStr as _};

/// The width of a text in em, estimated for a broad sans-serif.
#[must_use]
pub fn width(text: &str) -> f64 {
    text.graphemes(true).map(grapheme_width).sum()
}

fn grapheme_width(grapheme: &str) -> f64 {
    let Some(first) = grapheme.chars().next() else { return 0.0 };
    match first {
        'i' | 'j' | 'l' | 'I' | '.' | ',' | ':' | ';' | '!' | '\'' | '|' | ' ' | '(' | ')' | '/' => 0.36,
        'm' | 'w' | 'M' | 'W' | '%' | '@' => 0.96,
        'A'..='Z' | '±' | '+' | '=' | '<' | '>' | '#' | '~' | '≈' => 0.82,
        'a'..='z' | '0'..='9' | '-' | '–' => 0.6,
        // An emoji of many parts takes the room of its widest part.
        _ if first.width().unwrap_or(1) > 1 || grapheme.width() > 1 => 1.4,
        _ => 0.9,
    }
}

/// The text cut so that it takes at most `em`, with an ellipsis where something is left out.
#[must_use]
pub fn shortened(text: &str, em: f64) -> String {
    if width(text) <= em {
        return text.to_owned();
    }
    let mut short = head(text, em - width("…")).trim_end().to_owned();
    short.push('…');
    short
}

/// As much of the beginning as takes at most `em`.
fn head(text: &str, em: f64) -> &str {
    let mut used = 0.0;
    let mut end = 0;
    for (at, grapheme) in text.grapheme_indices(true) {
        used += grapheme_width(grapheme);
        if used > em {
            break;
        }
        end = at.saturating_add(grapheme.len());
    }
    text.get(..end).unwrap_or_default()
}

/// The text in at most `lines` lines of at most `em` each, broken between words where it can be; the last line ends in
/// an ellipsis where something is left out.
#[must_use]
pub fn wrapped(text: &str, em: f64, lines: usize) -> Vec<String> {
    let mut rest = text.trim();
    let mut done = Vec::new();
    while !rest.is_empty() && done.len() < lines {
        if done.len().saturating_add(1) == lines {
            done.push(shortened(rest, em));
            break;
        }
        let end = line_end(rest, em);
        let (line, later) = rest.split_at_checked(end).unwrap_or((rest, ""));
        done.push(line.trim_end().to_owned());
        rest = later.trim_start();
    }
    done
}

/// The byte after what fits on one line.
fn line_end(text: &str, em: f64) -> usize {
    let fits = head(text, em);
    if fits.len() == text.len() {
        return text.len();
    }
    let first = || text.graphemes(true).next().map_or(text.len(), str::len);
    let at_word = text.get(fits.len()..).is_some_and(|rest| rest.starts_with(char::is_whitespace));
    let word = if at_word { Some(fits.len()) } else { fits.rfind(char::is_whitespace) };
    word.filter(|end| *end > 0).unwrap_or(fits.len().max(first()))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn breaks_between_words_and_says_what_is_left_out() {
        assert_eq!(wrapped("brushed fleece for the skirt", 7.75, 3), ["brushed", "fleece for the", "skirt"]);
        assert_eq!(wrapped("aaaaaaaaaaaaaaaaaaaaa", 6.5, 2), ["aaaaaaaaaa", "aaaaaaaaa…"]);
        assert_eq!(wrapped("", 6.5, 2), Vec::<String>::new());
    }

    #[test]
    fn never_cuts_a_letter_in_two() {
        let family = "👩‍👩‍👧‍👦";
        assert_eq!(shortened(&family.repeat(5), 4.0), format!("{family}{family}…"));
        assert_eq!(wrapped(&family.repeat(2), 0.1, 2), [family, "…"]);
    }
}
