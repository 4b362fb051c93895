//! Patterns as JSON.

use serde::Serialize;

use crate::finding::fit::asked;
use crate::finding::pattern as finding;
use crate::json::{line, millimetres};
use crate::log::pattern::DemandField;
use crate::log::{Construction, Drape, Finish, GarmentKind, MassPerArea, Pattern, Purpose};

#[derive(Serialize)]
struct PatternJson<'a> {
    id: String,
    name: &'a str,
    note: &'a str,
    dropped: bool,
    roles: Vec<RoleJson<'a>>,
    /// What roles take together that one cloth may serve.
    together: Vec<TogetherJson<'a>>,
}

#[derive(Serialize)]
struct TogetherJson<'a> {
    view: &'a str,
    roles: Vec<&'a str>,
    cloth_length_mm: f64,
    cloth_width_mm: f64,
}

#[derive(Serialize)]
struct RoleJson<'a> {
    id: String,
    view: &'a str,
    role: &'a str,
    demand: DemandField,
    /// With what a garment that lies close asks besides.
    asks: DemandField,
    constructions: Vec<&'static str>,
    kind: Option<&'static str>,
    mass_at_least_g_per_m2: Option<f64>,
    mass_at_most_g_per_m2: Option<f64>,
    drapes: Vec<&'static str>,
    finishes: Vec<&'static str>,
    purpose: Option<&'static str>,
    cloth_length_mm: Option<f64>,
    cloth_width_mm: Option<f64>,
    note: &'a str,
}

fn pattern_json<'a>(pattern: &'a Pattern, view: Option<&str>) -> PatternJson<'a> {
    let views = pattern.views().into_iter().filter(|known| view.is_none_or(|view| view == *known));
    let together = views.flat_map(|view| finding::together(pattern, view).into_iter().map(move |one| (view, one)));
    let together = together.map(|(view, one)| TogetherJson {
        view,
        roles: one.roles.iter().map(|role| role.name.as_str()).collect(),
        cloth_length_mm: millimetres(one.length),
        cloth_width_mm: millimetres(one.width),
    });
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
                asks: DemandField(asked::demand(role)),
                constructions: role.constructions.iter().copied().map(Construction::word).collect(),
                kind: role.kind.map(GarmentKind::word),
                mass_at_least_g_per_m2: role.mass.at_least.map(MassPerArea::g_per_m2),
                mass_at_most_g_per_m2: role.mass.at_most.map(MassPerArea::g_per_m2),
                drapes: role.drapes.iter().copied().map(Drape::word).collect(),
                finishes: role.finishes.iter().copied().map(Finish::word).collect(),
                purpose: role.purpose.map(Purpose::word),
                cloth_length_mm: role.cloth.map(|cloth| millimetres(cloth.length)),
                cloth_width_mm: role.cloth.map(|cloth| millimetres(cloth.width)),
                note: &role.note,
            })
            .collect(),
        together: together.collect(),
    }
}

/// A pattern as JSON.
#[must_use]
pub fn pattern(pattern: &Pattern, view: Option<&str>) -> String {
    line(&pattern_json(pattern, view))
}

/// The patterns as a JSON array.
#[must_use]
pub fn list(patterns: &[Pattern]) -> String {
    let list: Vec<_> = patterns.iter().map(|pattern| pattern_json(pattern, None)).collect();
    line(&list)
}
