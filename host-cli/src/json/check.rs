//! `check` as one JSON object: percentages as numbers in percent, lengths in millimetres, absent things null.

use serde::Serialize;
use tenter_core::{Note, Rebound, Unit};

use crate::finding::check::Checked;
use crate::json::doubt::{self, DoubtJson};
use crate::json::{FigureJson, PartJson, RecoveryJson, SettleJson, figure, line, millimetres, part, recovery, settle};
use crate::words::terms::garment;

/// The answer to one pull test, in the shape that other verbs build on.
#[derive(Debug, Serialize)]
pub struct CheckJson {
    gauge_mm: f64,
    grain: &'static str,
    pulls: usize,
    stretch: FigureJson,
    growth: Option<FigureJson>,
    recovery: Option<RecoveryJson>,
    rebound: Option<&'static str>,
    class: &'static str,
    answer: Option<&'static str>,
    parts: Vec<PartJson>,
    settle: Option<SettleJson>,
    suits: Vec<SuitJson>,
    doubts: Vec<DoubtJson>,
    bare_unit: Option<&'static str>,
}

#[derive(Debug, Serialize)]
struct SuitJson {
    #[serde(rename = "use")]
    garment: String,
    source: String,
}

/// The JSON text, on one line.
#[must_use]
pub fn render(checked: &Checked) -> String {
    line(&CheckJson::from(checked))
}

impl From<&Checked> for CheckJson {
    fn from(checked: &Checked) -> Self {
        let (input, evaluation) = (&checked.input, &checked.evaluation);
        let confidence = input.rules.confidence;
        let rest = evaluation.figures.rest;
        let readable = !evaluation.notes.contains(&Note::RecoveryNotReadable);
        Self {
            gauge_mm: millimetres(input.test.gauge()),
            grain: input.test.grain().word(),
            pulls: input.test.pulls().len(),
            stretch: figure(&evaluation.figures.stretch, confidence),
            growth: rest.map(|rest| figure(&rest.growth, confidence)),
            recovery: rest.and_then(|rest| rest.recovery).map(|figure| recovery(&figure, confidence, readable)),
            rebound: Rebound::of(&evaluation.figures, confidence).map(|rebound| rebound.grade.word()),
            class: checked.class(),
            answer: evaluation.answer.map(tenter_core::Answer::word),
            parts: evaluation.parts.iter().map(part).collect(),
            settle: evaluation.settle.as_ref().map(settle),
            // The least demanding first, as ever.
            suits: checked
                .suits
                .iter()
                .rev()
                .map(|suit| SuitJson { garment: garment(suit), source: suit.source.to_string() })
                .collect(),
            doubts: doubt::of(&evaluation.doubts, &input.test, input.unit),
            bare_unit: input.bare.map(Unit::symbol),
        }
    }
}
