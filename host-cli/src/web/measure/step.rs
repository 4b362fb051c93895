//! One step of a pull test.

use askama::Template;

use super::words::{Asks, GuideStep, step as step_of, symbol};
use super::{Measuring, answer};
use crate::guide::NextQuestion;
use crate::log::Id;
use crate::web::part::PagePart;
use crate::web::shell::{Place, Shell};
use crate::web::visit::{Answered, Visit, cloth};
use crate::web::{Method, Response, drawing};
use crate::words::page::told;

#[derive(Template)]
#[template(path = "web/step.html")]
struct Page {
    address: String,
    steps: u32,
    drawing: &'static str,
    say: Vec<String>,
    said: Vec<String>,
    wrong: String,
    typed: String,
    unit: &'static str,
    suggested: String,
    presses: Vec<(&'static str, String)>,
    length: bool,
    leave_out: Option<(&'static str, &'static str)>,
    clock: Option<Clock>,
    may_go_back: bool,
    so_far: String,
}

/// A clock that the script runs.
struct Clock {
    /// Seconds since it began.
    passed: u32,
    /// When to read.
    due: u32,
    /// What it counts.
    words: String,
    is_due: bool,
}

/// Shows the step at which a test stands, or takes its answer.
pub fn step(visit: &mut Visit<'_>, id: &str) -> Answered {
    let Some(mut measuring) = Measuring::kept(visit, id)? else { return gone(visit, id) };
    if visit.request.method == Method::Get {
        return match measuring.draft.stage {
            NextQuestion::Done => answer::show(visit, &measuring, None),
            _ => Ok(page(visit, &measuring, "", "").page()),
        };
    }
    if visit.sent.get("do") == "forget" {
        measuring.forget(visit)?;
        return Ok(Response::see("/measure"));
    }
    let address = measuring.address();
    // A step that was answered before, by an impatient finger or in another window.
    if visit.sent.get("step").parse() != Ok(measuring.steps) {
        return Ok(Response::see(&address));
    }
    let typed = visit.sent.get("answer").trim().to_owned();
    let line = if visit.sent.get("do") == "back" { "u" } else { &typed };
    let before = measuring.guide();
    let (after, reply) = before.clone().step(line, visit.here.now());
    if after.draft == before.draft {
        // Nothing was taken: a doubt is asked once more, anything else says what to type.
        measuring.doubted = after.doubted;
        measuring.keep(visit)?;
        let wrong = reply.say.iter().map(|line| told(line)).collect::<Vec<_>>().join(" ");
        return Ok(page(visit, &measuring, &wrong, &typed).with_status(422));
    }
    measuring.draft = after.draft;
    measuring.doubted = None;
    measuring.said = reply.say;
    measuring.steps = measuring.steps.saturating_add(1);
    measuring.keep(visit)?;
    Ok(Response::see(&address))
}

/// A test that is not being made: perhaps because it is stored.
pub fn gone(visit: &Visit<'_>, id: &str) -> Answered {
    let stored = match id.to_uppercase().parse::<Id>() {
        Ok(id) => visit.log.test(id)?,
        Err(_) => None,
    };
    match stored {
        Some(test) => Ok(Response::see(&test.said.fabric.map_or_else(|| "/inbox".to_owned(), cloth))),
        None => Ok(Response::see("/measure")),
    }
}

fn page(visit: &Visit<'_>, measuring: &Measuring, wrong: &str, typed: &str) -> Shell {
    let guide = measuring.guide();
    let GuideStep { title, say, drawing, asks } = step_of(&guide);
    let (presses, length, leave_out) = match asks {
        Asks::Press(presses) => (presses, false, None),
        Asks::Length(leave_out) => (Vec::new(), true, leave_out),
        Asks::Nothing => (Vec::new(), false, None),
    };
    let now = visit.here.now();
    let clock = guide.clock(now).map(|line| {
        let (since, due) = match measuring.draft.stage {
            NextQuestion::Resting(since) => (since, measuring.draft.wait.unwrap_or_default()),
            NextQuestion::Holding(since) => (since, crate::guide::HOLD),
            _ => (now, 0),
        };
        let passed = u32::try_from(now.duration_since(since).as_secs().max(0)).unwrap_or(u32::MAX);
        Clock { passed, due, words: format!("{}: {}", line.shows, told(&line.hint)), is_due: line.due }
    });
    let suggested = match measuring.draft.stage {
        NextQuestion::Gauge => guide.suggested_gauge().show(measuring.draft.unit).to_string(),
        _ => String::new(),
    };
    let mut shell = Shell::new(Place::Measure, &title);
    shell.push(PagePart::Html(
        Page {
            address: measuring.address(),
            steps: measuring.steps,
            drawing: drawing::of(drawing),
            say: say.iter().map(|line| told(line)).collect(),
            said: measuring.said.iter().map(|line| told(line)).collect(),
            wrong: wrong.to_owned(),
            typed: typed.to_owned(),
            unit: symbol(measuring.draft.unit),
            suggested,
            presses,
            length,
            leave_out,
            clock,
            may_go_back: measuring.draft.stage != NextQuestion::Held,
            so_far: told(&so_far(measuring)),
        }
        .render()
        .unwrap_or_default(),
    ));
    shell
}

/// What was read so far.
fn so_far(measuring: &Measuring) -> String {
    let draft = &measuring.draft;
    let mut parts = vec![draft.grain.word().to_owned()];
    let shown = |length: tenter_core::Length| length.show(draft.unit).to_string();
    parts.extend(draft.gauge.map(|gauge| format!("marks {}", shown(gauge.0))));
    let pulls: Vec<String> = draft.pulls.iter().map(|pull| shown(pull.extended.0)).collect();
    if !pulls.is_empty() {
        parts.push(format!("pulled to {}", pulls.join(", ")));
    }
    parts.join("; ")
}
