//! What the guide says and asks.

use jiff::Timestamp;
use tenter_core::{DEFAULT_REST_SECONDS, Grain, Held, Ratio, Table, Unit};

use super::{Draft, Guide, NextQuestion, seconds_between};
use crate::log::Construction;
use crate::words::quantity::counted;
use crate::words::terms::duration;

/// What is asked: words to read first, then the question itself.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Question {
    /// One line each.
    pub say: Vec<String>,
    /// The question, before which the answer is typed.
    pub question: String,
}

/// A clock that runs while an answer is awaited.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ClockLine {
    /// What it shows.
    pub shows: String,
    /// What to do when.
    pub hint: String,
    /// Whether it is time to read.
    pub due: bool,
}

/// The settling pull.
const SETTLE: &str = "Pull once to the first firm resistance and let go: this pull does not count.";

/// How long to hold before the length is read, in seconds (common practice, no source).
pub const HOLD: u32 = 10;

impl Guide {
    /// What to say at the beginning.
    pub const GREETING: &str = "u or - takes the last answer back, n or 0 skips a reading, q stops; all is kept.";

    /// What is asked now.
    #[must_use]
    pub fn ask(&self) -> Question {
        let ask = |say: &[&str], question: &str| Question {
            say: say.iter().map(|line| (*line).to_owned()).collect(),
            question: question.to_owned(),
        };
        let draft = &self.draft;
        match draft.stage {
            NextQuestion::Held => {
                let way = match draft.grain {
                    Grain::Lengthwise => "along the selvage",
                    Grain::Crosswise => "from selvage towards selvage",
                    Grain::Bias => "at 45° to the selvage",
                };
                let apart = shown(self.suggested_gauge(), draft.unit);
                let why = match self.construction {
                    Construction::Knit => {
                        format!("{apart} suits a knit: far enough apart, and two hands still hold it.")
                    }
                    Construction::Woven => format!("{apart} suits a woven: it gives little, long marks read it finer."),
                    Construction::Other => format!("{apart} suits most cloth; the less it gives, the longer."),
                };
                let hold = match draft.held {
                    Held::Folded => "Fold it along the line you pull, away from selvage and cut edge.",
                    _ => "Hold it as you will for every pull.",
                };
                let question =
                    format!("how do you hold it? 1) flat  2) folded  3) strip  4) loop [{}]: ", draft.held.word());
                ask(&[&format!("Make two marks {way}."), &why, hold], &question)
            }
            NextQuestion::Settling => ask(&[SETTLE], "did you make that first pull? Enter, or n: "),
            // The settling pull moves the marks, so that they are read after it.
            NextQuestion::Gauge => {
                let question = format!(
                    "between the marks, in {} [{}]: ",
                    plural(draft.unit),
                    shown(self.suggested_gauge(), draft.unit)
                );
                ask(&["Lay it flat and loose, and read."], &question)
            }
            NextQuestion::Again => {
                let say = "Lift it, lay it flat again, and read anew: two readings are worth more than one.";
                ask(&[say], &format!("between the marks this time, in {}, or n: ", plural(draft.unit)))
            }
            NextQuestion::Wait => {
                let chosen = draft.wait.map_or_else(|| duration(DEFAULT_REST_SECONDS), duration);
                let question = format!("read after release: 1) 30 s  2) 1 min  3) 30 min  0) never [{chosen}]: ");
                ask(&[], &question.replace("[60 s]", "[1 min]"))
            }
            NextQuestion::Pull => {
                let say =
                    format!("Pull {}: to the first firm resistance, no further, and hold.", draft.pulls.len() + 1);
                ask(&["", &say], "Enter when you hold it: ")
            }
            NextQuestion::Holding(_) | NextQuestion::Extended => {
                ask(&[], &format!("length while pulled, in {}: ", plural(draft.unit)))
            }
            NextQuestion::Release => ask(&[], "let go and lay it flat; Enter as you let go: "),
            NextQuestion::Resting(_) => ask(&[], &format!("length after release, in {}: ", plural(draft.unit))),
            NextQuestion::Recovered(seconds) => {
                let question = format!("length {} after release, in {}: ", time(seconds), plural(draft.unit));
                ask(&[], &question)
            }
            NextQuestion::Next => {
                let default = if draft.pulls.len() < draft.enough() { "again" } else { "finish" };
                ask(&[], &format!("a) again  f) finish  u) undo [{default}]: "))
            }
            NextQuestion::Done => ask(&[], ""),
        }
    }

    /// The clock that runs while an answer is awaited.
    #[must_use]
    pub fn clock(&self, now: Timestamp) -> Option<ClockLine> {
        match (self.draft.stage, self.draft.wait) {
            (NextQuestion::Holding(since), _) => {
                let held = seconds_between(since, now);
                let due = held >= HOLD;
                let hint = if due { "read it now".to_owned() } else { format!("read it at about {HOLD} s") };
                Some(ClockLine { shows: format!("held {}", time(held)), hint, due })
            }
            (NextQuestion::Resting(since), wait) => {
                let passed = seconds_between(since, now);
                let left = wait.unwrap_or_default().saturating_sub(passed);
                let hint = match left {
                    0 => "read it now".to_owned(),
                    left => format!("read it in {} (Enter: now)", time(left)),
                };
                Some(ClockLine { shows: format!("released {} ago", time(passed)), hint, due: left == 0 })
            }
            _ => None,
        }
    }
}

impl Draft {
    /// What there is of it, for somebody who comes back to it.
    #[must_use]
    pub fn so_far(&self, day: &str) -> String {
        let gauge = self
            .gauge
            .map_or_else(|| "no length yet".to_owned(), |gauge| format!("marks {}", shown(gauge.0, self.unit)));
        let pulls = counted(self.pulls.len(), "pull");
        format!("a test was broken off: {}, {gauge}, {pulls}, begun {day}", self.grain.word())
    }
}

/// The unit of bare numbers, in a sentence.
pub(super) const fn plural(unit: Unit) -> &'static str {
    match unit {
        Unit::Mm => "mm",
        Unit::Cm => "cm",
        Unit::Inch => "inches",
    }
}

fn shown(length: tenter_core::Length, unit: Unit) -> String {
    length.show(unit).to_string()
}

/// `7 s`, `1:05 min`, `1:02:00 h`.
fn time(seconds: u32) -> String {
    let (minutes, rest) = (seconds / 60, seconds % 60);
    match minutes {
        0 => format!("{rest} s"),
        1..60 => format!("{minutes}:{rest:02} min"),
        _ => format!("{}:{:02}:{rest:02} h", minutes / 60, minutes % 60),
    }
}

/// The stretch of a pull, and of all so far.
pub(super) fn stretch(this: Ratio, all: Ratio, pulls: usize, table: &Table) -> String {
    let class = table.class(all).name;
    match pulls {
        1 => format!("stretch {} %, {class}", this.percent(1)),
        _ => format!("stretch {} % this time, {} % over {pulls} pulls, {class}", this.percent(1), all.percent(1)),
    }
}

/// The growth so far, at the longest rest.
pub(super) fn growth(growth: Ratio, seconds: u32) -> String {
    format!("growth {} %, {} after release", growth.percent(1), duration(seconds))
}
