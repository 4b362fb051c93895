//! Patterns, gathered to be listed.

use tenter_core::Length;
use tenter_core::making::amount::total;

use super::fit::purpose;
use crate::log::{Pattern, Purpose, Role};

/// Roles of a view that one cloth may serve, with the length that they take of it together.
#[derive(Clone, Debug, PartialEq)]
pub struct SharedRoles<'p> {
    /// The roles, two or more.
    pub roles: Vec<&'p Role>,
    /// The sum of their lengths; at most the longest length there is.
    pub length: Length,
    /// The width that all are stated for.
    pub width: Length,
}

/// The roles of a view that want a cloth for the same thing, woven or knitted alike, of the same width.
#[must_use]
pub fn together<'p>(pattern: &'p Pattern, view: &'p str) -> Vec<SharedRoles<'p>> {
    let mut all: Vec<(Option<Purpose>, SharedRoles<'p>)> = Vec::new();
    for role in pattern.view(view) {
        let Some(cloth) = role.cloth else { continue };
        let wanted = purpose::of_role(role);
        let alike = |(purpose, one): &&mut (Option<Purpose>, SharedRoles<'p>)| {
            *purpose == wanted && one.width == cloth.width && one.roles.iter().all(|other| may_share(other, role))
        };
        match all.iter_mut().find(alike) {
            Some((_, one)) => one.roles.push(role),
            None => all.push((wanted, SharedRoles { roles: vec![role], length: Length::ZERO, width: cloth.width })),
        }
    }
    let summed = |(_, one): (Option<Purpose>, SharedRoles<'p>)| {
        let length = total(one.roles.iter().filter_map(|role| role.cloth).map(|cloth| cloth.length));
        SharedRoles { length, ..one }
    };
    all.into_iter().filter(|(_, one)| one.roles.len() > 1).map(summed).collect()
}

/// Whether a cloth can be made as both ask.
fn may_share(one: &Role, other: &Role) -> bool {
    let any = one.constructions.is_empty() || other.constructions.is_empty();
    any || one.constructions.iter().any(|made| other.constructions.contains(made))
}

/// A pattern with the names that a list shows, each once.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ListedPattern {
    /// Its name.
    pub name: String,
    /// Its views.
    pub views: Vec<String>,
    /// Its roles.
    pub roles: Vec<String>,
}

impl ListedPattern {
    /// With the roles that are retired, or else with those that are not; all of a pattern that is itself retired.
    #[must_use]
    pub fn of(pattern: &Pattern, retired: bool) -> Self {
        let (mut views, mut roles) = (Vec::new(), Vec::new());
        for role in pattern.roles.iter().filter(|role| role.dropped == (retired && !pattern.dropped)) {
            for (names, name) in [(&mut views, &role.view), (&mut roles, &role.name)] {
                if !names.contains(name) {
                    names.push(name.clone());
                }
            }
        }
        Self { name: pattern.name.clone(), views, roles }
    }
}
