//! `tenter pull`: a pull test stored with a cloth.

mod guided;
mod unfinished;

use tenter_core::Answer;

use super::check::exit_code;
use crate::cli::pull::PullArgs;
use crate::deed::pull::{self as deed, Typed};
use crate::deed::{Refused, people};
use crate::error::Error;
use crate::finding::pull::Pulled;
use crate::input::{CheckInput, Doubted};
use crate::json::doubt as doubt_json;
use crate::json::pull as pull_json;
use crate::log::{Entry, Fabric, Fact, Id};
use crate::plain::isolated;
use crate::store::{Change as _, LogWithDrafts, Read, Store, WhichTests};
use crate::text::TextOutput;
use crate::text::doubt as doubt_text;
use crate::text::pull as report;
use crate::words::done;
use crate::words::people as people_words;
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
    if let [test, name] = args.whose.as_slice() {
        return give(args, (test, name), store, screen);
    }
    if args.test.has_lengths() { direct(args, store, screen) } else { guided::run(args, store, screen) }
}

/// Tests whose readings were all typed: all of them are stored, or none.
fn direct(args: &PullArgs, log: &mut dyn LogWithDrafts, screen: &mut TextOutput<'_>) -> Result<u8, Error> {
    let typed = core::iter::once(args.into()).chain(args.further());
    let typed = typed.map(|typed| deed::typed(&typed, screen.here)).collect::<Result<_, _>>()?;
    let code = store_all(&args.cloth(), typed, args.show.json, log, screen)?;
    remember(args, log, screen)?;
    Ok(code)
}

/// Remembers the first person who was named at this desk.
fn remember(args: &PullArgs, log: &mut dyn LogWithDrafts, screen: &mut TextOutput<'_>) -> Result<(), Error> {
    let Some(name) = args.by.by.as_deref() else { return Ok(()) };
    let who = people::puller(log, Some(name))?;
    // A test that was doubted was not stored, and names nobody.
    let Some(desk) = people::remembering(&log.desk()?, who.id).filter(|_| who.facts.is_empty()) else { return Ok(()) };
    // The test is stored: whoever cannot be remembered now is the next time.
    if log.set_desk(&desk).is_ok() && !args.show.json {
        screen.say(&people_words::here(&who.name))?;
    }
    Ok(())
}

/// Stores tests of a cloth, all or none, and reports each.
pub(super) fn store_all(
    cloth: &str,
    mut typed: Vec<Typed>,
    json: bool,
    store: &mut (impl Store + ?Sized),
    screen: &mut TextOutput<'_>,
) -> Result<u8, Error> {
    let (entries, (fabric, _)) = match store.change(|read| deed::store(read, cloth, &mut typed)) {
        Err(Refused::Doubted(doubted)) => return doubtful(&doubted, json, screen),
        changed => changed?,
    };
    let mut worst = 0;
    let several = typed.len() > 1;
    let tests = entries.iter().filter(|entry| matches!(entry.fact, Fact::TestStored(_)));
    for (index, (Entry { id, .. }, test)) in tests.zip(typed).enumerate() {
        if index > 0 && !json {
            writeln!(screen.out)?;
        }
        if several && !json {
            writeln!(screen.out, "  {}", test.input.test.grain().word())?;
        }
        worst = worse(worst, stored(&fabric, *id, test.input, json, store, screen)?);
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
    store: &(impl Read + ?Sized),
    screen: &mut TextOutput<'_>,
) -> Result<u8, Error> {
    let tests = store.tests(WhichTests::Of(fabric.id))?;
    input.stored = true;
    let (hands, people) = (store.repeatability()?, store.people()?);
    let Some(pulled) = Pulled::of(fabric, id, input, &tests, (&hands, &people), screen.here)? else { return Ok(0) };
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
        true => done::retired_test(&about, tag, &test.id.short()),
        false => done::returned_test(&about),
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
    screen.say(&done::corrected_test(&words::line_about(&test, screen.here), tag))?;
    Ok(0)
}

/// Puts right who pulled a stored test.
fn give(
    args: &PullArgs,
    (test, name): (&str, &str),
    store: &mut dyn Store,
    screen: &mut TextOutput<'_>,
) -> Result<u8, Error> {
    let (_, (Fabric { tag, .. }, test)) = store.change(|read| deed::give(read, &args.cloth(), test, name))?;
    let about = words::line_about(&test, screen.here);
    screen.say(&people_words::given(&isolated(name.trim()), &about, tag))?;
    Ok(0)
}
