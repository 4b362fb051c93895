//! What was typed about a garment.

use jiff::civil::Date;

use super::cloth::{name, short};
use super::{Field, Why, Wrong, when};
use crate::log::{Choices, GarmentChange, Here};

/// What is said about a garment, as typed; none for what is not said.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct TypedGarment {
    /// What it is called.
    pub name: Option<String>,
    /// The number by which it is called.
    pub number: Option<String>,
    /// For whom it is made; an empty text for nobody.
    pub whom: Option<String>,
    /// The class or course in which it is made; an empty text for none.
    pub class: Option<String>,
    /// The day on which it is wanted, or `unknown`.
    pub by: Option<String>,
    /// Anything else.
    pub note: Option<String>,
    /// Cloths for roles: `main=7`.
    pub uses: Vec<String>,
    /// What its plan is made from, beside what was said before.
    pub choices: Choices,
    /// All that its plan is made from, in the place of what was said before.
    pub all_choices: Option<Choices>,
}

/// What is said, without the cloths.
///
/// # Errors
///
/// The first field that cannot be read.
pub fn change(typed: &TypedGarment, here: Here) -> Result<GarmentChange, Wrong> {
    let text = |field, text: &Option<String>| text.as_deref().map(|text| short(field, text)).transpose();
    Ok(GarmentChange {
        number: typed.number.as_deref().map(number).transpose()?,
        name: typed.name.as_deref().map(|text| name(Field::NewName, text)).transpose()?,
        whom: text(Field::Whom, &typed.whom)?,
        class: text(Field::Class, &typed.class)?,
        by: typed.by.as_deref().map(|text| day(text, here)).transpose()?,
        note: text(Field::Note, &typed.note)?,
        ..GarmentChange::default()
    })
}

/// A day, past or to come, or `unknown`.
fn day(text: &str, here: Here) -> Result<Option<Date>, Wrong> {
    match text.trim() {
        text if text.eq_ignore_ascii_case("unknown") => Ok(None),
        text => when::due(Field::By, text, here).map(Some),
    }
}

fn number(text: &str) -> Result<u16, Wrong> {
    let number = text.trim().trim_start_matches('#').parse().ok().filter(|number: &u16| *number > 0);
    number.ok_or_else(|| Wrong::new(Field::Number, text, Why::NotANumber { most: u16::MAX.into() }))
}

/// A role and a cloth, as typed: `main=7`.
///
/// # Errors
///
/// A text without an equals sign, or with nothing on a side of it.
pub fn role_and_cloth(text: &str) -> Result<(&str, &str), Wrong> {
    let parts = text.rsplit_once('=').map(|(role, cloth)| (role.trim(), cloth.trim()));
    let parts = parts.filter(|(role, cloth)| !role.is_empty() && !cloth.is_empty());
    parts.ok_or_else(|| Wrong::new(Field::Use, text, Why::NotAUse))
}
