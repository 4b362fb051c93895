//! What was typed about a cloth.

use super::amount::cloth;
use super::synonym::{DRAPE, FINISH, PURPOSE, Words};
use super::{Field, Why, Wrong};
use crate::log::json::Mm;
use crate::log::{Construction, Fabric, FabricChange, MassPerArea, Price, Shop};

/// The longest text kept about a cloth, in characters.
pub const MAX_TEXT: usize = 400;

/// What is said about a cloth, as typed; none for what is not said.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct TypedCloth {
    /// Its name.
    pub name: Option<String>,
    /// The number pinned to it.
    pub tag: Option<String>,
    /// What it is made of.
    pub fibre: Option<String>,
    /// How it is made.
    pub construction: Option<Construction>,
    /// Usable width, or `unknown`.
    pub width: Option<String>,
    /// Length on hand, or `unknown`.
    pub length: Option<String>,
    /// Mass per area, or `unknown`.
    pub mass: Option<String>,
    /// What was done to its surface, or `unknown`.
    pub finish: Option<String>,
    /// How it falls, or `unknown`.
    pub drape: Option<String>,
    /// What it is made for, or `unknown`.
    pub purpose: Option<String>,
    /// Whether all pieces must lie one way up.
    pub one_way: Option<bool>,
    /// Its colour.
    pub colour: Option<String>,
    /// Where it lies.
    pub place: Option<String>,
    /// Anything else.
    pub note: Option<String>,
    /// The shop in which it was seen.
    pub seen: Option<String>,
    /// The price there.
    pub price: Option<String>,
    /// The length of it that was bought; `no` where it was not bought after all.
    pub bought: Option<String>,
    /// Whether it was washed since it came home.
    pub washed: Option<bool>,
}

/// What is said about a cloth that is added; the tag only where one was typed.
///
/// # Errors
///
/// The first field that cannot be read.
pub fn added(typed: &TypedCloth) -> Result<FabricChange, Wrong> {
    let mut change = change_of(typed)?;
    change.name = Some(name(Field::Name, typed.name.as_deref().unwrap_or_default())?);
    change.shop = match (&typed.seen, &typed.price) {
        (Some(place), text) => {
            let shop = Shop { place: name(Field::Seen, place)?, price: text.as_deref().map(price).transpose()? };
            Some(Some(shop))
        }
        (None, Some(text)) => return Err(Wrong::new(Field::Price, text, Why::PriceWithoutShop)),
        (None, None) => None,
    };
    Ok(change)
}

/// What changes about `fabric`; perhaps nothing.
///
/// # Errors
///
/// The first field that cannot be read.
pub fn edited(typed: &TypedCloth, fabric: &Fabric) -> Result<FabricChange, Wrong> {
    let mut change = change_of(typed)?;
    change.name = typed.name.as_deref().map(|text| name(Field::NewName, text)).transpose()?;
    if let Some(text) = typed.seen.as_deref().filter(|text| is_no(text)) {
        return Err(Wrong::new(Field::Seen, text, Why::NotAShop));
    }
    if typed.seen.is_some() || typed.price.is_some() {
        let had = fabric.shop.clone();
        let place = match (&typed.seen, &had) {
            (Some(place), _) => name(Field::Seen, place)?,
            (None, Some(shop)) => shop.place.clone(),
            (None, None) => {
                let text = typed.price.as_deref().unwrap_or_default();
                return Err(Wrong::new(Field::Price, text, Why::PriceAtHome));
            }
        };
        let price = match typed.price.as_deref() {
            Some(text) => Some(price(text)?),
            None => had.and_then(|shop| shop.price),
        };
        change.shop = Some(Some(Shop { place, price }));
    }
    if let Some(text) = &typed.bought {
        if !fabric.is_seen() {
            return Err(Wrong::new(Field::Bought, text, Why::AtHome));
        }
        change.length = Some(Some(Mm(cloth(Field::Bought, text)?)));
        change.shop = Some(None);
    }
    Ok(change)
}

