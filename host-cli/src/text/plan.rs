//! The plan of a view, as text.

use tenter_core::Unit;

use crate::finding::plan::ViewPlan;
use crate::text::advice;
use crate::text::lines::{HEADING, Lines};
use crate::words::pattern::titled;
use crate::words::plan::sections;

/// The text.
#[must_use]
pub fn render(plan: &ViewPlan, why: bool, unit: Unit, columns: usize) -> String {
    let mut text = Lines::new(columns);
    text.words(&format!("{}: plan", titled(&plan.pattern, &plan.view)));
    for section in sections(plan, unit) {
        text.blank();
        text.words(&format!("{HEADING}{}{HEADING:#}", section.head));
        advice::write(&mut text, &section.lines, why);
    }
    text.finish()
}
