//! `tenter cloth`: the fabrics at home and those seen in shops.

use std::collections::BTreeMap;

use tenter_core::{Confidence, Length};

use super::find;
use super::shown::{Known, Rules};
use crate::cli::cloth::AddArgs;
use crate::cli::cloth::ClothVerb;
use crate::cli::cloth::CutArgs;
use crate::cli::cloth::EditArgs;
use crate::cli::cloth::ListArgs;
use crate::cli::cloth::RetireArgs;
use crate::cli::cloth::ReturnArgs;
use crate::cli::cloth::ShowFabricArgs;
use crate::error::Error;
use crate::finding::cloth::{self as finding, Listed};
use crate::input::{self, fabric as typed};
use crate::json::cloth as stash_json;
use crate::log::{Fabric, Fact, Id, StoredTest};
use crate::store::{Read, Store, Which};
use crate::text::Screen;
use crate::text::cloth as report;
use crate::words::bidi::isolated;
use crate::words::cloth as words;
use crate::words::quantity;

/// Runs the verb.
///
/// # Errors
///
/// What was typed wrong, or a log that cannot be read or written; here and below.
pub fn run(verb: &ClothVerb, store: &mut dyn Store, screen: &mut Screen<'_>) -> Result<u8, Error> {
    match verb {
        ClothVerb::Add(args) => add(args, store, screen),
        ClothVerb::List(args) => list(args, store, screen),
        ClothVerb::Show(args) => show(args, store, screen),
        ClothVerb::Edit(args) => edit(args, store, screen),
        ClothVerb::Cut(args) => cut(args, store, screen),
        ClothVerb::Retire(args) => retire(args, store, screen),
        ClothVerb::Return(args) => restore(args, store, screen),
    }?;
    Ok(0)
}

fn add(args: &AddArgs, store: &mut dyn Store, screen: &mut Screen<'_>) -> Result<(), Error> {
    let said = typed::added(args)?;
    let entries = store.change(&mut |read| {
        let mut change = said.clone();
        match change.tag {
            Some(tag) => free(read, tag, None)?,
            None => change.tag = Some(next_tag(read)?),
        }
        Ok(vec![Fact::FabricAdded(change)])
    })?;
    let id = entries.first().map(|entry| entry.id);
    report_change(store, id, &args.show, "added", screen)
}

/// The lowest number above all tags so far; where those have run out, the lowest that is free.
fn next_tag(read: &dyn Read) -> Result<u16, Error> {
    let tags: Vec<u16> = read.fabrics()?.iter().map(|fabric| fabric.tag).collect();
    let highest = tags.iter().copied().max().unwrap_or(0);
    let next = highest.checked_add(1).or_else(|| (1..u16::MAX).find(|tag| !tags.contains(tag)));
    next.ok_or_else(|| Error::Usage("all 65535 tags are in use; take one of a retired fabric with --tag".to_owned()))
}

/// Refuses a tag that another live fabric wears.
fn free(read: &dyn Read, tag: u16, but: Option<Id>) -> Result<(), Error> {
    let worn = read.fabrics_tagged(tag)?;
    match worn.iter().find(|fabric| !fabric.dropped && Some(fabric.id) != but) {
        Some(fabric) => Err(Error::argument(
            "--tag",
            &tag.to_string(),
            format!("'{}' wears it; {} is free", crate::error::one_line(&fabric.name), next_tag(read)?),
        )),
        None => Ok(()),
    }
}

fn edit(args: &EditArgs, store: &mut dyn Store, screen: &mut Screen<'_>) -> Result<(), Error> {
    let entries = store.change(&mut |read| {
        let fabric = find::live_fabric(read, &args.fabric)?;
        let change = typed::edited(args, &fabric)?;
        if let Some(tag) = change.tag {
            free(read, tag, Some(fabric.id))?;
        }
        Ok(vec![Fact::FabricChanged { fabric: fabric.id, change }])
    })?;
    report_change(store, entries.first().map(|entry| entry.subject().id()), &args.show, "changed", screen)
}

fn cut(args: &CutArgs, store: &mut dyn Store, screen: &mut Screen<'_>) -> Result<(), Error> {
    let length = typed::cloth("LENGTH", &args.length)?;
    if length == Length::ZERO {
        return Err(Error::argument("LENGTH", &args.length, "type the length that was cut off, such as 80cm"));
    }
    let note = typed::short("--note", &args.note)?;
    let entries = store.change(&mut |read| {
        let fabric = find::live_fabric(read, &args.fabric)?;
        let tag = fabric.tag;
        let Some(had) = fabric.length else {
            return Err(Error::Usage(format!(
                "how long fabric {tag} was is not known; say so first: tenter cloth edit {tag} --length 2m"
            )));
        };
        if fabric.is_seen() {
            return Err(Error::Usage(format!(
                "fabric {tag} lies in a shop; once bought say tenter cloth edit {tag} --bought 2m"
            )));
        }
        if length > had {
            let had = quantity::cloth(had, input::unit_of(&args.length).unwrap_or_default());
            return Err(Error::argument(
                "LENGTH",
                &args.length,
                format!("only {had} is on hand; type that or less, or count anew: tenter cloth edit {tag} --length"),
            ));
        }
        Ok(vec![Fact::FabricCut { fabric: fabric.id, length, note: note.clone() }])
    })?;
    report_change(store, entries.first().map(|entry| entry.subject().id()), &args.show, "cut", screen)
}

