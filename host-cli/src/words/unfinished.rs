//! Tests that were broken off, in words; and what an answer about them means.

/// What is said once readings were deleted.
pub const DISCARDED: &str = "discarded; stored tests stay";

/// What an answer chooses, by the place in the list.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DraftChoice {
    /// Go on with one.
    Resume(usize),
    /// Begin a new one and keep the others.
    Anew,
    /// Delete one.
    Discard(usize),
    /// Nothing, for this reason.
    None(&'static str),
}

/// One that was broken off; with its number where there are several.
#[must_use]
pub fn listed(number: usize, of: usize, about: &str) -> String {
    if of == 1 { about.to_owned() } else { format!("{number}  {about}") }
}

/// What to ask.
#[must_use]
pub const fn question(of: usize) -> &'static str {
    if of == 1 {
        "r resume, n begin a new one and keep this, discard delete it (1 2) [resume]: "
    } else {
        "a number goes on with that test, n begins a new one and keeps these, discard 2 deletes the second [1]: "
    }
}

/// What an answer means among so many.
#[must_use]
pub fn chosen(answer: &str, of: usize) -> DraftChoice {
    let answer = answer.trim().to_lowercase();
    let place = |text: &str| {
        let number = if text.trim().is_empty() && of == 1 { Some(1) } else { text.trim().parse::<usize>().ok() };
        number.filter(|number| (1..=of).contains(number)).map(|number| number - 1)
    };
    match answer.as_str() {
        "" | "r" => DraftChoice::Resume(0),
        "n" => DraftChoice::Anew,
        "2" if of == 1 => DraftChoice::Anew,
        "d" | "3" if of == 1 => DraftChoice::None("to delete these readings for good, type discard in full"),
        other => match (other.strip_prefix("discard"), place(other)) {
            (Some(which), _) => {
                place(which).map_or(DraftChoice::None("type discard and the number of the test"), DraftChoice::Discard)
            }
            (None, Some(at)) => DraftChoice::Resume(at),
            (None, None) if of == 1 => DraftChoice::None("type r, n or discard"),
            (None, None) => DraftChoice::None("type a number, n, or discard and a number"),
        },
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn nothing_but_the_whole_word_deletes_readings() {
        for answer in ["d", "3", "x", "n discard", "disc", "0"] {
            assert!(!matches!(chosen(answer, 1), DraftChoice::Discard(_)), "{answer}");
        }
        assert_eq!([chosen("discard", 1), chosen(" Discard 1", 1)], [DraftChoice::Discard(0); 2]);
        assert_eq!([chosen("discard 2", 3), chosen("3", 3)], [DraftChoice::Discard(1), DraftChoice::Resume(2)]);
        assert!(matches!(chosen("discard", 2), DraftChoice::None(_)), "which of them is not said");
        assert_eq!([chosen("", 2), chosen("r", 1), chosen("1", 1)], [DraftChoice::Resume(0); 3]);
        assert_eq!([chosen("n", 2), chosen("2", 1)], [DraftChoice::Anew; 2]);
    }
}
