//! Limits and ranges, as people type them.
//!
//! A figure alone is a least one, and so is one that is rough: `about 5%` asks for 5 % at least, and the answer says so.

use super::{Limit, LimitError, Range};
use crate::number::decimal::{self, DecimalError};
use crate::reading::length::{Length, Unit};

/// Words that say a figure is rough.
const ABOUT: &[&str] = &["about", "approximately", "approx.", "approx", "around", "roughly", "circa", "ca.", "~"];
/// Words before the least that will do.
const AT_LEAST: &[&str] = &["at least", "minimum", "min.", "min", "no less than", "not less than", ">=", "\u{2265}"];
/// Words before the most that will do.
const AT_MOST: &[&str] =
    &["at most", "up to", "maximum", "max.", "max", "no more than", "not more than", "<=", "\u{2264}"];
/// Words after the least that will do.
const OR_MORE: &[&str] = &["or more", "and more", "at least", "minimum", "+"];
/// Words after the most that will do.
const OR_LESS: &[&str] = &["or less", "at most", "maximum"];
/// What stands for the sign of a percentage.
const SIGNS: &[&str] = &["%", "percent", "per cent"];

/// As [`Limit::parse`].
pub(super) fn limit(text: &str, default: Unit) -> Result<Limit, LimitError> {
    let text = without(text.trim(), ABOUT);
    if text.is_empty() {
        return Err(LimitError::Empty);
    }
    let Some((gauge, extended)) = split_at(text, " to ") else { return percent(text) };
    if text.contains('%') || signed(text).is_some() {
        return Err(LimitError::PercentInMarks);
    }
    // 20 to 30 is 50 % between marks, and from 20 to 30 % to most people.
    let bare = |text: &str| text.trim().bytes().all(|c| c.is_ascii_digit() || matches!(c, b'.' | b','));
    if bare(gauge) && bare(extended) {
        return Err(LimitError::RangeOrMarks);
    }
    Limit::marks(Length::parse(gauge, default)?, Length::parse(extended, default)?)
}

/// As [`Range::parse`].
pub(super) fn range(text: &str, default: Unit) -> Result<Range, LimitError> {
    let text = without(text.trim(), ABOUT);
    let least = |text| limit(text, default).map(|limit| Range { at_least: Some(limit), at_most: None });
    let most = |text| limit(text, default).map(|limit| Range { at_least: None, at_most: Some(limit) });
    if let Some(text) = after(text, AT_LEAST).or_else(|| before(text, OR_MORE)) {
        return least(text);
    }
    if let Some(text) = after(text, AT_MOST).or_else(|| before(text, OR_LESS)) {
        return most(text);
    }
    let Some((low, high)) = ends(text) else { return least(text) };
    let end = |text: &str| match text.trim() {
        "" => Ok(None),
        // `0...5%` may have lost a dot or gained one.
        text if text.starts_with('.') => Err(LimitError::NotALimit),
        text => limit(text, default).map(Some),
    };
    let range = Range { at_least: end(low)?, at_most: end(high)? };
    match (range.at_least, range.at_most) {
        (None, None) => Err(LimitError::Empty),
        (Some(low), Some(high)) if low.ratio() > high.ratio() => Err(LimitError::UpsideDown),
        _ => Ok(range),
    }
}

/// The two ends of a range; `4in to 5in` has none.
fn ends(text: &str) -> Option<(&str, &str)> {
    if let Some(ends) = split_at(text, "..") {
        return Some(ends);
    }
    if let Some(text) = after(text, &["between"]) {
        return split_at(text, " and ");
    }
    match split_at(text, " to ") {
        Some((low, high)) => signed(text).map(|_| (after(low, &["from"]).unwrap_or(low), high)),
        None => split_dash(text),
    }
}

