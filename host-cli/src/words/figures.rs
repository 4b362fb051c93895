//! The figures of one test in rows: stretch, growth and recovery, what each is worth, and how growth goes on.

use tenter_core::forecast::{ForecastError, forecast};
use tenter_core::{Confidence, Decimal, Figure, Figures, GrowthClass, Note, PullTest, RecoveryClass};

use crate::text::lines::Lines;
use crate::text::lines::width;
use crate::words::terms as words;

/// Writes the figures; `class` is the name of the stretch.
pub fn write(text: &mut Lines, figures: &Figures, class: &str, notes: &[Note], confidence: Confidence) {
    let Figures { stretch, rest } = figures;
    figure(text, "stretch", stretch, confidence, class);
    let Some(rest) = rest else { return };
    let after = words::duration(rest.seconds);
    let grade = GrowthClass::of(rest.growth.ratio).word();
    figure(text, "growth", &rest.growth, confidence, &format!("{grade}, {after} after release"));
    if let Some(recovery) = rest.recovery {
        let grade = recovery_grade(&recovery, notes);
        figure(text, "recovery", &recovery, confidence, &format!("of the extension; {grade}"));
    }
}

/// How good a recovery is, where that can be read.
#[must_use]
pub fn recovery_grade(recovery: &Figure, notes: &[Note]) -> &'static str {
    let unreadable = notes.contains(&Note::RecoveryNotReadable);
    if unreadable { "not readable, judge by growth" } else { RecoveryClass::of(recovery.ratio).word() }
}

/// Writes what growth will be so many seconds after release, which is called `name`.
///
/// # Errors
///
/// Why it cannot be foreseen; then nothing is written.
pub fn write_forecast(text: &mut Lines, test: &PullTest, seconds: u32, name: &str) -> Result<(), ForecastError> {
    let to_come = forecast(test, seconds)?;
    let (growth, half) = (Decimal::round(to_come.percent, 1), Decimal::round(to_come.half_width, 1));
    let kind = if to_come.rough { "rough forecast" } else { "forecast" };
    row(text, &format!("  {:<9} {growth:>6} % ± {half:<5}", "growth"), &format!("{kind} for {name} after release"));
    Ok(())
}

fn figure(text: &mut Lines, name: &str, figure: &Figure, confidence: Confidence, words: &str) {
    let half = Decimal::round(figure.half_width(confidence), 1);
    let here = Decimal::round(figure.here.half_width(confidence), 1);
    // The scale alone gives both the same; so does recovery.
    let words = if here == half { words.to_owned() } else { format!("{words}; these pulls alone ± {here}") };
    row(text, &format!("  {name:<9} {:>6} % ± {half:<5}", figure.ratio.percent(1)), &words);
}

/// A figure and its words, below it where they do not fit beside it.
fn row(text: &mut Lines, figure: &str, words: &str) {
    if width(figure).saturating_add(width(words)) < text.columns() {
        text.line(format_args!("{figure} {words}"));
    } else {
        text.line(format_args!("{}", figure.trim_end()));
        text.row("", words);
    }
}
