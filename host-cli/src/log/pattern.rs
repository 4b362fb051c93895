//! Patterns: pattern → view → role → demand.

use serde::{Deserialize, Serialize};
pub use tenter_core::making::garment::GarmentKind;
use tenter_core::{Demand, Grain, Length};

use super::fabric::{Construction, Drape, Finish, Purpose};
use super::id::Id;
use super::json::{demand, mm, some};
use super::quantity::MassPerArea;

/// A pattern as it stands now.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Pattern {
    /// Its identifier: that of the entry that added it.
    pub id: Id,
    /// What it is called.
    pub name: String,
    /// Anything else.
    pub note: String,
    /// Its roles, dropped ones too, in the order they were added.
    pub roles: Vec<Role>,
    /// Whether it was dropped.
    pub dropped: bool,
}

impl Pattern {
    /// Its views, in the order they were first named, dropped roles left out.
    #[must_use]
    pub fn views(&self) -> Vec<&str> {
        let mut views: Vec<&str> = Vec::new();
        for role in self.roles.iter().filter(|role| !role.dropped) {
            if !views.contains(&role.view.as_str()) {
                views.push(&role.view);
            }
        }
        views
    }

    /// The roles of a view that are not dropped.
    pub fn view<'a>(&'a self, view: &'a str) -> impl Iterator<Item = &'a Role> {
        self.roles.iter().filter(move |role| !role.dropped && role.view == view)
    }
}

/// How much cloth a role takes: a length of a width.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct ClothNeed {
    /// The length.
    #[serde(rename = "length_mm", with = "mm")]
    pub length: Length,
    /// The width it is stated for.
    #[serde(rename = "width_mm", with = "mm")]
    pub width: Length,
    /// Whether it is stated for pieces that all lie one way up, with nap.
    #[serde(default, skip_serializing_if = "core::ops::Not::not")]
    pub one_way: bool,
}

/// The masses per area that will do.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub struct MassRange {
    /// The lightest.
    #[serde(rename = "at_least_mg_per_m2", skip_serializing_if = "Option::is_none")]
    pub at_least: Option<MassPerArea>,
    /// The heaviest.
    #[serde(rename = "at_most_mg_per_m2", skip_serializing_if = "Option::is_none")]
    pub at_most: Option<MassPerArea>,
}

/// What one role of a view asks.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Role {
    /// Its identifier: that of the entry that added it.
    pub id: Id,
    /// The pattern it belongs to.
    pub pattern: Id,
    /// The view of the pattern.
    pub view: String,
    /// What the cloth is for: main, contrast, lining …
    pub name: String,
    /// Stretch, growth and recovery that are asked.
    pub demand: Demand,
    /// The constructions that will do; any when empty.
    pub constructions: Vec<Construction>,
    /// The kind of garment that its view is.
    pub kind: Option<GarmentKind>,
    /// The masses per area that will do.
    pub mass: MassRange,
    /// The drapes that will do; any when empty.
    pub drapes: Vec<Drape>,
    /// The finishes that will do; any when empty.
    pub finishes: Vec<Finish>,
    /// What the cloth must be made for; anything when absent.
    pub purpose: Option<Purpose>,
    /// How much cloth it takes.
    pub cloth: Option<ClothNeed>,
    /// Anything else, such as where the figures come from.
    pub note: String,
    /// Whether it was dropped.
    pub dropped: bool,
}

impl Role {
    /// A role that asks nothing so far.
    #[must_use]
    pub fn named(id: Id, pattern: Id, name: &str) -> Self {
        Self {
            id,
            pattern,
            view: String::new(),
            name: name.to_owned(),
            demand: Demand::default(),
            constructions: Vec::new(),
            kind: None,
            mass: MassRange::default(),
            drapes: Vec::new(),
            finishes: Vec::new(),
            purpose: None,
            cloth: None,
            note: String::new(),
            dropped: false,
        }
    }

    /// The grains along which stretch is asked.
    pub fn grains(&self) -> impl Iterator<Item = Grain> {
        let demand = self.demand;
        [Grain::Crosswise, Grain::Lengthwise, Grain::Bias]
            .into_iter()
            .filter(move |grain| !demand.stretch(*grain).is_empty())
    }

    /// The constructions that will do, in words: `woven or knit`; empty where any will.
    #[must_use]
    pub fn made(&self) -> String {
        self.constructions.iter().map(|one| one.word()).collect::<Vec<_>>().join(" or ")
    }

    /// Whether a construction will do.
    #[must_use]
    pub fn takes(&self, construction: Construction) -> bool {
        self.constructions.is_empty() || self.constructions.contains(&construction)
    }
}

/// What is said about a pattern: absent fields stay as they are.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub struct PatternChange {
    /// What it is called.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub name: Option<String>,
    /// Anything else.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub note: Option<String>,
}

/// What is said about a role: absent fields stay as they are, null clears.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
#[allow(clippy::option_option)] // Absent, null and a value are three things.
pub struct RoleChange {
    /// The view.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub view: Option<String>,
    /// What the cloth is for.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub name: Option<String>,
    /// Stretch, growth and recovery; always whole.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub demand: Option<DemandField>,
    /// The constructions that will do; any when empty.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub constructions: Option<Vec<Construction>>,
    /// The kind of garment.
    #[serde(rename = "garment_kind", skip_serializing_if = "Option::is_none", deserialize_with = "some")]
    pub kind: Option<Option<GarmentKind>>,
    /// The masses per area that will do; always whole.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub mass: Option<MassRange>,
    /// The drapes that will do; any when empty.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub drapes: Option<Vec<Drape>>,
    /// The finishes that will do; any when empty.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub finishes: Option<Vec<Finish>>,
    /// What the cloth must be made for.
    #[serde(skip_serializing_if = "Option::is_none", deserialize_with = "some")]
    pub purpose: Option<Option<Purpose>>,
    /// How much cloth it takes.
    #[serde(skip_serializing_if = "Option::is_none", deserialize_with = "some")]
    pub cloth: Option<Option<ClothNeed>>,
    /// Anything else.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub note: Option<String>,
}

/// A demand with its JSON.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(transparent)]
pub struct DemandField(#[serde(with = "demand")] pub Demand);

impl Role {
    /// Changes what `change` names and leaves the rest.
    pub fn apply(&mut self, change: RoleChange) {
        let RoleChange { view, name, demand, constructions, kind, mass, drapes, finishes, purpose, cloth, note } =
            change;
        self.view = view.unwrap_or_else(|| core::mem::take(&mut self.view));
        self.name = name.unwrap_or_else(|| core::mem::take(&mut self.name));
        self.demand = demand.map_or(self.demand, |DemandField(demand)| demand);
        self.constructions = constructions.unwrap_or_else(|| core::mem::take(&mut self.constructions));
        self.kind = kind.unwrap_or(self.kind);
        self.mass = mass.unwrap_or(self.mass);
        self.drapes = drapes.unwrap_or_else(|| core::mem::take(&mut self.drapes));
        self.finishes = finishes.unwrap_or_else(|| core::mem::take(&mut self.finishes));
        self.purpose = purpose.unwrap_or(self.purpose);
        self.cloth = cloth.unwrap_or(self.cloth);
        self.note = note.unwrap_or_else(|| core::mem::take(&mut self.note));
    }
}
