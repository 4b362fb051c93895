//! The plan of a view, as text.

use tenter_core::Unit;

use crate::finding::plan::ViewPlan;
use crate::text::lines::{HEADING, Lines};
use crate::words::pattern::titled;
use crate::words::plan::{garment, sections};

/// The text.
#[must_use]
pub fn render(plan: &ViewPlan, why: bool, unit: Unit, columns: usize) -> String {
    let mut text = Lines::new(columns);
    text.words(&format!("{}: plan", titled(&plan.pattern, &plan.view)));
    if let Some(garment) = garment(plan) {
        text.words(&format!("{garment}; change it with --with and --without"));
    }
    for section in sections(plan, unit) {
        text.blank();
        text.words(&format!("{HEADING}{}{HEADING:#}", section.head));
        // Each line begins with its verb, also where the next begins with the same.
        for line in &section.lines {
            text.row(line.about, &line.text);
            if why {
                text.row("", &format!("  why: {} [{}]", line.why, line.source));
            }
        }
    }
    text.finish()
}
