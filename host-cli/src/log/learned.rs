//! What worked on a cloth, and how it wore.

use serde::{Deserialize, Serialize};

use super::id::Id;

/// What was learned of a cloth while it was sewn and worn, each in the user's words; empty where nothing was said.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub struct Learned {
    /// The needle.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub needle: String,
    /// The stitch.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub stitch: String,
    /// The length of the stitch.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub length: String,
    /// The pressure of the foot.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub pressure: String,
    /// The tension of the thread.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub tension: String,
    /// The thread.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub thread: String,
    /// How it wore.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub wore: String,
    /// Anything else.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub note: String,
    /// The garment that taught it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub garment: Option<Id>,
}

impl Learned {
    /// How it was sewn, in the order in which it is told: a label, and the user's words.
    #[must_use]
    pub fn sewn(&self) -> Vec<(&'static str, &str)> {
        let all = [
            ("needle", self.needle.as_str()),
            ("stitch", &self.stitch),
            ("length", &self.length),
            ("pressure", &self.pressure),
            ("tension", &self.tension),
            ("thread", &self.thread),
        ];
        all.into_iter().filter(|(_, words)| !words.is_empty()).collect()
    }

    /// Whether nothing was said.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.sewn().is_empty() && self.wore.is_empty() && self.note.is_empty()
    }
}

/// Something learned of a cloth, as it stands now.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Lesson {
    /// Its identifier: that of the entry that told it.
    pub id: Id,
    /// What was learned.
    #[serde(flatten)]
    pub learned: Learned,
    /// Whether it was retired.
    #[serde(default)]
    pub dropped: bool,
}
