//! What a plan is made from.

use tenter_core::making::caution::Job;
use tenter_core::making::elastic::Drawcord;
use tenter_core::making::garment::{Details, GarmentKind, SeamKind};
use tenter_core::{Confidence, Grain, Length, Unit};

use crate::finding::fit::{Candidate, Stock};
use crate::finding::size::Sized;
use crate::log::{Fabric, Pattern, Role};

/// A role with the cloth chosen for it.
#[derive(Debug)]
pub struct RoleChoice<'a> {
    /// The role.
    pub role: &'a Role,
    /// The cloth with its answer; none where nothing is there for it.
    pub candidate: Option<Candidate<'a>>,
}

impl<'a> RoleChoice<'a> {
    pub(super) fn fabric(&self) -> Option<&'a Fabric> {
        self.candidate.as_ref().map(|candidate| candidate.fabric)
    }
}

/// A seam between two roles that was asked for.
#[derive(Debug, Clone, Copy)]
pub struct SeamWanted {
    /// The roles, by their place in the list.
    pub roles: [usize; 2],
    /// Which seam it is; none where the parts decide.
    pub name: Option<SeamKind>,
    /// Its length.
    pub length: Length,
    /// How it lies on the grain of each; none where the parts decide.
    pub grains: Option<[Grain; 2]>,
}

/// The garment.
#[derive(Debug, Clone, Copy)]
pub struct WantedKind {
    /// What it is.
    pub kind: GarmentKind,
    /// What it has.
    pub details: Details,
}

/// The width of a cord of which nobody said it (the tool's own).
pub const USUAL_CORD: Length = Length::from_mm(5);

/// A cord for an edge.
#[derive(Debug, Clone, Copy)]
pub struct PlannedCord {
    /// The cord with its casing.
    pub cord: Drawcord,
    /// The edge, laid open.
    pub edge: Length,
    /// The width of the cord; none where nobody said it.
    pub width: Option<Length>,
    /// The unit of its lengths.
    pub unit: Unit,
}

/// What a plan is made from.
#[derive(Debug)]
pub struct PlanWanted<'a> {
    /// The pattern.
    pub pattern: &'a Pattern,
    /// The view.
    pub view: &'a str,
    /// The garment; none where nobody said what it is.
    pub kind: Option<WantedKind>,
    /// Roles and their cloths.
    pub chosen: Vec<RoleChoice<'a>>,
    /// Seams between them that were asked for, with their length.
    pub seams: Vec<SeamWanted>,
    /// Zips and elastic.
    pub notions: Sized,
    /// The cord, where the edge that it draws in was said.
    pub cord: Option<PlannedCord>,
    /// What else a caution depends on.
    pub job: Job,
    /// The stash.
    pub stock: &'a Stock,
    /// How sure an answer is.
    pub confidence: Confidence,
}
