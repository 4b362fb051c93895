//! What a wash takes away, in words.

use tenter_core::making::source::Source;
use tenter_core::making::washing::Remedy;
use tenter_core::{Confidence, Figure, Grain, Unit};

use crate::finding::wash::{Bought, Change, Washed};
use crate::words::advice::Spoken;
use crate::words::quantity;
use crate::words::terms as words;

/// The lines.
#[must_use]
pub fn spoken(washed: &Washed, unit: Unit) -> Vec<Spoken> {
    let changes = washed.changes.iter().map(|change| changed(change, washed.confidence));
    changes.chain(washed.bought.as_ref().map(|bought| buy(bought, unit))).collect()
}

/// The change along a grain, and what to do about it.
#[must_use]
pub fn line(grain: Grain, change: &Figure, confidence: Confidence) -> Spoken {
    changed(&Change::of(grain, *change), confidence)
}

fn changed(change: &Change, confidence: Confidence) -> Spoken {
    let remedy = match change.remedy {
        Remedy::Ignore => "too little to matter when you cut",
        Remedy::Allow => "allow for it when you buy and cut",
        Remedy::WashFirst => "wash it twice before you cut it",
    };
    let about = if change.grain == Grain::Lengthwise { "along" } else { "across" };
    let text = format!("{}: {remedy}", words::figure(&change.change, confidence));
    let why = "up to 3 % does not matter, up to 10 % is allowed for, beyond that you wash before you cut";
    Spoken::new(about, text, why, Remedy::SOURCE)
}

fn buy(bought: &Bought, unit: Unit) -> Spoken {
    let (length, need) = (quantity::cloth_to_buy(bought.length, unit), quantity::cloth(bought.need, unit));
    let why = format!("need / (1 − s), counting on a change of {} %", bought.counted.percent(1));
    Spoken::new("buy", format!("{length} for {need} after the wash"), why, Source::Derived("arithmetic"))
}
