//! Which mass to hang, in words.

use tenter_core::making::caution::MOST_GRAMS;
use tenter_core::making::hanging::{METHODS, Specimen, Tension, TensionMethod};
use tenter_core::making::source::Source;
use tenter_core::{Decimal, Unit};

use crate::finding::hang::{Hang, Hung};
use crate::words::advice::Spoken;
use crate::words::{quantity, terms};

/// The mass or the tension as a head; none for the list of published tensions.
#[must_use]
pub fn headline(hang: &Hang) -> Option<String> {
    match hang {
        Hang::Methods(_) => None,
        Hang::Mass { widest: Some(_), .. } => Some("TOO HEAVY".to_owned()),
        Hang::Mass { grams, .. } => Some(format!("{grams} g")),
        Hang::Tension { tension, .. } => Some(per_cm(*tension)),
    }
}

/// The cautions, which come before everything else.
#[must_use]
pub fn cautions(hang: &Hang) -> Vec<Spoken> {
    terms::cautions(&hang.cautions())
}

/// What was found.
#[must_use]
pub fn found(hang: &Hang) -> Vec<Spoken> {
    match hang {
        Hang::Methods(unit) => METHODS.iter().map(|one| method(one, *unit)).collect(),
        Hang::Mass { hung, tension, source, grams, widest } => {
            let (width, layers) = (quantity::tape(hung.width, hung.unit), layers(hung.piece));
            let twice = if hung.piece == Specimen::Loop { " × 2" } else { "" };
            let why = format!("{} × {width}{twice}, over 9.80665 N/kg", per_cm(*tension));
            let text = match widest {
                Some(widest) => format!(
                    "{grams} g would be needed, over {MOST_GRAMS} g: cut a {layers} of {} or less",
                    quantity::tape(*widest, hung.unit)
                ),
                None => format!("{grams} g on a {layers} {width} wide, for {}", per_cm(*tension)),
            };
            vec![Spoken::new("hang", text, why, *source)]
        }
        Hang::Tension { hung, grams, tension, too_heavy } => vec![pulls(*hung, *grams, *tension, *too_heavy)],
    }
}

fn per_cm(tension: Tension) -> String {
    format!("{} N/cm", Decimal::new((i64::from(tension.millinewtons_per_cm()) + 5) / 10, 2))
}

fn method(method: &TensionMethod, unit: Unit) -> Spoken {
    let year = method.year.map_or_else(String::new, |year| format!(":{year}"));
    let layers = if method.piece == Specimen::Loop { "loop" } else { "strip" };
    let width = quantity::tape(method.width, unit);
    let text = format!("{}{year}, {}: {}", method.standard, method.cloth, per_cm(method.tension()));
    let force = Decimal::new((i64::from(method.millinewtons) + 50) / 100, 1);
    Spoken::new("tension", text, format!("{force} N on a {layers} {width} wide"), method.source)
}

const fn layers(piece: Specimen) -> &'static str {
    match piece {
        Specimen::Strip => "strip",
        Specimen::Loop => "loop of two layers",
    }
}

fn pulls(hung: Hung, grams: u32, tension: Tension, too_heavy: bool) -> Spoken {
    let (width, layers) = (quantity::tape(hung.width, hung.unit), layers(hung.piece));
    let heavy = if too_heavy { format!("; that is over {MOST_GRAMS} g: take a narrower piece") } else { String::new() };
    let text = format!("{grams} g on a {layers} {width} wide pulls with {}{heavy}", per_cm(tension));
    Spoken::new("pull", text, "mass × 9.80665 N/kg over the width", Source::Derived("arithmetic"))
}
