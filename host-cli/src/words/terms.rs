//! The words for what the core says as data.

use tenter_core::making::caution::{Allowed, Caution, Cord, CordPlace, Region};
use tenter_core::{Confidence, Decimal, Figure, Length, Suit, Unit};

use crate::words::advice::Spoken;
use crate::words::quantity;

/// A garment with what it asks.
#[must_use]
pub fn garment(suit: &Suit) -> String {
    let mut text = format!("{}, {}", suit.garment, asked(suit));
    match suit.other_grain {
        Some(0) => text.push_str(", some along the other grain too"),
        Some(other) => text.push_str(&format!(", {} % along the other grain too", other / 1000)),
        None => {}
    }
    text
}

fn asked(suit: &Suit) -> String {
    match suit.at_most {
        Some(most) => format!("{} to {} %", suit.at_least / 1000, most / 1000),
        None => format!("{} % or more", suit.at_least / 1000),
    }
}

/// A figure with what it is worth: `6.1 % ± 1.1`.
#[must_use]
pub fn figure(figure: &Figure, confidence: Confidence) -> String {
    let half = Decimal::round(figure.half_width(confidence), 1);
    format!("{} % ± {half}", quantity::number(figure.ratio.percent(1)))
}

/// The same under a head that says the unit: `6.1 ± 1.1`.
#[must_use]
pub fn bare_figure(figure: &Figure, confidence: Confidence) -> String {
    let half = Decimal::round(figure.half_width(confidence), 1);
    format!("{} ± {half}", quantity::number(figure.ratio.percent(1)))
}

/// What is said of a length that was worked out by area.
pub const BY_AREA: &str = "an estimate by area: lay it out";

/// A chance in percent, never rounded to certainty.
#[must_use]
pub fn percent(chance: f32) -> String {
    match chance {
        low if low < 0.001 => "under 0.1 %".to_owned(),
        high if high > 0.999 => "over 99.9 %".to_owned(),
        between => format!("{} %", tenter_core::Decimal::round(100.0 * between, 1)),
    }
}

/// A decimal without a needless ".0".
#[must_use]
pub fn whole(decimal: tenter_core::Decimal) -> String {
    let text = decimal.to_string();
    text.strip_suffix(".0").map(str::to_owned).unwrap_or(text)
}

/// A time since release.
#[must_use]
pub fn duration(seconds: u32) -> String {
    match seconds {
        whole if whole >= 3600 && whole % 3600 == 0 => format!("{} h", whole / 3600),
        whole if whole >= 120 && whole % 60 == 0 => format!("{} min", whole / 60),
        other => format!("{other} s"),
    }
}

/// Cautions as lines.
#[must_use]
pub fn cautions(cautions: &[Caution]) -> Vec<Spoken> {
    let line = |caution: &Caution| Spoken::new("caution", caution_words(*caution), "it applies here", caution.source());
    cautions.iter().map(line).collect()
}

/// What a caution says.
#[must_use]
pub const fn caution_words(caution: Caution) -> &'static str {
    match caution {
        Caution::FallingMass => {
            "hang less than 2 kg, low, over something soft; stand clear, keep children away, never on a held arm"
        }
        Caution::SnapBack => "a clamp that slips lets cloth or elastic fly back: keep your eyes out of its line",
        Caution::NotTheStandard => {
            "a test at home is not the standard's test: no climate, no clamps of its kind, no conformity"
        }
        Caution::ChildCords => {
            "cords on children's outerwear: none at hood and neck for the young, short ends elsewhere; look up your local rules"
        }
        Caution::ChildSleepwear => {
            "children's sleepwear has rules of its own, flame resistance or a tight fit; look up your local rules"
        }
        Caution::Tight => "a tight garment can press; what pressure it gives is not worked out here",
        Caution::Compression => "for medical compression ask a doctor or nurse; this tool does not size it",
        Caution::PinsBladesIrons => {
            "pins, blades and irons: guard shut, pins out of the path, iron on its heel, cord away"
        }
    }
}

/// What a rule about cords on children's clothes says.
#[must_use]
pub fn cord(cord: &Cord, unit: Unit) -> Spoken {
    let region = match cord.region {
        Region::UnitedStates => "United States",
        Region::Europe => "Europe",
    };
    let place = match cord.place {
        CordPlace::HoodOrNeck => "hood or neck",
        CordPlace::WaistOrHem => "waist or hem, laid open",
        CordPlace::WaistOrHemDrawnIn => "waist or hem, drawn in",
        CordPlace::Back => "back",
        CordPlace::RobeBelt => "tied belt",
    };
    // The rule of the United States says 3 in, which 75 mm stand for.
    let in_rule = |most: Length| {
        let is_rule = cord.region == Region::UnitedStates && unit == Unit::Inch && most == Length::from_mm(75);
        if is_rule { Length::from_inch_64ths(3 * 64) } else { most }
    };
    let allowed = match cord.allowed {
        Allowed::Nothing => "no cord".to_owned(),
        Allowed::LoopUpTo(most) => {
            format!("no free ends, a fixed loop of at most {} round", quantity::at_most(most, unit))
        }
        Allowed::EndsUpTo(most) => format!("ends of at most {}", quantity::at_most(in_rule(most), unit)),
    };
    Spoken::new(
        "cords",
        format!("{region}, {}, {place}: {allowed}", cord.who),
        "a child's garment with a cord",
        cord.source,
    )
}
