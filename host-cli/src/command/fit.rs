//! `tenter fit`: which cloths suit which role of a view.

use tenter_core::Answer;

use super::{check, find, sheet};
use crate::cli::fit::{FitArgs, PlanArgs, SheetRequest};
use crate::deed::plan;
use crate::error::Error;
use crate::finding::fit;
use crate::finding::fit::{Fitted, RoleFit, Stock};
use crate::input;
use crate::json::fit as fit_json;
use crate::store::Read;
use crate::text::TextOutput;
use crate::text::fit as report;

/// Runs the verb.
///
/// # Errors
///
/// What was typed wrong, or a log that cannot be read.
pub fn run(args: &FitArgs, read: &dyn Read, screen: &mut TextOutput<'_>) -> Result<u8, Error> {
    let confidence = input::confidence(&args.confidence.confidence)?;
    let SheetRequest { names, plan: wanted } = args.planned(find::names(read)?);
    // Whoever says what goes on the sheet wants the sheet.
    let sheet_wanted = args.sheet || wanted != PlanArgs::default();
    let (pattern, view) = find::pattern_and_view(read, &names)?;
    let view = view.as_str();
    let roles = find::roles(&pattern, view, &args.role)?;
    let stock = Stock::read(read)?.with_shop_cut(args.shop.shop_cut);
    let roles: Vec<RoleFit<'_>> = fit::roles(roles, &stock, confidence);
    let unit = args.show.units.unwrap_or_default();
    if sheet_wanted {
        let plan = plan::plan(&(&wanted).into(), (&pattern, view), &stock, roles, (confidence, unit), read)?;
        return sheet::print(&plan, args.show.json, wanted.why, unit, screen);
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
