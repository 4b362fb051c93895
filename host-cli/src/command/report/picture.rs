//! `tenter report picture`.

use super::super::find;
use super::{Known, Rules, cards, roles, view, write};
use crate::cli::report::{PictureArgs, PictureKind};
use crate::error::Error;
use crate::fit::{RoleFit, Stock};
use crate::input;
use crate::picture::{Picture, card};
use crate::report::{Screen, drawn};
use crate::store::Read;

/// Writes one picture.
pub fn run(args: &PictureArgs, read: &dyn Read, screen: &mut Screen<'_>) -> Result<(), Error> {
    let rules = Rules::of(&args.confidence, &args.table, &args.units)?;
    let stock = Stock::read(read)?;
    let chosen = view(read, &args.view)?;
    let mut fits =
        chosen.as_ref().map(|(pattern, view)| roles(pattern, view, &stock, rules.confidence)).unwrap_or_default();
    if let (Some(text), Some((pattern, view))) = (&args.role, &chosen) {
        let role = find::role(pattern, view, text)?.id;
        fits.retain(|fit| fit.role.id == role);
    }
    let role = fits.first();
    let picture = match &args.fabric {
        Some(tag) => of_fabric(args, (tag, read), role, &stock, rules)?,
        None => drawn::map(&stock, role, rules.confidence),
    };
    write(&args.out, &picture.file(), "a picture", screen)
}

fn of_fabric(
    args: &PictureArgs,
    (tag, read): (&str, &dyn Read),
    role: Option<&RoleFit<'_>>,
    stock: &Stock,
    rules: Rules,
) -> Result<Picture, Error> {
    let known = Known::of(read, find::fabric(read, tag)?)?;
    let shown = known.shown(stock.hands, rules);
    let role = role.map(|fit| fit.role);
    match args.kind {
        PictureKind::Stretch => Ok(drawn::stretch(&shown, role, true)),
        PictureKind::Growth => {
            let grain = input::grain(args.grain);
            let standing = shown.standing.iter().find(|standing| standing.grain() == grain);
            let (tag, grain) = (known.fabric.tag, grain.word());
            let missing = || {
                Error::Usage(format!(
                    "fabric {tag} was not pulled along that grain; pull it first: tenter pull {tag} --grain {grain}"
                ))
            };
            Ok(drawn::growth(&shown, standing.ok_or_else(missing)?, role))
        }
        PictureKind::Card => {
            let words = cards::words(&shown, stock);
            let notes = words.notes();
            Ok(card::draw(&words.card(&shown, &notes)))
        }
        PictureKind::Map => Err(Error::Usage("the map shows all cloths; leave the tag out".to_owned())),
    }
}
