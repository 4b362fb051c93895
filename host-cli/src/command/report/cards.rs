//! `tenter report cards`.

use super::super::find;
use super::{ShownRules, write};
use crate::cli::report::CardsArgs;
use crate::command::shown::KnownCloth;
use crate::error::Error;
use crate::finding::cloth::Shown;
use crate::finding::drawn::CardFacts;
use crate::finding::fit::Stock;
use crate::page::print;
use crate::picture::Picture;
use crate::picture::drawn;
use crate::store::Read;
use crate::text::Screen;

/// Writes the sheets of cards.
pub fn run(args: &CardsArgs, read: &dyn Read, screen: &mut Screen<'_>) -> Result<(), Error> {
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
        return Err(Error::Usage(
            "you have no cloth at home; begin with tenter cloth add NAME, or pass the tag of one you saw".to_owned(),
        ));
    }
    let count = fabrics.len();
    let mut sheets: Vec<Picture> = Vec::new();
    for four in fabrics.chunks(4) {
        let known: Vec<KnownCloth> =
            four.iter().map(|fabric| KnownCloth::of(read, fabric.clone())).collect::<Result<_, _>>()?;
        let shown: Vec<Shown<'_>> = known.iter().map(|known| known.shown(&stock.pooled, rules, screen.here)).collect();
        let facts: Vec<CardFacts> = shown.iter().map(|shown| CardFacts::of(shown, &stock)).collect();
        sheets.push(drawn::sheet(shown.iter().zip(&facts)));
    }
    let (cards, paper) =
        (if count == 1 { "card" } else { "cards" }, if sheets.len() == 1 { "sheet" } else { "sheets" });
    let said =
        format!("{count} {cards} on {} {paper} of A4; print at 100 % and check the line of 100 mm", sheets.len());
    write(&args.out.out, &print::page("Cards", &sheets), &said, screen)
}
