//! A quiet table: a line of heads, columns lined up, no rules; it fits the width it is given.

use comfy_table::presets::NOTHING;
use comfy_table::{CellAlignment, ColumnConstraint, ContentArrangement, Table, Width};
use unicode_width::{UnicodeWidthChar as _, UnicodeWidthStr as _};

use crate::text::lines::Lines;
use crate::words::bidi::isolated;
use crate::words::bidi::plain;

/// Columns between two columns of the table.
const GAP: usize = 2;
/// A text column that is narrower than this is no use.
const NARROWEST: usize = 8;

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

/// Lays out rows under heads; where the window is too narrow for columns, each row as a paragraph.
#[must_use]
pub fn render(columns: &[(&str, Column)], rows: impl IntoIterator<Item = Vec<String>>, width: usize) -> String {
    let rows: Vec<Vec<String>> = rows.into_iter().collect();
    let mut table = Table::new();
    table.load_style(NOTHING);
    table.set_content_arrangement(ContentArrangement::Dynamic);
    table.set_width(u16::try_from(width).unwrap_or(u16::MAX));
    table.set_header(columns.iter().map(|(head, _)| *head).collect::<Vec<_>>());
    table.add_rows(rows.iter().map(|row| row.iter().map(|cell| plain(cell)).collect::<Vec<_>>()));
    let widths = table.column_max_content_widths();
    let mut least: usize = 0;
    for (index, (_, kind)) in columns.iter().enumerate() {
        let Some(column) = table.column_mut(index) else { continue };
        column.set_padding((0, 2));
        if *kind == Column::Number {
            column.set_cell_alignment(CellAlignment::Right);
        }
        let content = usize::from(widths.get(index).copied().unwrap_or_default());
        if *kind == Column::Text {
            least = least.saturating_add(content.min(NARROWEST)).saturating_add(GAP);
            continue;
        }
        least = least.saturating_add(content).saturating_add(GAP);
        let content = u16::try_from(content.saturating_add(GAP)).unwrap_or(u16::MAX);
        column.set_constraint(ColumnConstraint::LowerBoundary(Width::Fixed(content)));
    }
    if least > width {
        return paragraphs(columns, &rows, width);
    }
    table.trim_fmt().lines().map(|line| format!("{}\n", in_place(line))).collect()
}

/// A row as its first cell and, beside it, the others in words; a number says what it is by the head of its column.
fn paragraphs(columns: &[(&str, Column)], rows: &[Vec<String>], width: usize) -> String {
    let first = |row: &Vec<String>| row.first().cloned().unwrap_or_default();
    let label = rows.iter().map(|row| crate::text::lines::width(&first(row))).max().unwrap_or_default();
    let mut text = Lines::new(width);
    for row in rows {
        let cells = columns.iter().zip(row).skip(1).filter(|(_, cell)| !cell.is_empty());
        let cells = cells.map(|((head, kind), cell)| match kind {
            Column::Number => format!("{head} {cell}"),
            Column::Word | Column::Text => isolated(cell),
        });
        let label = match columns.first() {
            Some((_, Column::Number)) => format!("{:>label$}  ", first(row)),
            _ => format!("{:<label$}  ", first(row)),
        };
        text.hanging(&label, label.len(), &cells.collect::<Vec<_>>().join(", "));
    }
    text.finish()
}

/// A line of the table in which no cell that runs from right to left turns its neighbours round or moves them.
fn in_place(line: &str) -> String {
    let (mut text, mut rest, mut owed) = (String::new(), line, 0);
    while !rest.is_empty() {
        let cells = rest.trim_start();
        let gap = rest.len().saturating_sub(cells.len());
        text.extend(core::iter::repeat_n(' ', gap.saturating_sub(owed).max(gap.min(1))));
        let (cell, later) = cells.split_at_checked(cells.find("  ").unwrap_or(cells.len())).unwrap_or((cells, ""));
        let isolated = isolated(cell);
        // Lam and alef count as one where the table is laid out, and take two columns in a terminal.
        let letters = cell.chars().filter_map(|c| c.width()).sum::<usize>();
        owed = if isolated == cell { 0 } else { letters.saturating_sub(cell.width()) };
        text.push_str(&isolated);
        rest = later;
    }
    text
}
