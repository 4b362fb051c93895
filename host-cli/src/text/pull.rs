//! `pull`: what `check` says of the readings, and what became of them.

use crate::finding::pull::Pulled;
use crate::log::Here;
use crate::text::check;
use crate::text::lines::{Lines, style};
use crate::words::answer::Tone;
use crate::words::{check as words, counts, pull};

/// The text.
#[must_use]
pub fn render(pulled: &Pulled, columns: usize, unicode: bool, here: Here) -> String {
    let mut lines = Lines::new(columns);
    check::write(&mut lines, &pulled.checked, unicode);
    lines.row("trust", &words::repeatability(&pulled.repeatability));
    if let Some(together) = &pulled.together {
        let confidence = pulled.checked.input.rules.confidence;
        lines.row("together", &counts::together(together, confidence));
        if let Some(disagreement) = &together.disagrees {
            let tone = style(Tone::Doubtful);
            lines.line(format_args!("{tone}{}{tone:#}", counts::DISAGREE));
            lines.hanging("  ", 2, &counts::disagreement(disagreement, confidence, here));
        }
    }
    lines.row("stored", &pull::stored(pulled, here));
    lines.finish()
}
