//! A pull test asked step by step, which outlasts a closed window.

use super::stored;
use crate::cli::pull::PullArgs;
use crate::deed::pull::{Made, store_once};
use crate::deed::{Refused, find};
use crate::error::Error;
use crate::guide::terminal::{Ended, Terminal};
use crate::guide::{Draft, Guide, begin};
use crate::input;
use crate::log::{Fabric, Here, Ids};
use crate::store::{Drafts, Log};
use crate::text::Screen;
use crate::words::cloth as stash;
use crate::words::quantity;

/// Not measured yet.
const LEFT: u8 = 3;

/// Runs a guided test, or forgets one that was broken off.
///
/// # Errors
///
/// What was typed wrong, or a log that cannot be read or written.
pub fn run(args: &PullArgs, store: &mut dyn Log, screen: &mut Screen<'_>) -> Result<u8, Error> {
    let fabric = find::live_fabric(store, &args.fabric)?;
    let name = format!("pull/{}", fabric.id);
    if args.discard {
        return forget(&fabric, &name, store, screen);
    }
    let terminal = Terminal::new(screen.here);
    let Some(draft) = choose(args, &fabric, &name, (store, screen.here), &terminal)? else { return Ok(0) };
    let construction = fabric.construction;
    let guide = Guide { draft, construction, table: input::table(&args.table.table)?, doubted: None };
    terminal.say(&format!("{}: {}", stash::line_about(&fabric, guide.draft.unit), guide.draft.grain.word()))?;
    terminal.say(Guide::GREETING)?;
    let (guide, ended) =
        terminal.run(guide, &mut |draft| Ok::<_, Error>(store.set_draft(&name, Some(&draft.text()))?))?;
    terminal.say("")?;
    if ended == Ended::Finished {
        let input = begin::finished(&args.into(), &guide.draft)?;
        let Draft { id, pulled, note, .. } = &guide.draft;
        let id = store_once(store, &fabric, Made { id: *id, pulled: *pulled, note, input: &input })?;
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
    (store, here): (&mut dyn Log, Here),
    terminal: &Terminal,
) -> Result<Option<Draft>, Error> {
    let tag = fabric.tag;
    let anew = || Ok(Some(begin::begun(&args.into(), Ids::after(here, Some(fabric.id)).next(), here)?));
    let kept = match store.draft(name)?.map(|text| Draft::read(&text)) {
        // Killed after it was stored and before it was forgotten.
        Some(Some(draft)) if store.test(draft.id)?.is_some() => {
            store.set_draft(name, None)?;
            None
        }
        Some(None) => return Err(Refused::DamagedDraft(tag).into()),
        kept => kept.flatten(),
    };
    let Some(mut kept) = kept else {
        if args.resume {
            return Err(Refused::NoDraft { tag, forget: false }.into());
        }
        return anew();
    };
    begin::said_again(&args.into(), &mut kept, here)?;
    terminal.say(&kept.so_far(&quantity::minute(kept.id.at(), here)))?;
    if args.resume {
        return Ok(Some(kept));
    }
    loop {
        let Some(answer) = terminal.ask("r resume, n start over, d discard it (1 2 3) [resume]: ")? else {
            return Ok(None);
        };
        match answer.trim().to_lowercase().as_str() {
            "" | "r" | "1" => return Ok(Some(kept)),
            "n" | "2" => return anew(),
            "d" | "3" => {
                store.set_draft(name, None)?;
                terminal.say("discarded; stored tests stay")?;
                return Ok(None);
            }
            _ => terminal.reply("type r, n or d")?,
        }
    }
}

fn forget(fabric: &Fabric, name: &str, store: &mut dyn Drafts, screen: &mut Screen<'_>) -> Result<u8, Error> {
    let tag = fabric.tag;
    if store.draft(name)?.is_none() {
        return Err(Refused::NoDraft { tag, forget: true }.into());
    }
    store.set_draft(name, None)?;
    screen.say(&format!("forgotten: the unfinished test of cloth {tag}; stored tests stay"))?;
    Ok(0)
}
