//! `tenter report cards`.

use super::super::find;
use super::{Rules, write};
use crate::cli::report::CardsArgs;
use crate::command::shown::Known;
use crate::error::Error;
use crate::finding::cloth::Shown;
use crate::finding::drawn::CardWords;
use crate::finding::fit::Stock;
use crate::finding::fit::known;
use crate::page::print;
use crate::picture::Picture;
use crate::picture::card;
use crate::store::Read;
use crate::text::Screen;
use crate::text::handle::Handled;
use crate::text::handle::spoken;

/// Writes the sheets of cards.
pub fn run(args: &CardsArgs, read: &dyn Read, screen: &mut Screen<'_>) -> Result<(), Error> {
    let rules = Rules::plain(&args.confidence, &args.units)?;
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
            "no fabric lies at home; begin with tenter cloth add NAME, or say its tag".to_owned(),
        ));
    }
    let count = fabrics.len();
    let mut sheets: Vec<Picture> = Vec::new();
    for four in fabrics.chunks(4) {
        let known: Vec<Known> = four.iter().map(|fabric| Known::of(read, fabric.clone())).collect::<Result<_, _>>()?;
        let shown: Vec<Shown<'_>> = known.iter().map(|known| known.shown(stock.hands, rules)).collect();
        let words: Vec<CardWords> = shown.iter().map(|shown| words(shown, &stock)).collect();
        let notes: Vec<Vec<&str>> = words.iter().map(CardWords::notes).collect();
        let cards = shown.iter().zip(&words).zip(&notes).map(|((shown, words), notes)| words.card(shown, notes));
        sheets.extend(card::sheets(&cards.collect::<Vec<_>>()));
    }
    let (cards, paper) =
        (if count == 1 { "card" } else { "cards" }, if sheets.len() == 1 { "sheet" } else { "sheets" });
    let said =
        format!("{count} {cards} on {} {paper} of A4; print at 100 % and check the line of 100 mm", sheets.len());
    write(&args.out, &print::page("Cards", &sheets), &said, screen)
}

/// What stands on a card.
pub fn words(shown: &Shown<'_>, stock: &Stock) -> CardWords {
    let cloth = known::cloth(shown.fabric, stock);
    let measured = !shown.standing.is_empty();
    let handled = Handled { cloth, wants: None, layers: Vec::new(), confidence: shown.confidence };
    let mut lines = if measured { spoken(&handled) } else { Vec::new() };
    lines.retain(|line| matches!(line.about, "needle" | "stitch"));
    lines.dedup_by_key(|line| line.about);
    CardWords::of(shown, &lines)
}
