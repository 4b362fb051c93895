//! `tenter report sheet`.

use super::super::{find, sheet};
use super::{ShownRules, today, write};
use crate::cli::fit::Planned;
use crate::cli::report::SheetArgs;
use crate::command::shown::KnownCloth;
use crate::error::Error;
use crate::finding::fit;
use crate::finding::fit::Stock;
use crate::page::sheet as page;
use crate::picture::drawn;
use crate::store::Read;
use crate::text::Screen;

/// Writes the plan of a view.
pub fn run(args: &SheetArgs, read: &dyn Read, screen: &mut Screen<'_>) -> Result<(), Error> {
    let rules = ShownRules::plain(&args.confidence, &args.units)?;
    let Planned { names, plan: wanted } = args.planned();
    let (pattern, view) = find::pattern_and_view(read, &names)?;
    let view = view.as_str();
    let stock = Stock::read(read)?;
    let roles = find::roles(&pattern, view, &args.role)?;
    let fits = fit::roles(roles, &stock, rules.confidence);
    let plan = sheet::plan(&wanted, (&pattern, view), &stock, fits, (rules.confidence, rules.unit), read)?;
    let mut gauges = Vec::new();
    for planned in &plan.roles {
        let Some(taken) = &planned.cloth else {
            gauges.push(String::new());
            continue;
        };
        let known = KnownCloth::of(read, find::live_fabric(read, &taken.cloth.tag.to_string())?)?;
        gauges
            .push(drawn::stretch(&known.shown(stock.pooled, rules, screen.here), Some(&planned.role), false).inline());
    }
    let (made, unit) = (today(screen.here), rules.unit);
    let bytes = page::page(&plan, &gauges, &made, args.plan.why, unit);
    write(&args.out, &bytes, "the plan; open it in a browser", screen)
}
