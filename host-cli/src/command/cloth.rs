//! `tenter cloth`: the cloths at home and those seen in shops.

use tenter_core::Confidence;

use super::{find, remember};
use crate::cli::cloth::AddClothArgs;
use crate::cli::cloth::ClothVerb;
use crate::cli::cloth::CutArgs;
use crate::cli::cloth::EditClothArgs;
use crate::cli::cloth::ListClothsArgs;
use crate::cli::cloth::RenumberArgs;
use crate::cli::cloth::RetireArgs;
use crate::cli::cloth::ReturnArgs;
use crate::cli::cloth::ShowFabricArgs;
use crate::cli::reading::ShowArgs;
use crate::deed::cloth as deed;
use crate::deed::{people, pull};
use crate::error::Error;
use crate::finding::cloth::Listed;
use crate::finding::fit::{Stock, known};
use crate::finding::shown::{KnownCloth, ShownRules};
use crate::input::cloth::{TypedCloth, construction};
use crate::input::{self, ClothFacts, Field, amount, described};
use crate::json::cloth as stash_json;
use crate::log::json::Mm;
use crate::log::{Entry, Fabric, FabricChange, Fact};
use crate::store::{Change as _, LogPlace, LogWithDrafts, Store};
use crate::text::TextOutput;
use crate::text::cloth as report;
use crate::words::cloth as words;
use crate::words::done;

/// Runs the verb.
///
/// # Errors
///
/// What was typed wrong, or a log that cannot be read or written.
pub fn run(
    verb: &ClothVerb,
    store: &mut dyn LogWithDrafts,
    db: &LogPlace,
    screen: &mut TextOutput<'_>,
) -> Result<u8, Error> {
    match verb {
        ClothVerb::Add(args) => return add(args, store, screen),
        ClothVerb::List(args) => list(args, store, screen),
        ClothVerb::Show(args) => show(args, store, screen),
        ClothVerb::Edit(args) => edit(args, store, screen),
        ClothVerb::Cut(args) => cut(args, store, screen),
        ClothVerb::Picture(args) => remember::picture(args, store, db, screen),
        ClothVerb::Learned(args) => remember::learned(args, store, screen),
        ClothVerb::Retire(args) => retire(args, store, screen),
        ClothVerb::Return(args) => restore(args, store, screen),
        ClothVerb::Renumber(args) => renumber(args, store, screen),
    }?;
    Ok(0)
}

/// Adds a cloth, perhaps with its first tests: all of it, or nothing.
fn add(args: &AddClothArgs, store: &mut dyn LogWithDrafts, screen: &mut TextOutput<'_>) -> Result<u8, Error> {
    let (described, tested) = described::apart(&args.words);
    let mut typed = TypedCloth::from(args);
    described::cloth_in(described, &mut typed)?;
    let mut tests = pull::typed_in_a_row(tested, args.settling, args.show.units, screen.here)?;
    let known = known_of(&input::cloth::added(&typed)?);
    for test in &mut tests {
        if let Some(doubted) = test.input.believed(known)? {
            return super::pull::doubtful(&doubted, args.show.json, screen);
        }
    }
    super::log::give(store, args.range.tags.as_deref())?;
    let (entries, ()) = store.change(|read| deed::add(read, &typed))?;
    let show = ShowArgs { units: input::shown_in(args.show.units, [&typed.length, &typed.width]), ..args.show.clone() };
    report_change(store, &entries, &show, "added", screen)?;
    match entries.first() {
        Some(Entry { id, .. }) if !tests.is_empty() => {
            super::pull::store_all(&id.to_string(), tests, args.show.json, store, screen)
        }
        _ => Ok(0),
    }
}

/// What is known of a cloth that is about to be added.
fn known_of(change: &FabricChange) -> ClothFacts {
    let width = change.width.flatten().map(|Mm(width)| width);
    ClothFacts { construction: Some(change.construction.unwrap_or_default()), width }
}

fn edit(args: &EditClothArgs, store: &mut dyn Store, screen: &mut TextOutput<'_>) -> Result<(), Error> {
    let typed = TypedCloth::from(args);
    let (entries, ()) = store.change(|read| deed::edit(read, &args.fabric, &typed))?;
    let units = input::shown_in(args.show.units, [&typed.length, &typed.bought, &typed.width]);
    report_change(store, &entries, &ShowArgs { units, ..args.show.clone() }, "changed", screen)?;
    if let Some(Entry { fact: Fact::FabricChanged { fabric, change }, .. }) = entries.first()
        && !args.show.json
        && let Some(fabric) = store.fabric(*fabric)?
        && let Some(note) = words::after_edit(&fabric, change)
    {
        screen.say(&note)?;
    }
    Ok(())
}

