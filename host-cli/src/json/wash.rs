//! What a wash takes away, as JSON.

use serde::Serialize;
use tenter_core::making::washing::Usual;
use tenter_core::{Grain, Unit};

use crate::finding::amounts::as_cut;
use crate::finding::wash::Washed;
use crate::json::{FigureJson, figure, millimetres};
use crate::words::advice::Spoken;
use crate::words::doubt;
use crate::words::washing as words;

/// What a cloth that nobody measured usually loses in the wash.
#[derive(Debug, Serialize)]
pub struct AllowanceJson {
    cloth: &'static str,
    least_percent: f64,
    most_percent: f64,
    source: String,
}

impl From<Usual> for AllowanceJson {
    fn from(usual: Usual) -> Self {
        let percent = |milli: u32| f64::from(milli) / 1000.0;
        Self {
            cloth: usual.cloth,
            least_percent: percent(usual.least),
            most_percent: percent(usual.most),
            source: usual.source.to_string(),
        }
    }
}

#[derive(Serialize)]
struct WashJson {
    lengthwise: Option<FigureJson>,
    crosswise: Option<FigureJson>,
    buy_mm: Option<f64>,
    /// The same, rounded up to what shops cut where the reader shops.
    shop_cut_mm: Option<f64>,
    /// What such cloth usually loses, where nobody measured this one.
    allowance: Option<AllowanceJson>,
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
        shop_cut_mm: washed.bought.map(|bought| millimetres(as_cut(bought.length, unit, bought.shop_cut))),
        allowance: washed.bought.and_then(|bought| bought.washing.allowance()).map(Into::into),
        lines: words::spoken(washed, unit),
        tag,
        doubt: washed.doubted().map(|change| doubt::washed(&change)),
    };
    super::line(&json)
}
