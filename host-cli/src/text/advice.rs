//! Lines of advice, and the head above them.

use anstyle::Style;
use tenter_core::Answer;

use crate::text::lines::{HEADING, Lines, style as style_of, width};
use crate::words::advice::Spoken;
use crate::words::answer::tone;

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

/// How an answer is shown; plain bold where there is none.
#[must_use]
pub fn style(answer: Option<Answer>) -> Style {
    answer.map_or(HEADING, |answer| style_of(tone(answer)))
}

/// Writes a bold head with words beside it, or below it where they do not fit.
pub fn head(text: &mut Lines, style: Style, head: &str, words: &str) {
    if words.is_empty() {
        text.words(&format!("{style}{head}{style:#}"));
    } else if width(head).saturating_add(2).saturating_add(width(words)) <= text.columns() {
        text.line(format_args!("{style}{head}{style:#}  {words}"));
    } else {
        text.words(&format!("{style}{head}{style:#}"));
        text.hanging("  ", 2, words);
    }
    text.blank();
}
