//! A figure drawn to scale: the figure as a bar, the trust in it as a bracket, the demand as a mark.

use tenter_core::{Ask, Confidence, Decimal, Evaluation, Figure, Limit, Part, Side};

use super::pen::{At, Pen};

const LEFT: i32 = 2;
const WIDTH: i32 = 124;

/// Draws a figure from `y` down, 13 pixels high, with what is asked of it; its scale.
pub fn draw(
    pen: &mut Pen<'_>,
    y: i32,
    ask: Ask,
    figure: &Figure,
    evaluation: &Evaluation,
    confidence: Confidence,
) -> BarScale {
    let (low, high) = figure.interval(confidence);
    let seen = figure.ratio.percent_f32();
    let limits = || evaluation.parts.iter().filter(move |part| part.ask == ask);
    let farthest = limits().map(|part| percent(part.limit)).fold(high.max(seen), f32::max);
    let scale = BarScale { full: nice(farthest * 1.1) };

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
    scale
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

/// From percent to pixels.
pub struct BarScale {
    /// Percent at the right end.
    full: f32,
}

impl BarScale {
    /// Puts its digits under the bar: its ends, and each limit that is asked under its flag.
    pub fn label(&self, pen: &mut Pen<'_>, y: i32, ask: Ask, evaluation: &Evaluation) {
        const DIGIT: i32 = 6;
        let full = Decimal::round(self.full, 0);
        let end = 126 - DIGIT * i32::try_from(full.text().len() + 2).unwrap_or(0);
        pen.say("0").put(At::Left, LEFT, y);
        pen.number(full).say("%").put(At::Right, 126, y);
        let mut taken = LEFT + 2 * DIGIT;
        for part in evaluation.parts.iter().filter(|part| part.ask == ask) {
            let tenths = Decimal::round(percent(part.limit), 1);
            let limit = if tenths.scaled() % 10 == 0 { Decimal::new(tenths.scaled() / 10, 0) } else { tenths };
            let width = DIGIT * i32::try_from(limit.text().len()).unwrap_or(0);
            let left = (self.x(percent(part.limit)) - width / 2).max(taken);
            if left + width <= end {
                pen.number(limit).put(At::Left, left, y);
                taken = left + width + DIGIT;
            }
        }
    }

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
