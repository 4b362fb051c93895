//! `tenter report cards`.

use super::super::find;
use super::{ShownRules, write};
use crate::cli::report::CardsArgs;
use crate::error::Error;
use crate::finding::fit::Stock;
use crate::input::Misuse;
use crate::page::made;
use crate::store::Read;
use crate::text::TextOutput;
use crate::words::done;

/// Writes the sheets of cards.
pub fn run(args: &CardsArgs, read: &dyn Read, screen: &mut TextOutput<'_>) -> Result<(), Error> {
    let rules = ShownRules::plain(&args.confidence, &args.units)?;
    let stock = Stock::read(read)?;
    let mut fabrics = Vec::new();
    for text in &args.fabrics {
        fabrics.push(find::live_fabric(read, text)?);
    }
    if fabrics.is_empty() {
        fabrics.extend(stock.fabrics.iter().filter(|fabric| !fabric.is_seen()).cloned());
    }
    if fabrics.is_empty() {
        return Err(Misuse::NoClothAtHome.into());
    }
    let count = fabrics.len();
    let (sheets, page) = made::cards(read, &stock, &fabrics, rules)?;
    let (cards, paper) = (if count == 1 { "card" } else { "cards" }, if sheets == 1 { "sheet" } else { "sheets" });
    let said = done::to_print(&format!("{count} {cards} on {sheets} {paper} of A4"));
    write(&args.out.out, &page, &said, screen)
}
