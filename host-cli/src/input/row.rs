//! A test in one breath: `25 26.5 26.6 26.5 25.2@1m 5%`, and `across 25 26.5 along 25 25.4` for two.
//!
//! The first length is that between the marks, each further one a pull, one with a time a reading after release, a
//! percentage what is wanted. The word for a grain begins a test along it.

use tenter_core::{Ends, Grain, Held, Length, Unit};

use super::synonym::{GRAIN, is};
use super::{TypedReading, TypedTest, seconds};

/// What may stand between lengths: `25 to 26.5, wants 5%`.
const NOISE: [&str; 8] = ["to", "and", "then", "want", "wants", "need", "needs", ","];

/// What says that a length in a row is that of the marks.
const AGAIN: &str = "marks";

/// A part of a row, as typed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum RowPart {
    /// A word of a row, or a part of one: `25`, `cm`, `5%`, `across`.
    Word(String),
    /// A reading of which it is known what it is.
    Reading(TypedReading),
}

/// A test of a row, as typed.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct TestRow {
    /// The grain, where its word was typed.
    pub grain: Option<Grain>,
    /// The distance between the marks; none where it was not typed.
    pub marks: Option<String>,
    /// The lengths, in the order in which they were read.
    pub readings: Vec<TypedReading>,
    /// What is wanted, where a percentage was typed.
    pub wants: Option<String>,
    /// A second percentage, which belongs nowhere.
    pub second: Option<String>,
}

impl TypedReading {
    /// One of several lengths in a row: `265`, `252@60s` after release, `250@marks` for the marks.
    #[must_use]
    pub fn in_a_row(text: &str) -> Self {
        match text.split_once('@') {
            Some((marks, what)) if what.trim().eq_ignore_ascii_case(AGAIN) => Self::Marks(marks.trim().to_owned()),
            Some(_) => Self::Back(text.to_owned()),
            None => Self::To(text.to_owned()),
        }
    }

    /// The same as text.
    #[must_use]
    pub fn row(&self) -> String {
        match self {
            Self::To(text) | Self::Back(text) => text.clone(),
            Self::Marks(text) => format!("{text}@{AGAIN}"),
        }
    }
}

/// The tests of a row: the first, which has `marks` where they were typed apart, and those along other grains.
#[must_use]
pub fn rows(marks: Option<String>, parts: Vec<RowPart>) -> (TestRow, Vec<TestRow>) {
    let (mut first, mut further) = (TestRow { marks, ..TestRow::default() }, Vec::new());
    for part in joined(parts) {
        let row = further.last_mut().unwrap_or(&mut first);
        match part {
            RowPart::Word(text) if NOISE.iter().any(|noise| is(&text, noise)) => {}
            RowPart::Word(text) => match GRAIN.typed(&text) {
                Some(grain) if row.grain.is_none() && row.readings.is_empty() => row.grain = Some(grain),
                Some(grain) => further.push(TestRow { grain: Some(grain), ..TestRow::default() }),
                None => row.take(text),
            },
            RowPart::Reading(TypedReading::Marks(text)) if row.marks.is_none() => row.marks = Some(text),
            RowPart::Reading(reading) => row.readings.push(reading),
        }
    }
    (first, further)
}

impl TestRow {
    /// The test that a row alone says: pulled by hand, folded, on an ordinary tape.
    #[must_use]
    pub fn test(&self) -> TypedTest {
        TypedTest {
            marks: self.marks.clone(),
            readings: self.readings.clone(),
            settling: false,
            marks_before_settling: false,
            planned: None,
            grain: self.grain.unwrap_or(Grain::Crosswise),
            division: None,
            ends: Ends::One,
            held: Held::Folded,
            load: None,
        }
    }

    fn take(&mut self, text: String) {
        if is_wanted(&text) {
            match self.wants {
                None => self.wants = Some(text),
                Some(_) => self.second = self.second.take().or(Some(text)),
            }
        } else if self.marks.is_none() && !text.contains('@') {
            self.marks = Some(text);
        } else {
            self.readings.push(TypedReading::in_a_row(&text));
        }
    }
}

/// The words of a text, those of one length together: `4 1/4in 10,5 cm 25.2 @ 1 min`.
#[must_use]
pub fn words(text: &str) -> Vec<String> {
    let words = text.split_whitespace().map(|word| RowPart::Word(word.to_owned())).collect();
    let word = |part| match part {
        RowPart::Word(word) => word,
        RowPart::Reading(reading) => reading.row(),
    };
    joined(words).into_iter().map(word).collect()
}

/// Whether a text is a percentage or a range of them, and no length.
#[must_use]
pub fn is_wanted(text: &str) -> bool {
    let percent = text.contains('%') || text.to_lowercase().ends_with("cent");
    (percent || text.contains("..")) && !text.contains('@')
}

/// Words that belong to one length or percentage, joined.
fn joined(parts: Vec<RowPart>) -> Vec<RowPart> {
    let mut all: Vec<RowPart> = Vec::new();
    for part in parts {
        match (all.last_mut(), part) {
            (Some(RowPart::Word(before)), RowPart::Word(word)) if goes_on(before, &word) => {
                before.push(' ');
                before.push_str(&word);
            }
            (_, part) => all.push(part),
        }
    }
    all
}

