//! The figures of one test: what each is worth, and how good it is.

use tenter_core::forecast::Forecast;
use tenter_core::{Decimal, Figure, GrowthClass, Note, RecoveryClass, RestFigures};

use crate::words::terms::duration;

/// How good a growth is, and when it was read.
#[must_use]
pub fn growth(rest: &RestFigures) -> String {
    format!("{}, {} after release", GrowthClass::of(rest.growth.ratio).word(), duration(rest.seconds))
}

/// How good a recovery is, where that can be read.
#[must_use]
pub fn recovery_grade(recovery: &Figure, notes: &[Note]) -> &'static str {
    let unreadable = notes.contains(&Note::RecoveryNotReadable);
    if unreadable { "not readable, judge by growth" } else { RecoveryClass::of(recovery.ratio).word() }
}

/// A recovery is a share of the extension.
#[must_use]
pub fn recovery(recovery: &Figure, notes: &[Note]) -> String {
    format!("of the extension; {}", recovery_grade(recovery, notes))
}

/// What is said of a figure, with what these pulls alone are worth where that is another ±.
#[must_use]
pub fn with_here(words: &str, half: Decimal, here: Decimal) -> String {
    if here == half { words.to_owned() } else { format!("{words}; these pulls alone ± {here}") }
}

/// What growth will be after a time, which is called `name`.
#[must_use]
pub fn forecast(forecast: &Forecast, name: &str) -> String {
    let kind = if forecast.rough { "rough forecast" } else { "forecast" };
    format!("{kind} for {name} after release")
}
