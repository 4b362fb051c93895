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
        // Joins two words, and is not seen.
        '\u{2060}' => 0.0,
        'i' | 'j' | 'l' | 'I' | '.' | ',' | ':' | ';' | '!' | '\'' | '|' | ' ' | '(' | ')' | '/' => 0.36,
        'm' | 'w' | 'M' | 'W' | '%' | '@' => 0.96,
        'A'..='Z' | '±' | '+' | '=' | '<' | '>' | '#' | '~' | '≈' => 0.82,
        'a'..='z' | '0'..='9' | '-' | '–' => 0.6,
        // Chinese, Japanese and Korean signs are as wide as they are high.
        _ if first.is_alphabetic() && first.width() == Some(2) => 1.05,
        // An emoji of many parts takes the room of its widest part.
        _ if first.width().unwrap_or(1) > 1 || grapheme.width() > 1 => 1.4,
        'ж' | 'м' | 'ф' | 'ш' | 'щ' | 'ы' | 'ю' | 'æ' | 'œ' | 'ω' => 0.96,
        'Ж' | 'М' | 'Ф' | 'Ш' | 'Щ' | 'Ы' | 'Ю' | 'Æ' | 'Œ' => 1.15,
        _ if first.is_uppercase() => 0.86,
        // Latin with its accents, Greek, Cyrillic, Hebrew.
        '\u{c0}'..='\u{5ff}' if first.is_lowercase() || first.is_alphabetic() => 0.68,
        _ => 0.9,
    }
}

/// The text at the largest size at which it takes at most `lines` lines in `room`, from `size` down to `least`; only
/// where it does not fit at the least is anything left out, with an ellipsis. Gives the size and the lines.
#[must_use]
pub fn shrunk(text: &str, room: f64, (size, least): (f64, f64), lines: usize) -> (f64, Vec<String>) {
    let mut size = size;
    while size > least && wrapped(text, room / size, lines.saturating_add(1)).len() > lines {
        size = (size * 0.95).max(least);
    }
    (size, wrapped(text, room / size, lines))
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
    let at_word = text.get(fits.len()..).is_some_and(|rest| rest.starts_with(may_break));
    let word = if at_word { Some(fits.len()) } else { fits.rfind(may_break) };
    word.filter(|end| *end > 0).unwrap_or(fits.len().max(first()))
}

/// A space that keeps a number and its unit together ends no line.
const fn may_break(c: char) -> bool {
    c.is_whitespace() && c != '\u{a0}'
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

    /// Nothing is left out while a smaller size has room for it.
    #[test]
    fn shrinks_before_it_leaves_out() {
        let place = "Schrank im Flur, zweites Fach von oben links";
        let (size, lines) = shrunk(place, 40.0, (3.1, 2.5), 2);
        assert!((2.5..3.1).contains(&size) && lines.concat().ends_with("links"), "{size}: {lines:?}");
        let (size, lines) = shrunk(&place.repeat(3), 40.0, (3.1, 2.5), 2);
        assert!((size - 2.5).abs() < 1e-9 && lines.len() == 2 && lines[1].ends_with('…'), "{size}: {lines:?}");
        assert_eq!(shrunk("rib", 40.0, (3.1, 2.5), 2), (3.1, vec!["rib".to_owned()]));
    }

    /// Letters are as wide as letters are, in any script: no name is cut while half of its line is free.
    #[test]
    fn cyrillic_is_no_wider_than_it_is() {
        let (latin, cyrillic) = (width("Tkan plashchevaya streych"), width("Ткань плащевая стрейч"));
        assert!(cyrillic < latin, "{cyrillic} {latin}");
    }

    #[test]
    fn a_number_stays_with_its_unit() {
        assert_eq!(wrapped("marks 25\u{a0}cm", 5.5, 2), ["marks", "25\u{a0}cm"]);
    }

    #[test]
    fn never_cuts_a_letter_in_two() {
        let family = "👩‍👩‍👧‍👦";
        assert_eq!(shortened(&family.repeat(5), 4.0), format!("{family}{family}…"));
        assert_eq!(wrapped(&family.repeat(2), 0.1, 2), [family, "…"]);
    }
}
