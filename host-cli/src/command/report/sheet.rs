//! `tenter report sheet`.

use super::super::{find, sheet};
use super::{Known, Rules, roles, today, write};
use crate::cli::report::SheetArgs;
use crate::error::Error;
use crate::fit::Stock;
use crate::page::sheet as page;
use crate::report::{Screen, drawn};
use crate::store::Read;

/// Writes the plan of a view.
pub fn run(args: &SheetArgs, read: &dyn Read, screen: &mut Screen<'_>) -> Result<(), Error> {
    let rules = Rules::plain(&args.confidence, &args.units)?;
    let pattern = find::pattern(read, &args.pattern)?;
    let view = find::view_or_only(&pattern, args.view.as_deref())?;
    let stock = Stock::read(read)?;
    let mut fits = roles(&pattern, view, &stock, rules.confidence);
    if !args.role.is_empty() {
        let mut wanted = Vec::new();
        for role in &args.role {
            wanted.push(find::role(&pattern, view, role)?.id);
        }
        fits.retain(|fit| wanted.contains(&fit.role.id));
    }
    let sheet = sheet::plan(&args.plan, (&pattern, view), &stock, fits, (rules.confidence, rules.unit), read)?;
    let mut gauges = Vec::new();
    for chosen in &sheet.chosen {
        let Some(candidate) = &chosen.candidate else {
            gauges.push(String::new());
            continue;
        };
        let known = Known::of(read, candidate.fabric.clone())?;
        gauges.push(drawn::stretch(&known.shown(stock.hands, rules), Some(chosen.role), false).inline());
    }
    let made = today();
    write(&args.out, &page::page(&sheet, &gauges, &made, args.plan.why), "the plan; open it in a browser", screen)
}
