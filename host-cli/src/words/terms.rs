//! The words for what the core says as data.

use tenter_core::making::caution::{Allowed, Caution, Cord, CordPlace, Region};
use tenter_core::{Answer, Confidence, Decimal, Figure, Note, Part, PullTest, Settle, Side, Suit, Unit};

use crate::words::advice::Spoken;
use crate::words::quantity;

use crate::log::{Construction, Hands, Share, Tested};

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

/// An answer as the head of a report.
#[must_use]
pub const fn headline(answer: Answer) -> &'static str {
    match answer {
        Answer::Meets => "MEETS",
        Answer::Short => "SHORT",
        Answer::Over => "OVER",
        Answer::Close => "TOO CLOSE TO CALL",
        Answer::Unknown => "UNKNOWN",
    }
}

/// The side of a limit.
#[must_use]
pub const fn side(side: Side) -> &'static str {
    match side {
        Side::AtLeast => "at least",
        Side::AtMost => "at most",
    }
}

/// One thing that is asked, with the chance that the cloth conforms.
#[must_use]
pub fn part(part: &Part) -> String {
    let side = side(part.side);
    let chance = part.chance.map_or_else(|| "not measured".to_owned(), |chance| format!("chance {}", percent(chance)));
    format!("{} {side} {}: {chance}", part.ask.word(), part.limit)
}

/// A figure with what it is worth: `6.1 % ± 1.1`.
#[must_use]
pub fn figure(figure: &Figure, confidence: Confidence) -> String {
    let half = Decimal::round(figure.half_width(confidence), 1);
    format!("{} % ± {half}", figure.ratio.percent(1))
}

/// What is said of a length that was reckoned by area.
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

/// By how much a test differs from the one `before`.
#[must_use]
pub fn disagreement(apart: f32, before: &Tested) -> String {
    let side = if apart < 0.0 { "less" } else { "more" };
    let points = Decimal::round(apart.abs(), 1);
    let when = if before.clock_unset { "before".to_owned() } else { format!("on {}", quantity::pulled(before)) };
    format!("{points} points {side} than {when}, more than both are worth; pull it again")
}

/// How much of the scatter of `test` is known from her own other pulls and how much is assumed.
#[must_use]
pub fn trust(construction: Construction, hands: &Hands, test: &PullTest) -> String {
    let cloth = match construction {
        Construction::Woven => "wovens",
        Construction::Knit => "knits",
        Construction::Other => "other cloth",
    };
    let hand = hands.on(construction).without(Share::of(test)).repeatability();
    match hand.map(tenter_core::Repeatability::share) {
        Some(own) if own > 0.0 => {
            let (own, assumed) = (Decimal::round(100.0 * own, 0), Decimal::round(100.0 * (1.0 - own), 0));
            let ratio = Decimal::round(hand.map_or(1.0, tenter_core::Repeatability::ratio), 2);
            format!(
                "scatter from pull to pull: {own} % your own hand on {cloth} ({ratio} × as much as assumed), \
                 {assumed} % assumed from open data"
            )
        }
        _ => format!(
            "scatter from pull to pull: assumed from open data; pull your {cloth} three times to put your own hand \
             in its place"
        ),
    }
}

/// What would settle it.
#[must_use]
pub fn settle(settle: &Settle, unit: Unit) -> String {
    if let Some(seconds) = settle.wait_until {
        return format!("read it again {} after release: growth has still to fall", duration(seconds));
    }
    let Some(plan) = &settle.plan else {
        let pulls = settle.complete.map(|pulls| format!("make all {pulls} pulls; "));
        let marks = settle.marks.map(|marks| format!("lay marks {} apart; ", marks.show(unit)));
        let first = [pulls, marks].into_iter().flatten().collect::<String>();
        return format!("{first}no test of this size would settle it four times in five");
    };
    let some = |count: u8, one: &str, many: &str| match count {
        0 => String::new(),
        1 => format!(", 1 {one}"),
        count => format!(", {count} {many}"),
    };
    let force = if plan.known_load { " with a hung mass" } else { "" };
    let pulls = format!("{} {}{force}", plan.pulls, if plan.pulls == 1 { "pull" } else { "pulls" });
    let looks = some(plan.looks, "look at the marks", "looks at the marks");
    let rests = some(plan.rests, "reading after release", "readings after release");
    match plan.days {
        0 => format!("in all {pulls}{looks}{rests} would settle it four times in five"),
        1 => format!("another day of {pulls}{looks}{rests} would settle it four times in five"),
        days => format!("{days} more days, each of {pulls}{looks}{rests}, would settle it four times in five"),
    }
}

/// What a note means and what to do about it.
#[must_use]
pub const fn note(note: Note) -> &'static str {
    match note {
        Note::OnePull => "one pull: its scatter is assumed, not seen; pull it twice more",
        Note::NoSettlingPull => {
            "a knit's first pull reads low, by more the more it stretches; make one first and add --settling"
        }
        Note::FirstPullSettled => {
            "the first pull settled the cloth and is not counted; add --settling if one came before it"
        }
        Note::ShortGauge => "marks under 10 cm apart read high; mark 10 cm or more",
        Note::BetweenLines => "a reading lies between two lines of the scale; if it is finer, say --division",
        Note::EarlyRest => "under 30 s after release growth may still fall; read again at 60 s",
        Note::RecoveryNotReadable => "recovery cannot be graded from so little extension; judge by growth",
        Note::ShorterThanBefore => {
            "shorter than before the pull: a mark slipped or was misread; lay it flat, read again"
        }
        Note::GradesDisagree => "growth and recovery disagree; for close wear go by the worse",
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
pub fn cord(cord: &Cord) -> Spoken {
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
    let allowed = match cord.allowed {
        Allowed::Nothing => "no cord".to_owned(),
        Allowed::LoopUpTo(most) => format!("no free ends, a fixed loop of at most {} round", most.show(Unit::Mm)),
        Allowed::EndsUpTo(most) => format!("ends of at most {}", most.show(Unit::Mm)),
    };
    Spoken::new(
        "cords",
        format!("{region}, {}, {place}: {allowed}", cord.who),
        "a child's garment with a cord",
        cord.source,
    )
}
