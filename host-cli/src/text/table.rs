//! A quiet table: a line of heads, columns lined up, no rules; it fits the width it is given.

use crate::plain::isolated;
use crate::text::lines::{HEADING, Lines, padded, width, wrap};

/// Columns between two columns of the table.
const GAP: usize = 2;
/// What stands in the place of a figure that was not measured.
const NOT_MEASURED: &str = "–";
/// A text column that is narrower than this is no use.
const NARROWEST: usize = 8;

/// How a column behaves.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Column {
    /// A number, set to the right; never wrapped.
    Number,
    /// A figure whose unit stands in the head; a dash where it was not measured.
    Measured(&'static str),
    /// A short word; never wrapped.
    Word,
    /// A text that is wrapped where the window is narrow.
    Text,
}

/// Lays out rows under heads; where the window is too narrow for columns, each row as a paragraph.
#[must_use]
pub fn render(columns: &[(&str, Column)], rows: impl IntoIterator<Item = Vec<String>>, columns_wide: usize) -> String {
    let isolate = |row: Vec<String>| row.iter().map(|cell| isolated(cell)).collect();
    let rows: Vec<Vec<String>> = rows.into_iter().map(isolate).collect();
    let Some(widths) = widths(columns, &rows, columns_wide) else { return paragraphs(columns, &rows, columns_wide) };
    let mut text = Lines::new(columns_wide);
    let heads: Vec<String> = columns.iter().map(|column| column_head(*column)).collect();
    for line in laid_out(columns, &heads, &widths) {
        text.line(format_args!("{HEADING}{line}{HEADING:#}"));
    }
    for row in &rows {
        laid_out(columns, row, &widths).iter().for_each(|line| text.line(format_args!("{line}")));
    }
    text.finish()
}

fn column_head((head, kind): (&str, Column)) -> String {
    if let Column::Measured(unit) = kind { format!("{head}, {unit}") } else { head.to_owned() }
}

/// How wide each column is; none where they do not fit beside each other.
fn widths(columns: &[(&str, Column)], rows: &[Vec<String>], wide: usize) -> Option<Vec<usize>> {
    let longest = |(index, column): (usize, &(&str, Column))| {
        let cells = rows.iter().filter_map(|row| row.get(index)).map(|cell| width(cell));
        cells.fold(width(&column_head(*column)), usize::max)
    };
    let mut widths: Vec<usize> = columns.iter().enumerate().map(longest).collect();
    let room = wide.checked_sub(GAP.saturating_mul(columns.len().saturating_sub(1)))?;
    while widths.iter().sum::<usize>() > room {
        // The widest text gives way.
        let texts = widths.iter_mut().zip(columns).filter(|(_, (_, kind))| *kind == Column::Text);
        let (widest, _) = texts.max_by_key(|(width, _)| **width)?;
        *widest = widest.checked_sub(1).filter(|left| *left >= NARROWEST)?;
    }
    Some(widths)
}

/// A row as lines, texts wrapped within their columns.
fn laid_out(columns: &[(&str, Column)], row: &[String], widths: &[usize]) -> Vec<String> {
    let cells: Vec<Vec<String>> = row.iter().zip(widths).map(|(cell, room)| wrap(cell, *room, *room)).collect();
    let lines = cells.iter().map(Vec::len).max().unwrap_or_default();
    let line = |index: usize| {
        let cell = |((cell, room), (_, kind)): ((&Vec<String>, &usize), &(&str, Column))| {
            let absent = if index == 0 && matches!(kind, Column::Measured(_)) { NOT_MEASURED } else { "" };
            let text = cell.get(index).map_or(absent, String::as_str);
            match kind {
                Column::Number | Column::Measured(_) => {
                    format!("{}{text}", " ".repeat(room.saturating_sub(width(text))))
                }
                Column::Word | Column::Text => padded(text, *room),
            }
        };
        let cells: Vec<String> = cells.iter().zip(widths).zip(columns).map(cell).collect();
        cells.join(&" ".repeat(GAP)).trim_end().to_owned()
    };
    (0..lines).map(line).collect()
}

/// A row as its first cell and, beside it, the others in words; a number says what it is by the head of its column.
fn paragraphs(columns: &[(&str, Column)], rows: &[Vec<String>], wide: usize) -> String {
    let first = |row: &Vec<String>| row.first().cloned().unwrap_or_default();
    let label = rows.iter().map(|row| width(&first(row))).max().unwrap_or_default();
    let mut text = Lines::new(wide);
    for row in rows {
        let cells = columns.iter().zip(row).skip(1).filter(|(_, cell)| !cell.is_empty());
        let cells = cells.map(|((head, kind), cell)| match kind {
            Column::Number => format!("{head} {cell}"),
            Column::Measured(unit) => format!("{head} {cell} {unit}"),
            Column::Word | Column::Text => cell.clone(),
        });
        let spaces = " ".repeat(label.saturating_sub(width(&first(row))));
        let label = match columns.first() {
            Some((_, Column::Number)) => format!("{spaces}{}  ", first(row)),
            _ => format!("{}{spaces}  ", first(row)),
        };
        text.hanging(&label, width(&label), &cells.collect::<Vec<_>>().join(", "));
    }
    text.finish()
}
