//! The plan sheet of a view, of `tenter fit --sheet` and `tenter report sheet`.

use tenter_core::Unit;

use super::check;
use crate::error::Error;
use crate::finding::plan::ViewPlan;
use crate::json::plan as plan_json;
use crate::text::TextOutput;
use crate::text::plan as plan_text;

/// Prints the plan; the exit code is that of its worst role.
///
/// # Errors
///
/// An output that cannot be written.
pub fn print(plan: &ViewPlan, json: bool, why: bool, unit: Unit, screen: &mut TextOutput<'_>) -> Result<u8, Error> {
    if json {
        writeln!(screen.out, "{}", plan_json::render(plan, unit))?;
    } else {
        write!(screen.out, "{}", plan_text::render(plan, why, unit, screen.width))?;
    }
    Ok(check::exit_code(Some(plan.overall.answer())))
}
