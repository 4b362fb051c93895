//! `pull`: what `check` says of the readings, and what became of them.

use serde::Serialize;

use crate::json::check as check_json;
use crate::json::check::CheckJson;
use crate::json::rounded;
use crate::log::{Fabric, Hands, StoredTest};
use crate::text::Checked;
use crate::text::check as check_text;
use crate::text::lines::Lines;
use crate::words::bidi::isolated;
use crate::words::quantity;
use crate::words::terms as words;

/// A stored test with its answer.
#[derive(Debug)]
pub struct Pulled<'a> {
    /// The fabric it belongs to.
    pub fabric: &'a Fabric,
    /// The test, as it is in the log.
    pub test: &'a StoredTest,
    /// The answer.
    pub checked: Checked<'a>,
    /// Her hand, this test included.
    pub hands: Hands,
    /// The test before it, and by how many points the stretch differs, where that is more than both are worth.
    pub disagrees: Option<(&'a StoredTest, f32)>,
    /// Whether a test pulled later counts instead.
    pub older: bool,
}

/// The text.
#[must_use]
pub fn text(pulled: &Pulled<'_>, columns: usize, unicode: bool) -> String {
    let Pulled { fabric, test, .. } = pulled;
    let mut lines = Lines::new(columns);
    check_text::write(&mut lines, &pulled.checked, unicode);
    lines.row("trust", &words::trust(fabric.construction, &pulled.hands, &test.said.test));
    if let Some((before, apart)) = pulled.disagrees {
        lines.row("disagrees", &words::disagreement(apart, &before.said));
    }
    let counts = if pulled.older { "; a later test counts" } else { "" };
    let day = quantity::minute(test.said.pulled);
    let name = isolated(&fabric.name);
    lines.row("stored", &format!("{} on {}  {name}, pulled {day}{counts}", test.id.short(), fabric.tag));
    lines.finish()
}

/// The shape of `check`, with the test's identifier and the fabric's tag.
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
pub fn json(pulled: &Pulled<'_>) -> String {
    let json = PulledJson {
        check: check_json::shape(&pulled.checked),
        test: pulled.test.id.to_string(),
        tag: pulled.fabric.tag,
        disagrees_points: pulled.disagrees.map(|(_, points)| rounded(points, 2)),
    };
    // Plain structs of numbers and texts always serialise.
    serde_json::to_string(&json).unwrap_or_default()
}

/// A test in one line: what it measured, and when.
#[must_use]
pub fn line_about(test: &StoredTest) -> String {
    let said = &test.said;
    let stretch = tenter_core::Figures::of(&said.test, tenter_core::Scatter::ASSUMED)
        .map(|figures| quantity::percent(figures.stretch.ratio))
        .unwrap_or_default();
    format!("{}, {} {stretch} of {}", test.id.short(), said.test.grain().word(), quantity::day(said.pulled))
}
