//! A garment, from the choice of its cloths to its wear.

use jiff::Timestamp;
use jiff::civil::Date;
use serde::{Deserialize, Serialize};
use tenter_core::Length;

use super::id::Id;
use super::json::{mm, some};
use super::pattern::GarmentKind;

/// The cloth chosen for a role.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Use {
    /// The role of the view.
    pub role: Id,
    /// The cloth.
    pub fabric: Id,
}

/// What was chosen for a garment beside its cloths, in the words of those who chose: its plan is made from it.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub struct Choices {
    /// What it is, where it is not what its view says.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub kind: Option<GarmentKind>,
    /// What it has beyond the usual, by the words for details.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub with: Vec<String>,
    /// What it does not have, of the usual.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub without: Vec<String>,
    /// Seams between its roles: `main+waistband=76cm`.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub seam: Vec<String>,
    /// The edge of its zip.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub zip: Option<String>,
    /// What the neck or waist seam takes of that edge.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub zip_neck: Option<String>,
    /// What the hem takes of that edge.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub zip_hem: Option<String>,
    /// How its zip ends: `closed` or `open`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub zip_ends: Option<String>,
    /// Its elastic: `soft waist 76cm`.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub elastic: Vec<String>,
    /// The edge that its cord draws in, laid open, and the width of the cord; empty where only a cord was said.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub cord: Option<String>,
    /// It is for a child.
    #[serde(skip_serializing_if = "core::ops::Not::not")]
    pub child: bool,
    /// It is sleepwear.
    #[serde(skip_serializing_if = "core::ops::Not::not")]
    pub sleepwear: bool,
    /// It fits tightly.
    #[serde(skip_serializing_if = "core::ops::Not::not")]
    pub tight: bool,
}

impl Choices {
    /// These with what is said anew: a new word takes the place of an old one, and what it is said to have it no longer lacks.
    #[must_use]
    pub fn changed(&self, said: &Self) -> Self {
        let one = |new: &Option<String>, old: &Option<String>| new.clone().or_else(|| old.clone());
        let all = |new: &[String], old: &[String]| if new.is_empty() { old.to_vec() } else { new.to_vec() };
        let words = |old: &[String], new: &[String], against: &[String]| -> Vec<String> {
            let kept = old.iter().filter(|word| !against.contains(word) && !new.contains(word));
            kept.chain(new).cloned().collect()
        };
        Self {
            kind: said.kind.or(self.kind),
            with: words(&self.with, &said.with, &said.without),
            without: words(&self.without, &said.without, &said.with),
            seam: all(&said.seam, &self.seam),
            zip: one(&said.zip, &self.zip),
            zip_neck: one(&said.zip_neck, &self.zip_neck),
            zip_hem: one(&said.zip_hem, &self.zip_hem),
            zip_ends: one(&said.zip_ends, &self.zip_ends),
            elastic: all(&said.elastic, &self.elastic),
            cord: one(&said.cord, &self.cord),
            child: said.child || self.child,
            sleepwear: said.sleepwear || self.sleepwear,
            tight: said.tight || self.tight,
        }
    }
}

/// How a garment stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum GarmentState {
    /// It is being made.
    Open,
    /// It is finished.
    Done,
    /// It was given up.
    Retired,
}

impl GarmentState {
    /// The word for it.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Open => "open",
            Self::Done => "done",
            Self::Retired => "retired",
        }
    }
}

/// A garment as it stands now.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Garment {
    /// Its identifier: that of the entry that began it.
    pub id: Id,
    /// The number by which it is called.
    pub number: u16,
    /// What it is called.
    pub name: String,
    /// The pattern it is made from.
    pub pattern: Option<Id>,
    /// The view of the pattern.
    pub view: String,
    /// The cloths chosen for its roles.
    pub uses: Vec<Use>,
    /// For whom it is made; may be empty.
    pub whom: String,
    /// The class or course in which it is made; may be empty.
    #[serde(default)]
    pub class: String,
    /// The day on which it is wanted.
    pub by: Option<Date>,
    /// Anything else.
    pub note: String,
    /// What was chosen for its plan.
    #[serde(default)]
    pub choices: Choices,
    /// The stages of its work that are done, by the words for stages.
    #[serde(default)]
    pub ticked: Vec<String>,
    /// When it was finished.
    pub done: Option<Timestamp>,
    /// Whether it was given up.
    pub dropped: bool,
}

impl Garment {
    /// A garment of which nothing is said so far.
    #[must_use]
    pub fn begun(id: Id) -> Self {
        Self {
            id,
            number: 0,
            name: String::new(),
            pattern: None,
            view: String::new(),
            uses: Vec::new(),
            whom: String::new(),
            class: String::new(),
            by: None,
            note: String::new(),
            choices: Choices::default(),
            ticked: Vec::new(),
            done: None,
            dropped: false,
        }
    }

    /// How it stands.
    #[must_use]
    pub const fn state(&self) -> GarmentState {
        match self {
            Self { dropped: true, .. } => GarmentState::Retired,
            Self { done: Some(_), .. } => GarmentState::Done,
            _ => GarmentState::Open,
        }
    }

    /// Whether it is still being made.
    #[must_use]
    pub const fn is_open(&self) -> bool {
        matches!(self.state(), GarmentState::Open)
    }

    /// Changes what `change` names and leaves the rest.
    pub fn apply(&mut self, change: GarmentChange) {
        let GarmentChange { number, name, pattern, view, uses, whom, class, by, note, choices, ticked } = change;
        set(&mut self.number, number);
        set(&mut self.name, name);
        set(&mut self.pattern, pattern.map(Some));
        set(&mut self.view, view);
        set(&mut self.uses, uses);
        set(&mut self.whom, whom);
        set(&mut self.class, class);
        set(&mut self.by, by);
        set(&mut self.note, note);
        set(&mut self.choices, choices);
        set(&mut self.ticked, ticked);
    }
}

fn set<T>(field: &mut T, value: Option<T>) {
    if let Some(value) = value {
        *field = value;
    }
}

/// What is said about a garment: absent fields stay as they are, null clears.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
#[allow(clippy::option_option)] // Absent, null and a value are three things.
pub struct GarmentChange {
    /// The number by which it is called, from 1 on.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub number: Option<u16>,
    /// What it is called.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub name: Option<String>,
    /// The pattern it is made from.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub pattern: Option<Id>,
    /// The view of the pattern.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub view: Option<String>,
    /// The cloths chosen for its roles, all of them.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub uses: Option<Vec<Use>>,
    /// For whom it is made. The only name of a person that the log asks for: it can be taken out again for good.
    #[serde(rename = "for", skip_serializing_if = "Option::is_none")]
    pub whom: Option<String>,
    /// The class or course in which it is made.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub class: Option<String>,
    /// The day on which it is wanted.
    #[serde(skip_serializing_if = "Option::is_none", deserialize_with = "some")]
    pub by: Option<Option<Date>>,
    /// Anything else.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub note: Option<String>,
    /// What was chosen for its plan, all of it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub choices: Option<Choices>,
    /// The stages of its work that are done, all of them.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub ticked: Option<Vec<String>>,
}

/// A length that was cut off a cloth for a garment, and not taken back.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct CutFor {
    /// The entry that tells it.
    pub id: Id,
    /// The garment.
    pub garment: Id,
    /// The role.
    pub role: Id,
    /// How much was cut.
    #[serde(rename = "length_mm", with = "mm")]
    pub length: Length,
}
