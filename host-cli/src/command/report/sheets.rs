//! `tenter report sheets`: everything for several garments in one print.

use super::{ShownRules, write};
use crate::cli::report::SheetsArgs;
use crate::deed::{Refused, make};
use crate::error::Error;
use crate::finding::make::to_print;
use crate::input::Misuse;
use crate::log::Garment;
use crate::page::made;
use crate::store::Read;
use crate::text::TextOutput;
use crate::words::done;

/// Writes the plan, the cards and the gauges of each garment, with for whom it is.
pub fn run(args: &SheetsArgs, read: &dyn Read, screen: &mut TextOutput<'_>) -> Result<(), Error> {
    let rules = ShownRules::plain(&args.confidence, &args.units)?;
    let garments: Vec<Garment> = match args.garments.as_slice() {
        [] => to_print(read, args.class.as_deref())?,
        named => named.iter().map(|text| make::live(read, text)).collect::<Result<_, Refused>>()?,
    };
    if garments.is_empty() {
        return Err(Misuse::NothingBeingMade { class: args.class.clone() }.into());
    }
    let page = made::garments(read, &garments, rules, !args.without_names)?;
    let count = if garments.len() == 1 { "1 garment".to_owned() } else { format!("{} garments", garments.len()) };
    write(&args.out.out, &page, &done::sheets(&count), screen)
}
