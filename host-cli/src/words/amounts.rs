//! What is cut from each cloth in all, in words.

use tenter_core::Unit;
use tenter_core::making::source::Source;
use tenter_core::making::yardage::ShopCut;

use crate::finding::amounts::ClothAmount;
use crate::plain::isolated;
use crate::words::advice::Spoken;
use crate::words::pair::named;
use crate::words::quantity;

/// A cloth of which several roles take: how much in all, what is at home and what is missing.
#[must_use]
pub fn in_all(amount: &ClothAmount, unit: Unit) -> Spoken {
    let needed = quantity::cloth_needed(amount.needed, unit);
    let mut text = format!("{}: {needed} for {}", named(&amount.cloth), roles(amount));
    if let Some(had) = amount.on_hand {
        text.push_str(&format!("; you have {}", quantity::cloth(had, unit)));
        if amount.missing().steps() > 0 {
            text.push_str(&format!(": {} missing", quantity::cloth_needed(amount.missing(), unit)));
        }
    }
    Spoken::new("in all", text, sum(amount, unit), Source::Derived("the lengths added up"))
}

/// What to buy of a cloth; none where nothing is to be bought.
#[must_use]
pub fn to_buy(amount: &ClothAmount, unit: Unit) -> Option<Spoken> {
    let length = quantity::as_cut(amount.to_buy(unit)?, unit);
    let text = match &amount.shop {
        Some(shop) => {
            let cost = amount.cost(unit).map(|cost| format!(" for {cost}")).unwrap_or_default();
            format!("{length} of {} at {}{cost}, for {}", named(&amount.cloth), isolated(&shop.place), roles(amount))
        }
        None => format!("{length} more of {}, for {}", named(&amount.cloth), roles(amount)),
    };
    let why = format!("{}, rounded up to what shops cut", sum(amount, unit));
    Some(Spoken::new("cloth", text, why, ShopCut::SOURCE))
}

/// `main, hood and facing`.
fn roles(amount: &ClothAmount) -> String {
    let names: Vec<String> = amount.taken.iter().map(|taken| isolated(&taken.role)).collect();
    match names.as_slice() {
        [several @ .., last] if !several.is_empty() => format!("{} and {last}", several.join(", ")),
        few => few.join(""),
    }
}

/// `1.90 m + 0.50 m + 0.80 m`, and whether it is an estimate.
fn sum(amount: &ClothAmount, unit: Unit) -> String {
    let lengths = amount.taken.iter().map(|taken| quantity::cloth_needed(taken.length, unit));
    let sum = lengths.collect::<Vec<_>>().join(" + ");
    if amount.is_estimate { format!("{sum}, an estimate") } else { sum }
}
