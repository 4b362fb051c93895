//! What entries have touched, which an engine with tables brings up to date at the end of a transaction.

use std::collections::BTreeSet;

use tenter_core::Unit;

use super::Arriving;
use crate::log::{Id, Subject};

/// What is to be brought up to date, in the order in which it must come: a test after its cloth, a role after its pattern.
#[derive(Debug, Default)]
pub struct Touched {
    /// Cloths.
    pub fabrics: BTreeSet<Id>,
    /// Patterns.
    pub patterns: BTreeSet<Id>,
    /// Roles of their views.
    pub roles: BTreeSet<Id>,
    /// Garments.
    pub garments: BTreeSet<Id>,
    /// People.
    pub people: BTreeSet<Id>,
    /// Pull tests.
    pub tests: BTreeSet<Id>,
    /// What was said of units, each with its entry.
    pub settings: Vec<(Id, Unit)>,
}

impl Touched {
    /// Notes what an entry is about.
    pub fn note(&mut self, entry: &Arriving) {
        self.settings.extend(entry.units.map(|units| (entry.id, units)));
        self.note_subject(entry.subject);
    }

    /// Notes what is to be brought up to date.
    pub fn note_subject(&mut self, subject: Subject) {
        match subject {
            Subject::Fabric(id) => self.fabrics.insert(id),
            Subject::Pattern(id) => self.patterns.insert(id),
            Subject::Test(id) => self.tests.insert(id),
            Subject::Role(id) => self.roles.insert(id),
            Subject::Garment(id) => self.garments.insert(id),
            Subject::Person(id) => self.people.insert(id),
            Subject::Log(_) | Subject::Tags => false,
        };
    }

    /// Notes what waited for something that is there now.
    pub fn note_waiting(&mut self, waiting: Id) {
        // It is one of the two; the other finds no entry that adds it and does nothing.
        self.note_subject(Subject::Test(waiting));
        self.note_subject(Subject::Role(waiting));
    }
}
