//! `tenter report sheet`.

use super::super::{find, sheet};
use super::{ShownRules, today, write};
use crate::cli::fit::SheetRequest;
use crate::cli::report::SheetArgs;
use crate::command::shown::KnownCloth;
use crate::error::Error;
use crate::finding::fit;
use crate::finding::fit::Stock;
use crate::finding::plan::ViewPlan;
use crate::log::Photo;
use crate::page::sheet::{self as sheet_page, RolePictures};
use crate::picture::drawn;
use crate::store::Read;
use crate::text::TextOutput;

/// Writes the plan of a view.
pub fn run(args: &SheetArgs, read: &dyn Read, screen: &mut TextOutput<'_>) -> Result<(), Error> {
    let rules = ShownRules::plain(&args.confidence, &args.units)?;
    let SheetRequest { names, plan: wanted } = args.planned();
    let (pattern, view) = find::pattern_and_view(read, &names)?;
    let view = view.as_str();
    let stock = Stock::read(read)?;
    let roles = find::roles(&pattern, view, &args.role)?;
    let fits = fit::roles(roles, &stock, rules.confidence);
    let plan = sheet::plan(
        (&wanted.r#use, &(&wanted.choices).into()),
        (&pattern, view),
        &stock,
        fits,
        (rules.confidence, rules.unit),
        read,
    )?;
    page(&plan, &stock, rules, (args.plan.why, ""), &args.out.out, read, screen).map(drop)
}

/// Writes a plan as a page, with for whom it is; 0.
pub fn page(
    plan: &ViewPlan,
    stock: &Stock,
    rules: ShownRules,
    (why, whose): (bool, &str),
    out: &str,
    read: &dyn Read,
    screen: &mut TextOutput<'_>,
) -> Result<u8, Error> {
    let mut drawn: Vec<RolePictures> = Vec::new();
    for planned in &plan.roles {
        let Some(taken) = &planned.cloth else {
            drawn.push(RolePictures::default());
            continue;
        };
        let known = KnownCloth::of(read, find::live_fabric(read, &taken.cloth.tag.to_string())?)?;
        let shown = known.shown(stock.pooled, rules, screen.here);
        let photo = shown.photos.iter().find_map(|seen| seen.thumbnail.as_ref());
        drawn.push(RolePictures {
            gauge: drawn::stretch(&shown, Some(&planned.role), false).inline(),
            photo: photo.map(Photo::address).unwrap_or_default(),
        });
    }
    let bytes = sheet_page::page(plan, &drawn, (whose, &today(screen.here)), why, rules.unit);
    write(out, &bytes, "the plan; open it in a browser", screen)?;
    Ok(0)
}
