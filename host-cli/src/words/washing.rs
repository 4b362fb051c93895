//! What a wash takes away, in words.

use tenter_core::making::source::Source;
use tenter_core::making::washing::{INSEAM, Remedy, Usual, Washing, of_length};
use tenter_core::making::yardage::ShopCut;
use tenter_core::{Confidence, Decimal, Figure, Grain, Length, Ratio, Unit};

use crate::finding::wash::{Bought, WashChange, Washed};
use crate::log::{Fabric, WashMarks};
use crate::plain::isolated;
use crate::words::advice::Spoken;
use crate::words::quantity;
use crate::words::terms as words;

/// The lines.
#[must_use]
pub fn spoken(washed: &Washed, unit: Unit) -> Vec<Spoken> {
    let changes = washed.changes.iter().map(|change| changed(change, washed.confidence, unit));
    changes.chain(washed.bought.as_ref().map(|bought| buy(bought, unit))).collect()
}

/// How a cloth stands to the wash along a grain, and what to do about it; none where there is nothing to say.
#[must_use]
pub fn line(
    grain: Grain,
    washing: &Washing,
    marks: Option<Figure>,
    (confidence, unit): (Confidence, Unit),
) -> Option<Spoken> {
    match washing {
        Washing::Measured(change) => Some(changed(&WashChange::of(grain, *change), confidence, unit)),
        Washing::Done => {
            let text = format!("{}; it is washed, so nothing more comes off", words::figure(&marks?, confidence));
            Some(Spoken::note(about(grain), text, "measured before and after the wash", Source::Own))
        }
        // Nearly all of what is allowed for lies along the cloth.
        Washing::Usual(usual) => (grain == Grain::Lengthwise).then(|| allowed(usual)),
        Washing::NotWetted => None,
    }
}

/// What comes of marks that were stored with a cloth.
#[must_use]
pub fn stored(fabric: &Fabric) -> String {
    if fabric.washed {
        return format!(
            "it is marked as washed, so its length on hand stays; if you measured that before the wash, type tenter cloth \
             edit {} --length with what is left",
            fabric.tag
        );
    }
    "fit allows for it; the length on hand becomes shorter once you mark the cloth as washed".to_owned()
}

/// Marks that were taken back, and what counts now.
#[must_use]
pub fn taken_back(now: &Fabric, grain: Grain, back: &WashMarks, unit: Unit) -> String {
    let unit = quantity::marks_unit(unit);
    let marks = |marks: &WashMarks| {
        format!("{} to {}", quantity::reading(marks.before, unit), quantity::reading(marks.after, unit))
    };
    let counts = match now.wash_marks(grain) {
        Some(earlier) => format!("{} counts again", marks(&earlier)),
        None => "no marks along that grain are left".to_owned(),
    };
    format!(
        "taken back  {} {}, {}: {counts}",
        now.tag,
        isolated(&now.name),
        format_args!("{} {}", grain.word(), marks(back))
    )
}

/// What to do where the cloth counts as washed by marks that were taken back.
#[must_use]
pub fn measure_again(now: &Fabric) -> String {
    format!(
        "its length and width stay as these marks left them; measure the cloth, and type both with tenter cloth edit {}",
        now.tag
    )
}

fn about(grain: Grain) -> &'static str {
    if grain == Grain::Lengthwise { "along" } else { "across" }
}

fn changed(change: &WashChange, confidence: Confidence, unit: Unit) -> Spoken {
    let figure = words::figure(&change.change, confidence);
    let remedy = match change.remedy {
        Remedy::Ignore => "too little to matter when you cut",
        Remedy::WashFirst => "wash it before you cut it",
        Remedy::WashTwice => "wash it twice before you cut it",
    };
    let on_leg = match change.remedy {
        Remedy::Ignore => None,
        _ => Some(change.grain).filter(|grain| *grain == Grain::Lengthwise),
    };
    let on_leg = on_leg.and_then(|_| leg(change.change.ratio, unit)).map(|leg| format!("{leg}; ")).unwrap_or_default();
    let why = "under 1 % leave it, from 1 % on wash before you cut, from 10 % on wash twice";
    Spoken::new(about(change.grain), format!("{figure}: {on_leg}{remedy}"), why, change.remedy.source())
}

/// `2.3 cm off a leg of 75 cm`: what a change makes of an inside leg.
fn leg(change: Ratio, unit: Unit) -> Option<String> {
    let [metric, imperial] = INSEAM;
    let (leg, step) = match unit {
        Unit::Inch => (imperial, Length::INCH.steps() / 8),
        _ => (metric, Length::STEPS_PER_MM),
    };
    let by = of_length(leg, change)?.steps();
    let size = by.saturating_abs().saturating_add(step / 2);
    let size = Length::from_steps(size - size.rem_euclid(step)).show(quantity::marks_unit(unit));
    let which = if by < 0 { "off" } else { "more on" };
    Some(format!("{size} {which} a leg of {}", quantity::width(leg, unit)))
}

/// The allowance for a cloth that nobody measured.
#[must_use]
pub fn allowed(usual: &Usual) -> Spoken {
    let text = format!("not measured; {}: measure marks before and after the wash", usually(usual));
    Spoken::new(about(usual.grain), text, "tenter allows for the most that is usual", usual.source)
}

/// `woven cotton usually loses 3 to 6 % along`.
#[must_use]
pub fn usually(usual: &Usual) -> String {
    format!("{} usually loses {} {}", usual.cloth, range(usual), about(usual.grain))
}

fn range(usual: &Usual) -> String {
    let percent = |milli: u32| words::whole(Decimal::new(i64::from(milli) / 100, 1));
    match (usual.least, usual.most) {
        (0, most) => format!("up to {} %", percent(most)),
        (least, most) if least == most => format!("{} %", percent(most)),
        (least, most) => format!("{} to {} %", percent(least), percent(most)),
    }
}

/// `6 % for the wash`: the share of a length that is there for the wash, as it is counted on.
#[must_use]
pub fn share(counted: Ratio) -> Option<String> {
    let share = Ratio::new(counted.numerator().saturating_neg(), counted.denominator())?;
    (share > Ratio::ZERO).then(|| format!("{} %", words::whole(share.percent(1))))
}

fn buy(bought: &Bought, unit: Unit) -> Spoken {
    let (length, need) =
        (quantity::cloth_to_buy(bought.length, unit, bought.shop_cut), quantity::cloth_needed(bought.need, unit));
    let exact = quantity::cloth_needed(bought.length, unit);
    let counted = match bought.washing {
        Washing::Usual(usual) => format!("{} [{}]", usually(&usual), usual.source),
        Washing::Done => "it is washed already".to_owned(),
        Washing::NotWetted => "it is not washed".to_owned(),
        Washing::Measured(_) => format!("counting on a change of {}", quantity::percent(bought.counted)),
    };
    let why = format!("need / (1 − s), {counted}: {exact}, rounded up to what shops cut");
    Spoken::new("buy", format!("{length} for {need} after the wash"), why, ShopCut::SOURCE)
}
