//! The words of the pictures.

use tenter_core::{Answer, Confidence, Figure, Length, Limit, Range, Unit};

use crate::words::pattern;
use crate::words::terms;
use crate::words::typeset::minus;

/// A figure with what it is worth.
pub fn figure(figure: &Figure, confidence: Confidence) -> String {
    minus(&terms::figure(figure, confidence))
}

/// What is asked, as it was printed; none where nothing is.
pub fn range(range: Range) -> Option<String> {
    pattern::range(range, limit)
}

/// A limit, with its printed gauge where it has one.
pub fn limit(limit: Limit) -> String {
    let Some((gauge, extended)) = limit.printed_marks() else {
        return limit.to_string();
    };
    let unit = unit(gauge, extended);
    format!("{} to {} ({limit})", gauge.show(unit), extended.show(unit))
}

/// The unit in which a pair of printed marks was meant: inches where both are whole sixteenths and not both whole
/// millimetres.
pub fn unit(gauge: Length, extended: Length) -> Unit {
    let whole = |of: Length| [gauge, extended].iter().all(|mark| mark.steps().checked_rem(of.steps()) == Some(0));
    if whole(Length::from_inch_64ths(4)) && !whole(Length::from_mm(1)) { Unit::Inch } else { Unit::Mm }
}

/// A percentage of an axis.
pub fn percent(value: f64) -> String {
    minus(&format!("{} %", super::svg::number(value)))
}

/// How sure the drawn trust is.
pub fn trust(confidence: Confidence) -> String {
    format!("trust, {} % sure", terms::whole(confidence.percent()))
}

/// An answer as a word in a sentence.
pub fn answer(answer: Answer) -> &'static str {
    match answer {
        Answer::Close => crate::words::answer::phrase(answer),
        other => crate::words::answer::word(other),
    }
}

/// A text from outside within our own words, so that its direction of writing does not turn them round.
pub fn isolated(text: &str) -> String {
    format!("\u{2068}{text}\u{2069}")
}
