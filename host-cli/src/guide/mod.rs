//! A pull test step by step, for a person who has one hand on the cloth.
//!
//! [`Guide::step`] is all of the procedure: what was asked, a line that was typed and the time give what is asked next.
//! It does no I/O and has no clock; `terminal` turns its words into lines, a running clock and key presses.

mod accept;
pub mod begin;
pub mod draft;
#[cfg(feature = "desk")]
pub mod terminal;
mod words;

use jiff::Timestamp;
use tenter_core::{Length, Table, Unit};

use crate::input::synonym::reply::reply;
use crate::log::Construction;
pub use draft::{Draft, NextQuestion, Pull};
pub use words::{ClockLine, HOLD, Question};

/// A reading typed this soon after the countdown's end was read at its end, in seconds, and never longer than a third of
/// the wait; later ones carry the time that has passed.
pub const GRACE: u32 = 20;

/// A test that is being made, and what its prompts depend on.
#[derive(Clone, Debug, PartialEq)]
pub struct Guide {
    /// What was answered so far.
    pub draft: Draft,
    /// How the cloth is made.
    pub construction: Construction,
    /// The table of stretch classes.
    pub table: &'static Table,
    /// The newest answer that was doubted.
    pub doubted: Option<String>,
}

/// What to say after a step.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct GuideReply {
    /// What to say, one line each.
    pub say: Vec<String>,
    /// Whether to stop for now; else [`Guide::ask`] says what is asked next, until the [question](NextQuestion) is done.
    pub leave: bool,
}

impl Guide {
    /// Takes a line that was typed at a time. A line that cannot be used changes nothing.
    #[must_use]
    pub fn step(mut self, line: &str, now: Timestamp) -> (Self, GuideReply) {
        let answer = line.trim().to_lowercase();
        let answer = reply(&answer);
        let leave = answer == "q";
        let taken = match answer {
            "q" => Ok(Vec::new()),
            "u" | "-" => self.undo(),
            answer => self.accept(answer, now),
        };
        let say = taken.unwrap_or_else(|complaint| vec![complaint]);
        (self, GuideReply { say, leave })
    }

    /// The gauge length that suits the cloth: wovens give little, so longer marks read them finer; a knit pulled on long
    /// marks is longer than two hands hold (common practice, no source).
    #[must_use]
    pub const fn suggested_gauge(&self) -> Length {
        match (self.construction, self.draft.unit) {
            (Construction::Knit, Unit::Inch) => Length::from_inch_64ths(4 * 64),
            (Construction::Knit, _) => Length::from_mm(100),
            (_, Unit::Inch) => Length::from_inch_64ths(8 * 64),
            (_, _) => Length::from_mm(200),
        }
    }
}

/// Whole seconds from one time to another; none where the clock was set back.
fn seconds_between(from: Timestamp, to: Timestamp) -> u32 {
    u32::try_from(to.duration_since(from).as_secs().max(0)).unwrap_or(u32::MAX)
}

#[cfg(test)]
mod tests;
