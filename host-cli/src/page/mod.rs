//! Pages as HTML: pure functions from results to bytes. The templates lie in `host-cli/templates` and escape every text;
//! what they write as it is are our own style sheets, scripts and pictures.
//!
//! A page is one file that asks nothing of the network, and forbids itself to.

pub mod book;
mod cloth;
pub mod print;
pub mod sheet;

use askama::Template;

use crate::finding::verdict::Verdict;

/// The bytes of a page. A template that writes into a string cannot fail.
fn rendered(page: &impl Template) -> String {
    page.render().unwrap_or_default()
}

/// An answer as a style sheet and a filter know it: the word, without a space.
const fn class(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Meets => "meets",
        Verdict::TooLittle => "too-little",
        Verdict::Close => "close",
        Verdict::Unknown => "unknown",
        Verdict::Short => "short",
        Verdict::Over => "over",
        Verdict::OtherConstruction => "otherwise",
    }
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
