//! A pull test: asked step by step, one thing a screen, or on one form; then its answer, and where it is kept.
//!
//! What was answered is a draft in the log's own keeping after every step, so that a reload, another window or a dead
//! battery lose nothing. A form carries the number of its step: sent twice, it answers once.

mod answer;
mod begin;
mod form;
mod step;
mod store;
mod words;

pub use answer::inbox;
pub use begin::{begin, cloths};
pub use form::at_once;
pub use step::step;
pub use store::store;

use jiff::{SignedDuration, Timestamp};
use serde::{Deserialize, Serialize};
use tenter_core::Table;

use super::visit::Visit;
use crate::deed::Refused;
use crate::guide::{Draft, Guide, NextQuestion};
use crate::log::{Construction, Fabric, Id, Role};

/// Under what name drafts of pages are kept.
const DRAFTS: &str = "page";
/// A swatch that was held for longer was let go of meanwhile.
const HELD_AT_MOST: SignedDuration = SignedDuration::from_mins(5);

/// A test that is being made at a page.
#[derive(Clone, Debug, Serialize, Deserialize)]
pub struct Measuring {
    /// What was answered.
    pub draft: Draft,
    /// How the cloth is made.
    pub construction: Construction,
    /// The cloth, where it was chosen beforehand.
    pub cloth: Option<Id>,
    /// The role that asks.
    pub role: Option<Id>,
    /// How many steps were made.
    pub steps: u32,
    /// The newest answer that was doubted.
    pub doubted: Option<String>,
    /// What there is to say of the newest answer.
    pub said: Vec<String>,
    /// Whether it was typed on one form.
    pub at_once: bool,
}

impl Measuring {
    /// A test that begins.
    pub const fn new(draft: Draft, construction: Construction) -> Self {
        let (cloth, role, doubted) = (None, None, None);
        Self { draft, construction, cloth, role, steps: 0, doubted, said: Vec::new(), at_once: false }
    }

    /// The address of its page.
    pub fn address(&self) -> String {
        address(self.draft.id)
    }

    /// The guide at the place where it stands.
    pub fn guide(&self) -> Guide {
        let (draft, doubted) = (self.draft.clone(), self.doubted.clone());
        Guide { draft, construction: self.construction, table: &Table::OWN, doubted }
    }

    /// What is kept of it; none where it is unknown, or damaged.
    pub fn kept(visit: &Visit<'_>, id: &str) -> Result<Option<Self>, Refused> {
        let Ok(id) = id.to_uppercase().parse::<Id>() else { return Ok(None) };
        let text = visit.log.draft(&format!("{DRAFTS}/{id}"))?;
        Ok(text.and_then(|text| Self::read(&text, visit.here.now())))
    }

    fn read(text: &str, now: Timestamp) -> Option<Self> {
        let mut measuring: Self = serde_json::from_str(text).ok()?;
        if let NextQuestion::Holding(since) = measuring.draft.stage
            && now.duration_since(since) > HELD_AT_MOST
        {
            measuring.draft.stage = NextQuestion::Pull;
        }
        Some(measuring)
    }

    /// All that are kept, the newest first.
    pub fn all(visit: &Visit<'_>) -> Result<Vec<Self>, Refused> {
        let now = visit.here.now();
        let kept = visit.log.drafts_under(DRAFTS)?;
        let mut all: Vec<Self> = kept.iter().filter_map(|(_, text)| Self::read(text, now)).collect();
        all.sort_by_key(|one| core::cmp::Reverse(one.draft.id));
        Ok(all)
    }

    /// The name under which it is kept.
    pub fn name(&self) -> String {
        format!("{DRAFTS}/{}", self.draft.id)
    }

    /// Keeps it.
    pub fn keep(&self, visit: &mut Visit<'_>) -> Result<(), Refused> {
        let text = crate::json::line(self);
        Ok(visit.log.set_draft(&self.name(), Some(&text))?)
    }

    /// Forgets it.
    pub fn forget(&self, visit: &mut Visit<'_>) -> Result<(), Refused> {
        Ok(visit.log.set_draft(&self.name(), None)?)
    }

    /// The cloth that was chosen beforehand, as it is now.
    pub fn fabric(&self, visit: &Visit<'_>) -> Result<Option<Fabric>, Refused> {
        Ok(self.cloth.map(|id| visit.log.fabric(id)).transpose()?.flatten())
    }

    /// The role that asks, as it is now.
    pub fn asking(&self, visit: &Visit<'_>) -> Result<Option<Role>, Refused> {
        let Some(role) = self.role else { return Ok(None) };
        Ok(super::cloths::chosen(&*visit.log, &role.to_string())?.map(|(_, role)| role))
    }
}

/// The address of a test that is being made.
fn address(id: Id) -> String {
    format!("/measure/{}", id.to_string().to_lowercase())
}
