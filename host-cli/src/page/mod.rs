//! Pages as HTML: pure functions from results to bytes. The templates lie in `host-cli/templates` and escape every text;
//! what they write as it is are our own style sheets, scripts and pictures.
//!
//! A page is one file that asks nothing of the network, and forbids itself to.

pub mod book;
pub mod class;
pub(crate) mod cloth;
pub mod form;
pub mod made;
pub mod print;
pub mod sheet;
mod sheets;

use askama::Template;

use crate::finding::verdict::Verdict;
pub(crate) use crate::words::typeset::set as together;

/// The bytes of a page. A template that writes into a string cannot fail.
fn rendered(page: &impl Template) -> String {
    page.render().unwrap_or_default()
}

/// The class of an answer in the style sheet and in the filters.
pub(crate) const fn class(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Meets => "meets",
        Verdict::TooLittle => "too-little",
        Verdict::Close => "close",
        Verdict::Unknown => "unknown",
        Verdict::Short => "short",
        Verdict::Over => "over",
        Verdict::Choose => "choose",
        Verdict::OtherKind => "otherwise",
    }
}
