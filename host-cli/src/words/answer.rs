//! The word, the sign and the colour of an answer: the one place that decides them, for terminal, pictures and pages.

use crate::finding::verdict::Verdict;

/// What colour an answer is shown in. Colour helps the eye; the word carries the answer.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Tone {
    /// It will do.
    Good,
    /// It may do.
    Doubtful,
    /// It will not do.
    Bad,
    /// It is not considered.
    Quiet,
}

/// The answer in a word or two, as in a list.
#[must_use]
pub fn word(verdict: impl Into<Verdict>) -> &'static str {
    match verdict.into() {
        Verdict::Meets => "meets",
        Verdict::TooLittle => "too little",
        Verdict::Close => "close",
        Verdict::Unknown => "unknown",
        Verdict::Short => "short",
        Verdict::Over => "over",
        Verdict::Choose => "your choice",
        Verdict::OtherKind => "wrong kind",
    }
}

/// The same in capitals, at the head of what is said of one cloth among others.
#[must_use]
pub fn label(verdict: impl Into<Verdict>) -> &'static str {
    match verdict.into() {
        Verdict::Meets => "MEETS",
        Verdict::TooLittle => "TOO LITTLE",
        Verdict::Close => "CLOSE",
        Verdict::Unknown => "UNKNOWN",
        Verdict::Short => "SHORT",
        Verdict::Over => "OVER",
        Verdict::Choose => "CHOOSE",
        Verdict::OtherKind => "WRONG KIND",
    }
}

/// The same at the head of a whole report, where there is room to say it in full.
#[must_use]
pub fn headline(verdict: impl Into<Verdict>) -> &'static str {
    match verdict.into() {
        Verdict::Choose => "CHOOSE YOURSELF",
        Verdict::Close => "TOO CLOSE TO CALL",
        Verdict::Unknown => "NOT MEASURED",
        other => label(other),
    }
}

/// The answer within a sentence.
#[must_use]
pub fn phrase(verdict: impl Into<Verdict>) -> &'static str {
    match verdict.into() {
        Verdict::Choose => "yours to choose",
        Verdict::Close => "too close to call",
        Verdict::Unknown => "not measured",
        Verdict::OtherKind => "the wrong kind of cloth",
        other => word(other),
    }
}

/// The sign of an answer: beside the word, never instead of it.
#[must_use]
pub fn sign(verdict: impl Into<Verdict>) -> &'static str {
    match verdict.into() {
        Verdict::Meets => "●",
        Verdict::TooLittle => "○",
        Verdict::Close => "◐",
        Verdict::Unknown => "□",
        Verdict::Short => "▽",
        Verdict::Over => "△",
        Verdict::Choose => "◇",
        Verdict::OtherKind => "–",
    }
}

/// The colour of an answer.
#[must_use]
pub fn tone(verdict: impl Into<Verdict>) -> Tone {
    match verdict.into() {
        Verdict::Meets => Tone::Good,
        Verdict::TooLittle | Verdict::Choose | Verdict::Close | Verdict::Unknown => Tone::Doubtful,
        Verdict::Short | Verdict::Over => Tone::Bad,
        Verdict::OtherKind => Tone::Quiet,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::collections::HashSet;

    /// Nobody can take one answer for another: each has its own word, label and sign.
    #[test]
    fn every_answer_looks_like_itself() {
        for what in [word, label, headline, phrase, sign] {
            assert_eq!(Verdict::ALL.map(what).into_iter().collect::<HashSet<_>>().len(), Verdict::ALL.len());
        }
    }
}
