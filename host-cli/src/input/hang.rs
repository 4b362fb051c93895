//! What was typed about a mass that hangs.

use tenter_core::making::hanging::{STANDARD_GRAVITY, Tension};
use tenter_core::{Length, Load};

use super::{Field, Why, Wrong, load};

/// The weight of a gram, in millinewtons.
const MILLINEWTONS_PER_GRAM: f64 = STANDARD_GRAVITY as f64 / 100_000.0;

/// The force on each centimetre of width: `3.5N`.
///
/// # Errors
///
/// A text that is no force above zero.
pub fn tension(text: &str) -> Result<Tension, Wrong> {
    let force = text.trim().trim_end_matches("/cm");
    let wrong = || Wrong::new(Field::Tension, text, Why::NotATension);
    let Ok(Load::Force { millinewtons }) = load(force) else { return Err(wrong()) };
    Tension::new(millinewtons, Length::from_mm(10)).ok_or_else(wrong)
}

/// A mass in grams, from the weight that a load is typed as: `1.2kg`.
///
/// # Errors
///
/// A text that is none, or less than a gram.
pub fn mass(text: &str) -> Result<u32, Wrong> {
    let wrong = || Wrong::new(Field::HungMass, text, Why::NotAHungMass);
    if text.trim().ends_with(['N', 'n']) {
        return Err(wrong());
    }
    let Ok(Load::Force { millinewtons }) = load(text) else { return Err(wrong()) };
    let grams = (f64::from(millinewtons) / MILLINEWTONS_PER_GRAM).round();
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // At most 10⁶ mN.
    (grams >= 1.0).then_some(grams as u32).ok_or_else(wrong)
}
