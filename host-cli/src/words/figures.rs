//! The figures of one test: what each is worth, and how well the cloth comes back.

use tenter_core::forecast::Forecast;
use tenter_core::{Ask, Confidence, Decimal, Figures, Note, Rebound, ReboundGrade, RestFigures};

use crate::words::quantity::number;
use crate::words::terms::duration;

/// How well the cloth comes back, beside the figure that says so: one grade for growth and recovery together.
#[must_use]
pub fn grade(rebound: Option<Rebound>, beside: Ask) -> Option<&'static str> {
    rebound.filter(|rebound| rebound.by == beside).map(|rebound| rebound.grade.word())
}

/// When growth was read, and the grade where growth decides it.
#[must_use]
pub fn growth(rest: &RestFigures, rebound: Option<Rebound>) -> String {
    let after = format!("{} after release", duration(rest.seconds));
    grade(rebound, Ask::Growth).map_or(after.clone(), |grade| format!("{grade}, {after}"))
}

/// The grade where recovery decides it, or that recovery does not tell.
#[must_use]
pub fn recovery_grade(rebound: Option<Rebound>, notes: &[Note]) -> Option<&'static str> {
    let unreadable = notes.contains(&Note::RecoveryNotReadable);
    if unreadable { Some("not readable, judge by growth") } else { grade(rebound, Ask::Recovery) }
}

/// A recovery is a share of the extension.
#[must_use]
pub fn recovery(rebound: Option<Rebound>, notes: &[Note]) -> String {
    let share = "of the extension";
    recovery_grade(rebound, notes).map_or(share.to_owned(), |grade| format!("{share}; {grade}"))
}

/// What the way in which a cloth comes back rules out, and what is left; none where it rules out nothing.
#[must_use]
pub fn ruled_out(figures: &Figures, confidence: Confidence) -> Option<String> {
    let rebound = Rebound::of(figures, confidence)?;
    let why = comes_back(figures, rebound)?;
    match rebound.grade {
        ReboundGrade::Excellent | ReboundGrade::Good => None,
        ReboundGrade::Fair => Some(format!("nothing close: {why}")),
        ReboundGrade::Poor => Some(format!("nothing close: {why}, so it will bag; use it for a toile or a scarf")),
    }
}

/// That a cloth comes back poorly; none where it does not.
#[must_use]
pub fn poorly(figures: &Figures, confidence: Confidence) -> Option<String> {
    let rebound = Rebound::of(figures, confidence).filter(|rebound| rebound.grade == ReboundGrade::Poor)?;
    Some(format!("{}, poor: it will bag", comes_back(figures, rebound)?))
}

/// The figure that decides how well a cloth comes back.
fn comes_back(figures: &Figures, rebound: Rebound) -> Option<String> {
    let rest = figures.rest?;
    Some(match (rebound.by, rest.recovery) {
        (Ask::Recovery, Some(recovery)) => format!("it gives back only {} %", number(recovery.ratio.percent(1))),
        _ => format!("it grows {} %", number(rest.growth.ratio.percent(1))),
    })
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
