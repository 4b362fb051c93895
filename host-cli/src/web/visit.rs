//! What every page needs: the log, what was asked, and how figures are shown.

use tenter_core::{Confidence, Table, Unit};

use super::fields::Fields;
use super::{Request, Response};
use crate::deed::Refused;
use crate::finding::shown::ShownRules;
use crate::log::{Fabric, Fact, Here, Id};
use crate::store::{Change as _, LogWithDrafts, Once, Read};

/// One request with its log.
pub struct Visit<'v> {
    /// The log.
    pub log: &'v mut dyn LogWithDrafts,
    /// What is asked.
    pub request: &'v Request,
    /// What stands behind the question mark.
    pub query: Fields,
    /// What was sent.
    pub sent: Fields,
    /// The unit of bare numbers and of the texts.
    pub unit: Unit,
    /// The time, chance and wall clock.
    pub here: Here,
}

/// What a page answers, or why it cannot.
pub type Answered = Result<Response, Refused>;

impl<'v> Visit<'v> {
    /// One request.
    pub fn new(log: &'v mut dyn LogWithDrafts, request: &'v Request) -> Result<Self, Refused> {
        let (unit, here) = (log.units()?.unwrap_or(Unit::Cm), log.here());
        let (query, sent) = (Fields::of_query(request), Fields::of_body(request));
        Ok(Self { log, request, query, sent, unit, here })
    }

    /// How figures are shown.
    pub fn rules(&self) -> ShownRules {
        ShownRules { confidence: Confidence::default(), table: &Table::OWN, unit: self.unit }
    }

    /// The cloth of an address.
    pub fn fabric(&self, id: &str) -> Result<Fabric, Refused> {
        let none = || Refused::NoCloth(id.to_owned());
        self.log.fabric(id.to_uppercase().parse().map_err(|_| none())?)?.ok_or_else(none)
    }

    /// Does a deed once, however often its form is sent; the first entry's identifier and, where it was done now, the value.
    pub fn once<T>(
        &mut self,
        mut make: impl FnMut(&dyn Read) -> Result<(Vec<Fact>, T), Refused>,
    ) -> Result<(Option<Id>, Option<T>), Refused> {
        let once = self.sent.once(self.here);
        Ok(match self.log.change_once(once, &mut make)? {
            Once::Now(entries, value) => (entries.first().map(|entry| entry.id), Some(value)),
            Once::Before(entry) => (Some(entry.id), None),
        })
    }
}

/// The address of a cloth.
pub fn cloth(id: Id) -> String {
    format!("/cloths/{}", id.to_string().to_lowercase())
}
