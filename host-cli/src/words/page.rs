//! Our words on a page, where nobody types a command: what a command would be is left out, for the page has a link or a
//! field there.

use super::typeset::set;

/// A text of ours without what a terminal would type, set as a page prints it; empty where nothing is left.
///
/// ```
/// use tenter::words::page::told;
///
/// assert_eq!(told("crosswise not measured yet: tenter pull 7 --grain crosswise"), "crosswise not measured yet");
/// assert_eq!(told("read it again, or pass --as-read if it is what you read"), "read it again");
/// assert_eq!(told("add --wants 5% to find out whether that is enough"), "");
/// assert_eq!(told("tenter doubts 4k3j2h: a slip; pull it again"), "tenter doubts 4k3j2h: a slip; pull it again");
/// ```
#[must_use]
pub fn told(text: &str) -> String {
    let clauses = text.split("; ").filter_map(|clause| kept(clause, &[": ", ", ", " ("]));
    set(&clauses.collect::<Vec<_>>().join("; "))
}

/// Sentences of ours without what a terminal would type.
///
/// ```
/// use tenter::words::page::sentences;
///
/// assert_eq!(sentences("Pull once: --settling. The first reads low."), "Pull once. The first reads low.");
/// ```
#[must_use]
pub fn sentences(text: &str) -> String {
    let ended = text.trim_end().ends_with('.');
    let told: Vec<String> =
        text.trim_end().trim_end_matches('.').split(". ").map(told).filter(|one| !one.is_empty()).collect();
    told.join(". ") + if ended && !told.is_empty() { "." } else { "" }
}

/// A clause as far as it holds no command; it is cut at one of `breaks`.
fn kept(clause: &str, breaks: &[&str]) -> Option<String> {
    let Some(at) = command(clause) else { return Some(clause.to_owned()).filter(|clause| !clause.is_empty()) };
    let before = clause.get(..at)?;
    let cut = breaks.iter().filter_map(|sign| before.rfind(sign)).max()?;
    let kept = before.get(..cut)?;
    // A bracket that was opened and cut off.
    if command(kept).is_some() || kept.trim().is_empty() { None } else { Some(kept.trim_end().to_owned()) }
}

/// Where the first command or option begins.
fn command(clause: &str) -> Option<usize> {
    const VERBS: [&str; 19] = [
        "check", "pull", "cloth", "pattern", "fit", "pair", "handle", "size", "wash", "hang", "make", "report",
        "device", "export", "import", "log", "demo", "serve", "phone",
    ];
    let starts_verb = |at: &usize| {
        let rest = clause.get(at.saturating_add(7)..).unwrap_or_default();
        let word = rest.split(|c: char| !c.is_ascii_lowercase()).next().unwrap_or_default();
        VERBS.contains(&word)
    };
    let verb = clause.match_indices("tenter ").map(|(at, _)| at).find(starts_verb);
    let is_option = |at: &usize| {
        let rest = clause.get(at.saturating_add(2)..).unwrap_or_default();
        let begins = clause.get(..*at).is_none_or(|before| before.is_empty() || before.ends_with([' ', '\'', '(']));
        begins && rest.starts_with(|c: char| c.is_ascii_lowercase())
    };
    let option = clause.match_indices("--").map(|(at, _)| at).find(is_option);
    verb.into_iter().chain(option).min()
}
