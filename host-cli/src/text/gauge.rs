//! A stretch gauge in characters: what was measured with its trust, and below it what is asked, to one scale.

use std::fmt::Write as _;

use tenter_core::{Confidence, Figure, Limit, Range};

use crate::finding::axis::{Axis, Spread, count, number, upper_end};

/// What is drawn.
#[derive(Debug, Clone, Copy)]
pub struct GaugeText<'a> {
    /// The stretch that was measured.
    pub stretch: Figure,
    /// What else is drawn near by, to the same scale.
    pub beside: &'a [Figure],
    /// How sure the drawn trust is.
    pub confidence: Confidence,
    /// What is asked; its line is left out where nothing is.
    pub asked: Range,
    /// Columns that both lines may take, the label included.
    pub columns: usize,
    /// Whether more than ASCII can be shown.
    pub unicode: bool,
}

/// Columns of the label, as in the rows around it.
const LABEL: usize = 12;
/// A wider scale would be no better to read.
const WIDEST: usize = 60;

struct Glyphs {
    track: char,
    bar: char,
    ends: [char; 2],
    off: [char; 2],
    point: char,
    asked: char,
}

const UNICODE: Glyphs =
    Glyphs { track: '┈', bar: '━', ends: ['┣', '┫'], off: ['◀', '▶'], point: '◆', asked: '╱' };
const ASCII: Glyphs = Glyphs { track: '.', bar: '=', ends: ['|', '|'], off: ['<', '>'], point: 'O', asked: '/' };

/// Draws the gauge: a line for what was measured, and one for what is asked, each ended by a line break.
#[must_use]
pub fn draw(gauge: &GaugeText<'_>) -> String {
    let seen = f64::from(gauge.stretch.ratio.percent_f32());
    let (low, high) = gauge.stretch.interval(gauge.confidence);
    let (low, high) = (f64::from(low), f64::from(high));
    let limits = [gauge.asked.at_least, gauge.asked.at_most].into_iter().flatten().map(percent);
    let beside = gauge.beside.iter().map(|other| f64::from(other.ratio.percent_f32()));
    let highest = gauge.beside.iter().map(|other| f64::from(other.interval(gauge.confidence).1));
    let end = upper_end(limits.chain(beside).fold(seen, f64::max), highest.fold(high, f64::max));
    let (from, to) = ("0 % ", format!(" {} %", number(end)));
    let around = LABEL.saturating_add(from.len()).saturating_add(to.len()).saturating_add(2);
    let cells = gauge.columns.saturating_sub(around).clamp(8, WIDEST);
    let line = Line { axis: Axis::new(Spread::Even, 0.0, end, 0.0, count(cells) - 1.0), cells };
    let glyphs = if gauge.unicode { &UNICODE } else { &ASCII };

    let ends = [
        if low < 0.0 { glyphs.off[0] } else { glyphs.ends[0] },
        if high > end { glyphs.off[1] } else { glyphs.ends[1] },
    ];
    let measured = line.measured(glyphs, [low, seen, high], ends);
    let mut text = String::new();
    // Writing into a string cannot fail.
    let _ = writeln!(text, "  {:<10}{from}{}{to}", "drawn", String::from_iter(measured));
    if !gauge.asked.is_empty() {
        let (least, most) = (gauge.asked.at_least.map(percent), gauge.asked.at_most.map(percent));
        let ends = [if least.is_some() { '[' } else { glyphs.asked }, if most.is_some() { ']' } else { glyphs.off[1] }];
        let asked = line.filled(' ', least.unwrap_or(0.0), most.unwrap_or(end), glyphs.asked, ends);
        let asked = String::from_iter(asked);
        let _ = writeln!(text, "  {:<10}{:from$}{}", "asked", "", asked.trim_end(), from = from.len());
    }
    text
}

fn percent(limit: Limit) -> f64 {
    limit.ratio().percent_f32().into()
}

/// The scale in characters.
struct Line {
    axis: Axis,
    cells: usize,
}

