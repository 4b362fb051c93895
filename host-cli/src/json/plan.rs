//! The plan of a view, as JSON.

use tenter_core::Unit;
use tenter_core::making::garment::Detail;

use crate::finding::plan::ViewPlan;
use crate::words::answer;
use crate::words::plan::{overall, sections};

/// The JSON text, on one line.
#[must_use]
pub fn render(plan: &ViewPlan, unit: Unit) -> String {
    let sections = sections(plan, unit);
    let (head, means) = overall(plan);
    let headline = format!("{head}  {means}");
    let kind = plan.garment.map(|(kind, _)| kind.word());
    let details: Vec<&str> = plan.garment.iter().flat_map(|(_, details)| details.iter()).map(Detail::word).collect();
    serde_json::json!({
        "pattern": plan.pattern,
        "view": plan.view,
        "garment_kind": kind,
        "details": details,
        "answer": answer::word(plan.overall.verdict),
        "headline": headline,
        "sections": sections,
    })
    .to_string()
}
