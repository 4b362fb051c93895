//! `tenter wash`: marks before and after a wash.

use serde::Serialize;
use tenter_core::making::amount::Amount;
use tenter_core::making::error::MakingError;
use tenter_core::making::source::Source;
use tenter_core::making::washing;
use tenter_core::{Confidence, Figure, Grain, Length, Ratio, Unit};

use super::find;
use crate::cli::making::WashArgs;
use crate::error::Error;
use crate::input::{self, fabric as typed, making};
use crate::json::FigureJson;
use crate::json::figure;
use crate::json::millimetres;
use crate::log::{Fact, WashMarks};
use crate::store::Store;
use crate::text::Screen;
use crate::text::lines::Lines;
use crate::words::advice;
use crate::words::advice::Spoken;
use crate::words::bidi::isolated;
use crate::words::quantity;
use crate::words::washing as report;

/// Runs the verb.
///
/// # Errors
///
/// What was typed wrong, or a log that cannot be read or written.
pub fn run(
    args: &WashArgs,
    open: &mut dyn FnMut() -> Result<Box<dyn Store>, Error>,
    screen: &mut Screen<'_>,
) -> Result<u8, Error> {
    let confidence = input::confidence(&args.advice.confidence.confidence)?;
    let mut washed: Vec<(Grain, WashMarks, Figure)> = Vec::new();
    for (grain, flag, text) in
        [(Grain::Lengthwise, "--lengthwise", &args.lengthwise), (Grain::Crosswise, "--crosswise", &args.crosswise)]
    {
        let Some(text) = text else { continue };
        let marks = making::marks(flag, text, args.division.as_deref())?;
        let change = washing::change(marks.before, marks.after, making::scale(&marks)?);
        washed.push((grain, marks, change.map_err(|error| Error::argument(flag, text, error))?));
    }
    if washed.is_empty() {
        return Err(Error::Usage("type the marks before and after, such as --lengthwise '50cm to 48.5cm'".to_owned()));
    }
    let need = args.need.as_deref().map(|text| typed::cloth("--need", text)).transpose()?;
    let along = washed.iter().find(|(grain, ..)| *grain == Grain::Lengthwise).map(|(_, _, change)| *change);
    if let (Some(text), None) = (&args.need, along) {
        return Err(Error::argument("--need", text, "say too what the length does, with --lengthwise"));
    }
    let unit = args.advice.show.units.map(input::unit).unwrap_or_default();
    let mut spoken: Vec<Spoken> =
        washed.iter().map(|(grain, _, change)| report::line(*grain, change, confidence)).collect();
    let bought = need.zip(along).map(|(need, change)| buy(need, change, confidence)).transpose()?;
    spoken.extend(bought.as_ref().map(|bought| bought.spoken(unit)));
    let mut stored = None;
    if let Some(text) = &args.fabric {
        let note = typed::short("--note", &args.note)?;
        open()?.change(&mut |read| {
            let fabric = find::live_fabric(read, text)?;
            let facts = washed.iter().map(|(grain, marks, _)| Fact::FabricWashed {
                fabric: fabric.id,
                grain: *grain,
                marks: *marks,
                note: note.clone(),
            });
            let facts = facts.collect();
            stored = Some(fabric);
            Ok(facts)
        })?;
    }
    if args.advice.show.json {
        let json = WashJson {
            lengthwise: change_of(&washed, Grain::Lengthwise, confidence),
            crosswise: change_of(&washed, Grain::Crosswise, confidence),
            buy_mm: bought.as_ref().map(|bought| millimetres(bought.length)),
            lines: &spoken,
            tag: stored.as_ref().map(|fabric| fabric.tag),
        };
        writeln!(screen.out, "{}", serde_json::to_string(&json).unwrap_or_default())?;
        return Ok(0);
    }
    let mut text = Lines::new(screen.width);
    advice::write(&mut text, &spoken, args.advice.why);
    if let Some(fabric) = stored {
        let name = isolated(&fabric.name);
        let words = format!("with {}  {name}; fit counts on it until the cloth is marked as washed", fabric.tag);
        text.row("stored", &words);
    }
    write!(screen.out, "{}", text.finish())?;
    Ok(0)
}

struct Bought {
    need: Length,
    length: Length,
    counted: Ratio,
}

fn buy(need: Length, change: Figure, confidence: Confidence) -> Result<Bought, Error> {
    let wrong = |error: MakingError| Error::Usage(error.to_string());
    let amount = Amount::new(Some(change), confidence).map_err(wrong)?;
    let length = amount.to_buy(need).map_err(wrong)?;
    Ok(Bought { need, length, counted: amount.change().unwrap_or(Ratio::ZERO) })
}

impl Bought {
    fn spoken(&self, unit: Unit) -> Spoken {
        let (length, need) = (quantity::cloth_to_buy(self.length, unit), quantity::cloth(self.need, unit));
        let why = format!("need / (1 − s), counting on a change of {} %", self.counted.percent(1));
        Spoken::new("buy", format!("{length} for {need} after the wash"), why, Source::Derived("arithmetic"))
    }
}

#[derive(Serialize)]
struct WashJson<'a> {
    lengthwise: Option<FigureJson>,
    crosswise: Option<FigureJson>,
    buy_mm: Option<f64>,
    lines: &'a [Spoken],
    tag: Option<u16>,
}

fn change_of(washed: &[(Grain, WashMarks, Figure)], wanted: Grain, confidence: Confidence) -> Option<FigureJson> {
    washed.iter().find(|(grain, ..)| *grain == wanted).map(|(_, _, change)| figure(change, confidence))
}
