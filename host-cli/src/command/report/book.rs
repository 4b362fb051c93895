//! `tenter report book`.

use super::{ShownRules, today, view, write};
use crate::cli::report::BookArgs;
use crate::command::progress::Progress;
use crate::command::shown::KnownCloth;
use crate::error::Error;
use crate::finding::fit;
use crate::finding::fit::Fitted;
use crate::finding::fit::RoleFit;
use crate::finding::fit::Stock;
use crate::page::book::Book;
use crate::store::Read;
use crate::text::Screen;

/// Writes the book.
pub fn run(args: &BookArgs, read: &dyn Read, screen: &mut Screen<'_>) -> Result<(), Error> {
    let rules = ShownRules::of(&args.confidence, &args.table, &args.units)?;
    let (confidence, unit) = (rules.confidence, rules.unit);
    let chosen = view(read, &args.view)?;
    let stock = Stock::read(read)?;
    let roles = chosen.iter().flat_map(|(pattern, view)| pattern.view(view));
    let roles: Vec<RoleFit<'_>> = fit::roles(roles, &stock, confidence);
    let fitted = chosen.as_ref().map(|(pattern, view)| Fitted {
        pattern,
        view,
        roles: &roles,
        stock: &stock,
        confidence,
        unit,
        here: screen.here,
        all: true,
    });
    let mut book = Book::new(&stock, fitted.as_ref(), confidence, rules.table);
    let mut progress = Progress::of("drawing", u64::try_from(stock.fabrics.len()).ok());
    for fabric in &stock.fabrics {
        let known = KnownCloth::of(read, fabric.clone())?;
        book.add(&known.shown(&stock.pooled, rules, screen.here));
        progress.step();
    }
    drop(progress);
    let cloths = match stock.fabrics.len() {
        1 => "1 cloth".to_owned(),
        many => format!("{many} cloths"),
    };
    write(&args.out.out, &book.page(&today(screen.here)), &format!("{cloths}; open it in a browser"), screen)
}
