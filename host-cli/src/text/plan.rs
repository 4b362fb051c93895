//! The plan of a view, as text.

use tenter_core::Unit;

use crate::finding::plan::ViewPlan;
use crate::text::lines::{HEADING, Lines, style};
use crate::words::answer::tone;
use crate::words::pattern::titled;
use crate::words::plan::{garment, overall, sections};

/// The text.
#[must_use]
pub fn render(plan: &ViewPlan, why: bool, unit: Unit, columns: usize) -> String {
    let mut text = Lines::new(columns);
    text.words(&format!("{}: plan", titled(&plan.pattern, &plan.view)));
    let (head, means) = overall(plan);
    let style = style(tone(plan.overall.verdict));
    text.words(&format!("{style}{head}{style:#}  {means}"));
    if let Some(garment) = garment(plan) {
        text.words(&format!("{garment}; change it with --with and --without"));
    }
    for section in sections(plan, unit) {
        text.blank();
        let done = if section.done { ", done" } else { "" };
        text.words(&format!("{HEADING}{}{HEADING:#}{done}", section.head));
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