/// Whether a word goes on with the length, percentage or time before it.
fn goes_on(before: &str, word: &str) -> bool {
    let digit = |c: char| c.is_ascii_digit();
    // `25.2 @ 1m`, `25.2 @1m`.
    if word.starts_with('@') || before.ends_with('@') {
        return before.starts_with(digit);
    }
    // `5 per cent`.
    if !before.ends_with(digit) {
        return before.to_lowercase().ends_with(" per") && word.eq_ignore_ascii_case("cent");
    }
    // `10,5 cm`, `5 %`, and `1 min` after an @.
    if !word.starts_with(digit) && !is_part(word) {
        let one = format!("1{word}");
        let time = before.contains('@') && seconds(&one).is_some();
        let percent = ["%", "percent", "per"].iter().any(|sign| word.eq_ignore_ascii_case(sign));
        return time || percent || Unit::typed(&one).is_some();
    }
    before.bytes().all(|c| c.is_ascii_digit()) && is_part(word)
}

/// Whether a word is the part of an inch that stands after a whole number: `1/4in`, `½`.
fn is_part(word: &str) -> bool {
    let (word, _) = word.split_once('@').unwrap_or((word, ""));
    let number =
        word.trim_end_matches(|c: char| c.is_alphabetic() || matches!(c, '"' | '\'' | '\u{2033}' | '\u{201d}'));
    let small = |length| length > Length::ZERO && length < Length::INCH;
    !number.bytes().all(|c| c.is_ascii_digit() || matches!(c, b'.' | b','))
        && Length::parse(number, Unit::Inch).is_ok_and(small)
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    fn row(text: &str) -> Vec<TestRow> {
        let (first, further) = rows(None, text.split(' ').map(|word| RowPart::Word(word.to_owned())).collect());
        [vec![first], further].concat()
    }

    fn one(text: &str) -> TestRow {
        let mut rows = row(text);
        assert_eq!(rows.len(), 1, "{text}");
        rows.remove(0)
    }

    fn to(text: &str) -> TypedReading {
        TypedReading::To(text.to_owned())
    }

    #[test]
    fn a_test_in_one_breath() {
        let whole = one("25 26.5 26.6 25.2@1m 25@marks 5%");
        assert_eq!((whole.grain, whole.marks.as_deref(), whole.wants.as_deref()), (None, Some("25"), Some("5%")));
        let back = TypedReading::Back("25.2@1m".to_owned());
        assert_eq!(whole.readings, [to("26.5"), to("26.6"), back, TypedReading::Marks("25".to_owned())]);
        assert_eq!(one("5% 25 26.5").readings, [to("26.5")]);
        let said = one("25 to 26.5 and 26.6 wants 5%");
        assert_eq!(
            (said.readings.as_slice(), said.wants.as_deref()),
            ([to("26.5"), to("26.6")].as_slice(), Some("5%"))
        );
        assert_eq!(one("25 26 5% 6%").second.as_deref(), Some("6%"));
        for wanted in ["5%", "20..30", "20%..30%", "20-30%", "5 %", "5 percent", "5 Per Cent", "≥5%"] {
            let row = one(&format!("25 26 {wanted}"));
            assert_eq!((row.wants.as_deref(), row.readings.len()), (Some(wanted), 1), "{wanted}");
        }
    }

    #[test]
    fn words_of_one_length_belong_together() {
        for (text, want) in [
            ("4 4 1/4in 4 3/8", vec!["4", "4 1/4in", "4 3/8"]),
            ("4 4 ¼ 4⅜ 4 1/8@60s", vec!["4", "4 ¼", "4⅜", "4 1/8@60s"]),
            ("10 cm 10,5 cm 10.6 CM", vec!["10 cm", "10,5 cm", "10.6 CM"]),
            ("10 10.5 10.1 @ 1 min 10.6", vec!["10", "10.5", "10.1 @ 1 min", "10.6"]),
            ("10 10.1@60 s 10.2 @1h", vec!["10", "10.1@60 s", "10.2 @1h"]),
            ("4 in 5 \" 5 per cent", vec!["4 in", "5 \"", "5 per cent"]),
            ("25 26.5 26.6", vec!["25", "26.5", "26.6"]),
            ("4.5 1/4 cm", vec!["4.5", "1/4 cm"]),
        ] {
            assert_eq!(words(text), want, "{text}");
        }
    }

    #[test]
    fn the_word_for_a_grain_begins_a_test() {
        let both = row("ACROSS 25 26.5 5% along 25 25.4 bias 20 22");
        let grains: Vec<_> = both.iter().map(|row| row.grain).collect();
        assert_eq!(grains, [Some(Grain::Crosswise), Some(Grain::Lengthwise), Some(Grain::Bias)]);
        assert_eq!((both[1].marks.as_deref(), &both[1].wants), (Some("25"), &None));
        assert_eq!(row("25 26.5 warp 25 25.4").len(), 2);
        assert_eq!(one("weft").marks, None);
        // Marks typed apart are those of the first test.
        let (apart, _) = rows(Some("25".to_owned()), vec![RowPart::Word("26".to_owned())]);
        assert_eq!((apart.marks.as_deref(), apart.readings.as_slice()), (Some("25"), [to("26")].as_slice()));
    }

    proptest! {
        #[test]
        fn any_words_make_a_row(text in "(\\PC{0,4} |[0-9]{1,2} |@|%|1/4 |cm |along |½){0,12}") {
            let made = row(&text);
            prop_assert!(!made.is_empty());
            let _ = words(&text);
        }
    }
}
