//! The plan of a view, as text.

use anstyle::Style;
use tenter_core::Unit;

use crate::finding::plan::Plan;
use crate::text::advice;
use crate::text::lines::Lines;
use crate::words::bidi::isolated;
use crate::words::plan::sections;

/// The text.
#[must_use]
pub fn render(plan: &Plan, why: bool, unit: Unit, columns: usize) -> String {
    let mut text = Lines::new(columns);
    text.words(&format!("{}, view {}: plan", isolated(&plan.pattern), isolated(&plan.view)));
    let bold = Style::new().bold();
    for section in sections(plan, unit) {
        text.blank();
        text.words(&format!("{bold}{}{bold:#}", section.head));
        advice::write(&mut text, &section.lines, why);
    }
    text.finish()
}
