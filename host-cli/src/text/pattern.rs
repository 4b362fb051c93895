//! Patterns as text.

use tenter_core::Unit;

use crate::finding::pattern::{ListedPattern, together};
use crate::log::Pattern;
use crate::plain::isolated;
use crate::text::lines::Lines;
use crate::text::table::{self, Column};
use crate::words::pattern as words;
use crate::words::plan::work::kind as garment_kind;

/// A pattern, or one of its views.
#[must_use]
pub fn pattern(pattern: &Pattern, view: Option<&str>, unit: Unit, columns: usize) -> String {
    let mut text = Lines::new(columns);
    text.heading(&isolated(&pattern.name));
    if !pattern.note.is_empty() {
        text.row("note", &isolated(&pattern.note));
    }
    let views = pattern.views();
    if views.is_empty() {
        text.row("", words::NO_ROLES);
    }
    for known in views.into_iter().filter(|known| view.is_none_or(|view| view == *known)) {
        text.blank();
        let kind = pattern.view(known).find_map(|role| role.kind).map(garment_kind);
        let heading = [words::view(known), kind.unwrap_or_default().to_owned()];
        let heading = heading.into_iter().filter(|part| !part.is_empty()).collect::<Vec<_>>().join(", ");
        if !heading.is_empty() {
            text.heading(&heading);
        }
        for role in pattern.view(known) {
            text.row(&isolated(&role.name), &words::asks(role, unit));
            if !role.note.is_empty() {
                text.row("", &isolated(&role.note));
            }
        }
        for together in together(pattern, known) {
            text.row("in all", &words::together(&together, unit));
        }
    }
    text.finish()
}

/// The patterns, a line each.
#[must_use]
pub fn list(patterns: &[ListedPattern], retired: bool, width: usize) -> String {
    if patterns.is_empty() {
        let mut text = Lines::new(width);
        text.words(if retired { words::NONE_RETIRED } else { words::NONE });
        return text.finish();
    }
    let columns = [("pattern", Column::Text), ("views", Column::Text), ("roles", Column::Text)];
    let rows =
        patterns.iter().map(|pattern| vec![pattern.name.clone(), pattern.views.join(", "), pattern.roles.join(", ")]);
    table::render(&columns, rows, width)
}
