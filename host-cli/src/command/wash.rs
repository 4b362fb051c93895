//! `tenter wash`: marks before and after a wash.

use tenter_core::making::washing;
use tenter_core::{Answer, Figure, Grain};

use super::check::exit_code;
use crate::cli::making::WashArgs;
use crate::deed::wash::{self as deed, TypedWash};
use crate::error::Error;
use crate::finding::pair::Named;
use crate::finding::wash::{Change, Washed};
use crate::input::{self, Field, Why, Wrong, making};
use crate::json::wash as wash_json;
use crate::log::WashMarks;
use crate::store::{Change as _, Store};
use crate::text::Screen;
use crate::text::wash as wash_text;

/// Runs the verb; 0, or 3 where the marks should be read again.
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
    let typed = TypedWash::from(args);
    let (marks, need) = deed::marks(&typed)?;
    let mut washed: Vec<(Grain, WashMarks, Figure)> = Vec::new();
    for (grain, marks) in &marks {
        let (field, text) = match grain {
            Grain::Lengthwise => (Field::WashedLengthwise, &typed.lengthwise),
            _ => (Field::WashedCrosswise, &typed.crosswise),
        };
        let wrong = |error| Wrong::new(field, text.as_deref().unwrap_or_default(), Why::Making(error));
        let change = washing::change(marks.before, marks.after, making::scale(marks)?).map_err(wrong)?;
        washed.push((*grain, *marks, change));
    }
    let along = washed.iter().find(|(grain, ..)| *grain == Grain::Lengthwise).map(|(_, _, change)| *change);
    if let (Some(text), None) = (&args.need, along) {
        return Err(Wrong::new(Field::Need, text, Why::NeedsShrinkage).into());
    }
    let changes = washed.iter().map(|(grain, _, change)| Change::of(*grain, *change)).collect();
    let mut found = Washed { changes, bought: None, confidence, as_read: args.as_read };
    if let Some(need) = need {
        let wrong = |error| Wrong::new(Field::Need, args.need.as_deref().unwrap_or_default(), Why::Making(error));
        found.buy(need).map_err(wrong)?;
    }
    let store = |text: &String| {
        let (_, fabric) = open()?.change(|read| deed::store(read, text, &marks, &args.note))?;
        Ok::<_, Error>(fabric)
    };
    let doubted = found.doubted().is_some();
    let stored = args.fabric.as_ref().filter(|_| !doubted).map(store).transpose()?;
    let unit = args.advice.show.units.unwrap_or_default();
    if args.advice.show.json {
        writeln!(screen.out, "{}", wash_json::render(&found, stored.map(|fabric| fabric.tag), unit))?;
    } else {
        let stored = stored.as_ref().map(Named::from);
        let text = wash_text::render(&found, stored.as_ref(), args.advice.why, unit, screen.width);
        write!(screen.out, "{text}")?;
    }
    Ok(if doubted { exit_code(Some(Answer::Close)) } else { 0 })
}
