//! Adding, changing, retiring and returning patterns and their roles.

use tenter_core::Demand;

use super::{Done, Refused, Thing, find};
use crate::input::cloth::{name as name_of, short};
use crate::input::pattern::{TypedRole, role as role_of, view as view_of};
use crate::input::{Field, Wrong};
use crate::log::{Fact, GarmentKind, Id, Pattern, PatternChange, Role, RoleChange};
use crate::store::{Change as _, Read, Store, StoreError};

/// A pattern, and the view of it that is meant; none for all of it.
pub type WhichPattern = (Id, Option<String>);

/// A pattern of exactly this name, whatever its case.
fn same_name(read: &dyn Read, name: &str) -> Result<Option<Pattern>, StoreError> {
    let same = |pattern: &Pattern| !pattern.dropped && alike(&pattern.name, name);
    Ok(read.patterns()?.into_iter().find(same))
}

/// Whether two names are one, whatever their case.
fn alike(one: &str, other: &str) -> bool {
    one.trim().to_lowercase() == other.trim().to_lowercase()
}

/// Adds a pattern without roles.
///
/// # Errors
///
/// A field that cannot be read, a pattern of that name, or something asked without a role.
pub fn add(store: &mut dyn Store, name: &str, asked: &TypedRole) -> Result<WhichPattern, Refused> {
    if !asked.asks_nothing() {
        return Err(Refused::WithoutRole { adding: true });
    }
    let (entries, ()) = store.change(|read| begin(read, name, asked.note.as_deref()))?;
    entries.first().map(|entry| (entry.id, None)).ok_or(Refused::Store(StoreError::Stopped))
}

/// Begins a pattern.
///
/// # Errors
///
/// A field that cannot be read, or a pattern of that name.
pub fn begin(read: &dyn Read, name: &str, note: Option<&str>) -> Done<()> {
    let name = name_of(Field::Pattern, name)?;
    let note = note.map(|text| short(Field::Note, text)).transpose()?;
    match same_name(read, &name)? {
        Some(_) => Err(Refused::PatternExists(name)),
        None => Ok((vec![added(&name, note)], ())),
    }
}

fn added(name: &str, note: Option<String>) -> Fact {
    Fact::PatternAdded(PatternChange { name: Some(name.to_owned()), note })
}

/// Adds a role to a view of a pattern, and the pattern where it is not there yet.
///
/// # Errors
///
/// A field that cannot be read, or a role of that name.
pub fn add_role(
    store: &mut dyn Store,
    (pattern, view, role): (&str, &str, &str),
    asked: &TypedRole,
) -> Result<WhichPattern, Refused> {
    let name = name_of(Field::Pattern, pattern)?;
    // Nothing is begun for what cannot be asked.
    asks(&name, view, role, asked)?;
    // The pattern's own entry must come before the role's, which needs its identifier.
    if same_name(&*store, &name)?.is_none() {
        store.change(|read| {
            let there = same_name(read, &name)?.is_some();
            Ok::<_, Refused>((if there { Vec::new() } else { vec![added(&name, None)] }, ()))
        })?;
    }
    let (_, which) = store.change(|read| role_in(read, (&name, view, role), asked))?;
    Ok(which)
}

/// Whether a role can ask this of a pattern that is still to be begun.
///
/// # Errors
///
/// The first field that cannot be read.
pub fn asks(pattern: &str, view: &str, role: &str, asked: &TypedRole) -> Result<(), Wrong> {
    name_of(Field::Pattern, pattern)?;
    view_of(view)?;
    name_of(Field::Role, role)?;
    role_of(asked, Demand::default()).map(drop)
}

/// Adds a role to a view of a pattern that is there.
///
/// # Errors
///
/// No such pattern, a field that cannot be read, or a role of that name.
pub fn role_in(read: &dyn Read, (pattern, view, role): (&str, &str, &str), asked: &TypedRole) -> Done<WhichPattern> {
    let (typed_view, role) = (view_of(view)?, name_of(Field::Role, role)?);
    let said = role_of(asked, Demand::default())?;
    let pattern = find::pattern(read, pattern)?;
    // A view that differs in case only is the same view.
    let known = pattern.views().into_iter().find(|known| alike(known, &typed_view));
    let view = known.map_or(typed_view.clone(), str::to_owned);
    if pattern.view(&view).any(|other| alike(&other.name, &role)) {
        return Err(Refused::RoleExists { view, role });
    }
    let mut change = RoleChange { view: Some(view.clone()), name: Some(role), ..said };
    let mut facts = of_one_kind(&pattern, &view, None, change.kind);
    // A view is one garment.
    let known = pattern.view(&view).find_map(|other| other.kind);
    change.kind = change.kind.or_else(|| known.map(Some));
    facts.insert(0, Fact::RoleAdded { pattern: pattern.id, change });
    Ok((facts, (pattern.id, Some(view))))
}

