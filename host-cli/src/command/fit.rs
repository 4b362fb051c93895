//! `tenter fit`: which cloths suit which role of a view.

use tenter_core::Answer;

use super::{check, find, sheet};
use crate::cli::fit::{FitArgs, PlanArgs};
use crate::error::Error;
use crate::finding::fit;
use crate::finding::fit::{Fitted, RoleFit, Stock};
use crate::input;
use crate::json::fit as fit_json;
use crate::store::Read;
use crate::text::Screen;
use crate::text::fit as report;

/// Runs the verb.
///
/// # Errors
///
/// What was typed wrong, or a log that cannot be read.
pub fn run(args: &FitArgs, read: &dyn Read, screen: &mut Screen<'_>) -> Result<u8, Error> {
    let confidence = input::confidence(&args.confidence.confidence)?;
    if !args.sheet && args.plan != PlanArgs::default() {
        return Err(Error::Usage(
            "seams, zips, elastic, cautions and --why belong to the plan; add --sheet".to_owned(),
        ));
    }
    let pattern = find::pattern(read, &args.pattern)?;
    let view = find::view_or_only(&pattern, args.view.as_deref())?;
    let roles = find::roles(&pattern, view, &args.role)?;
    let stock = Stock::read(read)?;
    let roles: Vec<RoleFit<'_>> = fit::roles(roles, &stock, confidence);
    let unit = args.show.units.unwrap_or_default();
    if args.sheet {
        let plan = sheet::plan(&args.plan, (&pattern, view), &stock, roles, (confidence, unit), read)?;
        return sheet::print(&plan, args.show.json, args.plan.why, unit, screen);
    }
    let fitted = Fitted {
        pattern: &pattern,
        view,
        roles: &roles,
        stock: &stock,
        confidence,
        unit,
        here: screen.here,
        all: args.all,
    };
    if args.show.json {
        writeln!(screen.out, "{}", fit_json::render(&fitted))?;
    } else {
        write!(screen.out, "{}", report::render(&fitted, screen.width))?;
    }
    // The worst role decides: a garment wants all of them.
    Ok(check::exit_code(roles.iter().map(RoleFit::outcome).reduce(Answer::worse)))
}
