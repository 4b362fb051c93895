//! `tenter pull`: a pull test stored with a fabric.

mod guided;

use super::check::exit_code;
use super::find;
use crate::cli::pull::PullArgs;
use crate::error::Error;
use crate::finding::pull::Pulled;
use crate::input::{self, CheckInput, fabric::short, when};
use crate::json::pull as pull_json;
use crate::log::{Entry, Fabric, Fact, Id, Ids, StoredTest, Tested};
use crate::store::{Store, Which};
use crate::text::Screen;
use crate::text::pull as report;
use crate::words::pull as words;

/// Runs the verb; 0 measured or meets, 1 short or over, 3 close, unknown or broken off.
///
/// # Errors
///
/// What was typed wrong, or a log that cannot be read or written; here and below.
pub fn run(args: &PullArgs, store: &mut dyn Store, screen: &mut Screen<'_>) -> Result<u8, Error> {
    if let Some(text) = &args.retire {
        return set_retired(args, text, true, store, screen);
    }
    if let Some(text) = &args.return_test {
        return set_retired(args, text, false, store, screen);
    }
    let typed = args.test.flags.marks.is_some() || !args.test.readings.is_empty();
    if typed { direct(args, store, screen) } else { guided::run(args, store, screen) }
}

/// A test whose readings were all typed.
fn direct(args: &PullArgs, store: &mut dyn Store, screen: &mut Screen<'_>) -> Result<u8, Error> {
    let now = Ids::now();
    let input = input::pull(args)?;
    let pulled = args.at.as_deref().map_or(Ok(now), |text| when::past("--at", text, now))?;
    let note = short("--note", args.note.as_deref().unwrap_or_default())?;
    let mut meant = None;
    let entries = store.change(&mut |read| {
        let fabric = find::live_fabric(read, &args.fabric)?;
        let tested = tested(fabric.id, pulled, note.clone(), &input);
        meant = Some(fabric);
        Ok(vec![Fact::TestStored(tested)])
    })?;
    match (meant, entries.first()) {
        (Some(fabric), Some(Entry { id, .. })) => stored(&fabric, *id, input, args.show.json, store, screen),
        _ => Ok(0),
    }
}

fn tested(fabric: Id, pulled: jiff::Timestamp, note: String, input: &CheckInput) -> Tested {
    let test = input.test.clone();
    Tested { fabric: Some(fabric), tag: None, pulled, clock_unset: false, device: None, note, test }
}

/// Reports a test that is in the log.
fn stored(
    fabric: &Fabric,
    id: Id,
    input: CheckInput,
    json: bool,
    store: &dyn Store,
    screen: &mut Screen<'_>,
) -> Result<u8, Error> {
    let tests = store.tests(Which::Of(fabric.id))?;
    let no_pull = |reason| Error::reading("--to", "", reason);
    let pulled = Pulled::of(fabric, id, input, &tests, &store.hands()?).map_err(no_pull)?;
    let Some(pulled) = pulled else { return Ok(0) };
    if json {
        writeln!(screen.out, "{}", pull_json::render(&pulled))?;
    } else {
        write!(screen.out, "{}", report::render(&pulled, screen.width, screen.unicode))?;
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
    let note = short("--note", args.note.as_deref().unwrap_or_default())?;
    let mut done: Option<(Fabric, StoredTest)> = None;
    store.change(&mut |read| {
        let fabric = find::fabric(read, &args.fabric)?;
        let flag = if retire { "--retire" } else { "--return" };
        let test = find::test_of(read, &fabric, flag, text)?;
        if test.dropped == retire {
            let remedy = if retire { "it is retired already" } else { "it counts; nothing to bring back" };
            return Err(Error::argument(flag, text, remedy));
        }
        let fact = match retire {
            true => Fact::TestDropped { test: test.id, note: note.clone() },
            false => Fact::TestRestored { test: test.id },
        };
        done = Some((fabric, test));
        Ok(vec![fact])
    })?;
    let Some((Fabric { tag, .. }, test)) = done else { return Ok(0) };
    let about = words::line_about(&test);
    screen.say(&match retire {
        true => {
            format!("retired  {about}; it stays in the history: tenter pull {tag} --return {}", test.id.short())
        }
        false => format!("back  {about}"),
    })?;
    Ok(0)
}
