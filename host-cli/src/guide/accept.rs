//! What each answer does.

use jiff::Timestamp;
use tenter_core::{
    DEFAULT_REST_SECONDS, Figures, Held, Length, MAX_PULLS, MAX_REST_SECONDS, PullTest, Ratio, Scatter, Unit,
};

use super::{GRACE, Guide, NextQuestion, Pull, seconds_between, words};
use crate::input::doubt::{ClothFacts, Doubted, possible};
use crate::input::synonym::HELD;
use crate::input::{self, Why, Wrong};
use crate::log::json::Mm;
use crate::words::{doubt, errors};

/// Bare numbers that give marks outside these are asked for with their unit: 30 mm to 1 m.
const LIKELY_GAUGE: (Length, Length) = (Length::from_mm(30), Length::from_mm(1000));

/// What to say after an answer that was taken, or why it was not.
type Taken = Result<Vec<String>, String>;

impl Guide {
    /// Takes an answer to what was asked.
    pub(super) fn accept(&mut self, answer: &str, now: Timestamp) -> Taken {
        match self.draft.stage {
            NextQuestion::Held => self.held(answer),
            NextQuestion::Settling => self.settling(answer),
            NextQuestion::Gauge => self.gauge(answer),
            NextQuestion::Again => self.again(answer),
            NextQuestion::Wait => self.wait(answer),
            NextQuestion::Pull if answer.is_empty() => Ok(self.go(NextQuestion::Holding(now))),
            NextQuestion::Holding(_) if answer.is_empty() => Ok(self.go(NextQuestion::Extended)),
            NextQuestion::Pull | NextQuestion::Holding(_) | NextQuestion::Extended => self.extended(answer),
            NextQuestion::Release | NextQuestion::Resting(_) | NextQuestion::Recovered(_)
                if matches!(answer, "n" | "0") =>
            {
                // A long wait is offered once.
                if self.draft.lacks_rest() {
                    self.draft.wait = None;
                }
                Ok(self.go(NextQuestion::Next))
            }
            NextQuestion::Release if answer.is_empty() => Ok(self.go(NextQuestion::Resting(now))),
            NextQuestion::Release => Err("Enter as you let go, or n to read nothing this time".to_owned()),
            NextQuestion::Resting(since) => {
                let seconds = self.seconds_at(since, now);
                if answer.is_empty() {
                    return Ok(self.go(NextQuestion::Recovered(seconds)));
                }
                self.recovered(answer, seconds)
            }
            NextQuestion::Recovered(seconds) => self.recovered(answer, seconds),
            NextQuestion::Next => self.next(answer),
            NextQuestion::Done => Ok(Vec::new()),
        }
    }

    /// Takes back the newest answer.
    pub(super) fn undo(&mut self) -> Taken {
        let newest = self.draft.pulls.last().copied();
        let stage = match (self.draft.stage, newest) {
            (NextQuestion::Held, _) => return Err("nothing to take back yet".to_owned()),
            (NextQuestion::Settling, _) => NextQuestion::Held,
            (NextQuestion::Gauge, _) => NextQuestion::Settling,
            (NextQuestion::Again, _) => NextQuestion::Gauge,
            (NextQuestion::Wait, _) => NextQuestion::Again,
            (NextQuestion::Pull, None) => NextQuestion::Wait,
            (NextQuestion::Holding(_) | NextQuestion::Extended, _) => NextQuestion::Pull,
            (NextQuestion::Resting(_) | NextQuestion::Recovered(_), _) => NextQuestion::Release,
            (
                NextQuestion::Pull | NextQuestion::Next | NextQuestion::Done,
                Some(Pull { rest: Some((seconds, _)), .. }),
            ) => {
                if let Some(pull) = self.draft.pulls.last_mut() {
                    pull.rest = None;
                }
                NextQuestion::Recovered(seconds)
            }
            (NextQuestion::Pull | NextQuestion::Next | NextQuestion::Done | NextQuestion::Release, _) => {
                self.draft.pulls.pop();
                NextQuestion::Extended
            }
        };
        match stage {
            NextQuestion::Gauge => self.draft.gauge = None,
            NextQuestion::Again => self.draft.again = None,
            _ => {}
        }
        Ok(self.go(stage))
    }

