//! A stored pull test in words.

use tenter_core::{Answer, Part};

use crate::finding::cloth::stretch_of;
use crate::finding::pull::Pulled;
use crate::log::{Here, StoredTest};
use crate::plain::isolated;
use crate::words::{answer, check, quantity};

/// What became of the test.
#[must_use]
pub fn stored(pulled: &Pulled, here: Here) -> String {
    let Pulled { fabric, test, by, .. } = pulled;
    let by = by.as_deref().map(|by| format!(" by {}", isolated(by))).unwrap_or_default();
    let (day, name) = (quantity::minute(test.said.pulled, here), isolated(&fabric.name));
    format!("{} on {}  {name}, pulled {day}{by}", test.id.short(), fabric.tag)
}

/// What a test says by itself, where others count too.
#[must_use]
pub fn alone(answer: Answer, part: &Part) -> String {
    format!("{} by itself; {}", answer::phrase(answer), check::part(part))
}

/// A test in one line: what it measured, and when.
#[must_use]
pub fn line_about(test: &StoredTest, here: Here) -> String {
    let said = &test.said;
    let stretch = stretch_of(test).map(|stretch| quantity::percent(stretch.ratio)).unwrap_or_default();
    format!("{}, {} {stretch} of {}", test.id.short(), said.test.grain().word(), quantity::day(said.pulled, here))
}
