//! The plan of a view, as JSON.

use tenter_core::Unit;

use crate::finding::plan::ViewPlan;
use crate::words::plan::sections;

/// The JSON text, on one line.
#[must_use]
pub fn render(plan: &ViewPlan, unit: Unit) -> String {
    let sections = sections(plan, unit);
    serde_json::json!({ "pattern": plan.pattern, "view": plan.view, "sections": sections }).to_string()
}