    fn go(&mut self, stage: NextQuestion) -> Vec<String> {
        self.draft.stage = stage;
        Vec::new()
    }

    fn gauge(&mut self, answer: &str) -> Taken {
        let mut changed = self.draft.clone();
        let gauge = if answer.is_empty() { self.suggested_gauge() } else { self.length(answer)? };
        let unit = input::unit_of(answer);
        if unit.is_none() && !(LIKELY_GAUGE.0..=LIKELY_GAUGE.1).contains(&gauge) {
            let shown = gauge.show(self.draft.unit);
            return Err(format!("{shown} is an odd distance for two marks; if it is meant, type the unit too"));
        }
        changed.unit = unit.unwrap_or(changed.unit);
        changed.gauge = Some(Mm(gauge));
        changed.test().map_err(complaint)?;
        self.draft = changed;
        Ok(self.go(NextQuestion::Again))
    }

    fn again(&mut self, answer: &str) -> Taken {
        let mut changed = self.draft.clone();
        changed.again = match answer {
            "" => return Err("type what you read this time, or n to leave it out".to_owned()),
            "n" | "0" => None,
            answer => Some(Mm(self.length(answer)?)),
        };
        changed.test().map_err(complaint)?;
        self.draft = changed;
        Ok(self.go(NextQuestion::Wait))
    }

    fn held(&mut self, answer: &str) -> Taken {
        self.draft.held = match answer {
            "" => self.draft.held,
            "1" => Held::Flat,
            "2" => Held::Folded,
            "3" => Held::Strip,
            "4" => Held::Loop,
            word => match HELD.typed(word) {
                Some(held) => held,
                None => return Err("type 1, 2, 3 or 4, or Enter".to_owned()),
            },
        };
        Ok(self.go(NextQuestion::Settling))
    }

    fn settling(&mut self, answer: &str) -> Taken {
        self.draft.settled = match answer {
            "" | "y" | "f" => true,
            "n" | "0" => false,
            _ => return Err("Enter when the settling pull is done, n or 0 to leave it out".to_owned()),
        };
        // A draft from when the marks were typed first has them.
        Ok(self.go(if self.draft.gauge.is_some() { NextQuestion::Again } else { NextQuestion::Gauge }))
    }

    fn wait(&mut self, answer: &str) -> Taken {
        self.draft.wait = match answer {
            "" => self.draft.wait.or(Some(DEFAULT_REST_SECONDS)),
            "0" | "n" => None,
            "1" => Some(30),
            "2" => Some(60),
            "3" => Some(1800),
            text => match input::seconds(text).filter(|seconds| (1..=MAX_REST_SECONDS).contains(seconds)) {
                Some(seconds) => Some(seconds),
                None => return Err("type 1, 2, 3 or 0, or a time such as 45s or 5min".to_owned()),
            },
        };
        Ok(self.go(NextQuestion::Pull))
    }

    fn extended(&mut self, answer: &str) -> Taken {
        let asked = "type the length read while pulling, a bare number is in ";
        if answer.is_empty() {
            return Err(asked.to_owned() + words::plural(self.draft.unit));
        }
        let extended = self.length(answer)?;
        let mut changed = self.draft.clone();
        changed.pulls.push(Pull { extended: Mm(extended), rest: None });
        let test = self.believed(changed.test(), answer)?;
        self.draft = changed;
        self.go(if self.draft.reads_after_release() { NextQuestion::Release } else { NextQuestion::Next });
        Ok(self.stretch_so_far(&test, extended))
    }

