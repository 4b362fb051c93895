//! A stored pull test as one JSON object.

use serde::Serialize;

use crate::finding::pull::Pulled;
use crate::json::check::CheckJson;
use crate::json::{line, rounded};

/// The shape of `check`, with the test's identifier and the cloth's tag.
#[derive(Serialize)]
struct PulledJson {
    #[serde(flatten)]
    check: CheckJson,
    test: String,
    tag: u16,
    disagrees_points: Option<f64>,
}

/// The JSON text, on one line.
#[must_use]
pub fn render(pulled: &Pulled) -> String {
    line(&PulledJson {
        check: CheckJson::from(&pulled.checked),
        test: pulled.test.id.to_string(),
        tag: pulled.fabric.tag,
        disagrees_points: pulled.disagrees.as_ref().map(|disagreement| rounded(disagreement.points, 2)),
    })
}
