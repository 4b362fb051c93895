//! What a copy of a log remembers of the desk it lies on; never exchanged.

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};

use super::id::Id;
use super::json::read;
use super::tag::TagRange;

/// What is remembered at one desk.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub struct Desk {
    /// Who pulls here where nobody says otherwise.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub who: Option<Id>,
    /// Under what name this copy of the log takes tags; none where it never did.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub copy: Option<Id>,
    /// The tags that are given here; none for all.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub tags: Option<TagRange>,
    /// Who pulls with a handheld, by its number.
    #[serde(skip_serializing_if = "BTreeMap::is_empty")]
    pub handhelds: BTreeMap<u32, Id>,
    /// The tags that were lent to each handheld, so that nobody else gives them.
    #[serde(skip_serializing_if = "BTreeMap::is_empty")]
    pub lent: BTreeMap<u32, Vec<TagRange>>,
}

impl Desk {
    /// The name under which it is kept.
    pub const NAME: &'static str = "desk";

    /// Whether a tag was ever lent to a handheld.
    #[must_use]
    pub fn has_lent(&self, device: u32, tag: u16) -> bool {
        self.lent.get(&device).is_some_and(|ranges| ranges.iter().any(|range| range.holds(tag)))
    }

    /// The handheld to which a tag was lent.
    #[must_use]
    pub fn borrower(&self, tag: u16) -> Option<u32> {
        self.lent.keys().copied().find(|device| self.has_lent(*device, tag))
    }

    /// From the text under which it is kept; nothing is remembered where that cannot be read.
    #[must_use]
    pub fn read(text: Option<&str>) -> Self {
        text.and_then(|text| read(text).ok()).unwrap_or_default()
    }

    /// As it is kept.
    #[must_use]
    pub fn text(&self) -> String {
        serde_json::to_string(self).unwrap_or_default()
    }
}
