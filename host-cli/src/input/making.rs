//! What was typed about marks, seams and stitches.

use tenter_core::making::stitch::Stitch;
use tenter_core::{Ends, Length, Scale, Unit};

use super::{length, unit_of};
use crate::cli::making::StitchArg;
use crate::error::Error;
use crate::log::WashMarks;

/// Marks before and after a wash: `50cm to 48.5cm`.
///
/// # Errors
///
/// A text that is not two lengths.
pub fn marks(flag: &str, text: &str, division: Option<&str>) -> Result<WashMarks, Error> {
    let wrong = || Error::argument(flag, text, "type the marks before and after, such as '50cm to 48.5cm'");
    let (before, after) = text.split_once(" to ").ok_or_else(wrong)?;
    let unit = unit_of(before).or_else(|| unit_of(after)).unwrap_or_default();
    let division = match division {
        Some(text) => length("--division", text, unit)?,
        None if unit == Unit::Inch => Length::from_inch_64ths(4),
        None => Length::from_mm(1),
    };
    let (before, after) = (length(flag, before, unit)?, length(flag, after, unit)?);
    if before <= Length::ZERO || after <= Length::ZERO {
        return Err(wrong());
    }
    let marks = WashMarks { before, after, division };
    scale(&marks)?;
    Ok(marks)
}

/// The scale on which marks were read, at both ends.
///
/// # Errors
///
/// A division that is none.
pub fn scale(marks: &WashMarks) -> Result<Scale, Error> {
    let text = marks.division.show(Unit::Mm).to_string();
    let wrong = || Error::argument("--division", &text, "the scale division must be above zero; type one such as 1mm");
    Scale::new(marks.division, Ends::One).ok_or_else(wrong)
}

/// A stitch.
#[must_use]
pub const fn stitch(arg: StitchArg) -> Stitch {
    match arg {
        StitchArg::Straight => Stitch::Straight,
        StitchArg::NarrowZigzag => Stitch::NarrowZigzag,
        StitchArg::Triple => Stitch::Triple,
        StitchArg::WideZigzag => Stitch::WideZigzag,
        StitchArg::Overlock => Stitch::Overlock,
    }
}