    fn recovered(&mut self, answer: &str, seconds: u32) -> Taken {
        if answer.is_empty() {
            return Err(format!(
                "type the length after release, a bare number is in {}; n where there is none",
                words::plural(self.draft.unit)
            ));
        }
        // The time may be stated, as check takes it.
        let (text, seconds) = match answer.split_once('@') {
            Some((text, time)) => match input::seconds(time.trim()) {
                Some(seconds) => (text, seconds),
                None => return Err("type the time since release after the @, such as 60s or 30min".to_owned()),
            },
            None => (answer, seconds),
        };
        let recovered = self.length(text)?;
        let mut changed = self.draft.clone();
        if let Some(pull) = changed.pulls.last_mut() {
            pull.rest = Some((seconds, Mm(recovered)));
        }
        let test = changed.test().map_err(complaint)?;
        self.draft = changed;
        self.go(NextQuestion::Next);
        let growth = Figures::of(&test, Scatter::ASSUMED).ok().and_then(|figures| figures.rest);
        Ok(growth.map(|rest| words::growth(rest.growth.ratio, rest.seconds)).into_iter().collect())
    }

    fn next(&mut self, answer: &str) -> Taken {
        let pulls = self.draft.pulls.len();
        match answer {
            "" if pulls < self.draft.enough() => Ok(self.go(NextQuestion::Pull)),
            "a" | "1" if pulls < MAX_PULLS => Ok(self.go(NextQuestion::Pull)),
            "a" | "1" => Err(format!("{MAX_PULLS} pulls are as many as one test holds; finish with f")),
            "" | "f" | "2" if self.draft.lacks_rest() => Ok(self.go(NextQuestion::Release)),
            "" | "f" | "2" => Ok(self.go(NextQuestion::Done)),
            "3" => self.undo(),
            _ => Err("type a for another pull, f to finish, u to undo (or 1, 2, 3)".to_owned()),
        }
    }

    /// The time a reading counts for: the one that was waited for when it comes about then, else what has passed.
    fn seconds_at(&self, since: Timestamp, now: Timestamp) -> u32 {
        let passed = seconds_between(since, now);
        match self.draft.wait {
            Some(wait) if (wait..=wait.saturating_add(GRACE.min(wait / 3))).contains(&passed) => wait,
            _ => passed,
        }
    }

    fn length(&self, text: &str) -> Result<Length, String> {
        Length::parse(text, self.draft.unit).map_err(|error| error.to_string())
    }

    /// The test with the answer, unless it cannot be or should not be believed. What is doubted is asked once more: the
    /// same answer a second time is meant.
    fn believed(&mut self, test: Result<PullTest, Wrong>, answer: &str) -> Result<PullTest, String> {
        let unit = self.draft.unit;
        let test = test.map_err(|mut wrong| {
            if let Why::MoreThanCloth { unit: shown, .. } = &mut wrong.why {
                *shown = unit; // The draft is read in millimetres.
            }
            meant(wrong, unit)
        })?;
        possible(&test, Some(self.construction), unit).map_err(|wrong| meant(wrong, unit))?;
        let known = ClothFacts { construction: Some(self.construction), width: None };
        let Some(doubted) = Doubted::of(&test, known, false, unit) else { return Ok(test) };
        if self.doubted.as_deref() == Some(answer) {
            return Ok(test);
        }
        self.doubted = Some(answer.to_owned());
        let said = doubt::doubted(&doubted).pop().unwrap_or_default();
        Err(format!("{said} If it is what you read, type {answer} once more"))
    }

    fn stretch_so_far(&self, test: &PullTest, extended: Length) -> Vec<String> {
        let stretch = |test: &PullTest| Figures::of(test, Scatter::ASSUMED).ok().map(|all| all.stretch.ratio);
        let alone = || -> Option<Ratio> {
            let mut alone = PullTest::new(test.gauge(), test.grain()).ok()?;
            test.looks().skip(1).try_for_each(|look| alone.add_look(look.length)).ok()?;
            alone.add_pull(extended).ok()?;
            stretch(&alone)
        };
        let (Some(this), Some(all)) = (alone(), stretch(test)) else { return Vec::new() };
        vec![words::stretch(this, all, test.pulls().len(), self.table)]
    }
}

/// A complaint with what was probably meant.
fn meant(wrong: Wrong, unit: Unit) -> String {
    let likely = wrong.likely().map(|slip| format!("; {}", doubt::likely(slip, unit)));
    complaint(wrong) + &likely.unwrap_or_default()
}

fn complaint(wrong: Wrong) -> String {
    errors::why(&wrong)
}