impl Line {
    /// Whether a cell is the one that a figure falls into.
    fn is_at(&self, cell: usize, value: f64) -> bool {
        (self.axis.at(value) - count(cell)).abs() <= 0.5
    }

    /// A figure with the ends of its trust, which stand beside it where they would fall into its cell.
    fn measured(&self, glyphs: &Glyphs, [low, seen, high]: [f64; 3], ends: [char; 2]) -> Vec<char> {
        let cell = |value: f64| (0..self.cells).find(|cell| self.is_at(*cell, value));
        let point = cell(seen).unwrap_or_default().clamp(1, self.cells.saturating_sub(2));
        let from = cell(low).unwrap_or_default().min(point.saturating_sub(1));
        let to = cell(high).unwrap_or(self.cells).max(point.saturating_add(1));
        let glyph = |cell: usize| match cell {
            _ if cell == point => glyphs.point,
            _ if cell == from => ends[0],
            _ if cell == to => ends[1],
            _ if cell > from && cell < to => glyphs.bar,
            _ => glyphs.track,
        };
        (0..self.cells).map(glyph).collect()
    }

    /// Nothing but `empty`, and from `low` to `high` a bar with its ends.
    fn filled(&self, empty: char, low: f64, high: f64, bar: char, ends: [char; 2]) -> Vec<char> {
        let (from, to) = (self.axis.at(low), self.axis.at(high));
        let inside = |cell: usize| count(cell) >= from && count(cell) <= to;
        let mut line: Vec<char> = (0..self.cells).map(|cell| if inside(cell) { bar } else { empty }).collect();
        self.put(&mut line, low, ends[0]);
        self.put(&mut line, high, ends[1]);
        line
    }

    /// Writes a sign where a figure falls.
    fn put(&self, line: &mut [char], value: f64, sign: char) {
        if let Some((_, place)) = line.iter_mut().enumerate().find(|(cell, _)| self.is_at(*cell, value)) {
            *place = sign;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use tenter_core::{Ratio, Unit};

    fn drawn(percent: i64, u: f32, asked: &str, columns: usize, unicode: bool) -> String {
        let stretch = Figure { u, ..Figure::exact(Ratio::new(percent, 100).unwrap()) };
        let asked = if asked.is_empty() { Range::default() } else { Range::parse(asked, Unit::Mm).unwrap() };
        draw(&GaugeText { stretch, beside: &[], confidence: Confidence::default(), asked, columns, unicode })
    }

    #[test]
    fn at_forty_columns() {
        // 18 cells for 8 %: 5 % and 5.02 % fall into cell 10.6 and 10.7, 6 % into 12.75, 6.98 % into 14.8, from 0 on.
        let want = "  drawn     0 % ...........|=O=|.. 8 %\n  asked                    [/////>\n";
        assert_eq!(drawn(6, 0.5, "5%", 40, false), want);
    }

    #[test]
    fn no_line_is_wider_than_the_terminal() {
        for columns in 40..140 {
            for (percent, u) in [(0, 0.1), (5, 1.0), (6, 300.0), (1000, 20.0), (0, f32::INFINITY), (3, f32::NAN)] {
                for asked in ["", "5%", "..30%", "20%..30%", "1000%"] {
                    for line in drawn(percent, u, asked, columns, true).lines() {
                        assert!(line.chars().count() <= columns, "{line}");
                    }
                }
            }
        }
    }

    /// However fine the trust and narrow the window, both of its ends are drawn.
    #[test]
    fn both_ends_are_always_drawn() {
        for columns in 40..90 {
            for percent in [0, 5, 18, 42, 49, 50] {
                let text = drawn(percent, 0.01, "", columns, false);
                let ends: Vec<&str> = text.matches(['|', '<']).collect();
                assert_eq!((ends.len(), text.matches('O').count()), (2, 1), "{text}");
            }
        }
    }

    #[test]
    fn what_runs_off_the_scale_is_an_arrow() {
        let text = drawn(6, 300.0, "..5%", 60, true);
        assert!(text.contains("% ◀━━") && text.contains("━▶ 15 %"), "{text}");
    }
}
