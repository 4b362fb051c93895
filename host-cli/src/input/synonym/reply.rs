//! Answers to what the guide asks, by other words.

use super::is;

/// The letter that is offered, with what else is said for it.
pub const REPLIES: &[(&str, &[&str])] = &[
    ("y", &["yes", "ok", "okay"]),
    ("n", &["no", "none", "skip", "never"]),
    ("u", &["undo", "back"]),
    ("q", &["quit", "exit", "stop"]),
    ("a", &["again", "more", "another"]),
    ("f", &["finish", "finished", "done"]),
];

/// An answer as the guide offers it; any other text as it is.
#[must_use]
pub fn reply(answer: &str) -> &str {
    let said = |(_, others): &&(&str, &[&str])| others.iter().any(|other| is(answer, other));
    REPLIES.iter().find(said).map_or(answer, |(letter, _)| letter)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn words_for_letters() {
        for (typed, meant) in
            [("Undo", "u"), ("NO", "n"), ("done", "f"), ("n", "n"), ("26.5", "26.5"), ("", ""), ("nope", "nope")]
        {
            assert_eq!(reply(typed), meant, "{typed}");
        }
        let words: Vec<&str> = REPLIES.iter().flat_map(|(letter, others)| [&[*letter], *others].concat()).collect();
        for (index, word) in words.iter().enumerate() {
            assert!(!words[index + 1..].iter().any(|other| is(word, other)), "{word}");
        }
    }
}
