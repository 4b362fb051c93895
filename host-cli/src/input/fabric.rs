//! What was typed about a fabric.

use tenter_core::{Length, Unit};

use super::{length, unit_of};
use crate::cli::cloth::AddArgs;
use crate::cli::cloth::ConstructionArg;
use crate::cli::cloth::EditArgs;
use crate::cli::cloth::FabricFlags;
use crate::cli::cloth::YesNo;
use crate::error::{Error, one_line};
use crate::log::json::Mm;
use crate::log::{Construction, Fabric, FabricChange, Mass, Price, Shop};

/// The longest text kept about a fabric, in characters.
pub const MAX_TEXT: usize = 400;

/// What `cloth add` says; the tag only where one was typed.
///
/// # Errors
///
/// The first flag that cannot be read, with what to type instead; here and below.
pub fn added(args: &AddArgs) -> Result<FabricChange, Error> {
    let flags = &args.flags;
    let mut change = flags_of(flags)?;
    change.name = Some(name("the name", &args.name)?);
    change.tag = args.tag.as_deref().map(tag).transpose()?;
    change.washed = args.washed.then_some(true);
    change.shop = match (&flags.seen, &flags.price) {
        (Some(place), text) => {
            let shop = Shop { place: name("--seen", place)?, price: text.as_deref().map(price).transpose()? };
            Some(Some(shop))
        }
        (None, Some(text)) => return Err(Error::argument("--price", text, "say where too, with --seen SHOP")),
        (None, None) => None,
    };
    Ok(change)
}

/// What `cloth edit` says about `fabric`.
///
/// # Errors
///
/// As above, or where nothing is said.
pub fn edited(args: &EditArgs, fabric: &Fabric) -> Result<FabricChange, Error> {
    let flags = &args.flags;
    let mut change = flags_of(flags)?;
    change.name = args.name.as_deref().map(|text| name("--name", text)).transpose()?;
    change.tag = args.tag.as_deref().map(tag).transpose()?;
    change.washed = args.washed.map(|washed| washed == YesNo::Yes);
    if flags.seen.is_some() || flags.price.is_some() {
        let had = fabric.shop.clone();
        let place = match (&flags.seen, &had) {
            (Some(place), _) => name("--seen", place)?,
            (None, Some(shop)) => shop.place.clone(),
            (None, None) => {
                let text = flags.price.as_deref().unwrap_or_default();
                return Err(Error::argument(
                    "--price",
                    text,
                    "this one lies at home; a price belongs to a shop, say --seen SHOP too",
                ));
            }
        };
        let price = match flags.price.as_deref() {
            Some(text) => Some(price(text)?),
            None => had.and_then(|shop| shop.price),
        };
        change.shop = Some(Some(Shop { place, price }));
    }
    if let Some(text) = &args.bought {
        if !fabric.is_seen() {
            let remedy = "this one lies at home already; for a new count say --length";
            return Err(Error::argument("--bought", text, remedy));
        }
        change.length = Some(Some(Mm(cloth("--bought", text)?)));
        change.shop = Some(None);
    }
    if change == FabricChange::default() {
        return Err(Error::Usage(
            "say what changed, such as --place 'top shelf'; see tenter cloth edit --help".to_owned(),
        ));
    }
    Ok(change)
}

fn flags_of(flags: &FabricFlags) -> Result<FabricChange, Error> {
    let text = |flag, text: &Option<String>| text.as_deref().map(|text| short(flag, text)).transpose();
    Ok(FabricChange {
        fibre: text("--fibre", &flags.fibre)?,
        construction: flags.construction.map(construction),
        width: flags
            .width
            .as_deref()
            .map(|text| known("--width", text, |text| cloth("--width", text).map(Mm)))
            .transpose()?,
        length: flags
            .length
            .as_deref()
            .map(|text| known("--length", text, |text| cloth("--length", text).map(Mm)))
            .transpose()?,
        mass: flags.mass.as_deref().map(|text| known("--mass", text, mass)).transpose()?,
        place: text("--place", &flags.place)?,
        note: text("--note", &flags.note)?,
        ..FabricChange::default()
    })
}

/// A value, or `unknown`.
fn known<T>(flag: &str, text: &str, read: impl FnOnce(&str) -> Result<T, Error>) -> Result<Option<T>, Error> {
    let text = text.trim();
    if text.is_empty() {
        return Err(Error::argument(flag, text, "type a value, or unknown"));
    }
    if text.eq_ignore_ascii_case("unknown") { Ok(None) } else { read(text).map(Some) }
}

/// A length of cloth: at least zero, and with its unit, because a bare 2 could be metres or yards.
///
/// # Errors
///
/// As above.
pub fn cloth(flag: &str, text: &str) -> Result<Length, Error> {
    let unitless = Length::parse(text, Unit::Mm).is_ok() && unit_of(text).is_none();
    if unitless && text.trim() != "0" {
        return Err(Error::argument(
            flag,
            text,
            format!("say the unit too, such as {}cm or {}m", text.trim(), text.trim()),
        ));
    }
    let length = length(flag, text, Unit::Mm)?;
    if length < Length::ZERO {
        return Err(Error::argument(flag, text, "a length cannot be negative; type it without the minus sign"));
    }
    Ok(length)
}

/// A tag number.
///
/// # Errors
///
/// As above.
pub fn tag(text: &str) -> Result<u16, Error> {
    let number = text.trim().trim_start_matches('#').parse().ok().filter(|tag: &u16| *tag > 0);
    number.ok_or_else(|| Error::argument("--tag", text, "type a number from 1 to 65535"))
}

fn mass(text: &str) -> Result<Mass, Error> {
    Mass::parse(text).ok_or_else(|| Error::argument("--mass", text, "type one such as '180 g/m2' or '5.3 oz/yd2'"))
}

fn price(text: &str) -> Result<Price, Error> {
    Price::parse(text).ok_or_else(|| Error::argument("--price", text, "type one such as 12.50/m or '9 EUR/yd'"))
}

/// A construction.
#[must_use]
pub const fn construction(arg: ConstructionArg) -> Construction {
    match arg {
        ConstructionArg::Woven => Construction::Woven,
        ConstructionArg::Knit => Construction::Knit,
        ConstructionArg::Other => Construction::Other,
    }
}

/// A text that must say something.
///
/// # Errors
///
/// As above.
pub fn name(flag: &str, text: &str) -> Result<String, Error> {
    let name = short(flag, text)?;
    if name.is_empty() { Err(Error::argument(flag, text, "type a word or two")) } else { Ok(name) }
}

/// A text of one line.
///
/// # Errors
///
/// As above.
pub fn short(flag: &str, text: &str) -> Result<String, Error> {
    let text = text.trim();
    if text.chars().count() > MAX_TEXT {
        return Err(Error::argument(flag, text, format!("too long; at most {MAX_TEXT} letters fit")));
    }
    if text.chars().any(char::is_control) {
        return Err(Error::Usage(format!("{flag} '{}': type one line of plain text", one_line(text))));
    }
    Ok(text.to_owned())
}