fn percent(text: &str) -> Result<Limit, LimitError> {
    let number = signed(text);
    let value = match decimal::parse(number.unwrap_or(text).trim()) {
        Ok(value) => value,
        Err(DecimalError::TooLarge) => return Err(LimitError::TooLarge),
        Err(DecimalError::TooFine) => return Err(LimitError::TooFine),
        Err(DecimalError::AmbiguousComma) => return Err(LimitError::AmbiguousComma),
        Err(DecimalError::NotANumber) => return Err(LimitError::NotALimit),
    };
    let thousandths = i128::from(value.num) * 1000;
    match (thousandths.checked_rem(value.den.into()), thousandths.checked_div(value.den.into())) {
        (Some(0), Some(whole)) => {
            let milli = u32::try_from(whole).map_err(|_| LimitError::TooLarge)?;
            // 0.05 is 5 % to a calculator; with a sign it is what it says.
            if number.is_none() && (1..1000).contains(&milli) {
                return Err(LimitError::Share { milli });
            }
            Limit::milli_percent(milli)
        }
        _ => Err(LimitError::TooFine),
    }
}

/// What stands before the sign of a percentage, or the word for it; none where there is neither.
fn signed(text: &str) -> Option<&str> {
    before(text, SIGNS)
}

/// A text without the first of these words that it begins with.
fn without<'t>(text: &'t str, words: &[&str]) -> &'t str {
    after(text, words).unwrap_or(text)
}

/// What stands after the first of these words that a text begins with, whatever its capitals. A word of letters ends where
/// another letter does not go on.
fn after<'t>(text: &'t str, words: &[&str]) -> Option<&'t str> {
    words.iter().find_map(|word| {
        let (head, rest) = text.split_at_checked(word.len())?;
        let letters = |text: &str| text.bytes().next().is_some_and(|c| c.is_ascii_alphabetic());
        (head.eq_ignore_ascii_case(word) && !(letters(word) && letters(rest))).then(|| rest.trim_start())
    })
}

/// What stands before the first of these words that a text ends with, whatever its capitals.
fn before<'t>(text: &'t str, words: &[&str]) -> Option<&'t str> {
    words.iter().find_map(|word| {
        let (head, tail) = text.split_at_checked(text.len().checked_sub(word.len())?)?;
        tail.eq_ignore_ascii_case(word).then(|| head.trim_end())
    })
}

/// The two ends of `20-30%`, of which each begins with a digit: `-5%` has one.
fn split_dash(text: &str) -> Option<(&str, &str)> {
    let (low, high) = text.split_once(['-', '\u{2013}'])?;
    let digit = |text: &str| text.trim().bytes().next().is_some_and(|c| c.is_ascii_digit());
    (digit(low) && digit(high)).then(|| (low.trim(), high.trim()))
}

/// What stands before and after the first `mark`, whatever its capitals. `str::split_once` does nearly the same, but its
/// search for a text, unlike that for a character, holds index checks that stay in the program.
fn split_at<'t>(text: &'t str, mark: &str) -> Option<(&'t str, &'t str)> {
    text.char_indices().find_map(|(at, _)| {
        let (head, tail) = text.split_at_checked(at)?;
        let (found, rest) = tail.split_at_checked(mark.len())?;
        found.eq_ignore_ascii_case(mark).then_some((head, rest))
    })
}

#[cfg(test)]
mod tests {
    use std::string::ToString;

    use super::super::{Limit, LimitError, Range};
    use crate::reading::length::{LengthError, Unit};

    #[test]
    fn reads_limits() {
        let milli = |text| Limit::parse(text, Unit::Mm).map(|limit| limit.ratio().percent(3).scaled());
        assert_eq!(milli("5%"), Ok(5_000));
        assert_eq!(milli("5"), Ok(5_000));
        assert_eq!(milli("0,5 %"), Ok(500));
        assert_eq!(milli("34.375%"), Ok(34_375));
        assert_eq!(milli("4in to 5in"), Ok(25_000));
        assert_eq!(milli("10cm to 105 mm"), Ok(5_000));
        assert_eq!(milli("4 to 5 3/8"), Ok(34_375));
        for text in ["5 percent", "5 Per Cent", "about 5%", "About 5 percent", "approx. 5 %"] {
            assert_eq!(milli(text), Ok(5_000), "{text}");
        }
        assert_eq!(milli("0.05%"), Ok(50));
        assert_eq!(milli("0"), Ok(0));
    }

