//! `tenter report sheet`.

use super::super::find;
use super::{ShownRules, write};
use crate::cli::fit::SheetRequest;
use crate::cli::report::SheetArgs;
use crate::deed::plan as deed;
use crate::error::Error;
use crate::finding::fit;
use crate::finding::fit::Stock;
use crate::finding::plan::ViewPlan;
use crate::page::made;
use crate::store::Read;
use crate::text::TextOutput;
use crate::words::done;

/// Writes the plan of a view.
pub fn run(args: &SheetArgs, read: &dyn Read, screen: &mut TextOutput<'_>) -> Result<(), Error> {
    let rules = ShownRules::plain(&args.confidence, &args.units)?;
    let SheetRequest { names, plan: wanted } = args.planned(find::names(read)?);
    let (pattern, view) = find::pattern_and_view(read, &names)?;
    let view = view.as_str();
    let stock = Stock::read(read)?.with_shop_cut(args.shop.shop_cut);
    let roles = find::roles(&pattern, view, &args.role)?;
    let fits = fit::roles(roles, &stock, rules.confidence);
    let plan = deed::plan(&(&wanted).into(), (&pattern, view), &stock, fits, (rules.confidence, rules.unit), read)?;
    page(&plan, rules, (args.plan.why, ""), &args.out.out, read, screen).map(drop)
}

/// Writes a plan as a page, with for whom it is; 0.
pub fn page(
    plan: &ViewPlan,
    rules: ShownRules,
    (why, whose): (bool, &str),
    out: &str,
    read: &dyn Read,
    screen: &mut TextOutput<'_>,
) -> Result<u8, Error> {
    let bytes = made::plan(read, plan, rules, whose, why)?;
    write(out, &bytes, done::PLAN, screen)?;
    Ok(0)
}
