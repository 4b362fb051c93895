//! `pull`: what the cloth is judged as now, what `check` says of the readings, and what became of them.

use crate::finding::pull::{Pulled, Together};
use crate::log::Here;
use crate::text::lines::{Lines, style};
use crate::text::{check, doubt};
use crate::words::answer::{self, Tone};
use crate::words::{check as words, counts, doubt as doubts, pull};

/// The text.
#[must_use]
pub fn render(pulled: &Pulled, columns: usize, unicode: bool, here: Here) -> String {
    let mut lines = Lines::new(columns);
    match &pulled.together {
        None => check::write(&mut lines, &pulled.checked, unicode),
        Some(together) => {
            judged(&mut lines, pulled, together, here);
            check::below(&mut lines, &pulled.checked, unicode);
        }
    }
    lines.row("trust", &words::repeatability(&pulled.repeatability));
    let as_read = doubts::stood_by(&pulled.test.said.as_read);
    if !as_read.is_empty() {
        lines.row("doubt", &as_read);
    }
    lines.row("stored", &pull::stored(pulled, here));
    lines.finish()
}

/// What all tests that count say, and then what this one says by itself.
fn judged(lines: &mut Lines, pulled: &Pulled, together: &Together, here: Here) {
    let (alone, confidence) = (&pulled.checked.evaluation, pulled.checked.input.rules.confidence);
    let decided = together.evaluation.deciding().map(words::part).unwrap_or_default();
    if let Some(disagreement) = &together.disagrees {
        check::headline(lines, style(Tone::Doubtful), counts::DISAGREE, "");
        lines.hanging("  ", 2, &counts::disagreement(disagreement, confidence, here));
    } else if !together.evaluation.doubts.is_empty() {
        doubt::write(lines, &pulled.checked.input, &together.evaluation);
    } else if let Some(answer) = together.answer() {
        check::headline(lines, style(answer::tone(answer)), answer::headline(answer), &decided);
    }
    lines.row("together", &counts::together(together, confidence));
    if let (Some(answer), Some(part)) = (alone.answer, alone.deciding()) {
        lines.row("this test", &pull::alone(answer, part));
    }
    lines.blank();
    if !alone.doubts.is_empty() && together.evaluation.doubts.is_empty() {
        doubt::write(lines, &pulled.checked.input, alone);
    }
}
