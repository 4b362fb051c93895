//! Patterns, gathered to be listed.

use crate::log::Pattern;

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
