//! Patterns as text and JSON.

use serde::Serialize;
use tenter_core::{Demand, Grain, Range, Unit};

use crate::json::millimetres;
use crate::log::pattern::DemandField;
use crate::log::{Construction, Pattern, Role};
use crate::text::lines::Lines;
use crate::text::table;
use crate::text::table::Column;
use crate::words::bidi::isolated;
use crate::words::quantity;

/// A range in words: `at least 5 %`, `5 to 15 %`, `at most 15 %`.
#[must_use]
pub fn range(range: Range) -> String {
    match (range.at_least, range.at_most) {
        (Some(least), Some(most)) => format!("{least} to {most}"),
        (Some(least), None) => format!("at least {least}"),
        (None, Some(most)) => format!("at most {most}"),
        (None, None) => String::new(),
    }
}

/// What a demand asks, in words.
#[must_use]
pub fn demand(demand: &Demand) -> String {
    let mut parts: Vec<String> = Vec::new();
    for grain in [Grain::Crosswise, Grain::Lengthwise, Grain::Bias] {
        let asked = demand.stretch(grain);
        if !asked.is_empty() {
            parts.push(format!("{} {}", grain.word(), range(asked)));
        }
    }
    parts.extend(demand.growth_at_most.map(|limit| format!("growth at most {limit}")));
    parts.extend(demand.recovery_at_least.map(|limit| format!("recovery at least {limit}")));
    parts.join(", ")
}

/// What a role asks, in words.
#[must_use]
pub fn asks(role: &Role, unit: Unit) -> String {
    let stretch = demand(&role.demand);
    let mut parts = vec![if stretch.is_empty() { "asks nothing of the stretch".to_owned() } else { stretch }];
    if !role.constructions.is_empty() {
        parts.push(role.made());
    }
    if let Some(cloth) = role.cloth {
        let (length, width) = (quantity::cloth_to_buy(cloth.length, unit), quantity::width(cloth.width, unit));
        parts.push(format!("{length} of {width}"));
    }
    parts.join("; ")
}

/// A pattern, or one of its views.
#[must_use]
pub fn pattern(pattern: &Pattern, view: Option<&str>, unit: Unit, columns: usize) -> String {
    let mut text = Lines::new(columns);
    text.words(&isolated(&pattern.name));
    if !pattern.note.is_empty() {
        text.row("note", &isolated(&pattern.note));
    }
    let views = pattern.views();
    if views.is_empty() {
        text.row("", "no roles yet: tenter pattern add NAME VIEW ROLE --crosswise 5%");
    }
    for known in views.into_iter().filter(|known| view.is_none_or(|view| view == *known)) {
        text.blank();
        text.words(&format!("view {}", isolated(known)));
        for role in pattern.view(known) {
            text.row(&isolated(&role.name), &asks(role, unit));
            if !role.note.is_empty() {
                text.row("", &isolated(&role.note));
            }
        }
    }
    text.finish()
}

/// The patterns, a line each.
#[must_use]
pub fn list(patterns: &[Pattern], dropped: bool, width: usize) -> String {
    if patterns.is_empty() {
        let mut text = Lines::new(width);
        text.words(if dropped {
            "nothing is retired"
        } else {
            "no patterns yet; begin with tenter pattern add NAME VIEW ROLE --crosswise 5%"
        });
        return text.finish();
    }
    let columns = [("pattern", Column::Text), ("views", Column::Text), ("roles", Column::Text)];
    let rows = patterns.iter().map(|pattern| {
        let roles = pattern.roles.iter().filter(|role| role.dropped == (dropped && !pattern.dropped));
        let mut names: Vec<&str> = Vec::new();
        let mut views: Vec<&str> = Vec::new();
        for role in roles {
            if !views.contains(&role.view.as_str()) {
                views.push(&role.view);
            }
            if !names.contains(&role.name.as_str()) {
                names.push(&role.name);
            }
        }
        vec![pattern.name.clone(), views.join(", "), names.join(", ")]
    });
    table::render(&columns, rows, width)
}

#[derive(Serialize)]
struct PatternJson<'a> {
    id: String,
    name: &'a str,
    note: &'a str,
    dropped: bool,
    roles: Vec<RoleJson<'a>>,
}

#[derive(Serialize)]
struct RoleJson<'a> {
    id: String,
    view: &'a str,
    role: &'a str,
    demand: DemandField,
    constructions: Vec<&'static str>,
    cloth_length_mm: Option<f64>,
    cloth_width_mm: Option<f64>,
    note: &'a str,
}

fn pattern_json<'a>(pattern: &'a Pattern, view: Option<&str>) -> PatternJson<'a> {
    let roles = pattern.roles.iter().filter(|role| !role.dropped && view.is_none_or(|view| role.view == view));
    PatternJson {
        id: pattern.id.to_string(),
        name: &pattern.name,
        note: &pattern.note,
        dropped: pattern.dropped,
        roles: roles
            .map(|role| RoleJson {
                id: role.id.to_string(),
                view: &role.view,
                role: &role.name,
                demand: DemandField(role.demand),
                constructions: role.constructions.iter().copied().map(Construction::word).collect(),
                cloth_length_mm: role.cloth.map(|cloth| millimetres(cloth.length)),
                cloth_width_mm: role.cloth.map(|cloth| millimetres(cloth.width)),
                note: &role.note,
            })
            .collect(),
    }
}

/// A pattern as JSON.
#[must_use]
pub fn json(pattern: &Pattern, view: Option<&str>) -> String {
    serde_json::to_string(&pattern_json(pattern, view)).unwrap_or_default()
}

/// The patterns as a JSON array.
#[must_use]
pub fn json_list(patterns: &[Pattern]) -> String {
    let list: Vec<_> = patterns.iter().map(|pattern| pattern_json(pattern, None)).collect();
    serde_json::to_string(&list).unwrap_or_default()
}
