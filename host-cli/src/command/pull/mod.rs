//! `tenter pull`: a pull test stored with a cloth.

mod guided;
mod unfinished;

use tenter_core::Answer;

use super::check::exit_code;
use crate::cli::pull::PullArgs;
use crate::deed::Refused;
use crate::deed::pull::{self as deed, Typed};
use crate::error::Error;
use crate::finding::pull::Pulled;
use crate::input::{CheckInput, Doubted};
use crate::json::doubt as doubt_json;
use crate::json::pull as pull_json;
use crate::log::{Entry, Fabric, Id};
use crate::store::{Change as _, LogWithDrafts, Store, WhichTests};
use crate::text::TextOutput;
use crate::text::doubt as doubt_text;
use crate::text::pull as report;
use crate::words::pull as words;

/// Runs the verb; by all tests of the grain 0 measured or meets, 1 short or over, 3 close, unknown, in disagreement or
/// broken off.
///
/// # Errors
///
/// What was typed wrong, or a log that cannot be read or written.
pub fn run(args: &PullArgs, store: &mut dyn LogWithDrafts, screen: &mut TextOutput<'_>) -> Result<u8, Error> {
    if let Some(text) = &args.retire {
        return set_retired(args, text, true, store, screen);
    }
    if let Some(text) = &args.return_test {
        return set_retired(args, text, false, store, screen);
    }
    if let [test, grain] = args.regrain.as_slice() {
        return regrain(args, (test, grain), store, screen);
    }
    if args.test.has_lengths() { direct(args, store, screen) } else { guided::run(args, store, screen) }
}

/// Tests whose readings were all typed: all of them are stored, or none.
fn direct(args: &PullArgs, store: &mut dyn Store, screen: &mut TextOutput<'_>) -> Result<u8, Error> {
    let typed = core::iter::once(args.into()).chain(args.further());
    let typed = typed.map(|typed| deed::typed(&typed, screen.here)).collect::<Result<_, _>>()?;
    store_all(&args.cloth(), typed, args.show.json, store, screen)
}

/// Stores tests of a cloth, all or none, and reports each.
pub(super) fn store_all(
    cloth: &str,
    mut typed: Vec<Typed>,
    json: bool,
    store: &mut dyn Store,
    screen: &mut TextOutput<'_>,
) -> Result<u8, Error> {
    let changed = store.change(|read| {
        let (mut facts, mut fabric) = (Vec::new(), None);
        for test in &mut typed {
            let (stored, of) = deed::store(read, cloth, test)?;
            facts.extend(stored);
            fabric = Some(of);
        }
        Ok((facts, fabric))
    });
    let (entries, fabric) = match changed {
        Err(Refused::Doubted(doubted)) => return doubtful(&doubted, json, screen),
        changed => changed?,
    };
    let mut worst = 0;
    let several = typed.len() > 1;
    for (index, (Entry { id, .. }, test)) in entries.iter().zip(typed).enumerate() {
        let Some(fabric) = &fabric else { break };
        if index > 0 && !json {
            writeln!(screen.out)?;
        }
        if several && !json {
            writeln!(screen.out, "  {}", test.input.test.grain().word())?;
        }
        worst = worse(worst, stored(fabric, *id, test.input, json, store, screen)?);
    }
    Ok(worst)
}

/// The code that says more of two: short or over, then unclear, then meets.
const fn worse(one: u8, other: u8) -> u8 {
    match (one, other) {
        (1, _) | (_, 1) => 1,
        (3, _) | (_, 3) => 3,
        _ => 0,
    }
}

/// Says why a test was not stored; 3, since it should be read again.
pub(super) fn doubtful(doubted: &Doubted, json: bool, screen: &mut TextOutput<'_>) -> Result<u8, Error> {
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
    screen: &mut TextOutput<'_>,
) -> Result<u8, Error> {
    let tests = store.tests(WhichTests::Of(fabric.id))?;
    input.stored = true;
    let pooled = store.repeatability()?;
    let Some(pulled) = Pulled::of(fabric, id, input, &tests, &pooled, screen.here)? else { return Ok(0) };
    if json {
        writeln!(screen.out, "{}", pull_json::render(&pulled))?;
    } else {
        write!(screen.out, "{}", report::render(&pulled, screen.width, screen.unicode, screen.here))?;
    }
    Ok(exit_code(pulled.answer()))
}

/// Takes a stored test out of account, or back.
fn set_retired(
    args: &PullArgs,
    text: &str,
    retire: bool,
    store: &mut dyn Store,
    screen: &mut TextOutput<'_>,
) -> Result<u8, Error> {
    let note = args.note.as_deref().unwrap_or_default();
    let (_, (Fabric { tag, .. }, test)) =
        store.change(|read| deed::set_retired(read, &args.cloth(), text, retire, note))?;
    let about = words::line_about(&test, screen.here);
    screen.say(&match retire {
        true => {
            format!("retired  {about}; it stays in the history: tenter pull {tag} --return {}", test.id.short())
        }
        false => format!("back  {about}"),
    })?;
    Ok(0)
}

/// Puts right the grain of a stored test.
fn regrain(
    args: &PullArgs,
    (test, grain): (&str, &str),
    store: &mut dyn Store,
    screen: &mut TextOutput<'_>,
) -> Result<u8, Error> {
    let (_, (Fabric { tag, .. }, test)) = store.change(|read| deed::regrain(read, &args.fabric, test, grain))?;
    screen.say(&format!("put right  {}; see tenter cloth show {tag}", words::line_about(&test, screen.here)))?;
    Ok(0)
}
