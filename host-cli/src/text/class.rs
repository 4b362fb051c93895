//! Several people's pulls of one cloth, as text.

use crate::finding::axis::{Axis, Spread, count, number, step};
use crate::finding::class::{ClassPulls, Hand};
use crate::text::lines::Lines;
use crate::text::table::{self, Column};
use crate::words::class as words;

/// Columns of the strip in which each person's pulls are drawn.
const STRIP: usize = 32;

/// The people, one a row, and what they say together.
#[must_use]
pub fn render(class: &ClassPulls, columns: usize, unicode: bool) -> String {
    let mut text = Lines::new(columns);
    text.words(&words::lead(class));
    text.blank();
    let axis = axis(class);
    let scale = format!("{} % to {} %", number(axis.low()), number(axis.high()));
    let heads = [("who", Column::Word), ("pulls", Column::Number), ("stretch", Column::Number), (&scale, Column::Word)];
    let hand = |hand: &Hand| {
        let mean = words::mean(hand.mean, hand.half);
        vec![words::called(hand), hand.pulls.len().to_string(), mean, strip(&axis, (hand.mean, hand.half), unicode)]
    };
    let all = vec![
        "all".to_owned(),
        class.hands.iter().map(|hand| hand.pulls.len()).sum::<usize>().to_string(),
        words::mean(class.compared.mean, class.half),
        strip(&axis, (class.compared.mean, class.half), unicode),
    ];
    text.block(&table::render(&heads, class.hands.iter().map(hand).chain([all]), columns));
    text.blank();
    text.words(&words::spread(class));
    text.words(words::TRUST);
    text.finish()
}

/// From a whole step below all to one above.
fn axis(class: &ClassPulls) -> Axis {
    let (low, high) = class.ends();
    let step = step(f64::from(high - low).max(1.0), 6.0);
    let ends = [(f64::from(low) / step).floor(), (f64::from(high) / step).ceil()].map(|at| at * step);
    Axis::new(Spread::Even, ends[0], ends[1], 0.0, count(STRIP) - 1.0)
}

/// What was measured as a point, in a bar as wide as what it is worth.
fn strip(axis: &Axis, (mean, half): (f32, f32), unicode: bool) -> String {
    let (track, bar, point) = if unicode { ('┈', '━', '◆') } else { ('.', '=', 'O') };
    let at = |value: f32| axis.at(value.into()).round();
    let (low, middle, high) = (at(mean - half), at(mean), at(mean + half));
    let glyph = |cell: usize| match count(cell) {
        cell if (cell - middle).abs() < 0.5 => point,
        cell if cell >= low && cell <= high => bar,
        _ => track,
    };
    (0..STRIP).map(glyph).collect()
}