    #[test]
    fn refuses_limits() {
        let error = |text| Limit::parse(text, Unit::Mm).unwrap_err();
        assert_eq!(error(""), LimitError::Empty);
        assert_eq!(error("five"), LimitError::NotALimit);
        assert_eq!(error("5.0001%"), LimitError::TooFine);
        assert_eq!(error("1001%"), LimitError::TooLarge);
        assert_eq!(error("0.05"), LimitError::Share { milli: 50 });
        assert_eq!(error("0.05").to_string(), "0.05 % is less than can be read; type 5%");
        assert_eq!(error("0.5").to_string(), "can be read two ways; type 50% or 0.5%");
        assert_eq!(error("about"), LimitError::Empty);
        assert_eq!(error("-5%"), LimitError::NotALimit);
        assert_eq!(error("20% to 30%"), LimitError::PercentInMarks);
        assert_eq!(error("20 to 30"), LimitError::RangeOrMarks);
        assert_eq!(error("5in to 4in"), LimitError::BadMarks);
        assert_eq!(error("1mm to 12mm"), LimitError::TooLarge);
        assert_eq!(error("0in to 4in"), LimitError::BadMarks);
        assert_eq!(error("4in to 5 ells"), LimitError::Length(LengthError::UnknownUnit));
        assert_eq!(Range::parse("30%..20%", Unit::Mm), Err(LimitError::UpsideDown));
        assert_eq!(Range::parse("..", Unit::Mm), Err(LimitError::Empty));
    }

    #[test]
    fn a_range_as_people_write_it() {
        let range = Range::parse("20%..30%", Unit::Mm);
        for text in [
            "20-30%",
            "20% - 30%",
            "20 – 30 percent",
            "20%-30%",
            "about 20-30%",
            "20 to 30 %",
            "20% to 30%",
            "20% TO 30 PERCENT",
            "from 20 to 30%",
            "Between 20% and 30%",
            "between 20 and 30 per cent",
        ] {
            assert_eq!(Range::parse(text, Unit::Mm), range, "{text}");
        }
        let least = Range::parse("5%..", Unit::Mm);
        for text in [
            "5%",
            "about 5%",
            "at least 5 %",
            "At Least about 5%",
            "min 5%",
            "minimum 5 percent",
            ">=5%",
            "≥ 5 %",
            "5%+",
            "5 % or more",
            "5% at least",
            "no less than 5%",
        ] {
            assert_eq!(Range::parse(text, Unit::Mm), least, "{text}");
        }
        let most = Range::parse("..30%", Unit::Mm);
        for text in [
            "up to 30%",
            "at most 30 %",
            "Max. 30%",
            "maximum 30 per cent",
            "<= 30%",
            "≤30%",
            "30% or less",
            "no more than 30%",
        ] {
            assert_eq!(Range::parse(text, Unit::Mm), most, "{text}");
        }
        assert_eq!(Range::parse("20 to 30", Unit::Mm), Err(LimitError::RangeOrMarks));
        assert_eq!(Range::parse("at least 4 to 5 1/2", Unit::Inch), Range::parse("4in to 5 1/2in", Unit::Mm));
        for text in ["at least", "up to", "between 20%", "minty 5%", "or more", "+", "between 20% and 30% and 40%"] {
            assert!(Range::parse(text, Unit::Mm).is_err(), "{text}");
        }
        assert!(Range::parse("4-1/8in to 5in", Unit::Mm).unwrap().at_most.is_none());
        assert_eq!(Range::parse("-5%", Unit::Mm), Err(LimitError::NotALimit));
        assert_eq!(Range::parse("30-20%", Unit::Mm), Err(LimitError::UpsideDown));
    }

    #[test]
    fn a_range_of_printed_gauges() {
        let range = Range::parse("4in to 5in..4in to 6in", Unit::Mm).unwrap();
        assert_eq!(range.at_most.unwrap().to_string(), "50 %");
        assert_eq!(Limit::milli_percent(34_375).unwrap().to_string(), "34.375 %");
        assert_eq!(Limit::milli_percent(0).unwrap().to_string(), "0 %");
    }
}
