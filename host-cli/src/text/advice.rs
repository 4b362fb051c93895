//! Lines of advice, and the head above them.

use anstyle::{AnsiColor, Style};
use tenter_core::Answer;

use crate::text::lines::{Lines, width};
use crate::words::advice::Spoken;
use crate::words::answer::{Tone, tone};

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
    let colour = match answer.map(tone) {
        None | Some(Tone::Quiet) => return Style::new().bold(),
        Some(Tone::Good) => AnsiColor::Green,
        Some(Tone::Bad) => AnsiColor::Red,
        Some(Tone::Doubtful) => AnsiColor::Yellow,
    };
    colour.on_default().bold()
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
