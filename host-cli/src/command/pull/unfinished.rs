//! Tests that were broken off: gone on with, set aside for a new one, deleted only when that is said in words.

use crate::cli::pull::PullArgs;
use crate::deed::Refused;
use crate::error::Error;
use crate::guide::terminal::Terminal;
use crate::guide::{Draft, begin};
use crate::log::{Fabric, Here, Ids};
use crate::store::LogWithDrafts;
use crate::text::TextOutput;
use crate::words::done;
use crate::words::quantity;
use crate::words::unfinished as words;

/// A draft with the name it is kept under.
type Kept = (String, Draft);

fn name_of(fabric: &Fabric) -> String {
    format!("pull/{}", fabric.id)
}

/// The draft to work on and the name it is kept under: a new one, or one that was broken off; none where that was
/// deleted or nothing was answered.
pub fn choose(
    args: &PullArgs,
    fabric: &Fabric,
    (store, here): (&mut dyn LogWithDrafts, Here),
    terminal: &Terminal,
) -> Result<Option<Kept>, Error> {
    let tag = fabric.tag;
    let mut kept = kept(fabric, store)?;
    let Some((_, newest)) = kept.first_mut() else {
        if args.resume {
            return Err(Refused::NoDraft { tag, forget: false }.into());
        }
        return anew(args, fabric, here).map(Some);
    };
    begin::said_again(&args.into(), newest, here)?;
    let about = |draft: &Draft| draft.so_far(&quantity::minute(draft.id.at(), here));
    for (number, (_, draft)) in (1_usize..).zip(&kept) {
        terminal.say(&words::listed(number, kept.len(), &about(draft)))?;
    }
    if args.resume {
        return Ok(kept.into_iter().next());
    }
    loop {
        let Some(answer) = terminal.ask(words::question(kept.len()))? else { return Ok(None) };
        match words::chosen(&answer, kept.len()) {
            words::DraftChoice::Resume(at) => return Ok(kept.into_iter().nth(at)),
            words::DraftChoice::Anew => {
                let begun = anew(args, fabric, here)?;
                set_aside(fabric, store)?;
                return Ok(Some(begun));
            }
            words::DraftChoice::Discard(at) => {
                if let Some((name, _)) = kept.get(at) {
                    store.set_draft(name, None)?;
                }
                terminal.say(words::DISCARDED)?;
                return Ok(None);
            }
            words::DraftChoice::None(complaint) => terminal.reply(complaint)?,
        }
    }
}

fn anew(args: &PullArgs, fabric: &Fabric, here: Here) -> Result<Kept, Error> {
    let draft = begin::begun(&args.into(), Ids::after(here, Some(fabric.id)).next(), here)?;
    Ok((name_of(fabric), draft))
}

/// Every test of a cloth that was broken off, the newest first.
fn kept(fabric: &Fabric, store: &mut dyn LogWithDrafts) -> Result<Vec<Kept>, Error> {
    let name = name_of(fabric);
    let mut found = Vec::new();
    if let Some(text) = store.draft(&name)? {
        let draft = Draft::read(&text).ok_or(Refused::DamagedDraft(fabric.tag))?;
        found.push((name.clone(), draft));
    }
    let aside = store.drafts_under(&name)?.into_iter();
    found.extend(aside.filter_map(|(name, text)| Some((name, Draft::read(&text)?))));
    let mut kept = Vec::new();
    for (name, draft) in found {
        // Killed after it was stored and before it was forgotten.
        if store.test(draft.id)?.is_some() {
            store.set_draft(&name, None)?;
        } else {
            kept.push((name, draft));
        }
    }
    kept.sort_by_key(|(_, draft)| core::cmp::Reverse(draft.id));
    Ok(kept)
}

/// Keeps the test at hand under a name of its own, so that a new one can be begun.
fn set_aside(fabric: &Fabric, store: &mut dyn LogWithDrafts) -> Result<(), Error> {
    let name = name_of(fabric);
    if let Some(text) = store.draft(&name)?
        && let Some(draft) = Draft::read(&text)
    {
        store.set_draft(&format!("{name}/{}", draft.id), Some(&text))?;
        store.set_draft(&name, None)?;
    }
    Ok(())
}

/// Deletes the test that was broken off, where there is one only.
pub fn forget(fabric: &Fabric, store: &mut dyn LogWithDrafts, screen: &mut TextOutput<'_>) -> Result<u8, Error> {
    let (tag, name) = (fabric.tag, name_of(fabric));
    let mut names: Vec<String> = store.drafts_under(&name)?.into_iter().map(|(name, _)| name).collect();
    names.extend(store.draft(&name)?.map(|_| name));
    match names.as_slice() {
        [] => Err(Refused::NoDraft { tag, forget: true }.into()),
        [only] => {
            store.set_draft(only, None)?;
            screen.say(&done::forgotten(tag))?;
            Ok(0)
        }
        several => Err(Refused::SeveralDrafts { tag, count: several.len() }.into()),
    }
}
