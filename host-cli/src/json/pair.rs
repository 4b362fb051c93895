//! Two cloths in one seam, as JSON.

use serde::Serialize;
use tenter_core::making::garment::SeamKind;

use crate::finding::pair::Pairing;
use crate::json::{FigureJson, figure, millimetres, number, rounded};
use crate::words::advice::Spoken;
use crate::words::pair as words;

#[derive(Serialize)]
struct PairJson {
    tags: [u16; 2],
    seam: Option<&'static str>,
    grains: [&'static str; 2],
    seam_mm: f64,
    answer: &'static str,
    open: Option<&'static str>,
    alike: f64,
    handle: f64,
    band: f64,
    stretch: FigureJson,
    gap: FigureJson,
    asked: Option<GiveJson>,
    growth_mismatch_mm: Option<f64>,
    washing_mismatch_mm: Option<f64>,
    lines: Vec<Spoken>,
}

/// Whether the seam gives what is asked along it.
#[derive(Serialize)]
struct GiveJson {
    at_least: f64,
    answer: &'static str,
    chance: f64,
}

/// The JSON text, on one line.
#[must_use]
pub fn render(pairing: &Pairing) -> String {
    let (pair, [first, second]) = (&pairing.pair, &pairing.sides);
    let json = PairJson {
        tags: [first.cloth.tag.number(), second.cloth.tag.number()],
        seam: pairing.seam.name.map(SeamKind::word),
        grains: [first.grain.word(), second.grain.word()],
        seam_mm: millimetres(pairing.seam.length),
        answer: words::word(pair.answer),
        open: pair.open.map(words::open_word),
        alike: rounded(pair.chances.alike, 4),
        handle: rounded(pair.chances.handle, 4),
        band: rounded(pair.chances.band, 4),
        stretch: figure(&pair.stretch, pairing.confidence),
        gap: figure(&pair.gap, pairing.confidence),
        asked: pair.give.map(|give| GiveJson {
            at_least: number(give.asked.ratio().percent(3)),
            answer: give.answer.word(),
            chance: rounded(give.chance, 4),
        }),
        growth_mismatch_mm: pair.growth.map(|mismatch| millimetres(mismatch.length)),
        washing_mismatch_mm: pair.washing.map(|mismatch| millimetres(mismatch.length)),
        lines: words::spoken(pairing),
    };
    super::line(&json)
}
