//! What a class learns from its own scatter, in words.

use tenter_core::Decimal;

use crate::finding::class::{ClassPulls, Hand};
use crate::plain::isolated;
use crate::words::people;

fn points(value: f32) -> String {
    Decimal::round(value, 1).to_string()
}

/// A mean with its ±: `12.3 % ± 0.8`.
#[must_use]
pub fn mean(mean: f32, half: f32) -> String {
    format!("{} % ± {}", points(mean), points(half))
}

/// What somebody is called.
#[must_use]
pub fn called(hand: &Hand) -> String {
    let nameless = if hand.is_said { people::NAMELESS } else { people::NOT_SAID };
    hand.name.as_deref().map_or_else(|| nameless.to_owned(), isolated)
}

/// How many pulled what, and what they found on average.
#[must_use]
pub fn lead(class: &ClassPulls) -> String {
    format!(
        "{} people pulled {} {} {}: {} on average.",
        class.compared.persons,
        class.fabric.tag,
        isolated(&class.fabric.name),
        class.grain.word(),
        mean(class.compared.mean, class.half)
    )
}

/// How far one person's pulls lie apart, and those of two.
#[must_use]
pub fn spread(class: &ClassPulls) -> String {
    let (one, two) = (class.compared.repeatability_limit(), class.compared.reproducibility_limit());
    let one = points(one);
    if class.compared.between > 0.0 {
        format!(
            "95 times in 100, two pulls by one person differ by less than {one} points. Two pulls by two people differ \
             by less than {}.",
            points(two)
        )
    } else {
        format!(
            "95 times in 100, two pulls differ by less than {one} points, whether one person made them or two. These \
             people differ by no more than their own pulls do."
        )
    }
}

/// What each ± is.
pub const TRUST: &str = "Each ± holds 95 times in 100. It comes from how much the pulls of all these people differ.";
/// What the numbers are.
pub const SOURCE: &str = "Repeatability and reproducibility limits as in ISO 5725-6, worked out as in ISO 5725-2.";