fn retire(args: &RetireArgs, store: &mut dyn Store, screen: &mut Screen<'_>) -> Result<(), Error> {
    let note = typed::short("--note", &args.note)?;
    let mut dropped = None;
    store.change(&mut |read| {
        let fabric = find::live_fabric(read, &args.fabric)?;
        let fact = Fact::FabricDropped { fabric: fabric.id, note: note.clone() };
        dropped = Some(fabric);
        Ok(vec![fact])
    })?;
    if let Some(Fabric { tag, name, .. }) = dropped {
        let name = isolated(&name);
        screen.say(&format!("retired  {tag}  {name}; its tests and history stay: tenter cloth return {tag}"))?;
    }
    Ok(())
}

fn restore(args: &ReturnArgs, store: &mut dyn Store, screen: &mut Screen<'_>) -> Result<(), Error> {
    let mut restored = None;
    store.change(&mut |read| {
        let fabric = find::fabric(read, &args.fabric)?;
        if !fabric.dropped {
            return Err(Error::Usage(format!("fabric {} is there; nothing to bring back", fabric.tag)));
        }
        free(read, fabric.tag, Some(fabric.id))?;
        let fact = Fact::FabricRestored { fabric: fabric.id };
        restored = Some(fabric);
        Ok(vec![fact])
    })?;
    if let Some(Fabric { tag, name, .. }) = restored {
        screen.say(&format!("back  {tag}  {}", isolated(&name)))?;
    }
    Ok(())
}

fn report_change(
    store: &dyn Store,
    id: Option<Id>,
    show: &crate::cli::reading::ShowArgs,
    what: &str,
    screen: &mut Screen<'_>,
) -> Result<(), Error> {
    let Some(fabric) = id.map(|id| store.fabric(id)).transpose()?.flatten() else { return Ok(()) };
    let unit = show.units.map(input::unit).unwrap_or_default();
    if show.json {
        writeln!(screen.out, "{}", stash_json::fabric(&fabric))?;
    } else {
        screen.say(&format!("{what}  {}", words::line_about(&fabric, unit)))?;
    }
    Ok(())
}

fn list(args: &ListArgs, store: &dyn Store, screen: &mut Screen<'_>) -> Result<(), Error> {
    let unit = args.show.units.map(input::unit).unwrap_or_default();
    let grain = input::grain(args.grain);
    let stretch = input::range("--stretch", args.stretch.as_deref(), unit)?;
    let at_least = args.at_least.as_deref().map(|text| typed::cloth("--at-least", text)).transpose()?;
    let words: Vec<String> = args.words.iter().map(|word| word.to_lowercase()).collect();
    let (mut tests, hands) = (newest(store)?, store.hands()?);
    let wanted = |fabric: &Fabric| {
        let text =
            [&fabric.name, &fabric.fibre, &fabric.place, &fabric.note].map(|text| text.to_lowercase()).join("\n");
        fabric.dropped == args.retired
            && args.construction.is_none_or(|arg| fabric.construction == typed::construction(arg))
            && (!args.owned || !fabric.is_seen())
            && (!args.seen || fabric.is_seen())
            && at_least.is_none_or(|least| fabric.length.is_some_and(|length| length >= least))
            && words.iter().all(|word| text.contains(word.as_str()))
    };
    let fabrics = store.fabrics()?;
    let all = fabrics.iter().filter(|fabric| fabric.dropped == args.retired).count();
    let mut listed = Vec::new();
    for fabric in fabrics.into_iter().filter(wanted) {
        let tests = tests.remove(&fabric.id).unwrap_or_default();
        let seen = finding::stretch(&fabric, &tests, grain, &hands).map(|seen| seen.ratio);
        let fits = stretch.at_least.is_none_or(|limit| seen.is_some_and(|seen| seen >= limit.ratio()))
            && stretch.at_most.is_none_or(|limit| seen.is_some_and(|seen| seen <= limit.ratio()));
        if fits {
            listed.push(Listed::of(fabric, &tests, &hands));
        }
    }
    if args.show.json {
        writeln!(screen.out, "{}", stash_json::list(&listed))?;
    } else {
        let confidence = Confidence::default();
        write!(screen.out, "{}", report::list(&listed, all, args.retired, confidence, unit, screen.width))?;
    }
    Ok(())
}

/// The tests that count, by fabric.
fn newest(read: &dyn Read) -> Result<BTreeMap<Id, Vec<StoredTest>>, Error> {
    let mut tests: BTreeMap<Id, Vec<StoredTest>> = BTreeMap::new();
    read.each_test(Which::Newest, &mut |test| {
        if let Some(fabric) = test.said.fabric {
            tests.entry(fabric).or_default().push(test);
        }
        Ok(())
    })?;
    Ok(tests)
}

fn show(args: &ShowFabricArgs, store: &dyn Store, screen: &mut Screen<'_>) -> Result<(), Error> {
    let unit = args.show.units.map(input::unit).unwrap_or_default();
    let table = input::table(&args.table.table)?;
    let confidence = input::confidence(&args.confidence.confidence)?;
    let fabric = find::fabric(store, &args.fabric)?;
    let known = Known::of(store, fabric)?;
    let shown = known.shown(store.hands()?, Rules { confidence, table, unit });
    if args.show.json {
        writeln!(screen.out, "{}", stash_json::shown(&shown))?;
    } else {
        write!(screen.out, "{}", report::shown(&shown, screen.width, screen.unicode))?;
    }
    Ok(())
}
