//! A pull test asked step by step, which outlasts a closed window.

use super::{remember, stored, unfinished};
use crate::cli::pull::PullArgs;
use crate::deed::pull::{NewTest, store_once};
use crate::deed::{Refused, find, people};
use crate::error::Error;
use crate::guide::terminal::{Ended, Terminal};
use crate::guide::{Draft, Guide, begin};
use crate::input::{self, ClothFacts, Doubted};
use crate::store::{Change as _, LogWithDrafts};
use crate::text::TextOutput;
use crate::words::cloth as stash;
use crate::words::done;

/// Not measured yet.
const LEFT: u8 = 3;

/// Runs a guided test, or forgets one that was broken off.
///
/// # Errors
///
/// What was typed wrong, or a log that cannot be read or written.
pub fn run(args: &PullArgs, store: &mut dyn LogWithDrafts, screen: &mut TextOutput<'_>) -> Result<u8, Error> {
    let fabric = find::live_fabric(store, &args.cloth())?;
    if args.discard {
        return unfinished::forget(&fabric, store, screen);
    }
    let terminal = Terminal::new(screen.here);
    let Some((name, draft)) = unfinished::choose(args, &fabric, (store, screen.here), &terminal)? else {
        return Ok(0);
    };
    let construction = fabric.construction;
    let guide = Guide { draft, construction, table: input::table(&args.table.table)?, doubted: None };
    terminal.say(&format!("{}: {}", stash::line_about(&fabric, guide.draft.unit), guide.draft.grain.word()))?;
    terminal.say(Guide::GREETING)?;
    let (guide, ended) =
        terminal.run(guide, &mut |draft| Ok::<_, Error>(store.set_draft(&name, Some(&draft.text()))?))?;
    terminal.say("")?;
    if ended == Ended::Finished {
        let mut input = begin::finished(&args.into(), &guide.draft)?;
        // What was doubted was asked a second time, and meant.
        let known = ClothFacts { construction: Some(construction), width: None };
        input.stood_by = Doubted::of(&input.test, known, false, input.unit).map(|one| one.words()).unwrap_or_default();
        let Draft { id, pulled, note, by, .. } = &guide.draft;
        let (_, by) = store.change(|read| {
            let mut who = people::puller(read, by.as_deref())?;
            Ok::<_, Refused>((core::mem::take(&mut who.facts), who.id))
        })?;
        let made = NewTest { id: *id, pulled: *pulled, by, note, input: &input };
        let id = store_once(store, Some(&fabric), made, &name)?;
        let code = stored(&fabric, id, input, args.show.json, store, screen)?;
        remember(args, store, screen)?;
        return Ok(code);
    }
    if guide.draft.readings() == 0 {
        store.set_draft(&name, None)?;
        terminal.say(done::NOTHING_MEASURED)?;
    } else {
        terminal.say(&done::kept(fabric.tag))?;
    }
    Ok(LEFT)
}
