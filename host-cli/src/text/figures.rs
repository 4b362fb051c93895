//! The figures of one test in rows: stretch, growth and recovery, what each is worth, and how growth goes on.

use tenter_core::forecast::Forecast;
use tenter_core::{Confidence, Decimal, Figure, Figures, Note, Rebound};

use crate::text::lines::Lines;
use crate::text::lines::width;
use crate::words::figures as words;
use crate::words::quantity::number;

/// Writes the figures; `class` is the name of the stretch.
pub fn write(text: &mut Lines, figures: &Figures, class: &str, notes: &[Note], confidence: Confidence) {
    figure(text, "stretch", &figures.stretch, confidence, class);
    let Some(rest) = figures.rest else { return };
    let rebound = Rebound::of(figures, confidence);
    figure(text, "growth", &rest.growth, confidence, &words::growth(&rest, rebound));
    if let Some(recovery) = rest.recovery {
        figure(text, "recovery", &recovery, confidence, &words::recovery(rebound, notes));
    }
}

/// Writes what growth will be after a time, which is called `name`.
pub fn write_forecast(text: &mut Lines, forecast: &Forecast, name: &str) {
    let (growth, half) = (Decimal::round(forecast.percent, 1), Decimal::round(forecast.half_width, 1));
    row(text, "growth", growth, half, &words::forecast(forecast, name));
}

fn figure(text: &mut Lines, name: &str, figure: &Figure, confidence: Confidence, words: &str) {
    let half = Decimal::round(figure.half_width(confidence), 1);
    let here = Decimal::round(figure.here.half_width(confidence), 1);
    row(text, name, figure.ratio.percent(1), half, &words::with_here(words, half, here));
}

/// A figure and its words, below it where they do not fit beside it.
fn row(text: &mut Lines, name: &str, figure: Decimal, half: Decimal, words: &str) {
    let figure = format!("  {name:<9} {:>6} % ± {:<5}", number(figure), number(half));
    if width(&figure).saturating_add(width(words)) < text.columns() {
        text.line(format_args!("{figure} {words}"));
    } else {
        text.line(format_args!("{}", figure.trim_end()));
        text.row("", words);
    }
}
