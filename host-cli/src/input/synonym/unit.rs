//! Units of the text.

use tenter_core::Unit;

use super::Words;

/// Units.
pub const UNIT: Words<Unit> =
    Words { all: &[Unit::Mm, Unit::Cm, Unit::Inch], word: Unit::symbol, others, unclear: &[] };

const fn others(unit: Unit) -> &'static [&'static str] {
    match unit {
        Unit::Mm => &["millimetre", "millimetres", "millimeter", "millimeters"],
        Unit::Cm => &["cms", "centimetre", "centimetres", "centimeter", "centimeters", "metric"],
        Unit::Inch => &["inch", "inches", "\"", "imperial"],
    }
}
