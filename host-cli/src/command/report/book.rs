//! `tenter report book`.

use super::{ShownRules, view, write};
use crate::cli::report::BookArgs;
use crate::command::progress::Progress;
use crate::error::Error;
use crate::finding::fit::Stock;
use crate::page::made;
use crate::store::Read;
use crate::text::TextOutput;
use crate::words::done;

/// Writes the book.
pub fn run(args: &BookArgs, read: &dyn Read, screen: &mut TextOutput<'_>) -> Result<(), Error> {
    let rules = ShownRules::of(&args.confidence, &args.table, &args.units)?;
    let chosen = view(read, &args.view)?;
    let stock = Stock::read(read)?;
    let view = chosen.as_ref().map(|(pattern, view)| (pattern, view.as_str()));
    let mut progress = Progress::of("drawing", u64::try_from(stock.fabrics.len()).ok());
    let page = made::book(read, &stock, view, rules, &mut || progress.step())?;
    drop(progress);
    let cloths = match stock.fabrics.len() {
        1 => "1 cloth".to_owned(),
        many => format!("{many} cloths"),
    };
    write(&args.out.out, &page, &done::book(&cloths), screen)
}