fn cut(args: &CutArgs, store: &mut dyn Store, screen: &mut TextOutput<'_>) -> Result<(), Error> {
    let Some(length) = args.length.as_deref().filter(|_| !args.undo) else {
        let (entries, had) = store.change(|read| deed::uncut(read, &args.fabric))?;
        report_change(store, &entries, &args.show, done::CUT_BACK, screen)?;
        let now = entries.first().map(|entry| store.fabric(entry.subject().id())).transpose()?.flatten();
        if !args.show.json && now.as_ref().is_some_and(|now| now.length == had) {
            screen.say(words::LENGTH_STAYS)?;
        }
        return Ok(());
    };
    let (entries, ()) = store.change(|read| deed::cut(read, &args.fabric, length, &args.note, args.instead))?;
    let what = if args.instead { done::CUT_RIGHT } else { "cut" };
    report_change(store, &entries, &args.show, what, screen)
}

fn retire(args: &RetireArgs, store: &mut dyn Store, screen: &mut TextOutput<'_>) -> Result<(), Error> {
    let (_, Fabric { tag, name, .. }) = store.change(|read| deed::retire(read, &args.fabric, &args.note))?;
    Ok(screen.say(&done::retired_cloth(tag, &name))?)
}

fn restore(args: &ReturnArgs, store: &mut dyn Store, screen: &mut TextOutput<'_>) -> Result<(), Error> {
    let (_, Fabric { tag, name, .. }) = store.change(|read| deed::restore(read, &args.fabric))?;
    Ok(screen.say(&done::returned_cloth(tag, &name))?)
}

fn renumber(args: &RenumberArgs, store: &mut dyn Store, screen: &mut TextOutput<'_>) -> Result<(), Error> {
    let (_, renumbered) = store.change(|read| people::renumber(read, args.fabric.as_deref()))?;
    if args.json {
        writeln!(screen.out, "{}", stash_json::renumbered(&renumbered))?;
    } else {
        write!(screen.out, "{}", report::renumbered(&renumbered, screen.width))?;
    }
    Ok(())
}

fn report_change(
    store: &dyn Store,
    entries: &[Entry],
    show: &ShowArgs,
    what: &str,
    screen: &mut TextOutput<'_>,
) -> Result<(), Error> {
    let id = entries.first().map(|entry| entry.subject().id());
    let Some(fabric) = id.map(|id| store.fabric(id)).transpose()?.flatten() else { return Ok(()) };
    let unit = show.units.unwrap_or_default();
    if show.json {
        writeln!(screen.out, "{}", stash_json::fabric(&fabric))?;
    } else {
        screen.say(&format!("{what}  {}", words::line_about(&fabric, unit)))?;
    }
    Ok(())
}

fn list(args: &ListClothsArgs, store: &dyn Store, screen: &mut TextOutput<'_>) -> Result<(), Error> {
    let unit = args.show.units.unwrap_or_default();
    let grain = args.grain;
    let stretch = input::range(Field::Stretch, args.stretch.as_deref(), unit)?;
    let at_least = args.at_least.as_deref().map(|text| amount::cloth(Field::AtLeast, text)).transpose()?;
    let words: Vec<String> = args.words.iter().map(|word| word.to_lowercase()).collect();
    let wanted = |fabric: &Fabric| {
        let text = [&fabric.name, &fabric.fibre, &fabric.colour, &fabric.place, &fabric.note]
            .map(|text| text.to_lowercase())
            .join("\n");
        args.construction.is_none_or(|arg| fabric.construction == construction(arg))
            && (!args.owned || !fabric.is_seen())
            && (!args.seen || fabric.is_seen())
            && at_least.is_none_or(|least| fabric.length.is_some_and(|length| length >= least))
            && words.iter().all(|word| text.contains(word.as_str()))
    };
    let stock = Stock::of(store, |fabric| fabric.dropped == args.retired)?;
    let all = stock.fabrics.len();
    let fits = |fabric: &&Fabric| {
        let seen = known::stretch(fabric, grain, &stock).ok().map(|seen| seen.ratio);
        stretch.at_least.is_none_or(|limit| seen.is_some_and(|seen| seen >= limit.ratio()))
            && stretch.at_most.is_none_or(|limit| seen.is_some_and(|seen| seen <= limit.ratio()))
    };
    let listed = stock.fabrics.iter().filter(|fabric| wanted(fabric)).filter(fits);
    let listed: Vec<Listed> = listed.map(|fabric| Listed::of(fabric, &stock)).collect();
    if args.show.json {
        writeln!(screen.out, "{}", stash_json::list(&listed))?;
    } else {
        let confidence = Confidence::default();
        write!(screen.out, "{}", report::list(&listed, all, args.retired, confidence, unit, screen.width))?;
    }
    Ok(())
}

fn show(args: &ShowFabricArgs, store: &dyn Store, screen: &mut TextOutput<'_>) -> Result<(), Error> {
    let unit = args.show.units.unwrap_or_default();
    let table = input::table(&args.table.table)?;
    let confidence = input::confidence(&args.confidence.confidence)?;
    let fabric = find::fabric(store, &args.fabric)?;
    let known = KnownCloth::of(store, fabric)?;
    let hands = store.repeatability()?;
    let shown = known.shown(&hands, ShownRules { confidence, table, unit }, screen.here);
    if args.show.json {
        writeln!(screen.out, "{}", stash_json::shown(&shown))?;
    } else {
        write!(screen.out, "{}", report::shown(&shown, screen.width, screen.unicode))?;
    }
    Ok(())
}
