//! `tenter wash`: marks before and after a wash.

use tenter_core::making::washing::Washing;
use tenter_core::{Answer, Grain, Unit};

use super::check::exit_code;
use super::find;
use crate::cli::making::WashArgs;
use crate::deed::wash::{self as deed, TypedWash};
use crate::error::Error;
use crate::finding::fit::known;
use crate::finding::wash::Washed;
use crate::input::{self, Field, Why, Wrong};
use crate::json::cloth as stash_json;
use crate::json::wash as wash_json;
use crate::log::Subject;
use crate::store::{Change as _, Store};
use crate::text::TextOutput;
use crate::text::wash as wash_text;
use crate::words::washing as words;

/// Runs the verb; 0, or 3 where the marks should be read again.
///
/// # Errors
///
/// What was typed wrong, or a log that cannot be read or written.
pub fn run(
    args: &WashArgs,
    open: &mut dyn FnMut() -> Result<Box<dyn Store>, Error>,
    screen: &mut TextOutput<'_>,
) -> Result<u8, Error> {
    if let (Some(grain), Some(text)) = (args.undo, &args.fabric) {
        return undo(args, text, grain, open()?.as_mut(), screen);
    }
    let confidence = input::confidence(&args.advice.confidence.confidence)?;
    let typed = TypedWash::from(args);
    let (marks, need) = deed::marks(&typed)?;
    let changes = deed::changes(&typed, &marks)?;
    let mut found = Washed { changes, bought: None, confidence, as_read: args.as_read };
    if let Some(need) = need {
        let text = args.need.as_deref().unwrap_or_default();
        let stands = match (found.along(Grain::Lengthwise), &args.fabric) {
            (Some(along), _) => Washing::Measured(along.change),
            (None, Some(cloth)) => known::at_wash(&find::live_fabric(open()?.as_ref(), cloth)?, Grain::Lengthwise),
            (None, None) => return Err(Wrong::new(Field::Need, text, Why::NeedsShrinkage).into()),
        };
        found
            .buy(need, stands, args.shop.shop_cut)
            .map_err(|error| Wrong::new(Field::Need, text, Why::Making(error)))?;
    }
    let doubted = found.doubted().is_some();
    let store = |text: &String| {
        let (_, fabric) = open()?.change(|read| deed::store(read, text, &marks, &args.note))?;
        Ok::<_, Error>(fabric)
    };
    let stored = args.fabric.as_ref().filter(|_| !doubted && !marks.is_empty()).map(store).transpose()?;
    let unit = unit(args);
    if args.advice.show.json {
        writeln!(screen.out, "{}", wash_json::render(&found, stored.map(|fabric| fabric.tag.number()), unit))?;
    } else {
        let text = wash_text::render(&found, stored.as_ref(), args.advice.why, unit, screen.width);
        write!(screen.out, "{text}")?;
    }
    Ok(if doubted { exit_code(Some(Answer::Close)) } else { 0 })
}

/// The unit of the text: what was asked for, or that of the length needed, or of the marks.
fn unit(args: &WashArgs) -> Unit {
    let typed = [&args.need, &args.lengthwise, &args.crosswise].into_iter().flatten();
    args.advice.show.units.or_else(|| typed.filter_map(|text| input::unit_of(text)).next()).unwrap_or_default()
}

/// Takes back the newest marks.
fn undo(
    args: &WashArgs,
    cloth: &str,
    grain: Option<Grain>,
    store: &mut dyn Store,
    screen: &mut TextOutput<'_>,
) -> Result<u8, Error> {
    let (_, (fabric, back)) = store.change(|read| deed::undo(read, cloth, grain))?;
    let now = store.fabric(fabric.id)?.unwrap_or(fabric);
    if args.advice.show.json {
        writeln!(screen.out, "{}", stash_json::fabric(&now))?;
        return Ok(0);
    }
    for (grain, marks) in back {
        screen.say(&words::taken_back(&now, grain, &marks, unit(args)))?;
    }
    if deed::is_as_washed(&store.history(Subject::Fabric(now.id))?) {
        screen.say(&words::measure_again(&now))?;
    }
    Ok(0)
}
