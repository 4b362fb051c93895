//! `tenter wash`: marks before and after a wash.

use tenter_core::making::washing;
use tenter_core::{Figure, Grain};

use super::find;
use crate::cli::making::WashArgs;
use crate::error::Error;
use crate::finding::pair::Named;
use crate::finding::wash::{Change, Washed};
use crate::input::{self, fabric as typed, making};
use crate::json::wash as wash_json;
use crate::log::{Fact, WashMarks};
use crate::store::Store;
use crate::text::Screen;
use crate::text::wash as wash_text;

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
    let changes = washed.iter().map(|(grain, _, change)| Change::of(*grain, *change)).collect();
    let mut found = Washed { changes, bought: None, confidence };
    if let Some(need) = need {
        found.buy(need).map_err(|error| Error::Usage(error.to_string()))?;
    }
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
    let unit = args.advice.show.units.map(input::unit).unwrap_or_default();
    if args.advice.show.json {
        writeln!(screen.out, "{}", wash_json::render(&found, stored.map(|fabric| fabric.tag), unit))?;
    } else {
        let stored = stored.as_ref().map(Named::from);
        let text = wash_text::render(&found, stored.as_ref(), args.advice.why, unit, screen.width);
        write!(screen.out, "{text}")?;
    }
    Ok(0)
}
