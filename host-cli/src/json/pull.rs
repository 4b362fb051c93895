//! A stored pull test as one JSON object.

use serde::Serialize;

use crate::finding::pull::Pulled;
use crate::json::check::CheckJson;
use crate::json::{FigureJson, PartJson, figure, line, part};
use crate::log::Tag;

/// The shape of `check`, with the test's identifier and the cloth's tag.
#[derive(Serialize)]
struct PulledJson {
    #[serde(flatten)]
    check: CheckJson,
    test: String,
    #[serde(flatten)]
    tag: Tag,
    /// Who pulled it, where that is known.
    by: Option<String>,
    together: Option<TogetherJson>,
}

/// All tests of the grain, judged together.
#[derive(Serialize)]
struct TogetherJson {
    tests: usize,
    stretch: FigureJson,
    left_out: bool,
    /// The test that the others contradict.
    disagrees: Option<String>,
    /// What the cloth is judged as now; never plain where tests disagree.
    answer: Option<&'static str>,
    parts: Vec<PartJson>,
}

/// The JSON text, on one line.
#[must_use]
pub fn render(pulled: &Pulled) -> String {
    line(&PulledJson {
        check: CheckJson::from(&pulled.checked),
        test: pulled.test.id.to_string(),
        tag: pulled.fabric.tag,
        by: pulled.by.clone(),
        together: pulled.together.as_ref().map(|together| TogetherJson {
            tests: together.tests,
            stretch: figure(together.stretch(), pulled.checked.input.rules.confidence),
            left_out: together.left_out,
            disagrees: together.disagrees.as_ref().map(|disagreement| disagreement.apart.id.to_string()),
            answer: together.answer().map(tenter_core::Answer::word),
            parts: together.evaluation.parts.iter().map(part).collect(),
        }),
    })
}
