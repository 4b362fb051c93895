//! Shapes of JSON that several verbs share: percentages as numbers in percent, lengths in millimetres.

pub mod check;
pub mod class;
pub mod cloth;
pub mod device;
pub mod doubt;
pub mod fit;
pub mod handle;
pub mod hang;
pub mod import;
pub mod make;
pub mod pair;
pub mod pattern;
pub mod people;
pub mod plan;
pub mod pull;
pub mod size;
pub mod sync;
pub mod wash;

use serde::Serialize;
use tenter_core::{Confidence, Decimal, Figure, Length, Part, Settle, Side};

/// A value as JSON text, on one line.
#[must_use]
pub fn line(value: &impl Serialize) -> String {
    // Plain structs of numbers and texts always serialise.
    serde_json::to_string(value).unwrap_or_default()
}

/// A figure with its trust, in percent.
#[derive(Debug, Serialize)]
pub struct FigureJson {
    percent: f64,
    u: f64,
    u_here: f64,
    half_width_here: f64,
    low: f64,
    high: f64,
}

/// A recovery figure, and whether it can be graded.
#[derive(Debug, Serialize)]
pub struct RecoveryJson {
    #[serde(flatten)]
    figure: FigureJson,
    readable: bool,
}

/// One thing that is asked.
#[derive(Debug, Serialize)]
pub struct PartJson {
    ask: &'static str,
    #[serde(skip_serializing_if = "Option::is_none")]
    at_least: Option<f64>,
    #[serde(skip_serializing_if = "Option::is_none")]
    at_most: Option<f64>,
    answer: &'static str,
    chance: Option<f64>,
}

/// What would settle it.
#[derive(Debug, Serialize)]
pub struct SettleJson {
    /// The gauge length to mark, where these marks are too short for the scale.
    #[serde(skip_serializing_if = "Option::is_none")]
    gauge_mm: Option<f64>,
    /// Pulls in all, or of each new day.
    #[serde(skip_serializing_if = "Option::is_none")]
    pulls: Option<u8>,
    /// Looks at the marks, likewise.
    #[serde(skip_serializing_if = "Option::is_none")]
    looks: Option<u8>,
    /// Readings after release, likewise.
    #[serde(skip_serializing_if = "Option::is_none")]
    rests: Option<u8>,
    /// New days; 0 for going on with this test.
    #[serde(skip_serializing_if = "Option::is_none")]
    days: Option<u8>,
    /// Whether to pull with a hung mass or another known force.
    #[serde(skip_serializing_if = "Option::is_none")]
    known_load: Option<bool>,
    /// Make this many pulls, which were planned, first.
    #[serde(skip_serializing_if = "Option::is_none")]
    complete: Option<u8>,
    /// Read growth again so many seconds after release.
    #[serde(skip_serializing_if = "Option::is_none")]
    wait_until_s: Option<u32>,
}

/// A figure.
#[must_use]
pub fn figure(figure: &Figure, confidence: Confidence) -> FigureJson {
    let (low, high) = figure.interval(confidence);
    FigureJson {
        percent: number(figure.ratio.percent(3)),
        u: rounded(figure.u, 3),
        u_here: rounded(figure.here.u, 3),
        half_width_here: rounded(figure.here.half_width(confidence), 2),
        low: rounded(low, 2),
        high: rounded(high, 2),
    }
}

/// Recovery above 100 % is shown where it was read, not where it is only within the uncertainty.
#[must_use]
pub fn recovery(recovery: &Figure, confidence: Confidence, readable: bool) -> RecoveryJson {
    let json = figure(recovery, confidence);
    RecoveryJson { figure: FigureJson { high: json.high.min(json.percent.max(100.0)), ..json }, readable }
}

/// A part of a demand.
#[must_use]
pub fn part(part: &Part) -> PartJson {
    let limit = number(part.limit.ratio().percent(3));
    let on = |side| (part.side == side).then_some(limit);
    PartJson {
        ask: part.ask.word(),
        at_least: on(Side::AtLeast),
        at_most: on(Side::AtMost),
        answer: part.answer.word(),
        chance: part.chance.map(|chance| rounded(chance, 4)),
    }
}

/// What would settle it.
#[must_use]
pub fn settle(settle: &Settle) -> SettleJson {
    let plan = settle.plan.as_ref();
    SettleJson {
        gauge_mm: settle.marks.map(millimetres),
        pulls: plan.map(|plan| plan.pulls),
        looks: plan.map(|plan| plan.looks),
        rests: plan.map(|plan| plan.rests),
        days: plan.map(|plan| plan.days),
        known_load: plan.map(|plan| plan.known_load),
        complete: settle.complete,
        wait_until_s: settle.wait_until,
    }
}

/// Exact: 1/1600 mm is a finite decimal.
#[must_use]
pub fn millimetres(length: Length) -> f64 {
    f64::from(length.steps()) / f64::from(Length::STEPS_PER_MM)
}

/// A number rounded to so many decimals.
#[must_use]
pub fn rounded(value: f32, decimals: u8) -> f64 {
    number(Decimal::round(value, decimals))
}

/// The number whose decimal text is that of `decimal`.
#[must_use]
pub fn number(decimal: Decimal) -> f64 {
    decimal.to_string().parse().unwrap_or_default()
}
