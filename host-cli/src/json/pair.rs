//! Two cloths in one seam, as JSON.

use serde::Serialize;

use crate::finding::pair::Pairing;
use crate::json::{FigureJson, figure, millimetres, rounded};
use crate::words::advice::Spoken;
use crate::words::pair as words;

#[derive(Serialize)]
struct PairJson {
    tags: [u16; 2],
    seam_mm: f64,
    answer: &'static str,
    alike: f64,
    handle: f64,
    band: f64,
    stretch: FigureJson,
    gap: FigureJson,
    growth_mismatch_mm: Option<f64>,
    washing_mismatch_mm: Option<f64>,
    lines: Vec<Spoken>,
}

/// The JSON text, on one line.
#[must_use]
pub fn render(pairing: &Pairing) -> String {
    let (pair, [first, second]) = (&pairing.pair, &pairing.sides);
    let json = PairJson {
        tags: [first.cloth.tag, second.cloth.tag],
        seam_mm: millimetres(pairing.seam),
        answer: words::word(pair.answer),
        alike: rounded(pair.chances.alike, 4),
        handle: rounded(pair.chances.handle, 4),
        band: rounded(pair.chances.band, 4),
        stretch: figure(&pair.stretch, pairing.confidence),
        gap: figure(&pair.gap, pairing.confidence),
        growth_mismatch_mm: pair.growth.map(|mismatch| millimetres(mismatch.length)),
        washing_mismatch_mm: pair.washing.map(|mismatch| millimetres(mismatch.length)),
        lines: words::spoken(pairing),
    };
    super::line(&json)
}
