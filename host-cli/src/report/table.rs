//! A quiet table: a line of heads, columns lined up, no rules; it fits the width it is given.

use comfy_table::presets::NOTHING;
use comfy_table::{CellAlignment, ColumnConstraint, ContentArrangement, Table, Width};

/// How a column behaves.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Column {
    /// A number, set to the right; never wrapped.
    Number,
    /// A short word; never wrapped.
    Word,
    /// A text that is wrapped where the window is narrow.
    Text,
}

/// Lays out rows under heads.
#[must_use]
pub fn render(columns: &[(&str, Column)], rows: impl IntoIterator<Item = Vec<String>>, width: usize) -> String {
    let mut table = Table::new();
    table.load_style(NOTHING);
    table.set_content_arrangement(ContentArrangement::Dynamic);
    table.set_width(u16::try_from(width).unwrap_or(u16::MAX));
    table.set_header(columns.iter().map(|(head, _)| *head).collect::<Vec<_>>());
    table.add_rows(rows.into_iter().map(|row| row.iter().map(|cell| isolated(cell)).collect::<Vec<_>>()));
    let widths = table.column_max_content_widths();
    for (index, (_, kind)) in columns.iter().enumerate() {
        let Some(column) = table.column_mut(index) else { continue };
        column.set_padding((0, 2));
        if *kind == Column::Number {
            column.set_cell_alignment(CellAlignment::Right);
        }
        if *kind != Column::Text {
            let content = widths.get(index).copied().unwrap_or_default();
            column.set_constraint(ColumnConstraint::LowerBoundary(Width::Fixed(content.saturating_add(2))));
        }
    }
    let mut text = table.trim_fmt();
    text.push('\n');
    text
}

/// A text that runs from right to left, kept from turning its neighbours round (Unicode UAX #9, isolates).
#[must_use]
pub fn isolated(text: &str) -> String {
    let turns = |c: char| matches!(c, '\u{590}'..='\u{8ff}' | '\u{fb1d}'..='\u{fdff}' | '\u{fe70}'..='\u{feff}');
    if text.chars().any(turns) { format!("\u{2068}{text}\u{2069}") } else { text.to_owned() }
}
