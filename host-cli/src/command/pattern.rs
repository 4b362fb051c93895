//! `tenter pattern`: what the views of a pattern ask.

use super::find;
use crate::cli::pattern::{AddRoleArgs, EditRoleArgs, ListPatternsArgs, PatternVerb, ShowPatternArgs, WhichArgs};
use crate::cli::reading::ShowArgs;
use crate::deed::find::LAST;
use crate::deed::pattern::{self as deed, Moved, WhichPattern};
use crate::error::Error;
use crate::finding::pattern::ListedPattern;
use crate::input::pattern::TypedRole;
use crate::input::{self, described};
use crate::json::pattern as pattern_json;
use crate::log::Pattern;
use crate::plain::isolated;
use crate::store::{Change as _, Store};
use crate::text::TextOutput;
use crate::text::pattern as report;
use crate::words::done;
use crate::words::quantity::counted;

/// Runs the verb.
///
/// # Errors
///
/// What was typed wrong, or a log that cannot be read or written.
pub fn run(verb: &PatternVerb, store: &mut dyn Store, screen: &mut TextOutput<'_>) -> Result<u8, Error> {
    match verb {
        PatternVerb::Add(args) => add(args, store, screen),
        PatternVerb::List(args) => list(args, store, screen),
        PatternVerb::Show(args) => show(args, store, screen),
        PatternVerb::Edit(args) => edit(args, store, screen),
        PatternVerb::Retire(args) => retire(args, store, screen),
        PatternVerb::Return(args) => restore(args, store, screen),
    }?;
    Ok(0)
}

fn add(args: &AddRoleArgs, store: &mut dyn Store, screen: &mut TextOutput<'_>) -> Result<(), Error> {
    let mut asked = TypedRole::from(&args.flags);
    // A percentage where the role is named asks it of the main cloth.
    let unnamed = args.role.as_deref().is_some_and(described::is_asked);
    let words: Vec<String> = args.role.iter().filter(|_| unnamed).chain(&args.words).cloned().collect();
    described::role_in(&words, &mut asked)?;
    let role = args.role.as_deref().map(|role| if unnamed { described::MAIN } else { role });
    let pattern = match args.pattern.trim() {
        LAST => find::pattern(store, LAST)?.name,
        name => name.to_owned(),
    };
    let which = match (&args.view, role) {
        (Some(view), Some(role)) => deed::add_role(store, (&pattern, view, role), &asked)?,
        _ => deed::add(store, &pattern, &asked)?,
    };
    let units = input::shown_in(args.show.units, [&asked.cloth]);
    report_change(store, which, &ShowArgs { units, ..args.show.clone() }, screen)
}

fn edit(args: &EditRoleArgs, store: &mut dyn Store, screen: &mut TextOutput<'_>) -> Result<(), Error> {
    let (asked, name) = ((&args.flags).into(), args.name.as_deref());
    let (_, which) = store.change(|read| match (&args.view, &args.role) {
        (Some(view), Some(role)) => deed::edit_role(read, (&args.pattern, view, role), name, &asked),
        _ => deed::edit(read, &args.pattern, name, &asked),
    })?;
    report_change(store, which, &args.show, screen)
}

fn report_change(
    store: &dyn Store,
    (id, view): WhichPattern,
    show: &ShowArgs,
    screen: &mut TextOutput<'_>,
) -> Result<(), Error> {
    let Some(pattern) = store.patterns()?.into_iter().find(|pattern| pattern.id == id) else { return Ok(()) };
    write_pattern(&pattern, view.as_deref(), show, screen)
}

fn write_pattern(
    pattern: &Pattern,
    view: Option<&str>,
    show: &ShowArgs,
    screen: &mut TextOutput<'_>,
) -> Result<(), Error> {
    if show.json {
        writeln!(screen.out, "{}", pattern_json::pattern(pattern, view))?;
    } else {
        let unit = show.units.unwrap_or_default();
        write!(screen.out, "{}", report::pattern(pattern, view, unit, screen.width))?;
    }
    Ok(())
}

fn list(args: &ListPatternsArgs, store: &dyn Store, screen: &mut TextOutput<'_>) -> Result<(), Error> {
    let mut patterns = store.patterns()?;
    let drops = |pattern: &Pattern| pattern.dropped || pattern.roles.iter().any(|role| role.dropped);
    patterns.retain(|pattern| if args.retired { drops(pattern) } else { !pattern.dropped });
    if args.show.json {
        writeln!(screen.out, "{}", pattern_json::list(&patterns))?;
    } else {
        let listed: Vec<ListedPattern> =
            patterns.iter().map(|pattern| ListedPattern::of(pattern, args.retired)).collect();
        write!(screen.out, "{}", report::list(&listed, args.retired, screen.width))?;
    }
    Ok(())
}

fn show(args: &ShowPatternArgs, store: &dyn Store, screen: &mut TextOutput<'_>) -> Result<(), Error> {
    let pattern = find::pattern(store, &args.pattern)?;
    let view = args.view.as_deref().map(|text| find::view(&pattern, text)).transpose()?;
    write_pattern(&pattern, view, &args.show, screen)
}

fn retire(args: &WhichArgs, store: &mut dyn Store, screen: &mut TextOutput<'_>) -> Result<(), Error> {
    let WhichArgs { pattern, view, role } = args;
    let (_, moved) = store.change(|read| deed::retire(read, pattern, view.as_deref(), role.as_deref()))?;
    let mut what = named(&moved);
    if let Some(role) = &moved.role {
        what = format!("{what}, {}", isolated(role));
    }
    Ok(screen.say(&done::retired_pattern(&what))?)
}

fn restore(args: &WhichArgs, store: &mut dyn Store, screen: &mut TextOutput<'_>) -> Result<(), Error> {
    let WhichArgs { pattern, view, role } = args;
    let (_, moved) = store.change(|read| deed::restore(read, pattern, view.as_deref(), role.as_deref()))?;
    let roles = moved.view.as_ref().map(|_| format!(": {}", counted(moved.roles, "role"))).unwrap_or_default();
    Ok(screen.say(&format!("back  {}{roles}", named(&moved)))?)
}

/// A pattern, with the view where only that is meant.
fn named(moved: &Moved) -> String {
    let pattern = isolated(&moved.pattern);
    moved.view.as_ref().map_or(pattern.clone(), |view| format!("{pattern}, view {}", isolated(view)))
}
