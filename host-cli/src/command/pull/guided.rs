//! A pull test asked step by step, which outlasts a closed window.

use super::{stored, tested};
use crate::cli::pull::PullArgs;
use crate::command::find;
use crate::error::Error;
use crate::guide::terminal::{Ended, Terminal};
use crate::guide::{Draft, Guide};
use crate::input::{self, CheckInput, guided as typed};
use crate::log::{Entry, Fabric, Fact, Id, Ids};
use crate::store::Store;
use crate::text::Screen;
use crate::words::cloth as stash;
use crate::words::quantity;

/// Not measured yet.
const LEFT: u8 = 3;

/// Runs a guided test, or forgets one that was broken off.
///
/// # Errors
///
/// What was typed wrong, or a log that cannot be read or written; here and below.
pub fn run(args: &PullArgs, store: &mut dyn Store, screen: &mut Screen<'_>) -> Result<u8, Error> {
    let fabric = find::live_fabric(store, &args.fabric)?;
    let name = format!("pull/{}", fabric.id);
    if args.discard {
        return forget(&fabric, &name, store, screen);
    }
    let terminal = Terminal::new();
    let Some(draft) = choose(args, &fabric, &name, store, &terminal)? else { return Ok(0) };
    let construction = fabric.construction;
    let guide = Guide { draft, construction, table: input::table(&args.table.table)? };
    terminal.say(&format!("{}: {}", stash::line_about(&fabric, guide.draft.unit), guide.draft.grain.word()))?;
    terminal.say(Guide::GREETING)?;
    let (guide, ended) = terminal.run(guide, &mut |draft| store.set_draft(&name, Some(&draft.text())))?;
    terminal.say("")?;
    if ended == Ended::Finished {
        let input = typed::finished(args, &guide.draft)?;
        let id = store_once(&fabric, &guide.draft, &input, store)?;
        store.set_draft(&name, None)?;
        return stored(&fabric, id, input, args.show.json, store, screen);
    }
    if guide.draft.readings() == 0 {
        store.set_draft(&name, None)?;
        terminal.say("nothing was measured")?;
    } else {
        terminal.say(&format!("kept; go on with tenter pull {} --resume", fabric.tag))?;
    }
    Ok(LEFT)
}

/// The draft to work on: a new one, or one that was broken off; none where that was dropped.
fn choose(
    args: &PullArgs,
    fabric: &Fabric,
    name: &str,
    store: &mut dyn Store,
    terminal: &Terminal,
) -> Result<Option<Draft>, Error> {
    let now = Ids::now();
    let tag = fabric.tag;
    let anew = || typed::begun(args, Ids::after(Some(fabric.id)).next(), now).map(Some);
    let kept = match store.draft(name)?.map(|text| Draft::read(&text)) {
        // Killed after it was stored and before it was forgotten.
        Some(Some(draft)) if store.test(draft.id)?.is_some() => {
            store.set_draft(name, None)?;
            None
        }
        Some(None) => {
            let words = format!("the test of fabric {tag} that was broken off cannot be read; say --discard first");
            return Err(Error::Usage(words));
        }
        kept => kept.flatten(),
    };
    let Some(mut kept) = kept else {
        if args.resume {
            let words = format!("fabric {tag} has no test that was broken off; begin with tenter pull {tag}");
            return Err(Error::Usage(words));
        }
        return anew();
    };
    typed::said_again(args, &mut kept, now)?;
    terminal.say(&kept.so_far(&quantity::minute(kept.id.at())))?;
    if args.resume {
        return Ok(Some(kept));
    }
    loop {
        let Some(answer) = terminal.ask("r resume, n begin anew, d drop it (1 2 3) [resume]: ")? else {
            return Ok(None);
        };
        match answer.trim().to_lowercase().as_str() {
            "" | "r" | "1" => return Ok(Some(kept)),
            "n" | "2" => return anew(),
            "d" | "3" => {
                store.set_draft(name, None)?;
                terminal.say("dropped; stored tests stay")?;
                return Ok(None);
            }
            _ => terminal.reply("type r, n or d")?,
        }
    }
}

fn forget(fabric: &Fabric, name: &str, store: &mut dyn Store, screen: &mut Screen<'_>) -> Result<u8, Error> {
    let tag = fabric.tag;
    if store.draft(name)?.is_none() {
        return Err(Error::Usage(format!("fabric {tag} has no test that was broken off; nothing to forget")));
    }
    store.set_draft(name, None)?;
    screen.say(&format!("forgotten: the test of fabric {tag} that was broken off; stored tests stay"))?;
    Ok(0)
}

/// Stores a test under the identifier fixed in its draft, so that the same draft is never stored twice.
fn store_once(fabric: &Fabric, draft: &Draft, input: &CheckInput, store: &mut dyn Store) -> Result<Id, Error> {
    let fact = Fact::TestStored(tested(fabric.id, draft.pulled, draft.note.clone(), input));
    let merged = store.merge(&mut core::iter::once(Ok(Entry::new(draft.id, fact.clone()))))?;
    let same = |id| Ok::<_, Error>(store.test(id)?.is_some_and(|test| test.said.test == input.test));
    if merged.new == 1 || same(draft.id)? {
        return Ok(draft.id);
    }
    // Two windows went on with one draft, and the other was quicker: these are other readings.
    let entries = store.change(&mut |_| Ok(vec![fact.clone()]))?;
    Ok(entries.first().map_or(draft.id, |entry| entry.id))
}
