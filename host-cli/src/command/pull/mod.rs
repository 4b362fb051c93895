//! `tenter pull`: a pull test stored with a cloth.

mod guided;

use tenter_core::Answer;

use super::check::exit_code;
use crate::cli::pull::PullArgs;
use crate::deed::Refused;
use crate::deed::pull as deed;
use crate::error::Error;
use crate::finding::pull::Pulled;
use crate::input::{CheckInput, Doubted};
use crate::json::doubt as doubt_json;
use crate::json::pull as pull_json;
use crate::log::{Entry, Fabric, Id};
use crate::store::{Change as _, Log, Store, WhichTests};
use crate::text::Screen;
use crate::text::doubt as doubt_text;
use crate::text::pull as report;
use crate::words::pull as words;

/// Runs the verb; 0 measured or meets, 1 short or over, 3 close, unknown or broken off.
///
/// # Errors
///
/// What was typed wrong, or a log that cannot be read or written.
pub fn run(args: &PullArgs, store: &mut dyn Log, screen: &mut Screen<'_>) -> Result<u8, Error> {
    if let Some(text) = &args.retire {
        return set_retired(args, text, true, store, screen);
    }
    if let Some(text) = &args.return_test {
        return set_retired(args, text, false, store, screen);
    }
    let typed = !args.test.flags.marks.is_empty() || !args.test.readings.is_empty();
    if typed { direct(args, store, screen) } else { guided::run(args, store, screen) }
}

/// A test whose readings were all typed.
fn direct(args: &PullArgs, store: &mut dyn Store, screen: &mut Screen<'_>) -> Result<u8, Error> {
    let mut typed = deed::typed(&args.into(), screen.here)?;
    let changed = store.change(|read| deed::store(read, &args.fabric, &mut typed));
    let (entries, fabric) = match changed {
        Err(Refused::Doubted(doubted)) => return doubtful(&doubted, args.show.json, screen),
        changed => changed?,
    };
    match entries.first() {
        Some(Entry { id, .. }) => stored(&fabric, *id, typed.input, args.show.json, store, screen),
        None => Ok(0),
    }
}

/// Says why a test was not stored; 3, since it should be read again.
fn doubtful(doubted: &Doubted, json: bool, screen: &mut Screen<'_>) -> Result<u8, Error> {
    if json {
        writeln!(screen.out, "{}", doubt_json::not_stored(doubted))?;
    } else {
        write!(screen.out, "{}", doubt_text::not_stored(doubted, screen.width))?;
    }
    Ok(exit_code(Some(Answer::Close)))
}

/// Reports a test that is in the log.
fn stored(
    fabric: &Fabric,
    id: Id,
    mut input: CheckInput,
    json: bool,
    store: &dyn Store,
    screen: &mut Screen<'_>,
) -> Result<u8, Error> {
    let tests = store.tests(WhichTests::Of(fabric.id))?;
    input.stored = true;
    let Some(pulled) = Pulled::of(fabric, id, input, &tests, &store.repeatability()?)? else { return Ok(0) };
    if json {
        writeln!(screen.out, "{}", pull_json::render(&pulled))?;
    } else {
        write!(screen.out, "{}", report::render(&pulled, screen.width, screen.unicode, screen.here))?;
    }
    Ok(exit_code(pulled.checked.evaluation.answer))
}

/// Takes a stored test out of account, or back.
fn set_retired(
    args: &PullArgs,
    text: &str,
    retire: bool,
    store: &mut dyn Store,
    screen: &mut Screen<'_>,
) -> Result<u8, Error> {
    let note = args.note.as_deref().unwrap_or_default();
    let (_, (Fabric { tag, .. }, test)) =
        store.change(|read| deed::set_retired(read, &args.fabric, text, retire, note))?;
    let about = words::line_about(&test, screen.here);
    screen.say(&match retire {
        true => {
            format!("retired  {about}; it stays in the history: tenter pull {tag} --return {}", test.id.short())
        }
        false => format!("back  {about}"),
    })?;
    Ok(0)
}
