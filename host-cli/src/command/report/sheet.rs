//! `tenter report sheet`.

use super::super::{find, sheet};
use super::{Rules, today, write};
use crate::cli::report::SheetArgs;
use crate::command::shown::Known;
use crate::error::Error;
use crate::finding::drawn;
use crate::finding::fit;
use crate::finding::fit::Stock;
use crate::page::sheet as page;
use crate::store::Read;
use crate::text::Screen;

/// Writes the plan of a view.
pub fn run(args: &SheetArgs, read: &dyn Read, screen: &mut Screen<'_>) -> Result<(), Error> {
    let rules = Rules::plain(&args.confidence, &args.units)?;
    let pattern = find::pattern(read, &args.pattern)?;
    let view = find::view_or_only(&pattern, args.view.as_deref())?;
    let stock = Stock::read(read)?;
    let roles = find::roles(&pattern, view, &args.role)?;
    let fits = roles.into_iter().map(|role| fit::role(role, &stock, rules.confidence)).collect();
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
    let made = today(screen.here);
    write(&args.out, &page::page(&sheet, &gauges, &made, args.plan.why), "the plan; open it in a browser", screen)
}