/// Changes the name or the note of a pattern.
///
/// # Errors
///
/// No such pattern, a name that is taken, something asked without a role, or nothing that changes.
pub fn edit(read: &dyn Read, pattern: &str, name: Option<&str>, asked: &TypedRole) -> Done<WhichPattern> {
    let name = name.map(|text| name_of(Field::NewName, text)).transpose()?;
    let pattern = find::pattern(read, pattern)?;
    let note = asked.note.as_deref().map(|text| short(Field::Note, text)).transpose()?;
    if !asked.asks_nothing() {
        return Err(Refused::WithoutRole { adding: false });
    }
    if let Some(name) = &name
        && same_name(read, name)?.is_some_and(|other| other.id != pattern.id)
    {
        return Err(Refused::NameTaken { thing: Thing::Pattern, name: name.clone() });
    }
    let change = PatternChange { name, note };
    if change == PatternChange::default() {
        return Err(Refused::NothingChanged(Thing::Pattern));
    }
    Ok((vec![Fact::PatternChanged { pattern: pattern.id, change }], (pattern.id, None)))
}

/// Changes what a role asks, or its name.
///
/// # Errors
///
/// No such role, a name that is taken, or nothing that changes.
pub fn edit_role(
    read: &dyn Read,
    (pattern, view, role): (&str, &str, &str),
    name: Option<&str>,
    asked: &TypedRole,
) -> Done<WhichPattern> {
    let name = name.map(|text| name_of(Field::NewName, text)).transpose()?;
    let pattern = find::pattern(read, pattern)?;
    let view = find::view(&pattern, view)?;
    let role = find::role(&pattern, view, role)?;
    let mut change = role_of(asked, role.demand)?;
    change.name.clone_from(&name);
    if change == RoleChange::default() {
        return Err(Refused::NothingChanged(Thing::Role));
    }
    if let Some(name) = name
        && pattern.view(view).any(|other| other.id != role.id && alike(&other.name, &name))
    {
        return Err(Refused::NameTaken { thing: Thing::Role, name });
    }
    let mut facts = of_one_kind(&pattern, view, Some(role.id), change.kind);
    facts.insert(0, Fact::RoleChanged { role: role.id, change });
    Ok((facts, (pattern.id, Some(view.to_owned()))))
}

/// What changes about the other roles of a view, where its kind was said: they are of the same garment.
fn of_one_kind(pattern: &Pattern, view: &str, but: Option<Id>, kind: Option<Option<GarmentKind>>) -> Vec<Fact> {
    let Some(kind) = kind else { return Vec::new() };
    let others = pattern.view(view).filter(|role| Some(role.id) != but && role.kind != kind);
    let changed = |role: &Role| Fact::RoleChanged {
        role: role.id,
        change: RoleChange { kind: Some(kind), ..RoleChange::default() },
    };
    others.map(changed).collect()
}

/// What was retired or returned.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Moved {
    /// The name of the pattern.
    pub pattern: String,
    /// The view, where only that was meant.
    pub view: Option<String>,
    /// The role, where only that was meant.
    pub role: Option<String>,
    /// How many roles it was; 0 where it was the pattern itself.
    pub roles: usize,
}

/// Retires a pattern, all roles of a view, or one role.
///
/// # Errors
///
/// No such pattern, view or role.
pub fn retire(read: &dyn Read, pattern: &str, view: Option<&str>, role: Option<&str>) -> Done<Moved> {
    let pattern = find::pattern(read, pattern)?;
    let mut moved = Moved { pattern: pattern.name.clone(), view: None, role: None, roles: 0 };
    let Some(view) = view else { return Ok((vec![Fact::PatternDropped { pattern: pattern.id }], moved)) };
    let view = find::view(&pattern, view)?;
    moved.view = Some(view.to_owned());
    let facts: Vec<Fact> = match role {
        None => pattern.view(view).map(|role| Fact::RoleDropped { role: role.id }).collect(),
        Some(role) => {
            let role = find::role(&pattern, view, role)?;
            moved.role = Some(role.name.clone());
            vec![Fact::RoleDropped { role: role.id }]
        }
    };
    moved.roles = facts.len();
    Ok((facts, moved))
}

/// Returns a retired pattern, or what was retired of a view.
///
/// # Errors
///
/// No such pattern, one whose name is taken by now, or nothing that was retired.
pub fn restore(read: &dyn Read, pattern: &str, view: Option<&str>, role: Option<&str>) -> Done<Moved> {
    let Some(view) = view else {
        let pattern = find::pattern_that(read, pattern, true)?;
        if same_name(read, &pattern.name)?.is_some() {
            return Err(Refused::NameTakenMeanwhile(pattern.name));
        }
        let moved = Moved { pattern: pattern.name, view: None, role: None, roles: 0 };
        return Ok((vec![Fact::PatternRestored { pattern: pattern.id }], moved));
    };
    let pattern = find::pattern(read, pattern)?;
    let retired = pattern.roles.iter().filter(|role| role.dropped && alike(&role.view, view));
    let retired = retired.filter(|one| role.is_none_or(|name| alike(&one.name, name)));
    let free = |role: &&Role| !pattern.view(&role.view).any(|other| alike(&other.name, &role.name));
    let facts: Vec<_> = retired.filter(free).map(|role| Fact::RoleRestored { role: role.id }).collect();
    if facts.is_empty() {
        return Err(Refused::NothingRetired(pattern.name));
    }
    let (view, role) = (Some(view.to_owned()), role.map(str::to_owned));
    let moved = Moved { pattern: pattern.name, view, role, roles: facts.len() };
    Ok((facts, moved))
}
