//! What the page asks at each step.

use tenter_core::{Held, Unit};

use crate::guide::{Guide, NextQuestion};

/// How a step is answered.
pub enum Asks {
    /// With one of a few buttons: what is answered, what stands on it. The first is what most would press.
    Press(Vec<(&'static str, String)>),
    /// With a length; and perhaps a button that leaves it out.
    Length(Option<(&'static str, &'static str)>),
    /// Nothing more is asked.
    Nothing,
}

/// A step as the page shows it.
pub struct GuideStep {
    /// What it is about.
    pub title: String,
    /// What to do, one sentence each.
    pub say: Vec<String>,
    /// Which drawing shows it.
    pub drawing: &'static str,
    /// How it is answered.
    pub asks: Asks,
}

/// The unit of bare numbers, beside a field.
pub const fn symbol(unit: Unit) -> &'static str {
    unit.symbol()
}

/// The step at which a guide stands.
pub fn step(guide: &Guide) -> GuideStep {
    let said = guide.ask().say.into_iter().filter(|line| !line.is_empty()).collect::<Vec<_>>();
    let pull = guide.draft.pulls.len().saturating_add(1);
    let press = |buttons: &[(&'static str, &str)]| {
        Asks::Press(buttons.iter().map(|(answer, words)| (*answer, (*words).to_owned())).collect())
    };
    let (title, drawing, asks) = match guide.draft.stage {
        NextQuestion::Held => {
            let word = |held: Held| match held {
                Held::Flat => ("1", "One layer, flat"),
                Held::Folded => ("2", "Folded"),
                Held::Strip => ("3", "A cut strip"),
                Held::Loop => ("4", "A loop"),
            };
            // What was chosen beforehand stands first.
            let mut ways = [Held::Folded, Held::Flat, Held::Strip, Held::Loop];
            ways.sort_by_key(|way| *way != guide.draft.held);
            ("Mark and hold the cloth".to_owned(), "fold", press(&ways.map(word)))
        }
        NextQuestion::Settling => {
            let done = press(&[("", "I pulled it once"), ("n", "Skip it")]);
            ("Settle it".to_owned(), "pull", done)
        }
        NextQuestion::Gauge => ("Read the marks".to_owned(), "marks", Asks::Length(None)),
        NextQuestion::Again => ("Read the marks again".to_owned(), "marks", Asks::Length(Some(("n", "Skip it")))),
        NextQuestion::Wait => {
            let times = press(&[("3", "Half an hour"), ("2", "1 minute"), ("1", "30 seconds"), ("0", "Never")]);
            ("When will you read it after you let go?".to_owned(), "rest", times)
        }
        NextQuestion::Pull => (format!("Pull {pull}"), "pull", press(&[("", "I hold it")])),
        NextQuestion::Holding(_) | NextQuestion::Extended => {
            (format!("Pull {pull}: read while you hold"), "read", Asks::Length(None))
        }
        NextQuestion::Release => {
            let go = press(&[("", "I let go"), ("n", "Read nothing this time")]);
            ("Let go, and lay it flat".to_owned(), "rest", go)
        }
        NextQuestion::Resting(_) | NextQuestion::Recovered(_) => {
            ("Read it after release".to_owned(), "marks", Asks::Length(Some(("n", "Skip it"))))
        }
        NextQuestion::Next => {
            let more = if guide.draft.pulls.len() < guide.draft.enough() {
                press(&[("a", "Pull again"), ("f", "Finish")])
            } else {
                press(&[("f", "Finish"), ("a", "Pull again")])
            };
            ("Once more?".to_owned(), "pull", more)
        }
        NextQuestion::Done => (String::new(), "", Asks::Nothing),
    };
    let mut say = said;
    match guide.draft.stage {
        NextQuestion::Wait => say.push(
            "Cloth goes on creeping back. Half an hour is what patterns mean; you may go on with other things."
                .to_owned(),
        ),
        NextQuestion::Holding(_) => {
            say.push("Hold still for about ten seconds, look straight down on the tape, and read.".to_owned())
        }
        NextQuestion::Release => say.push("Press as you let go: the clock begins then.".to_owned()),
        NextQuestion::Resting(_) => say.push("Do not touch it. Read it when the time has come.".to_owned()),
        NextQuestion::Next => say.push(format!(
            "{} so far. Three pulls show how much yours differ.",
            crate::words::quantity::counted(guide.draft.pulls.len(), "pull")
        )),
        _ => {}
    }
    GuideStep { title, say, drawing, asks }
}
