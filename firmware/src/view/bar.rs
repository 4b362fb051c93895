//! Stretch drawn to scale: the figure as a bar, the trust in it as a bracket, the demand as a mark.

use tenter_core::{Confidence, Evaluation, Limit, Part, Side};

use super::pen::Pen;

const LEFT: i32 = 2;
const WIDTH: i32 = 124;

/// Draws the stretch of an evaluation from `y` down, 13 pixels high.
pub fn stretch(pen: &mut Pen<'_>, y: i32, evaluation: &Evaluation, confidence: Confidence) {
    let figure = evaluation.figures.stretch;
    let (low, high) = figure.interval(confidence);
    let seen = figure.ratio.percent_f32();
    let limits = || evaluation.parts.iter().filter(|part| part.ask == tenter_core::Ask::Stretch);
    let farthest = limits().map(|part| percent(part.limit)).fold(high.max(seen), f32::max);
    let scale = Scale { full: nice(farthest * 1.1) };

    pen.outline(LEFT - 1, y + 4, WIDTH + 2, 6);
    pen.fill(LEFT, y + 5, scale.x(seen) - LEFT, 4);
    // The bracket below: from the low end to the high end of the interval.
    let (from, to) = (scale.x(low.max(0.0)), scale.x(high));
    pen.fill(from, y + 12, (to - from).max(1), 1);
    pen.fill(from, y + 10, 1, 3);
    pen.fill(to, y + 10, 1, 3);
    for part in limits() {
        demand(pen, y, scale.x(percent(part.limit)), part);
    }
}

/// A flag above the bar, pointing to the side where the cloth may be.
fn demand(pen: &mut Pen<'_>, y: i32, x: i32, part: &Part) {
    pen.fill(x, y, 1, 5);
    pen.lit = false;
    pen.fill(x, y + 5, 1, 4);
    pen.lit = true;
    let towards = match part.side {
        Side::AtLeast => 1,
        Side::AtMost => -1,
    };
    for row in 0..3 {
        let width = 3 - row;
        let from = if towards > 0 { x + 1 } else { x - width };
        pen.fill(from, y + row, width, 1);
    }
}

struct Scale {
    /// Percent at the right end.
    full: f32,
}

impl Scale {
    #[allow(clippy::cast_possible_truncation, clippy::cast_precision_loss)] // Pixels: clamped to the bar below.
    fn x(&self, percent: f32) -> i32 {
        LEFT + ((percent / self.full * WIDTH as f32) as i32).clamp(0, WIDTH - 1)
    }
}

fn percent(limit: Limit) -> f32 {
    limit.ratio().percent_f32()
}

/// The next larger of 5, 10, 20, 50, 100, 200, 500, 1000 %.
fn nice(percent: f32) -> f32 {
    [5.0, 10.0, 20.0, 50.0, 100.0, 200.0, 500.0].into_iter().find(|full| percent <= *full).unwrap_or(1100.0)
}
