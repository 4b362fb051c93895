//! What was typed about marks, seams and stitches.

use tenter_core::making::washing;
use tenter_core::{Ends, Grain, Length, Scale, Unit};

use super::amount::before_after;
use super::synonym::GRAIN;
use super::{Field, Why, Wrong, length, unit_of};
use crate::log::WashMarks;

/// The grain of each side of a seam: `lengthwise` for both, `crosswise/lengthwise` for one and the other.
///
/// # Errors
///
/// A text that is no grain, with the words to choose from.
pub fn grains(text: &str) -> Result<[Grain; 2], Wrong> {
    let grain = |text| GRAIN.read(Field::Grain, text);
    Ok(match text.split_once('/') {
        Some((first, second)) => [grain(first)?, grain(second)?],
        None => [grain(text)?; 2],
    })
}

/// Marks before and after a wash: `50cm to 48.5cm`, or `50 to 48.5` in the unit of bare numbers.
///
/// # Errors
///
/// A text that is not two lengths.
pub fn marks(field: Field, text: &str, division: Option<&str>, bare: Unit) -> Result<WashMarks, Wrong> {
    let wrong = || Wrong::new(field, text, Why::NotMarks);
    let (before, after) = before_after(text).ok_or_else(wrong)?;
    let unit = unit_of(before).or_else(|| unit_of(after)).unwrap_or(bare);
    let division = match division {
        Some(text) => length(Field::Division, text, unit)?,
        None if unit == Unit::Inch => Length::from_inch_64ths(4),
        None => Length::from_mm(1),
    };
    let (before, after) = (length(field, before, unit)?, length(field, after, unit)?);
    if before <= Length::ZERO || after <= Length::ZERO {
        return Err(wrong());
    }
    let marks = WashMarks { before, after, division };
    if washing::change(before, after, scale(&marks)?).is_err() {
        return Err(Wrong::new(field, text, Why::Washed { likely: washing::likely_after(before, after), unit }));
    }
    Ok(marks)
}

/// The scale on which marks were read, at both ends.
///
/// # Errors
///
/// A division that is none.
pub fn scale(marks: &WashMarks) -> Result<Scale, Wrong> {
    let wrong = || Wrong::new(Field::Division, &marks.division.show(Unit::Mm).to_string(), Why::NoDivision);
    Scale::new(marks.division, Ends::One).ok_or_else(wrong)
}
