//! Pages as HTML: pure functions from results to bytes. The templates lie in `host-cli/templates` and escape every text;
//! what they write as it is are our own style sheets, scripts and pictures.
//!
//! A page is one file that asks nothing of the network, and forbids itself to.

pub mod book;
mod cloth;
pub mod print;
pub mod sheet;

use askama::Template;
use tenter_core::{Answer, Unit};

use crate::finding::fit::Candidate;
use crate::words::quantity;
use crate::words::terms as words;

/// The bytes of a page. A template that writes into a string cannot fail.
fn rendered(page: &impl Template) -> String {
    page.render().unwrap_or_default()
}

/// The sign of an answer, the same as on the map of the stash: beside the word, never instead of it.
const fn sign(answer: Answer) -> &'static str {
    match answer {
        Answer::Meets => "●",
        Answer::Close => "◐",
        Answer::Short => "▽",
        Answer::Over => "△",
        Answer::Unknown => "□",
    }
}

/// How likely a fabric will do, where that can be asked.
fn likely(candidate: &Candidate<'_>) -> Option<String> {
    let chance = candidate.chance.map(words::percent)?;
    match candidate.answer {
        Answer::Meets => Some(format!("{chance} sure")),
        Answer::Close => Some(format!("{chance} that it meets")),
        _ => None,
    }
}

/// What is missing of a fabric that would do.
fn missing(candidate: &Candidate<'_>, unit: Unit) -> Option<String> {
    let would_do = matches!(candidate.answer, Answer::Meets | Answer::Close);
    let missing = candidate.missing().filter(|_| would_do)?;
    Some(format!("too little: {} missing", quantity::cloth_to_buy(missing, unit)))
}

/// A text of ours in which no number is parted from its sign and what it is worth at the end of a line.
fn together(text: &str) -> String {
    text.replace(" %", "\u{a0}%").replace(" ± ", "\u{a0}±\u{a0}")
}

#[cfg(test)]
mod tests {
    use super::together;

    #[test]
    fn numbers_stay_with_their_signs() {
        assert_eq!(together("crosswise 8.5 % ± 0.8, slight"), "crosswise 8.5\u{a0}%\u{a0}±\u{a0}0.8, slight");
    }
}
