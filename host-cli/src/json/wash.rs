//! What a wash takes away, as JSON.

use serde::Serialize;
use tenter_core::{Grain, Unit};

use crate::finding::wash::Washed;
use crate::json::{FigureJson, figure, millimetres};
use crate::words::advice::Spoken;
use crate::words::doubt;
use crate::words::washing as words;

#[derive(Serialize)]
struct WashJson {
    lengthwise: Option<FigureJson>,
    crosswise: Option<FigureJson>,
    buy_mm: Option<f64>,
    lines: Vec<Spoken>,
    tag: Option<u16>,
    doubt: Option<String>,
}

/// The JSON text, on one line; `tag` is that of the cloth that the marks were stored with.
#[must_use]
pub fn render(washed: &Washed, tag: Option<u16>, unit: Unit) -> String {
    let change = |grain| washed.along(grain).map(|one| figure(&one.change, washed.confidence));
    let json = WashJson {
        lengthwise: change(Grain::Lengthwise),
        crosswise: change(Grain::Crosswise),
        buy_mm: washed.bought.map(|bought| millimetres(bought.length)),
        lines: words::spoken(washed, unit),
        tag,
        doubt: washed.doubted().map(|change| doubt::washed(&change)),
    };
    super::line(&json)
}
