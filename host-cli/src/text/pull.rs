//! `pull`: what `check` says of the readings, and what became of them.

use crate::finding::pull::Pulled;
use crate::log::Here;
use crate::text::check;
use crate::text::lines::Lines;
use crate::words::{check as words, pull};

/// The text.
#[must_use]
pub fn render(pulled: &Pulled, columns: usize, unicode: bool, here: Here) -> String {
    let mut lines = Lines::new(columns);
    check::write(&mut lines, &pulled.checked, unicode);
    lines.row("trust", &words::repeatability(&pulled.repeatability));
    if let Some(disagreement) = &pulled.disagrees {
        lines.row("disagrees", &words::disagreement(disagreement, here));
    }
    lines.row("stored", &pull::stored(pulled, here));
    lines.finish()
}
