//! Doubts in a terminal: the reason first, then what to do.

use tenter_core::{Answer, Evaluation};

use crate::finding::wash::WashChange;
use crate::input::{CheckInput, Doubted};
use crate::text::lines::{Lines, style};
use crate::words::answer;
use crate::words::doubt as words;

/// A test that was not stored, because it should not be believed.
#[must_use]
pub fn not_stored(doubted: &Doubted, columns: usize) -> String {
    let mut text = Lines::new(columns);
    headline(&mut text, "not stored");
    for (doubt, line) in doubted.doubts.iter().zip(words::doubted(doubted)) {
        text.row("doubt", &line);
        text.row("next", &words::remedy(doubt, doubted.unit));
    }
    text.finish()
}

/// Writes the doubts of an answer in the place of its headline.
pub fn write(text: &mut Lines, input: &CheckInput, evaluation: &Evaluation) {
    headline(text, "too close to call: these readings are doubtful");
    for doubt in &evaluation.doubts {
        text.row("doubt", &words::line(doubt, &input.test, input.unit));
        text.row("next", &words::remedy(doubt, input.unit));
    }
    text.blank();
}

/// Writes that a change in the wash should be read again.
pub fn washed(text: &mut Lines, change: &WashChange) {
    headline(text, "the marks are not stored");
    text.row("doubt", &words::washed(change));
    text.row("next", words::READ_AGAIN);
    text.blank();
}

fn headline(text: &mut Lines, why: &str) {
    let style = style(answer::tone(Answer::Close));
    text.line(format_args!("{style}READ AGAIN{style:#}  {why}"));
    text.blank();
}
