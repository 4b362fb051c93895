//! `tenter make`: garments, from the choice of their cloths to their wear.

use std::path::Path;

use super::report::sheet_page;
use super::sheet;
use crate::cli::fit::SheetRequest;
use crate::cli::make::{MakeVerb, PlanOfArgs};
use crate::cli::reading::ShowArgs;
use crate::deed::make as deed;
use crate::deed::make::RoleCut;
use crate::deed::plan as deed_plan;
use crate::error::Error;
use crate::finding::make::{MadeGarment, Workroom};
use crate::finding::shown::ShownRules;
use crate::input::garment::TypedGarment;
use crate::input::learned::TypedLearned;
use crate::input::plan::TypedPlan;
use crate::input::{self, Misuse};
use crate::json::make as make_json;
use crate::json::plan as plan_json;
use crate::log::{GarmentState, Id, Subject};
use crate::store::{Change as _, LogPlace, Read, Store};
use crate::text::TextOutput;
use crate::text::make as report;
use crate::words::done;
use crate::words::{make as words, pair, quantity};

/// Runs the verb.
///
/// # Errors
///
/// What was typed wrong, or a log that cannot be read or written; here and below.
pub fn run(verb: &MakeVerb, store: &mut dyn Store, db: &LogPlace, screen: &mut TextOutput<'_>) -> Result<u8, Error> {
    let (id, what, show) = match verb {
        MakeVerb::List(args) => return list(args.all, &args.show, store, screen),
        MakeVerb::Plan(args) => return plan(args, store, db, screen),
        MakeVerb::Cut(args) => {
            let (role, length) = (args.role.as_deref(), args.length.as_deref());
            let (_, (garment, cuts)) = store.change(|read| deed::cut(read, &args.garment, role, length))?;
            return cut(garment.id, "cut", &cuts, &args.show, store, screen);
        }
        MakeVerb::Uncut(args) => {
            let (_, (garment, cuts)) = store.change(|read| deed::uncut(read, &args.garment, args.role.as_deref()))?;
            return cut(garment.id, "not cut", &cuts, &args.show, store, screen);
        }
        MakeVerb::Show(args) => {
            let garment = crate::deed::find::garment(store, &args.garment, false)?;
            return show_one(garment.id, &args.show, store, screen);
        }
        MakeVerb::Start(args) => {
            let SheetRequest { names, plan } = args.planned(crate::deed::find::names(store)?);
            let choices = (&plan.choices).into();
            let typed = TypedGarment { uses: plan.r#use, choices, ..(&args.flags).into() };
            let (entries, ()) = store.change(|read| deed::start(read, &names, &typed))?;
            (entries.first().map(|entry| entry.id), "begun", &args.show)
        }
        MakeVerb::Edit(args) => {
            let mut typed = TypedGarment::from(&args.flags);
            typed.uses.extend(args.words.iter().cloned());
            let (_, garment) = store.change(|read| deed::edit(read, &args.garment, &typed))?;
            (Some(garment.id), "changed", &args.show)
        }
        MakeVerb::Tick(args) | MakeVerb::Untick(args) => {
            let done = matches!(verb, MakeVerb::Tick(_));
            let (_, garment) = store.change(|read| deed::tick(read, &args.garment, &args.stages, done))?;
            (Some(garment.id), if done { "ticked" } else { "not ticked" }, &args.show)
        }
        MakeVerb::Done(args) => {
            let (role, typed) = (args.role.as_deref(), TypedLearned::from(&args.learned));
            let (_, garment) = store.change(|read| deed::done(read, &args.garment, role, &typed))?;
            (Some(garment.id), "done", &args.show)
        }
        MakeVerb::Wore(args) => {
            let typed = TypedLearned { wore: Some(args.wore.clone()), ..TypedLearned::default() };
            let (_, garment) = store.change(|read| deed::wore(read, &args.garment, args.role.as_deref(), &typed))?;
            (Some(garment.id), "remembered", &args.show)
        }
        MakeVerb::Reopen(args) => {
            let (_, garment) = store.change(|read| deed::reopen(read, &args.garment))?;
            (Some(garment.id), "open again", &args.show)
        }
        MakeVerb::Retire(args) => {
            let (_, garment) = store.change(|read| deed::retire(read, &args.garment, &args.note))?;
            (Some(garment.id), "retired", &args.show)
        }
        MakeVerb::Return(args) => {
            let (_, garment) = store.change(|read| deed::restore(read, &args.garment))?;
            (Some(garment.id), "back", &args.show)
        }
        MakeVerb::Forget(args) => {
            let garment = crate::deed::find::garment(store, &args.garment, false)?;
            store.forget_names(Subject::Garment(garment.id))?;
            (Some(garment.id), "name forgotten", &args.show)
        }
    };
    let Some(making) = id.map(|id| making(id, store, screen)).transpose()?.flatten() else { return Ok(0) };
    if show.json {
        writeln!(screen.out, "{}", make_json::making(&making))?;
    } else {
        screen.say(&format!("{what}  {}", words::line_about(&making)))?;
        screen.say(&words::next_alone(&making))?;
    }
    Ok(0)
}

/// A garment as it is now.
fn making(id: Id, read: &dyn Read, screen: &TextOutput<'_>) -> Result<Option<MadeGarment>, Error> {
    let room = Workroom::read(read, screen.here)?;
    Ok(room.garments.iter().find(|garment| garment.id == id).map(|garment| room.making(garment)))
}

fn list(all: bool, show: &ShowArgs, read: &dyn Read, screen: &mut TextOutput<'_>) -> Result<u8, Error> {
    let room = Workroom::read(read, screen.here)?;
    let listed = room.list(|state| all || state == GarmentState::Open);
    if show.json {
        writeln!(screen.out, "{}", make_json::list(&listed))?;
    } else {
        write!(screen.out, "{}", report::list(&listed, !room.garments.is_empty(), screen.width))?;
    }
    Ok(0)
}

fn show_one(id: Id, show: &ShowArgs, read: &dyn Read, screen: &mut TextOutput<'_>) -> Result<u8, Error> {
    let Some(making) = making(id, read, screen)? else { return Ok(0) };
    if show.json {
        writeln!(screen.out, "{}", make_json::making(&making))?;
    } else {
        let unit = show.units.unwrap_or_default();
        write!(screen.out, "{}", report::shown(&making, unit, screen.here, screen.width))?;
    }
    Ok(0)
}

fn cut(
    id: Id,
    what: &str,
    cuts: &[RoleCut],
    show: &ShowArgs,
    read: &dyn Read,
    screen: &mut TextOutput<'_>,
) -> Result<u8, Error> {
    let Some(making) = making(id, read, screen)? else { return Ok(0) };
    if show.json {
        writeln!(screen.out, "{}", make_json::making(&making))?;
        return Ok(0);
    }
    let unit = show.units.unwrap_or_default();
    for RoleCut { role, cloth, length } in cuts {
        let length = quantity::cloth_needed(*length, unit);
        screen.say(&done::role_cut(what, role, &length, &pair::named(cloth)))?;
    }
    screen.say(&words::next_alone(&making))?;
    Ok(0)
}

fn plan(args: &PlanOfArgs, read: &dyn Read, db: &LogPlace, screen: &mut TextOutput<'_>) -> Result<u8, Error> {
    let (show, confidence) = (&args.show, input::confidence(&args.confidence.confidence)?);
    let SheetRequest { names, plan: wanted } = SheetRequest::of(args.words.iter(), &args.plan, |_| false);
    if let Some(word) = names.first() {
        return Err(Misuse::NotOnASheet { word: word.clone() }.into());
    }
    if !wanted.r#use.is_empty() {
        return Err(Misuse::UseOfBegun { garment: args.garment.clone() }.into());
    }
    let garment = deed::live(read, &args.garment)?;
    let Some(making) = making(garment.id, read, screen)? else { return Ok(0) };
    let unit = show.units.unwrap_or_default();
    let typed = TypedPlan { shop_cut: args.shop.shop_cut, ..(&wanted).into() };
    let mut plan = deed_plan::of_garment(read, &garment, &typed, (confidence, unit))?;
    plan.done = making.done_stages();
    let head = words::plan_head(&making);
    if let Some(out) = &args.out {
        super::refuse_the_log_itself(Path::new(out), db)?;
        let rules = ShownRules { confidence, table: &tenter_core::Table::OWN, unit };
        return sheet_page(&plan, rules, (args.plan.why, &head), out, read, screen);
    }
    if show.json {
        writeln!(screen.out, "{}", make_json::with_plan(&making, &plan_json::render(&plan, unit)))?;
        return Ok(super::check::exit_code(Some(plan.overall.answer())));
    }
    screen.say(&head)?;
    sheet::print(&plan, false, args.plan.why, unit, screen)
}
