//! Doubts as JSON.

use serde::Serialize;
use tenter_core::{Doubt, PullTest, Unit};

use crate::input::Doubted;
use crate::words::doubt as words;

/// A doubt.
#[derive(Debug, Serialize)]
pub struct DoubtJson {
    kind: &'static str,
    text: String,
    remedy: String,
}

/// The doubts about a test.
#[must_use]
pub fn of(doubts: &[Doubt], test: &PullTest, unit: Unit) -> Vec<DoubtJson> {
    let one = |doubt: &Doubt| DoubtJson {
        kind: doubt.word(),
        text: words::line(doubt, test, unit),
        remedy: words::remedy(doubt, unit),
    };
    doubts.iter().map(one).collect()
}

#[derive(Serialize)]
struct NotStored {
    stored: bool,
    answer: &'static str,
    doubts: Vec<DoubtJson>,
}

/// A test that was not stored, because it should not be believed.
#[must_use]
pub fn not_stored(doubted: &Doubted) -> String {
    let doubts = of(&doubted.doubts, &doubted.test, doubted.unit);
    let answer = tenter_core::Answer::Close.word();
    super::line(&NotStored { stored: false, answer, doubts })
}
