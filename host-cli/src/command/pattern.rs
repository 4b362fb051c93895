//! `tenter pattern`: what the views of a pattern ask.

use tenter_core::Demand;

use super::find;
use crate::cli::pattern::{AddArgs, EditArgs, ListArgs, PatternVerb, RoleFlags, ShowPatternArgs, WhichArgs};
use crate::cli::reading::ShowArgs;
use crate::error::{Error, one_line};
use crate::finding::pattern::Listed;
use crate::input::{self, fabric as typed, pattern as typed_pattern};
use crate::json::pattern as pattern_json;
use crate::log::{Fact, Id, Pattern, PatternChange, Role, RoleChange};
use crate::store::{Read, Store};
use crate::text::Screen;
use crate::text::pattern as report;
use crate::words::bidi::isolated;

/// Runs the verb.
///
/// # Errors
///
/// What was typed wrong, or a log that cannot be read or written; here and below.
pub fn run(verb: &PatternVerb, store: &mut dyn Store, screen: &mut Screen<'_>) -> Result<u8, Error> {
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

/// A pattern of exactly this name, whatever its case.
fn same_name(read: &dyn Read, name: &str) -> Result<Option<Pattern>, Error> {
    let same = |pattern: &Pattern| !pattern.dropped && pattern.name.to_lowercase() == name.to_lowercase();
    Ok(read.patterns()?.into_iter().find(same))
}

fn add(args: &AddArgs, store: &mut dyn Store, screen: &mut Screen<'_>) -> Result<(), Error> {
    let name = typed::name("PATTERN", &args.pattern)?;
    let (Some(view), Some(role)) = (&args.view, &args.role) else {
        return add_pattern(&name, args, store, screen);
    };
    let (view, role) = (typed_pattern::view(view)?, typed::name("ROLE", role)?);
    let said = typed_pattern::role(&args.flags, Demand::default())?;
    // The pattern's own entry must come before the role's, which needs its identifier.
    if same_name(store, &name)?.is_none() {
        store.change(&mut |read| match same_name(read, &name)? {
            Some(_) => Ok(Vec::new()),
            None => Ok(vec![added_pattern(&name, None)]),
        })?;
    }
    let mut into = None;
    store.change(&mut |read| {
        let pattern = find::pattern(read, &name)?;
        // A view that differs in case only is the same view.
        let view = pattern.views().into_iter().find(|known| known.to_lowercase() == view.to_lowercase());
        let view = view.map_or_else(|| args.view.clone().unwrap_or_default(), str::to_owned);
        let same = |other: &&Role| other.name.to_lowercase() == role.to_lowercase();
        if pattern.view(&view).any(|other| same(&other)) {
            return Err(Error::Usage(format!(
                "view {} has a role '{}' already; change it with tenter pattern edit",
                one_line(&view),
                one_line(&role)
            )));
        }
        into = Some((pattern.id, view.clone()));
        let change = RoleChange { view: Some(view), name: Some(role.clone()), ..said.clone() };
        Ok(vec![Fact::RoleAdded { pattern: pattern.id, change }])
    })?;
    report_change(store, into, &args.show, screen)
}

fn added_pattern(name: &str, note: Option<String>) -> Fact {
    Fact::PatternAdded(PatternChange { name: Some(name.to_owned()), note })
}

fn add_pattern(name: &str, args: &AddArgs, store: &mut dyn Store, screen: &mut Screen<'_>) -> Result<(), Error> {
    let note = args.flags.note.as_deref().map(|text| typed::short("--note", text)).transpose()?;
    if (RoleFlags { note: None, ..args.flags.clone() }) != RoleFlags::default() {
        return Err(Error::Usage(
            "say the view and the role that ask this: tenter pattern add NAME VIEW ROLE".to_owned(),
        ));
    }
    let entries = store.change(&mut |read| match same_name(read, name)? {
        Some(_) => Err(Error::Usage(format!("there is a pattern '{}' already", one_line(name)))),
        None => Ok(vec![added_pattern(name, note.clone())]),
    })?;
    report_change(store, entries.first().map(|entry| (entry.id, String::new())), &args.show, screen)
}

fn report_change(
    store: &dyn Store,
    into: Option<(Id, String)>,
    show: &ShowArgs,
    screen: &mut Screen<'_>,
) -> Result<(), Error> {
    let Some((id, view)) = into else { return Ok(()) };
    let Some(pattern) = store.patterns()?.into_iter().find(|pattern| pattern.id == id) else { return Ok(()) };
    let view = Some(view).filter(|view| !view.is_empty());
    write_pattern(&pattern, view.as_deref(), show, screen)
}

fn write_pattern(pattern: &Pattern, view: Option<&str>, show: &ShowArgs, screen: &mut Screen<'_>) -> Result<(), Error> {
    if show.json {
        writeln!(screen.out, "{}", pattern_json::pattern(pattern, view))?;
    } else {
        let unit = show.units.map(input::unit).unwrap_or_default();
        write!(screen.out, "{}", report::pattern(pattern, view, unit, screen.width))?;
    }
    Ok(())
}

fn list(args: &ListArgs, store: &dyn Store, screen: &mut Screen<'_>) -> Result<(), Error> {
    let mut patterns = store.patterns()?;
    let drops = |pattern: &Pattern| pattern.dropped || pattern.roles.iter().any(|role| role.dropped);
    patterns.retain(|pattern| if args.retired { drops(pattern) } else { !pattern.dropped });
    if args.show.json {
        writeln!(screen.out, "{}", pattern_json::list(&patterns))?;
    } else {
        let listed: Vec<Listed> = patterns.iter().map(|pattern| Listed::of(pattern, args.retired)).collect();
        write!(screen.out, "{}", report::list(&listed, args.retired, screen.width))?;
    }
    Ok(())
}

fn show(args: &ShowPatternArgs, store: &dyn Store, screen: &mut Screen<'_>) -> Result<(), Error> {
    let pattern = find::pattern(store, &args.pattern)?;
    let view = args.view.as_deref().map(|text| find::view(&pattern, text)).transpose()?;
    write_pattern(&pattern, view, &args.show, screen)
}

fn edit(args: &EditArgs, store: &mut dyn Store, screen: &mut Screen<'_>) -> Result<(), Error> {
    let name = args.name.as_deref().map(|text| typed::name("--name", text)).transpose()?;
    let mut into = None;
    store.change(&mut |read| {
        let pattern = find::pattern(read, &args.pattern)?;
        let (Some(view), Some(role)) = (&args.view, &args.role) else {
            into = Some((pattern.id, String::new()));
            return Ok(vec![edited_pattern(read, &pattern, name.clone(), &args.flags)?]);
        };
        let view = find::view(&pattern, view)?;
        let role = find::role(&pattern, view, role)?;
        let mut change = typed_pattern::role(&args.flags, role.demand)?;
        change.name.clone_from(&name);
        if change == RoleChange::default() {
            return Err(Error::Usage(
                "say what changed, such as --crosswise 5%; see tenter pattern edit --help".to_owned(),
            ));
        }
        if let Some(name) = &name
            && pattern.view(view).any(|other| other.id != role.id && other.name.to_lowercase() == name.to_lowercase())
        {
            return Err(Error::argument("--name", name, "another role of this view is called so"));
        }
        into = Some((pattern.id, view.to_owned()));
        Ok(vec![Fact::RoleChanged { role: role.id, change }])
    })?;
    report_change(store, into, &args.show, screen)
}

fn edited_pattern(read: &dyn Read, pattern: &Pattern, name: Option<String>, flags: &RoleFlags) -> Result<Fact, Error> {
    let note = flags.note.as_deref().map(|text| typed::short("--note", text)).transpose()?;
    if (RoleFlags { note: None, ..flags.clone() }) != RoleFlags::default() {
        return Err(Error::Usage(
            "say the view and the role that ask this: tenter pattern edit NAME VIEW ROLE".to_owned(),
        ));
    }
    if let Some(name) = &name
        && same_name(read, name)?.is_some_and(|other| other.id != pattern.id)
    {
        return Err(Error::argument("--name", name, "another pattern is called so"));
    }
    let change = PatternChange { name, note };
    if change == PatternChange::default() {
        return Err(Error::Usage("say what changed: --name or --note".to_owned()));
    }
    Ok(Fact::PatternChanged { pattern: pattern.id, change })
}

fn retire(args: &WhichArgs, store: &mut dyn Store, screen: &mut Screen<'_>) -> Result<(), Error> {
    let mut what = String::new();
    store.change(&mut |read| {
        let pattern = find::pattern(read, &args.pattern)?;
        what = isolated(&pattern.name);
        let Some(view) = &args.view else { return Ok(vec![Fact::PatternDropped { pattern: pattern.id }]) };
        let view = find::view(&pattern, view)?;
        what = format!("{what}, view {}", isolated(view));
        let Some(role) = &args.role else {
            return Ok(pattern.view(view).map(|role| Fact::RoleDropped { role: role.id }).collect());
        };
        let role = find::role(&pattern, view, role)?;
        what = format!("{what}, {}", isolated(&role.name));
        Ok(vec![Fact::RoleDropped { role: role.id }])
    })?;
    Ok(screen.say(&format!("retired  {what}; tenter pattern return brings it back"))?)
}

fn restore(args: &WhichArgs, store: &mut dyn Store, screen: &mut Screen<'_>) -> Result<(), Error> {
    let mut what = String::new();
    store.change(&mut |read| {
        let Some(view) = &args.view else {
            let pattern = find::pattern_that(read, &args.pattern, true)?;
            if same_name(read, &pattern.name)?.is_some() {
                let remedy = "another pattern is called so now; give that one a new name first";
                return Err(Error::argument("PATTERN", &pattern.name, remedy));
            }
            what = isolated(&pattern.name);
            return Ok(vec![Fact::PatternRestored { pattern: pattern.id }]);
        };
        let pattern = find::pattern(read, &args.pattern)?;
        let fits = |text: &str, typed: &str| text.to_lowercase() == typed.trim().to_lowercase();
        let dropped = pattern.roles.iter().filter(|role| role.dropped && fits(&role.view, view));
        let dropped = dropped.filter(|role| args.role.as_ref().is_none_or(|name| fits(&role.name, name)));
        let there = |role: &&Role| !pattern.view(&role.view).any(|other| fits(&other.name, &role.name));
        let facts: Vec<_> = dropped.filter(there).map(|role| Fact::RoleRestored { role: role.id }).collect();
        if facts.is_empty() {
            return Err(Error::Usage(format!("nothing of that was retired from '{}'", one_line(&pattern.name))));
        }
        let roles = if facts.len() == 1 { "1 role".to_owned() } else { format!("{} roles", facts.len()) };
        what = format!("{}, view {}: {roles}", isolated(&pattern.name), isolated(view));
        Ok(facts)
    })?;
    Ok(screen.say(&format!("back  {what}"))?)
}