/// Whether a text says no: `no` or `none`.
#[must_use]
pub fn is_no(text: &str) -> bool {
    ["no", "none"].iter().any(|word| text.trim().eq_ignore_ascii_case(word))
}

/// What is read alike when a cloth is added and when it is changed.
fn change_of(typed: &TypedCloth) -> Result<FabricChange, Wrong> {
    let text = |field, text: &Option<String>| text.as_deref().map(|text| short(field, text)).transpose();
    let length = |field, text: &Option<String>| {
        text.as_deref().map(|text| known(field, text, |text| cloth(field, text).map(Mm))).transpose()
    };
    Ok(FabricChange {
        tag: typed.tag.as_deref().map(tag).transpose()?,
        fibre: text(Field::Fibre, &typed.fibre)?,
        construction: typed.construction,
        width: length(Field::Width, &typed.width)?,
        length: length(Field::Length, &typed.length)?,
        mass: typed.mass.as_deref().map(|text| known(Field::Mass, text, mass)).transpose()?,
        finish: one_of(Field::Finish, &typed.finish, &FINISH)?,
        drape: one_of(Field::Drape, &typed.drape, &DRAPE)?,
        purpose: one_of(Field::Purpose, &typed.purpose, &PURPOSE)?,
        one_way: typed.one_way,
        colour: text(Field::Colour, &typed.colour)?,
        place: text(Field::Place, &typed.place)?,
        note: text(Field::Note, &typed.note)?,
        washed: typed.washed,
        ..FabricChange::default()
    })
}

/// One of a few words, or `unknown`.
fn one_of<T: Copy>(field: Field, text: &Option<String>, words: &Words<T>) -> Result<Option<Option<T>>, Wrong> {
    text.as_deref().map(|text| known(field, text, |text| words.read(field, text))).transpose()
}

/// A value, or `unknown`.
fn known<T>(field: Field, text: &str, read: impl FnOnce(&str) -> Result<T, Wrong>) -> Result<Option<T>, Wrong> {
    let text = text.trim();
    if text.is_empty() {
        return Err(Wrong::new(field, text, Why::Blank));
    }
    if text.eq_ignore_ascii_case("unknown") { Ok(None) } else { read(text).map(Some) }
}

/// A tag number.
///
/// # Errors
///
/// A text that is no number from 1 to 65535.
pub fn tag(text: &str) -> Result<u16, Wrong> {
    let number = text.trim().trim_start_matches('#').parse().ok().filter(|tag: &u16| *tag > 0);
    number.ok_or_else(|| Wrong::new(Field::Tag, text, Why::NotANumber { most: u16::MAX.into() }))
}

fn mass(text: &str) -> Result<MassPerArea, Wrong> {
    MassPerArea::parse(text).ok_or_else(|| Wrong::new(Field::Mass, text, Why::NotAMass))
}

fn price(text: &str) -> Result<Price, Wrong> {
    Price::parse(text).ok_or_else(|| Wrong::new(Field::Price, text, Why::NotAPrice))
}

/// A construction, from a front end's own choice of words.
pub fn construction(arg: impl Into<Construction>) -> Construction {
    arg.into()
}

/// A text that must say something.
///
/// # Errors
///
/// An empty text, or one that [`short`] refuses.
pub fn name(field: Field, text: &str) -> Result<String, Wrong> {
    let name = short(field, text)?;
    if name.is_empty() { Err(Wrong::new(field, text, Why::NoWords)) } else { Ok(name) }
}

/// A text of one line.
///
/// # Errors
///
/// A text that is too long, or holds characters that cannot be printed.
pub fn short(field: Field, text: &str) -> Result<String, Wrong> {
    let text = text.trim();
    if text.chars().count() > MAX_TEXT {
        return Err(Wrong::new(field, text, Why::TooLong { most: MAX_TEXT }));
    }
    if text.chars().any(char::is_control) {
        return Err(Wrong::new(field, text, Why::NotPlain));
    }
    Ok(text.to_owned())
}
