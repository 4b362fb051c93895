//! Pages as HTML: pure functions from results to bytes. The templates lie in `host-cli/templates` and escape every text;
//! what they write as it is are our own style sheets, scripts and pictures.
//!
//! A page is one file that asks nothing of the network, and forbids itself to.

pub mod book;
mod cloth;
pub mod print;
pub mod sheet;

use askama::Template;
use tenter_core::Answer;

use crate::finding::verdict::Verdict;
use crate::words::terms as words;
pub(crate) use crate::words::typeset::set as together;

/// The bytes of a page. A template that writes into a string cannot fail.
fn rendered(page: &impl Template) -> String {
    page.render().unwrap_or_default()
}

/// The class of an answer in the style sheet and in the filters.
const fn class(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Meets => "meets",
        Verdict::TooLittle => "little",
        Verdict::Close => "close",
        Verdict::Unknown => "unknown",
        Verdict::Short => "short",
        Verdict::Over => "over",
        Verdict::OtherConstruction => "otherwise",
    }
}

/// How likely a fabric will do, where that can be asked.
fn likely(answer: Answer, chance: Option<f32>) -> Option<String> {
    let chance = chance.map(words::percent)?;
    match answer {
        Answer::Meets => Some(format!("{chance} sure")),
        Answer::Close => Some(format!("{chance} that it meets")),
        _ => None,
    }
}

/// The name of a view; none where the pattern has no views.
fn view(name: &str) -> Option<&str> {
    (name != "-").then_some(name)
}
