//! `check` as one JSON object: percentages as numbers in percent, lengths in millimetres, absent things null.

use serde::Serialize;
use tenter_core::{Confidence, Decimal, Figure, Length, Note, Part, Settle, Side};

use super::{Checked, words};

#[derive(Serialize)]
struct CheckJson {
    gauge_mm: f64,
    grain: &'static str,
    pulls: usize,
    stretch: FigureJson,
    growth: Option<FigureJson>,
    recovery: Option<RecoveryJson>,
    class: &'static str,
    answer: Option<&'static str>,
    parts: Vec<PartJson>,
    settle: Option<SettleJson>,
    suits: Vec<SuitJson>,
}

#[derive(Serialize)]
struct FigureJson {
    percent: f64,
    u: f64,
    low: f64,
    high: f64,
}

#[derive(Serialize)]
struct RecoveryJson {
    #[serde(flatten)]
    figure: FigureJson,
    readable: bool,
}

#[derive(Serialize)]
struct PartJson {
    ask: &'static str,
    #[serde(skip_serializing_if = "Option::is_none")]
    at_least: Option<f64>,
    #[serde(skip_serializing_if = "Option::is_none")]
    at_most: Option<f64>,
    answer: &'static str,
    chance: Option<f64>,
}

#[derive(Serialize)]
struct SettleJson {
    gauge_mm: f64,
    pulls: u8,
}

#[derive(Serialize)]
struct SuitJson {
    #[serde(rename = "use")]
    garment: String,
    source: &'static str,
}

/// The JSON text, on one line.
#[must_use]
pub fn render(checked: &Checked<'_>) -> String {
    let (input, evaluation) = (checked.input, checked.evaluation);
    let confidence = input.rules.confidence;
    let rest = evaluation.figures.rest;
    let readable = !evaluation.notes.contains(&Note::RecoveryNotReadable);
    let recovery = rest.and_then(|rest| rest.recovery);
    let json = CheckJson {
        gauge_mm: millimetres(input.test.gauge()),
        grain: input.test.grain().word(),
        pulls: input.test.pulls().len(),
        stretch: figure(&evaluation.figures.stretch, confidence),
        growth: rest.map(|rest| figure(&rest.growth, confidence)),
        recovery: recovery.map(|recovery| RecoveryJson { figure: capped(&recovery, confidence), readable }),
        class: input.table.class(evaluation.figures.stretch.ratio).name,
        answer: evaluation.answer.map(tenter_core::Answer::word),
        parts: evaluation.parts.iter().map(part).collect(),
        settle: evaluation.settle.as_ref().map(settle),
        suits: checked
            .suits
            .iter()
            .map(|suit| SuitJson { garment: words::garment(suit), source: suit.source })
            .collect(),
    };
    // Plain structs of numbers and texts always serialise.
    serde_json::to_string(&json).unwrap_or_default()
}

fn figure(figure: &Figure, confidence: Confidence) -> FigureJson {
    let (low, high) = figure.interval(confidence);
    FigureJson {
        percent: number(figure.ratio.percent(3)),
        u: rounded(figure.u, 3),
        low: rounded(low, 2),
        high: rounded(high, 2),
    }
}

/// Recovery above 100 % is shown where it was read, not where it is only within the uncertainty.
fn capped(recovery: &Figure, confidence: Confidence) -> FigureJson {
    let json = figure(recovery, confidence);
    FigureJson { high: json.high.min(json.percent.max(100.0)), ..json }
}

fn part(part: &Part) -> PartJson {
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

fn settle(settle: &Settle) -> SettleJson {
    SettleJson { gauge_mm: millimetres(settle.plan.gauge), pulls: settle.plan.pulls }
}

/// Exact: 1/1600 mm is a finite decimal.
fn millimetres(length: Length) -> f64 {
    f64::from(length.steps()) / 1600.0
}

fn rounded(value: f32, decimals: u8) -> f64 {
    number(Decimal::round(value, decimals))
}

/// The number whose decimal text is that of `decimal`.
fn number(decimal: Decimal) -> f64 {
    decimal.to_string().parse().unwrap_or_default()
}
