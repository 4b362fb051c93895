//! Two cloths in one seam, as text.

use anstyle::{AnsiColor, Style};
use tenter_core::Unit;
use tenter_core::making::pairing::Match;

use crate::finding::pair::Pairing;
use crate::plain::isolated;
use crate::text::advice;
use crate::text::lines::Lines;
use crate::words::pair as words;
use crate::words::terms;

/// The text.
#[must_use]
pub fn render(pairing: &Pairing, why: bool, unit: Unit, columns: usize) -> String {
    let mut text = Lines::new(columns);
    let (head, meaning) = words::headline(pairing);
    advice::head(&mut text, style(pairing.pair.answer), head, &meaning);
    for side in &pairing.sides {
        let growth = side.edge.growth.map(|growth| format!(", growth {}", terms::figure(&growth, pairing.confidence)));
        let stretch = terms::figure(&side.edge.stretch, pairing.confidence);
        let said =
            format!("{} {}, {stretch}{}", isolated(&side.cloth.name), side.grain.word(), growth.unwrap_or_default());
        text.row(&side.cloth.tag.to_string(), &said);
    }
    text.row("seam", &words::runs(pairing));
    text.row("", &words::seam(pairing));
    if let Some(give) = pairing.pair.give.filter(|_| pairing.pair.answer != Match::TooFirm) {
        text.row("asked", &words::give(pairing, &give));
    }
    text.row("gap", &words::gap(pairing));
    for (what, mismatch) in [("growth", pairing.pair.growth), ("washing", pairing.pair.washing)] {
        let Some(mismatch) = mismatch else { continue };
        text.row(what, &words::mismatch(pairing, &mismatch, unit));
    }
    text.blank();
    advice::write(&mut text, &words::spoken(pairing), why);
    text.row("note", &words::limits(unit));
    text.finish()
}

const fn style(answer: Match) -> Style {
    let colour = match answer {
        Match::Alike => AnsiColor::Green,
        Match::Handle | Match::Close(_) => AnsiColor::Yellow,
        Match::BandToBody | Match::Unlike | Match::TooFirm => AnsiColor::Red,
    };
    colour.on_default().bold()
}
