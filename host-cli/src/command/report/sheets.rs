//! `tenter report sheets`: everything for several garments in one print.

use super::super::find;
use super::{ShownRules, write};
use crate::cli::report::SheetsArgs;
use crate::deed::{make, plan};
use crate::error::Error;
use crate::finding::fit::Stock;
use crate::finding::make::Workroom;
use crate::input::Misuse;
use crate::input::plan::TypedPlan;
use crate::log::Garment;
use crate::page::made;
use crate::store::Read;
use crate::text::TextOutput;
use crate::words::done;
use crate::words::make as words;

/// Writes the plan, the cards and the gauges of each garment, with for whom it is.
pub fn run(args: &SheetsArgs, read: &dyn Read, screen: &mut TextOutput<'_>) -> Result<(), Error> {
    let rules = ShownRules::plain(&args.confidence, &args.units)?;
    let garments: Vec<Garment> = match args.garments.as_slice() {
        [] => read.garments()?.into_iter().filter(|garment| garment.is_open() && garment.pattern.is_some()).collect(),
        named => named.iter().map(|text| make::live(read, text)).collect::<Result<_, _>>()?,
    };
    if garments.is_empty() {
        return Err(Misuse::NothingBeingMade.into());
    }
    let (stock, room) = (Stock::read(read)?, Workroom::read(read, screen.here)?);
    let mut prints = Vec::new();
    for (part, garment) in garments.iter().enumerate() {
        let mut making = room.making(garment);
        if args.without_names {
            making.garment.whom.clear();
        }
        let pattern = make::pattern_of(read, garment)?;
        let view = find::view(&pattern, &garment.view)?;
        let typed = TypedPlan::default();
        let planned = plan::of_garment(read, garment, &typed, (rules.confidence, rules.unit))?;
        let head = words::plan_head(&making);
        prints.push(made::garment(read, &stock, (&planned, (&pattern, view)), rules, (&head, part))?);
    }
    let count = if prints.len() == 1 { "1 garment".to_owned() } else { format!("{} garments", prints.len()) };
    let said = done::sheets(&count);
    write(&args.out.out, &made::garments(&prints), &said, screen)
}
