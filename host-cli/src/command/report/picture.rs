//! `tenter report picture`.

use tenter_core::Grain;

use super::super::find;
use super::{ShownRules, view, write};
use crate::cli::report::{PictureArgs, PictureKind};
use crate::error::Error;
use crate::finding::drawn::{CardFacts, Course};
use crate::finding::fit;
use crate::finding::fit::RoleFit;
use crate::finding::fit::Stock;
use crate::finding::fit::known::not_pulled;
use crate::finding::shown::KnownCloth;
use crate::input::Misuse;
use crate::log::Here;
use crate::picture::{Picture, drawn};
use crate::store::Read;
use crate::text::TextOutput;

/// Writes one picture.
pub fn run(args: &PictureArgs, read: &dyn Read, screen: &mut TextOutput<'_>) -> Result<(), Error> {
    let rules = ShownRules::of(&args.confidence, &args.table, &args.units)?;
    match args.kind {
        PictureKind::Map if args.fabric.is_some() => return Err(Misuse::TagOfMap.into()),
        PictureKind::Card if args.view.view.is_some() => return Err(Misuse::ViewOfCard.into()),
        PictureKind::Stretch | PictureKind::Card | PictureKind::Map if args.grain.is_some() => {
            return Err(Misuse::GrainOfPicture.into());
        }
        _ => {}
    }
    let stock = Stock::read(read)?;
    let chosen = view(read, &args.view)?;
    let fits = match &chosen {
        Some((pattern, view)) => find::roles(pattern, view, args.role.as_slice())?,
        None => Vec::new(),
    };
    let role = fits.first().map(|role| fit::role(role, &stock, rules.confidence));
    let role = role.as_ref();
    let picture = match &args.fabric {
        Some(tag) => of_fabric(args, (tag, read), role, &stock, rules, screen.here)?,
        None => drawn::map(&stock, role, rules.confidence),
    };
    write(&args.out.out, &picture.file(), "a picture", screen)
}

fn of_fabric(
    args: &PictureArgs,
    (tag, read): (&str, &dyn Read),
    fit: Option<&RoleFit<'_>>,
    stock: &Stock,
    rules: ShownRules,
    here: Here,
) -> Result<Picture, Error> {
    let known = KnownCloth::of(read, find::live_fabric(read, tag)?)?;
    let shown = known.shown(&stock.pooled, rules, here);
    let role = fit.map(|fit| fit.role);
    match args.kind {
        PictureKind::Stretch => Ok(drawn::stretch(&shown, role, true)),
        PictureKind::Growth => {
            let grain = args.grain.unwrap_or(Grain::Crosswise);
            let standing = shown.standing.iter().find(|standing| standing.grain == grain);
            let standing = standing.ok_or_else(|| not_pulled(&known.fabric, grain))?;
            Ok(drawn::growth(&shown, &Course::of(&shown, standing, role)))
        }
        PictureKind::Card => Ok(drawn::card(&shown, &CardFacts::of(&shown, stock))),
        PictureKind::Map => Ok(drawn::map(stock, fit, rules.confidence)),
    }
}
